// The marking discs: for the hand wheel, drawn 1:1. Every mark lies at its angle at the
// hand, that of the ring times the gear.
//
// A disc turns with the wheel, under a pointer at its top. So all that is written on it
// lies along the rim, its head outwards: it is upright exactly when its mark is under the
// pointer.

package ring

import (
	"math"

	"pullscore/interp/plan"
	"pullscore/render/draw"
	"pullscore/render/ring/page"
	"pullscore/render/sheet"
)

// A disc is a disc in the making. Angles on it are degrees at the hand, from its top, the
// way that infinity lies.
type disc struct {
	shot      *plan.Shot
	named     *lettered
	clockwise bool // the way from near to infinity on the disc
	centre    draw.Point
	outer     float64 // radius of the disc, millimetres
	inner     float64 // radius at which the last turn ends
	turns     float64 // of the wheel over the whole ring
	lanes     []int   // of the marks' windows; -1: none
	laneTop   float64 // from the track inwards to the first lane
	lanePitch float64
	laneHigh  float64
	stemLong  float64 // of a mark's line, from the track inwards
	labels    []discLabel
	figures   []draw.Text // of the lens's marks
	// thumbLabels are the places of the thumb that have room for their words.
	thumbLabels []thumbLabel
	owner       draw.Text
	unnamed     int // marks with neither name nor letter
}

const (
	discGap   = 7.0  // between two discs
	tableGap  = 8.0  // between the discs and the table
	trackMost = 12.0 // from one turn to the next
	hub       = 6.5  // half the side of the room in the middle, for the way to infinity
	hubLeast  = 11.0
	pointer   = 4.2 // above a disc
	underDisc = 5.4 // for its title
	// wheelLeast is the smallest wheel, in millimetres, on which there is room for anything
	// beside the centre.
	wheelLeast = 30
	// titleRoom is the width that the title below a disc takes.
	titleRoom = 60.0
)

// newDiscs lays out the disc for either way; none where there is no wheel, which it says.
func newDiscs(b *page.Book, named *lettered) []*disc {
	switch {
	case !(b.Shot.WheelMM > 0):
		sayNoWheel(b)
		return nil
	case b.Shot.WheelMM < wheelLeast:
		saySmallWheel(b)
		return nil
	}
	most := (b.Foot() - page.Top - pointer - underDisc - 16) / 2
	var discs []*disc
	for _, clockwise := range []bool{true, false} {
		d := newDisc(b.Shot, named, most, clockwise)
		d.place()
		discs = append(discs, d)
	}
	return discs
}

// newDisc returns a disc whose radius is at most that.
func newDisc(s *plan.Shot, named *lettered, most float64, clockwise bool) *disc {
	d := &disc{shot: s, named: named, clockwise: clockwise, outer: min(float64(s.WheelMM)/2, most)}
	d.turns = float64(s.Gear) * s.Optics.Ring.Throw() / 360
	d.inner = d.outer - min(trackMost*d.whole(), d.outer-hubLeast)
	d.size()
	return d
}

// whole is how many turns of the wheel the line on the disc takes, begun ones as whole.
func (d *disc) whole() float64 { return max(math.Ceil(d.turns-1e-9), 1) }

// size chooses how high things are, by the room from one turn to the next, and gives every
// window a lane.
func (d *disc) size() {
	most := 3
	d.laneTop, d.lanePitch, d.laneHigh = 6.6, 2.2, 1.6
	switch {
	case d.turns > 1:
		share := min(1, d.pitch()/trackMost)
		d.laneTop, d.lanePitch, d.laneHigh = 0.9*share, 2.2*share, 1.4*share
		if d.pitch() < trackMost {
			most = 1
		}
	case d.outer < smallDisc:
		d.laneTop = 3.2
	}
	deepest := 0
	d.lanes = make([]int, len(d.named.list))
	ends := []float64{}
	for i, m := range d.named.list {
		d.lanes[i] = -1
		if !m.Sharp() {
			continue
		}
		lane := 0
		for lane < len(ends) && ends[lane] > d.hand(m.Window[0]) {
			lane++
		}
		if lane == most {
			continue
		}
		if lane == len(ends) {
			ends = append(ends, 0)
		}
		d.lanes[i], ends[lane] = lane, d.hand(m.Window[1])+laneGap/d.outer*180/math.Pi
		deepest = max(deepest, lane)
	}
	d.stemLong = d.laneTop + d.lanePitch*float64(deepest) + d.laneHigh + 0.6
}

// smallDisc is the radius below which a disc has no figures of the lens's marks.
const smallDisc = 30.0

// scaled reports whether the disc is drawn smaller than the wheel. Its angles hold all the
// same.
func (d *disc) scaled() bool { return 2*d.outer < float64(d.shot.WheelMM)-1e-9 }

// hand returns the angle at the hand of an angle of the ring.
func (d *disc) hand(deg float64) float64 { return deg * float64(d.shot.Gear) }

// page returns an angle on the disc as one on the page, clockwise from the top.
func (d *disc) page(deg float64) float64 {
	if d.clockwise {
		return deg
	}
	return -deg
}

// rim is how far inside the cut the line of the marks begins.
func (d *disc) rim() float64 {
	if d.turns <= 1 {
		return 1
	}
	return 3
}

// track returns the radius of the line that the marks of an angle at the hand stand on: a
// circle, or a spiral where the wheel turns more than once.
func (d *disc) track(deg float64) float64 {
	if d.turns <= 1 {
		return d.outer - d.rim()
	}
	return d.outer - d.rim() - d.pitch()*deg/360
}

// pitch is how far one turn of the spiral lies inside the one before.
func (d *disc) pitch() float64 { return (d.outer - d.rim() - d.inner) / d.whole() }

// point returns a place on the disc: an angle at the hand and a radius. The closest stop
// is at the top.
func (d *disc) point(deg, radius float64) draw.Point {
	sin, cos := math.Sincos(d.page(deg) * math.Pi / 180)
	return draw.Point{X: d.centre.X + radius*sin, Y: d.centre.Y - radius*cos}
}

// arc returns chords of the track between two angles at the hand, moved inwards by so many
// millimetres.
func (d *disc) arc(from, to, inwards float64) []draw.Point {
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

// radial returns a line on the disc at an angle at the hand, from one depth under the track
// to another.
func (d *disc) radial(deg, from, to float64) (a, b draw.Point) {
	r := d.track(deg)
	return d.point(deg, r-from), d.point(deg, r-to)
}

// putDiscs draws the discs, beside each other where the page is wide enough, and the table
// beside them where there is room. It returns where the next thing goes.
func putDiscs(b *page.Book, discs []*disc, t *page.Table) float64 {
	if len(discs) == 0 {
		return b.Y
	}
	across := 2 * discs[0].outer
	slot := max(across, titleRoom)
	height := pointer + across + underDisc
	b.Heading("Discs for the wheel", discNotes(discs), height)
	pair := 2*slot+discGap <= b.Width()
	room := b.Width() - 2*slot - discGap - tableGap
	if t.Least() > room {
		if narrow := t.Narrowed(); narrow.Least() <= room {
			*t = *narrow
		}
	}
	beside := pair && t.Least() <= room
	top := b.Y
	for i, d := range discs {
		x := sheet.Margin + slot/2
		switch {
		case pair:
			x += float64(i) * (slot + discGap)
			if !beside {
				x += (b.Width() - 2*slot - discGap) / 2
			}
		default:
			x = b.Paper.W / 2
			if i > 0 {
				b.Reserve(height)
				top = b.Y
			}
		}
		d.centre = draw.Point{X: x, Y: top + pointer + d.outer}
		d.draw(b.Root().Group("disc"))
		if !pair || i > 0 {
			b.Y = top + height + 2
		}
	}
	if beside {
		b.Y = max(b.Y, t.PutBeside(b, sheet.Margin+2*slot+discGap+tableGap, top))
	}
	return b.Y
}
