package states

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"os/exec"
	"path"
	"path/filepath"
	"strconv"
	"strings"
	"sync"

	"pullscore/interp"
)

// A Tree holds the files of a revision. It is safe for use by many at once.
type Tree struct {
	root    string          // of the working tree, absolute
	prefix  string          // of the current folder below the root, with a slash behind it or empty
	current string          // the current folder, without links in it
	files   map[string]file // by their paths from the root, with slashes
	absent  []string        // the submodules that cannot be read
	texts   sync.Map        // of the files that were read, by their objects: many plans use one kit
}

// A file is what a tree knows of one of its files.
type file struct {
	repository string // of the submodule that it lies in; empty: the tree's own
	object     string
	size       int64
	link       bool
}

// Split splits REVISION:PATH where an argument has that form and names no file;
// ok is false where it does not.
func Split(arg string) (revision, name string, ok bool) {
	if _, err := os.Lstat(arg); err == nil {
		return "", "", false
	}
	at := colon(arg)
	if at < 0 || filepath.VolumeName(arg) != "" {
		return "", "", false
	}
	return arg[:at], arg[at+1:], true
}

// colon returns where a revision ends, as git sees it: one in braces belongs to
// it, as in HEAD@{10:00}. It is -1 where there is none.
func colon(arg string) int {
	depth := 0
	for i := range len(arg) {
		switch c := arg[i]; {
		case c == '{':
			depth++
		case c == '}' && depth > 0:
			depth--
		case c == ':' && depth == 0:
			return i
		}
	}
	return -1
}

// Tracked returns the files of the repository around the current folder that
// have a name like the pattern ("*.pull"), as seen from the current folder.
func Tracked(pattern string) ([]string, error) {
	out, err := git("ls-files", "-z", "--", ":/"+pattern)
	if err != nil {
		return nil, err
	}
	return strings.FieldsFunc(string(out), func(r rune) bool { return r == 0 }), nil
}

// Open reads which files a revision of the repository around the current folder
// has. The error is what git says: that there is no repository, or no such
// revision.
func Open(revision string) (*Tree, error) {
	if revision == "" {
		return nil, errors.New("a colon wants a revision before it, as HEAD:scene.pull")
	}
	where, err := git("rev-parse", "--show-toplevel", "--show-prefix")
	if err != nil {
		return nil, err
	}
	// The prefix is empty, and then its line is too, at the top.
	lines := strings.SplitN(string(where)+"\n", "\n", 3)
	id, err := git("rev-parse", "--verify", "--quiet", "--end-of-options", revision+"^{tree}")
	if err != nil {
		return nil, fmt.Errorf("git knows no revision %q here", revision)
	}
	list, err := git("ls-tree", "-r", "-l", "-z", "--full-tree", strings.TrimSpace(string(id)))
	if err != nil {
		return nil, err
	}
	current, err := os.Getwd()
	if err != nil {
		return nil, err
	}
	t := &Tree{root: filepath.FromSlash(lines[0]), prefix: lines[1], current: real(current), files: map[string]file{}}
	t.root = real(t.root)
	return t, t.list(string(list), "", "")
}

// real returns a path without links in it, or as it is where that fails.
func real(p string) string {
	if r, err := filepath.EvalSymlinks(p); err == nil {
		return r
	}
	return p
}

// The modes of git's trees.
const (
	linkMode   = "120000"
	moduleMode = "160000"
)

// list takes the entries that ls-tree prints of a repository, whose files lie
// below a path: "MODE TYPE OBJECT SIZE\tPATH\0".
func (t *Tree) list(text, repository, below string) error {
	for entry := range strings.SplitSeq(strings.TrimSuffix(text, "\x00"), "\x00") {
		if entry == "" {
			continue // an empty tree
		}
		head, name, ok := strings.Cut(entry, "\t")
		f := strings.Fields(head)
		if !ok || len(f) != 4 {
			return fmt.Errorf("git ls-tree printed %q", entry)
		}
		if f[0] == moduleMode {
			if err := t.module(below+name, f[2]); err != nil {
				return err
			}
			continue
		}
		size, err := strconv.ParseInt(f[3], 10, 64)
		if err != nil {
			return fmt.Errorf("git ls-tree printed %q", entry)
		}
		t.files[below+name] = file{repository: repository, object: f[2], size: size, link: f[0] == linkMode}
	}
	return nil
}

// Path returns where the file of a revision's path would lie, as seen from the
// current folder. As everywhere in git the path is from the top of the
// repository, from the current folder where it begins with ./ or ../. A path
// from the root of the system is taken too, where git takes none.
func (t *Tree) Path(name string) string {
	if filepath.IsAbs(name) {
		return t.seen(filepath.Join(real(filepath.Dir(name)), filepath.Base(name)))
	}
	name = filepath.ToSlash(name)
	if strings.HasPrefix(name, "./") || strings.HasPrefix(name, "../") || name == "." || name == ".." {
		name = path.Join(t.prefix, name)
	}
	return t.seen(filepath.Join(t.root, filepath.FromSlash(name)))
}

// seen returns a path as it is seen from the current folder.
func (t *Tree) seen(full string) string {
	if rel, err := filepath.Rel(t.current, full); err == nil {
		return rel
	}
	return full
}

// name returns the path of a file in the tree; ok is false for one outside of
// the repository.
func (t *Tree) name(file string) (name string, ok bool) {
	if !filepath.IsAbs(file) {
		file = filepath.Join(t.current, file)
	}
	rel, err := filepath.Rel(t.root, filepath.Clean(file))
	if err != nil || !filepath.IsLocal(rel) {
		return "", false
	}
	return filepath.ToSlash(rel), true
}

// ReadFile reads a file as the revision has it, following links within the
// repository. What lies outside of it is read as it is now.
func (t *Tree) ReadFile(file string) ([]byte, error) {
	name, ok := t.name(file)
	if !ok {
		return interp.ReadFile(file)
	}
	return t.read(file, name, 0)
}

// mostLinks is how many links in a row are followed, as by most systems.
const mostLinks = 40

func (t *Tree) read(asked, name string, links int) ([]byte, error) {
	at, f, ok := t.entry(name)
	if !ok {
		if err := t.Absent(asked); err != nil {
			return nil, fmt.Errorf("%s %w", asked, err)
		}
		return nil, &fs.PathError{Op: "open", Path: asked, Err: fs.ErrNotExist}
	}
	if limit, what := interp.SizeLimit(asked); f.size > limit {
		return nil, fmt.Errorf("%s has %d MB; %s has at most %d MB", asked, f.size>>20, what, limit>>20)
	}
	text, err := t.text(f)
	if err != nil || !f.link {
		return text, err
	}
	target := path.Join(path.Dir(at), filepath.ToSlash(string(text)), name[len(at):])
	if links == mostLinks || path.IsAbs(string(text)) || !filepath.IsLocal(filepath.FromSlash(target)) {
		return nil, fmt.Errorf("%s is a link that leads to no file of the repository", asked)
	}
	return t.read(asked, target, links+1)
}

// entry returns the file at a path, or the link to a folder that stands on the
// way there.
func (t *Tree) entry(name string) (at string, f file, ok bool) {
	for at = name; at != "."; at = path.Dir(at) {
		if f, ok = t.files[at]; ok && (f.link || at == name) {
			return at, f, true
		}
	}
	return "", file{}, false
}

// text returns what the object of a file holds.
func (t *Tree) text(f file) ([]byte, error) {
	if text, ok := t.texts.Load(f.object); ok {
		return text.([]byte), nil
	}
	text, err := gitIn(f.repository, "cat-file", "blob", f.object)
	if err == nil {
		t.texts.Store(f.object, text)
	}
	return text, err
}

// IsFolder reports whether the revision has a folder at a path.
func (t *Tree) IsFolder(folder string) bool {
	return len(t.Below(folder)) > 0
}

// Has reports whether the revision has a file at a path.
func (t *Tree) Has(file string) bool {
	name, ok := t.name(file)
	_, has := t.files[name]
	return ok && has
}

// Below returns the files below a folder, by their paths from it, with slashes;
// hidden files and those in hidden folders are left out.
func (t *Tree) Below(folder string) []string {
	name, ok := t.name(folder)
	if !ok {
		return nil
	}
	prefix := name + "/"
	if name == "." {
		prefix = ""
	}
	var list []string
	for f := range t.files {
		if rel, ok := strings.CutPrefix(f, prefix); ok && !strings.HasPrefix(rel, ".") && !strings.Contains(rel, "/.") {
			list = append(list, rel)
		}
	}
	return list
}

// git runs git and returns what it prints. Its complaint is the error.
func git(args ...string) ([]byte, error) {
	cmd := exec.Command("git", args...)
	var complaint bytes.Buffer
	cmd.Stderr = &complaint
	out, err := cmd.Output()
	if err == nil {
		return out, nil
	}
	if text := strings.TrimSpace(complaint.String()); text != "" {
		return nil, errors.New("git: " + strings.TrimPrefix(text, "fatal: "))
	}
	return nil, fmt.Errorf("git: %w", err)
}
