// The one Diagnostic type: every mistake and every finding of every phase.

package lang

import (
	"cmp"
	"slices"
)

// A Pos is a place in a file: a byte offset from 0, and a line and a column from 1.
// Columns count characters; a tab is one character.
type Pos struct {
	Offset, Line, Column int
}

// A Range is a part of a file, from Start up to but not including End.
type Range struct {
	File       string
	Start, End Pos
}

// Severity says how serious a Diagnostic is.
type Severity uint8

// The severities, the mildest first.
const (
	Note    Severity = iota // advice
	Warning                 // likely to fail on the day
	Error                   // cannot be done, or does not make sense
)

func (s Severity) String() string {
	return [...]string{"note", "warning", "error"}[s]
}

// MarshalText returns the severity as its word: note, warning or error.
func (s Severity) MarshalText() ([]byte, error) { return []byte(s.String()), nil }

// A Figure is a value that supports a finding: a name such as "probability" or
// "window_hand_deg", and a number. The name says the unit; without one, the unit is
// metres, seconds or degrees.
type Figure struct {
	Name  string
	Value float64
}

// A Cure is a change to the plan that removes the finding. Text is what to write
// ("over 1.9 s", "stop f/4"); Value and Unit are the number in it and its unit.
type Cure struct {
	Text  string  `json:"text"`
	Value float64 `json:"value"`
	Unit  string  `json:"unit"`

	// Then is what comes in place of the finding ("55 %, hard-to-land"); "" where
	// nothing does.
	Then string `json:"then,omitempty"`

	// Edits write the cure into the files of the plan. There are none if the place would
	// change other shots too, as a line of a move or of a kit may.
	Edits []Edit `json:"-"`
}

// Says returns the cure for people: what to write, and what comes of it.
func (c Cure) Says() string {
	if c.Then == "" {
		return c.Text
	}
	return c.Text + " (then " + c.Then + ")"
}

// A Fix is a change that mends a mistake, such as a unit that is missing. Title says what
// it does, in the imperative: "Write 1.70". Nobody has tried whether the plan works with
// it, as is done with a Cure. One that declares a subject leaves its place to be written.
type Fix struct {
	Title string
	Edits []Edit
}

// A Related is another place that belongs to a Diagnostic, with its own message.
type Related struct {
	Message string
	Range   Range
}

// A Diagnostic is one message about a plan: a mistake or a finding.
type Diagnostic struct {
	Code     string // kebab case, as in the reference
	Severity Severity
	Message  string // one sentence without a full stop
	Detail   string // what was expected, the nearest word, or what to do; may be empty
	Range    Range
	Related  []Related
	Figures  []Figure
	Cures    []Cure
	Fixes    []Fix // the likeliest first

	// Shot, Pull and Time give the place of a finding in the film: the ID of the
	// shot, the number of the pull from 1 (0: none), and the time from the start of
	// the shot in seconds. Shot is empty if the diagnostic belongs to no shot. One that
	// concerns several set-ups of a scene has the title of the scene in Scene; if it stands
	// in none of them, its Time counts from the start of the scene.
	Scene string
	Shot  string
	Pull  int
	Time  float64

	// Cause is the letter that a finding has on the drawings of its shot, together with
	// all others of the same cause; "" if it is flagged on none.
	Cause string
}

// Sort returns the list ordered by file, place, severity (worst first) and code; what is
// told of one scene also by its time. It changes the order of the list itself. It drops diagnostics that repeat a message at
// the same place in the same shot.
func Sort(list []Diagnostic) []Diagnostic {
	slices.SortStableFunc(list, func(a, b Diagnostic) int {
		return cmp.Or(
			cmp.Compare(a.Range.File, b.Range.File),
			cmp.Compare(a.Range.Start.Offset, b.Range.Start.Offset),
			-cmp.Compare(a.Severity, b.Severity),
			cmp.Compare(a.Code, b.Code),
			cmp.Compare(timeInScene(a), timeInScene(b)),
			cmp.Compare(a.Message, b.Message),
		)
	})
	return slices.CompactFunc(list, func(a, b Diagnostic) bool {
		return a.Range == b.Range && a.Code == b.Code && a.Message == b.Message && a.Scene == b.Scene && a.Shot == b.Shot && a.Pull == b.Pull
	})
}

// timeInScene is the time of a finding of a scene, seconds; 0 of any other.
func timeInScene(d Diagnostic) float64 {
	if d.Scene == "" {
		return 0
	}
	return d.Time
}

// Worst returns the worst severity in the list. ok is false for an empty list.
func Worst(list []Diagnostic) (worst Severity, ok bool) {
	for _, d := range list {
		worst, ok = max(worst, d.Severity), true
	}
	return worst, ok
}
