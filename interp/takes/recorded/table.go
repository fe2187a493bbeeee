// A table of frames: a row a frame.
//
// Numbers of focus have a unit only if the header, a row of units below it or the
// cell itself names one, or the user does. A unit that nobody names is asked for
// and never guessed: what is 410 mm in one table is 410 cm in the next.

package recorded

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"

	"pullscore/interp/takes"
	"pullscore/lang/timecode"
)

// A table reads a table of frames.
type table struct {
	rows *takes.Rows
	head *header
	rate timecode.Rate

	unit     string // of the focus, "" where every value has its own
	unitsRow int    // the line of the row of units, 0 where there is none
	asked    string // the unit for values of which nothing else says one
	own      bool   // a value had its own unit

	at, first int64 // in a table that counts frames: where it begins, and its first count
	begun     bool

	marks [2]int // the lines of the first decimal comma and of the first decimal point, 0 for none
	again []takes.Field
}

// newTable returns a table of which the first bytes are given too.
func newTable(r io.Reader, head []byte, file string, opt Options) (*table, error) {
	h, err := findHeader(head, file, opt)
	if err != nil {
		return nil, err
	}
	if _, err := io.CopyN(io.Discard, r, int64(h.offset)); err != nil {
		return nil, err
	}
	t := &table{rows: takes.NewTable(r, file, h.by, h.line), head: h, rate: opt.Rate, unit: h.unit, asked: opt.Unit}
	if h.counts {
		if t.at, err = opt.Rate.Parse(opt.At); err != nil {
			return nil, fmt.Errorf("--at: %w", err)
		}
	}
	if _, err := t.rows.Next(); err != nil { // the header, which was a row before
		return nil, err
	}
	return t, t.units()
}

// units reads the row of units, if the row below the header is one.
func (t *table) units() error {
	row, err := t.rows.Next()
	var fault *takes.Fault
	switch {
	case errors.As(err, &fault):
		t.rows.Reject()
		return nil
	case errors.Is(err, io.EOF):
		return nil
	case err != nil:
		return err
	}
	for _, f := range row {
		if strings.ContainsAny(f.Text, "0123456789") {
			t.again = append(t.again, row...)
			return nil
		}
	}
	name := ""
	if t.head.focus < len(row) {
		name = strings.Trim(row[t.head.focus].Text, "()[]")
	}
	if _, ok := takes.Metres(name); !ok {
		t.again = append(t.again, row...)
		return nil
	}
	f := row[t.head.focus]
	if a, _ := takes.Metres(t.unit); t.unit != "" && !sameUnit(a, name) {
		return refusal{fault: t.rows.Fault(f.Line, f.Column, "the column is called %q, and this line says %s", t.head.row[t.head.focus].Text, name)}
	}
	t.unit, t.unitsRow = name, f.Line
	return nil
}

func sameUnit(metres float64, name string) bool {
	m, _ := takes.Metres(name)
	return m == metres
}

// row returns the next row.
func (t *table) row() ([]takes.Field, error) {
	if row := t.again; row != nil {
		t.again = nil
		return row, nil
	}
	return t.rows.Next()
}

func (t *table) next() (frame, error) {
	row, err := t.row()
	if err != nil {
		return frame{}, err
	}
	f := frame{line: row[0].Line, column: row[0].Column, ring: math.NaN()}
	for _, k := range []int{t.head.time, t.head.focus} {
		if k >= len(row) || row[k].Text == "" {
			last := row[min(k, len(row)-1)]
			t.rows.Reject()
			return f, t.rows.Fault(last.Line, last.Column, "a frame has a timecode and a distance, and one is missing here")
		}
	}
	when, focus := row[t.head.time], row[t.head.focus]
	f.line, f.column = when.Line, when.Column
	if f.number, err = t.number(when); err != nil {
		return f, err
	}
	f.metres, err = t.length(focus)
	return f, err
}

// number returns the number of a frame.
func (t *table) number(f takes.Field) (int64, error) {
	if !t.head.counts {
		n, err := t.rate.Parse(f.Text)
		if err != nil {
			return 0, t.rows.Fault(f.Line, f.Column, "%v", err)
		}
		return n, nil
	}
	n, err := strconv.ParseInt(f.Text, 10, 64)
	if err != nil || n != int64(int32(n)) {
		return 0, t.rows.Fault(f.Line, f.Column, "%q is no number of a frame", f.Text)
	}
	if !t.begun {
		t.begun, t.first = true, n
	}
	return t.at + n - t.first, nil
}

// length returns a focus distance in metres.
func (t *table) length(f takes.Field) (float64, error) {
	text, err := t.decimal(f)
	if err != nil {
		return 0, err
	}
	unit := t.unit
	if unit == "" {
		unit = t.asked
	}
	m, err := takes.ParseLength(text, unit)
	switch {
	case errors.Is(err, takes.ErrNoUnit) && !t.own:
		return 0, t.unitless(f, text)
	case errors.Is(err, takes.ErrNoUnit):
		return 0, t.rows.Fault(f.Line, f.Column, "%q lacks its unit, and the values above have one", f.Text)
	case err != nil:
		return 0, t.rows.Fault(f.Line, f.Column, "%s", strings.Replace(err.Error(), strconv.Quote(text), strconv.Quote(f.Text), 1))
	}
	t.own = t.own || unit == "" && !math.IsInf(m, 0)
	return m, nil
}

// decimal returns the text of a value with a decimal point. A file that has both
// signs is refused, since in one of them a thousand may be meant.
func (t *table) decimal(f takes.Field) (string, error) {
	if t.head.by == ',' {
		return f.Text, nil
	}
	comma, point := betweenDigits(f.Text, ','), betweenDigits(f.Text, '.')
	for i, has := range []bool{comma >= 0, point >= 0} {
		if has && t.marks[i] == 0 {
			t.marks[i] = f.Line
		}
	}
	switch {
	case t.marks[0] > 0 && t.marks[1] > 0:
		return "", refusal{fault: t.rows.Fault(f.Line, f.Column, "line %d writes decimals with a comma and line %d with a point", t.marks[0], t.marks[1])}
	case comma < 0:
		return f.Text, nil
	}
	return f.Text[:comma] + "." + f.Text[comma+1:], nil
}

// betweenDigits returns where a sign first stands between two digits; -1: nowhere.
func betweenDigits(s string, sign byte) int {
	digit := func(i int) bool { return i >= 0 && i < len(s) && '0' <= s[i] && s[i] <= '9' }
	for i := range len(s) {
		if s[i] == sign && digit(i-1) && digit(i+1) {
			return i
		}
	}
	return -1
}

// unitless returns the refusal of a table whose focus has no unit. It reads on
// to say what the values would be in each unit.
func (t *table) unitless(f takes.Field, text string) error {
	r := refusal{fault: t.rows.Fault(f.Line, f.Column, "%q lacks its unit: name it in the header as in focus_mm, or with --unit", f.Text)}
	lo, hi := math.Inf(1), math.Inf(-1)
	for {
		if v, err := takes.ParseNumber(text); err == nil {
			lo, hi = min(lo, v), max(hi, v)
		}
		row, err := t.row()
		var fault *takes.Fault
		switch {
		case errors.As(err, &fault):
			text = ""
			continue
		case errors.Is(err, io.EOF):
			r.detail = readings(lo, hi)
			return r
		case err != nil:
			return err
		}
		text = ""
		if t.head.focus < len(row) {
			if text, err = t.decimal(row[t.head.focus]); err != nil {
				return err
			}
		}
	}
}

// nearest and farthest bound the distances, in metres, that a focus curve is
// likely to have. They only bound what is offered as a reading. Our own choice.
const (
	nearest  = 0.05
	farthest = 100.0
)

// readings says from where to where the focus goes in each unit in which both are
// distances that a lens is focused at.
func readings(lo, hi float64) string {
	var b bytes.Buffer
	figure := func(v float64) string { return strconv.FormatFloat(math.Round(v*100)/100, 'f', -1, 64) + " m" }
	for _, unit := range []string{"mm", "cm", "m", "in", "ft"} {
		m, _ := takes.Metres(unit)
		if lo*m < nearest || hi*m > farthest || lo > hi {
			continue
		}
		if b.Len() == 0 {
			fmt.Fprintf(&b, "As %s the focus goes from %s to %s", unit, figure(lo*m), figure(hi*m))
		} else {
			fmt.Fprintf(&b, ", as %s from %s to %s", unit, figure(lo*m), figure(hi*m))
		}
	}
	if b.Len() > 0 {
		b.WriteByte('.')
	}
	return b.String()
}

func (t *table) fault(f frame, format string, args ...any) *takes.Fault {
	return t.rows.Fault(f.line, f.column, format, args...)
}
