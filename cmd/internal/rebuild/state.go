// What watched plans come to, as plain data for whoever shows it.

package rebuild

import (
	"time"

	"pullscore/interp/plan"
	"pullscore/lang"
)

// A State is what the watched plans come to now. It and all that it points to
// is never changed once it is published: a change makes a new one.
type State struct {
	// Plans are in the order in which they were named, those of a folder by
	// path.
	Plans []*Plan
	// Version grows with every State.
	Version uint64
}

// Plan returns the plan of that key, or nil.
func (s *State) Plan(key string) *Plan {
	for _, p := range s.Plans {
		if p.Key == key {
			return p
		}
	}
	return nil
}

// A Plan is one watched plan file.
type Plan struct {
	// Key names the plan in an address: lower-case letters and digits, the
	// same whenever the same path is watched, and unlike any other's.
	Key string
	// Name is what people call it: its path as it was named, with slashes.
	Name string
	// Path is where it is read.
	Path string

	// Latest is the last reading, as far as it could be computed, never nil;
	// Findings are its findings, sorted. A file that cannot be read has an
	// empty plan and a finding that says why.
	Latest   *plan.Plan
	Findings []lang.Diagnostic
	// Sources holds the text of every file of the last reading, by path as
	// findings name it.
	Sources map[string][]byte

	// Good is the last reading without errors, and what is drawn; nil: there
	// has been none yet.
	Good *plan.Plan
	// GoodFindings are the findings of Good.
	GoodFindings []lang.Diagnostic
	// Stale tells that Good and Sheets are older than the text, since that has
	// errors.
	Stale bool
	// Sheets are the drawings of Good by the ID of the shot, in order of pages.
	Sheets map[string][]*Sheet

	// Files are the plan and every file that it uses, missing ones included.
	Files []string
	// Version grows with every change of the plan, and never goes back while
	// the watch runs.
	Version uint64
}

// A Change is what became of one plan when files changed.
type Change struct {
	Plan *Plan
	// First tells that the plan was not watched before; Gone, that it is not
	// in the State any more.
	First, Gone bool
	// Causes are the files that changed, of the plan's.
	Causes []string
	// Took is the time from the look at the files to the drawings on disk.
	Took time.Duration
	// Drawn are the files of drawings that were written; Removed, those that
	// were removed since their shots are gone. Only what was written here and
	// not changed since is removed.
	Drawn, Removed []string
	// Says tells in short phrases what the change did to the numbers, as
	// "12A rack 2: chance 71 % -> 94 %". It is empty with First, and while
	// the plan has errors.
	Says []string
	// Unwritten is why drawings could not be written or removed; nil: all were.
	Unwritten error
}
