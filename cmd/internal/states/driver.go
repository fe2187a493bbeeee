// The states that git hands to a program that tells differences for it.

package states

import (
	"errors"
	"fmt"
	"io/fs"
	"path/filepath"
	"slices"

	"pullscore/cmd/internal/files"
	"pullscore/interp"
)

// The arguments that git gives to such a program (git(1) of git's own
// documentation, GIT_EXTERNAL_DIFF): path, old file, old object, old mode, new
// file, new object, new mode; of a file that was renamed also the new path and
// how alike the two are; of one that is not merged the path alone.
const (
	unmergedArgs = 1
	changedArgs  = 7
	renamedArgs  = 9
)

// Unmerged reports whether the arguments that git gives are of a file that is not
// merged yet, which has no two states to compare.
func Unmerged(args []string) bool { return len(args) == unmergedArgs }

// FromGit returns the states of the plans that a change of one file touches, by
// the arguments that git gives: of that file where it is a plan with shots, else
// of every plan in the repository that uses it, be it a kit, a cut, a page or a
// log. All other files are as they are now, whatever the revisions, since git
// does not say which these are.
func FromGit(args []string) ([]Pair, error) {
	switch len(args) {
	case changedArgs, renamedArgs:
	default:
		return nil, fmt.Errorf("git gives %d or %d arguments, and here are %d", changedArgs, renamedArgs, len(args))
	}
	before, after := change{path: args[0], content: args[1]}, change{path: args[0], content: args[4]}
	if len(args) == renamedArgs {
		after.path = args[7]
		before.later = after.path
	}
	var users []string
	for _, c := range []change{before, after} {
		if c.holdsShots() {
			return []Pair{{Before: before.source(before.path), After: after.source(after.path), Renamed: len(args) == renamedArgs}}, nil
		}
		list, err := c.users()
		if err != nil {
			return nil, err
		}
		users = append(users, list...)
	}
	slices.Sort(users)
	var list []Pair
	for _, path := range slices.Compact(users) {
		b, a := before.source(path), after.source(path)
		b.Name, a.Name = path+" (old "+filepath.Base(before.path)+")", path+" (new "+filepath.Base(after.path)+")"
		list = append(list, Pair{Before: b, After: a})
	}
	return list, nil
}

// A change is one side of a change of a file.
type change struct {
	path    string // of the file
	later   string // its path after the change, where that is another
	content string // a file that holds what was or is there; nothing: /dev/null
}

// nothing is where git's drivers find the content of a file that is not there.
const nothing = "/dev/null"

// read reads files as they are now, except for the one that changed.
func (c change) read(path string) ([]byte, error) {
	if !c.is(path) {
		return interp.ReadFile(path)
	}
	if c.content == nothing {
		return nil, &fs.PathError{Op: "open", Path: path, Err: fs.ErrNotExist}
	}
	return interp.ReadFile(c.content)
}

// is reports whether a path is that of the file that changed. Plans are read as
// they are now, so that one may call the file by its later path before the
// change too.
func (c change) is(path string) bool {
	return samePath(path, c.path) || c.later != "" && samePath(path, c.later)
}

func samePath(a, b string) bool {
	absA, errA := filepath.Abs(a)
	absB, errB := filepath.Abs(b)
	return errA == nil && errB == nil && absA == absB
}

// source returns the state of a plan on this side of the change.
func (c change) source(path string) Source {
	if c.is(path) && c.content == nothing {
		return None
	}
	return Source{Name: path, Path: path, read: c.read}
}

// holdsShots reports whether the file is a plan with shots.
func (c change) holdsShots() bool {
	if filepath.Ext(c.path) != files.Ext || c.content == nothing {
		return false
	}
	state, err := c.source(c.path).State()
	return err == nil && len(state.Plan.Shots) > 0
}

// users returns the plans of the repository that use the file.
func (c change) users() ([]string, error) {
	tracked, err := Tracked("*" + files.Ext)
	if err != nil {
		return nil, err
	}
	var list []string
	for _, path := range tracked {
		res, err := interp.Read(path, interp.Options{ReadFile: c.read})
		if errors.Is(err, fs.ErrNotExist) {
			continue // deleted in the working tree
		}
		if err != nil {
			return nil, files.Plain(err)
		}
		if len(res.Plan.Shots) > 0 && slices.ContainsFunc(res.Files, c.is) {
			list = append(list, path)
		}
	}
	return list, nil
}
