// The clock of a shot: when every line, pause, action, hold, cue, movement and
// move of the focus happens.
//
// What is hard. Statements are read from top to bottom, and time mostly goes that
// way: a line starts where the one above ends. But a moment may hang on a word, a
// speaker or a cue that stands further down; a rack without a length takes the
// shortest that lands, which depends on where everybody is by then; and a hold
// counts from a landing. So the times of a shot are a web, and may hold a circle,
// which is a mistake to be told at its place and not an endless loop.
//
// What is done. There are two kinds of statements. Those that move the clock
// (lines, pauses, actions, holds) are passed in the order written, each once, and
// the clock never goes back. All others (cues, movements, racks, follows) are
// moments, which are settled when they are first asked for, in whatever order that
// is. Who asks for a word further down lets the clock pass ahead to its line. What
// is asked for while it is itself being worked out says that it waits; so does
// whatever asked for it, up to the statement that was begun with. There the circle
// is told, once. A wait is no failure: the same moment may be asked for again later
// and then be found. What has failed stays so and has been told, and nothing that
// hangs on it is told again.
//
// A moment that waits says what for, as a part of its value When: for the clock to
// pass an item, or for another moment. movements.go uses that to ask again only
// where the answer may have changed, which keeps the work in step with the length
// of the shot.
//
// What was rejected. To sort all moments by what they hang on before any is timed:
// what a word hangs on is known only once its line is found, and what the shortest
// rack hangs on only once its landing is known. To guess all times and repeat until
// nothing changes: that has no end in a circle and finds no place to tell it at, and
// times would depend on the number of rounds. To run the clock from the top again
// after every moment found, which is what settling once replaces: the work grew with
// the square of the shot. To let the clock wait in the middle of a statement, with a
// goroutine for each: the order of asking, and with it who is told of a circle, must
// be the same in every run.
//
// Only one question goes to lens and hand: how short a rack may be, which is
// Landing. The clock knows nothing else of them.

package clock

import (
	"fmt"
	"math"
	"sync"

	"pullscore/interp/change"
	"pullscore/interp/clock/spoken"
	"pullscore/interp/cut"
	"pullscore/interp/kit"
	"pullscore/interp/names"
	"pullscore/interp/speech"
	"pullscore/interp/stage"
	"pullscore/lang"
)

// longest is the longest shot that makes sense, seconds.
const longest = 24 * 3600

// A Landing knows the hand and the lens.
type Landing interface {
	// Shortest returns how long a rack takes that does not say so: the shortest that
	// lands, in seconds, where it starts or lands about then. The focus is where the
	// pull before it leaves it; nil is the start of the shot.
	Shortest(p, before *Pull, start, land float64) float64
}

// With is what the clock of a shot goes by.
type With struct {
	Lex     *names.Lexicon
	Items   []names.Item // the statements, moves written out
	Stage   *stage.Stage // takes the movements
	Change  change.Change
	Lens    *kit.Lens // for the focal lengths that it has; nil where it is not known
	Pace    float64   // words a minute
	Alone   bool      // the items are of moves that no shot uses: who knows what stands above
	Begun   bool      // the shot begins at a timecode
	Epoch   int64     // there, as frames: its timecodes count from it
	Landing Landing
	Given   []Given                         // of the first items, which are those of a scene; the others are the shot's
	Scene   bool                            // the items are those of a scene
	From    float64                         // where the clock stands at first, seconds
	Tokens  func(*lang.Text) []speech.Token // the words of a text
}

// A moment is when an item happens.
type moment struct {
	StartS, EndS float64
	Known        bool
	busy         bool // being worked out
	stepping     bool // the clock is at it
	Failed       bool // reported; the times are a guess

	hung  *Line // that it hangs on; nil: none
	wakes []int // movements that wait for it
}

// settle works a moment out once. What asks for it meanwhile has to wait: it
// stays unsettled then, and may be asked for again.
func (c *Clock) settle(m *moment, work func() When) When {
	switch {
	case m.Known:
		return When{T: m.StartS, Line: m.hung}
	case m.Failed:
		return failed
	case m.busy:
		return When{State: Waits, Of: m}
	}
	m.busy = true
	w := work()
	m.busy, m.Known, m.Failed = false, w.State == Found, w.State == Failed
	m.hung = w.Line
	c.wake(m, w)
	return w
}

// A Clock tells when the statements of one shot happen, in seconds from its
// start.
type Clock struct {
	*spoken.Talk // its lines, and where their words are

	with  With
	items []names.Item
	cut   *cut.Shot // what the cuts say of the shot; nil where the plan follows none

	shifts   map[int]float64 // of runs of lines that the cut does not have
	squeezes [][2]int        // the items of the lines before and behind runs that lack time

	Before []float64 // where the clock stands before item i, for i <= passed
	passed int
	turn   turn // behind what is passed
	At     []moment
	cues   cues
	ends   func() ending // what ends can be named of, likewise

	firstHeard func() *Line // the first line that the cut has; nil: none

	movements map[int]*movement // by item
	untimed   untimed
	timedTo   int           // every movement before this item has been asked for its time
	moved     []*stage.Move // that have got their times since the stage was laid

	pulls     []*Pull // racks and follows as written
	PullOf    []*Pull // by item
	rackAbove []*Pull // by item: the last rack written above it

	Idle []Idle // holds that change nothing
}

// An Idle is a hold that moves nothing, with its times in seconds.
type Idle struct {
	Stmt              *lang.Hold
	Landed, Long, Now float64
}

// New returns a clock that stands at the start of the shot and has read its
// lines.
func New(with With) *Clock {
	n := len(with.Items)
	c := &Clock{
		Talk: spoken.Read(with.Items, with.Lex, with.Tokens, with.wide()),
		with: with, items: with.Items, Before: make([]float64, n+1), At: make([]moment, n),
		PullOf: make([]*Pull, n), rackAbove: make([]*Pull, n),
		cues: cuesOf(with.Items), movements: map[int]*movement{}, untimed: untimedOf(with.Items),
	}
	c.ends = sync.OnceValue(c.endings)
	c.Before[0] = with.From
	c.takeGiven()
	return c
}

// Run takes every statement in turn.
func (c *Clock) Run() {
	c.readPulls()
	c.readMovements()
	for i := range c.items {
		c.pass(i+1, false)
		c.resolve(i)
	}
	c.lay()
	c.with.Lex.Film.Record.Ask(c.items, func(k int, a *lang.Anchor) {
		if !c.isGiven(k) { // else the scene has asked
			c.when(k, a, false)
		}
	})
}

// pass moves the clock past all items before n; ok is false where it waits for
// something that is being worked out. ahead tells that it is tried ahead of a
// rack, for which it may have to wait: that is no mistake.
func (c *Clock) pass(n int, ahead bool) (ok bool) {
	for c.passed < n {
		k := c.passed
		m := &c.At[k]
		if m.stepping {
			return false
		}
		m.stepping = true
		after, next, ok := c.step(k, c.Before[k], c.turn, ahead)
		m.stepping = false
		if !ok {
			return false
		}
		c.Before[k+1], c.turn = c.goBack(k, after, next)
		c.passed = k + 1
	}
	return true
}

// step takes one item; it returns where the clock stands after it, and whose turn
// it was.
func (c *Clock) step(k int, now float64, t turn, ahead bool) (after float64, next turn, ok bool) {
	if c.isGiven(k) {
		return now, t, true
	}
	c.setsTimes(k)
	in := &c.items[k].In
	switch s := c.items[k].Stmt.(type) {
	case *lang.Speech:
		after, next = c.speak(c.Lines[k], now, t, ahead)
		return after, next, true
	case *lang.Pause:
		long, ok := in.NotNegative(s.Time, names.DimTime)
		if !ok {
			return now, t, true
		}
		t.gap = false
		return c.span(k, now, now+long), t, true
	case *lang.Action:
		after, next = c.act(k, s, now, t, ahead)
		return after, next, true
	case *lang.Hold:
		after, ok = c.hold(k, s, now, ahead)
		return after, t, ok
	}
	return now, t, true
}

// span notes the time of an item and returns its end.
func (c *Clock) span(k int, start, end float64) float64 {
	if end > longest || start < -longest {
		if !c.At[k].Failed {
			c.fail(k, "out-of-range", "a shot lasts at most a day", "")
		}
		end = start
		c.At[k].Failed = true
	}
	c.At[k].StartS, c.At[k].EndS, c.At[k].Known = start, end, true
	c.notBefore(k, start)
	return end
}

// torn tells whether a clause of a statement that matters to its time was lost.
func (c *Clock) torn(s lang.Statement) bool { return c.with.Lex.TornAt(s) }

// fail reports an error of an item.
func (c *Clock) fail(k int, code, message, detail string) {
	c.items[k].In.Fail(c.items[k].Stmt.Range(), code, message, detail)
}

func (c *Clock) act(k int, s *lang.Action, now float64, t turn, ahead bool) (after float64, next turn) {
	start, in := now, c.items[k].In
	c.At[k].Failed = c.At[k].Failed || c.torn(s)
	if s.On != nil {
		switch w := c.anchor(ask{item: k, in: in, ahead: ahead}, s.On); w.State {
		case Waits:
			c.waitsForItself(k, s.On.Range())
		case Failed:
			c.At[k].Failed = true
		case Found:
			start, t.gap = w.T, false
		}
	}
	long, ok := in.NotNegative(s.Lasting, names.DimTime)
	if !ok {
		long = 0
	}
	return max(now, c.span(k, start, start+long)), t
}

// hold takes the clock to a time after the last landing, never back.
func (c *Clock) hold(k int, s *lang.Hold, now float64, ahead bool) (after float64, ok bool) {
	long, okT := c.items[k].In.NotNegative(s.Time, names.DimTime)
	if !okT {
		return now, true
	}
	from := now
	if r := c.rackAbove[k]; r != nil {
		switch w := c.timePull(r, ahead); {
		case w.State == Found:
			from = r.LandS
		case w.State == Waits && ahead:
			return now, false
		case w.State == Waits:
			c.fail(k, "hold-too-early", "this hold waits for a rack whose word is below it",
				"Put the hold after that line, or write a pause.")
		}
	}
	if from+long <= now && long > 0 {
		c.Idle = append(c.Idle, Idle{Stmt: s, Landed: from, Long: long, Now: now})
	}
	return max(now, c.span(k, from, max(from+long, now))), true
}

func (c *Clock) waitsForItself(k int, at lang.Range) {
	c.items[k].In.Fail(at, "circle", "this moment depends on one that waits for it", "Give one of the two a time.")
	c.At[k].Failed = true
}

// resolve times what leaves the clock: cues, movements and pulls.
func (c *Clock) resolve(k int) {
	w := When{}
	switch s := c.items[k].Stmt.(type) {
	case *lang.Cue:
		w = c.cue(k, s, false)
	case *lang.Moves, *lang.Dolly, *lang.Zoom, *lang.Track, *lang.Boom, *lang.Turn, *lang.CameraMoves:
		w = c.movement(k, false)
	case *lang.Rack, *lang.Follow:
		w = c.timePull(c.PullOf[k], false)
	}
	if w.State == Waits {
		c.waitsForItself(k, c.items[k].Stmt.Range())
	}
}

// when is the time of an optional anchor: without one, where the clock stands.
func (c *Clock) when(k int, a *lang.Anchor, ahead bool) When {
	if a != nil {
		return c.anchor(ask{item: k, in: c.items[k].In, ahead: ahead}, a)
	}
	if !c.pass(k, ahead) {
		return until(k)
	}
	return at(c.Before[k])
}

// time computes a time from the shot's start: seconds, or a timecode where the
// shot begins at one.
func (c *Clock) time(in names.Reader, x *lang.Expr) (float64, bool) {
	q, ok := in.Eval(x)
	if !ok {
		return 0, false
	}
	return c.timeOf(in, q, x.Range())
}

func (c *Clock) timeOf(in names.Reader, q names.Quantity, at lang.Range) (float64, bool) {
	switch {
	case q.On == nil && q.Dim == names.DimTime && math.Abs(q.V) <= longest:
		return q.V, true
	case q.Dim == names.DimTimecode && c.with.Begun:
		frames := int64(q.V) - c.with.Epoch
		if day := in.Speed.Rate.Day(); frames < -day/2 {
			frames += day // past midnight
		}
		return in.Speed.Seconds(frames), true
	case q.Dim == names.DimTimecode && c.with.Lex.Here.Any("begins"): // it may be said there
	case q.Dim == names.DimTimecode && c.with.Scene:
		in.Fail(at, "no-begins-at", "a timecode means nothing here: times count from the start of the scene", "As in on 3 s.")
	case q.Dim == names.DimTimecode:
		in.Fail(at, "no-begins-at", "a timecode means nothing here: the shot does not say where it begins",
			"Write under the shot's header: begins at 01:00:00:00.")
	default:
		in.Fail(at, "wrong-unit", fmt.Sprintf("expected a time, found %s", q.What()), "As in 1.2 s, or 12 fr.")
	}
	return 0, false
}
