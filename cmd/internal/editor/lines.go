// Byte offsets to positions and back. The protocol counts lines, and within a line bytes
// (UTF-8) or UTF-16 code units; Pullscore counts bytes from the start of the text. The two
// meet here and nowhere else.

package editor

import (
	"slices"
	"unicode/utf8"

	"pullscore/cmd/internal/lsp"
)

// An encoding says what a character of a position is.
type encoding bool

const (
	utf16 encoding = false // what every client knows
	utf8s encoding = true
)

// A lineIndex holds where every line of a text begins. A line ends with LF, CR LF or CR.
type lineIndex struct {
	text   []byte
	starts []int
}

func newLineIndex(text []byte) *lineIndex {
	starts := []int{0}
	for i := 0; i < len(text); i++ {
		switch {
		case text[i] == '\n':
			starts = append(starts, i+1)
		case text[i] == '\r' && (i+1 == len(text) || text[i+1] != '\n'):
			starts = append(starts, i+1)
		}
	}
	return &lineIndex{text, starts}
}

// line returns the bytes of a line, without its end.
func (x *lineIndex) line(n int) []byte {
	end := len(x.text)
	if n+1 < len(x.starts) {
		end = x.starts[n+1]
	}
	line := x.text[x.starts[n]:end]
	for len(line) > 0 && (line[len(line)-1] == '\n' || line[len(line)-1] == '\r') {
		line = line[:len(line)-1]
	}
	return line
}

// position returns the place of a byte. An offset beyond the text is its end, one within
// a character is the start of that.
func (x *lineIndex) position(offset int, enc encoding) lsp.Position {
	offset = max(0, min(offset, len(x.text)))
	n, found := slices.BinarySearch(x.starts, offset)
	if !found {
		n--
	}
	line := x.line(n)
	within := min(offset-x.starts[n], len(line))
	for within > 0 && within < len(line) && !utf8.RuneStart(line[within]) {
		within--
	}
	return lsp.Position{Line: uint32(n), Character: uint32(width(line[:within], enc))}
}

// width returns the length of a text in the characters of positions.
func width(text []byte, enc encoding) int {
	if enc == utf8s {
		return len(text)
	}
	n := 0
	for i := 0; i < len(text); {
		r, size := utf8.DecodeRune(text[i:])
		n += codeUnits(r)
		i += size
	}
	return n
}

// codeUnits returns the UTF-16 code units of a character.
func codeUnits(r rune) int {
	if r > 0xFFFF {
		return 2
	}
	return 1
}

// offset returns the byte at a position. A character beyond its line is the end of the
// line, as the protocol has it, and the line after the last is the end of the text. exact
// is false if there is no such place: a line further down, or the middle of a character.
// The offset is then the nearest before it.
func (x *lineIndex) offset(at lsp.Position, enc encoding) (offset int, exact bool) {
	if int64(at.Line) >= int64(len(x.starts)) {
		return len(x.text), int64(at.Line) == int64(len(x.starts))
	}
	start, line := x.starts[at.Line], x.line(int(at.Line))
	want := int64(at.Character)
	for i := 0; i < len(line); {
		r, size := utf8.DecodeRune(line[i:])
		step := int64(size)
		if enc == utf16 {
			step = int64(codeUnits(r))
		}
		if want < step {
			return start + i, want == 0
		}
		want -= step
		i += size
	}
	return start + len(line), true
}

// ranged returns the places of two bytes.
func (x *lineIndex) ranged(start, end int, enc encoding) lsp.Range {
	return lsp.Range{Start: x.position(start, enc), End: x.position(max(start, end), enc)}
}
