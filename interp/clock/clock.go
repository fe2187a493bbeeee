// The clock of a shot: when every line, pause, action, hold, cue and piece of
// blocking happens.
//
// Statements are taken in the order written, but a moment may hang on a word
// or cue further down. So the clock can be asked ahead: what it has passed
// stays known. Whatever is asked for while it is itself being worked out waits
// for itself, which is an error.

package clock

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"sync"

	"pullscore/interp/change"
	"pullscore/interp/cut"
	"pullscore/interp/kit"
	"pullscore/interp/names"
	"pullscore/interp/plan"
	"pullscore/interp/speech"
	"pullscore/interp/stage"
	"pullscore/lang"
)

// longest is the longest shot that makes sense, seconds.
const longest = 24 * 3600

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

// A Base is what the clock of a shot goes by.
type Base struct {
	*names.Lexicon
	stage.Sight
	Ch       change.Change
	Settings map[string]lang.Statement
	Stage    *stage.Stage
	Start    stage.Goal // of the focus, as the shot begins
	Cut      *cut.Shot  // what the cuts say of the shot; nil where the plan follows none
	Epoch    int64      // where the plan has the shot begin, as frames: its timecodes count from there
	Lens     *kit.Lens
	Pace     float64 // words a minute
	Tokens   func(*lang.Text) []speech.Token
	Defaults []plan.Default
}

// ByDefault notes that a value stands in for one that the shot does not give.
func (b *Base) ByDefault(name, value, why string) {
	b.Defaults = append(b.Defaults, plan.Default{Name: name, Value: value, Why: why, Shot: b.Head.ID})
}

// A Clock tells when the statements of one shot happen, in seconds from its
// start.
type Clock struct {
	b *Base
	// Needed is the length of a rack that does not say its own: the shortest that
	// lands. The focus is where the pull before it leaves it; nil is the start.
	Needed func(p, before *Pull, start, land float64) float64
	// idle is told of a hold that changes nothing.
	Idle func(s *lang.Hold, landed, long, now float64)

	Before     []float64 // where the clock stands before item i, for i <= passed
	passed     int
	At         []moment
	Lines      []*Line            // the spoken lines, by item
	InOrder    []*Line            // the same in their order
	speaks     map[string][]*Line // the same by who speaks
	bad        []int              // the items that may be spoken lines, and could not be read
	cues       cues
	firstHeard func() *Line // the first line that a cut has; nil: none
	said       func() *said // the words of all lines, once they are asked for
	speaker    string       // who spoke last
	spoke      float64      // until when
	gap        bool         // no pause and no anchor since

	untimed   untimed
	timedTo   int           // every movement before this item has been asked for its time
	moved     []*stage.Move // that have got their times since the stage was laid
	pulls     []*Pull       // racks and follows as written
	PullOf    []*Pull       // by item
	rackAbove []*Pull       // by item: the last rack written above it
	hung      *Line         // that the moment asked for last hangs on; nil: none
	tentative int           // above 0: a hold that waits for a rack being timed gives up silently
}

// A Line is a spoken line with its words.
type Line struct {
	Item   int
	Stmt   *lang.Speech
	Who    string
	Tokens []speech.Token
	folded speech.Folded // once words are looked for
	Start  float64
	end    float64
	Timed  bool           // the line has its time
	words  []speech.Timed // spread once they are asked for
	hangs  map[int]bool   // the words that a move of the focus hangs on
	Heard  *cut.Heard     // as the cut has it; nil where it does not
	Listed int            // its index in the plan's lines
}

// New returns a clock that stands at the start of the shot.
func New(b *Base) *Clock {
	n := len(b.Items)
	c := &Clock{
		b: b, Before: make([]float64, n+1), At: make([]moment, n), Lines: make([]*Line, n), PullOf: make([]*Pull, n),
		rackAbove: make([]*Pull, n), speaks: map[string][]*Line{}, cues: cuesOf(b.Items), untimed: untimedOf(b.Items),
	}
	c.firstHeard = sync.OnceValue(func() *Line {
		i := slices.IndexFunc(c.InOrder, func(l *Line) bool { return b.Cut != nil && l.Heard != nil && l.Heard == b.Cut.First })
		if i < 0 {
			return nil
		}
		return c.InOrder[i]
	})
	c.said = sync.OnceValue(func() *said { return newSaid(c.InOrder) })
	return c
}

// Run takes every statement in turn.
func (c *Clock) Run() {
	for i := range c.b.Items {
		c.pass(i + 1)
		c.resolve(i)
	}
	c.lay()
}

// ReadLines splits the words of every line, so that anchors find them.
func (c *Clock) ReadLines() {
	for i, it := range c.b.Items {
		if bad, ok := it.Stmt.(*lang.Bad); ok && (bad.Keyword == speechWord || bad.Keyword == "") {
			c.bad = append(c.bad, i)
		}
		s, ok := it.Stmt.(*lang.Speech)
		if !ok {
			continue
		}
		l := &Line{Item: i, Stmt: s, hangs: map[int]bool{}}
		l.Tokens = c.b.Tokens(s.Words)
		c.Lines[i] = l
		c.InOrder = append(c.InOrder, l)
		done := c.b.Reading(i)
		if d, ok := c.b.Who(s.Who, it.Env, names.DeclSubject, names.DeclVoice); ok {
			l.Who = d.Name.Text
		}
		c.speaks[l.Who] = append(c.speaks[l.Who], l)
		done()
	}
}

// pass moves the clock past all items before n; ok is false where it waits for
// something that is being worked out.
func (c *Clock) pass(n int) (ok bool) {
	for c.passed < n {
		k := c.passed
		m := &c.At[k]
		if m.stepping {
			return false
		}
		m.stepping = true
		after, ok := c.step(k, c.Before[k])
		m.stepping = false
		if !ok {
			return false
		}
		c.Before[k+1] = after
		c.passed = k + 1
	}
	return true
}

// step takes one item; it returns where the clock stands after it.
func (c *Clock) step(k int, now float64) (after float64, ok bool) {
	defer c.b.Reading(k)()
	it := c.b.Items[k]
	ev := c.b.At(it.Env)
	switch s := it.Stmt.(type) {
	case *lang.Speech:
		return c.speak(k, s, ev, now)
	case *lang.Pause:
		t, ok := ev.NotNegative(s.Time, names.DimTime)
		if !ok {
			return now, true
		}
		c.gap = false
		return c.span(k, now, now+t), true
	case *lang.Action:
		return c.act(k, s, ev, now)
	case *lang.Hold:
		return c.hold(k, s, ev, now)
	}
	return now, true
}

// span notes the time of an item and returns its end.
func (c *Clock) span(k int, start, end float64) float64 {
	if end > longest || start < -longest {
		if !c.At[k].Failed {
			c.b.Fail(c.b.Items[k].Stmt.Range(), "out-of-range", "a shot lasts a day at most", "")
		}
		end = start
		c.At[k].Failed = true
	}
	c.At[k].StartS, c.At[k].EndS, c.At[k].Known = start, end, true
	c.notBefore(k, start)
	return end
}

func (c *Clock) speak(k int, s *lang.Speech, ev *names.Evaluator, now float64) (after float64, ok bool) {
	l := c.Lines[k]
	c.At[k].Failed = c.At[k].Failed || c.b.Film.Torn.Lost(s)
	if after, ok := c.speakInCut(l, now); ok {
		return after, true
	}
	if s.From != nil || s.To != nil {
		return c.speakFromTo(l, ev, now)
	}
	start := now
	if c.gap && c.speaker != l.Who {
		start = max(now, c.spoke+speech.Gap)
	}
	if s.On != nil {
		switch w := c.anchor(k, s.On, ev, false); w.State {
		case Waits:
			c.waitsForItself(k, s.On.Range())
		case Failed:
			c.At[k].Failed = true
		case Found:
			start = w.T
		}
	}
	long := speech.DurationOf(l.Tokens, c.b.Pace)
	if s.Lasting != nil {
		if t, ok := ev.NotNegative(s.Lasting, names.DimTime); ok {
			long = t
		}
	}
	end := start + long
	if t, ok := c.asLong(l, start); ok {
		end = t
	}
	return c.spoken(l, start, end, now), true
}

func (c *Clock) speakFromTo(l *Line, ev *names.Evaluator, now float64) (float64, bool) {
	from, okF := c.time(ev, l.Stmt.From)
	to, okT := c.time(ev, l.Stmt.To)
	if !okF || !okT {
		c.At[l.Item].Failed = true
		return now, true
	}
	if to < from {
		c.b.Fail(l.Stmt.Range(), "out-of-range", "the line ends before it starts", "")
		to = from
	}
	if t, ok := c.asLong(l, from); ok {
		to = t
	}
	return c.spoken(l, from, to, now), true
}

// spoken notes the time of a line and spreads its words.
func (c *Clock) spoken(l *Line, start, end, now float64) (after float64) {
	end = c.span(l.Item, start, end)
	l.Start, l.end, l.Timed = start, end, true
	c.speaker, c.gap = l.Who, true
	c.spoke = end
	return max(now, end)
}

func (c *Clock) act(k int, s *lang.Action, ev *names.Evaluator, now float64) (after float64, ok bool) {
	start := now
	c.At[k].Failed = c.At[k].Failed || c.b.Film.Torn.Lost(s)
	if s.On != nil {
		switch w := c.anchor(k, s.On, ev, false); w.State {
		case Waits:
			c.waitsForItself(k, s.On.Range())
		case Failed:
			c.At[k].Failed = true
		case Found:
			start, c.gap = w.T, false
		}
	}
	long, okT := ev.NotNegative(s.Lasting, names.DimTime)
	if !okT {
		long = 0
	}
	return max(now, c.span(k, start, start+long)), true
}

// hold takes the clock to a time after the last landing, never back.
func (c *Clock) hold(k int, s *lang.Hold, ev *names.Evaluator, now float64) (after float64, ok bool) {
	t, okT := ev.NotNegative(s.Time, names.DimTime)
	if !okT {
		return now, true
	}
	from := now
	if r := c.rackAbove[k]; r != nil {
		switch w := c.timePull(r); {
		case w.State == Found:
			from = r.LandS
		case w.State == Waits && c.tentative > 0:
			return now, false
		case w.State == Waits:
			c.b.Fail(s.Range(), "hold-too-early", "this hold waits for a rack that hangs on a word below it",
				"Put the hold after that line, or write a pause.")
		}
	}
	if from+t <= now && t > 0 {
		c.Idle(s, from, t, now)
	}
	return max(now, c.span(k, from, max(from+t, now))), true
}

func (c *Clock) waitsForItself(k int, at lang.Range) {
	c.b.Fail(at, "circle", "this moment hangs on one that itself waits for it", "Give one of the two a time.")
	c.At[k].Failed = true
}

// resolve times what leaves the clock: cues, blocking and pulls.
func (c *Clock) resolve(k int) {
	defer c.b.Reading(k)()
	switch s := c.b.Items[k].Stmt.(type) {
	case *lang.Cue:
		if c.cue(k, s).State == Waits {
			c.waitsForItself(k, s.Range())
		}
	case *lang.Moves, *lang.Dolly, *lang.Zoom:
		if c.block(k).State == Waits {
			c.waitsForItself(k, s.Range())
		}
	case *lang.Rack, *lang.Follow:
		if c.timePull(c.PullOf[k]).State == Waits {
			c.waitsForItself(k, s.Range())
		}
	}
}

// cue times a named moment.
func (c *Clock) cue(k int, s *lang.Cue) When {
	m := &c.At[k]
	return c.settle(m, func() When {
		w := When{}
		if t, ok := c.b.CueInCut(s.Name.Text); ok {
			w = at(t)
		} else {
			w = c.when(k, s.On)
			if c.b.Film.Torn.Lost(s) {
				w = failed
			}
		}
		if w.State == Found {
			m.StartS, m.EndS = w.T, w.T
			c.notBefore(k, w.T)
		}
		return w
	})
}

// when is the time of an optional anchor: without one, where the clock stands.
func (c *Clock) when(k int, a *lang.Anchor) When {
	if a != nil {
		return c.anchor(k, a, c.b.At(c.b.Items[k].Env), false)
	}
	if !c.pass(k) {
		return until(k)
	}
	return at(c.Before[k])
}

// time computes a time from the shot's start: seconds, or a timecode where the
// shot begins at one.
func (c *Clock) time(ev *names.Evaluator, x *lang.Expr) (float64, bool) {
	q, ok := ev.Eval(x)
	if !ok {
		return 0, false
	}
	return c.timeOf(q, x.Range())
}

func (c *Clock) timeOf(q names.Quantity, at lang.Range) (float64, bool) {
	switch {
	case q.On == nil && q.Dim == names.DimTime && math.Abs(q.V) <= longest:
		return q.V, true
	case q.Dim == names.DimTimecode && c.b.Shot.BeginsAt != "":
		frames := int64(q.V) - c.b.Epoch
		if day := c.b.Rate.Day(); frames < -day/2 {
			frames += day // past midnight
		}
		return c.b.Rate.Seconds(frames), true
	case q.Dim == names.DimTimecode && c.b.Here.Any("begins"): // it may be said there
	case q.Dim == names.DimTimecode:
		c.b.Fail(at, "no-begins-at", "a timecode means nothing here: the shot does not say where it begins",
			"Write under the shot's header: begins at 01:00:00:00.")
	default:
		c.b.Fail(at, "wrong-unit", fmt.Sprintf("a time is wanted here, and this is %s", q.What()), "As in 1.2 s, or 12 fr.")
	}
	return 0, false
}

// Finish writes lines, cues, actions, pauses and blocking into the shot.
func (c *Clock) Finish() {
	sh := c.b.Shot
	for i, it := range c.b.Items {
		m := c.At[i]
		if !m.Known {
			continue
		}
		start, end := plan.Number(m.StartS), plan.Number(m.EndS)
		switch s := it.Stmt.(type) {
		case *lang.Speech:
			l := c.Lines[i]
			l.Listed = len(sh.Lines)
			sh.Lines = append(sh.Lines, plan.Line{
				Who: l.Who, Text: names.ValueOf(s.Words), Start: start, End: end,
				Estimated: s.Lasting == nil && s.To == nil && l.Heard == nil, Words: l.drawn(),
			})
		case *lang.Cue:
			sh.Cues = append(sh.Cues, plan.Cue{Name: s.Name.Text, T: start})
		case *lang.Action:
			sh.Actions = append(sh.Actions, plan.Action{Text: names.ValueOf(s.What), Start: start, End: end})
		case *lang.Pause:
			sh.Pauses = append(sh.Pauses, plan.Pause{Start: start, End: end})
		}
	}
}

// spread returns the words of a line over its time; none before it has one.
func (l *Line) spread() []speech.Timed {
	if l.words == nil && l.Timed {
		l.words = speech.Spread(l.Tokens, l.Start, l.end)
	}
	return l.words
}

// drawn returns the words of a line with the punctuation that stands about
// them.
func (l *Line) drawn() []plan.Word {
	spread := l.spread()
	words := make([]plan.Word, len(spread))
	text := names.ValueOf(l.Stmt.Words)
	for j, w := range spread {
		from, to := w.Token.Start, len(text)
		if j == 0 {
			from = 0
		}
		if j+1 < len(spread) {
			to = spread[j+1].Token.Start
		}
		words[j] = plan.Word{Text: strings.TrimSpace(text[from:to]), Start: w.Start, End: w.End, Hangs: l.hangs[j]}
	}
	return words
}
