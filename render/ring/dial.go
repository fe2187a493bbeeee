// The dial: a disc for the hand wheel, drawn 1:1. Every mark lies at its angle
// at the hand, that of the ring times the gear.

package ring

import (
	"fmt"
	"math"

	"pullscore/interp/plan"
	"pullscore/interp/units"
	"pullscore/render/draw"
	"pullscore/render/marks"
	"pullscore/render/sheet"
)

// Dial draws the disc of a shot for the hand wheel, once for a wheel that turns
// clockwise towards infinity and once for one that turns the other way: a plan
// does not know how the gear is built. Where there is no wheel, or no ring to
// pull by angle, the page says so.
func Dial(shot *plan.Shot, opt sheet.Options) []*draw.Page {
	list := marks.Of(shot)
	lettered := false
	var discs []*dial
	h := sheet.NewHandout(shot, opt, "dial", describeDial(shot, list))
	sayByLaw(h)
	switch {
	case shot.Optics.Ring == nil:
		sayNoRing(h, "No dial can be made")
		return h.Pages()
	case !(shot.WheelMM > 0):
		sayNoWheel(h)
	case shot.WheelMM < wheelLeast:
		h.Say(fmt.Sprintf("A wheel of %s mm is too small for names.", sheet.Figures.Number(float64(shot.WheelMM), 1)), sheet.FontTitle, draw.Black)
	default:
		discs, lettered = putDials(h, shot, list)
	}
	sayLaw(h)
	t := markTable(shot, list, func(m marks.Mark) []string {
		deg := m.Deg * float64(shot.Gear)
		return []string{sheet.Figures.AngleTo(m.Deg, 1), sheet.Figures.AngleTo(deg, 1), turnsText(shot, deg)}
	}, "ring", "hand", "turn")
	if lettered {
		t.Columns = append([]sheet.Column{{Title: "letter"}}, t.Columns...)
		for i, row := range t.Rows {
			t.Rows[i] = append([]string{letter(i)}, row...)
		}
	}
	t.Put(h, "marks")
	sayWindow(h, list, len(discs) > 0)
	if len(discs) > 0 {
		sayPlay(h, list, discs[0].two)
	}
	sayAside(h, list)
	return h.Pages()
}

// turnsText says in which turn of the wheel an angle lies, and where; empty
// where the wheel turns no more than once.
func turnsText(s *plan.Shot, deg float64) string {
	if float64(s.Gear)*s.Optics.Ring.Throw() <= 360 {
		return ""
	}
	turn := math.Floor(deg / 360)
	return fmt.Sprintf("%.0f, at %s", turn+1, sheet.Figures.Angle(deg-360*turn))
}

func describeDial(s *plan.Shot, list []marks.Mark) string {
	return fmt.Sprintf("A disc for the hand wheel, drawn 1:1 for shot %s, with %s.", sheet.ShotName(s), units.Count(len(list), "mark"))
}

func sayNoWheel(h *sheet.Handout) {
	h.Say("A dial needs a hand wheel, and this shot has none.", sheet.FontTitle, draw.Black)
	h.Say("The ring is turned by hand here; its strip carries the marks. With a follow focus, write its gear and its wheel into the shot: gear 1.5, wheel 80 mm. "+
		"The angles below are those of the ring.", sheet.FontBody, draw.Black)
}

// A dial is a disc in the making. Angles on it are degrees at the hand, from
// the top of the disc, the way that infinity lies.
type dial struct {
	shot      *plan.Shot
	marks     []marks.Mark
	clockwise bool
	centre    draw.Point
	outer     float64 // radius of the disc, millimetres
	inner     float64 // radius at which the last turn ends
	turns     float64 // of the wheel over the whole ring
	labels    []dialLabel
}

const (
	dialTop  = 22.0 // for the words above a disc
	dialHead = 6.5  // for its heading
	dialGap  = 14.0 // between two on one sheet
	// headingsApart is from the middle of one heading to that of the other, at least.
	headingsApart = 78.0
	trackMost     = 11.0 // from one turn to the next
	hubLeast      = 11.0
	// wheelLeast is the smallest wheel, in millimetres, on which there is room
	// for anything beside the centre.
	wheelLeast = 30
)

func newDial(s *plan.Shot, list []marks.Mark, most float64, clockwise bool) *dial {
	d := &dial{shot: s, marks: list, clockwise: clockwise, outer: min(float64(s.WheelMM)/2, most)}
	d.turns = float64(s.Gear) * s.Optics.Ring.Throw() / 360
	whole := max(math.Ceil(d.turns-1e-9), 1)
	d.inner = d.outer - min(trackMost*whole, d.outer-hubLeast)
	return d
}

// putDials draws the disc for either way, side by side where the paper is wide
// enough. It returns both, and whether the marks have letters: on both or on none.
func putDials(h *sheet.Handout, s *plan.Shot, list []marks.Mark) (discs []*dial, lettered bool) {
	most := (h.Paper.H - sheet.HandoutTop - sheet.HandoutBottom - dialTop - dialHead) / 2
	discs = []*dial{newDial(s, list, most, true), newDial(s, list, most, false)}
	lettered = !placeAll(discs, withDistance) && !placeAll(discs, withoutDistance)
	pair := float64(s.WheelMM)/2 <= (h.Width()-dialGap)/4
	for i, d := range discs {
		if lettered {
			d.labels = d.placeLetters()
		}
		x := h.Paper.W / 2
		if pair {
			x += max(d.outer+dialGap/2, headingsApart/2) * float64(2*i-1)
		}
		if i == 0 || !pair {
			if i > 0 {
				h.Turn()
			}
			h.Say(d.how(lettered), sheet.FontNote, draw.Black)
			sayUnnamed(h, d.unnamed(), "disc")
			h.Y += 2
		} else {
			h.Y -= dialHead + 2*d.outer + 3
		}
		g, top := h.Take(dialHead+2*d.outer+3, "dial")
		d.centre = draw.Point{X: x, Y: top + dialHead + d.outer}
		d.draw(g)
	}
	return discs, lettered
}

// placeAll places the labels of all discs in the same words, and reports
// whether each has room.
func placeAll(discs []*dial, words wording) bool {
	for _, d := range discs {
		var ok bool
		if d.labels, ok = d.place(words); !ok {
			return false
		}
	}
	return true
}

// scaled reports whether the disc is drawn smaller than the wheel. Its angles
// hold all the same.
func (d *dial) scaled() bool { return 2*d.outer < float64(d.shot.WheelMM)-1e-9 }

// hand returns the angle at the hand of an angle of the ring.
func (d *dial) hand(deg float64) float64 { return deg * float64(d.shot.Gear) }

// track returns the radius of the line that the marks of an angle at the hand
// stand on: a circle, or a spiral where the wheel turns more than once.
func (d *dial) track(deg float64) float64 {
	if d.turns <= 1 {
		return d.outer - dialRim
	}
	return d.outer - dialRim - d.pitch()*deg/360
}

// pitch is how far one turn of the spiral lies inside the one before.
func (d *dial) pitch() float64 {
	return (d.outer - dialRim - d.inner) / max(math.Ceil(d.turns-1e-9), 1)
}

// dialRim is how far inside the cut the first turn starts.
const dialRim = 3.0

// point returns a place on the disc: an angle at the hand and a radius. The
// closest stop is at the top.
func (d *dial) point(deg, radius float64) draw.Point {
	a := deg * math.Pi / 180
	if !d.clockwise {
		a = -a
	}
	return draw.Point{X: d.centre.X + radius*math.Sin(a), Y: d.centre.Y - radius*math.Cos(a)}
}

// arc returns chords of the track between two angles at the hand, moved
// inwards by so many millimetres.
func (d *dial) arc(from, to, inwards float64) []draw.Point {
	// A chord over an angle a lies r(1-cos(a/2)) inside its circle.
	step := 2 * math.Acos(1-draw.Chord/max(d.outer, 1)) * 180 / math.Pi
	n := max(1, int(math.Ceil((to-from)/step)))
	run := make([]draw.Point, n+1)
	for i := range run {
		deg := from + (to-from)*float64(i)/float64(n)
		run[i] = d.point(deg, max(d.track(deg)-inwards, 0))
	}
	return run
}
