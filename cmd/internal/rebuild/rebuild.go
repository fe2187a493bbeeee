// The rebuilder: look, read, draw, write, tell.

package rebuild

import (
	"context"
	"fmt"
	"maps"
	"path/filepath"
	"slices"
	"sync/atomic"
	"time"

	"pullscore/cmd/internal/files"
	"pullscore/cmd/internal/watch"
	"pullscore/render/sheet"
)

// Options say how to rebuild.
type Options struct {
	// Folder is where drawings are written; empty: the working folder.
	Folder string
	// Paper is the sheet that they are drawn for.
	Paper sheet.Paper
	// Watch says how changes are noticed.
	Watch watch.Options
}

// A Rebuilder keeps plans and drawings in step.
type Rebuilder struct {
	args    []named
	opt     Options
	watcher *watch.Watcher
	texts   texts
	names   files.Names
	plans   []*watched
	state   atomic.Pointer[State]
	version uint64
}

// New returns a rebuilder of the plans, and of the plans in the folders, that
// the arguments name. Nothing is read yet. It is an error if an argument is not
// there. The folder for drawings is made now and never again: one that vanishes
// later may be a drive that has gone.
func New(args []string, opt Options) (*Rebuilder, error) {
	list, err := arguments(args)
	if err != nil {
		return nil, err
	}
	if opt.Folder == "" {
		opt.Folder = "."
	}
	if err := files.MakeFolder(opt.Folder); err != nil {
		return nil, fmt.Errorf("-o %w", err)
	}
	r := &Rebuilder{args: list, opt: opt, watcher: watch.New(opt.Watch)}
	r.texts = newTexts()
	r.state.Store(&State{})
	return r, nil
}

// State returns what the plans come to now. It may be called at any time from
// any goroutine; before Run has published the first State it has no plans.
func (r *Rebuilder) State() *State { return r.state.Load() }

// Trouble says why changes are seen late; nil: they are not. It is for the
// function that Run calls.
func (r *Rebuilder) Trouble() error { return r.watcher.Trouble() }

// Run reads and draws all plans, calls onChange with them as they are ready,
// then once without changes, and goes on with every change until ctx is done,
// which is no error. It calls onChange from its own goroutine, one call after
// the other, and waits for it. A Rebuilder runs once. The error is one of
// letting go of the folders.
func (r *Rebuilder) Run(ctx context.Context, onChange func(*State, []Change)) error {
	tell := func(changes []Change) {
		if len(changes) > 0 {
			r.publish()
			onChange(r.State(), changes)
		}
	}
	r.rebuild(ctx, watch.Look{All: true, Folders: true}, tell)
	if ctx.Err() == nil {
		onChange(r.State(), nil)
	}
	for {
		look, err := r.watcher.Next(ctx)
		if err != nil { // ctx is done
			return r.watcher.Close()
		}
		r.rebuild(ctx, look, tell)
	}
}

// batch is how many plans are read before they are told of: all that one kit
// is likely to be in, and few enough that the first of a film do not wait for
// the last.
const batch = 8

// rebuild brings everything up to date after a look.
func (r *Rebuilder) rebuild(ctx context.Context, look watch.Look, tell func([]Change)) {
	start := time.Now()
	if look.Folders {
		r.expand()
	}
	if look.All {
		r.texts.lookAll()
	}
	for _, path := range look.Files {
		r.texts.look(path)
	}
	for plans := range slices.Chunk(r.outdated(), batch) {
		read := r.settled(ctx, start, plans)
		if ctx.Err() != nil {
			return
		}
		changes := r.take(read)
		for i := range changes {
			changes[i].Took = time.Since(start)
		}
		tell(changes)
	}
	tell(r.drop())
	if look.All {
		tell(r.retry())
	}
	r.watch()
}

// few is how many plans a save of somebody at work changes at most: one, or
// those of a small kit. More are a folder that is being read.
const few = batch / 2

// take makes the new readings those that count, and writes their drawings.
func (r *Rebuilder) take(read []fresh) []Change {
	var changes []Change
	used := r.usedByOthers(read)
	for _, f := range read {
		causes := f.causes()
		f.plan.last = f.reading
		if f.plan.isKit(f.reading, used[f.plan.path]) {
			continue
		}
		old := f.plan.plan
		c := Change{Plan: r.next(f.plan), First: !f.plan.shown, Causes: causes}
		f.plan.plan, f.plan.shown = c.Plan, true
		if !f.reading.errors {
			c.Drawn, c.Removed, c.Unwritten = r.write(f.plan)
			f.reading.forget(len(read) <= few)
		}
		if old != nil {
			c.Says = says(old, c.Plan)
		}
		changes = append(changes, c)
	}
	return changes
}

// usedByOthers returns the files that plans use besides themselves.
func (r *Rebuilder) usedByOthers(read []fresh) map[string]bool {
	used := map[string]bool{}
	add := func(w *watched, files []string) {
		for _, path := range files {
			used[path] = used[path] || path != w.path
		}
	}
	for _, w := range r.plans {
		if w.last != nil {
			add(w, w.last.files)
		}
	}
	for _, f := range read {
		add(f.plan, f.reading.files)
	}
	return used
}

// next returns what a plan comes to with its last reading.
func (r *Rebuilder) next(w *watched) *Plan {
	r.version++
	p := &Plan{
		Key: w.key, Name: filepath.ToSlash(w.path), Path: w.path,
		Latest: w.last.plan, Findings: w.last.findings, Sources: w.last.sources,
		Files: w.last.files, Version: r.version,
	}
	switch old := w.plan; {
	case !w.last.errors:
		p.Good, p.GoodFindings, p.Sheets = p.Latest, p.Findings, w.last.sheets
		r.name(w, p.Sheets)
	case old != nil:
		p.Good, p.GoodFindings, p.Sheets, p.Stale = old.Good, old.GoodFindings, old.Sheets, old.Good != nil
	}
	return p
}

// farewell is how long a plan may be missing from its folder before it is let
// go of: longer than any saver leaves it out.
const farewell = 1500 * time.Millisecond

// drop lets go of plans that have left their folders, and removes the drawings
// of them that were written here.
func (r *Rebuilder) drop() []Change {
	var changes []Change
	r.plans = slices.DeleteFunc(r.plans, func(w *watched) bool {
		if w.missed.IsZero() || time.Since(w.missed) < farewell {
			return false
		}
		r.names.Drop(w.path)
		removed, err := w.tidy(nil)
		if w.shown {
			changes = append(changes, Change{Plan: w.plan, Gone: true, Causes: []string{w.path}, Removed: removed, Unwritten: err})
		}
		return true
	})
	return changes
}

// watch watches the files that the plans now use, and forgets the text of
// others.
func (r *Rebuilder) watch() {
	files := map[string]bool{}
	for _, w := range r.plans {
		files[w.path] = true
		for _, path := range w.last.files {
			files[path] = true
		}
		for path := range w.last.texts {
			files[path] = true
		}
	}
	var folders []string
	for _, arg := range r.args {
		if arg.folder {
			folders = append(folders, arg.path)
		}
	}
	list := slices.Sorted(maps.Keys(files))
	r.watcher.Watch(list, folders)
	r.texts.keep(files)
}

func (r *Rebuilder) publish() {
	r.version++
	s := &State{Version: r.version}
	for _, w := range r.plans {
		if w.shown {
			s.Plans = append(s.Plans, w.plan)
		}
	}
	r.state.Store(s)
}
