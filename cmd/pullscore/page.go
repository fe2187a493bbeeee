// pullscore page: a plan to begin from, out of a script page.

package main

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"strconv"
	"strings"

	"pullscore/cmd/internal/console"
	"pullscore/cmd/internal/findings"
	"pullscore/cmd/internal/paths"
	"pullscore/cmd/internal/skeleton"
	"pullscore/interp"
	"pullscore/lang"
	"pullscore/lang/fountain"
	"pullscore/lang/lines"
)

type pageCmd struct {
	Output  string `short:"o" default:"-" placeholder:"FILE" help:"The plan to write, which must not exist yet; - is standard output."`
	As      string `enum:"plan,json" default:"plan" placeholder:"FORM" help:"plan, or json: what was read (with --against: findings as JSON)."`
	Scene   string `placeholder:"N" help:"One scene, by its number or else by its position from 1."`
	Against string `placeholder:"PLAN" help:"Say what the page has otherwise than this plan."`
	File    string `arg:"" help:"A script page in Fountain, or - for standard input."`
}

// Help explains the command.
func (pageCmd) Help() string {
	return `Makes a plan to begin from out of a script page in Fountain: every speaker a
subject, every scene a shot, every speech a line with its words. Where the
speaker changes, or an action names a subject, a rack on a word is proposed as
a comment: take "# " away to wake it up. Distances are placeholders to measure.

  pullscore page -o scene-27.pull --scene 27 ferry.fountain
  pullscore page --as json ferry.fountain
  pullscore page --against scene-27.pull --scene 27 ferry.fountain

A plan that is there is never written over. With --against, the exit code is 1
where lines have changed, moved or vanished; the pulls that hang on them are
told.`
}

// Run reads the page.
func (c *pageCmd) Run(s *session) error {
	src, err := s.readPage(c.File)
	if err != nil {
		return err
	}
	text, diags := lines.Decode(c.File, src)
	defer s.watchReading(text)()
	script, more := fountain.Read(text)
	s.bar.Clear()
	faulty := s.printErrors(&interp.Result{Sources: map[string][]byte{c.File: []byte(text.Content)}}, append(diags, more...))
	scenes, err := c.scenes(script)
	if err != nil {
		return err
	}
	switch {
	case c.Against != "":
		err = c.compare(s, src, scenes)
	case c.As == "json":
		err = c.write(s, func(w io.Writer) error { return findings.Encode(w, skeleton.Read(scenes)) })
	default:
		err = c.write(s, func(w io.Writer) error {
			_, err := w.Write(skeleton.Plan(title(script), scenes))
			return err
		})
	}
	if err == nil && faulty {
		err = errFindings
	}
	return err
}

// readPage reads a page, which may be larger than a plan can be.
func (s *session) readPage(path string) ([]byte, error) {
	in := s.in
	if path != paths.Stdin {
		f, err := os.Open(path)
		if err != nil {
			return nil, paths.Plain(err)
		}
		defer f.Close()
		in = f
	}
	src, err := io.ReadAll(io.LimitReader(in, lines.MaxSize+1))
	if err != nil {
		return nil, fmt.Errorf("%s: %w", path, paths.Plain(err))
	}
	return src, nil
}

// watchReading shows how far the reading of a long text is, until the function
// that it returns is called.
func (s *session) watchReading(text *lines.Text) (done func()) {
	s.bar = console.NewProgress(s.errScreen, "reading, MB", len(text.Content)>>20)
	shown := 0
	text.Progress = func(done, _ int) {
		for ; shown < done>>20; shown++ {
			s.bar.Step()
		}
	}
	return func() { s.bar.Clear() }
}

// title returns what the title page says.
func title(s *fountain.Script) string {
	for _, f := range s.Title {
		if strings.EqualFold(f.Key, "Title") {
			return fountain.Plain(f.Value)
		}
	}
	return ""
}

// scenes returns the scenes that are asked for. A number goes before a
// position, since pages are spoken of by number.
func (c *pageCmd) scenes(script *fountain.Script) ([]fountain.Scene, error) {
	if c.Scene == "" {
		return script.Scenes, nil
	}
	var numbers []string
	for i, scene := range script.Scenes {
		if strings.EqualFold(scene.Number, c.Scene) {
			return script.Scenes[i : i+1], nil
		}
		if scene.Number != "" {
			numbers = append(numbers, scene.Number)
		}
	}
	if n, err := strconv.Atoi(c.Scene); err == nil && n >= 1 && n <= len(script.Scenes) {
		return script.Scenes[n-1 : n], nil
	}
	fault := fmt.Sprintf("%s: no scene %q among %d", c.File, c.Scene, len(script.Scenes))
	if near, ok := lang.Nearest(c.Scene, numbers); ok {
		return nil, fmt.Errorf("%s; did you mean %s?", fault, near)
	}
	if len(numbers) > 0 {
		fault += "; there is " + strings.Join(numbers, ", ")
	}
	return nil, errors.New(fault)
}

// compare tells what the page has otherwise than the plan. Errors of the plan
// are told too: a shot that could not be built has no lines to compare.
func (c *pageCmd) compare(s *session, src []byte, scenes []fountain.Scene) error {
	page := &interp.Script{Path: c.File, Text: src}
	if c.Scene != "" {
		if page.Scene = scenes[0].Number; page.Scene == "" {
			return fmt.Errorf("%s: the scene has no number, so it cannot be compared alone", c.File)
		}
	}
	plan, err := s.readFile(c.Against)
	if err != nil {
		return err
	}
	res := interp.Interpret(c.Against, plan, interp.Options{Script: page})
	faulty := s.printErrors(res, res.Findings)
	var told []lang.Diagnostic
	for _, d := range res.Findings {
		if ofPage[d.Code] {
			told = append(told, d)
		}
	}
	err = c.write(s, func(w io.Writer) error { return c.tell(s, w, res, told) })
	if err == nil && (faulty || len(res.Revision) > 0) {
		err = errFindings
	}
	return err
}

// ofPage holds the codes of what a page has otherwise than a plan.
var ofPage = map[string]bool{
	"line-changed": true, "line-moved": true, "line-gone": true, "line-new": true, "speaker-changed": true,
}

func (c *pageCmd) tell(s *session, w io.Writer, res *interp.Result, told []lang.Diagnostic) error {
	if c.As == "json" {
		return findings.WriteJSON(w, told)
	}
	screen := s.screen
	screen.W = w
	p := findings.Printer{Screen: screen}
	for _, d := range told {
		if err := p.Print(d, res.Sources[d.Range.File]); err != nil {
			return err
		}
	}
	return nil
}

// write writes to the file of -o, which must be new, or to standard output.
func (c *pageCmd) write(s *session, content func(io.Writer) error) error {
	if c.Output == paths.Stdin {
		return content(s.out)
	}
	if _, err := os.Lstat(c.Output); err == nil {
		return fmt.Errorf("%s is there already, and is not written over", c.Output)
	} else if !errors.Is(err, fs.ErrNotExist) {
		return paths.Plain(err)
	}
	var b bytes.Buffer
	if err := content(&b); err != nil {
		return err
	}
	if err := paths.Write(c.Output, b.Bytes()); err != nil {
		return err
	}
	_, err := fmt.Fprintln(s.out, c.Output)
	return err
}
