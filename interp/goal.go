// Goals: where the focus is wanted, and how far that is at any time.

package interp

import (
	"fmt"
	"math"
	"slices"

	"pullscore/interp/plan"
	"pullscore/lang"
)

// A goal is where a pull goes.
type goal struct {
	at       lang.Range
	text     string
	subject  *subject   // nil for a bare distance
	offset   float64    // metres away from the camera
	distance float64    // of a bare one, as the tape reads
	split    []*subject // two or more to be held together
	ok       bool
}

func (g *goal) soft() bool { return g.subject == nil && g.split == nil || g.offset != 0 }

func (g *goal) name() string {
	if g.subject != nil {
		return g.subject.Name
	}
	return ""
}

func (g *goal) members() []*subject {
	if g.split != nil {
		return g.split
	}
	if g.subject != nil {
		return []*subject{g.subject}
	}
	return nil
}

// goal resolves a target.
func (st *stage) goal(t *lang.Target, e *env) (g goal) {
	if t == nil || len(t.Of) == 0 {
		return g
	}
	g.at, g.text = t.Range(), sourceText(st.source(t.Range().File), t.Range())
	ev := st.at(e)
	for _, x := range t.Of {
		q, ok := ev.eval(x)
		if !ok {
			return g
		}
		if q.dim != dimLength {
			st.fail(x.Range(), "wrong-unit", fmt.Sprintf("the focus goes to a subject or a distance, and this is %s", q.what()), "")
			return g
		}
		if q.on == nil {
			if len(t.Of) > 1 {
				st.fail(x.Range(), "wrong-kind", "a split holds subjects, and this is a distance", "")
				return g
			}
			if !(q.v >= 0.005) {
				st.fail(x.Range(), "out-of-range", "the focus is 5 mm away at least", "")
				return g
			}
			if q.v > maxDistance {
				q.v = math.Inf(1)
			}
			g.distance = q.v + st.ch.Back
			continue
		}
		u := st.subjects[q.on.Text]
		if u == nil || !u.ok {
			return g
		}
		if math.IsInf(q.v, 0) {
			st.fail(x.Range(), "out-of-range", "an offset is a length, and this is infinity", "")
			return g
		}
		if len(t.Of) == 1 {
			g.subject, g.offset = u, q.v
			continue
		}
		if q.v != 0 || slices.Contains(g.split, u) {
			st.fail(x.Range(), "wrong-kind", "a split holds several subjects as they stand", "Name each once, without an offset.")
			return g
		}
		g.split = append(g.split, u)
	}
	if e != nil && len(t.Of) == 1 && g.subject != nil {
		g.text = g.subject.Name + offsetText(g.offset) // not the parameter's name
	}
	g.ok = true
	return g
}

// offsetText writes an offset in metres after a name; nothing for none.
func offsetText(m float64) string {
	switch {
	case m == 0:
		return ""
	case m < 0:
		return " - " + plan.Decimal(-m*100, 1) + " cm"
	}
	return " + " + plan.Decimal(m*100, 1) + " cm"
}

// A sight is a shot as its lens sees it: what distances come to at a time.
type sight struct{ shot *plan.Shot }

// tape returns the goal's distance at t as the tape reads it.
func (s sight) tape(g *goal, t float64) float64 {
	if g.split != nil {
		return s.shot.ToTape(s.lensDistance(g, t), t)
	}
	if g.subject != nil {
		return s.shot.DistanceAt(g.subject.Subject, t) + g.offset
	}
	return g.distance
}

// lensDistance returns the goal's distance at t from the lens: for a split,
// the setting at which the nearest and the farthest blur alike.
func (s sight) lensDistance(g *goal, t float64) float64 {
	if g.split == nil {
		return s.shot.FromTape(s.tape(g, t), t)
	}
	near, far := s.extent(g, t)
	return s.shot.Setting(t).Split(near, far)
}

// extent returns the nearest and the farthest of a split from the lens.
func (s sight) extent(g *goal, t float64) (near, far float64) {
	near, far = math.Inf(1), 0
	for _, u := range g.split {
		x := s.shot.LensDistanceAt(u.Subject, t)
		near, far = min(near, x), max(far, x)
	}
	return near, far
}

func (s sight) target(g *goal, t float64) plan.Target {
	out := plan.Target{Name: g.name(), Text: g.text, Distance: s.lensDistance(g, t), Soft: g.soft()}
	for _, u := range g.split {
		out.Names = append(out.Names, u.Name)
	}
	return out
}
