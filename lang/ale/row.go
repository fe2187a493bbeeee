// Rows, by the columns that are read.

package ale

import (
	"fmt"
	"strings"

	"pullscore/lang"
	"pullscore/lang/lines"
	"pullscore/lang/timecode"
)

// A field is what a column holds.
type field uint8

const (
	unread field = iota
	name
	scene
	take
	tape
	camroll
	reel
	camera
	filename
	clip
	sourceFile
	start
	end
	fps
	fields // their number
)

// fieldOf returns what a column of a name holds.
func fieldOf(column string) field {
	switch strings.ToLower(column) {
	case "name":
		return name
	case "scene":
		return scene
	case "take":
		return take
	case "tape":
		return tape
	case "camroll":
		return camroll
	case "reel":
		return reel
	case "camera":
		return camera
	case "filename":
		return filename
	case "clip":
		return clip
	case "source file":
		return sourceFile
	case "start":
		return start
	case "end":
		return end
	case "fps":
		return fps
	}
	return unread
}

// names reads the names of the columns. Of two columns of one name the first counts.
func (r *reader) names(l lines.Line) {
	if r.columns != nil {
		return
	}
	var taken [fields]bool
	for _, c := range cells(strings.TrimRight(l.Text[:min(len(l.Text), longestLine)], "\t ")) {
		f := fieldOf(c.text)
		if taken[f] {
			f = unread
		}
		taken[f] = true
		r.columns = append(r.columns, f)
	}
}

// row reads a row; it returns false when no more is wanted.
func (r *reader) row(l lines.Line) bool {
	r.rows++
	var has [fields]cell
	count := r.split(l, &has)
	if count != len(r.columns) {
		r.tell(lang.Note, l, 0, len(l.Text), fmt.Sprintf("row %d has %d fields for %d columns", r.rows, count, len(r.columns)),
			"Fields that are missing are taken as empty, and those without a column are left out.")
	}
	row := Row{
		Name: has[name].text, Scene: has[scene].text, Take: has[take].text, Camera: has[camera].text,
		Filename: has[filename].text, Clip: has[clip].text, SourceFile: has[sourceFile].text,
		Number: r.rows, Range: r.text.Whole(l), Rate: r.rate,
	}
	for _, f := range []field{tape, camroll, reel} {
		if row.Tape == "" {
			row.Tape = has[f].text
		}
	}
	if rate, ok := r.rateOf(l, has[fps]); ok {
		row.Rate = rate
	}
	if !r.place(l, &row, has[start], has[end]) {
		return true
	}
	return r.yield(row)
}

// split takes the cells of the columns that are read, and returns how many the row
// has. Empty ones behind the last column are none.
func (r *reader) split(l lines.Line, has *[fields]cell) (count int) {
	at := 0
	for {
		text, rest, more := strings.Cut(l.Text[at:], "\t")
		if count < len(r.columns) {
			if f := r.columns[count]; f != unread {
				has[f] = trimmed(text, at)
			}
		} else if strings.TrimSpace(l.Text[at:]) == "" {
			return count
		}
		count++
		if !more {
			return count
		}
		at = len(l.Text) - len(rest)
	}
}

// place reads where a row lies in its source.
func (r *reader) place(l lines.Line, row *Row, from, to cell) bool {
	ok := false
	if row.Start, ok = r.label(l, row, "Start", from); !ok {
		return false
	}
	if row.End, ok = r.label(l, row, "End", to); !ok {
		return false
	}
	if row.End < row.Start {
		r.tell(lang.Warning, l, to.from, to.to, fmt.Sprintf("row %d ends before it starts", row.Number), "The row is left out.")
		return false
	}
	return true
}

// label reads a timecode of a row.
func (r *reader) label(l lines.Line, row *Row, column string, c cell) (frames int64, ok bool) {
	if c.text == "" {
		r.tell(lang.Warning, l, 0, len(l.Text), fmt.Sprintf("row %d has no %s", row.Number, column), "The row is left out.")
		return 0, false
	}
	row.Rate = r.counted(row.Rate, strings.Contains(c.text, ";"))
	frames, err := row.Rate.Parse(c.text)
	if err == nil {
		return frames, true
	}
	message := fmt.Sprintf("%s %s has no such frame at %s", column, c.text, row.Rate)
	if !label().MatchString(c.text) {
		message = fmt.Sprintf("%s %s is no timecode", column, c.text)
	}
	r.tell(lang.Error, l, c.from, c.to, message, "The row is left out. The column FPS of the row says the rate, else the heading, else the plan.")
	return 0, false
}

var label = lines.Pattern(`^\d\d[:;]\d\d[:;]\d\d[:;]\d\d\d?$`)

// counted returns the rate at which a label counts: drop-frame where it says so, or
// where the plan does and the rate is the same.
func (r *reader) counted(rate timecode.Rate, semicolon bool) timecode.Rate {
	if rate.Drop() || !semicolon && !r.plan.Drop() {
		return rate
	}
	drop, err := timecode.ParseRate(rate.String() + "df")
	if err != nil || !semicolon && drop != r.plan {
		return rate
	}
	return drop
}
