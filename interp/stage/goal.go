// Goals: where the focus is wanted, and how far that is at any time.

package stage

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"pullscore/interp/names"
	"pullscore/interp/plan"
	"pullscore/interp/units"
	"pullscore/lang"
)

// A Goal is where a pull goes.
type Goal struct {
	At       lang.Range
	Text     string
	Subject  *Subject   // nil for a bare distance
	Offset   float64    // metres away from the camera
	Distance float64    // of a bare one, as the tape reads
	Split    []*Subject // two or more to be held together
	Ok       bool
}

// Soft reports whether the goal is a distance, where nobody has to be sharp.
func (g *Goal) Soft() bool { return g.Subject == nil && g.Split == nil || g.Offset != 0 }

// Name returns the subject that the goal is; empty where it is none or several.
func (g *Goal) Name() string {
	if g.Subject != nil {
		return g.Subject.Name
	}
	return ""
}

// Members returns the subjects that the focus is to keep sharp there.
func (g *Goal) Members() []*Subject {
	if g.Split != nil {
		return g.Split
	}
	if g.Subject != nil {
		return []*Subject{g.Subject}
	}
	return nil
}

// Goal resolves a target. It looks at all that the target names, whatever is
// wrong with one of them.
func (st *Stage) Goal(t *lang.Target, in names.Reader) (g Goal) {
	if t == nil || len(t.Of) == 0 {
		return g
	}
	g.At, g.Text = t.Range(), in.SourceText(t.Range())
	g.Ok = true
	of := members(t, in)
	for _, x := range of {
		g.Ok = st.aim(&g, x, in, len(of) > 1) && g.Ok
	}
	switch {
	case !g.Ok || in.Env == nil && len(of) == len(t.Of) && calledSo(of, g.Members()):
	case g.Subject != nil:
		g.Text = g.Subject.Name + st.style.Offset(g.Offset) // not the parameter's name, nor that of a let
	case g.Split != nil:
		g.Text = together(g.Split)
	}
	return g
}

// calledSo reports whether the values of a target call subjects by their own names.
func calledSo(of []*lang.Expr, list []*Subject) bool {
	for i, u := range list {
		x := of[i]
		for x.Kind == lang.ExprBinary {
			x = x.X
		}
		if x.Ref != u.Name {
			return false
		}
	}
	return true
}

// members returns the values of a target, with its members in place of a group.
func members(t *lang.Target, in names.Reader) (of []*lang.Expr) {
	for _, x := range t.Of {
		list := in.Group(x)
		if list == nil {
			of = append(of, x)
			continue
		}
		for _, m := range list {
			of = append(of, &lang.Expr{Node: x.Node, Kind: lang.ExprName, Ref: m.Text, Quoted: m.Quoted})
		}
	}
	return of
}

// together writes subjects that are held together, as a plan does.
func together(list []*Subject) string {
	written := make([]string, len(list))
	for i, u := range list {
		written[i] = lang.WriteName(u.Name)
	}
	return strings.Join(written, " and ")
}

// aim adds what one value of a target names to a goal.
func (st *Stage) aim(g *Goal, x *lang.Expr, in names.Reader, split bool) (ok bool) {
	fail := func(code, message, detail string) bool {
		in.Fail(x.Range(), code, message, detail)
		return false
	}
	q, ok := in.Eval(x)
	switch {
	case !ok:
		return false
	case q.Dim != names.DimLength:
		return fail("wrong-unit", fmt.Sprintf("the focus goes to a subject or a distance, and this is %s", q.What()), "")
	case q.On == nil && split:
		return fail("wrong-kind", "a split holds subjects, and this is a distance", "")
	case q.On == nil && !(q.V >= 0.005):
		return fail("out-of-range", "the focus is at least 5 mm away", "")
	case q.On == nil && math.IsInf(q.V, 0) && x.Kind != lang.ExprInf && x.Kind != lang.ExprName:
		return fail("wrong-unit", "infinity takes no offset", "Write: rack to inf.")
	case q.On == nil:
		if q.V > MaxDistance {
			q.V = math.Inf(1)
		}
		g.Distance = q.V + st.ch.Back
		return true
	}
	u := st.Subjects[q.On.Text]
	switch {
	case u != nil && !u.Ok && st.unplaced(u):
		st.noPlace(x.Range(), u.Name, in)
		return false
	case u == nil || !u.Ok:
		return false
	case math.IsInf(q.V, 0):
		return fail("out-of-range", "an offset is a length, and this is infinity", "")
	case !split:
		g.Subject, g.Offset = u, q.V
		return true
	case q.V != 0 || slices.Contains(g.Split, u):
		return fail("wrong-kind", "a split holds several subjects without offsets", "Name each once, without an offset.")
	}
	g.Split = append(g.Split, u)
	return true
}

// styleOf returns how a plan with some settings has its lengths written.
func styleOf(settings map[string]lang.Statement) (style units.Style) {
	if s, ok := settings["units"].(*lang.Units); ok && s.System == "imperial" {
		style.System = units.Imperial
	}
	return style
}

// A Sight is a shot as its lens sees it: what distances come to at a time.
type Sight struct{ Shot *plan.Shot }

// Tape returns the goal's distance at t as the tape reads it.
func (s Sight) Tape(g *Goal, t float64) float64 {
	if g.Split != nil {
		return s.Shot.ToTape(s.LensDistance(g, t), t)
	}
	if g.Subject != nil {
		return s.Shot.DistanceAt(g.Subject.Subject, t) + g.Offset
	}
	return g.Distance
}

// LensDistance returns the goal's distance at t from the lens: for a split,
// the setting at which the nearest and the farthest blur alike.
func (s Sight) LensDistance(g *Goal, t float64) float64 {
	if g.Split == nil {
		return s.Shot.FromTape(s.Tape(g, t), t)
	}
	near, far := s.Extent(g, t)
	return s.Shot.Setting(t).Split(near, far)
}

// Extent returns the nearest and the farthest of a split from the lens.
func (s Sight) Extent(g *Goal, t float64) (near, far float64) {
	near, far = math.Inf(1), 0
	for _, u := range g.Split {
		x := s.Shot.LensDistanceAt(u.Subject, t)
		near, far = min(near, x), max(far, x)
	}
	return near, far
}

// Target returns the goal at t as a plan has it.
func (s Sight) Target(g *Goal, t float64) plan.Target {
	out := plan.Target{Name: g.Name(), Text: g.Text, Distance: s.LensDistance(g, t), Soft: g.Soft()}
	for _, u := range g.Split {
		out.Names = append(out.Names, u.Name)
	}
	return out
}
