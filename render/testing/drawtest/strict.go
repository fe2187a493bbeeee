// Texts on lines that limit something, and leaders.

package drawtest

import (
	"fmt"
	"math"

	"pullscore/render/draw"
	"pullscore/render/signs"
)

const (
	leaderMost  = 12.0 // millimetres
	limitApart  = 0.6  // between a text and a line that limits something
	beforeSharp = 0.02 // what rounding may take off that
)

// Strict returns what is wrong with a page, a sentence each: what Faults finds, texts on lines that limit something, and leaders that cross a
// text or each other or are too long.
func Strict(p *draw.Page) []string {
	faults := Faults(p)
	w := walk{}
	w.group(&p.Root, nil)
	for _, l := range w.limits {
		for _, t := range w.texts {
			if !within(t.groups, l.group) && !covers(t.groups) && t.text.Passed(l.a, l.b, limitApart-beforeSharp) {
				faults = append(faults, fmt.Sprintf("%q at %.1f lies on a line of %q", t.text.String, t.text.Box(), l.group.Name))
			}
		}
	}
	return append(faults, w.leaderFaults()...)
}

// A segment is a straight piece of a line.
type segment struct{ a, b draw.Point }

func (s segment) length() float64 { return math.Hypot(s.b.X-s.a.X, s.b.Y-s.a.Y) }

// An owned is a segment with the group that it belongs to.
type owned struct {
	segment
	group *draw.Group
}

// A written is a text with the groups that hold it, the innermost last.
type written struct {
	text   draw.Text
	groups []*draw.Group
}

// A walk gathers what stands on a page.
type walk struct {
	texts   []written
	limits  []owned
	leaders []owned
}

// limiting are the groups whose lines no text may lie on.
var limiting = map[string]bool{signs.Limit: true, signs.Plumb: true, signs.Window: true, signs.Narrow: true}

// covers reports whether one of the groups is such a sign.
func covers(groups []*draw.Group) bool {
	for _, g := range groups {
		if signs.Covers(g.Name) {
			return true
		}
	}
	return false
}

func (w *walk) group(g *draw.Group, outer []*draw.Group) {
	groups := append(outer[:len(outer):len(outer)], g)
	if g.Name == signs.Legend {
		return
	}
	for _, it := range g.Items {
		switch it := it.(type) {
		case *draw.Group:
			w.group(it, groups)
		case draw.Text:
			w.texts = append(w.texts, written{it, groups})
		case draw.Line:
			w.strokes(g, []segment{{it.From, it.To}})
		case draw.Path:
			w.strokes(g, segments(it))
		}
	}
}

func (w *walk) strokes(g *draw.Group, list []segment) {
	for _, s := range list {
		switch {
		case limiting[g.Name]:
			w.limits = append(w.limits, owned{s, g})
		case g.Name == signs.Leader:
			w.leaders = append(w.leaders, owned{s, g})
		}
	}
}

func segments(p draw.Path) []segment {
	var list []segment
	for _, run := range p.Runs {
		for i := 1; i < len(run); i++ {
			list = append(list, segment{run[i-1], run[i]})
		}
		if n := len(run); p.Closed && n > 2 {
			list = append(list, segment{run[n-1], run[0]})
		}
	}
	return list
}

func within(groups []*draw.Group, g *draw.Group) bool {
	for _, other := range groups {
		if other == g {
			return true
		}
	}
	return false
}

// leaderFaults returns what is wrong with the leaders.
func (w *walk) leaderFaults() []string {
	var faults []string
	say := func(format string, args ...any) { faults = append(faults, fmt.Sprintf(format, args...)) }
	oblique, long := map[*draw.Group]int{}, map[*draw.Group]float64{}
	var order []*draw.Group
	for i, l := range w.leaders {
		if long[l.group] == 0 {
			order = append(order, l.group)
		}
		long[l.group] += l.length()
		if math.Abs(l.a.X-l.b.X) > beforeSharp && math.Abs(l.a.Y-l.b.Y) > beforeSharp {
			oblique[l.group]++
		}
		for _, t := range w.texts {
			if t.text.Passed(l.a, l.b, -beforeSharp) {
				say("a leader at %.1f crosses %q", l.a, t.text.String)
			}
		}
		for _, m := range w.leaders[:i] {
			if m.group != l.group && crosses(l.segment, m.segment) {
				say("leaders cross at %.1f and %.1f", l.a, m.a)
			}
		}
	}
	for _, g := range order {
		if long[g] > leaderMost+beforeSharp {
			say("a leader is %.1f mm long", long[g])
		}
		if oblique[g] > 1 {
			say("a leader has %d oblique parts", oblique[g])
		}
	}
	return faults
}

// crosses reports whether two segments cross inside both.
func crosses(s, t segment) bool {
	return turns(s.a, s.b, t.a)*turns(s.a, s.b, t.b) < 0 && turns(t.a, t.b, s.a)*turns(t.a, t.b, s.b) < 0
}

// turns returns to which side one turns at b on the way from a to c: its sign.
func turns(a, b, c draw.Point) float64 {
	v := (b.X-a.X)*(c.Y-a.Y) - (b.Y-a.Y)*(c.X-a.X)
	if math.Abs(v) < 1e-9 {
		return 0
	}
	return v
}
