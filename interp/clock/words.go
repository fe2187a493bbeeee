// Words: when a phrase that a moment hangs on is said.

package clock

import (
	"pullscore/interp/names"
	"pullscore/lang"
)

// words resolves "WORDS" [n] and SPEAKER "WORDS" [n], and the ends of these. The
// number counts within one line.
func (c *Clock) words(q ask, a *lang.Anchor) When {
	if a.Words == nil {
		return failed
	}
	if n := c.nameMeant(a); n != nil {
		return c.named(q, n)
	}
	hit, ok := c.Find(q.spoken(), a)
	if !ok {
		return failed
	}
	c.with.Lex.Film.Record.Say(a.Words, hit.Line.Stmt.Words, hit.From.Word, hit.To.Word)
	if q.focus {
		hit.Line.Hangs[hit.From.Word] = true
	}
	if w := c.timed(hit.Line, q.ahead); w.State != Found {
		return w
	}
	words := hit.Line.Spread()
	if hit.To.Word >= len(words) {
		return failed // the line has no time, which has been told
	}
	if a.Kind == lang.AnchorEnd {
		return When{T: hit.To.In(words), Line: hit.Line}
	}
	return When{T: hit.From.In(words), Line: hit.Line}
}

// nameMeant returns the anchor of a name that stands in quotes because it has
// to, as "MRS. DALE" does: words that no line of the shot has, and that are the
// name of a speaker or a cue. It returns nil where words are meant.
func (c *Clock) nameMeant(a *lang.Anchor) *lang.Anchor {
	if a.Name != nil || a.Nth > 0 || a.Kind == lang.AnchorEnd {
		return nil
	}
	d := c.with.Lex.Find(a.Words.Value)
	if d == nil || d.Kind > names.DeclCue {
		return nil
	}
	if c.Has(a.Words.Value) {
		return nil
	}
	c.with.Lex.Film.Record.Name(a.Words.Range())
	return &lang.Anchor{Node: a.Node, Kind: lang.AnchorName, Name: &lang.Name{Node: a.Words.Node, Text: a.Words.Value, Quoted: true}}
}
