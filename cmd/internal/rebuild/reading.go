// One reading of a plan: interpreted, and drawn if it has no errors.

package rebuild

import (
	"context"
	"errors"
	"io/fs"
	"path/filepath"

	"pullscore/cmd/internal/files"
	"pullscore/interp"
	"pullscore/interp/plan"
	"pullscore/lang"
	"pullscore/render/sheet"
)

// A reading is what a plan came to, and the texts that it was read from.
type reading struct {
	plan     *plan.Plan
	findings []lang.Diagnostic
	sources  map[string][]byte
	files    []string
	texts    map[string]*text // by path, of files
	errors   bool             // among the findings
	sheets   map[string][]*Sheet
}

// read reads the plan at path; old are the sheets of its last drawing. Once ctx
// is done it may draw less than all.
func read(ctx context.Context, path string, t *texts, old map[string][]*Sheet, paper sheet.Paper) *reading {
	used := map[string]*text{}
	res, err := interp.Read(path, interp.Options{Cache: t.parsed, ReadFile: func(path string) ([]byte, error) {
		text := t.get(path)
		used[path] = text
		return text.data, text.err
	}})
	r := &reading{texts: used}
	if err != nil {
		r.unreadable(path, err)
		return r
	}
	r.plan, r.findings, r.sources, r.files = res.Plan, res.Findings, res.Sources, res.Files
	worst, found := lang.Worst(r.findings)
	if r.errors = found && worst == lang.Error; !r.errors {
		r.sheets = redraw(ctx, res, used, old, paper)
	}
	return r
}

// unreadable makes the reading of a plan that cannot be read.
func (r *reading) unreadable(path string, err error) {
	r.plan, r.files, r.errors = &plan.Plan{File: path}, []string{path}, true
	d := lang.Diagnostic{
		Code: "no-such-file", Severity: lang.Error, Message: "the plan cannot be read",
		Range: lang.Range{File: path, Start: lang.Pos{Line: 1, Column: 1}, End: lang.Pos{Line: 1, Column: 1}},
	}
	var system *fs.PathError
	switch {
	case errors.Is(err, fs.ErrNotExist):
		d.Message = "there is no such plan any more, or not yet"
	case errors.As(err, &system):
		d.Detail = system.Err.Error()
	default:
		d.Detail = err.Error()
	}
	r.findings = []lang.Diagnostic{d}
}

// current reports whether the files still hold what was read.
func (r *reading) current(t *texts) bool {
	for path, text := range r.texts {
		if t.get(path) != text {
			return false
		}
	}
	return true
}

// sheets draws the scores of a plan.
func sheets(ctx context.Context, p *plan.Plan, old map[string][]*Sheet, paper sheet.Paper) map[string][]*Sheet {
	all := map[string][]*Sheet{}
	inOrder(p.Shots, func(_ int, shot *plan.Shot) []*Sheet {
		if ctx.Err() != nil {
			return nil
		}
		return Score(shot, old[shot.ID], paper)
	}, func(i int, sheets []*Sheet) {
		all[p.Shots[i].ID] = sheets
	})
	return all
}

// forget lets go of the SVG of the sheets, before they are published, and of
// their pages unless somebody is at work on the plan and will look at them.
func (r *reading) forget(atWork bool) {
	for _, list := range r.sheets {
		for _, sheet := range list {
			sheet.fresh = nil
			if !atWork {
				sheet.kept = nil
			}
		}
	}
}

// inOrder is files.InOrder with the place of every item, and nothing that can
// fail.
func inOrder[In, Out any](items []In, work func(int, In) Out, emit func(int, Out)) {
	places := make([]int, len(items))
	for i := range places {
		places[i] = i
	}
	next := 0
	files.InOrder(places, func(i int) Out { return work(i, items[i]) }, func(out Out) error {
		emit(next, out)
		next++
		return nil
	})
}

// stem is how the names of a shot's drawings begin.
func stem(path, shot string) string {
	base := filepath.Base(path)
	return files.Safe(base[:len(base)-len(filepath.Ext(base))]) + "-" + files.Safe(shot) + "-score"
}
