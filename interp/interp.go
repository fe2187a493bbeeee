// What others call: a plan read, and what it comes to.

package interp

import (
	"strings"

	"pullscore/interp/load"
	"pullscore/interp/names"
	"pullscore/interp/plan"
	"pullscore/interp/revision"
	"pullscore/lang"
)

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
func Read(path string, opt load.Options) (*Result, error) {
	opt = opt.WithDefaults()
	src, err := opt.ReadFile(path)
	if err != nil {
		return nil, err
	}
	return Interpret(path, src, opt), nil
}

// Interpret interprets the text of a plan; path names it in findings and is
// what its `use` statements are relative to.
func Interpret(path string, src []byte, opt load.Options) *Result {
	l := &load.Loader{Opt: opt.WithDefaults(), Units: map[string]*names.Unit{}, Texts: map[string]*load.Foreign{}}
	root := l.Parse(path, src)
	l.Uses(root, []string{path})
	p, again := build(root, l, nil)
	if again {
		p, _ = build(root, l, p.plan)
	}
	res := &Result{Plan: p.plan, Findings: lang.Sort(p.To.Diags), Sources: map[string][]byte{}, Files: l.Files, Revision: p.revision, program: p}
	for name, u := range l.Units {
		res.Sources[name] = u.File.Source
	}
	res.quoteForeign(l)
	return res
}

// quoteForeign adds the texts of cuts and pages that findings speak of, as far
// as they do: they can be large.
func (r *Result) quoteForeign(l *load.Loader) {
	ends := map[string]int{}
	note := func(at lang.Range) {
		if f := l.Texts[at.File]; f != nil && f.Err == nil {
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
		text := l.Texts[name].Content
		end = min(end, len(text))
		if line := strings.IndexByte(text[end:], '\n'); line >= 0 {
			text = text[:end+line+1]
		}
		r.Sources[name] = []byte(text)
	}
}
