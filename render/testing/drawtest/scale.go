// What is drawn to scale: the time, the windows of landings, the sharp zone, the curves of
// hand and focus. All is read off the geometry of named groups, and compared with the plan.
//
// What a millimetre means is not taken from the drawing. The curve of the hand has to be a
// straight image of the angles of the plan, and the curve of the focus one of its
// reciprocal distances; that image is found by least squares, and what stands in the same
// band is then measured by it.

package drawtest

import (
	"fmt"
	"math"

	"pullscore/interp/plan"
	"pullscore/render/draw"
	"pullscore/render/signs"
)

const (
	trueTo   = 0.02 // millimetres, of windows and limits
	curveTo  = 0.05 // degrees, of the curve of the hand
	checkBar = 50.0 // millimetres
)

// Scale returns what is not true to scale on the pages of a shot, a sentence each: windows
// of landings, limits of the sharp zone, time, and the bar by which a print is measured.
func Scale(pages []*draw.Page, s *plan.Shot) []string {
	var faults []string
	say := func(format string, args ...any) { faults = append(faults, fmt.Sprintf(format, args...)) }
	perSecond := math.NaN()
	for _, p := range pages {
		for _, g := range groupsOf(&p.Root, "check-bar") {
			if got := widest(g); math.Abs(got-checkBar) > 1e-9 {
				say("the bar of 50 mm is %.3f mm long", got)
			}
		}
		for _, b := range bandsOf(p) {
			for _, span := range b.spans {
				scale := (span.Right - span.Left) / (span.To - span.From)
				switch {
				case span.Narrow:
					faults = append(faults, narrow(span, s, perSecond)...)
				case math.Abs(scale-perSecond) > 1e-6: // false for the first
					say("%q has %.4f mm a second, and another band %.4f", b.group.Name, scale, perSecond)
				default:
					perSecond = scale
				}
			}
			faults = append(faults, b.windows(s)...)
			faults = append(faults, b.zone(s)...)
		}
	}
	return faults
}

// Curve returns where the curves of hand and focus on the pages of a shot are not those of
// the plan, a sentence each.
func Curve(pages []*draw.Page, s *plan.Shot) []string {
	var faults []string
	for _, p := range pages {
		for _, b := range bandsOf(p) {
			for _, of := range []struct {
				curve string
				image image
				to    float64
			}{{"hand", b.hand(s), curveTo}, {"focus", b.focus(s), math.Inf(1)}} {
				if of.image.straight && (of.image.off > of.to || of.image.offMM > 2*trueTo && of.curve == "focus") {
					faults = append(faults, fmt.Sprintf("the curve of the %s is up to %.3g, or %.3f mm, from the plan", of.curve, of.image.off, of.image.offMM))
				}
			}
		}
	}
	return faults
}

// narrowed is how wide a stretch is drawn that the cut does not have.
const narrowed = 12.0 // millimetres

// narrow tells what is wrong with a stretch that is not to scale: the cut does not have it,
// and it is as narrow as all of them, or less where the sheet shows a part of it.
func narrow(span draw.Span, s *plan.Shot, perSecond float64) (faults []string) {
	for _, u := range plan.Shown(s.Pieces) {
		if span.From < u.To-1e-6 && span.To > u.From+1e-6 {
			faults = append(faults, fmt.Sprintf("%.3f to %.3f s is narrowed, and the cut has %.3f to %.3f s", span.From, span.To, u.From, u.To))
		}
	}
	if long := span.Right - span.Left; long > narrowed+1e-6 || long > perSecond*(span.To-span.From) {
		faults = append(faults, fmt.Sprintf("%.3f to %.3f s is narrowed to %.3f mm", span.From, span.To, long))
	}
	return faults
}

// A band is a group with a curve over time, and where time lies on its part of the page,
// from left to right.
type band struct {
	group *draw.Group
	curve []draw.Point
	spans []draw.Span
}

// bandsOf returns the bands of distance and of the hand on a page.
func bandsOf(p *draw.Page) (list []band) {
	for it := range p.Root.All() {
		g, ok := it.(*draw.Group)
		if !ok || g.Name != "distance" && g.Name != "hand" {
			continue
		}
		b := band{group: g}
		for _, of := range g.Items {
			if sub, ok := of.(*draw.Group); ok && (sub.Name == "path" || sub.Name == "focus") {
				b.curve = append(b.curve, pointsOf(sub)...)
			}
		}
		for _, span := range p.Spans {
			if len(b.curve) > 0 && b.curve[0].Y >= span.Top && b.curve[0].Y <= span.Bottom {
				b.spans = append(b.spans, span)
			}
		}
		if len(b.spans) > 0 {
			list = append(list, b)
		}
	}
	return list
}

// pointsOf returns the points of the first path of a group.
func pointsOf(g *draw.Group) (points []draw.Point) {
	for _, it := range g.Items {
		if path, ok := it.(draw.Path); ok {
			for _, run := range path.Runs {
				points = append(points, run...)
			}
			return points
		}
	}
	return nil
}

// at returns the time at x; before the first and behind the last of the spans it runs on
// as in those.
func (b *band) at(x float64) float64 {
	span := b.spans[len(b.spans)-1]
	for _, of := range b.spans {
		if x <= of.Right {
			span = of
			break
		}
	}
	return span.From + (x-span.Left)/(span.Right-span.Left)*(span.To-span.From)
}

// An image says where values stand: y = base + each times the value. It is straight where
// the values differ enough to tell; off is the farthest that a point of the curve lies from
// it, in units of the value and in millimetres.
type image struct {
	base, each float64
	straight   bool
	off, offMM float64
}

// y returns where a value stands.
func (m image) y(value float64) float64 { return m.base + m.each*value }

// hand returns how the band shows angles at the hand.
func (b *band) hand(s *plan.Shot) image {
	if b.group.Name != "hand" {
		return image{}
	}
	return b.imageOf(s.HandAt, 0.5)
}

// focus returns how the band shows reciprocal distances, 1/m.
func (b *band) focus(s *plan.Shot) image {
	if b.group.Name != "distance" {
		return image{}
	}
	return b.imageOf(func(t float64) float64 { return 1 / s.ToTape(s.FocusAt(t), t) }, 0.01)
}

// imageOf fits an image to the curve of the band. The values have to differ by least.
func (b *band) imageOf(value func(float64) float64, least float64) (m image) {
	var n, sv, sy, svv, svy float64
	lo, hi := math.Inf(1), math.Inf(-1)
	values := make([]float64, len(b.curve))
	for i, p := range b.curve {
		v := value(b.at(p.X))
		if values[i] = v; math.IsNaN(v) || math.IsInf(v, 0) {
			continue
		}
		n, sv, sy, svv, svy = n+1, sv+v, sy+p.Y, svv+v*v, svy+v*p.Y
		lo, hi = min(lo, v), max(hi, v)
	}
	if !(hi-lo > least) {
		return m
	}
	m.each = (n*svy - sv*sy) / (n*svv - sv*sv)
	m.base = (sy - m.each*sv) / n
	m.straight = true
	for i, p := range b.curve {
		if off := math.Abs(p.Y - m.y(values[i])); off > m.offMM {
			m.offMM, m.off = off, off/math.Abs(m.each)
		}
	}
	return m
}

// reach returns how far up and down the page the curve and the marks of the band go.
func (b *band) reach() (top, bottom float64) {
	top, bottom = math.Inf(1), math.Inf(-1)
	for _, p := range b.curve {
		top, bottom = min(top, p.Y), max(bottom, p.Y)
	}
	for _, marks := range groupsOf(b.group, "marks") {
		for _, it := range marks.Items {
			if line, ok := it.(draw.Line); ok {
				top, bottom = min(top, line.From.Y), max(bottom, line.From.Y)
			}
		}
	}
	return top, bottom
}

// windows compares the windows of landings with those of the plan. An end may be cut off
// where the band ends, beyond all that else is drawn in it.
func (b *band) windows(s *plan.Shot) (faults []string) {
	m := b.hand(s)
	if !m.straight {
		return nil
	}
	top, bottom := b.reach()
	for _, name := range []string{signs.Window, signs.Narrow} {
		for _, g := range groupsOf(b.group, name) {
			if g.Number < 1 || g.Number > len(s.Pulls) {
				continue
			}
			p := s.Pulls[g.Number-1]
			far, near := m.y(float64(p.WindowHand[1])), m.y(float64(p.WindowHand[0]))
			upper, lower := ends(g)
			if math.Abs(upper-far) > trueTo && !(far < upper && upper < top) || math.Abs(lower-near) > trueTo && !(near > lower && lower > bottom) {
				faults = append(faults, fmt.Sprintf("the window of pull %d is drawn from %.3f to %.3f mm, and lies from %.3f to %.3f", p.Number, upper, lower, far, near))
			}
		}
	}
	return faults
}

// ends returns the upper and the lower end of a window: of its bracket, or of the level
// lines that stand for one.
func ends(g *draw.Group) (upper, lower float64) {
	upper, lower = math.Inf(1), math.Inf(-1)
	take := func(y float64) { upper, lower = min(upper, y), max(lower, y) }
	for _, it := range g.Items {
		switch it := it.(type) {
		case draw.Path:
			for _, run := range it.Runs {
				for _, p := range run {
					if g.Name == signs.Window {
						take(p.Y)
					}
				}
			}
		case draw.Line:
			if it.From.Y == it.To.Y || g.Name == signs.Window {
				take(it.From.Y)
				take(it.To.Y)
			}
		}
	}
	return upper, lower
}

// zone compares the limits of the sharp zone with those of the plan.
func (b *band) zone(s *plan.Shot) (faults []string) {
	m := b.focus(s)
	if !m.straight {
		return nil
	}
	for _, g := range groupsOf(b.group, "sharp-zone") {
		for _, it := range g.Items {
			path, ok := it.(draw.Path)
			if !ok || path.Stroke.Width != draw.FineWidth {
				continue
			}
			for _, run := range path.Runs {
				for _, p := range run[1 : len(run)-1] { // the ends are where the band cuts them
					near, far := s.ZoneAt(b.at(p.X))
					if off := min(math.Abs(p.Y-m.y(1/near)), math.Abs(p.Y-m.y(1/far))); !(off <= trueTo) {
						faults = append(faults, fmt.Sprintf("a limit of the sharp zone at %.1f lies %.3f mm off", p, off))
					}
				}
			}
		}
	}
	return faults
}

// widest returns the length of the longest level line of a group.
func widest(g *draw.Group) (length float64) {
	for it := range g.All() {
		if line, ok := it.(draw.Line); ok && line.From.Y == line.To.Y {
			length = max(length, math.Abs(line.To.X-line.From.X))
		}
	}
	return length
}

// groupsOf returns the groups of a name below another.
func groupsOf(g *draw.Group, name string) (list []*draw.Group) {
	for it := range g.All() {
		if sub, ok := it.(*draw.Group); ok && sub.Name == name {
			list = append(list, sub)
		}
	}
	return list
}
