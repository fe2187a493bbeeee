// Reading plans whose files change, and waiting until they have settled.

package rebuild

import (
	"context"
	"time"

	"pullscore/cmd/internal/files"
)

// The settling of files: a text is believed once it has stayed the same for
// settle, and one that is bare only after patience, since savers that replace
// a file in two steps leave it so in between. Measured bursts of writing end
// within 0.25 ms (10 kB) to 5 ms (1 MB).
const (
	settle   = 3 * time.Millisecond
	patience = 60 * time.Millisecond
)

// A fresh is a plan and its new reading.
type fresh struct {
	plan    *watched
	reading *reading
}

// settled reads plans, and again until nothing changes any more: the reading
// itself is the time in which files settle.
func (r *Rebuilder) settled(ctx context.Context, start time.Time, pending []*watched) []fresh {
	var done []fresh
	for len(pending) > 0 {
		began := time.Now()
		read := r.read(ctx, pending)
		pause(ctx, settle-time.Since(began))
		for _, f := range read {
			for path := range f.reading.texts {
				if f.plan.last == nil || f.plan.last.texts[path] != f.reading.texts[path] {
					r.texts.look(path)
				}
			}
		}
		pending = nil
		late := time.Since(start) > patience || ctx.Err() != nil
		for _, f := range read {
			if late || f.reading.current(&r.texts) && !f.halfway() {
				done = append(done, f)
			} else {
				pending = append(pending, f.plan)
			}
		}
	}
	return done
}

// outdated returns the plans that were never read or whose files hold
// something else now.
func (r *Rebuilder) outdated() []*watched {
	var list []*watched
	for _, w := range r.plans {
		if w.last == nil || !w.last.current(&r.texts) {
			list = append(list, w)
		}
	}
	return list
}

func (r *Rebuilder) read(ctx context.Context, plans []*watched) []fresh {
	var list []fresh
	files.InOrder(plans, func(w *watched) fresh {
		var old map[string][]*Sheet
		if w.plan != nil {
			old = w.plan.Sheets
		}
		return fresh{w, read(ctx, w.path, &r.texts, old, r.opt.Paper)}
	}, func(f fresh) error {
		list = append(list, f)
		return ctx.Err()
	})
	return list
}

// halfway reports whether a file that held something is bare now, as in the
// middle of a save.
func (f fresh) halfway() bool {
	if f.plan.last == nil {
		return false
	}
	for path, text := range f.reading.texts {
		if old := f.plan.last.texts[path]; old != nil && old != text && text.bare() && !old.bare() {
			return true
		}
	}
	return false
}

// pause waits for d, or until ctx is done.
func pause(ctx context.Context, d time.Duration) {
	if d <= 0 {
		return
	}
	select {
	case <-ctx.Done():
	case <-time.After(d):
	}
}

// causes are the files that made a new reading needed.
func (f fresh) causes() []string {
	var list []string
	for _, path := range f.reading.files {
		if f.plan.last == nil || f.plan.last.texts[path] != f.reading.texts[path] {
			list = append(list, path)
		}
	}
	return list
}
