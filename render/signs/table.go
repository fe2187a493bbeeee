// The table of signs, and the signs of a page.

package signs

import (
	"iter"

	"pullscore/render/draw"
)

// The names of the signs: those of their groups.
const (
	Rack       = "rack"
	Follow     = "follow"
	Start      = "start"
	Focus      = "focus"
	Subject    = "subject"
	Sharp      = "sharp"
	Chance     = "chance"
	NoChance   = "no-chance"
	Departure  = "departure"
	Stay       = "stay"
	Thing      = "stay-on-thing"
	Sheet      = "sheet"
	Hold       = "hold"
	Out        = "out-of-picture"
	Joint      = "turn-and-rack"
	Cue        = "cue"
	Word       = "word"
	Plumb      = "plumb"
	Regrip     = "regrip"
	Stop       = "stop"
	Window     = "window"
	Narrow     = "narrow"
	Settings   = "settings" // on tape and disc: the settings that keep it sharp
	Edge       = "edge"
	Measured   = "measured"
	Computed   = "computed"
	ByEye      = "by-eye"
	LawError   = "law-error"
	Estimated  = "estimated" // a line: what is estimated or assumed
	Assumed    = "assumed"   // a value
	Pause      = "pause"
	Error      = "error"
	Warning    = "warning"
	Note       = "note"
	Place      = "place"
	LaterPlace = "later-place"
	Way        = "way"
	Track      = "track"
	LensAxis   = "axis"
	LaterState = "later"
	Tape       = "tape"
	Hit        = "hit"
	Miss       = "miss"
	NotSaid    = "not-said"
	Before     = "before"
	CutLine    = "cut-here"
)

// Legend is the name of the group that holds the legend of a page.
const Legend = "legend"

// Names of groups that are no signs, but have rules of their own.
const (
	Leader = "leader" // a line from a label to what it names
	Limit  = "limit"  // a line that no text may lie on: of a zone, of the field of view
	Row    = "row"    // the row of a subject; the title of the group is the subject's name
)

// Covers reports whether the sign of that name has a shape that lies over lines, so that
// a text in it does not lie on a line.
func Covers(name string) bool {
	switch name {
	case Rack, Follow, Error, Warning, Note, Place, LaterPlace:
		return true
	}
	return false
}

// A Sign is a row of the table.
type Sign struct {
	Name  string
	Words string // for the legend
	Short string // where there is little room
	Width float64
	// Draw draws the sign for the legend, in a group of its name, from x to the right,
	// with its middle at y.
	Draw func(g *draw.Group, x, y float64)
}

// Table yields every sign, in the order in which legends show them.
func Table() iter.Seq[Sign] {
	return func(yield func(Sign) bool) {
		for _, part := range [][]Sign{focusSigns(), coverSigns(), timeSigns(), handSigns(), lineSigns(), flagSigns(), floorSigns(), stageSigns(), resultSigns()} {
			for _, s := range part {
				if !yield(s) {
					return
				}
			}
		}
	}
}

// On returns the signs that stand on a page outside its legend, in the order of the
// table. A group that holds nothing is no sign.
func On(root *draw.Group) []Sign {
	names := map[string]bool{}
	gather(root, names)
	return listed(names)
}

// InLegend returns the signs that the legend of a page shows, in the order of the table.
func InLegend(root *draw.Group) []Sign {
	names := map[string]bool{}
	for it := range root.All() {
		if g, ok := it.(*draw.Group); ok && g.Name == Legend {
			for _, sub := range g.Items {
				if sign, ok := sub.(*draw.Group); ok {
					names[sign.Name] = true
				}
			}
		}
	}
	return listed(names)
}

// gather notes the names of all groups outside the legend that hold something.
func gather(g *draw.Group, names map[string]bool) (holds bool) {
	if g.Name == Legend {
		return false
	}
	for _, it := range g.Items {
		sub, ok := it.(*draw.Group)
		if !ok || gather(sub, names) {
			holds = true
		}
	}
	if holds {
		names[g.Name] = true
	}
	return holds
}

func listed(names map[string]bool) []Sign {
	var list []Sign
	for s := range Table() {
		if names[s.Name] {
			list = append(list, s)
		}
	}
	return list
}
