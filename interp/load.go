// Loading: a plan file and the files that it uses, each read once.

package interp

import (
	"errors"
	"fmt"
	"io/fs"
	"path/filepath"
	"slices"
	"strings"

	"pullscore/lang"
	"pullscore/lang/lines"
)

// Limits on what a plan may draw in: far above any film's kit, low enough that
// a mistake ends at once.
const (
	maxFiles    = 256
	maxUseDepth = 32
)

// A unit is one file and the files that it uses.
type unit struct {
	file *lang.File
	uses []used
}

type used struct {
	stmt *lang.Use
	unit *unit
}

type loader struct {
	opt   Options
	units map[string]*unit
	files []string
	diags []lang.Diagnostic
	texts map[string]*foreign // of other people's files, by path

	// lost tells that a used file could not be read: what it declares is missing,
	// which has been told.
	lost bool
}

// A foreign is somebody else's text: a cut, or a script page.
type foreign struct {
	*lines.Text
	diags []lang.Diagnostic // of its encoding
	err   error             // it could not be read
}

// foreign loads a text that a plan file names, once. The plan is followed in it
// also while it is not there.
func (l *loader) foreign(path string) *foreign {
	if f, ok := l.texts[path]; ok {
		return f
	}
	if !slices.Contains(l.files, path) {
		l.files = append(l.files, path)
	}
	f := &foreign{}
	data, err := l.opt.ReadFile(path)
	if f.err = err; err == nil {
		f.Text, f.diags = lines.Decode(path, data)
		f.Progress = l.opt.Progress
	}
	l.texts[path] = f
	return f
}

func (l *loader) parse(path string, src []byte) *unit {
	file, diags := lang.Parse(path, src)
	l.diags = append(l.diags, diags...)
	if len(diags) > 0 && len(file.Body)+len(file.Sections) == 0 {
		l.lost = true // too large, or no text
	}
	u := &unit{file: file}
	l.units[path] = u
	l.files = append(l.files, path)
	return u
}

// uses loads what u uses. chain holds the paths from the plan down to u.
func (l *loader) uses(u *unit, chain []string) {
	for _, s := range u.file.Body {
		use, ok := s.(*lang.Use)
		if !ok || use.File == nil {
			continue
		}
		path := l.beside(u.file.Path, use.File.Value)
		if i := slices.IndexFunc(chain, func(c string) bool { return filepath.Clean(c) == path }); i >= 0 {
			l.fail(use, "circle", "these files use one another in a circle",
				strings.Join(append(baseNames(chain[i:]), filepath.Base(path)), " uses ")+".")
			continue
		}
		next, seen := l.units[path]
		if !seen {
			if next = l.load(use, path, chain); next == nil {
				continue
			}
			l.uses(next, append(slices.Clone(chain), path))
		}
		u.uses = append(u.uses, used{use, next})
	}
}

// beside returns the path of a file as a plan file names it: from where the plan
// file lies.
func (l *loader) beside(file, name string) string {
	if filepath.IsAbs(name) {
		return filepath.Clean(name)
	}
	return filepath.Join(filepath.Dir(file), filepath.FromSlash(name))
}

// load reads and parses one used file; nil where it cannot, which is reported.
func (l *loader) load(use *lang.Use, path string, chain []string) *unit {
	switch {
	case len(chain) > maxUseDepth:
		l.fail(use, "too-deep-use", fmt.Sprintf("files use files more than %d deep", maxUseDepth), "")
		return nil
	case len(l.files) >= maxFiles:
		l.fail(use, "too-many-files", fmt.Sprintf("a plan uses at most %d files", maxFiles), "")
		return nil
	}
	src, err := l.opt.ReadFile(path)
	if err != nil {
		if !slices.Contains(l.files, path) {
			l.files = append(l.files, path)
		}
		l.fail(use, "no-such-file", fmt.Sprintf("cannot read %q", use.File.Value), reason(err))
		return nil
	}
	return l.parse(path, src)
}

func (l *loader) fail(use *lang.Use, code, message, detail string) {
	l.lost = true
	l.diags = append(l.diags, lang.Diagnostic{
		Code: code, Severity: lang.Error, Message: message, Detail: detail, Range: use.File.Range(),
	})
}

// reason is what the system says of an error, without the path and the call
// that differ from machine to machine.
func reason(err error) string {
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return "There is no such file; the name is relative to this one."
	case errors.Is(err, fs.ErrPermission):
		return "Permission denied."
	}
	var path *fs.PathError
	if errors.As(err, &path) {
		return sentence(path.Err.Error())
	}
	return sentence(err.Error())
}

func baseNames(paths []string) []string {
	names := make([]string, len(paths))
	for i, p := range paths {
		names[i] = filepath.Base(p)
	}
	return names
}

// source is the text of a file that the plan is made of.
func (l *loader) source(file string) []byte {
	if u, ok := l.units[file]; ok {
		return u.file.Source
	}
	return nil
}
