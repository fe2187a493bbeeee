// Movements: the moves of people, the camera and the zoom, timed in the order
// written, and ahead of it for a rack that needs to know where they lead.
//
// A rack without a length takes the shortest that lands, and where it lands may
// depend on who moves meanwhile. So before its length is sought, every movement
// of the shot that can be timed has to be, also those written below. Trying all
// of them for every rack would cost their product. But a movement that has to
// wait says what for: for the clock to pass an item, or for a moment that is
// being worked out. It is tried again once that has happened, and not before:
// the clock never goes back, so of those that wait for it only the one that
// waits for the least needs to be looked at.

package clock

import (
	"cmp"
	"container/heap"
	"fmt"

	"pullscore/interp/names"
	"pullscore/interp/stage"
	"pullscore/interp/units"
	"pullscore/lang"
)

// untimed are the movements that have no time yet.
type untimed struct {
	ready  queue // may be tried
	passed queue // wait for the clock to pass an item
}

// A queued is an item that waits for the clock to pass all before until.
type queued struct{ until, item int }

// A queue gives what waits for the least first.
type queue []queued

func (q queue) Len() int      { return len(q) }
func (q queue) Swap(i, j int) { q[i], q[j] = q[j], q[i] }
func (q *queue) Push(x any)   { *q = append(*q, x.(queued)) }
func (q queue) Less(i, j int) bool {
	return cmp.Or(cmp.Compare(q[i].until, q[j].until), cmp.Compare(q[i].item, q[j].item)) < 0
}

// Pop takes the last off, as container/heap wants it.
func (q *queue) Pop() any {
	last := (*q)[len(*q)-1]
	*q = (*q)[:len(*q)-1]
	return last
}

// untimedOf lists all movements: one without a moment waits for the clock.
func untimedOf(items []names.Item) (u untimed) {
	for i, it := range items {
		on, ok := startOf(it.Stmt)
		switch {
		case !ok:
		case on == nil:
			u.passed = append(u.passed, queued{i, i})
		default:
			u.ready = append(u.ready, queued{0, i})
		}
	}
	return u // in order, as heaps are
}

// startOf returns the moment that a movement says it starts on; ok is false for
// all other statements.
func startOf(stmt lang.Statement) (on *lang.Anchor, ok bool) {
	switch s := stmt.(type) {
	case *lang.Moves:
		return s.On, true
	case *lang.Dolly:
		return s.On, true
	case *lang.Zoom:
		return s.On, true
	}
	return nil, false
}

// blockingSoFar times what blocking can be timed before this pull has landed;
// what waits for it cannot matter to where it lands.
func (c *Clock) blockingSoFar() {
	c.tentative++
	var again queue
	for {
		for len(c.untimed.passed) > 0 && c.pass(c.untimed.passed[0].until) {
			heap.Push(&c.untimed.ready, queued{0, heap.Pop(&c.untimed.passed).(queued).item})
		}
		if len(c.untimed.ready) == 0 {
			break
		}
		i := heap.Pop(&c.untimed.ready).(queued).item
		switch w := c.block(i); {
		case w.State != Waits:
		case w.Of != nil:
			w.Of.wakes = append(w.Of.wakes, i)
		case w.Until > c.passed:
			heap.Push(&c.untimed.passed, queued{w.Until, i})
		default:
			again = append(again, queued{0, i})
		}
	}
	for _, q := range again {
		heap.Push(&c.untimed.ready, q)
	}
	c.tentative--
	c.lay()
}

// wake tells the movements that wait for a moment what has come of it: those
// that it still keeps waiting now wait for what it waits for. In a circle that
// is the moment itself, and they stay.
func (c *Clock) wake(m *moment, w When) {
	waiting := m.wakes
	m.wakes = nil
	switch {
	case w.State == Waits && w.Of != nil:
		w.Of.wakes = append(w.Of.wakes, waiting...)
	case w.State == Waits:
		for _, i := range waiting {
			heap.Push(&c.untimed.passed, queued{w.Until, i})
		}
	default:
		for _, i := range waiting {
			heap.Push(&c.untimed.ready, queued{0, i})
		}
	}
}

// block times a move of a person, the camera or the zoom.
func (c *Clock) block(k int) When {
	return c.settle(&c.At[k], func() When {
		mv, on, over, ok := c.readMove(k)
		w := c.when(k, on)
		if !ok && w.State == Found {
			return failed // told; its moment has been looked at all the same
		}
		if w.State == Found {
			if over == 0 {
				if over, ok = c.fromSpeed(k, mv, w.T); !ok {
					return failed
				}
			}
			mv.Start, mv.End = w.T, c.span(k, w.T, w.T+over)
			c.moved = append(c.moved, mv)
			if mv.Who != nil {
				mv.Who.StandsBy(mv.Along.On)
			}
		}
		return w
	})
}

// readMove reads what a piece of blocking says, but for its start. It looks at all
// of it, whatever is wrong with a part. over is 0 where a speed stands in its place.
func (c *Clock) readMove(k int) (mv *stage.Move, on *lang.Anchor, over float64, ok bool) {
	mv = &stage.Move{Item: k, Stmt: c.b.Items[k].Stmt}
	ev := c.b.At(c.b.Items[k].Env)
	var overExpr, speed *lang.Expr
	switch s := mv.Stmt.(type) {
	case *lang.Moves:
		mv.Kind, on, overExpr, speed, mv.Smooth = "moves", s.On, s.Over, s.Speed, s.Profile == lang.ProfileSmooth
		ok = c.readWalk(k, s, mv)
	case *lang.Dolly:
		mv.Kind, on, overExpr, speed, mv.Smooth = "dolly", s.On, s.Over, s.Speed, s.Profile != lang.ProfileEven
		mv.By, ok = ev.Within(s.By, names.DimLength, 1e-4, stage.MaxDistance, "a camera goes 0.1 mm to 1000 km")
		if !s.In {
			mv.By = -mv.By
		}
	case *lang.Zoom:
		mv.Kind, on, overExpr, mv.Smooth = "zoom", s.On, s.Over, s.Profile != lang.ProfileEven
		ok = c.readZoom(s, mv, ev)
	}
	okT := false
	if speed != nil {
		mv.Speed, okT = ev.Positive(speed, names.DimVelocity)
	} else {
		over, okT = ev.Positive(overExpr, names.DimTime)
	}
	return mv, on, over, ok && okT && !c.b.Film.Torn.Lost(mv.Stmt)
}

// readWalk reads who moves, and to where.
func (c *Clock) readWalk(k int, s *lang.Moves, mv *stage.Move) (ok bool) {
	env, st := c.b.Items[k].Env, c.b.Stage
	d, okW := c.b.Who(s.Who, env, names.DeclSubject)
	if s.By != nil {
		mv.FromSelf = true
		mv.By, ok = c.b.At(env).Within(s.By, names.DimLength, 1e-4, stage.MaxDistance, "somebody goes 0.1 mm to 1000 km")
		if s.Nearer {
			mv.By = -mv.By
		}
	} else {
		mv.Along, mv.Across, ok = st.Spots(s.To, env, nil)
	}
	if !ok || !okW {
		return false
	}
	if mv.Who = st.Subjects[d.Name.Text]; mv.Who == nil || !mv.Who.Ok {
		return false
	}
	if mv.KeepsSide = mv.FromSelf; mv.FromSelf {
		return true
	}
	mv.Along.Back(c.b.Ch.Back)
	if mv.Along.On != nil && st.HangsOn(mv.Along.On, mv.Who) {
		c.b.Fail(s.To.Range(), "circle", fmt.Sprintf("%s would stand relative to itself", mv.Who.Name), "")
		return false
	}
	mv.KeepsSide = s.To.Side == nil && mv.Along.On == nil
	return true
}

// readZoom reads what a zoom goes to.
func (c *Clock) readZoom(s *lang.Zoom, mv *stage.Move, ev *names.Evaluator) (ok bool) {
	if mv.By, ok = ev.Positive(s.To, names.DimLength); !ok {
		return false
	}
	mv.By *= c.b.Ch.FocalFactor()
	if l := c.b.Lens; l != nil && (mv.By < l.Focal*(1-1e-9) || mv.By > l.Longest*(1+1e-9)) {
		c.b.Fail(s.To.Range(), "focal-not-on-lens", fmt.Sprintf("lens %q has no %s", l.Name, units.Style{}.Millimetres(mv.By)), "It has "+l.FocalText()+".")
		return false
	}
	return true
}

// fromSpeed returns how long a movement takes that says its speed. Its way begins
// where the movements written above it leave whoever goes: one written below may
// itself wait for this.
func (c *Clock) fromSpeed(k int, mv *stage.Move, start float64) (over float64, ok bool) {
	for ; c.timedTo < k; c.timedTo++ {
		if _, moves := startOf(c.b.Items[c.timedTo].Stmt); moves {
			c.block(c.timedTo)
		}
	}
	c.lay()
	if over = c.b.Stage.Takes(mv, start); over > 0 {
		return over, true
	}
	c.b.Fail(mv.Stmt.Range(), "out-of-range", mv.Who.Name+" stands there already, and a speed gives no time", "Write over and a time, or leave the line out.")
	return 0, false
}

// lay has the stage take the movements that have got their times.
func (c *Clock) lay() {
	c.b.Stage.Take(c.moved)
	c.moved = nil
}
