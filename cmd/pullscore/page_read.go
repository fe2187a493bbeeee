// Reading a script page, and telling what is none.

package main

import (
	"bytes"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"unicode"

	"pullscore/cmd/internal/files"
	"pullscore/lang/lines"
	"pullscore/lang/screenplay"
)

// readPage reads a page, which may be larger than a plan can be.
func (s *session) readPage(path string) ([]byte, error) {
	in, size := s.in, 0
	if path != files.Stdin {
		f, err := os.Open(path)
		if err != nil {
			return nil, files.Plain(err)
		}
		defer f.Close()
		if info, err := f.Stat(); err == nil {
			size = int(min(info.Size(), lines.MaxSize+1))
		}
		in = f
	}
	src := bytes.NewBuffer(make([]byte, 0, size+bytes.MinRead)) // the room that ReadFrom wants
	if _, err := src.ReadFrom(io.LimitReader(in, lines.MaxSize+1)); err != nil {
		return nil, fmt.Errorf("%s: %w", path, files.Plain(err))
	}
	return src.Bytes(), nil
}

// signatures are how files that are no text begin, or are text of another kind.
// Those of PDF, ZIP, PNG, GIF, JPEG and compound files stand in their
// specifications; from memory.
var signatures = []struct{ begins, what string }{
	{"PK\x03\x04", "a zip archive, as word processors write"},
	{"\xD0\xCF\x11\xE0", "a file of a word processor"},
	{"{\\rtf", "rich text"},
	{"<!DOCTYPE", "HTML"},
	{"\x89PNG", "a picture"},
	{"GIF8", "a picture"},
	{"\xFF\xD8\xFF", "a picture"},
	{"\x1F\x8B", "a packed file"},
}

// looked is how much of a file is looked at to tell whether it is text, in
// bytes.
const looked = 64 << 10

// refuse returns an error for what is no script page: all text is one, so bytes
// would come out as action.
func refuse(path string, src []byte) error {
	if filepath.Ext(path) == files.Ext {
		return fmt.Errorf("%s is a plan, not a script page", path)
	}
	head := src[:min(len(src), looked)]
	if d, closed := screenplay.Closed(path, string(head)); closed {
		return fmt.Errorf("%s: %s [%s]. %s", path, d.Message, d.Code, d.Detail)
	}
	text := bytes.TrimSpace(bytes.TrimPrefix(head, []byte("\xEF\xBB\xBF")))
	what := ""
	for _, s := range signatures {
		if bytes.HasPrefix(text, []byte(s.begins)) {
			what = s.what
		}
	}
	decoded, _ := lines.Decode(path, head) // half a character at its end is no matter
	if what == "" && binary(decoded.Content) {
		what = "no text"
	}
	switch {
	case what != "":
		return fmt.Errorf("%s: this is %s; export FDX or Fountain from the writing program", path, what)
	case strings.TrimSpace(decoded.Content) == "" && len(head) == len(src):
		return fmt.Errorf("%s is empty", path)
	}
	return nil
}

// binary reports whether a text holds what no text does: a NUL, or control
// characters more often than by a slip.
func binary(text string) bool {
	controls := 0
	for _, r := range text {
		if unicode.IsControl(r) && !unicode.IsSpace(r) {
			controls++
		}
	}
	return strings.IndexByte(text, 0) >= 0 || controls > 1+len(text)/1000
}
