package files

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"pullscore/lang"
)

// Ext is how the name of a plan ends.
const Ext = ".pull"

// Stdin is the path that stands for standard input.
const Stdin = "-"

// A File is a plan file to be read.
type File struct {
	Path    string // cleaned, or Stdin
	InTree  bool   // found in a folder, not named by itself
	TreeDir string // the folder that it was found in, as it was named
}

// Expand returns the files that the arguments name: a file as it is, a folder
// as every plan in it and in the folders below, by name. Hidden files and
// folders are left out, and links to folders are not followed, so that a
// circle of links has no end to find. Each file comes once. The error joins
// one for every argument or folder that cannot be read; the files are those
// that can.
func Expand(args []string) ([]File, error) {
	var x expansion
	x.seen = map[string]bool{}
	for _, arg := range args {
		if arg == "" {
			x.fail(errors.New("an empty name is no file"))
			continue
		}
		x.argument(arg)
	}
	return x.files, errors.Join(x.errs...)
}

// In returns the plans in a folder and in the folders below, as Expand does;
// none is no error.
func In(folder string) ([]string, error) {
	x := expansion{seen: map[string]bool{}}
	x.folder(folder, folder)
	var list []string
	for _, f := range x.files {
		list = append(list, f.Path)
	}
	return list, errors.Join(x.errs...)
}

type expansion struct {
	files []File
	seen  map[string]bool
	errs  []error
}

func (x *expansion) fail(err error) { x.errs = append(x.errs, err) }

func (x *expansion) add(f File) {
	if !x.seen[f.Path] {
		x.seen[f.Path] = true
		x.files = append(x.files, f)
	}
}

func (x *expansion) argument(arg string) {
	if arg == Stdin {
		x.add(File{Path: Stdin})
		return
	}
	info, err := os.Stat(arg)
	if err != nil {
		x.fail(Plain(err))
		return
	}
	if !info.IsDir() {
		x.add(File{Path: filepath.Clean(arg)})
		return
	}
	before := len(x.files) + len(x.errs)
	x.folder(filepath.Clean(arg), filepath.Clean(arg))
	if len(x.files)+len(x.errs) == before && !x.holdsSeen(filepath.Clean(arg)) {
		x.fail(fmt.Errorf("%s: no %s file in this folder", arg, Ext))
	}
}

// holdsSeen reports whether a file of the folder was named before.
func (x *expansion) holdsSeen(dir string) bool {
	for _, f := range x.files {
		if rel, err := filepath.Rel(dir, f.Path); err == nil && filepath.IsLocal(rel) {
			return true
		}
	}
	return false
}

func (x *expansion) folder(root, dir string) {
	entries, err := os.ReadDir(dir)
	if err != nil {
		x.fail(Plain(err))
	}
	for _, e := range entries {
		path := filepath.Join(dir, e.Name())
		switch {
		case strings.HasPrefix(e.Name(), "."):
		case e.IsDir():
			x.folder(root, path)
		case filepath.Ext(e.Name()) == Ext && regular(path, e):
			x.add(File{Path: path, InTree: true, TreeDir: root})
		}
	}
}

// regular reports whether an entry is a file, or a link to one. What is
// neither, as a pipe, could be waited for for ever. A link that leads nowhere
// counts, so that reading it tells of it.
func regular(path string, e fs.DirEntry) bool {
	if e.Type()&fs.ModeSymlink == 0 {
		return e.Type().IsRegular()
	}
	info, err := os.Stat(path)
	return err != nil || info.Mode().IsRegular()
}

// Plain returns an error of the file system as "PATH: what is wrong", without
// the name of the call.
func Plain(err error) error {
	var path *fs.PathError
	if !errors.As(err, &path) {
		return err
	}
	plain := &plainError{err: path}
	if errors.Is(err, fs.ErrNotExist) {
		plain.near = near(path.Path)
	}
	return plain
}

// near returns the file that was likely meant by one that is not in its folder;
// "" where none has a name that is near enough.
func near(path string) string {
	dir, name := filepath.Split(path)
	entries, err := os.ReadDir(filepath.Clean(dir))
	if err != nil {
		return ""
	}
	ext := filepath.Ext(name)
	var names []string // without the ending, which would make all look alike
	for _, e := range entries {
		if stem := strings.TrimSuffix(e.Name(), ext); !strings.HasPrefix(stem, ".") && filepath.Ext(e.Name()) == ext {
			names = append(names, stem)
		}
	}
	if meant, ok := lang.Nearest(strings.TrimSuffix(name, ext), names); ok {
		return dir + meant + ext
	}
	return ""
}

type plainError struct {
	err  *fs.PathError
	near string // a file that may have been meant
}

func (e *plainError) Error() string {
	switch {
	case e.near != "":
		return e.err.Path + ": no such file; did you mean " + e.near + "?"
	case errors.Is(e.err, fs.ErrNotExist):
		return e.err.Path + ": no such file"
	case errors.Is(e.err, fs.ErrPermission):
		return e.err.Path + ": permission denied"
	}
	return e.err.Path + ": " + e.err.Err.Error()
}

func (e *plainError) Unwrap() error { return e.err }
