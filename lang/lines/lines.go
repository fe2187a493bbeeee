// Package lines turns other people's text files into lines: whatever encoding
// and line ends they have, each line has its number and each fault its place.
package lines

import (
	"bytes"
	"encoding/binary"
	"fmt"
	"iter"
	"strings"
	"unicode/utf16"
	"unicode/utf8"
	"unsafe"

	"pullscore/lang"
)

// MaxSize is the size in bytes from which a file is refused.
const MaxSize = 256 << 20

// A Text is a decoded file with LF line ends and without a byte order mark.
type Text struct {
	Name     string
	Content  string
	Encoding Encoding
	Marked   bool // the file began with a byte order mark

	// Progress, where it is set, is told about every megabyte how much of the
	// text All has passed, in bytes.
	Progress func(done, total int)

	marks []mark // see Place; made when they are first wanted
}

// An Encoding is how a file's characters were written.
type Encoding string

// The encodings that are told apart: by their byte order mark, and UTF-16 also
// by its zero bytes.
const (
	UTF8    Encoding = "UTF-8"
	UTF16LE Encoding = "UTF-16LE"
	UTF16BE Encoding = "UTF-16BE"
)

// Decode decodes a file. Bytes that its encoding does not have become U+FFFD,
// and the first of them is an error at its place; a file over MaxSize is an
// error and comes back empty. src must not change any more: the text shares its memory,
// since a file may be a hundred megabytes long.
func Decode(name string, src []byte) (*Text, []lang.Diagnostic) {
	t := &Text{Name: name, Encoding: UTF8}
	if len(src) > MaxSize {
		return t, []lang.Diagnostic{{
			Code: "too-large", Severity: lang.Error,
			Message: fmt.Sprintf("the file is larger than %d MB", MaxSize>>20),
			Range:   t.Start(),
		}}
	}
	t.Encoding, t.Marked, src = sniff(src)
	valid := true
	if t.Encoding == UTF8 {
		t.Content, valid = unifyEnds(unsafe.String(unsafe.SliceData(src), len(src))), utf8.Valid(src)
	} else {
		t.Content = unifyEnds(decode16(src, t.Encoding))
		valid = len(src)%2 == 0 && !strings.ContainsRune(t.Content, utf8.RuneError)
	}
	if valid {
		return t, nil
	}
	t.Content = strings.ToValidUTF8(t.Content, string(utf8.RuneError))
	return t, []lang.Diagnostic{t.undecodable()}
}

// sniff tells the encoding and cuts the byte order mark off.
func sniff(src []byte) (e Encoding, marked bool, rest []byte) {
	for _, m := range []struct {
		mark string
		Encoding
	}{{"\xEF\xBB\xBF", UTF8}, {"\xFF\xFE", UTF16LE}, {"\xFE\xFF", UTF16BE}} {
		if rest, ok := bytes.CutPrefix(src, []byte(m.mark)); ok {
			return m.Encoding, true, rest
		}
	}
	// The first character of any of these files is ASCII.
	switch {
	case len(src) >= 2 && src[0] != 0 && src[1] == 0:
		return UTF16LE, false, src
	case len(src) >= 2 && src[0] == 0 && src[1] != 0:
		return UTF16BE, false, src
	}
	return UTF8, false, src
}

// decode16 decodes UTF-16 unit by unit: as a list of runes a text would take
// several times its size.
func decode16(src []byte, e Encoding) string {
	var order binary.ByteOrder = binary.LittleEndian
	if e == UTF16BE {
		order = binary.BigEndian
	}
	var text strings.Builder
	text.Grow(len(src)/2 + len(src)/8) // mostly ASCII
	for ; len(src) >= 2; src = src[2:] {
		r := rune(order.Uint16(src))
		if utf16.IsSurrogate(r) && len(src) >= 4 {
			if pair := utf16.DecodeRune(r, rune(order.Uint16(src[2:]))); pair != utf8.RuneError {
				r, src = pair, src[2:]
			}
		}
		text.WriteRune(r) // half a pair is written as U+FFFD
	}
	return text.String()
}

// unifyEnds makes CRLF and CR to LF.
func unifyEnds(s string) string {
	if strings.IndexByte(s, '\r') < 0 {
		return s
	}
	var text strings.Builder
	text.Grow(len(s))
	for line, rest, found := "", s, true; found; {
		line, rest, found = strings.Cut(rest, "\r")
		text.WriteString(line)
		if found {
			text.WriteByte('\n')
			rest = strings.TrimPrefix(rest, "\n")
		}
	}
	return text.String()
}

// undecodable is the error about the first character that could not be read.
func (t *Text) undecodable() lang.Diagnostic {
	d := lang.Diagnostic{
		Code: "bad-encoding", Severity: lang.Error,
		Message: fmt.Sprintf("not all of the file is %s", t.Encoding),
		Detail:  "Save it as UTF-8. What could not be read stands as �.",
		Range:   t.Start(),
	}
	for l := range t.All() {
		if i := strings.IndexRune(l.Text, utf8.RuneError); i >= 0 {
			d.Range = t.At(l, i, i+utf8.RuneLen(utf8.RuneError))
			break
		}
	}
	return d
}

// A Line is one line of a Text.
type Line struct {
	Text   string
	Number int // from 1
	Offset int // of its first byte in the content
}

// Blank reports whether nothing but blanks stands on the line.
func (l Line) Blank() bool { return strings.TrimSpace(l.Text) == "" }

// report is after how many bytes Progress is told again.
const report = 1 << 20

// All yields the lines. A line end at the end of the text begins no line.
func (t *Text) All() iter.Seq[Line] {
	return func(yield func(Line) bool) {
		told := 0
		for l := range t.Part(Line{Number: 1}, len(t.Content)) {
			if t.Progress != nil && l.Offset-told >= report {
				told = l.Offset
				t.Progress(told, len(t.Content))
			}
			if !yield(l) {
				return
			}
		}
	}
}

// Part yields the lines from one on up to a byte of the text, of which the number and the
// offset count. It tells no progress.
func (t *Text) Part(l Line, to int) iter.Seq[Line] {
	return func(yield func(Line) bool) {
		for rest, more := t.Content[l.Offset:to], l.Offset < to; more; l.Number++ {
			l.Text, rest, more = strings.Cut(rest, "\n")
			if !yield(l) {
				return
			}
			l.Offset += len(l.Text) + 1
			more = more && rest != ""
		}
	}
}

// At returns the place of the bytes from and up to to of a line.
func (t *Text) At(l Line, from, to int) lang.Range {
	return lang.Range{File: t.Name, Start: l.pos(from), End: l.pos(to)}
}

// Whole returns the place of a line without the blanks around it.
func (t *Text) Whole(l Line) lang.Range {
	from := len(l.Text) - len(strings.TrimLeft(l.Text, " \t"))
	return t.At(l, from, max(from, len(strings.TrimRight(l.Text, " \t"))))
}

// Start returns the place where the file starts.
func (t *Text) Start() lang.Range {
	return t.At(Line{Number: 1}, 0, 0)
}

func (l Line) pos(at int) lang.Pos {
	at = min(at, len(l.Text))
	return lang.Pos{Offset: l.Offset + at, Line: l.Number, Column: 1 + utf8.RuneCountInString(l.Text[:at])}
}
