// Faults of a text, of which there may be as many as it has lines.

package lines

import (
	"fmt"

	"pullscore/lang"
)

// MaxFaults is how many faults of one text are kept; the others are counted.
const MaxFaults = 1000

// MoreFaults is the code of the last fault of a text that has more than
// MaxFaults: it stands for the others, and its first figure is their number.
const MoreFaults = "more-faults"

// Faults are what is wrong with a text. The zero value is ready.
type Faults struct {
	kept []lang.Diagnostic
	rest lang.Diagnostic // stands for those that are not kept
	more int
}

// Add adds a fault.
func (f *Faults) Add(d lang.Diagnostic) {
	if len(f.kept) < MaxFaults {
		f.kept = append(f.kept, d)
		return
	}
	if f.more++; f.more == 1 {
		f.rest.Range = d.Range
	}
	f.rest.Severity = max(f.rest.Severity, d.Severity)
}

// List returns the faults, sorted by their places.
func (f *Faults) List() []lang.Diagnostic {
	list := lang.Sort(f.kept)
	if f.more > 0 {
		f.rest.Code = MoreFaults
		f.rest.Message = fmt.Sprintf("from here on there are %d more faults", f.more)
		f.rest.Figures = []lang.Figure{{Name: "faults", Value: float64(f.more)}}
		list = append(list, f.rest)
	}
	return list
}

// AddAll adds the faults of a part of the text that lies behind all others. They are as
// if each had been added.
func (f *Faults) AddAll(part *Faults) {
	for _, d := range part.kept {
		f.Add(d)
	}
	if part.more > 0 { // so many are kept that f is full
		f.Add(part.rest)
		f.more += part.more - 1
	}
}
