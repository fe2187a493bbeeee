// Package takes reads, writes and fits logs of takes: how the tries at a pull
// landed, and what they say of the hand that made them.
//
// Angles are degrees at the hand, times seconds. A log is a CSV file whose
// first row names its columns; see Columns.
package takes

import (
	"math"
	"slices"
	"strconv"
	"strings"
)

// A Take is one try at a pull.
type Take struct {
	Date   string // the day, 2026-03-01; "" where not said
	Plan   string // the plan's title or the name of its file; "" where not said
	Shot   string // the shot's ID; "" where not said
	Pull   int    // the pull's number within the shot, from 1; 0 where not said
	Puller string // "" where not said

	Travel float64 // from where the focus was to the mark, degrees at the hand, not negative
	Error  float64 // where it landed less the mark, degrees at the hand, positive past the mark
	Time   float64 // from the first motion to the landing, seconds, positive

	Hit  Hit
	Rim  float64 // diameter under the hand, metres; 0 where not said
	Note string

	Line int // of the log that it stands in, from 1; 0 where not known

	// Unmeasured tells that nothing is known of where the take landed: it has no
	// Error, and may have neither Travel nor Time. Whether it hit may be known.
	Unmeasured bool

	// Window is how far from the mark a take may land and be sharp, as a plan tells:
	// before the mark and past it, in degrees at the hand. Both are 0 where no plan was at
	// hand. A log has no column for it.
	Window [2]float64

	// Stop is what the end of the ring has to do with the landing, as far as a
	// plan tells.
	Stop Stop

	// Planned is the time that the plan gives the movement, seconds; 0 where no
	// plan was at hand. A log has no column for it.
	Planned float64

	// OnSet is the take on set, as a log names it: "3", "3A" or "PU". Clip is the clip
	// that it was recorded in, and Timecode the label of the frame of that clip in which
	// it landed. Each is "" where not said.
	OnSet, Clip, Timecode string

	// Landed is where the focus came to rest, as a log has it: "1.72 m". Distance is
	// where its mark is, in metres, and FNumber the stop. They are written where a
	// log has those columns; a reader leaves them empty.
	Landed, Distance, FNumber string

	// Result is how it went in a word: sharp, early, late or buzz. It too is only
	// written.
	Result string
}

// TriesSuffix ends the name of the log of a plan's tries on the page. All its rows
// are such tries, also where it has no column for the note that says so.
const TriesSuffix = ".tries.csv"

// pageNote begins the note of a try that was made on the page of a plan, with a
// mouse or keys.
const pageNote = "page, "

// OnPage tells whether this was a try on the page, which is no take of the hand
// on a ring.
func (t *Take) OnPage() bool { return strings.HasPrefix(t.Note, pageNote) }

// A Stop tells what the end of the ring has to do with a landing.
type Stop uint8

// What the end of the ring does to a take.
const (
	NoStop     Stop = iota // nothing, or nothing is known of it
	HeldByStop             // held the focus past the mark, where it would have gone on
	SharpStop              // is in focus itself, so that a hand may turn against it
)

// A Hit tells whether a take was sharp.
type Hit uint8

// What is known of a take's sharpness.
const (
	Unsaid Hit = iota
	Missed
	Sharp
)

// hitNames are the words that a log has for them.
var hitNames = [...]string{"", "no", "yes"}

func (h Hit) String() string { return hitNames[h] }

// Columns are the columns of a new log, in order. A log that is read may have
// them in any other order, others besides (see known), and any of them left out,
// as long as something is told of its takes. Those that travel_deg, error_deg
// and time_s tell of are fitted as they stand. In place of travel_deg and
// error_deg a log may have landed, the distance or the ring angle that the focus
// came to rest at; plan, shot and pull then say of which pull, and the plan has
// to be at hand. A row with neither counts by its hit or result alone.
var Columns = []string{"date", "plan", "shot", "pull", "puller", "travel_deg", "error_deg", "time_s", "hit", "note"}

// Header is the first row of a new log, with its line end.
var Header = header(Columns)

// Append appends the take to dst as a row of a log with Header, with its line
// end: angles to a thousandth of a degree, times to a tenth of a millisecond.
func Append(dst []byte, t Take) []byte { return appendRow(dst, Columns, t) }

// appendRow appends the take as a row with those columns; a column that no take
// has stays empty.
func appendRow(dst []byte, columns []string, t Take) []byte {
	for i, name := range columns {
		if i > 0 {
			dst = append(dst, ',')
		}
		dst = appendField(dst, t.field(name))
	}
	return append(dst, '\n')
}

// field returns what the take has for a column, "" for nothing.
func (t Take) field(name string) string {
	if t.Unmeasured && slices.Contains(measures, name) {
		return ""
	}
	switch name {
	case "date":
		return t.Date
	case "plan":
		return t.Plan
	case "shot":
		return t.Shot
	case "pull":
		if t.Pull > 0 {
			return strconv.Itoa(t.Pull)
		}
	case "puller":
		return t.Puller
	case "travel_deg":
		return decimal(t.Travel, 3)
	case "error_deg":
		return decimal(t.Error, 3)
	case "time_s":
		return decimal(t.Time, 4)
	case "landed":
		return t.Landed
	case "distance_m":
		return t.Distance
	case "stop":
		return t.FNumber
	case "hit":
		return t.Hit.String()
	case "take":
		return t.OnSet
	case "clip":
		return t.Clip
	case "timecode":
		return t.Timecode
	case "result":
		switch {
		case t.Result != "":
			return t.Result
		case t.Hit == Sharp:
			return "sharp"
		case t.Hit == Missed:
			return "buzz"
		}
	case "rim_mm":
		if t.Rim > 0 {
			return decimal(t.Rim*1000, 3)
		}
	case "note":
		return t.Note
	}
	return ""
}

// decimal writes a number to so many decimals, without zeros at its end.
func decimal(v float64, places int) string {
	scale := math.Pow10(places)
	if r := math.Round(v*scale) / scale; !math.IsInf(r, 0) {
		v = r + 0 // + 0: no -0
	}
	return strconv.FormatFloat(v, 'f', -1, 64)
}

// appendField appends a field, in quotes where CSV wants them (RFC 4180). A
// field that a spreadsheet would take for a formula is safe from that too: it
// gets a blank before it.
func appendField(dst []byte, s string) []byte {
	if s != "" && strings.ContainsRune("=@", rune(s[0])) {
		s = " " + s
	}
	if !strings.ContainsAny(s, "\",\r\n") && !strings.HasPrefix(s, " ") {
		return append(dst, s...)
	}
	dst = append(dst, '"')
	dst = append(dst, strings.ReplaceAll(s, `"`, `""`)...)
	return append(dst, '"')
}
