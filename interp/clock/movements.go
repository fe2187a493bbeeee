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
	"math"

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
		hangs, ok := hangsOn(it.Stmt)
		switch {
		case !ok:
		case !hangs:
			u.passed = append(u.passed, queued{i, i})
		default:
			u.ready = append(u.ready, queued{0, i})
		}
	}
	return u // in order, as heaps are
}

// moveSoFar times what movements can be timed before this pull has landed; what
// waits for it cannot matter to where it lands.
func (c *Clock) moveSoFar() {
	var again queue
	for {
		for len(c.untimed.passed) > 0 && c.pass(c.untimed.passed[0].until, true) {
			heap.Push(&c.untimed.ready, queued{0, heap.Pop(&c.untimed.passed).(queued).item})
		}
		if len(c.untimed.ready) == 0 {
			break
		}
		i := heap.Pop(&c.untimed.ready).(queued).item
		switch w := c.movement(i, true); {
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

// A movement is what a statement says of it, but for its start.
type movement struct {
	stage.Move
	timing
	over float64 // 0 where a speed stands in its place, or two moments, or another movement
	both bool    // it is a pan and a tilt; Kind is the pan
	ok   bool
}

// readMovements reads what every movement says. It looks at all of it, whatever
// is wrong with a part.
func (c *Clock) readMovements() {
	for k := range c.items {
		in := &c.items[k].In
		t, ok := timingOf(c.items[k].Stmt)
		if !ok {
			continue
		}
		mv := &movement{Move: stage.Move{Item: k, Stmt: c.items[k].Stmt, In: *in, Eyes: math.NaN(), Smooth: t.profile != lang.ProfileEven}, timing: t}
		switch s := mv.Stmt.(type) {
		case *lang.Moves:
			mv.Kind, mv.Smooth = "moves", s.Profile == lang.ProfileSmooth
			mv.ok = c.readWalk(in, s, mv)
		case *lang.Zoom:
			mv.Kind, mv.ok = "zoom", c.readZoom(in, s, mv)
		case *lang.Turn:
			mv.ok = c.readTurn(in, s, mv)
		case *lang.CameraMoves:
			mv.Kind, mv.Floor = "camera", s.To
			mv.ok = c.with.Stage.CameraPlaced(s.Range(), *in) && c.with.Stage.CheckFloor(s.To, "the camera", *in)
		default:
			mv.ok = c.readSlide(in, mv)
		}
		mv.ok = c.readLength(in, mv) && mv.ok && !c.torn(mv.Stmt)
		c.movements[k] = mv
		if c.isGiven(k) {
			c.walkGiven(k, mv)
		}
	}
}

// readLength reads how long a movement takes, where it says that itself.
func (c *Clock) readLength(in *names.Reader, mv *movement) (ok bool) {
	switch {
	case mv.Keeps || mv.alongside != "" || mv.on != nil && mv.landing != nil:
		return true
	case mv.speed != nil:
		mv.Speed, ok = in.Positive(mv.speed, names.DimVelocity)
	default:
		mv.over, ok = in.Positive(mv.lasts, names.DimTime)
	}
	return ok
}

// readWalk reads who moves, and to where.
func (c *Clock) readWalk(in *names.Reader, s *lang.Moves, mv *movement) (ok bool) {
	d, okW := in.Who(s.Who, names.DeclSubject)
	eyes, okEyes := c.with.Stage.ReadEyes(s.Eyes, *in)
	if mv.Eyes = eyes; !okEyes {
		return false
	}
	if mv.Floor = cmp.Or(s.Floor, c.with.Stage.FloorOf(s.To, *in)); mv.Floor != nil {
		return c.readToFloor(in, d, okW, mv)
	}
	if c.with.Stage.IsScene() && s.To != nil {
		return false // no place on the floor, which has been told
	}
	if s.By != nil {
		mv.FromSelf = true
		mv.By, ok = in.Within(s.By, names.DimLength, 1e-4, stage.MaxDistance, "somebody goes 0.1 mm to 1000 km")
		if s.Nearer {
			mv.By = -mv.By
		}
	} else {
		mv.Along, mv.Across, ok = c.with.Stage.Spots(s.To, *in, nil)
	}
	if !ok || !okW {
		return false
	}
	if mv.Who = c.with.Stage.Subjects[d.Name.Text]; mv.Who == nil || !mv.Who.Ok {
		return false
	}
	if mv.Along.On == mv.Who { // as in NORA moves to NORA - 15 cm
		mv.FromSelf, mv.By = true, mv.Along.V
		if mv.By == 0 && s.To.Side == nil {
			in.Fail(s.To.Range(), "out-of-range", mv.Who.Name+" stands there already", "")
			return false
		}
	}
	if mv.FromSelf {
		mv.KeepsSide = s.To == nil || s.To.Side == nil
		return true
	}
	mv.Along.Back(c.with.Change.Back)
	mv.KeepsSide = s.To.Side == nil && mv.Along.On == nil
	return true
}

// readToFloor reads a walk to a place on the floor.
func (c *Clock) readToFloor(in *names.Reader, d *names.Decl, known bool, mv *movement) (ok bool) {
	who := "somebody"
	if known {
		who = d.Name.Text
	}
	if ok = c.with.Stage.CheckFloor(mv.Floor, who, *in); !ok || !known {
		return false
	}
	mv.Who = c.with.Stage.Subjects[who]
	return mv.Who != nil && mv.Who.Ok
}

// readZoom reads what a zoom goes to.
func (c *Clock) readZoom(in *names.Reader, s *lang.Zoom, mv *movement) (ok bool) {
	if mv.By, ok = in.Positive(s.To, names.DimLength); !ok {
		return false
	}
	mv.By *= c.with.Change.FocalFactor()
	if l := c.with.Lens; l != nil && (mv.By < l.Focal*(1-1e-9) || mv.By > l.Longest*(1+1e-9)) {
		in.Fail(s.To.Range(), "focal-not-on-lens", fmt.Sprintf("lens %q has no %s", l.Name, units.Style{}.Millimetres(mv.By)), "It has "+l.FocalText()+".")
		return false
	}
	return true
}

// movement times a movement.
func (c *Clock) movement(k int, ahead bool) When {
	return c.settle(&c.At[k], func() When {
		mv := c.movements[k]
		w, end := c.moments(k, mv, ahead)
		switch {
		case w.State == Waits:
			return w
		case !mv.ok: // told; its moments have been looked at all the same
			return failed
		case mv.Floor == nil && !mv.FromSelf && mv.Along.On != nil && c.with.Stage.HangsOn(mv.Along.On, mv.Who):
			c.items[k].In.Fail(mv.Stmt.(*lang.Moves).To.Range(), "circle", fmt.Sprintf("%s would stand relative to itself", mv.Who.Name), "")
			return failed
		case w.State == Failed:
			return failed
		}
		if math.IsNaN(end) {
			over, ok := mv.over, true
			if mv.Speed > 0 {
				if over, ok = c.fromSpeed(k, mv, w.T, ahead); !ok {
					return failed
				}
			}
			if end = w.T + over; mv.landing != nil {
				end, w.T = w.T, w.T-over
			}
		}
		mv.Start, mv.End = w.T, end
		if math.IsInf(end, 0) { // the next turn ends it, or the shot
			end = w.T
		}
		if end = c.span(k, w.T, end); !math.IsInf(mv.End, 0) {
			mv.End = end
		}
		c.take(mv)
		return w
	})
}

// fromSpeed returns how long a movement takes that says its speed. Its way begins
// where the movements written above it leave whoever goes: one written below may
// itself wait for this.
func (c *Clock) fromSpeed(k int, mv *movement, start float64, ahead bool) (over float64, ok bool) {
	if mv.Who == nil && mv.Floor == nil {
		return math.Abs(mv.By) / mv.Speed, true
	}
	for ; c.timedTo < k; c.timedTo++ {
		if c.movements[c.timedTo] != nil {
			c.movement(c.timedTo, ahead)
		}
	}
	c.lay()
	if over = c.with.Stage.Takes(&mv.Move, start); over > 0 {
		return over, true
	}
	who := "the camera"
	if mv.Who != nil {
		who = mv.Who.Name
	}
	c.fail(k, "out-of-range", who+" stands there already, and a speed gives no time", "Write over and a time, or leave the line out.")
	return 0, false
}

// lay has the stage take the movements that have got their times.
func (c *Clock) lay() {
	c.with.Stage.Take(c.moved)
	c.moved = nil
}
