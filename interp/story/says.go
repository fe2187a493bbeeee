// The figures in words, as list and paper print them.

package story

import (
	"fmt"
	"math"

	"pullscore/interp/plan"
	"pullscore/interp/units"
)

// Things is what all are called together who hold the focus and never speak.
const Things = "who never speak"

// Length returns a time in minutes and whole seconds, under a minute in tenths: "22 min
// 10 s", "41.5 s".
func Length(sec plan.Number, in units.Style) string {
	if sec < 59.95 {
		return in.Number(float64(sec), 1) + " s"
	}
	whole := int(math.Round(float64(sec)))
	return fmt.Sprintf("%d min %d s", whole/60, whole%60)
}

// HalfUnder returns the median in words, "" where nothing was counted.
func HalfUnder(median plan.Number, in units.Style) string {
	if !median.Known() {
		return ""
	}
	return "half under " + in.Number(float64(median), 1) + " s"
}

// Ways says which way the racks go.
func (f *Figures) Ways() string {
	text := fmt.Sprintf("to near %d, to far %d", f.Near, f.Far)
	if level := f.Racks - f.Near - f.Far; level > 0 {
		text += fmt.Sprintf(", neither %d", level)
	}
	return text
}

// Causes says what share of the racks hangs on what, "" where there are none.
func (f *Figures) Causes(in units.Style) string {
	text := ""
	for _, c := range []struct {
		name string
		n    int
	}{{"on a word", f.Word}, {"on a cue", f.Cue}, {"with a reason alone", f.Reason}, {"without a reason", f.None}} {
		if c.n > 0 {
			if text != "" {
				text += ", "
			}
			text += c.name + " " + in.Share(float64(c.n)/float64(f.Racks), 0)
		}
	}
	return text
}

// People returns who holds the focus: those who speak, and all others together, who have
// no name then.
func (f *Figures) People() []Holder {
	var list []Holder
	things := Holder{Name: Things}
	for _, h := range f.Holders {
		if h.Speaks {
			list = append(list, h)
			continue
		}
		things.Held += h.Held
		things.Share += h.Share
	}
	if things.Held > 0 {
		list = append(list, things)
	}
	return list
}

// Bin returns the lengths of a bin of stays in seconds: "under 1", "1.4 to 2", "32 on".
func Bin(i int, in units.Style) string {
	edge := func(i int) string { return Edge(i, in) }
	switch i {
	case 0:
		return "under " + edge(0)
	case len(Edges):
		return edge(i-1) + " on"
	}
	return edge(i-1) + " to " + edge(i)
}

// Edge returns one of Edges, in seconds.
func Edge(i int, in units.Style) string {
	if v := Edges[i]; v < 10 {
		return in.Number(v, 1)
	}
	return in.Number(Edges[i], 0)
}
