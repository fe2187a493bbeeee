// What the commands share: reading plans, and what is printed where.

package main

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"

	"pullscore/cmd/internal/console"
	"pullscore/cmd/internal/files"
	"pullscore/cmd/internal/findings"
	"pullscore/interp"
	"pullscore/lang"
)

// A session is one run of the program.
type session struct {
	in   io.Reader
	out  *bufio.Writer
	errs io.Writer

	screen    console.Screen // of out
	errScreen console.Screen // of errs
	bar       *console.Progress
	stdout    io.Writer

	rule    *makeRule // where one is asked for; else nil
	several bool      // plans are read at the same time, and the bar counts those
	helped  bool      // help was given, and nothing else is to be done
	failed  bool      // an error was reported
}

// bufferSize is how much is printed at a time.
const bufferSize = 64 << 10

func newSession(in io.Reader, out, errs io.Writer) *session {
	s := &session{in: in, out: bufio.NewWriterSize(out, bufferSize), errs: errs, stdout: out}
	s.colour("auto")
	return s
}

// colour sets when colours are used.
func (s *session) colour(when string) {
	s.screen = console.New(s.stdout, when)
	s.screen.W = s.out
	s.errScreen = console.New(s.errs, when)
	s.bar = console.NewProgress(s.errScreen, "", 0)
}

// cleanLines cleans a message of more than one line.
func cleanLines(text string) string {
	lines := strings.Split(text, "\n")
	for i := range lines {
		lines[i] = console.Clean(lines[i])
	}
	return strings.Join(lines, "\n")
}

// unjoin returns the errors that were joined.
func unjoin(err error) []error {
	if joined, ok := err.(interface{ Unwrap() []error }); ok {
		var list []error
		for _, e := range joined.Unwrap() {
			list = append(list, unjoin(e)...)
		}
		return list
	}
	return []error{err}
}

// readFile reads the text of a file or, for "-", of standard input.
func (s *session) readFile(path string) ([]byte, error) {
	if path != files.Stdin {
		src, err := interp.ReadFile(path)
		if info, statErr := os.Stat(path); err != nil && statErr == nil && info.IsDir() {
			return nil, fmt.Errorf("%s is a folder, not a plan", path)
		}
		return src, files.Plain(err)
	}
	src, err := io.ReadAll(io.LimitReader(s.in, interp.MaxFileSize+1))
	switch {
	case err != nil:
		return nil, fmt.Errorf("standard input: %w", err)
	case len(src) > interp.MaxFileSize:
		return nil, fmt.Errorf("standard input: more than %d MB", interp.MaxFileSize>>20)
	}
	return src, nil
}

// reading returns what shows how far the reading of other people's texts is,
// one after another.
func (s *session) reading() func(done, total int) {
	shown, of := 0, 0
	return func(done, total int) {
		if done>>20 < shown || total != of { // another text, or one once more
			s.bar.Clear()
			s.bar = console.NewProgress(s.errScreen, "reading, MB", total>>20)
			shown, of = 0, total
		}
		for ; shown < done>>20; shown++ {
			s.bar.Step()
		}
	}
}

// interpret reads and interprets a plan.
func (s *session) interpret(path string) (*interp.Result, error) {
	return s.interpretWith(path, interp.Options{})
}

// interpretWith reads and interprets a plan with these options.
func (s *session) interpretWith(path string, opt interp.Options) (*interp.Result, error) {
	src, err := s.readFile(path)
	if err != nil {
		return nil, err
	}
	if !s.several {
		opt.Progress = s.reading()
	}
	res := interp.Interpret(path, src, opt)
	s.rule.from(res.Files...)
	return res, nil
}

// eachFile does work on every file that the arguments name, several at a time,
// and calls emit in their order. What cannot be read is reported, and the rest
// goes on.
func eachFile[T any](s *session, args []string, doing string, work func(files.File) (T, error), emit func(files.File, T) error) error {
	named, err := files.Expand(args)
	if err != nil {
		s.fail(err)
	}
	type done struct {
		file  files.File
		value T
		err   error
	}
	s.bar = console.NewProgress(s.errScreen, doing, len(named))
	s.several = len(named) > 1
	defer func() { s.bar.Clear() }()
	return files.InOrder(named, func(f files.File) done {
		value, err := work(f)
		return done{f, value, err}
	}, func(d done) error {
		if d.err != nil {
			s.fail(d.err)
		} else if err := emit(d.file, d.value); err != nil {
			return err
		}
		s.bar.Step()
		return nil
	})
}

// printErrors prints the errors among findings to standard error, for the
// commands that are not about them, and reports whether there are any.
func (s *session) printErrors(res *interp.Result, diags []lang.Diagnostic) bool {
	s.bar.Clear()
	s.out.Flush() // what was printed before stands above
	p := findings.Printer{Screen: s.errScreen}
	found := false
	for _, d := range diags {
		if d.Severity == lang.Error {
			found = true
			p.Print(d, res.Sources[d.Range.File])
		}
	}
	return found
}

// ofShot keeps the findings about a shot, and those about no shot; without an
// ID it keeps them all.
func ofShot(diags []lang.Diagnostic, id string) []lang.Diagnostic {
	if id == "" {
		return diags
	}
	var kept []lang.Diagnostic
	for _, d := range diags {
		if d.Shot == "" || d.Shot == id {
			kept = append(kept, d)
		}
	}
	return kept
}

// noShot is the error that no shot has the ID that was asked for.
func noShot(where, id string, ids []string) error {
	text := fmt.Sprintf("%s: no shot %q", where, id)
	if near, ok := lang.Nearest(id, ids); ok {
		text += fmt.Sprintf("; did you mean %s?", near)
	} else if len(ids) > 0 {
		text += "; there is " + strings.Join(ids, ", ")
	}
	return errors.New(text)
}

// planName is the name of a plan file without its ending.
func planName(path string) string {
	if path == files.Stdin {
		return "stdin"
	}
	base := filepath.Base(path)
	return strings.TrimSuffix(base, filepath.Ext(base))
}
