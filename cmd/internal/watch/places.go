// The way to a file: every name on it that could be made to lead elsewhere.

package watch

import (
	"io/fs"
	"os"
	"path/filepath"
	"strings"
)

// maxLinks is how many links a way may lead over, as in most systems; a circle
// of links has more.
const maxLinks = 40

// A kind is what a name stands for.
type kind uint8

const (
	nothing kind = iota
	aFile
	aFolder
	aLink
)

// A place is a name in a folder. The folder's path has no links in it.
type place struct {
	folder, name string
	kind         kind
}

func (p place) path() string { return filepath.Join(p.folder, p.name) }

// A step is what was found at a path.
type step struct {
	kind   kind
	target string // of a link
}

// A walker goes ways, and remembers what it saw on them.
type walker struct{ seen map[string]step }

// places returns every place on the way to the file at path, over all links,
// up to the file itself or the first name that is not there. There is at least
// one.
func (w *walker) places(path string) []place {
	if abs, err := filepath.Abs(path); err == nil {
		path = abs
	}
	folder, rest := split(path)
	list := []place{{folder: folder, name: ".", kind: aFolder}}
	for links := 0; len(rest) > 0; {
		name := rest[0]
		rest = rest[1:]
		switch name {
		case "", ".":
			continue
		case "..":
			folder = filepath.Dir(folder)
			continue
		}
		at := filepath.Join(folder, name)
		found := w.find(at)
		list = append(list, place{folder, name, found.kind})
		switch found.kind {
		case nothing:
			return list
		case aLink:
			if links++; links > maxLinks {
				return list
			}
			target, names := split(found.target)
			if target != "" {
				folder = target
			}
			rest = append(names, rest...)
		default:
			folder = at
		}
	}
	return list
}

// split returns the root of a path, empty for one relative to a folder, and
// the names below it.
func split(path string) (root string, names []string) {
	if filepath.IsAbs(path) {
		root = filepath.VolumeName(path) + string(filepath.Separator)
		path = path[len(root):]
	}
	return root, strings.Split(filepath.ToSlash(path), "/")
}

// find says what is at a path whose folder has no links in it.
func (w *walker) find(path string) step {
	if s, ok := w.seen[path]; ok {
		return s
	}
	s := step{}
	info, err := os.Lstat(path)
	switch {
	case err != nil:
	case info.Mode()&fs.ModeSymlink != 0:
		if target, err := os.Readlink(path); err == nil {
			s = step{aLink, target}
		}
	case info.IsDir():
		s.kind = aFolder
	default:
		s.kind = aFile
	}
	w.seen[path] = s
	return s
}
