// The one Diagnostic type: every mistake and every finding of every phase.

package lang

import (
	"cmp"
	"slices"
)

// A Pos is a place in a file: a byte offset from 0, a line and a column from
// 1. Columns count characters; a tab is one.
type Pos struct {
	Offset, Line, Column int
}

// A Range is a stretch of a file from Start up to, not including, End.
type Range struct {
	File       string
	Start, End Pos
}

// Severity tells how bad a Diagnostic is.
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

// MarshalText writes the severity as its word.
func (s Severity) MarshalText() ([]byte, error) { return []byte(s.String()), nil }

// A Figure is a value behind a finding: a name such as "probability" or
// "window_hand_deg", and the number in the unit that the name says (metres,
// seconds and degrees where it says none).
type Figure struct {
	Name  string
	Value float64
}

// A Cure is a change to the plan that removes the finding: the words to write
// ("over 1.9 s", "stop f/4"), and the number in them with its unit.
type Cure struct {
	Text  string  `json:"text"`
	Value float64 `json:"value"`
	Unit  string  `json:"unit"`

	// Then is what comes in place of the finding ("55 %, hard-to-land"); "" where
	// nothing does.
	Then string `json:"then,omitempty"`
}

// Says returns the cure for people: what to write, and what comes of it.
func (c Cure) Says() string {
	if c.Then == "" {
		return c.Text
	}
	return c.Text + " (then " + c.Then + ")"
}

// A Related is another place that a Diagnostic speaks of.
type Related struct {
	Message string
	Range   Range
}

// A Diagnostic is something to be told about a plan.
type Diagnostic struct {
	Code     string // kebab case, as in the reference
	Severity Severity
	Message  string // one sentence without a full stop
	Detail   string // what was expected, a near miss, what can be done; may be empty
	Range    Range
	Related  []Related
	Figures  []Figure
	Cures    []Cure

	// Shot, Pull and Time say where in the film a finding lies: the shot's ID,
	// the pull's number from 1 (0: none), the time from the shot's start in
	// seconds. Shot is empty for what belongs to no shot.
	Shot string
	Pull int
	Time float64
}

// Sort orders diagnostics by file, place, severity (worst first) and code, and
// drops those that say the same of the same place in the same shot.
func Sort(list []Diagnostic) []Diagnostic {
	slices.SortStableFunc(list, func(a, b Diagnostic) int {
		return cmp.Or(
			cmp.Compare(a.Range.File, b.Range.File),
			cmp.Compare(a.Range.Start.Offset, b.Range.Start.Offset),
			-cmp.Compare(a.Severity, b.Severity),
			cmp.Compare(a.Code, b.Code),
			cmp.Compare(a.Message, b.Message),
		)
	})
	return slices.CompactFunc(list, func(a, b Diagnostic) bool {
		return a.Range == b.Range && a.Code == b.Code && a.Message == b.Message && a.Shot == b.Shot && a.Pull == b.Pull
	})
}

// Worst returns the worst severity in the list; ok is false for an empty one.
func Worst(list []Diagnostic) (worst Severity, ok bool) {
	for _, d := range list {
		worst, ok = max(worst, d.Severity), true
	}
	return worst, ok
}
