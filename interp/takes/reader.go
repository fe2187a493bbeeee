// Reading a log: its header, and a take a row.

package takes

import (
	"errors"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"
	"time"

	"pullscore/interp/plan"
	"pullscore/interp/units"
)

// Limits on what a row may say, wide of anything that a hand does: a number
// beyond them is a slip of the pen or another unit.
const (
	maxTravel = 7200 // degrees: twenty turns
	maxError  = 3600
	maxTime   = 600 // seconds
	minRim    = 0.01
	maxRim    = 1 // metres
)

// A Reader reads the takes of a log one at a time, in memory that does not grow.
type Reader struct {
	rows    *Rows
	plans   Plans
	columns []string // by index; "" for one that is not known
	dead    bool     // the header cannot be used
	tries   bool     // it is a log of tries on the page
}

// NewReader returns a reader of the log r, which file names in faults. The
// plans are those that rows may name; none are needed for rows that have their
// angles.
func NewReader(r io.Reader, file string, plans ...*plan.Plan) *Reader {
	return &Reader{rows: NewRows(r, file), plans: plans, tries: strings.HasSuffix(strings.ToLower(file), TriesSuffix)}
}

// Read returns the next take. The error is a *Fault for what is wrong with a
// row: the next call goes on with the row after it, and where Kept is set the
// take is good all the same. It is io.EOF at the end, and else one of reading.
func (r *Reader) Read() (Take, error) {
	if r.dead {
		return Take{}, io.EOF
	}
	if r.columns == nil {
		if err := r.header(); err != nil {
			r.dead = true
			return Take{}, err
		}
	}
	row, err := r.rows.Next()
	if err != nil {
		return Take{}, err
	}
	t, err := r.take(row)
	var fault *Fault
	if errors.As(err, &fault) && !fault.Kept {
		r.rows.Reject()
	}
	if r.tries && !t.OnPage() {
		t.Note = pageNote + t.Note
	}
	return t, err
}

// known are the columns that a log may have. Some only help people: how far it was and
// at which stop. Take, clip and timecode tell which take a cut uses.
var known = []string{
	"plan", "shot", "pull", "take", "clip", "timecode", "landed", "time_s", "hit", "result",
	"distance_m", "stop", "travel_deg", "error_deg", "rim_mm", "puller", "date", "note",
}

// measures are the columns that tell where a take landed, and after what.
var measures = []string{"travel_deg", "error_deg", "time_s"}

// header reads the first row. A header that lacks a column is told once, with
// all that it lacks.
func (r *Reader) header() error {
	row, err := r.rows.Next()
	if errors.Is(err, io.EOF) {
		return r.rows.Fault(1, 1, "the log is empty: its first row names the columns")
	}
	if err != nil {
		return err
	}
	names := make([]string, len(row))
	for i, f := range row {
		name := strings.ToLower(f.Text)
		if !slices.Contains(known, name) {
			continue
		}
		if slices.Contains(names, name) {
			return r.rows.Fault(f.Line, f.Column, "column %s is here twice", name)
		}
		names[i] = name
	}
	if lacks := lacking(names); lacks != "" && !countable(names) {
		return r.rows.Fault(row[0].Line, row[0].Column, "%s", lacks+hint(row))
	}
	r.columns = names
	return nil
}

// countable tells whether a header without the columns for a fit has one that
// takes can be counted by, and none that is half of what a fit needs.
func countable(names []string) bool {
	has := func(name string) bool { return slices.Contains(names, name) }
	return (has("hit") || has("result")) && !has("landed") && !has("error_deg")
}

// lacking says which columns a header lacks for a fit, "" where it has enough.
func lacking(names []string) string {
	without := func(wanted ...string) (list []string) {
		for _, name := range wanted {
			if !slices.Contains(names, name) {
				list = append(list, name)
			}
		}
		return list
	}
	angles, landed := without(measures...), without("shot", "pull", "landed", "time_s")
	switch {
	case len(angles) == 0 || len(landed) == 0:
		return ""
	case slices.Contains(names, "landed"):
		return "the log has no column " + strings.Join(landed, " and no ")
	default:
		return "the log has no column " + strings.Join(angles, " and no ")
	}
}

// hint says why a header may have none of the columns.
func hint(row []Field) string {
	first := row[0].Text
	if _, err := ParseNumber(first); err == nil {
		return ": its first row names the columns, and here it has numbers"
	}
	if len(row) == 1 {
		for mark, name := range map[string]string{";": "semicolons", "\t": "tabs"} {
			if strings.Contains(first, mark) {
				return ": its fields are divided by " + name + ", and commas are wanted"
			}
		}
	}
	return ""
}

// take reads a row.
func (r *Reader) take(row []Field) (t Take, err error) {
	if len(row) > len(r.columns) {
		if extra := row[len(r.columns)]; extra.Text != "" || len(row) > len(r.columns)+1 {
			return t, r.rows.Fault(extra.Line, extra.Column, "this row has %d fields, and the header %d", len(row), len(r.columns))
		}
		row = row[:len(r.columns)]
	}
	d := draft{row: row, columns: r.columns, end: row[len(row)-1]}
	d.Line = r.rows.rowLine
	for i, f := range row {
		name := r.columns[i]
		if f.Text == "" || name == "" {
			continue
		}
		if err := d.set(name, f); err != nil {
			return t, r.rows.Fault(f.Line, f.Column, "%s: %v", name, err)
		}
	}
	d.Unmeasured = d.field("error_deg").Text == "" && !d.landed.said
	for _, name := range d.wanted() {
		if d.field(name).Text == "" {
			f := d.field(name)
			return t, r.rows.Fault(f.Line, f.Column, "%s is missing", name)
		}
	}
	return r.place(&d)
}

// A draft is a take being read.
type draft struct {
	Take
	landed  landed
	row     []Field
	columns []string
	end     Field // the last of the row, for what is missing after it
}

// field returns the row's field of a column; one that the row is too short for
// is empty, at its end.
func (d *draft) field(name string) Field {
	if i := slices.Index(d.columns, name); i >= 0 && i < len(d.row) {
		return d.row[i]
	}
	return Field{Line: d.end.Line, Column: d.end.Column}
}

// byLanding tells whether the row says where the focus came to rest, and not
// the angles.
func (d *draft) byLanding() bool {
	return d.landed.said && (d.field("travel_deg").Text == "" || d.field("error_deg").Text == "")
}

// wanted are the columns that the row cannot do without.
func (d *draft) wanted() []string {
	if d.Unmeasured {
		return nil
	}
	if d.byLanding() || !slices.Contains(d.columns, "travel_deg") || !slices.Contains(d.columns, "error_deg") {
		return []string{"shot", "pull", "landed", "time_s"}
	}
	return measures
}

// set takes one field.
func (d *draft) set(name string, f Field) (err error) {
	switch name {
	case "date":
		d.Date, err = day(f.Text)
	case "plan":
		d.Plan = f.Text
	case "shot":
		d.Shot = f.Text
	case "pull":
		if d.Pull, err = strconv.Atoi(f.Text); err != nil || d.Pull < 1 {
			err = fmt.Errorf("%q is not the number of a pull, which count from 1", f.Text)
		}
	case "puller":
		d.Puller = f.Text
	case "take":
		d.OnSet = f.Text
	case "clip":
		d.Clip = f.Text
	case "timecode":
		d.Timecode = f.Text
	case "travel_deg":
		d.Travel, err = number(f.Text, "deg", 0, maxTravel)
	case "error_deg":
		d.Error, err = number(f.Text, "deg", -maxError, maxError)
	case "time_s":
		if d.Time, err = number(f.Text, "s", 0, maxTime); err == nil && d.Time == 0 {
			err = errors.New("a movement takes some time, and this says 0")
		}
	case "rim_mm":
		d.Rim, err = number(f.Text, "mm", minRim*1000, maxRim*1000)
		d.Rim /= 1000
	case "landed":
		d.landed, err = parseLanded(f.Text)
	case "hit":
		d.Hit, err = hit(f.Text)
	case "result":
		var h Hit
		if h, err = result(f.Text); d.field("hit").Text == "" {
			d.Hit = h
		}
	case "note":
		d.Note = f.Text
	}
	return err
}

// number reads a number of a column in that unit, which may stand behind it.
func number(text, unit string, lo, hi float64) (float64, error) {
	n, rest := cutNumber(text)
	switch rest = strings.TrimSpace(rest); {
	case n == "":
		return 0, fmt.Errorf("%q is no number", text)
	case rest != "" && rest != unit && (unit != "deg" || rest != "°"):
		return 0, fmt.Errorf("a number in %s is wanted, and this says %q", unit, text)
	}
	v, err := ParseNumber(n)
	if err != nil {
		return 0, err
	}
	if v < lo || v > hi {
		return 0, fmt.Errorf("%s lies outside %s to %s %s", text, units.Decimal(lo, 1), units.Decimal(hi, 1), unit)
	}
	return v, nil
}

// day reads a date, which may have a time of day behind it.
func day(text string) (string, error) {
	const form = "2006-01-02"
	if len(text) >= len(form) && (len(text) == len(form) || text[len(form)] == 'T' || text[len(form)] == ' ') {
		if _, err := time.Parse(form, text[:len(form)]); err == nil {
			return text[:len(form)], nil
		}
	}
	return "", fmt.Errorf("%q is no date as in 2026-03-01", text)
}

// results are the words for how a take went on set, and whether it was sharp.
var results = map[string]Hit{"sharp": Sharp, "early": Missed, "late": Missed, "buzz": Missed}

// ResultOf returns whether a take was sharp that went as a word says: sharp, early, late or
// buzz. ok is false for any other word.
func ResultOf(word string) (h Hit, ok bool) {
	h, ok = results[word]
	return h, ok
}

// result reads how a take went.
func result(text string) (Hit, error) {
	if h, ok := results[strings.ToLower(text)]; ok {
		return h, nil
	}
	return Unsaid, fmt.Errorf("%q is none of sharp, early, late and buzz", text)
}

// hit reads whether a take was sharp.
func hit(text string) (Hit, error) {
	switch strings.ToLower(text) {
	case "yes", "y", "true", "1", "hit", "sharp":
		return Sharp, nil
	case "no", "n", "false", "0", "miss", "soft":
		return Missed, nil
	}
	return Unsaid, fmt.Errorf("%q is neither yes nor no", text)
}
