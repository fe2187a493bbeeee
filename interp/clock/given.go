// Times that are given: those of a scene, whose action a shot has.

package clock

import (
	"pullscore/interp/clock/spoken"
	"pullscore/interp/names"
	"pullscore/interp/speech"
	"pullscore/lang"
)

// A Given is when an item of a scene happens, in seconds from the start of the shot.
type Given struct {
	Start, End float64
	Known      bool // it has its time, and the shot has it
	Out        bool // it lies wholly outside what the shot has of the scene
	Words      []speech.Timed
}

// wide says which lines the anchors of items look in.
func (w *With) wide() spoken.Wide {
	if !w.Scene && len(w.Given) == 0 {
		return spoken.Wide{From: len(w.Items) + 1}
	}
	out := make([]bool, len(w.Given))
	for i, g := range w.Given {
		out[i] = g.Out
	}
	if w.Scene {
		return spoken.Wide{From: len(w.Items)}
	}
	return spoken.Wide{From: len(w.Given), Out: out}
}

// takeGiven takes the times that are given.
func (c *Clock) takeGiven() {
	for i, g := range c.with.Given {
		c.At[i] = moment{StartS: g.Start, EndS: g.End, Known: g.Known, Failed: !g.Known}
		if l := c.Lines[i]; l != nil && g.Known {
			l.Start, l.End, l.Timed, l.Words = g.Start, g.End, true, g.Words
		}
	}
}

// Given returns how many items have times that are given: the first ones.
func (c *Clock) Given() int { return len(c.with.Given) }

// isGiven reports whether an item has a time that is given, or none.
func (c *Clock) isGiven(k int) bool { return k < len(c.with.Given) }

// walkGiven takes the moves of people whose times are given.
func (c *Clock) walkGiven(k int, mv *movement) {
	if m := &c.At[k]; m.Known && mv.ok {
		mv.Start, mv.End = m.StartS, m.EndS
		c.take(mv)
	}
}

// setsTimes tells of a line or a pause of the shot's own that would move a clock which
// the scene sets.
func (c *Clock) setsTimes(k int) {
	if len(c.with.Given) == 0 || c.isGiven(k) {
		return
	}
	switch s := c.items[k].Stmt.(type) {
	case *lang.Pause:
		d := lang.Diagnostic{
			Code: "scene-sets-times", Severity: lang.Error, Range: s.Range(),
			Message: "the scene says when things happen here", Detail: "Its pauses stand in the scene.",
		}
		if c.items[k].In.Call == nil { // else other shots may use the move
			d.Fixes = []lang.Fix{{Title: "Leave the pause out", Edits: []lang.Edit{{Range: s.Range()}}}}
		}
		c.items[k].In.Report(d)
	case *lang.Speech:
		if s.On == nil && s.From == nil {
			c.fail(k, "scene-sets-times", "the scene says when things happen here",
				"Give this line a moment, as in "+c.items[k].In.SourceText(s.Range())+`, on "door".`)
		}
	}
}

// End returns when the last thing is over that the items themselves time, in seconds.
func (c *Clock) End() float64 {
	end := c.Before[len(c.items)]
	for k, m := range c.At {
		if m.Known && !c.isGiven(k) {
			end = max(end, m.EndS)
		}
	}
	return end
}

// Near returns when a moment of an item is: by the lines next to it, or else by all lines.
// ok is false where it is not found, which it reports.
func (c *Clock) Near(k int, a *lang.Anchor) (t float64, ok bool) {
	in := c.items[k].In
	if a == nil {
		return 0, false
	}
	if w := c.anchor(ask{item: k, in: in.Quietly()}, a); w.State == Found {
		return w.T, true
	}
	return c.Moment(a, in)
}

// Moment returns when a moment is that is looked for in all lines, as that of a shot of
// a scene is. ok is false where it is not found, which it reports.
func (c *Clock) Moment(a *lang.Anchor, in names.Reader) (t float64, ok bool) {
	w := c.anchor(ask{item: len(c.items), in: in}, a)
	return w.T, w.State == Found
}
