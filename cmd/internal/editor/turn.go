// One round of the worker: the plan that was edited, the open plans, the plans that use
// what is open. Between plans it looks whether there is something newer, and then leaves
// the rest to the next round.

package editor

import (
	"context"
	"maps"
	"slices"
	"strings"
)

// turn brings the client up to date with a snapshot.
func (w *worker) turn(ctx context.Context, s *snapshot) {
	overtaken := func() bool { return ctx.Err() != nil || w.server.newest.Load() != s }
	if d := s.open[s.edited]; d != nil {
		w.dirty[d.real] = true
		if d.plan {
			w.read(ctx, s, d.path)
		}
		w.publish(s, d.real)
	}
	followed := map[string]bool{}
	for _, path := range w.order(s) {
		if overtaken() {
			return
		}
		followed[path] = true
		w.read(ctx, s, path)
		if real := s.shared.disk.realPath(path); w.dirty[real] && !w.isKit(real) {
			w.publish(s, real)
		}
	}
	for path := range w.told {
		if !followed[path] {
			w.drop(path)
		}
	}
	s.shared.plans.keep(func(path string) bool { return followed[path] })
	for _, d := range s.open { // a new version, or opened without being a plan
		w.dirty[d.real] = true
	}
	for real := range w.sent {
		if s.reals[real] == nil {
			w.dirty[real] = true // it may have been closed
		}
	}
	for _, real := range slices.Sorted(maps.Keys(w.dirty)) {
		w.publish(s, real)
	}
	w.askAgain(s)
	w.server.turned(s)
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
func (w *worker) order(s *snapshot) []string {
	var open, users []string
	g := s.graph()
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

// isKit reports whether other plans have findings in a file. Its list is complete only
// when all of them are read.
func (w *worker) isKit(real string) bool {
	for _, r := range w.told {
		if len(r.findings[real]) > 0 && r.reals[r.path] != real {
			return true
		}
	}
	return false
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
