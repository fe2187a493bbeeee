// Package ale reads lists of clips as editing rooms log them (.ale; there is no open
// standard: rules from the reader of the Academy Software Foundation for this form,
// otio-ale-adapter at 70c647d, and from real files).
//
// A list is text in three parts. After the line Heading stand pairs of a key and a
// value, after Column one line of names, and after Data a row for each clip. Tabs part
// what stands on a line, and blank lines mean nothing.
package ale

import (
	"fmt"
	"iter"
	"strings"

	"pullscore/lang"
	"pullscore/lang/lines"
	"pullscore/lang/timecode"
)

// A Row is a clip of the list. Texts have no blanks around them, and are empty where
// the list has none.
type Row struct {
	Name, Scene, Take string
	Tape              string // Tape, else Camroll, else Reel
	Camera            string
	Filename, Clip    string
	SourceFile        string

	Start, End int64 // source frames, counted at Rate; End is the first that is no longer there
	Rate       timecode.Rate

	Number int        // of the row, from 1
	Range  lang.Range // of its line
}

// Rows yields the rows of a list. A row says its rate, else the heading does, else it
// is that of the plan. Rows without a place in the source are left out, and told.
func Rows(t *lines.Text, rate timecode.Rate, faults *lines.Faults) iter.Seq[Row] {
	return func(yield func(Row) bool) {
		r := &reader{text: t, plan: rate, rate: rate, faults: faults, yield: yield}
		for l := range t.All() {
			if !l.Blank() && !r.line(l) {
				return
			}
		}
		r.end()
	}
}

// A part is what the lines of a list are.
type part int

const (
	none part = iota
	heading
	column
	data
)

// A reader reads a list line by line.
type reader struct {
	text   *lines.Text
	plan   timecode.Rate // that of the plan
	rate   timecode.Rate // that of the heading, else of the plan
	faults *lines.Faults
	yield  func(Row) bool

	part    part
	columns []field // the columns that are read, by their place; others are unread
	rows    int
	odd     map[string]bool // rates that were told
}

// tell adds what is to be told of the bytes from and up to to of a line.
func (r *reader) tell(severity lang.Severity, l lines.Line, from, to int, message, detail string) {
	r.faults.Add(lang.Diagnostic{Code: "bad-clips", Severity: severity, Message: message, Detail: detail, Range: r.text.At(l, from, to)})
}

// line reads a line that says something; it returns false when no more is wanted.
func (r *reader) line(l lines.Line) bool {
	switch word := strings.TrimSpace(l.Text); {
	case strings.EqualFold(word, "Heading") && r.part == none:
		r.part = heading
		return true
	case strings.EqualFold(word, "Column") && r.part <= heading:
		r.part = column
		return true
	case strings.EqualFold(word, "Data") && r.part == column:
		r.part = data
		return true
	}
	switch r.part {
	case heading:
		return r.heading(l)
	case column:
		r.names(l)
	case data:
		return r.row(l)
	}
	return true
}

// end tells what the list lacks.
func (r *reader) end() {
	missing := ""
	switch {
	case r.part < column:
		missing = "Column"
	case r.part < data:
		missing = "Data"
	default:
		return
	}
	r.faults.Add(lang.Diagnostic{
		Code: "bad-clips", Severity: lang.Error, Range: r.text.Start(),
		Message: fmt.Sprintf("this file has no %s line", missing),
		Detail:  "A list of clips has the lines Heading, Column and Data, each with its part below it.",
	})
}

// longestLine is how many bytes a line of the heading or of names may have.
const longestLine = 1 << 20

// heading reads pairs of a key and a value.
func (r *reader) heading(l lines.Line) bool {
	cells := cells(l.Text[:min(len(l.Text), longestLine)])
	for i := 0; i+1 < len(cells); i += 2 {
		key, value := cells[i], cells[i+1]
		switch {
		case strings.EqualFold(key.text, "FIELD_DELIM") && !strings.EqualFold(value.text, "TABS") && !strings.EqualFold(value.text, "TAB"):
			r.tell(lang.Error, l, value.from, value.to, fmt.Sprintf("FIELD_DELIM is %s, and tabs are read", value.text),
				"Write the list once more with tabs.")
			return false
		case strings.EqualFold(key.text, "FPS"):
			if rate, ok := r.rateOf(l, value); ok {
				r.rate = rate
			}
		}
	}
	return true
}

// rateOf reads a rate. One that there is not is told once.
func (r *reader) rateOf(l lines.Line, c cell) (rate timecode.Rate, ok bool) {
	if c.text == "" {
		return rate, false
	}
	word := c.text
	if strings.Contains(word, ".") { // 24.00 is 24
		word = strings.TrimRight(strings.TrimRight(word, "0"), ".")
	}
	rate, err := timecode.ParseRate(word)
	if err == nil {
		return rate, true
	}
	if !r.odd[c.text] {
		if r.odd == nil {
			r.odd = map[string]bool{}
		}
		if len(r.odd) < lines.MaxFaults {
			r.odd[c.text] = true
		}
		r.tell(lang.Warning, l, c.from, c.to, fmt.Sprintf("FPS %s is no rate that Pullscore knows", c.text),
			"The rate of the heading counts instead, or else that of the plan.")
	}
	return rate, false
}

// A cell is what stands between two tabs, without the blanks around it.
type cell struct {
	text     string
	from, to int // its bytes in the line
}

// cells splits a line.
func cells(s string) (list []cell) {
	for at := 0; ; {
		text, rest, more := strings.Cut(s[at:], "\t")
		list = append(list, trimmed(text, at))
		if !more {
			return list
		}
		at = len(s) - len(rest)
	}
}

func trimmed(text string, at int) cell {
	from := at + len(text) - len(strings.TrimLeft(text, " "))
	word := strings.TrimSpace(text)
	return cell{word, from, from + len(word)}
}
