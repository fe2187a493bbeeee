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
		f.Text, f.Diags = lines.Decode(path, data)
		f.Progress = l.Opt.Progress
	}
	l.Texts[path] = f
	return f
}

// Parse parses the text of a plan file and keeps it under its path.
func (l *Loader) Parse(path string, src []byte) *names.Unit {
	file, diags := lang.Parse(path, src)
	l.Diags = append(l.Diags, diags...)
	if len(diags) > 0 && len(file.Body)+len(file.Sections) == 0 {
		l.Lost = true // too large, or no text
	}
	u := &names.Unit{}
	u.File, u.Torn = names.Heal(file)
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
	return l.Parse(path, src)
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
