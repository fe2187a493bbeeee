// Which plans use which files. This reads the statements that name files, and interprets
// nothing.

package editor

import (
	"context"
	"maps"
	"path/filepath"
	"slices"
	"sync"
)

// A graph says who names a file directly.
type graph struct {
	paths map[string]string   // the path of every plan, by its real path
	by    map[string][]string // real paths of those that name a file, by its real path
}

// A drawn is what a graph was made of: few letters that are typed change any of it.
type drawn struct {
	turn  int                 // of the disk
	roots []string            // of the workspace
	names map[string][]string // that open plans name, by their paths
}

func (d drawn) equal(other drawn) bool {
	return d.turn == other.turn && slices.Equal(d.roots, other.roots) && maps.EqualFunc(d.names, other.names, slices.Equal)
}

// graphs keeps the last graph. Several goroutines use it.
type graphs struct {
	mu   sync.Mutex
	of   drawn
	last *graph // never changes
}

// graph returns who uses whom among the open plans and those of the workspace.
func (s *snapshot) graph() *graph { return s.graphUntil(context.Background()) }

// graphUntil is graph, and is not complete if ctx is done.
func (s *snapshot) graphUntil(ctx context.Context) *graph {
	of := drawn{turn: s.shared.disk.turn(), roots: s.folders(), names: map[string][]string{}}
	for _, d := range s.open {
		if d.plan {
			of.names[d.path] = d.names()
		}
	}
	kept := &s.shared.graphs
	kept.mu.Lock()
	last, same := kept.last, of.equal(kept.of)
	kept.mu.Unlock()
	if last != nil && same {
		return last
	}
	g := s.draw(ctx)
	if ctx.Err() == nil {
		kept.mu.Lock()
		kept.of, kept.last = of, g
		kept.mu.Unlock()
	}
	return g
}

// draw makes a graph.
func (s *snapshot) draw(ctx context.Context) *graph {
	g := &graph{paths: map[string]string{}, by: map[string][]string{}}
	for _, d := range s.open {
		if d.plan {
			g.paths[d.real] = d.path
		}
	}
	for _, path := range s.shared.workspace.list(s) {
		if real := s.shared.disk.realPath(path); g.paths[real] == "" {
			g.paths[real] = path
		}
	}
	reached := slices.Sorted(maps.Keys(g.paths))
	known := maps.Clone(g.paths)
	for i := 0; i < len(reached) && ctx.Err() == nil; i++ { // also kits outside of the workspace
		real := reached[i]
		for _, name := range s.textOf(real).names() {
			path := beside(known[real], name)
			to := s.shared.disk.realPath(path)
			if !slices.Contains(g.by[to], real) {
				g.by[to] = append(g.by[to], real)
			}
			if isPlan(to) && known[to] == "" {
				known[to] = path
				reached = append(reached, to)
			}
		}
	}
	return g
}

// beside returns the path of a file as a plan names it.
func beside(plan, name string) string {
	if filepath.IsAbs(name) {
		return filepath.Clean(name)
	}
	return filepath.Join(filepath.Dir(plan), filepath.FromSlash(name))
}

// users returns the paths of the plans that use a file, by any way. Only those are listed
// that are open or in the workspace.
func (g *graph) users(real string) (list []string) {
	seen := map[string]bool{real: true}
	for next := []string{real}; len(next) > 0; next = next[1:] {
		for _, by := range g.by[next[0]] {
			if seen[by] {
				continue
			}
			seen[by] = true
			next = append(next, by)
			if path, ok := g.paths[by]; ok {
				list = append(list, path)
			}
		}
	}
	slices.Sort(list)
	return list
}
