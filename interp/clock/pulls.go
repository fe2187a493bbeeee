// Pulls: the racks and follows of a shot, where they go and when.

package clock

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"pullscore/interp/names"
	"pullscore/interp/stage"
	"pullscore/interp/units"
	"pullscore/lang"
)

// A Pull is a rack or a follow with its times.
type Pull struct {
	moment // start; when it has landed is land

	Item    int
	Stmt    lang.Statement
	Follow  bool
	Smooth  bool
	Because string
	Anchor  string // what it hangs on, as the plan writes it

	On, Landing *lang.Anchor
	Alongside   string      // the kind of the camera move with which it starts and lands; "" for none
	With        *stage.Move // the move that says their times; nil where nobody knows it
	until       *lang.Anchor
	above       *Pull   // written next above; nil: none
	landsBefore *Pull   // the last above that may land: not known to have failed
	over        float64 // 0 where the length is not written
	ByDefault   bool    // the length is the shortest that lands
	Reacts      bool    // the hand waits for a word or cue
	Anchored    bool

	LandS        float64
	HangsOnLines []*Line // that its moments hang on
	Aim          stage.Goal
}

// readPulls reads what the racks and follows say, but for their times.
func (c *Clock) readPulls() {
	var above, rack *Pull
	for i, it := range c.items {
		var p *Pull
		c.rackAbove[i] = rack
		switch s := it.Stmt.(type) {
		case *lang.Rack:
			p = c.readRack(it.In, s)
		case *lang.Follow:
			p = c.readFollow(it.In, s)
		}
		if p == nil {
			continue
		}
		p.Item, p.Stmt = i, it.Stmt
		c.PullOf[i] = p
		p.above, p.landsBefore = above, above
		above = p
		if !p.Follow {
			rack = p
		}
		c.pulls = append(c.pulls, p)
	}
}

func (c *Clock) readRack(in names.Reader, s *lang.Rack) *Pull {
	p := &Pull{On: s.On, Landing: s.Landing, Alongside: s.Alongside, Smooth: s.Profile != lang.ProfileEven}
	p.Anchored = s.On != nil || s.Landing != nil || s.Alongside != ""
	p.Aim = c.with.Stage.Goal(s.Target, in)
	p.Because = names.ValueOf(s.Because)
	p.Anchor = in.AnchorText(s.On, s.Landing)
	if s.Over != nil {
		v, ok := in.Positive(s.Over, names.DimTime)
		p.over, p.Aim.Ok = v, p.Aim.Ok && ok
		if s.On != nil && s.Landing != nil {
			in.Fail(s.Over.Range(), "too-many-times", "its start and its landing already give the rack its length",
				"Leave out one of on, landing on and over.")
		}
	}
	p.Aim.Ok = p.Aim.Ok && !c.torn(s)
	p.ByDefault = s.Over == nil && s.Alongside == "" && (s.On == nil || s.Landing == nil)
	if s.Alongside != "" {
		p.Anchor = "with " + s.Alongside
	}
	if s.On != nil {
		p.Reacts = c.reacts(s.On, in)
	}
	return p
}

func (c *Clock) readFollow(in names.Reader, s *lang.Follow) *Pull {
	p := &Pull{Follow: true, On: s.On, Anchored: s.On != nil, until: s.Until}
	p.Anchor = in.AnchorText(s.On, nil)
	p.Aim = stage.Goal{At: s.Range(), Text: s.Who.Text}
	if d, ok := in.Who(s.Who, names.DeclSubject); ok {
		u := c.with.Stage.Subjects[d.Name.Text]
		p.Aim.Subject, p.Aim.Text, p.Aim.Ok = u, u.Name, u.Ok && !c.torn(s)
	}
	return p
}

// reacts tells whether the hand waits for the anchor: it foresees a time, and
// reacts to a word, a speaker or a cue.
func (c *Clock) reacts(a *lang.Anchor, in names.Reader) bool {
	for {
		switch a.Kind {
		case lang.AnchorTime:
			return false
		case lang.AnchorName:
			if arg, outer, ok := in.Arg(a.Name.Text); ok && arg != nil {
				a, in = arg, outer
				continue
			}
			d := c.with.Lex.Find(a.Name.Text)
			return d == nil || d.Kind != names.DeclLet
		}
		return true
	}
}

// timePull gives a pull its start and landing.
func (c *Clock) timePull(p *Pull, ahead bool) When {
	return c.settle(&p.moment, func() When {
		if p.Follow {
			return c.timeFollow(p, ahead)
		}
		return c.timeRack(p, ahead)
	})
}

func (c *Clock) timeRack(p *Pull, ahead bool) When {
	if p.Alongside != "" {
		return c.goesAlong(p, ahead)
	}
	q := ask{item: p.Item, in: c.items[p.Item].In, focus: true, ahead: ahead}
	var start, land When
	if p.On != nil {
		if start = c.anchor(q, p.On); start.State == Waits {
			return start
		}
		p.hangsOn(start.Line)
	}
	if p.Landing != nil {
		if land = c.anchor(q, p.Landing); land.State == Waits {
			return land
		}
		p.hangsOn(land.Line)
	}
	if start.State == Failed || land.State == Failed {
		return failed
	}
	if !p.Anchored {
		if start = c.free(p, ahead); start.State != Found {
			return start
		}
	}
	switch {
	case !p.Aim.Ok: // told; its anchors have been looked at all the same
		return failed
	case p.On != nil && p.Landing != nil:
		return c.placed(p, start.T, land.T)
	case p.ByDefault:
		return c.shortest(p, start.T, land.T, ahead)
	case p.Landing != nil:
		return c.placed(p, land.T-p.over, land.T)
	}
	return c.placed(p, start.T, start.T+p.over)
}

// goesAlong gives a rack the start, the landing and the profile of a camera move. The
// hand waits for what that waits for.
func (c *Clock) goesAlong(p *Pull, ahead bool) When {
	w, land := c.alongside(p.Item, p.Alongside, ahead, &p.Smooth)
	if w.State != Found {
		return w
	}
	p.hangsOn(w.Line)
	i := c.lastOf(p.Item, p.Alongside)
	for c.movements[i].alongside != "" {
		i = c.lastOf(i, c.movements[i].alongside)
	}
	p.With = &c.movements[i].Move
	if on := c.movements[i].on; on != nil {
		p.Reacts = c.reacts(on, c.items[i].In)
	}
	switch {
	case !p.Aim.Ok:
		return failed
	case p.over > 0: // a change says it
		return c.placed(p, land-p.over, land)
	}
	return c.placed(p, w.T, land)
}

// hangsOn notes a line that a moment of the pull hangs on.
func (p *Pull) hangsOn(l *Line) {
	if l != nil {
		p.HangsOnLines = append(p.HangsOnLines, l)
	}
}

// free is the start of a pull without an anchor: where the clock stands, but
// not before the focus has landed.
func (c *Clock) free(p *Pull, ahead bool) When {
	if !c.pass(p.Item, ahead) {
		return until(p.Item)
	}
	t := c.Before[p.Item]
	for p.landsBefore != nil {
		q := p.landsBefore
		switch w := c.timePull(q, ahead); w.State {
		case Waits:
			return w
		case Failed:
			p.landsBefore = q.landsBefore // the one before it still has to land
			continue
		}
		if math.IsInf(q.LandS, 0) { // a follow that the next rack ends
			return at(max(t, q.StartS))
		}
		return at(max(t, q.LandS))
	}
	return at(t)
}

// WrittenBefore returns the pull written next above p, of those that have not
// failed; nil for the first.
func (p *Pull) WrittenBefore() *Pull {
	for p.above != nil && (!p.above.Aim.Ok || p.above.Failed) {
		p.above = p.above.above
	}
	return p.above
}

func (c *Clock) placed(p *Pull, start, land float64) When {
	if math.Abs(start) > longest || math.Abs(land) > longest {
		c.fail(p.Item, "out-of-range", "a shot lasts at most a day", "")
		return failed
	}
	if land < start {
		c.fail(p.Item, "lands-too-early", fmt.Sprintf("the rack would land %s before it starts", units.Style{}.Time(start-land)),
			"It lands on a moment before the one it starts on.")
		return failed
	}
	p.StartS, p.LandS = start, land
	return at(start)
}

// shortest gives a rack without a length the shortest that lands with the
// wanted chance, in tenths of a second and never under what the film wants; 1 s
// where none does. The distance reached may depend on the landing, so it is
// tried until it stays.
func (c *Clock) shortest(p *Pull, start, land float64, ahead bool) When {
	c.moveSoFar()
	before := p.WrittenBefore()
	for before != nil && c.timePull(before, ahead).State == Failed {
		before = p.WrittenBefore()
	}
	long := 1.0
	for range 8 {
		if p.Landing != nil {
			start = land - long
		} else {
			land = start + long
		}
		next := c.with.Landing.Shortest(p, before, start, land)
		if next == long {
			break
		}
		long = next
	}
	if p.Landing != nil {
		start = land - long
	} else {
		land = start + long
	}
	return c.placed(p, start, land)
}

func (c *Clock) timeFollow(p *Pull, ahead bool) When {
	q := ask{item: p.Item, in: c.items[p.Item].In, focus: true, ahead: ahead}
	start := When{}
	if p.On != nil {
		start = c.anchor(q, p.On)
	} else {
		start = c.free(p, ahead)
	}
	if start.State != Found {
		return start
	}
	p.hangsOn(start.Line)
	p.StartS, p.LandS = start.T, math.Inf(1) // until the next rack, or the shot's end
	if p.until == nil && p.Aim.Ok {
		return start
	}
	if p.until == nil {
		return failed
	}
	end := c.anchor(q, p.until)
	switch {
	case end.State != Found:
		return end
	case !p.Aim.Ok: // told; its end has been looked at all the same
		return failed
	case end.T < start.T:
		c.items[p.Item].In.Fail(p.until.Range(), "lands-too-early", "the follow would end before it starts", "")
		return failed
	}
	p.hangsOn(end.Line)
	p.LandS = end.T
	return start
}

// Ordered returns the pulls that have times, in the order of time.
func (c *Clock) Ordered() []*Pull {
	list := slices.DeleteFunc(slices.Clone(c.pulls), func(p *Pull) bool { return !p.Known })
	slices.SortStableFunc(list, func(a, b *Pull) int { return cmp.Compare(a.StartS, b.StartS) })
	return list
}

// to names what a pull goes to, in a message.
func (p *Pull) ToText() string { return p.Aim.Text }

// Called names a pull by what is written, whatever the focus is on before.
func (p *Pull) Called() string {
	if p.Follow {
		return "the follow of " + p.ToText()
	}
	return "the rack to " + p.ToText()
}
