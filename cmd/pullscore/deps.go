// The flag --deps: a Make rule that says which files a run wrote, and from which.

package main

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync"

	"pullscore/cmd/internal/files"
)

// A depsFlag is the flag of a command that writes files.
type depsFlag struct {
	Deps string `offer:"places" name:"deps" placeholder:"FILE" help:"Also write a Make rule: the files written, and all that they were made from; - for standard output."`
}

// with runs the work of a command, and then writes the rule if one is asked for. Findings
// are no reason to leave it out: the files are written all the same.
func (f depsFlag) with(s *session, work func() error) error {
	if f.Deps == "" {
		return work()
	}
	s.rule = &makeRule{printed: f.Deps == files.Stdin}
	err := work()
	if err != nil && !errors.Is(err, errFindings) {
		return err
	}
	text, failed := s.rule.text()
	switch {
	case failed != nil:
		return failed
	case s.rule.printed:
		_, failed = s.out.WriteString(text)
	default:
		if failed = files.MakeFolder(filepath.Dir(f.Deps)); failed == nil {
			failed = files.Write(f.Deps, []byte(text))
		}
	}
	if failed != nil {
		return failed
	}
	return err
}

// wrote tells the name of a file that was written. It says nothing if standard output is
// for the rule, which names the file too.
func (s *session) wrote(path string) error {
	if s.rule != nil {
		s.rule.targets = append(s.rule.targets, path)
		if s.rule.printed {
			return nil
		}
	}
	_, err := fmt.Fprintln(s.out, path)
	return err
}

// A makeRule gathers what a run reads and writes. Nil gathers nothing.
type makeRule struct {
	printed bool // to standard output
	targets []string

	lock          sync.Mutex // plans are read several at a time
	prerequisites []string
}

// from adds files that were read, or looked for and missing.
func (r *makeRule) from(paths ...string) {
	if r == nil {
		return
	}
	r.lock.Lock()
	defer r.lock.Unlock()
	for _, path := range paths {
		if path != files.Stdin {
			r.prerequisites = append(r.prerequisites, path)
		}
	}
}

// text returns the rule, with an empty rule for each file that was read: if one of them
// is removed later, Make has a way to go on.
func (r *makeRule) text() (string, error) {
	if len(r.targets) == 0 {
		return "", errors.New("--deps: no file was written, so there is no rule to write")
	}
	slices.Sort(r.prerequisites)
	targets, err := makeNames(slices.Compact(r.targets))
	if err != nil {
		return "", err
	}
	sources, err := makeNames(r.prerequisites)
	if err != nil {
		return "", err
	}
	sources = slices.Compact(sources)
	var b strings.Builder
	b.WriteString(strings.Join(targets, " \\\n") + ":")
	for _, source := range sources {
		b.WriteString(" \\\n  " + source)
	}
	b.WriteString("\n")
	for _, source := range sources {
		b.WriteString("\n" + source + ":\n")
	}
	return b.String(), nil
}

// makeNames writes paths as Make reads them, relative to this folder where they lie in it.
func makeNames(paths []string) ([]string, error) {
	here, err := os.Getwd()
	if err != nil {
		return nil, err
	}
	var list []string
	for _, path := range paths {
		if inside, err := filepath.Rel(here, path); err == nil && filepath.IsAbs(path) && filepath.IsLocal(inside) {
			path = inside
		}
		if strings.ContainsAny(path, "\n\r") {
			return nil, fmt.Errorf("--deps: Make knows no name with a line end, as in %q", path)
		}
		list = append(list, makeEscapes.Replace(filepath.ToSlash(filepath.Clean(path))))
	}
	return list, nil
}

// makeEscapes marks the signs of a name that mean something to Make.
var makeEscapes = strings.NewReplacer(" ", `\ `, "#", `\#`, "$", "$$", "%", `\%`)
