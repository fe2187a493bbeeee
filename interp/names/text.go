// Words of a plan, of errors and of the system, as messages quote them.

package names

import (
	"errors"
	"io/fs"
	"strings"
	"unicode"
	"unicode/utf8"

	"pullscore/lang"
)

// SourceText is what a range covers, on one line.
func SourceText(src []byte, r lang.Range) string {
	if r.Start.Offset < 0 || r.End.Offset > len(src) || r.Start.Offset > r.End.Offset {
		return ""
	}
	return strings.Join(strings.Fields(string(src[r.Start.Offset:r.End.Offset])), " ")
}

// Sentence makes a detail of an error's text.
func Sentence(s string) string {
	if s == "" || strings.HasSuffix(s, ".") {
		return s
	}
	r, n := utf8.DecodeRuneInString(s)
	return string(unicode.ToUpper(r)) + s[n:] + "."
}

// ValueOf is what a text in quotes says; nothing where there is none.
func ValueOf(t *lang.Text) string {
	if t == nil {
		return ""
	}
	return t.Value
}

// Reason is what the system says of an error of the file at a path, without
// that path and the call, which differ from machine to machine.
func Reason(file string, err error) string {
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return "There is no such file; the name is relative to this one."
	case errors.Is(err, fs.ErrPermission):
		return "Permission denied."
	}
	var path *fs.PathError
	if errors.As(err, &path) {
		return Sentence(path.Err.Error())
	}
	if rest, ok := strings.CutPrefix(err.Error(), file+" "); ok {
		return Sentence("it " + rest)
	}
	return Sentence(err.Error())
}
