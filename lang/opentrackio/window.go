// The part of a file that is looked at: from where the reader is, as far ahead as
// one sample may reach.

package opentrackio

import (
	"bufio"
	"bytes"
	"errors"
	"io"

	"pullscore/lang"
)

// A window is a place in a file, with the bytes ahead of it.
type window struct {
	r    *bufio.Reader
	pos  lang.Pos // of the next byte
	seen []byte   // those ahead that are in memory
}

// room is how many bytes more than a sample may have are held, so that the byte
// behind the largest can be seen.
const room = 16

func newWindow(r io.Reader) window {
	return window{r: bufio.NewReaderSize(r, MaxSample+room), pos: lang.Pos{Line: 1, Column: 1}}
}

// at returns the byte n bytes ahead. The error is io.EOF behind the last one, and
// bufio.ErrBufferFull for one that lies too far ahead.
func (w *window) at(n int) (byte, error) {
	if n < len(w.seen) {
		return w.seen[n], nil
	}
	if _, err := w.r.Peek(n + 1); err != nil {
		w.look()
		return 0, err
	}
	w.look()
	return w.seen[n], nil
}

// look sees what is in memory.
func (w *window) look() { w.seen, _ = w.r.Peek(w.r.Buffered()) }

// ahead returns the next n bytes, or fewer at the end of the file. They stand
// until the next step.
func (w *window) ahead(n int) []byte {
	_, _ = w.at(n - 1)
	return w.seen[:min(n, len(w.seen))]
}

// pass goes n bytes on. They must have been seen.
func (w *window) pass(n int) {
	w.pos = after(w.pos, w.seen[:n])
	w.seen = w.seen[n:]
	_, _ = w.r.Discard(n) // it cannot fail: they are in memory
}

// after returns the place behind a piece that begins at a place. A character
// counts by its first byte.
func after(pos lang.Pos, piece []byte) lang.Pos {
	pos.Offset += len(piece)
	if n := bytes.Count(piece, []byte("\n")); n > 0 {
		pos.Line += n
		pos.Column = 1
		piece = piece[bytes.LastIndexByte(piece, '\n')+1:]
	}
	for _, c := range piece {
		if c < 0x80 || c >= 0xC0 {
			pos.Column++
		}
	}
	return pos
}

// passMark passes a byte order mark, which is no character of the first line.
func (w *window) passMark() {
	const mark = "\uFEFF"
	if string(w.ahead(len(mark))) == mark {
		w.pass(len(mark))
		w.pos.Column = 1
	}
}

// blanks passes blanks and returns the byte that follows.
func (w *window) blanks() (byte, error) {
	for {
		if _, err := w.at(0); err != nil {
			return 0, err
		}
		rest := bytes.TrimLeft(w.seen, " \t\r\n")
		w.pass(len(w.seen) - len(rest))
		if len(rest) > 0 {
			return rest[0], nil
		}
	}
}

// passLine goes to the next line; the error is io.EOF where there is none.
func (w *window) passLine() error {
	for {
		if _, err := w.at(0); err != nil {
			return err
		}
		if i := bytes.IndexByte(w.seen, '\n'); i >= 0 {
			w.pass(i + 1)
			return nil
		}
		w.pass(len(w.seen))
	}
}

// indent returns how many blanks a line begins with. ok is false if something
// other than a brace follows them.
func (w *window) indent() (n int, ok bool) {
	for {
		c, err := w.at(n)
		if err != nil || c != ' ' && c != '\t' {
			return n, err == nil && c == '{'
		}
		n++
	}
}

// tooFar reports whether an error says that a byte lies too far ahead.
func tooFar(err error) bool { return errors.Is(err, bufio.ErrBufferFull) }
