// Anchors: the moment that words, a speaker, a cue or a time stand for.

package interp

import (
	"cmp"
	"fmt"
	"slices"

	"pullscore/interp/speech"
	"pullscore/lang"
)

// An outcome is what asking for a moment comes to.
type outcome uint8

const (
	found  outcome = iota
	failed         // and reported
	waits          // for something that is being worked out
)

// anchor resolves an anchor that item k hangs on. focus tells that a move of
// the focus hangs there, so that the word is set heavy.
func (c *clock) anchor(k int, a *lang.Anchor, ev *evaluator, focus bool) (t float64, state outcome) {
	c.hung = nil
	t, state = c.moment(k, a, ev, focus)
	if state != found || a.Offset == nil {
		return t, state
	}
	dt, ok := ev.want(a.Offset, dimTime)
	if !ok {
		return 0, failed
	}
	return t + dt, found
}

func (c *clock) moment(k int, a *lang.Anchor, ev *evaluator, focus bool) (float64, outcome) {
	e := c.b.items[k].env
	switch a.Kind {
	case lang.AnchorTime:
		t, ok := c.time(ev, a.Time)
		if !ok {
			return 0, failed
		}
		return t, found
	case lang.AnchorWords:
		return c.words(k, a, e, focus)
	case lang.AnchorEnd:
		d, ok := c.b.who(a.Name, e, declSubject, declVoice)
		if !ok {
			return 0, failed
		}
		return c.speakerLine(k, d.name.Text, a.Range(), true)
	}
	return c.named(k, a, e, focus)
}

// named resolves a bare name: a parameter, a cue, a speaker or a let.
func (c *clock) named(k int, a *lang.Anchor, e *env, focus bool) (float64, outcome) {
	if arg, outer, ok := e.arg(a.Name.Text); ok {
		// The argument is read where the move is used, and its words are
		// looked for around the line that they hang on.
		save := c.b.items[k].env
		c.b.items[k].env = outer
		defer func() { c.b.items[k].env = save }()
		return c.anchor(k, arg, c.b.at(outer), focus)
	}
	d := c.b.find(a.Name.Text)
	if d == nil {
		d = c.cueInMove(a.Name.Text)
	}
	if d == nil {
		c.b.unknownAt(a.Range(), a.Name.Text, "cue, speaker or time", c.b.names(declCue, declSubject, declVoice, declLet))
		return 0, failed
	}
	switch d.kind {
	case declCue:
		return c.cueTime(k, d, a)
	case declLet:
		v := c.b.lets[d]
		if !v.ok {
			return 0, failed
		}
		t, ok := c.timeOf(v.q, a.Range())
		if !ok {
			return 0, failed
		}
		return t, found
	case declSubject, declVoice:
		return c.speakerLine(k, d.name.Text, a.Range(), false)
	}
	c.b.fail(a.Range(), "wrong-kind", fmt.Sprintf("%s is a %s, and a moment is wanted here", d.name.Text, d.kind), "")
	return 0, failed
}

// cueInMove finds a cue that stands in a named move which the shot uses.
func (c *clock) cueInMove(name string) *decl {
	for _, it := range c.b.items {
		if it.env == nil {
			continue
		}
		if kind, n := declared(it.stmt); n != nil && kind == declCue && n.Text == name {
			return &decl{kind: declCue, name: n, stmt: it.stmt}
		}
	}
	return nil
}

func (c *clock) cueTime(k int, d *decl, a *lang.Anchor) (float64, outcome) {
	cue, ok := d.stmt.(*lang.Cue)
	if !ok {
		return 0, failed // it could not be read
	}
	if i := c.cueItem(k, cue); i >= 0 {
		state := c.cue(i, cue)
		c.hung = c.at[i].hung
		return c.at[i].start, state
	}
	c.b.fail(a.Range(), "unknown-name", fmt.Sprintf("%s is no cue of this shot", d.name.Text), "")
	return 0, failed
}

// cueItem finds the item that is a cue, -1 where the shot has none. A move that
// is used several times has its cue several times: meant is that of the same
// use, else the last one above.
func (c *clock) cueItem(k int, cue lang.Statement) int {
	best := -1
	for i, it := range c.b.items {
		switch {
		case it.stmt != cue:
		case it.env == c.b.items[k].env:
			return i
		case best < 0 || i < k:
			best = i
		}
	}
	return best
}

// speakerLine is the start or end of a speaker's line: of the nearest line
// above or below if one of them alone is the speaker's, else of the only one.
func (c *clock) speakerLine(k int, who string, at lang.Range, end bool) (float64, outcome) {
	above, below := c.nearest(k)
	var l *line
	switch {
	case is(above, who) && is(below, who):
		return c.whichLine(who, at)
	case is(above, who):
		l = above
	case is(below, who):
		l = below
	default:
		for _, o := range c.inOrder {
			if is(o, who) {
				if l != nil {
					return c.whichLine(who, at)
				}
				l = o
			}
		}
	}
	if l == nil {
		c.b.fail(at, "no-line", fmt.Sprintf("%s has no line in this shot", who), "")
		return 0, failed
	}
	if !c.pass(l.item+1) && !c.ownTime(l) {
		return 0, waits
	}
	c.hung = l
	if end {
		return c.at[l.item].end, found
	}
	return c.at[l.item].start, found
}

// ownTime times a line that says its time itself, ahead of the clock.
func (c *clock) ownTime(l *line) bool {
	s := l.stmt
	m := &c.at[l.item]
	if c.waitsForCut(l) {
		return l.timed
	}
	if l.timed || s.On == nil && s.From == nil && !c.inCut(l) || m.stepping || m.failed {
		return l.timed
	}
	m.stepping = true
	defer func() { m.stepping = false }()
	speaker, spoke, gap := c.speaker, c.spoke, c.gap
	_, ok := c.speak(l.item, s, c.b.at(c.b.items[l.item].env), 0)
	c.speaker, c.spoke, c.gap = speaker, spoke, gap
	return ok && l.timed
}

func (c *clock) whichLine(who string, at lang.Range) (float64, outcome) {
	c.b.fail(at, "which-line", fmt.Sprintf("%s has several lines here", who),
		fmt.Sprintf("Say which by its words, as in %s %q.", lang.WriteName(who), "first words"))
	return 0, failed
}

func is(l *line, who string) bool { return l != nil && l.who == who }

// nearest returns the lines written next above and next below item k.
func (c *clock) nearest(k int) (above, below *line) {
	i, found := slices.BinarySearchFunc(c.inOrder, k, func(l *line, k int) int { return cmp.Compare(l.item, k) })
	if i > 0 {
		above = c.inOrder[i-1]
	}
	if found {
		i++
	}
	if i < len(c.inOrder) {
		below = c.inOrder[i]
	}
	return above, below
}

// A spotted is a place of words: the token of a line that they begin with.
type spotted struct {
	line  *line
	token int
}

// words resolves "WORDS" [n] and SPEAKER "WORDS" [n].
func (c *clock) words(k int, a *lang.Anchor, e *env, focus bool) (float64, outcome) {
	if a.Words == nil {
		return 0, failed
	}
	if n := c.nameMeant(a); n != nil {
		return c.named(k, n, e, focus)
	}
	var hits []spotted
	var ok bool
	if a.Name != nil {
		hits, ok = c.inLinesOf(a, e)
	} else {
		hits, ok = c.inNearest(k, a)
	}
	if !ok {
		return 0, failed
	}
	hit, ok := c.pick(k, a, hits)
	if !ok {
		return 0, failed
	}
	if focus {
		hit.line.hangs[hit.token] = true
	}
	if !c.pass(hit.line.item+1) && !c.ownTime(hit.line) {
		return 0, waits
	}
	c.hung = hit.line
	words := hit.line.spread()
	if hit.token >= len(words) {
		return 0, failed // the line has no time, which has been told
	}
	return words[hit.token].Start, found
}

// nameMeant returns the anchor of a name that stands in quotes because it has
// to, as "MRS. DALE" does: words that no line of the shot has, and that are the
// name of a speaker or a cue. It returns nil where words are meant.
func (c *clock) nameMeant(a *lang.Anchor) *lang.Anchor {
	if a.Name != nil || a.Nth > 0 {
		return nil
	}
	d := c.b.find(a.Words.Value)
	if d == nil || d.kind > declCue {
		return nil
	}
	words := phrase(a)
	for _, l := range c.inOrder {
		if len(occurrences(l, words)) > 0 {
			return nil
		}
	}
	return &lang.Anchor{Node: a.Node, Kind: lang.AnchorName, Name: &lang.Name{Node: a.Words.Node, Text: a.Words.Value, Quoted: true}}
}

// occurrences finds a phrase in a line; nil is no line.
func occurrences(l *line, phrase speech.Folded) []spotted {
	if l == nil {
		return nil
	}
	if l.folded == nil {
		l.folded = speech.Fold(l.tokens)
	}
	var hits []spotted
	for _, i := range l.folded.Find(phrase) {
		hits = append(hits, spotted{l, i})
	}
	return hits
}

// phrase is the words of an anchor as they are looked for.
func phrase(a *lang.Anchor) speech.Folded { return speech.Fold(speech.Split(a.Words.Value)) }

// inLinesOf looks in all lines of a speaker.
func (c *clock) inLinesOf(a *lang.Anchor, e *env) (hits []spotted, ok bool) {
	d, ok := c.b.who(a.Name, e, declSubject, declVoice)
	if !ok {
		return nil, false
	}
	spoken, words := false, phrase(a)
	for _, l := range c.inOrder {
		if is(l, d.name.Text) {
			spoken = true
			hits = append(hits, occurrences(l, words)...)
		}
	}
	if !spoken {
		c.b.fail(a.Range(), "no-line", fmt.Sprintf("%s has no line in this shot", d.name.Text), "")
		return nil, false
	}
	return hits, true
}

// inNearest looks in the nearest lines above and below; found in both, the
// words do not say which.
func (c *clock) inNearest(k int, a *lang.Anchor) (hits []spotted, ok bool) {
	above, below := c.nearest(k)
	n, words := max(a.Nth, 1), phrase(a)
	up, down := occurrences(above, words), occurrences(below, words)
	if len(up) >= n && len(down) >= n {
		c.b.report(lang.Diagnostic{
			Code: "word-twice", Severity: lang.Error, Range: a.Range(),
			Message: fmt.Sprintf("%q stands in the line above and in the one below", a.Words.Value),
			Detail:  "Say whose line: " + c.sayWhich(a, above) + ", or " + c.sayWhich(a, below) + ".",
			Related: []lang.Related{{Message: "here", Range: above.stmt.Range()}, {Message: "and here", Range: below.stmt.Range()}},
		})
		return nil, false
	}
	if len(up) >= n {
		return up, true
	}
	if len(down) >= n {
		return down, true
	}
	return append(up, down...), true
}

// sayWhich writes the anchor so that it means the words in that line alone.
func (c *clock) sayWhich(a *lang.Anchor, l *line) string {
	before, total, words := 0, 0, phrase(a)
	for _, o := range c.inOrder {
		if is(o, l.who) {
			n := len(occurrences(o, words))
			total += n
			if o.item < l.item {
				before += n
			}
		}
	}
	s := fmt.Sprintf("%s %q", lang.WriteName(l.who), a.Words.Value)
	if total > 1 {
		s += fmt.Sprintf(" %d", before+max(a.Nth, 1))
	}
	return s
}

// pick chooses among the places that words were found at.
func (c *clock) pick(k int, a *lang.Anchor, hits []spotted) (spotted, bool) {
	words := fmt.Sprintf("%q", a.Words.Value)
	if a.Name != nil {
		words = lang.WriteName(a.Name.Text) + " " + words
	}
	switch {
	case len(hits) == 0 && c.besideBad(k): // one mistake is told once
	case len(hits) == 0:
		c.b.fail(a.Range(), "word-not-found", c.notFound(a), c.nearWord(k, a))
	case a.Nth > len(hits):
		c.b.fail(a.Range(), "word-not-found", fmt.Sprintf("%q does not stand there %d times", a.Words.Value, a.Nth),
			fmt.Sprintf("It stands there %d times.", len(hits)))
	case a.Nth == 0 && len(hits) > 1:
		c.b.fail(a.Range(), "word-twice", fmt.Sprintf("%q stands there %d times", a.Words.Value, len(hits)),
			fmt.Sprintf("Say which: %s 1, or %s 2.", words, words))
	default:
		return hits[max(a.Nth, 1)-1], true
	}
	return spotted{}, false
}

func (c *clock) notFound(a *lang.Anchor) string {
	if a.Name != nil {
		return fmt.Sprintf("no line of %s has %q", a.Name.Text, a.Words.Value)
	}
	return fmt.Sprintf("neither the line above nor the one below has %q", a.Words.Value)
}

// nearWord offers a near miss from the lines looked in, or says in which
// speaker's lines the words do stand.
func (c *clock) nearWord(k int, a *lang.Anchor) string {
	for _, l := range c.inOrder {
		if l != nil && l.who != "" && len(occurrences(l, phrase(a))) > 0 {
			return fmt.Sprintf("It stands in a line of %s: write %s.", l.who, c.sayWhich(a, l))
		}
	}
	var among []string
	above, below := c.nearest(k)
	for _, l := range []*line{above, below} {
		if l != nil {
			for _, t := range l.tokens {
				among = append(among, t.Text)
			}
		}
	}
	if near, ok := lang.Nearest(a.Words.Value, among); ok {
		return fmt.Sprintf("Did you mean %q?", near)
	}
	switch {
	case above != nil:
		return fmt.Sprintf("The line above is: %q.", valueOf(above.stmt.Words))
	case below != nil:
		return fmt.Sprintf("The line below is: %q.", valueOf(below.stmt.Words))
	}
	return "There is no line."
}

// besideBad tells whether a line next to item k could not be read: the words
// may stand in that one.
func (c *clock) besideBad(k int) bool {
	for _, step := range []int{-1, 1} {
		for i := k + step; i >= 0 && i < len(c.lines) && c.lines[i] == nil; i += step {
			if _, bad := c.b.items[i].stmt.(*lang.Bad); bad {
				return true
			}
		}
	}
	return false
}
