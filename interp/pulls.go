// Pulls: the racks and follows of a shot, where they go and when.

package interp

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"pullscore/interp/hand"
	"pullscore/interp/plan"
	"pullscore/lang"
)

// A pull is a rack or a follow on its way to a plan.Pull.
type pull struct {
	*plan.Pull
	moment // start; when it has landed is land

	item   int
	stmt   lang.Statement
	follow bool
	smooth bool

	on, landing *lang.Anchor
	until       *lang.Anchor
	over        float64 // 0 where the length is not written
	byDefault   bool    // the length is the shortest that lands
	reacts      bool    // the hand waits for a word or cue
	anchored    bool

	land     float64
	hangs    []*line // that its moments hang on
	goal     goal
	previous *pull      // what the focus is on before: nil is the shot's start
	window   [2]float64 // focus settings that keep the goal sharp, from the lens
	landed   hand.Landing
	leftAt   float64 // the one left at the landing, from the lens
	shifts   []shift // of a follow
}

// readPulls reads what the racks and follows say, but for their times.
func (c *clock) readPulls() {
	for i, it := range c.b.items {
		var p *pull
		done := c.b.reading(i)
		switch s := it.stmt.(type) {
		case *lang.Rack:
			p = c.readRack(it, s)
		case *lang.Follow:
			p = c.readFollow(it, s)
		}
		done()
		if p == nil {
			continue
		}
		p.item, p.stmt = i, it.stmt
		at := it.stmt.Range()
		p.File, p.Line, p.Column = at.File, at.Start.Line, at.Start.Column
		c.pullOf[i] = p
		c.pulls = append(c.pulls, p)
	}
}

func (c *clock) readRack(it item, s *lang.Rack) *pull {
	p := &pull{Pull: &plan.Pull{Kind: "rack"}, on: s.On, landing: s.Landing, smooth: s.Profile != lang.ProfileEven}
	p.anchored = s.On != nil || s.Landing != nil
	p.goal = c.b.stage.goal(s.Target, it.env)
	p.Because = valueOf(s.Because)
	p.Anchor = c.b.anchorText(s.On, s.Landing, it.env)
	if s.Over != nil {
		v, ok := c.b.at(it.env).positive(s.Over, dimTime)
		p.over, p.goal.ok = v, p.goal.ok && ok
		if s.On != nil && s.Landing != nil {
			c.b.fail(s.Over.Range(), "too-many-times", "its start and its landing already give the rack its length",
				"Leave out one of on, landing on and over.")
		}
	}
	p.byDefault = s.Over == nil && (s.On == nil || s.Landing == nil)
	if s.On != nil {
		p.reacts = c.reacts(s.On, it.env)
	}
	return p
}

func (c *clock) readFollow(it item, s *lang.Follow) *pull {
	p := &pull{Pull: &plan.Pull{Kind: "follow"}, follow: true, until: s.Until}
	p.goal = goal{at: s.Range(), text: s.Who.Text}
	if d, ok := c.b.who(s.Who, it.env, declSubject); ok {
		u := c.b.stage.subjects[d.name.Text]
		p.goal.subject, p.goal.text, p.goal.ok = u, u.Name, u.ok
	}
	return p
}

// reacts tells whether the hand waits for the anchor: it foresees a time, and
// reacts to a word, a speaker or a cue.
func (c *clock) reacts(a *lang.Anchor, e *env) bool {
	for {
		switch a.Kind {
		case lang.AnchorTime:
			return false
		case lang.AnchorName:
			if arg, outer, ok := e.arg(a.Name.Text); ok {
				a, e = arg, outer
				continue
			}
			d := c.b.find(a.Name.Text)
			return d == nil || d.kind != declLet
		}
		return true
	}
}

// readStart resolves where the focus is when the shot starts.
func (c *clock) readStart() {
	b := c.b
	s, ok := b.settings["start"].(*lang.Start)
	var g goal
	switch {
	case ok:
		g = b.stage.goal(s.Target, nil)
	case len(b.stage.order) > 0:
		u := b.stage.order[0]
		g = goal{at: b.head.Range(), text: u.Name, subject: u, ok: true}
		b.byDefault("start", "on "+u.Name, "the shot does not say where the focus starts")
	default:
		g = goal{at: b.head.Range(), text: "inf", distance: math.Inf(1), ok: true}
		b.byDefault("start", "on inf", "the shot does not say where the focus starts, and has no subject")
	}
	b.start = g
	b.shot.Optics.Start = b.target(&g, 0)
}

// timePull gives a pull its start and landing.
func (c *clock) timePull(p *pull) outcome {
	return p.settle(func() outcome {
		if p.follow {
			return c.timeFollow(p)
		}
		return c.timeRack(p)
	})
}

func (c *clock) timeRack(p *pull) outcome {
	ev := c.b.at(c.b.items[p.item].env)
	var start, land float64
	if p.on != nil {
		t, state := c.anchor(p.item, p.on, ev, true)
		if state != found {
			return state
		}
		p.hangsOn(c.hung)
		start = t
	}
	if p.landing != nil {
		t, state := c.anchor(p.item, p.landing, ev, true)
		if state != found {
			return state
		}
		p.hangsOn(c.hung)
		land = t
	}
	if !p.anchored {
		t, state := c.free(p)
		if state != found {
			return state
		}
		start = t
	}
	switch {
	case !p.goal.ok: // told; its anchors have been looked at all the same
		return failed
	case p.on != nil && p.landing != nil:
		return c.placed(p, start, land)
	case p.byDefault:
		return c.shortest(p, start, land)
	case p.landing != nil:
		return c.placed(p, land-p.over, land)
	}
	return c.placed(p, start, start+p.over)
}

// hangsOn notes a line that a moment of the pull hangs on.
func (p *pull) hangsOn(l *line) {
	if l != nil {
		p.hangs = append(p.hangs, l)
	}
}

// free is the start of a pull without an anchor: where the clock stands, but
// not before the focus has landed.
func (c *clock) free(p *pull) (float64, outcome) {
	if !c.pass(p.item) {
		return 0, waits
	}
	t := c.before[p.item]
	for i := slices.Index(c.pulls, p) - 1; i >= 0; i-- {
		q := c.pulls[i]
		switch c.timePull(q) {
		case waits:
			return 0, waits
		case failed:
			continue // the one before it still has to land
		}
		if math.IsInf(q.land, 0) { // a follow that the next rack ends
			return max(t, q.start), found
		}
		return max(t, q.land), found
	}
	return t, found
}

func (c *clock) writtenBefore(p *pull) *pull {
	i := slices.Index(c.pulls, p)
	if i == 0 {
		return nil
	}
	return c.pulls[i-1]
}

func (c *clock) placed(p *pull, start, land float64) outcome {
	if math.Abs(start) > longest || math.Abs(land) > longest {
		c.b.fail(p.stmt.Range(), "out-of-range", "a shot lasts a day at most", "")
		return failed
	}
	if land < start {
		c.b.fail(p.stmt.Range(), "lands-too-early", fmt.Sprintf("the rack would land %s before it starts", seconds(start-land)),
			"Its landing hangs on a moment before the one that it starts on.")
		return failed
	}
	p.start, p.land = start, land
	return found
}

// shortest gives a rack without a length the shortest that lands with the
// wanted chance, in tenths of a second and never under what the film wants; 1 s
// where none does. The distance reached may depend on the landing, so it is
// tried until it stays.
func (c *clock) shortest(p *pull, start, land float64) outcome {
	c.blockingSoFar()
	if q := c.writtenBefore(p); q != nil {
		c.timePull(q)
	}
	long := 1.0
	for range 8 {
		if p.landing != nil {
			start = land - long
		} else {
			land = start + long
		}
		next := c.needed(p, start, land)
		if next == long {
			break
		}
		long = next
	}
	if p.landing != nil {
		start = land - long
	} else {
		land = start + long
	}
	return c.placed(p, start, land)
}

// blockingSoFar times what blocking can be timed before this pull has landed;
// what waits for it cannot matter to where it lands.
func (c *clock) blockingSoFar() {
	c.tentative++
	defer func() { c.tentative-- }()
	for i, it := range c.b.items {
		switch it.stmt.(type) {
		case *lang.Moves, *lang.Dolly, *lang.Zoom:
			c.block(i)
		}
	}
	c.b.stage.tracks()
}

func (c *clock) timeFollow(p *pull) outcome {
	if !p.goal.ok {
		return failed
	}
	start, state := c.free(p)
	if state != found {
		return state
	}
	p.start, p.land = start, math.Inf(1) // until the next rack, or the shot's end
	if p.until != nil {
		t, state := c.anchor(p.item, p.until, c.b.at(c.b.items[p.item].env), true)
		if state != found {
			return state
		}
		if t < start {
			c.b.fail(p.until.Range(), "lands-too-early", "the follow would end before it starts", "")
			return failed
		}
		p.hangsOn(c.hung)
		p.land = t
	}
	return found
}

// ordered returns the pulls that have times, in the order of time.
func (c *clock) ordered() []*pull {
	list := slices.DeleteFunc(slices.Clone(c.pulls), func(p *pull) bool { return !p.known })
	slices.SortStableFunc(list, func(a, b *pull) int { return cmp.Compare(a.start, b.start) })
	return list
}

// to names what a pull goes to, in a message.
func (p *pull) to() string { return p.goal.text }
