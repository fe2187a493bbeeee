// Package rule is the one table of everything that Pullscore can tell about a
// plan: mistakes of writing, plans that make no sense, faults in other people's
// files, and findings of a shot. A finding carries a Code; its row in the table
// gives the name, the usual severity, the row of the score that shows it, and
// the words that explain it. Reference, help, score and exports all read the
// table, so they cannot differ.
//
// The table is plain data. It costs nothing before main.
package rule

import (
	"fmt"
	"iter"
)

// A Code names one kind of finding. The zero Code is none. Codes are numbers of
// this build only: files and scripts use the name, which never changes.
type Code uint16

// Severity tells how bad a finding is.
type Severity uint8

// The severities, the mildest first.
const (
	Note    Severity = iota // advice
	Warning                 // likely to fail on the day
	Error                   // cannot be done, or makes no sense
)

// A Row is a row of the score, on which a finding is flagged.
type Row uint8

// The rows of the score. What has NoRow concerns the shot as a whole, or never
// reaches the score.
const (
	NoRow Row = iota
	Lines
	Distance
	Sharp
	Hand
	Camera // only of a camera that turns or leaves its axis
)

// A Group says which table of the reference holds a code.
type Group uint8

// The groups, in the order in which Pullscore comes upon them.
const (
	NoGroup Group = iota
	Written       // a line that cannot be read
	Meaning       // a plan that can be read and makes no sense
	Files         // faults in the files that an edit or a script names
	Shot          // findings of a computed shot
	Page          // what a script page has and the plan has otherwise
)

// A Rule is one row of the table.
type Rule struct {
	Name     string // kebab case; never changes once it has been shipped
	Group    Group
	Severity Severity   // the usual one
	Also     []Severity // others that a finding of this code may have
	Row      Row
	Means    string // one line of at most 90 characters
	Help     string // 2 to 6 sentences: why it matters and what to do
}

// Rule returns the row of a code. The row of the zero Code, and of a number
// that is no code, is empty.
func (c Code) Rule() Rule {
	if int(c) >= len(table) {
		return Rule{}
	}
	return table[c]
}

// String returns the name of a code, such as "hard-to-land", or "" for none.
func (c Code) String() string { return c.Rule().Name }

// May reports whether a finding of this code may have that severity.
func (c Code) May(s Severity) bool {
	r := c.Rule()
	if r.Severity == s {
		return r.Name != ""
	}
	for _, also := range r.Also {
		if also == s {
			return true
		}
	}
	return false
}

// Named returns the code with that name; ok is false where there is none.
func Named(name string) (c Code, ok bool) {
	if name == "" {
		return 0, false
	}
	for c := range All() {
		if table[c].Name == name {
			return c, true
		}
	}
	return 0, false
}

// All yields every code, in the order of the table.
func All() iter.Seq[Code] {
	return func(yield func(Code) bool) {
		for c := Code(1); int(c) < len(table); c++ {
			if !yield(c) {
				return
			}
		}
	}
}

// Of yields the codes of one group, in the order of the table.
func Of(g Group) iter.Seq[Code] {
	return func(yield func(Code) bool) {
		for c := range All() {
			if table[c].Group == g && !yield(c) {
				return
			}
		}
	}
}

// MarshalText writes a code as its name; the zero Code is empty.
func (c Code) MarshalText() ([]byte, error) {
	if name := c.String(); name != "" || c == 0 {
		return []byte(name), nil
	}
	return nil, fmt.Errorf("rule: there is no code %d", uint16(c))
}

// UnmarshalText reads a code by its name; an empty text is the zero Code.
func (c *Code) UnmarshalText(text []byte) error {
	found, ok := Named(string(text))
	if !ok && len(text) > 0 {
		return fmt.Errorf("rule: no finding is called %q", text)
	}
	*c = found
	return nil
}

// String returns the word of a severity.
func (s Severity) String() string {
	return [...]string{"note", "warning", "error"}[s]
}

// MarshalText writes a severity as its word.
func (s Severity) MarshalText() ([]byte, error) { return []byte(s.String()), nil }

// String returns the name of a row, as the plan's flags carry it; NoRow is "".
func (r Row) String() string {
	return [...]string{"", "lines", "distance", "sharp", "hand", "camera"}[r]
}

// String returns the word that marks a group's table in the reference.
func (g Group) String() string {
	return [...]string{"", "written", "meaning", "files", "shot", "page"}[g]
}
