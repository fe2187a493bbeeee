// Anchors: the moment that words, a speaker, a cue or a time stand for.

package clock

import (
	"fmt"

	"pullscore/interp/clock/spoken"
	"pullscore/interp/names"
	"pullscore/lang"
)

// A State is what asking for a moment comes to.
type State uint8

// The states.
const (
	Found  State = iota
	Failed       // and reported
	Waits        // for something that is being worked out
)

// A When is what a moment comes to.
type When struct {
	T     float64 // seconds from the shot's start, where it is found
	Line  *Line   // that it hangs on; nil: none
	State State
	// Where it waits: for the clock to have passed all items before Until, or
	// for Of.
	Until int
	Of    *moment
}

// failed is a moment that cannot be found, which has been reported.
var failed = When{State: Failed}

// at is a moment that hangs on no line.
func at(t float64) When { return When{T: t} }

// until is a moment that waits for the clock to pass all items before n.
func until(n int) When { return When{State: Waits, Until: n} }

// An ask is who asks for a moment.
type ask struct {
	item  int          // that hangs on it
	in    names.Reader // of its anchor: an argument stands where the move is used
	focus bool         // a move of the focus hangs there, so that the word is set heavy
	ahead bool         // as pass has it
}

// spoken returns who asks for a line or for words.
func (q ask) spoken() spoken.Ask { return spoken.Ask{Item: q.item, In: q.in} }

// anchor resolves an anchor.
func (c *Clock) anchor(q ask, a *lang.Anchor) When {
	w := c.moment(q, a)
	if w.State != Found || a.Offset == nil {
		return w
	}
	dt, ok := q.in.Want(a.Offset, names.DimTime)
	if !ok {
		return failed
	}
	w.T += dt
	return w
}

func (c *Clock) moment(q ask, a *lang.Anchor) When {
	switch a.Kind {
	case lang.AnchorTime:
		t, ok := c.time(q.in, a.Time)
		if !ok {
			return failed
		}
		return at(t)
	case lang.AnchorWords:
		return c.words(q, a)
	case lang.AnchorEnd:
		a = c.endMeant(q, a)
		if a.Words != nil {
			return c.words(q, a)
		}
		return c.end(q, a)
	}
	return c.named(q, a)
}

// named resolves a bare name: a parameter, a cue, a speaker or a let.
func (c *Clock) named(q ask, a *lang.Anchor) When {
	if arg, outer, ok := q.in.Arg(a.Name.Text); ok {
		if arg == nil {
			return failed
		}
		// The argument is read where the move is used, and its words are
		// looked for around the line that they hang on.
		q.in = outer
		return c.anchor(q, arg)
	}
	d := c.with.Lex.Find(a.Name.Text)
	if d == nil {
		d = c.with.Lex.Film.Record.Cue(a.Name.Range(), c.cueInMove(a.Name.Text))
	}
	if d == nil {
		q.in.Undeclared(a.Range(), a.Name.Text, "cue, speaker or time", names.DeclCue, names.DeclSubject, names.DeclVoice, names.DeclLet)
		return failed
	}
	if c.with.Lex.GroupOf(d) != nil {
		q.in.Fail(a.Range(), "wrong-kind", fmt.Sprintf("%s is a group; expected a moment", a.Name.Text), "Name one of them: the moment is when that one's line starts.")
		return failed
	}
	switch d.Kind {
	case names.DeclCue:
		return c.cueTime(q, d, a.Range())
	case names.DeclLet:
		v, ok := c.with.Lex.Lets[d]
		if !ok || !v.Ok {
			return failed
		}
		t, ok := c.timeOf(q.in, v.Q, a.Range())
		if !ok {
			return failed
		}
		return at(t)
	case names.DeclSubject, names.DeclVoice:
		return c.speakerLine(q, d.Name.Text, a.Range(), false)
	}
	q.in.Fail(a.Range(), "wrong-kind", fmt.Sprintf("%s is a %s; expected a moment", d.Name.Text, d.Kind), "")
	return failed
}

// endMeant returns an anchor of an end with its text as a name where that is what
// it is: a text alone is the name of somebody before it is words, and what an
// action says where no line has the words.
func (c *Clock) endMeant(q ask, a *lang.Anchor) *lang.Anchor {
	if a.Words == nil || a.Name != nil || a.Nth > 0 {
		return a
	}
	_, _, isParameter := q.in.Arg(a.Words.Value)
	isAction := len(c.ends().actions[folded(a.Words.Value)]) > 0 && !c.Has(a.Words.Value)
	if !isParameter && !isAction && c.with.Lex.Find(a.Words.Value) == nil {
		return a
	}
	c.with.Lex.Film.Record.Name(a.Words.Range())
	meant := *a
	meant.Words, meant.Name = nil, &lang.Name{Node: a.Words.Node, Text: a.Words.Value, Quoted: true}
	return &meant
}

// speakerLine is the start or end of a speaker's line: of the nearest line
// above or below if one of them alone is the speaker's, else of the only one.
func (c *Clock) speakerLine(q ask, who string, where lang.Range, end bool) When {
	l, ok := c.LineOf(q.spoken(), who, where)
	if !ok {
		return failed
	}
	w := c.timed(l, q.ahead)
	if w.State == Found && end {
		w.T = c.At[l.Item].EndS
	}
	return w
}
