// The lens's own marks: a tape can be laid onto them only when it says what
// they say.

package marks

import (
	"math"
	"slices"
	"strings"
	"unicode/utf8"

	"pullscore/interp/plan"
	"pullscore/interp/units"
	"pullscore/render/sheet"
)

// A LensMark is a distance that the lens has at an angle of its ring.
type LensMark struct {
	Text  string
	Other string // the same in the plan's units, where the lens has the others
	Deg   float64
	Stop  bool // the ring ends here

	// Measured reports whether somebody read the mark off the lens. If not, a law or what is
	// said of the whole ring puts it there.
	Measured bool
}

// sameEnd is how near, in degrees, a mark at a stop of the ring lies to it.
const sameEnd = 0.5

// OfLens returns the stops of the ring, where they are known, and between them the marks of
// a lens that has some: each once, where it lies.
func OfLens(s *plan.Shot) []LensMark {
	r := s.Optics.Ring
	atClosest, atThrow := r.Stops()
	near := LensMark{Text: sheet.Style(s).Tape(r.Closest()), Stop: true}
	far := LensMark{Text: sheet.Style(s).Tape(r.Distance(r.Throw())), Deg: r.Throw(), Stop: true}
	var between []LensMark
	for _, m := range engravedMarks(s, s.Imperial) {
		switch {
		case atClosest && m.Deg <= sameEnd:
			near.Text, near.Other, near.Measured = m.Text, m.Other, m.Measured
		case atThrow && m.Deg >= r.Throw()-sameEnd:
			far.Text, far.Other, far.Measured = m.Text, m.Other, m.Measured
		default:
			if between = append(between, m); m.Text == "∞" {
				far.Text = "stop" // the ring goes on beyond infinity
			}
		}
	}
	near.Text = "closest " + near.Text
	var ends []LensMark
	if atClosest {
		ends = append(ends, near)
	}
	if atThrow {
		ends = append(ends, far)
	}
	return append(ends, between...)
}

// engravedMarks returns the marks that the kit gives of a lens, as it writes
// them; none where the ring's law is computed.
func engravedMarks(s *plan.Shot, imperially bool) []LensMark {
	if !s.Optics.Marked {
		return nil
	}
	write := units.ForTable(imperially).Tape
	var list []LensMark
	for i, m := range s.Optics.Ring.Marks() {
		mark := LensMark{Text: write(m.Distance), Deg: m.Angle, Measured: measured(s, m.Angle)}
		if i < len(s.Optics.Engraved) {
			if text, ok := asEngraved(s.Optics.Engraved[i]); ok {
				if text != "∞" && writtenInFeet(text) != imperially {
					mark.Other = mark.Text
				}
				mark.Text = text
			}
		}
		list = append(list, mark)
	}
	return list
}

// measured reports whether the kit says what lies at an angle of the ring.
func measured(s *plan.Shot, deg float64) bool {
	if s.Ring == nil || len(s.Ring.Marks) == 0 {
		return true
	}
	return slices.ContainsFunc(s.Ring.Marks, func(m plan.RingMark) bool {
		return !m.Default && math.Abs(float64(m.Deg)-deg) < sameMark
	})
}

// engravedMost is how long a mark may be written, in letters.
const engravedMost = 14

// asEngraved sets a distance as written in a plan the way that rings have it.
// ok is false where it is no plain length: a name, or a sum of some.
func asEngraved(written string) (text string, ok bool) {
	if written == "inf" {
		return "∞", true
	}
	plain := written != "" && strings.ContainsRune("0123456789.", rune(written[0])) && utf8.RuneCountInString(written) <= engravedMost
	return feetSigns.Replace(written), plain
}

var feetSigns = strings.NewReplacer("'", "′", "’", "′", `"`, "″", "”", "″")

// writtenInFeet reports whether a length is written in feet or inches.
func writtenInFeet(text string) bool {
	return strings.ContainsAny(text, "′″") || strings.Contains(text, "ft") || strings.Contains(text, "in")
}

// marksOf tells what a lens's ring law rests on. A lens is one line of the kit
// also where plans differ in their units: then in metres.
func EngravedText(s *plan.Shot, imperially bool) string {
	switch {
	case s.RingUnknown():
		return "none in the kit, and nothing says how far the ring turns"
	case s.Optics.Ring == nil:
		return "no ring that can be pulled by angle"
	case !s.Optics.Marked:
		return "none in the kit: computed from closest focus and throw"
	}
	var list []string
	for _, m := range engravedMarks(s, imperially) {
		text := m.Text
		if m.Other != "" {
			text += " (" + m.Other + ")"
		}
		list = append(list, text+" at "+sheet.Figures.AngleTo(m.Deg, 1))
	}
	return strings.Join(list, ", ")
}
