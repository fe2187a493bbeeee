// The plans in the folders of the workspace.

package editor

import (
	"io/fs"
	"maps"
	"path/filepath"
	"slices"
	"strings"
	"sync"

	"pullscore/cmd/internal/files"
)

// Limits of a workspace. Beyond them only open plans and what they use are read.
const (
	maxPlans   = 5000
	maxEntries = 200_000 // files and folders of any kind, looked at
)

// isPlan reports whether a file is a plan or a kit, by its name.
func isPlan(path string) bool { return strings.EqualFold(filepath.Ext(path), files.Ext) }

// A workspace knows the plans in its folders. Several goroutines use it.
type workspace struct {
	most     int    // plans that are listed
	tooLarge func() // is called once, if there are too many

	mu    sync.Mutex
	roots []string // of which list was made
	known bool
	found []string
	told  bool
}

// forget has the folders looked through again when they are next wanted.
func (w *workspace) forget() {
	w.mu.Lock()
	defer w.mu.Unlock()
	w.known = false
}

// list returns the plans in the folders, in the order of their paths; none if there are
// too many. Hidden files and folders, and links to folders, are left out.
func (w *workspace) list(s *snapshot) []string {
	roots := s.folders()
	w.mu.Lock()
	defer w.mu.Unlock()
	if w.known && slices.Equal(w.roots, roots) {
		return w.found
	}
	var found []string
	entries, fits := 0, true
	for _, root := range roots {
		fits = fits && w.add(root, &found, &entries)
	}
	slices.Sort(found)
	w.roots, w.known, w.found = roots, true, slices.Compact(found)
	if !fits {
		w.found = nil
		if !w.told {
			w.told = true
			w.tooLarge()
		}
	}
	return w.found
}

// add adds the plans of a folder and of those below. It returns false if there are
// too many.
func (w *workspace) add(root string, found *[]string, entries *int) bool {
	fits, real := true, root
	if r, err := filepath.EvalSymlinks(root); err == nil {
		real = r // a link is not looked behind
	}
	filepath.WalkDir(real, func(path string, e fs.DirEntry, err error) error {
		*entries++
		hidden := path != real && strings.HasPrefix(filepath.Base(path), ".")
		switch {
		case *entries > maxEntries || len(*found) > w.most:
			fits = false
			return fs.SkipAll
		case err != nil: // a folder that cannot be read has no plans for us
			return nil
		case hidden && e.IsDir():
			return fs.SkipDir
		case !hidden && !e.IsDir() && isPlan(path):
			*found = append(*found, root+strings.TrimPrefix(path, real))
		}
		return nil
	})
	return fits && len(*found) <= w.most
}

// folders returns the folders of the workspace: those of the client, or else the folder
// of each open plan.
func (s *snapshot) folders() []string {
	if len(s.roots) > 0 {
		return s.roots
	}
	dirs := map[string]bool{}
	for _, d := range s.open {
		if _, ok := pathOf(d.uri); ok && d.plan {
			dirs[filepath.Dir(d.path)] = true
		}
	}
	return slices.DeleteFunc(slices.Sorted(maps.Keys(dirs)), func(dir string) bool {
		for other := range dirs { // within another, which is looked through anyway
			if rel, err := filepath.Rel(other, dir); err == nil && rel != "." && filepath.IsLocal(rel) {
				return true
			}
		}
		return false
	})
}
