// Reading: how the bytes of a file come in, and how many may.

package load

import (
	"bytes"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
)

// MaxFileSize is the size in bytes above which a file is not read;
// MaxForeignSize holds for the files of a cut and for script pages.
const (
	MaxFileSize    = 8 << 20
	MaxForeignSize = 128 << 20
)

// Options say how files are read.
type Options struct {
	// ReadFile reads a file that a plan uses; nil is ReadFile of this package.
	ReadFile func(path string) ([]byte, error)
	// Cache, where it is set, keeps what files were parsed to, for those who read again.
	// The bytes that ReadFile returns must never change then.
	Cache *Cache
	// Script, where it is set, is the page that the plan's lines are compared
	// with, in place of those that its `script` statements name.
	Script *Script
	// WithoutLogs leaves every hand as one of which nothing is known but what its
	// section says: no log of takes is read.
	WithoutLogs bool
	// Against, where it is set, is the list of a cut that the plan follows, in place of
	// the lists of clips that its `edit` statements name.
	Against string
	// Progress, where it is set, is told how far the reading of a cut or a page
	// is, in bytes, about every megabyte: of one text after another.
	Progress func(done, total int)
}

// A Script is a script page in Fountain.
type Script struct {
	Path  string // names it in findings
	Text  []byte
	Scene string // the number of the one scene that is meant; empty: all
}

// WithDefaults returns the options with what stands in where nothing is set.
func (o Options) WithDefaults() Options {
	if o.ReadFile == nil {
		o.ReadFile = ReadFile
	}
	return o
}

// SizeLimit is how large a file may be, by its ending, and what it then is.
func SizeLimit(path string) (limit int64, what string) {
	switch strings.ToLower(filepath.Ext(path)) {
	case ".srt", ".vtt", ".edl", ".otio":
		return MaxForeignSize, "a cut"
	case ".ale":
		return MaxForeignSize, "a list of clips"
	case ".fountain", ".fdx":
		return MaxForeignSize, "a script"
	}
	return MaxFileSize, "a plan"
}

// ReadFile reads a regular file of at most MaxFileSize bytes, or MaxForeignSize
// by its ending: a device or a pipe that never ends is an error, not a wait.
func ReadFile(path string) ([]byte, error) {
	info, err := os.Stat(path) // before it is opened: to open a pipe can be to wait
	if err != nil {
		return nil, err
	}
	limit, what := SizeLimit(path)
	switch {
	case !info.Mode().IsRegular():
		return nil, fmt.Errorf("%s is no regular file", path)
	case info.Size() > limit:
		return nil, fmt.Errorf("%s has %d MB; %s has at most %d MB", path, info.Size()>>20, what, limit>>20)
	}
	f, err := os.Open(path)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	text := bytes.NewBuffer(make([]byte, 0, info.Size()+bytes.MinRead)) // the room that ReadFrom wants
	_, err = text.ReadFrom(io.LimitReader(f, limit+1))
	return text.Bytes(), err
}
