// Loading: a plan file and the files that it uses, each read once.

package load

import (
	"fmt"
	"maps"
	"path/filepath"
	"slices"
	"strings"

	"pullscore/interp/names"
	"pullscore/lang"
	"pullscore/lang/lines"
)

// Limits on what a plan may draw in: far above any film's kit, low enough that
// a mistake ends at once.
const (
	maxFiles    = 256
	maxUseDepth = 32
)

// A Loader reads the files of one plan, each once.
type Loader struct {
	Opt   Options
	Units map[string]*names.Unit
	Files []string
	Diags []lang.Diagnostic
	Texts map[string]*Foreign // of other people's files, by path

	// lost tells that a used file could not be read: what it declares is missing,
	// which has been told.
	Lost bool
}

// A Foreign is somebody else's text: a cut, or a script page.
type Foreign struct {
	*lines.Text
	Diags []lang.Diagnostic // of its encoding
	Err   error             // it could not be read

	data []byte // as it was read
}

// Foreign loads a text that a plan file names, once. The plan is followed in it
// also while it is not there.
func (l *Loader) Foreign(path string) *Foreign {
	if f, ok := l.Texts[path]; ok {
		return f
	}
	if !slices.Contains(l.Files, path) {
		l.Files = append(l.Files, path)
	}
	f := &Foreign{}
	data, err := l.Opt.ReadFile(path)
	if f.Err = err; err == nil {
		read := Cached(l.Opt.Cache, Texts, path, data, "", func() decoded {
			text, diags := lines.Decode(path, data)
			return decoded{text, diags}
		})
		text := *read.text // everybody notes places in it for themselves
		f.Text, f.Diags, f.data = &text, read.diags, data
		f.Progress = l.Opt.Progress
	}
	l.Texts[path] = f
	return f
}

// A decoded is the text of a file, with what is wrong with its encoding.
type decoded struct {
	text  *lines.Text
	diags []lang.Diagnostic
}

// FromForeign returns what parse makes of the text of another's file that was loaded, or
// what it made of the same text before; by says on what else that hangs.
func FromForeign[T any](l *Loader, f *Foreign, kind Kind, by string, parse func() T) T {
	if !l.Keeps(f) {
		return parse()
	}
	return Cached(l.Opt.Cache, kind, f.Name, f.data, by, parse)
}

// Keeps reports whether the cache keeps what the text of another's file is parsed to. One
// that is given is not read, and not kept.
func (l *Loader) Keeps(f *Foreign) bool { return f.data != nil && l.Opt.Cache.Keeps(len(f.data)) }

// A parsed is the tree of a plan file, with its mistakes.
type parsed struct {
	file  *lang.File
	torn  names.Torn
	diags []lang.Diagnostic
	none  bool // it is too large, or no text
}

func parse(path string, src []byte) (p parsed) {
	file, diags := lang.Parse(path, src)
	p.diags, p.none = diags, len(diags) > 0 && len(file.Body)+len(file.Sections) == 0
	p.file, p.torn = names.Heal(file)
	return p
}

// Parse parses the text of a plan file and keeps it under its path.
func (l *Loader) Parse(path string, src []byte) *names.Unit { return l.keep(path, parse(path, src)) }

// keep keeps a plan file under its path.
func (l *Loader) keep(path string, p parsed) *names.Unit {
	l.Diags = append(l.Diags, p.diags...)
	l.Lost = l.Lost || p.none
	u := &names.Unit{File: p.file, Torn: p.torn}
	l.Units[path] = u
	l.Files = append(l.Files, path)
	return u
}

// Uses loads what u uses. chain holds the paths from the plan down to u.
func (l *Loader) Uses(u *names.Unit, chain []string) {
	for _, s := range u.File.Body {
		if bad, ok := s.(*lang.Bad); ok && bad.Keyword == "use" {
			l.Lost = true
		}
		use, ok := s.(*lang.Use)
		if !ok || use.File == nil {
			continue
		}
		if use.File.Value == "" {
			l.fail(use, "no-such-file", "no file is named here", "Write its name between the quotes, relative to this file.")
			continue
		}
		path := l.Beside(u.File.Path, use.File.Value)
		if i := slices.IndexFunc(chain, func(c string) bool { return filepath.Clean(c) == path }); i >= 0 {
			l.fail(use, "circle", "these files use one another in a circle",
				strings.Join(append(baseNames(chain[i:]), filepath.Base(path)), " uses ")+".")
			continue
		}
		next, seen := l.Units[path]
		if !seen {
			if next = l.load(use, path, chain); next == nil {
				continue
			}
			l.Uses(next, append(slices.Clone(chain), path))
		}
		u.Uses = append(u.Uses, names.Used{Stmt: use, Unit: next})
	}
}

// Sections returns the sections of all files, in the order of their paths.
func (l *Loader) Sections() (list []*lang.Section) {
	for _, path := range slices.Sorted(maps.Keys(l.Units)) {
		list = append(list, l.Units[path].File.Sections...)
	}
	return list
}

// Beside returns the path of a file as a plan file names it: from where the plan
// file lies.
func (l *Loader) Beside(file, name string) string {
	if filepath.IsAbs(name) {
		return filepath.Clean(name)
	}
	return filepath.Join(filepath.Dir(file), filepath.FromSlash(name))
}

// load reads and parses one used file; nil where it cannot, which is reported.
func (l *Loader) load(use *lang.Use, path string, chain []string) *names.Unit {
	switch {
	case len(chain) > maxUseDepth:
		l.fail(use, "too-deep-use", fmt.Sprintf("files use files more than %d deep", maxUseDepth), "")
		return nil
	case len(l.Files) >= maxFiles:
		l.fail(use, "too-many-files", fmt.Sprintf("a plan uses at most %d files", maxFiles), "")
		return nil
	}
	src, err := l.Opt.ReadFile(path)
	if err != nil {
		if !slices.Contains(l.Files, path) {
			l.Files = append(l.Files, path)
		}
		l.fail(use, "no-such-file", fmt.Sprintf("cannot read %q", use.File.Value), names.Reason(path, err))
		return nil
	}
	return l.keep(path, Cached(l.Opt.Cache, Plans, path, src, "", func() parsed { return parse(path, src) }))
}

func (l *Loader) fail(use *lang.Use, code, message, detail string) {
	l.Lost = true
	l.Diags = append(l.Diags, lang.Diagnostic{
		Code: code, Severity: lang.Error, Message: message, Detail: detail, Range: use.File.Range(),
	})
}

func baseNames(paths []string) []string {
	names := make([]string, len(paths))
	for i, p := range paths {
		names[i] = filepath.Base(p)
	}
	return names
}

// Source is the text of a file that the plan is made of.
func (l *Loader) Source(file string) []byte {
	if u, ok := l.Units[file]; ok {
		return u.File.Source
	}
	return nil
}
