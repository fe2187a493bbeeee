// Which plans are watched: those that were named, and those of named folders.

package rebuild

import (
	"crypto/sha256"
	"encoding/base32"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"pullscore/cmd/internal/files"
)

// A named is an argument: a plan, or a folder of plans.
type named struct {
	path   string
	folder bool
}

// arguments reads the arguments. A plan need not be there yet; what is neither
// a file nor a folder, and is not named as a plan, is a mistake.
func arguments(args []string) ([]named, error) {
	var list []named
	var failed []error
	for _, arg := range args {
		info, err := os.Stat(arg)
		switch {
		case arg == "":
			failed = append(failed, errors.New("an empty name is no file"))
		case arg == files.Stdin:
			failed = append(failed, errors.New("standard input cannot be watched"))
		case err == nil:
			list = append(list, named{filepath.Clean(arg), info.IsDir()})
		case errors.Is(err, os.ErrNotExist) && filepath.Ext(arg) == files.Ext:
			list = append(list, named{filepath.Clean(arg), false})
		default:
			failed = append(failed, files.Plain(err))
		}
	}
	return list, errors.Join(failed...)
}

// expand returns the plans that there are now, each once. A named plan is one
// of them also while it is missing.
func expand(args []named) []files.File {
	var list []files.File
	seen := map[string]bool{}
	for _, arg := range args {
		found := []files.File{{Path: arg.path}}
		if arg.folder {
			found, _ = files.Expand([]string{arg.path}) // an empty or missing folder waits for its plans
		}
		for _, f := range found {
			if !seen[f.Path] {
				seen[f.Path] = true
				list = append(list, f)
			}
		}
	}
	return list
}

// A watched is a plan that is watched, and what it last came to.
type watched struct {
	path     string
	inFolder bool      // found in a folder, not named by itself
	shown    bool      // in the State
	missed   time.Time // since when it is not in its folder; zero: it is
	key      string
	last     *reading          // nil: not read yet
	plan     *Plan             // what was published last
	unmade   bool              // drawings are still to be written
	made     map[string]string // the drawings that were written here, and their tags
}

// isKit reports whether a plan of a folder is only there to be used by others:
// it never had a shot.
func (w *watched) isKit(r *reading, used bool) bool {
	return w.inFolder && !w.shown && len(r.plan.Shots) == 0 && (!r.errors || used)
}

// keyLength is how many characters a key has: forty bits.
const keyLength = 8

// key returns the key of a path, longer where a shorter one is taken.
func key(path string, taken func(string) bool) string {
	sum := sha256.Sum256([]byte(filepath.ToSlash(path)))
	text := strings.ToLower(base32.StdEncoding.WithPadding(base32.NoPadding).EncodeToString(sum[:]))
	for n := keyLength; n <= len(text); n++ {
		if !taken(text[:n]) {
			return text[:n]
		}
	}
	panic(fmt.Sprintf("two paths have the same sum: %q", path))
}

// expand takes up plans that came to the folders. One that is gone from its
// folder is missed.
func (r *Rebuilder) expand() {
	known := map[string]*watched{}
	for _, w := range r.plans {
		known[w.path] = w
	}
	var list []*watched
	for _, f := range expand(r.args) {
		w := known[f.Path]
		if w == nil {
			w = &watched{path: f.Path, inFolder: f.InTree, key: key(f.Path, r.taken(list)), made: map[string]string{}}
		}
		w.missed = time.Time{}
		delete(known, f.Path)
		list = append(list, w)
	}
	for i, w := range r.plans { // the missed keep their places
		if known[w.path] != nil {
			if w.missed.IsZero() {
				w.missed = time.Now()
			}
			list = slices.Insert(list, min(i, len(list)), w)
		}
	}
	r.plans = list
}

// taken reports whether a plan has a key.
func (r *Rebuilder) taken(also []*watched) func(string) bool {
	return func(key string) bool {
		has := func(w *watched) bool { return w.key == key }
		return slices.ContainsFunc(r.plans, has) || slices.ContainsFunc(also, has)
	}
}
