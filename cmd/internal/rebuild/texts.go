// The text of files, read only when there is reason to, and the same for
// every plan that uses them.

package rebuild

import (
	"bytes"
	"io/fs"
	"os"
	"sync"
	"time"

	"pullscore/interp"
)

// A text is what a file held at a time, or why it could not be read. It is
// never changed: as long as a file holds the same, its text is the same
// pointer.
type text struct {
	data []byte
	err  error
}

// bare reports whether there is nothing in the file, or no file: what a save
// leaves for a moment, and nobody wants to keep.
func (t *text) bare() bool { return t.err != nil || len(t.data) == 0 }

func (t *text) same(other *text) bool {
	if t.err != nil || other.err != nil {
		return t.err != nil && other.err != nil && t.err.Error() == other.err.Error()
	}
	return bytes.Equal(t.data, other.data)
}

// An entry is a file's text and how the file looked when it was read.
type entry struct {
	text *text
	info fs.FileInfo // nil: could not be told
	read time.Time
}

// grain is the coarsest step of the times that file systems keep. A file that
// changed less than this before it was read can have changed after it too, and
// show the same time and size.
const grain = 3 * time.Second

// current reports whether the file surely is as it was when it was read, as
// far as that shows without reading it.
func (e *entry) current(path string) bool {
	info, err := os.Stat(path)
	return err == nil && e.info != nil && e.text.err == nil &&
		os.SameFile(info, e.info) && info.Size() == e.info.Size() &&
		info.ModTime().Equal(e.info.ModTime()) && e.read.Sub(info.ModTime()) > grain
}

// texts holds files by path, and what they were parsed to.
type texts struct {
	parsed  *interp.Cache
	read    func(path string) ([]byte, error) // where they come from; nil: from disk
	mu      sync.Mutex
	entries map[string]*entry
}

// mostParsed is how many bytes of texts may have been parsed to what is kept: more than
// the kits, cuts and pages of a film have.
const mostParsed = 64 << 20

func newTexts() texts {
	return texts{parsed: interp.NewCache(mostParsed), entries: map[string]*entry{}}
}

// from returns the files that are held, and later others, as read gives them. A file that
// holds the same keeps its text.
func (t *texts) from(read func(path string) ([]byte, error)) texts {
	t.mu.Lock()
	defer t.mu.Unlock()
	entries := map[string]*entry{}
	for path, old := range t.entries {
		e := &entry{text: textFrom(read, path)}
		if e.text.same(old.text) {
			e.text = old.text
		}
		entries[path] = e
	}
	return texts{parsed: t.parsed, read: read, entries: entries}
}

func textFrom(read func(path string) ([]byte, error), path string) *text {
	data, err := read(path)
	return &text{data, err}
}

// get returns the text of a file, which is read if it has not been yet.
func (t *texts) get(path string) *text {
	t.mu.Lock()
	defer t.mu.Unlock()
	e := t.entries[path]
	if e == nil {
		if t.read != nil {
			e = &entry{text: textFrom(t.read, path)}
		} else {
			e = readEntry(path)
		}
		t.entries[path] = e
	}
	return e.text
}

// look reads a file again, if it is one that was read before.
func (t *texts) look(path string) {
	t.mu.Lock()
	defer t.mu.Unlock()
	old := t.entries[path]
	if old == nil {
		return
	}
	e := readEntry(path)
	if e.text.same(old.text) {
		e.text = old.text
	}
	t.entries[path] = e
}

// lookAll reads every file again that may have changed.
func (t *texts) lookAll() {
	t.mu.Lock()
	var list []string
	for path, e := range t.entries {
		if !e.current(path) {
			list = append(list, path)
		}
	}
	t.mu.Unlock()
	for _, path := range list {
		t.look(path)
	}
}

// holds reports whether a file is among those read.
func (t *texts) holds(path string) bool {
	t.mu.Lock()
	defer t.mu.Unlock()
	return t.entries[path] != nil
}

// keep forgets all files but these.
func (t *texts) keep(used map[string]bool) {
	t.mu.Lock()
	defer t.mu.Unlock()
	for path := range t.entries {
		if !used[path] {
			delete(t.entries, path)
		}
	}
}

func readEntry(path string) *entry {
	e := &entry{read: time.Now()}
	e.info, _ = os.Stat(path) // before it is read, so that a later change shows
	data, err := interp.ReadFile(path)
	e.text = &text{data, err}
	return e
}
