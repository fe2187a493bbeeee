// Which folders are watched, and which names in them matter.

package watch

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"syscall"

	"github.com/fsnotify/fsnotify"

	"pullscore/cmd/internal/files"
)

// An index says which names matter, by their path without links.
type index struct {
	files map[string][]string // where files lie: the watched files that it is about
	// turns are the names that lead to files or folders: folders, links, and
	// what is not there yet.
	turns   map[string]bool
	folders map[string]bool // those below watched folders: any plan in them matters
	needed  map[string]bool // folders to watch; true: a watched file lies in it
}

// concernsFolders reports whether an event can bring a plan to a watched
// folder, or take one away.
func (x *index) concernsFolders(name string, op fsnotify.Op) bool {
	base := filepath.Base(name)
	if !x.folders[filepath.Dir(name)] || strings.HasPrefix(base, ".") || op == fsnotify.Write {
		return false
	}
	if filepath.Ext(base) == files.Ext || x.folders[name] {
		return true
	}
	info, err := os.Lstat(name)
	return err == nil && info.IsDir()
}

// reindex finds out anew where the watched files lie, and watches the folders.
func (w *Watcher) reindex() {
	w.index = index{
		files: map[string][]string{}, turns: map[string]bool{},
		folders: map[string]bool{}, needed: map[string]bool{},
	}
	walk := walker{seen: map[string]step{}}
	for _, file := range w.files {
		w.index.add(walk.places(file), file)
	}
	for _, folder := range w.folders {
		places := walk.places(folder)
		w.index.add(places, "")
		if last := places[len(places)-1]; last.kind == aFolder {
			w.index.tree(last.path())
		}
	}
	w.follow()
}

// add notes the places on the way to a file, or to a folder if file is empty.
func (x *index) add(places []place, file string) {
	for i, p := range places {
		last := i == len(places)-1
		if !last || p.kind != aFile {
			x.turns[p.path()] = true
		}
		if last && file != "" {
			x.files[p.path()] = append(x.files[p.path()], file)
		}
		x.needed[p.folder] = x.needed[p.folder] || last
	}
}

// tree notes a folder and those below it that can hold plans.
func (x *index) tree(root string) {
	filepath.WalkDir(root, func(path string, e fs.DirEntry, err error) error {
		switch {
		case err != nil: // told by whoever reads the folder
			return fs.SkipDir
		case !e.IsDir():
			return nil
		case path != root && strings.HasPrefix(e.Name(), "."):
			return fs.SkipDir
		}
		x.folders[path] = true
		x.needed[path] = true
		return nil
	})
}

// A watchedFolder is one that the system sends events of.
type watchedFolder struct{ info fs.FileInfo }

// distant tells whether folders are watched that hold no watched file, only
// the folders on the way to one. Where a watch on a folder opens every file in
// it, as the BSDs' and macOS's does, a home folder would take too many.
const distant = runtime.GOOS == "linux" || runtime.GOOS == "windows"

// follow watches the folders that are needed and no others. A folder that was
// replaced by another of the same name is watched anew.
func (w *Watcher) follow() {
	if w.events == nil {
		return
	}
	for path, was := range w.watched {
		info, err := os.Stat(path)
		if _, needed := w.index.needed[path]; !needed || err != nil || !os.SameFile(info, was.info) {
			w.forget(path)
		}
	}
	w.trouble = nil
	for path, near := range w.index.needed {
		if !near && !distant {
			continue
		}
		if err := w.add(path); err != nil && near && !harmless(err) {
			w.trouble = err
		}
	}
}

// forget watches a folder no more. To add a path again without this would leave
// the watch on the folder that was there before.
func (w *Watcher) forget(path string) {
	w.events.Remove(path) // an error says that it is gone already
	delete(w.watched, path)
}

// add watches a folder, again if it is watched already: the system may have
// given it up in between.
func (w *Watcher) add(path string) error {
	info, err := os.Stat(path)
	if err != nil {
		return err
	}
	if err := w.events.Add(path); err != nil {
		return &fs.PathError{Op: "watch", Path: path, Err: err}
	}
	w.watched[path] = watchedFolder{info}
	return nil
}

// harmless reports whether a folder that cannot be watched is no reason to
// poll: it is gone, and the folder above it will tell when it comes, or nobody
// may read it.
func harmless(err error) bool {
	return errors.Is(err, fs.ErrNotExist) || errors.Is(err, syscall.ENOTDIR)
}
