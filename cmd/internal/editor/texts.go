// Texts on disk, each read once until it changes.

package editor

import (
	"bytes"
	"path/filepath"
	"sync"
	"unicode"

	"pullscore/interp"
	"pullscore/lang"
)

// A text is the content of one file. It never changes; two texts are the same if their
// pointers are.
type text struct {
	data []byte
	err  error // it could not be read

	index func() *lineIndex
	names func() []string // the files that it names

	mu   sync.Mutex
	tree *lang.File // when it was last asked for
}

// parsed returns the tree of a text. path names it in the tree.
func (t *text) parsed(path string) *lang.File {
	t.mu.Lock()
	defer t.mu.Unlock()
	if t.tree == nil || t.tree.Path != path {
		t.tree, _ = lang.Parse(path, t.data)
	}
	return t.tree
}

func newText(data []byte, err error) *text {
	t := &text{data: data, err: err}
	t.index = sync.OnceValue(func() *lineIndex { return newLineIndex(data) })
	t.names = sync.OnceValue(func() []string { return namedFiles(data) })
	return t
}

// namedFiles returns the files that a plan names, as it names them. It parses only the
// lines that may name one: a workspace has thousands of plans.
func namedFiles(data []byte) (list []string) {
	file, _ := lang.Parse("", namingLines(data))
	for _, said := range filesNamed(file) {
		list = append(list, said.Value)
	}
	return list
}

// namingLines returns the lines of a plan that may name a file, with those that such a
// line goes on in, and the headers that they may stand under.
func namingLines(data []byte) (kept []byte) {
	on := false
	for line := range bytes.Lines(bytes.ReplaceAll(data, []byte("\r"), []byte("\n"))) {
		word := bytes.TrimLeftFunc(line, func(r rune) bool { return unicode.IsSpace(r) || r == '\ufeff' })
		if end := bytes.IndexFunc(word, func(r rune) bool { return !unicode.IsLetter(r) }); end >= 0 {
			word = word[:end]
		}
		switch string(word) {
		case "use", "edit", "script", "clips", "takes", "puller":
			on = true
		}
		if on {
			kept = append(kept, line...)
		}
		said, _, _ := bytes.Cut(line, []byte("#"))
		on = on && (bytes.HasSuffix(bytes.TrimSpace(said), []byte(",")) || len(bytes.TrimSpace(said)) == 0)
	}
	return kept
}

// A disk holds what was read of it. Several goroutines use it.
type disk struct {
	mu    sync.Mutex
	texts map[string]*text  // by real path
	stale map[string]*text  // what was read before a change
	real  map[string]string // real paths, by path
	turns int               // how often something was forgotten
}

func newDisk() *disk {
	return &disk{texts: map[string]*text{}, stale: map[string]*text{}, real: map[string]string{}}
}

// read returns the text of a file, by its real path.
func (d *disk) read(real string) *text {
	for {
		d.mu.Lock()
		t, turn := d.texts[real], d.turns
		d.mu.Unlock()
		if t != nil {
			return t
		}
		data, err := interp.ReadFile(real)
		if t := d.keep(real, turn, newText(data, err)); t != nil {
			return t
		}
	}
}

// keep keeps what was read, and returns what is to be used in its place; nil if the
// file may have changed while it was read.
func (d *disk) keep(real string, turn int, t *text) *text {
	d.mu.Lock()
	defer d.mu.Unlock()
	if d.turns != turn {
		return nil
	}
	if other := d.texts[real]; other != nil {
		return other // somebody was faster
	}
	if old := d.stale[real]; old != nil && sameError(old.err, t.err) && bytes.Equal(old.data, t.data) {
		t = old // so that nothing is interpreted again
	}
	delete(d.stale, real)
	d.texts[real] = t
	return t
}

func sameError(a, b error) bool {
	return (a == nil) == (b == nil) && (a == nil || a.Error() == b.Error())
}

// turn counts how often something was forgotten.
func (d *disk) turn() int {
	d.mu.Lock()
	defer d.mu.Unlock()
	return d.turns
}

// forget has files read again when they are next wanted; all if none is named.
func (d *disk) forget(reals ...string) {
	d.mu.Lock()
	defer d.mu.Unlock()
	d.turns++
	clear(d.real)
	if len(reals) == 0 {
		for real, t := range d.texts {
			d.stale[real] = t
		}
		clear(d.texts)
	}
	for _, real := range reals {
		if t := d.texts[real]; t != nil {
			d.stale[real] = t
			delete(d.texts, real)
		}
	}
}

// realPath returns the path of a file without symbolic links; of one that is not there,
// the real path of its folder with its name.
func (d *disk) realPath(path string) string {
	d.mu.Lock()
	real, ok := d.real[path]
	d.mu.Unlock()
	if ok {
		return real
	}
	real = path
	if r, err := filepath.EvalSymlinks(path); err == nil {
		real = r
	} else if dir, err := filepath.EvalSymlinks(filepath.Dir(path)); err == nil {
		real = filepath.Join(dir, filepath.Base(path))
	}
	d.mu.Lock()
	defer d.mu.Unlock()
	d.real[path] = real
	return real
}
