package states

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"pullscore/cmd/internal/diff"
	"pullscore/cmd/internal/files"
	"pullscore/interp"
)

// A Source is where one state of a plan is read from.
type Source struct {
	Name string                            // what to call it
	Path string                            // what names it in findings, and what `use` is relative to
	read func(path string) ([]byte, error) // reads the plan and what it uses; nil: there is no such state
}

// None is the state of a plan that is not there.
var None = Source{}

// State reads and interprets the plan.
func (s Source) State() (diff.State, error) {
	if s.read == nil {
		return diff.State{Name: s.Name}, nil
	}
	res, err := interp.Read(s.Path, interp.Options{ReadFile: s.read})
	if err != nil {
		return diff.State{}, s.named(err)
	}
	return diff.State{Name: s.Name, Plan: res.Plan, Findings: res.Findings, Text: res.Sources[s.Path]}, nil
}

// named returns an error of a file with the name of the state.
func (s Source) named(err error) error {
	if errors.Is(err, fs.ErrNotExist) {
		return fmt.Errorf("%s: no such file", s.Name)
	}
	return files.Plain(err)
}

// A Pair is a plan in two states.
type Pair struct {
	Before, After Source
	Renamed       bool // they are one plan, whatever their names
}

// Compare tells what changed between the two.
func (p Pair) Compare() (diff.Plan, error) {
	before, err := p.Before.State()
	if err != nil {
		return diff.Plan{}, err
	}
	after, err := p.After.State()
	if err != nil {
		return diff.Plan{}, err
	}
	plan := diff.Compare(before, after)
	if p.Renamed {
		plan = plan.Rename()
	}
	return plan, nil
}

// A side is what one argument names.
type side struct {
	arg    string
	path   string // of the file or folder
	tree   *Tree  // nil: as it is now
	folder bool
}

// open finds out what an argument names.
func open(arg string) (side, error) {
	if revision, name, ok := Split(arg); ok {
		return openCommitted(arg, revision, name)
	}
	return openCurrent(arg)
}

func openCurrent(arg string) (side, error) {
	if arg == "" {
		return side{}, errors.New("an empty name is no file")
	}
	info, err := os.Stat(arg)
	if err != nil {
		if _, gitErr := Open(arg); gitErr == nil {
			return side{}, fmt.Errorf("%s is a revision; name a path in it: %s:scenes", arg, arg)
		}
		return side{}, files.Plain(err)
	}
	s := side{arg: arg, path: filepath.Clean(arg), folder: info.IsDir()}
	return s, s.isPlan()
}

// isPlan returns an error for a file that plans use and that is none.
func (s side) isPlan() error {
	if _, what := interp.SizeLimit(s.path); !s.folder && (what != "a plan" || filepath.Ext(s.path) == ".csv") {
		return fmt.Errorf("%s is no plan; to see what it does to the plans that use it, compare their folder", s.arg)
	}
	return nil
}

func openCommitted(arg, revision, name string) (side, error) {
	tree, err := Open(revision)
	if err != nil {
		return side{}, fmt.Errorf("%s: %w", arg, err)
	}
	s := side{arg: arg, path: tree.Path(name), tree: tree}
	s.folder = tree.IsFolder(s.path)
	if err := tree.Absent(s.path); err != nil {
		return side{}, fmt.Errorf("%s %w", arg, err)
	}
	if !s.folder && !tree.Has(s.path) {
		return side{}, fmt.Errorf("%s: %s has no such file or folder; a path is from the top of the repository, or begins with ./", arg, revision)
	}
	return s, s.isPlan()
}

// source returns the state of the file at a path from the side's folder, or of
// the side's own file for an empty one.
func (s side) source(rel string) Source {
	src := Source{Name: s.arg, Path: s.path, read: interp.ReadFile}
	if s.tree != nil {
		src.read = s.tree.ReadFile
	}
	if rel != "" {
		src.Name = strings.TrimSuffix(s.arg, "/") + "/" + rel
		src.Path = filepath.Join(s.path, filepath.FromSlash(rel))
		if strings.HasSuffix(s.arg, ":") { // the top of a repository
			src.Name = s.arg + rel
		}
	}
	return src
}

// plans returns the plans in the side's folder, by their paths from it, with
// slashes.
func (s side) plans() ([]string, error) {
	var list []string
	if s.tree != nil {
		for _, name := range s.tree.Below(s.path) {
			if filepath.Ext(name) == files.Ext {
				list = append(list, name)
			}
		}
		return list, nil
	}
	files, err := files.In(s.path)
	for _, f := range files {
		rel, relErr := filepath.Rel(s.path, f)
		if relErr != nil {
			return nil, relErr
		}
		list = append(list, filepath.ToSlash(rel))
	}
	return list, err
}

// Between pairs the plans that two arguments name: files, folders, whose plans
// are paired by their paths, or REVISION:PATH of either.
func Between(before, after string) ([]Pair, error) {
	b, err := open(before)
	if err != nil {
		return nil, err
	}
	a, err := open(after)
	if err != nil {
		return nil, err
	}
	return match(b, a)
}

// Since pairs the plans that one argument names with what they are now: a file
// or folder as it was last committed, or REVISION:PATH as it was then. A file
// that has not been committed yet is new.
func Since(arg string) ([]Pair, error) {
	if revision, name, ok := Split(arg); ok {
		b, err := openCommitted(arg, revision, name)
		if err != nil {
			return nil, err
		}
		a, err := openCurrent(b.path)
		if err != nil {
			return nil, err
		}
		return match(b, a)
	}
	a, err := openCurrent(arg)
	if err != nil {
		return nil, err
	}
	name := filepath.ToSlash(a.path)
	switch {
	case name == ".":
		name = "./"
	case !filepath.IsAbs(a.path):
		name = "./" + name
	}
	if tree, err := Open("HEAD"); err == nil && !a.folder && !tree.Has(a.path) {
		return []Pair{{Before: None, After: a.source("")}}, nil
	}
	b, err := openCommitted("HEAD:"+name, "HEAD", name)
	if err != nil {
		return nil, err
	}
	return match(b, a)
}

// match pairs two files, or the plans of two folders.
func match(before, after side) ([]Pair, error) {
	switch {
	case before.folder != after.folder:
		return nil, fmt.Errorf("%s and %s: one is a folder, the other a file", before.arg, after.arg)
	case before.folder:
		return pairs(before, after)
	}
	return []Pair{{Before: before.source(""), After: after.source("")}}, nil
}

// pairs pairs the plans of two folders.
func pairs(before, after side) ([]Pair, error) {
	was, err := before.plans()
	if err != nil {
		return nil, err
	}
	is, err := after.plans()
	if err != nil {
		return nil, err
	}
	all := slices.Concat(was, is)
	slices.Sort(all)
	var list []Pair
	for _, rel := range slices.Compact(all) {
		p := Pair{Before: before.source(rel), After: after.source(rel)}
		if !slices.Contains(was, rel) {
			p.Before = None
		}
		if !slices.Contains(is, rel) {
			p.After = None
		}
		list = append(list, p)
	}
	if len(list) == 0 {
		return nil, fmt.Errorf("%s and %s: no %s file in either", before.arg, after.arg, files.Ext)
	}
	return list, nil
}
