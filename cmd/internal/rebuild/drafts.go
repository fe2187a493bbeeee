// Plans of texts that somebody is writing and has not saved: nothing is written to disk,
// and nothing has to settle.

package rebuild

import "context"

// Drafts make States of texts that are given. Only one goroutine uses them at a time.
type Drafts struct {
	r Rebuilder
}

// NewDrafts returns drafts without plans.
func NewDrafts() *Drafts {
	d := &Drafts{}
	d.r.texts = newTexts()
	d.r.state.Store(&State{})
	return d
}

// Add adds a plan by its path, and returns its key. A plan is added once.
func (d *Drafts) Add(path string) string {
	for _, w := range d.r.plans {
		if w.path == path {
			return w.key
		}
	}
	w := &watched{path: path, key: key(path, d.r.taken(nil)), made: map[string]string{}}
	d.r.plans = append(d.r.plans, w)
	return w.key
}

// Key returns the key of a plan; ok is false if it was not added.
func (d *Drafts) Key(path string) (key string, ok bool) {
	for _, w := range d.r.plans {
		if w.path == path {
			return w.key, true
		}
	}
	return "", false
}

// Read reads the plans whose texts are not what they were, and returns what all come to.
// read returns the text of a file; several goroutines call it. Once ctx is done fewer
// shots may be drawn, and the State is not to be shown.
func (d *Drafts) Read(ctx context.Context, read func(path string) ([]byte, error)) *State {
	d.r.texts = d.r.texts.from(read)
	changed := false
	for _, f := range d.r.read(ctx, d.r.outdated()) {
		f.plan.last = f.reading
		f.plan.plan, f.plan.shown = d.r.next(f.plan), true
		f.reading.forget(true)
		changed = true
	}
	if changed {
		d.r.publish()
	}
	used := map[string]bool{}
	for _, w := range d.r.plans {
		if w.last != nil {
			for path := range w.last.texts {
				used[path] = true
			}
		}
	}
	d.r.texts.keep(used)
	return d.r.State()
}
