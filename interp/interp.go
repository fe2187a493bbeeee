// Package interp turns a plan file into numbers and findings.
//
// It goes one way: files are loaded and their names gathered (load.go,
// scope.go), values evaluated (eval.go), the kit resolved (kit.go), and then
// each shot is built: its set-up (setup.go), its stage (stage.go), its clock
// (clock.go), its pulls (pulls.go, figures.go). What comes out is a plan.Plan,
// plain data, which the checks (check_*.go) read. A check that can tell what
// would cure its finding builds the shot once more with that one change and
// keeps the cure only if the finding is gone.
//
// Inside, lengths are metres, times seconds, angles degrees.
package interp

import (
	"bytes"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"

	"pullscore/interp/plan"
	"pullscore/interp/revision"
	"pullscore/lang"
)

// MaxFileSize is the size in bytes above which a file is not read;
// MaxForeignSize holds for the files of a cut and for script pages.
const (
	MaxFileSize    = 8 << 20
	MaxForeignSize = 128 << 20
)

// Options say how files are read.
type Options struct {
	// ReadFile reads a file that a plan uses; nil is ReadFile of this package.
	ReadFile func(path string) ([]byte, error)
	// Script, where it is set, is the page that the plan's lines are compared
	// with, in place of those that its `script` statements name.
	Script *Script
	// Progress, where it is set, is told how far the reading of a cut or a page
	// is, in bytes, about every megabyte: of one text after another.
	Progress func(done, total int)
}

// A Script is a script page in Fountain.
type Script struct {
	Path  string // names it in findings
	Text  []byte
	Scene string // the number of the one scene that is meant; empty: all
}

// A Result is what a plan file comes to.
type Result struct {
	// Plan holds what could be computed; it is never nil.
	Plan *plan.Plan
	// Findings are all mistakes and findings, sorted.
	Findings []lang.Diagnostic
	// Sources holds the text of every plan file that was read, and of the cuts
	// and pages that findings speak of up to the last line that they do, by path,
	// for quoting: without a byte order mark and with LF line ends where it is
	// somebody else's.
	Sources map[string][]byte
	// Files lists the plan and every file that it uses or names, also those that could
	// not be read.
	Files []string
	// Revision is what the script page has otherwise; nil without a page.
	Revision []revision.Change

	program *program // to take shots anew
}

// Read interprets the plan file at path. The error is one of reading that file;
// whatever is wrong inside it is a finding.
func Read(path string, opt Options) (*Result, error) {
	opt = opt.withDefaults()
	src, err := opt.ReadFile(path)
	if err != nil {
		return nil, err
	}
	return Interpret(path, src, opt), nil
}

// Interpret interprets the text of a plan; path names it in findings and is
// what its `use` statements are relative to.
func Interpret(path string, src []byte, opt Options) *Result {
	l := &loader{opt: opt.withDefaults(), units: map[string]*unit{}, texts: map[string]*foreign{}}
	root := l.parse(path, src)
	l.uses(root, []string{path})
	p := newProgram(root, l)
	if p.build(); p.again {
		before := p.plan
		p = newProgram(root, l)
		p.before = before
		p.build()
	}
	res := &Result{Plan: p.plan, Findings: lang.Sort(p.diags), Sources: map[string][]byte{}, Files: l.files, Revision: p.revision, program: p}
	for name, u := range l.units {
		res.Sources[name] = u.file.Source
	}
	res.quoteForeign(l)
	return res
}

// quoteForeign adds the texts of cuts and pages that findings speak of, as far
// as they do: they can be large.
func (r *Result) quoteForeign(l *loader) {
	ends := map[string]int{}
	note := func(at lang.Range) {
		if f := l.texts[at.File]; f != nil && f.err == nil {
			ends[at.File] = max(ends[at.File], at.End.Offset)
		}
	}
	for _, d := range r.Findings {
		note(d.Range)
		for _, related := range d.Related {
			note(related.Range)
		}
	}
	for name, end := range ends {
		text := l.texts[name].Content
		end = min(end, len(text))
		if line := strings.IndexByte(text[end:], '\n'); line >= 0 {
			text = text[:end+line+1]
		}
		r.Sources[name] = []byte(text)
	}
}

func (o Options) withDefaults() Options {
	if o.ReadFile == nil {
		o.ReadFile = ReadFile
	}
	return o
}

// SizeLimit is how large a file may be, by its ending, and what it then is.
func SizeLimit(path string) (limit int64, what string) {
	switch strings.ToLower(filepath.Ext(path)) {
	case ".srt", ".vtt", ".edl", ".otio":
		return MaxForeignSize, "a cut"
	case ".fountain":
		return MaxForeignSize, "a script"
	}
	return MaxFileSize, "a plan"
}

// ReadFile reads a regular file of at most MaxFileSize bytes, or MaxForeignSize
// by its ending: a device or a pipe that never ends is an error, not a wait.
func ReadFile(path string) ([]byte, error) {
	info, err := os.Stat(path) // before it is opened: to open a pipe can be to wait
	if err != nil {
		return nil, err
	}
	limit, what := SizeLimit(path)
	switch {
	case !info.Mode().IsRegular():
		return nil, fmt.Errorf("%s is no regular file", path)
	case info.Size() > limit:
		return nil, fmt.Errorf("%s has %d MB; %s has at most %d MB", path, info.Size()>>20, what, limit>>20)
	}
	f, err := os.Open(path)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	text := bytes.NewBuffer(make([]byte, 0, info.Size()+bytes.MinRead)) // the room that ReadFrom wants
	_, err = text.ReadFrom(io.LimitReader(f, limit+1))
	return text.Bytes(), err
}
