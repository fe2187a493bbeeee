// The clock of a shot: when every line, pause, action, hold, cue and piece of
// blocking happens.
//
// Statements are taken in the order written, but a moment may hang on a word
// or cue further down. So the clock can be asked ahead: what it has passed
// stays known. Whatever is asked for while it is itself being worked out waits
// for itself, which is an error.

package interp

import (
	"fmt"
	"math"
	"strings"

	"pullscore/interp/plan"
	"pullscore/interp/speech"
	"pullscore/lang"
)

// longest is the longest shot that makes sense, seconds.
const longest = 24 * 3600

// A moment is when an item happens.
type moment struct {
	start, end float64
	known      bool
	busy       bool // being worked out
	stepping   bool // the clock is at it
	failed     bool // reported; the times are a guess

	hung *line // that it hangs on; nil: none
}

// settle works a moment out once. What asks for it meanwhile has to wait: it
// stays unsettled then, and may be asked for again.
func (m *moment) settle(work func() outcome) outcome {
	switch {
	case m.known:
		return found
	case m.failed:
		return failed
	case m.busy:
		return waits
	}
	m.busy = true
	state := work()
	m.busy, m.known, m.failed = false, state == found, state == failed
	return state
}

// A base is what the clock of a shot goes by.
type base struct {
	*lexicon
	sight
	ch       change
	settings map[string]lang.Statement
	stage    *stage
	start    goal     // of the focus, as the shot begins
	cut      *shotCut // what the cuts say of the shot; nil where the plan follows none
	epoch    int64    // where the plan has the shot begin, as frames: its timecodes count from there
	lens     *lens
	pace     float64 // words a minute
	tokens   func(*lang.Text) []speech.Token
	defaults []plan.Default
}

func (b *base) byDefault(name, value, why string) {
	b.defaults = append(b.defaults, plan.Default{Name: name, Value: value, Why: why, Shot: b.head.ID})
}

type clock struct {
	b *base
	// needed is the length of a rack that does not say its own: the shortest that
	// lands.
	needed func(p *pull, start, land float64) float64
	// idle is told of a hold that changes nothing.
	idle func(s *lang.Hold, landed, long, now float64)

	before  []float64 // where the clock stands before item i, for i <= passed
	passed  int
	at      []moment
	lines   []*line // the spoken lines, by item
	inOrder []*line // the same in their order
	speaker string  // who spoke last
	spoke   float64 // until when
	gap     bool    // no pause and no anchor since

	pulls     []*pull // racks and follows as written
	pullOf    []*pull // by item
	hung      *line   // that the moment asked for last hangs on; nil: none
	tentative int     // above 0: a hold that waits for a rack being timed gives up silently
}

// A line is a spoken line with its words.
type line struct {
	item   int
	stmt   *lang.Speech
	who    string
	tokens []speech.Token
	folded speech.Folded // once words are looked for
	start  float64
	end    float64
	timed  bool           // the line has its time
	words  []speech.Timed // spread once they are asked for
	hangs  map[int]bool   // the words that a move of the focus hangs on
	heard  *heard         // as the cut has it; nil where it does not
	listed int            // its index in the plan's lines
}

// newClock returns a clock that stands at the start of the shot.
func newClock(b *base) *clock {
	n := len(b.items)
	return &clock{b: b, before: make([]float64, n+1), at: make([]moment, n), lines: make([]*line, n), pullOf: make([]*pull, n)}
}

// run takes every statement in turn.
func (c *clock) run() {
	for i := range c.b.items {
		c.pass(i + 1)
		c.resolve(i)
	}
	c.b.stage.tracks()
}

// readLines splits the words of every line, so that anchors find them.
func (c *clock) readLines() {
	for i, it := range c.b.items {
		s, ok := it.stmt.(*lang.Speech)
		if !ok {
			continue
		}
		l := &line{item: i, stmt: s, hangs: map[int]bool{}}
		l.tokens = c.b.tokens(s.Words)
		c.lines[i] = l
		c.inOrder = append(c.inOrder, l)
		done := c.b.reading(i)
		if d, ok := c.b.who(s.Who, it.env, declSubject, declVoice); ok {
			l.who = d.name.Text
		}
		done()
	}
}

// pass moves the clock past all items before n; ok is false where it waits for
// something that is being worked out.
func (c *clock) pass(n int) (ok bool) {
	for c.passed < n {
		k := c.passed
		m := &c.at[k]
		if m.stepping {
			return false
		}
		m.stepping = true
		after, ok := c.step(k, c.before[k])
		m.stepping = false
		if !ok {
			return false
		}
		c.before[k+1] = after
		c.passed = k + 1
	}
	return true
}

// step takes one item; it returns where the clock stands after it.
func (c *clock) step(k int, now float64) (after float64, ok bool) {
	defer c.b.reading(k)()
	it := c.b.items[k]
	ev := c.b.at(it.env)
	switch s := it.stmt.(type) {
	case *lang.Speech:
		return c.speak(k, s, ev, now)
	case *lang.Pause:
		t, ok := ev.notNegative(s.Time, dimTime)
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
func (c *clock) span(k int, start, end float64) float64 {
	if end > longest || start < -longest {
		if !c.at[k].failed {
			c.b.fail(c.b.items[k].stmt.Range(), "out-of-range", "a shot lasts a day at most", "")
		}
		end = start
		c.at[k].failed = true
	}
	c.at[k].start, c.at[k].end, c.at[k].known = start, end, true
	c.notBefore(k, start)
	return end
}

func (c *clock) speak(k int, s *lang.Speech, ev *evaluator, now float64) (after float64, ok bool) {
	l := c.lines[k]
	if after, ok := c.speakInCut(l, now); ok {
		return after, true
	}
	if s.From != nil || s.To != nil {
		return c.speakFromTo(l, ev, now)
	}
	start := now
	if c.gap && c.speaker != l.who {
		start = max(now, c.spoke+speech.Gap)
	}
	if s.On != nil {
		t, state := c.anchor(k, s.On, ev, false)
		switch state {
		case waits:
			c.waitsForItself(k, s.On.Range())
		case found:
			start = t
		}
	}
	long := speech.DurationOf(l.tokens, c.b.pace)
	if s.Lasting != nil {
		if t, ok := ev.notNegative(s.Lasting, dimTime); ok {
			long = t
		}
	}
	end := start + long
	if t, ok := c.asLong(l, start); ok {
		end = t
	}
	return c.spoken(l, start, end, now), true
}

func (c *clock) speakFromTo(l *line, ev *evaluator, now float64) (float64, bool) {
	from, okF := c.time(ev, l.stmt.From)
	to, okT := c.time(ev, l.stmt.To)
	if !okF || !okT {
		return now, true
	}
	if to < from {
		c.b.fail(l.stmt.Range(), "out-of-range", "the line ends before it starts", "")
		to = from
	}
	if t, ok := c.asLong(l, from); ok {
		to = t
	}
	return c.spoken(l, from, to, now), true
}

// spoken notes the time of a line and spreads its words.
func (c *clock) spoken(l *line, start, end, now float64) (after float64) {
	end = c.span(l.item, start, end)
	l.start, l.end, l.timed = start, end, true
	c.speaker, c.gap = l.who, true
	c.spoke = end
	return max(now, end)
}

func valueOf(t *lang.Text) string {
	if t == nil {
		return ""
	}
	return t.Value
}

func (c *clock) act(k int, s *lang.Action, ev *evaluator, now float64) (after float64, ok bool) {
	start := now
	if s.On != nil {
		t, state := c.anchor(k, s.On, ev, false)
		switch state {
		case waits:
			c.waitsForItself(k, s.On.Range())
		case found:
			start, c.gap = t, false
		}
	}
	long, okT := ev.notNegative(s.Lasting, dimTime)
	if !okT {
		long = 0
	}
	return max(now, c.span(k, start, start+long)), true
}

// hold takes the clock to a time after the last landing, never back.
func (c *clock) hold(k int, s *lang.Hold, ev *evaluator, now float64) (after float64, ok bool) {
	t, okT := ev.notNegative(s.Time, dimTime)
	if !okT {
		return now, true
	}
	from := now
	if r := c.lastRack(k); r != nil {
		switch state := c.timePull(r); {
		case state == found:
			from = r.land
		case state == waits && c.tentative > 0:
			return now, false
		case state == waits:
			c.b.fail(s.Range(), "hold-too-early", "this hold waits for a rack that hangs on a word below it",
				"Put the hold after that line, or write a pause.")
		}
	}
	if from+t <= now && t > 0 {
		c.idle(s, from, t, now)
	}
	return max(now, c.span(k, from, max(from+t, now))), true
}

// lastRack is the last rack written above item k.
func (c *clock) lastRack(k int) *pull {
	for i := k - 1; i >= 0; i-- {
		if p := c.pullOf[i]; p != nil && !p.follow {
			return p
		}
	}
	return nil
}

func (c *clock) waitsForItself(k int, at lang.Range) {
	c.b.fail(at, "circle", "this moment hangs on one that itself waits for it", "Give one of the two a time.")
	c.at[k].failed = true
}

// resolve times what leaves the clock: cues, blocking and pulls.
func (c *clock) resolve(k int) {
	defer c.b.reading(k)()
	switch s := c.b.items[k].stmt.(type) {
	case *lang.Cue:
		if c.cue(k, s) == waits {
			c.waitsForItself(k, s.Range())
		}
	case *lang.Moves, *lang.Dolly, *lang.Zoom:
		if c.block(k) == waits {
			c.waitsForItself(k, s.Range())
		}
	case *lang.Rack, *lang.Follow:
		if c.timePull(c.pullOf[k]) == waits {
			c.waitsForItself(k, s.Range())
		}
	}
}

// cue times a named moment.
func (c *clock) cue(k int, s *lang.Cue) outcome {
	m := &c.at[k]
	return m.settle(func() outcome {
		t, state := 0.0, found
		if at, ok := c.b.cueInCut(s.Name.Text); ok {
			t = at
		} else {
			t, state = c.when(k, s.On)
		}
		if s.On != nil {
			m.hung = c.hung
		}
		if state == found {
			m.start, m.end = t, t
			c.notBefore(k, t)
		}
		return state
	})
}

// when is the time of an optional anchor: without one, where the clock stands.
func (c *clock) when(k int, a *lang.Anchor) (float64, outcome) {
	if a != nil {
		return c.anchor(k, a, c.b.at(c.b.items[k].env), false)
	}
	if !c.pass(k) {
		return 0, waits
	}
	return c.before[k], found
}

// block times a move of a person, the camera or the zoom.
func (c *clock) block(k int) outcome {
	return c.at[k].settle(func() outcome {
		mv, on, over, ok := c.readMove(k)
		if !ok {
			return failed
		}
		t, state := c.when(k, on)
		if state == found {
			mv.start, mv.end = t, c.span(k, t, t+over)
			c.b.stage.add(mv)
		}
		return state
	})
}

// readMove reads what a piece of blocking says, but for its start.
func (c *clock) readMove(k int) (mv *move, on *lang.Anchor, over float64, ok bool) {
	it := c.b.items[k]
	ev, st := c.b.at(it.env), c.b.stage
	mv = &move{item: k, stmt: it.stmt}
	var overExpr *lang.Expr
	switch s := it.stmt.(type) {
	case *lang.Moves:
		mv.kind, on, overExpr, mv.smooth = "moves", s.On, s.Over, s.Profile == lang.ProfileSmooth
		d, okW := c.b.who(s.Who, it.env, declSubject)
		if !okW {
			return nil, nil, 0, false
		}
		if mv.who = st.subjects[d.name.Text]; mv.who == nil || !mv.who.ok {
			return nil, nil, 0, false
		}
		mv.along, mv.across, ok = st.spots(s.To, it.env, nil)
		if !ok {
			return nil, nil, 0, false
		}
		mv.along.back(c.b.ch.Back)
		if mv.along.on != nil && st.hangsOn(mv.along.on, mv.who) {
			c.b.fail(s.To.Range(), "circle", fmt.Sprintf("%s would stand relative to itself", mv.who.Name), "")
			return nil, nil, 0, false
		}
		mv.keepsSide = s.To.Side == nil && mv.along.on == nil
	case *lang.Dolly:
		mv.kind, on, overExpr, mv.smooth = "dolly", s.On, s.Over, s.Profile != lang.ProfileEven
		if mv.by, ok = ev.positive(s.By, dimLength); !ok || mv.by > maxDistance {
			return nil, nil, 0, false
		}
		if !s.In {
			mv.by = -mv.by
		}
	case *lang.Zoom:
		mv.kind, on, overExpr, mv.smooth = "zoom", s.On, s.Over, s.Profile != lang.ProfileEven
		if mv.by, ok = ev.positive(s.To, dimLength); !ok {
			return nil, nil, 0, false
		}
		mv.by *= c.b.ch.focalBy()
		if l := c.b.lens; mv.by < l.focal*(1-1e-9) || mv.by > l.longest*(1+1e-9) {
			c.b.fail(s.To.Range(), "focal-not-on-lens", fmt.Sprintf("lens %q has no %s mm", l.name, plan.Decimal(mv.by*1000, 1)), "It has "+l.focalText()+".")
			return nil, nil, 0, false
		}
	}
	over, ok = ev.positive(overExpr, dimTime)
	return mv, on, over, ok
}

// time computes a time from the shot's start: seconds, or a timecode where the
// shot begins at one.
func (c *clock) time(ev *evaluator, x *lang.Expr) (float64, bool) {
	q, ok := ev.eval(x)
	if !ok {
		return 0, false
	}
	return c.timeOf(q, x.Range())
}

func (c *clock) timeOf(q quantity, at lang.Range) (float64, bool) {
	switch {
	case q.on == nil && q.dim == dimTime && math.Abs(q.v) <= longest:
		return q.v, true
	case q.dim == dimTimecode && c.b.shot.BeginsAt != "":
		frames := int64(q.v) - c.b.epoch
		if day := c.b.rate.Day(); frames < -day/2 {
			frames += day // past midnight
		}
		return c.b.rate.Seconds(frames), true
	case q.dim == dimTimecode:
		c.b.fail(at, "no-begins-at", "a timecode means nothing here: the shot does not say where it begins",
			"Write under the shot's header: begins at 01:00:00:00.")
	default:
		c.b.fail(at, "wrong-unit", fmt.Sprintf("a time is wanted here, and this is %s", q.what()), "As in 1.2 s, or 12 fr.")
	}
	return 0, false
}

// finish writes lines, cues, actions, pauses and blocking into the shot.
func (c *clock) finish() {
	sh := c.b.shot
	for i, it := range c.b.items {
		m := c.at[i]
		if !m.known {
			continue
		}
		start, end := plan.Number(m.start), plan.Number(m.end)
		switch s := it.stmt.(type) {
		case *lang.Speech:
			l := c.lines[i]
			l.listed = len(sh.Lines)
			sh.Lines = append(sh.Lines, plan.Line{
				Who: l.who, Text: valueOf(s.Words), Start: start, End: end,
				Estimated: s.Lasting == nil && s.To == nil && l.heard == nil, Words: l.drawn(),
			})
		case *lang.Cue:
			sh.Cues = append(sh.Cues, plan.Cue{Name: s.Name.Text, T: start})
		case *lang.Action:
			sh.Actions = append(sh.Actions, plan.Action{Text: valueOf(s.What), Start: start, End: end})
		case *lang.Pause:
			sh.Pauses = append(sh.Pauses, plan.Pause{Start: start, End: end})
		}
	}
}

// spread returns the words of a line over its time; none before it has one.
func (l *line) spread() []speech.Timed {
	if l.words == nil && l.timed {
		l.words = speech.Spread(l.tokens, l.start, l.end)
	}
	return l.words
}

// drawn returns the words of a line with the punctuation that stands about
// them.
func (l *line) drawn() []plan.Word {
	spread := l.spread()
	words := make([]plan.Word, len(spread))
	text := valueOf(l.stmt.Words)
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
