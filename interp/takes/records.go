// Rows of a CSV file (RFC 4180), one at a time, with the place of every field.
// What is wrong with one row is told and costs no other.

package takes

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"strings"
	"unicode/utf8"
)

// maxRow is the most bytes that a row may have. A quote that is never closed
// is looked for no farther.
const maxRow = 64 << 10

// A Fault is something wrong in a file, at a place in it. Columns count
// characters from 1.
type Fault struct {
	File         string
	Line, Column int
	Message      string // one sentence without a full stop

	// Kept tells that what stands there could be used all the same.
	Kept bool

	// Unplaced tells that a row of a log names a pull of a plan that was not
	// given, and cannot do without it.
	Unplaced bool
}

func (f *Fault) Error() string {
	return fmt.Sprintf("%s:%d:%d: %s", f.File, f.Line, f.Column, f.Message)
}

// A Field is one field of a row.
type Field struct {
	Text         string // without its quotes, and blanks around it
	Line, Column int
}

// Rows reads the rows of a CSV file. It holds a fixed amount of it at a time.
type Rows struct {
	file string
	by   byte // what stands between fields
	r    io.Reader
	err  error // of r
	buf  []byte
	at   int // where in buf the next row begins
	line int // the line that it begins on
	row  []Field

	began          bool // the start of the file has been looked at
	rowAt, rowLine int  // where the row that was given last begins
}

// NewRows returns the rows of r; file names it in faults.
func NewRows(r io.Reader, file string) *Rows {
	return NewTable(r, file, ',', 1)
}

// NewTable returns the rows of r, which begins on a line of a file; its fields
// are divided by a character in place of the comma.
func NewTable(r io.Reader, file string, by byte, line int) *Rows {
	return &Rows{file: file, by: by, r: r, buf: make([]byte, 0, 4*maxRow), line: line}
}

// Fault returns a fault at a place.
func (rs *Rows) Fault(line, column int, format string, args ...any) *Fault {
	return &Fault{File: rs.file, Line: line, Column: column, Message: fmt.Sprintf(format, args...)}
}

// Next returns the next row that is not blank; it stays valid until the next
// call. The error is a *Fault for a row that cannot be told apart into fields,
// after which the next call goes on with the line below; io.EOF at the end; or
// one of reading.
func (rs *Rows) Next() ([]Field, error) {
	for {
		if err := rs.fill(); err != nil {
			return nil, err
		}
		if !rs.began {
			if fault := rs.start(); fault != nil {
				return nil, fault
			}
		}
		if rs.at >= len(rs.buf) {
			return nil, io.EOF
		}
		rs.rowAt, rs.rowLine = rs.at, rs.line
		if fault := rs.split(); fault != nil {
			rs.skipLine()
			return nil, fault
		}
		if len(rs.row) > 1 || rs.row[0].Text != "" {
			return rs.row, nil
		}
	}
}

// start passes over a byte order mark, and refuses text of 16 bits.
func (rs *Rows) start() *Fault {
	rs.began = true
	if bytes.HasPrefix(rs.buf, []byte("\xFE\xFF")) || bytes.HasPrefix(rs.buf, []byte("\xFF\xFE")) {
		fault := rs.Fault(1, 1, "this is text of 16 bits a character: save it as UTF-8")
		rs.at, rs.r = len(rs.buf), strings.NewReader("")
		return fault
	}
	if bytes.HasPrefix(rs.buf, []byte("\xEF\xBB\xBF")) {
		rs.at = 3
	}
	return nil
}

// fill sees to it that a whole row of the longest kind is in the buffer, or
// all that is left.
func (rs *Rows) fill() error {
	if len(rs.buf)-rs.at > maxRow || errors.Is(rs.err, io.EOF) {
		return nil
	}
	if rs.at > 0 {
		rs.buf = rs.buf[:copy(rs.buf, rs.buf[rs.at:])]
		rs.at = 0
	}
	for rs.err == nil && len(rs.buf) < cap(rs.buf) {
		var n int
		n, rs.err = rs.r.Read(rs.buf[len(rs.buf):cap(rs.buf)])
		rs.buf = rs.buf[:len(rs.buf)+n]
	}
	if rs.err != nil && !errors.Is(rs.err, io.EOF) {
		return rs.err
	}
	return nil
}

// split takes a row from the buffer apart. On a fault it leaves where the row
// begins as it was.
func (rs *Rows) split() *Fault {
	rs.row = rs.row[:0]
	line, lineAt, i := rs.line, rs.at, rs.at
	end := min(len(rs.buf), rs.at+maxRow)
	for {
		i += rs.blanks(i, end)
		f := Field{Line: line, Column: rs.column(lineAt, i)}
		if i < end && rs.buf[i] == '"' {
			from := i + 1
			closing := closingQuote(rs.buf[from:end])
			if closing < 0 {
				return rs.Fault(f.Line, f.Column, "this quote is never closed")
			}
			raw := rs.buf[from : from+closing]
			if n := bytes.Count(raw, []byte{'\n'}); n > 0 {
				line += n
				lineAt = from + bytes.LastIndexByte(raw, '\n') + 1
			}
			f.Text = strings.TrimSpace(strings.ReplaceAll(string(raw), `""`, `"`))
			i = from + closing + 1
			i += rs.blanks(i, end)
			if i < end && rs.buf[i] != rs.by && rs.buf[i] != '\n' && rs.buf[i] != '\r' {
				return rs.Fault(line, rs.column(lineAt, i), "a quoted field goes on after its closing quote")
			}
		} else {
			from := i
			for i < end && rs.buf[i] != rs.by && rs.buf[i] != '\n' {
				i++
			}
			f.Text = string(bytes.TrimSpace(rs.buf[from:i]))
		}
		if i == end && end < len(rs.buf) {
			return rs.Fault(rs.line, 1, "this row has more than %d kB", maxRow>>10)
		}
		rs.row = append(rs.row, f)
		for i < end && rs.buf[i] == '\r' {
			i++
		}
		if i < end && rs.buf[i] == rs.by {
			i++
			continue
		}
		if i < end && rs.buf[i] == '\n' {
			i, line = i+1, line+1
		}
		rs.at, rs.line = i, line
		return nil
	}
}

// blanks returns how many blanks there are from one place up to another.
func (rs *Rows) blanks(from, to int) (n int) {
	for from+n < to && rs.buf[from+n] != rs.by && (rs.buf[from+n] == ' ' || rs.buf[from+n] == '\t') {
		n++
	}
	return n
}

// Reject tells that the row given last makes no sense as one. Where it has more
// than one line, a quote may have swallowed good rows: reading goes on with its
// second line.
func (rs *Rows) Reject() {
	if rs.line > rs.rowLine+1 {
		rs.at, rs.line = rs.rowAt, rs.rowLine
		rs.skipLine()
	}
}

// column returns the column of a place on a line.
func (rs *Rows) column(lineAt, at int) int { return 1 + utf8.RuneCount(rs.buf[lineAt:at]) }

// closingQuote returns where a quoted field ends, -1 where it does not.
func closingQuote(b []byte) int {
	for i := 0; i < len(b); i++ {
		if b[i] != '"' {
			continue
		}
		if i+1 < len(b) && b[i+1] == '"' {
			i++
			continue
		}
		return i
	}
	return -1
}

// skipLine goes on to the next line, however long this one is.
func (rs *Rows) skipLine() {
	for {
		if n := bytes.IndexByte(rs.buf[rs.at:], '\n'); n >= 0 {
			rs.at += n + 1
			break
		}
		rs.at = len(rs.buf)
		if rs.err != nil {
			break
		}
		if rs.fill() != nil { // told by the next call of Next
			break
		}
	}
	rs.line++
}
