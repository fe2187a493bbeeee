// Places for what is written on a disc: at its own angle where there is room, else farther
// in, else as a letter that the table explains.

package ring

import (
	"math"
	"slices"
	"strings"

	"pullscore/render/draw"
	"pullscore/render/marks"
	"pullscore/render/sheet"
)

// A discLabel is what stands on a disc for a mark. Its texts are placed for a disc whose
// centre is the origin.
type discLabel struct {
	mark   marks.Mark
	texts  []draw.Text
	leader []draw.Point // from the mark's line to the first text; none where that is near
}

var (
	fontDiscName   = draw.Font{Size: 12, Bold: true}
	fontDiscFigure = draw.Font{Size: 8}
)

const (
	nameDeep   = 15.0 // from the rim to the middle of the names
	numberStep = 5.0  // from a name in to its numbers
	secondRow  = 11.0 // from the names in to the second ring of names
	inkClear   = 0.65 // from a text to a line
	leaderMost = 12.0
	sameAngle  = 0.4 // degrees by which a text may be off its mark's angle
)

// An edge is a straight line on the disc that texts keep clear of.
type edge struct {
	a, b  draw.Point
	clear float64
}

// A plate is a disc while places are looked for: all that is taken.
type plate struct {
	d       *disc
	edges   []edge
	texts   []draw.Text // as wide as they may come out
	leaders []edge
}

// place finds places for all labels of the disc, those that something lands on first.
func (d *disc) place() {
	d.owner = draw.NewText(0, hub+2.6, d.shot.ID+" · "+d.shot.Lens, sheet.FontSmall, draw.Grey).Aligned(draw.Middle).Shortened(0.8 * d.outer)
	p := &plate{d: d, texts: []draw.Text{d.owner.Wide()}}
	p.takeLines()
	for _, text := range d.turnNumbers() {
		p.texts = append(p.texts, text.Wide())
	}
	order := make([]int, len(d.named.list))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return weight(d.named.list[a]) - weight(d.named.list[b]) })
	for _, i := range order {
		m := d.named.list[i]
		l, isLetter, ok := p.label(i, m)
		if !ok {
			d.unnamed++
			continue
		}
		if isLetter {
			d.named.used[i] = true
		}
		d.labels = append(d.labels, l)
	}
	if d.turns <= 1 && d.outer >= smallDisc {
		d.placeFigures(p)
	}
	d.placeThumbs(p)
}

// weight is less for marks that something lands on.
func weight(m marks.Mark) int {
	if m.Aside() {
		return 1
	}
	return 0
}

// takeLines takes what texts may not lie on.
func (p *plate) takeLines() {
	d := p.d
	add := func(run []draw.Point, clear float64) {
		for i := 1; i < len(run); i++ {
			p.edges = append(p.edges, edge{run[i-1], run[i], clear})
		}
	}
	for i, m := range d.named.list {
		for _, deg := range d.angles(m) {
			a, b := d.radial(d.hand(deg), 0, d.stemLong)
			add([]draw.Point{a, b}, draw.MarkWidth/2+inkClear)
		}
		if d.lanes[i] >= 0 {
			from, to := d.hand(m.Window[0]), d.hand(m.Window[1])
			add(coarse(d.arc(from, to, d.laneTop+d.lanePitch*float64(d.lanes[i])+d.laneHigh/2)), d.laneHigh/2+inkClear)
			if lo, hi, ok := d.doubt(m); ok {
				add(coarse(d.arc(lo, hi, d.doubtDeep(d.lanes[i]))), inkClear)
			}
		}
	}
	for _, m := range marks.OfLens(d.shot) {
		deg := d.hand(m.Deg)
		a, b := d.radial(deg, 0, 1.9*d.triangleSize())
		add([]draw.Point{a, b}, d.triangleSize()/2+inkClear)
		if m.Stop {
			a, b := d.radial(deg, 0, d.stemLong)
			add([]draw.Point{a, b}, 1+inkClear)
		}
	}
	for _, t := range d.thumbs() {
		at := d.point(t.deg, d.outer-thumbRadius)
		add([]draw.Point{at, d.point(t.deg, d.outer-thumbRadius-0.1)}, thumbRadius+0.3)
	}
}

// coarse thins a run of chords.
func coarse(run []draw.Point) []draw.Point {
	if len(run) < 8 {
		return run
	}
	var list []draw.Point
	for i := 0; i < len(run)-1; i += 3 {
		list = append(list, run[i])
	}
	return append(list, run[len(run)-1])
}

// along returns a text that lies along the rim, with the middle of its capitals at that
// radius and angle at the hand.
func (d *disc) along(deg, radius float64, text string, f draw.Font, ink draw.Ink) draw.Text {
	at := d.point(deg, radius-f.Middle())
	return draw.NewText(at.X, at.Y, text, f, ink).Aligned(draw.Middle).Turned(d.page(deg))
}

// nameRows returns how far from its place a name may stand farther in.
func (d *disc) nameRows() []float64 {
	if d.turns > 1 {
		return []float64{0}
	}
	return []float64{0, secondRow}
}

// underLine is how much of a name stands at least to either side of its mark's line.
const underLine = 2.5

// shiftedAlong returns a text moved along its own line.
func (d *disc) shiftedAlong(t draw.Text, by float64) draw.Text {
	sin, cos := math.Sincos(t.Turn * math.Pi / 180)
	t.At.X, t.At.Y = t.At.X+by*cos, t.At.Y+by*sin
	return t
}

// label finds the place of a mark's label. isLetter tells that it is a letter; ok is false
// where there is no place.
func (p *plate) label(i int, m marks.Mark) (l discLabel, isLetter, ok bool) {
	d := p.d
	deg := d.hand(m.Deg)
	top := d.stemLong + draw.MarkWidth/2 + inkClear + 0.1 + fontDiscName.Size*draw.MM*0.44
	if d.turns <= 1 {
		top = max(top, nameDeep-d.rim())
	}
	r := d.track(deg) - top
	numbers := fewNumbers(m)
	if d.turns <= 1 || d.pitch() >= top+fontDiscName.Size*draw.MM*0.6 {
		words := nameOf(m)
		if d.turns > 1 { // no room below it
			words, numbers = strings.TrimSpace(numbers+" "+words), ""
		}
		name := d.along(deg, r, words, fontDiscName, m.Ink())
		most := max(name.Width/2-underLine, 0)
		for _, in := range d.nameRows() {
			for aside := 0.0; aside <= most; aside += 1 {
				for _, side := range []float64{aside, -aside} {
					texts := []draw.Text{d.shiftedAlong(d.along(deg, r-in, words, fontDiscName, m.Ink()), side)}
					if numbers != "" {
						texts = append(texts, d.along(deg, r-in-numberStep, numbers, fontDiscName, m.Ink()))
					}
					if l, ok := p.try(m, deg, deg, r-in, texts); ok {
						return l, false, true
					}
				}
			}
		}
	}
	letter := d.named.letter(i)
	for _, in := range []float64{0, 2.5, 5, 7.5, 10} {
		for _, aside := range []float64{0, 2, -2, 4, -4, 6, -6, 8, -8} {
			radius := r - in
			at := deg + aside/max(radius, 1)*180/math.Pi
			text := d.along(at, radius, letter, fontLetter, m.Ink())
			text.Turn = d.page(deg)
			if l, ok := p.try(m, deg, at, radius, []draw.Text{text}); ok {
				return l, true, true
			}
		}
	}
	return l, false, false
}

// try takes the place of a label if it is free. The label stands at that angle and radius,
// and its mark at deg.
func (p *plate) try(m marks.Mark, deg, at, radius float64, texts []draw.Text) (l discLabel, ok bool) {
	for _, t := range texts {
		if !p.free(t) {
			return l, false
		}
	}
	d := p.d
	end := d.track(deg) - d.stemLong
	top := radius + 0.5*texts[0].Font.Size*draw.MM
	l = discLabel{mark: m, texts: texts}
	if end-top > 1.5 || math.Abs(at-deg) > sameAngle {
		l.leader = []draw.Point{d.point(deg, end), d.point(at, top+0.6)}
		e := edge{l.leader[0], l.leader[1], 0}
		if math.Hypot(e.a.X-e.b.X, e.a.Y-e.b.Y) > leaderMost || !p.reaches(e) {
			return l, false
		}
		p.leaders = append(p.leaders, e)
	}
	for _, t := range texts {
		p.texts = append(p.texts, t.Wide())
	}
	return l, true
}

// free reports whether a text has its place on the disc to itself.
func (p *plate) free(t draw.Text) bool {
	wide := t.Wide()
	for _, c := range wide.Corners() {
		if math.Hypot(c.X, c.Y) > p.d.outer-0.5 {
			return false
		}
	}
	if passes(edge{draw.Point{}, draw.Point{X: 0.01}, hub}, wide) {
		return false
	}
	apart := wide
	apart.Width += 1.6 // two names are not read as one
	return !slices.ContainsFunc(p.texts, func(o draw.Text) bool { return draw.Clash(apart, o, 0) }) &&
		!slices.ContainsFunc(p.edges, func(e edge) bool { return passes(e, wide) }) &&
		!slices.ContainsFunc(p.leaders, func(e edge) bool { e.clear = 0.4; return passes(e, wide) })
}

// reaches reports whether a leader crosses nothing.
func (p *plate) reaches(e edge) bool {
	return !slices.ContainsFunc(p.texts, func(t draw.Text) bool { return passes(e, t) }) &&
		!slices.ContainsFunc(p.leaders, func(o edge) bool { return crosses(e, o) }) &&
		!slices.ContainsFunc(p.edges, func(o edge) bool { return crosses(e, o) })
}

// placeFigures finds places for the figures of the lens's marks, under them or beside them.
// Those without room are left out: the marks are there.
func (d *disc) placeFigures(p *plate) {
	radius := d.outer - d.rim() - 1.9 - inkClear - 0.75*fontDiscFigure.Size*draw.MM/2
	for _, m := range marks.OfLens(d.shot) {
		deg := d.hand(m.Deg)
		text := d.along(deg, radius, m.Text, fontDiscFigure, draw.Grey)
		half := (text.Width/2 + 1.8) / radius * 180 / math.Pi
		for _, aside := range []float64{0, half, -half} {
			text := d.along(deg+aside, radius, m.Text, fontDiscFigure, draw.Grey)
			if aside != 0 {
				text = d.along(deg+aside, radius+1.4, m.Text, fontDiscFigure, draw.Grey)
			}
			if p.free(text) {
				d.figures, p.texts = append(d.figures, text), append(p.texts, text.Wide())
				break
			}
		}
	}
}

// passes reports whether a line comes nearer to a text than it may.
func passes(e edge, t draw.Text) bool { return t.Passed(e.a, e.b, e.clear) }

// crosses reports whether two lines cross inside both.
func crosses(e, o edge) bool {
	side := func(a, b, c draw.Point) float64 { return (b.X-a.X)*(c.Y-a.Y) - (b.Y-a.Y)*(c.X-a.X) }
	return side(e.a, e.b, o.a)*side(e.a, e.b, o.b) < -1e-9 && side(o.a, o.b, e.a)*side(o.a, o.b, e.b) < -1e-9
}
