// One round of the worker: the plan that was edited, the open plans, the plans that use
// what is open. The last may be a whole film, so several are read at a time. As soon as
// there is a newer snapshot, the round ends and leaves the rest to the next.

package editor

import (
	"cmp"
	"context"
	"maps"
	"runtime"
	"slices"
	"strings"
	"sync/atomic"
)

// maxHeld is how many plans are kept with all that they come to. Of more, only the open
// ones are; of the others their findings.
const maxHeld = 200

// turn brings the client up to date with a snapshot. ctx is done when there is a newer one.
func (w *worker) turn(ctx context.Context, s *snapshot) {
	if d := s.open[s.edited]; d != nil {
		w.dirty[d.real] = true
		if d.plan {
			// Also if there is a newer one by now: who types fast is told something.
			w.read(context.WithoutCancel(ctx), s, d.path)
		}
		w.publish(s, d.real)
	}
	g := s.graphUntil(ctx)
	order := w.order(g, s)
	if ctx.Err() != nil {
		return
	}
	followed := map[string]bool{}
	ready := w.ahead(ctx, s, order)
	for i, path := range order {
		select {
		case <-ready[i]:
		case <-ctx.Done():
		}
		if ctx.Err() != nil {
			return
		}
		followed[path] = true
		w.read(ctx, s, path)
		if real := s.shared.disk.realPath(path); w.dirty[real] && g.by[real] == nil { // a kit's list is complete when all are read
			w.publish(s, real)
		}
	}
	w.forget(s, followed)
	for _, real := range slices.Sorted(maps.Keys(w.dirty)) {
		if ctx.Err() != nil {
			return
		}
		w.publish(s, real)
	}
	w.askAgain(s)
	w.server.turned(s)
}

// ahead interprets plans, as many at a time as there are processors. It returns a channel
// for each plan, which is closed when that is done. What is being read when ctx is done is
// read to its end, and nobody waits for it.
func (w *worker) ahead(ctx context.Context, s *snapshot, paths []string) []chan struct{} {
	ready := make([]chan struct{}, len(paths))
	var wanted []int
	for i, path := range paths {
		ready[i] = make(chan struct{})
		if r := w.told[path]; r != nil && r.holds(s) {
			close(ready[i])
			continue
		}
		wanted = append(wanted, i)
	}
	var next atomic.Int64
	for range min(len(wanted), runtime.GOMAXPROCS(0)) {
		w.server.helpers.Go(func() {
			for n := int(next.Add(1)) - 1; n < len(wanted) && ctx.Err() == nil; n = int(next.Add(1)) - 1 {
				i := wanted[n]
				if d, err := s.at(paths[i]); err == nil {
					w.safely(paths[i], func() { s.shared.plans.get(ctx, s, d.path) })
				}
				close(ready[i])
			}
		})
	}
	return ready
}

// forget drops plans that are not followed any more, and notes which files may have other
// lists for that.
func (w *worker) forget(s *snapshot, followed map[string]bool) {
	for path := range w.told {
		if !followed[path] {
			w.drop(path)
		}
	}
	open := map[string]bool{}
	for _, d := range s.open { // a new version, or opened without being a plan
		w.dirty[d.real], open[d.path] = true, true
	}
	for real, was := range w.sent {
		if was.version != nil && s.reals[real] == nil { // closed
			w.dirty[real] = true
		}
	}
	if len(w.told) > cmp.Or(w.server.options.maxHeld, maxHeld) {
		for path, r := range w.told {
			if !open[path] {
				w.told[path] = r.slim()
			}
		}
		followed = open
	}
	s.shared.plans.keep(func(path string) bool { return followed[path] })
}

// askAgain tells a client that asks for findings that other texts than the edited one have
// others now.
func (w *worker) askAgain(s *snapshot) {
	if w.stale && s.client.Workspace.Diagnostics.RefreshSupport {
		w.server.call("workspace/diagnostic/refresh")
	}
	w.stale = false
}

// order returns the plans that are followed: open ones, then those that use an open file.
func (w *worker) order(g *graph, s *snapshot) []string {
	var open, users []string
	for _, d := range s.open {
		if d.plan {
			open = append(open, d.path)
		}
		users = append(users, g.users(d.real)...)
	}
	slices.Sort(open)
	slices.Sort(users)
	var list []string
	seen := map[string]bool{}
	for _, path := range append(open, users...) {
		if !seen[path] {
			seen[path] = true
			list = append(list, path)
		}
	}
	return list
}

// pathOf returns the path of a file as the plan names it, by its real path.
func (r *reading) pathOf(real string) string {
	for _, path := range slices.Sorted(maps.Keys(r.reals)) {
		if r.reals[path] == real {
			return path
		}
	}
	return real
}

// compareReadings orders readings by path, the one of a file itself first.
func compareReadings(a, b *reading, real string) int {
	if own, other := a.reals[a.path] == real, b.reals[b.path] == real; own != other {
		if own {
			return -1
		}
		return 1
	}
	return strings.Compare(a.path, b.path)
}
