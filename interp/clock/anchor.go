// Anchors: the moment that words, a speaker, a cue or a time stand for.

package clock

import (
	"cmp"
	"fmt"
	"slices"

	"pullscore/interp/names"
	"pullscore/interp/speech"
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

// anchor resolves an anchor that item k hangs on. focus tells that a move of
// the focus hangs there, so that the word is set heavy.
func (c *Clock) anchor(k int, a *lang.Anchor, ev *names.Evaluator, focus bool) When {
	w := c.moment(k, a, ev, focus)
	if w.State != Found || a.Offset == nil {
		return w
	}
	dt, ok := ev.Want(a.Offset, names.DimTime)
	if !ok {
		return failed
	}
	w.T += dt
	return w
}

func (c *Clock) moment(k int, a *lang.Anchor, ev *names.Evaluator, focus bool) When {
	e := c.b.Items[k].Env
	switch a.Kind {
	case lang.AnchorTime:
		t, ok := c.time(ev, a.Time)
		if !ok {
			return failed
		}
		return at(t)
	case lang.AnchorWords:
		return c.words(k, a, e, focus)
	case lang.AnchorEnd:
		a = c.endMeant(a, e)
		if a.Words != nil {
			return c.words(k, a, e, focus)
		}
		d, ok := c.b.Who(a.Name, e, names.DeclSubject, names.DeclVoice)
		if !ok {
			return failed
		}
		return c.speakerLine(k, d.Name.Text, a.Range(), true)
	}
	return c.named(k, a, e, focus)
}

// named resolves a bare name: a parameter, a cue, a speaker or a let.
func (c *Clock) named(k int, a *lang.Anchor, e *names.Env, focus bool) When {
	if arg, outer, ok := e.Arg(a.Name.Text); ok {
		if arg == nil {
			return failed
		}
		// The argument is read where the move is used, and its words are
		// looked for around the line that they hang on.
		save := c.b.Items[k].Env
		c.b.Items[k].Env = outer
		defer func() { c.b.Items[k].Env = save }()
		return c.anchor(k, arg, c.b.At(outer), focus)
	}
	d := c.b.Find(a.Name.Text)
	if d == nil {
		d = c.cueInMove(a.Name.Text)
	}
	if d == nil {
		c.b.Undeclared(a.Range(), a.Name.Text, "cue, speaker or time", names.DeclCue, names.DeclSubject, names.DeclVoice, names.DeclLet)
		return failed
	}
	switch d.Kind {
	case names.DeclCue:
		return c.cueTime(k, d, a)
	case names.DeclLet:
		v, ok := c.b.Lets[d]
		if !ok || !v.Ok {
			return failed
		}
		t, ok := c.timeOf(v.Q, a.Range())
		if !ok {
			return failed
		}
		return at(t)
	case names.DeclSubject, names.DeclVoice:
		return c.speakerLine(k, d.Name.Text, a.Range(), false)
	}
	c.b.Fail(a.Range(), "wrong-kind", fmt.Sprintf("%s is a %s, and a moment is wanted here", d.Name.Text, d.Kind), "")
	return failed
}

// cueInMove finds a cue that stands in a named move which the shot uses.
func (c *Clock) cueInMove(name string) *names.Decl {
	for _, i := range c.cues.called[name] {
		if it := c.b.Items[i]; it.Env != nil {
			kind, n := names.Declared(it.Stmt)
			return &names.Decl{Kind: kind, Name: n, Stmt: it.Stmt}
		}
	}
	return nil
}

func (c *Clock) cueTime(k int, d *names.Decl, a *lang.Anchor) When {
	cue, ok := d.Stmt.(*lang.Cue)
	if !ok {
		return failed // it could not be read
	}
	if i := c.cueItem(k, cue); i >= 0 {
		return c.cue(i, cue)
	}
	c.b.Fail(a.Range(), "unknown-name", fmt.Sprintf("%s is no cue of this shot", d.Name.Text), "")
	return failed
}

// cueItem finds the item that is a cue, -1 where the shot has none. A move that
// is used several times has its cue several times: meant is that of the same
// use, else the last one above.
func (c *Clock) cueItem(k int, cue *lang.Cue) int {
	if i, ok := c.cues.use[cueUse{cue, c.b.Items[k].Env}]; ok {
		return i
	}
	list := c.cues.items[cue]
	if len(list) == 0 {
		return -1
	}
	n, _ := slices.BinarySearch(list, k)
	return list[max(n-1, 0)]
}

// cues are where the cues of a shot stand, those of moves as often as they are
// used.
type cues struct {
	items  map[*lang.Cue][]int
	use    map[cueUse]int   // the first in an environment
	called map[string][]int // by name, those that could not be read too
}

// A cueUse is a cue in one use of a move.
type cueUse struct {
	cue *lang.Cue
	env *names.Env
}

func cuesOf(items []names.Item) cues {
	list := cues{items: map[*lang.Cue][]int{}, use: map[cueUse]int{}, called: map[string][]int{}}
	for i, it := range items {
		kind, name := names.Declared(it.Stmt)
		if name == nil || kind != names.DeclCue {
			continue
		}
		list.called[name.Text] = append(list.called[name.Text], i)
		cue, ok := it.Stmt.(*lang.Cue)
		if !ok {
			continue
		}
		list.items[cue] = append(list.items[cue], i)
		if key := (cueUse{cue, it.Env}); !has(list.use, key) {
			list.use[key] = i
		}
	}
	return list
}

func has[K comparable, V any](m map[K]V, key K) bool {
	_, ok := m[key]
	return ok
}

// speakerLine is the start or end of a speaker's line: of the nearest line
// above or below if one of them alone is the speaker's, else of the only one.
func (c *Clock) speakerLine(k int, who string, where lang.Range, end bool) When {
	above, below := c.nearest(k)
	var l *Line
	switch {
	case is(above, who) && is(below, who) && c.besideBad(k):
		return failed // the line between may be the one that is meant
	case is(above, who) && is(below, who):
		return c.whichLine(who, where)
	case is(above, who):
		l = above
	case is(below, who):
		l = below
	default:
		switch lines := c.speaks[who]; len(lines) {
		case 0:
		case 1:
			l = lines[0]
		default:
			if c.besideBad(k) {
				return failed
			}
			return c.whichLine(who, where)
		}
	}
	if l == nil {
		c.noLine(who, where)
		return failed
	}
	if !c.pass(l.Item+1) && !c.ownTime(l) {
		return until(l.Item + 1)
	}
	if c.At[l.Item].Failed {
		return failed
	}
	if end {
		return When{T: c.At[l.Item].EndS, Line: l}
	}
	return When{T: c.At[l.Item].StartS, Line: l}
}

// noLine tells of somebody who says nothing, unless there is a line that could not
// be read, or nobody knows whose it is.
func (c *Clock) noLine(who string, at lang.Range) {
	if !c.b.Here.Any(speechWord) && len(c.speaks[""]) == 0 {
		c.b.Fail(at, "no-line", fmt.Sprintf("%s has no line in this shot", who), "")
	}
}

// speechWord is what marks a spoken line, as a line that could not be read has
// it for its keyword.
const speechWord = ":"

// ownTime times a line that says its time itself, ahead of the clock.
func (c *Clock) ownTime(l *Line) bool {
	s := l.Stmt
	m := &c.At[l.Item]
	if c.waitsForCut(l) {
		return l.Timed
	}
	if l.Timed || s.On == nil && s.From == nil && !c.inCut(l) || m.stepping || m.Failed {
		return l.Timed
	}
	m.stepping = true
	defer func() { m.stepping = false }()
	speaker, spoke, gap := c.speaker, c.spoke, c.gap
	_, ok := c.speak(l.Item, s, c.b.At(c.b.Items[l.Item].Env), 0)
	c.speaker, c.spoke, c.gap = speaker, spoke, gap
	return ok && l.Timed
}

func (c *Clock) whichLine(who string, where lang.Range) When {
	c.b.Fail(where, "which-line", fmt.Sprintf("%s has several lines here", who),
		fmt.Sprintf("Say which by its words, as in %s %q.", lang.WriteName(who), "first words"))
	return failed
}

func is(l *Line, who string) bool { return l != nil && l.Who == who }

// nearest returns the lines written next above and next below item k.
func (c *Clock) nearest(k int) (above, below *Line) {
	i, found := slices.BinarySearchFunc(c.InOrder, k, func(l *Line, k int) int { return cmp.Compare(l.Item, k) })
	if i > 0 {
		above = c.InOrder[i-1]
	}
	if found {
		i++
	}
	if i < len(c.InOrder) {
		below = c.InOrder[i]
	}
	return above, below
}

// words resolves "WORDS" [n] and SPEAKER "WORDS" [n].
func (c *Clock) words(k int, a *lang.Anchor, e *names.Env, focus bool) When {
	if a.Words == nil {
		return failed
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
		return failed
	}
	hit, ok := c.pick(k, a, hits)
	if !ok {
		return failed
	}
	if focus {
		hit.line.hangs[hit.token] = true
	}
	if !c.pass(hit.line.Item+1) && !c.ownTime(hit.line) {
		return until(hit.line.Item + 1)
	}
	if c.At[hit.line.Item].Failed {
		return failed
	}
	words := hit.line.spread()
	if hit.token >= len(words) {
		return failed // the line has no time, which has been told
	}
	if a.Kind == lang.AnchorEnd {
		last := min(hit.token+len(phrase(a)), len(words)) - 1
		return When{T: words[last].End, Line: hit.line}
	}
	return When{T: words[hit.token].Start, Line: hit.line}
}

// endMeant returns an anchor of an end with its text as a name where that is what
// it is: a text alone is the name of somebody before it is words.
func (c *Clock) endMeant(a *lang.Anchor, e *names.Env) *lang.Anchor {
	if a.Words == nil || a.Name != nil || a.Nth > 0 {
		return a
	}
	if _, _, isParameter := e.Arg(a.Words.Value); !isParameter && c.b.Find(a.Words.Value) == nil {
		return a
	}
	meant := *a
	meant.Words, meant.Name = nil, &lang.Name{Node: a.Words.Node, Text: a.Words.Value, Quoted: true}
	return &meant
}

// nameMeant returns the anchor of a name that stands in quotes because it has
// to, as "MRS. DALE" does: words that no line of the shot has, and that are the
// name of a speaker or a cue. It returns nil where words are meant.
func (c *Clock) nameMeant(a *lang.Anchor) *lang.Anchor {
	if a.Name != nil || a.Nth > 0 || a.Kind == lang.AnchorEnd {
		return nil
	}
	d := c.b.Find(a.Words.Value)
	if d == nil || d.Kind > names.DeclCue {
		return nil
	}
	if len(c.said().all(phrase(a))) > 0 {
		return nil
	}
	return &lang.Anchor{Node: a.Node, Kind: lang.AnchorName, Name: &lang.Name{Node: a.Words.Node, Text: a.Words.Value, Quoted: true}}
}

// occurrences finds a phrase in a line; nil is no line.
func occurrences(l *Line, phrase speech.Folded) []spotted {
	if l == nil {
		return nil
	}
	var hits []spotted
	for _, i := range l.fold().Find(phrase) {
		hits = append(hits, spotted{l, i})
	}
	return hits
}

// fold returns the words of a line as they are compared.
func (l *Line) fold() speech.Folded {
	if l.folded == nil {
		l.folded = speech.Fold(l.Tokens)
	}
	return l.folded
}

// phrase is the words of an anchor as they are looked for.
func phrase(a *lang.Anchor) speech.Folded { return speech.Fold(speech.Split(a.Words.Value)) }

// inLinesOf looks in all lines of a speaker.
func (c *Clock) inLinesOf(a *lang.Anchor, e *names.Env) (hits []spotted, ok bool) {
	d, ok := c.b.Who(a.Name, e, names.DeclSubject, names.DeclVoice)
	if !ok {
		return nil, false
	}
	if len(c.speaks[d.Name.Text]) == 0 {
		c.noLine(d.Name.Text, a.Range())
		return nil, false
	}
	return c.said().by(d.Name.Text, phrase(a)), true
}

// inNearest looks in the nearest lines above and below; found in both, the
// words do not say which.
func (c *Clock) inNearest(k int, a *lang.Anchor) (hits []spotted, ok bool) {
	above, below := c.nearest(k)
	n, words := max(a.Nth, 1), phrase(a)
	up, down := occurrences(above, words), occurrences(below, words)
	if len(up) >= n && len(down) >= n {
		c.b.Report(lang.Diagnostic{
			Code: "word-twice", Severity: lang.Error, Range: a.Range(),
			Message: fmt.Sprintf("%q stands in the line above and in the one below", a.Words.Value),
			Detail:  "Say whose line: " + c.sayWhich(a, above) + ", or " + c.sayWhich(a, below) + ".",
			Related: []lang.Related{{Message: "here", Range: above.Stmt.Range()}, {Message: "and here", Range: below.Stmt.Range()}},
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
func (c *Clock) sayWhich(a *lang.Anchor, l *Line) string {
	hits := c.said().by(l.Who, phrase(a))
	s := fmt.Sprintf("%s %q", lang.WriteName(l.Who), a.Words.Value)
	if len(hits) > 1 {
		s += fmt.Sprintf(" %d", before(hits, l.Item)+max(a.Nth, 1))
	}
	return s
}

// pick chooses among the places that words were found at.
func (c *Clock) pick(k int, a *lang.Anchor, hits []spotted) (spotted, bool) {
	words := fmt.Sprintf("%q", a.Words.Value)
	if a.Name != nil {
		words = lang.WriteName(a.Name.Text) + " " + words
	}
	switch {
	case len(hits) == 0 && (c.besideBad(k) || a.Name != nil && c.b.Here.Any(speechWord)): // one mistake is told once
	case len(hits) == 0:
		c.b.Fail(a.Range(), "word-not-found", c.notFound(a), c.nearWord(k, a))
	case a.Nth > len(hits):
		c.b.Fail(a.Range(), "word-not-found", fmt.Sprintf("%q does not stand there %d times", a.Words.Value, a.Nth),
			fmt.Sprintf("It stands there %d times.", len(hits)))
	case a.Nth == 0 && len(hits) > 1:
		c.b.Fail(a.Range(), "word-twice", fmt.Sprintf("%q stands there %d times", a.Words.Value, len(hits)),
			fmt.Sprintf("Say which: %s 1, or %s 2.", words, words))
	default:
		return hits[max(a.Nth, 1)-1], true
	}
	return spotted{}, false
}

func (c *Clock) notFound(a *lang.Anchor) string {
	if a.Name != nil {
		return fmt.Sprintf("no line of %s has %q", a.Name.Text, a.Words.Value)
	}
	return fmt.Sprintf("neither the line above nor the one below has %q", a.Words.Value)
}

// nearWord offers a near miss from the lines looked in, or says in which
// speaker's lines the words do stand.
func (c *Clock) nearWord(k int, a *lang.Anchor) string {
	if i := slices.IndexFunc(c.said().all(phrase(a)), func(h spotted) bool { return h.line.Who != "" }); i >= 0 {
		l := c.said().all(phrase(a))[i].line
		return fmt.Sprintf("It stands in a line of %s: write %s.", l.Who, c.sayWhich(a, l))
	}
	var among []string
	above, below := c.nearest(k)
	for _, l := range []*Line{above, below} {
		if l != nil {
			for _, t := range l.Tokens {
				among = append(among, t.Text)
			}
		}
	}
	if near, ok := lang.Nearest(a.Words.Value, among); ok {
		return fmt.Sprintf("Did you mean %q?", near)
	}
	switch {
	case above != nil:
		return fmt.Sprintf("The line above is: %q.", names.ValueOf(above.Stmt.Words))
	case below != nil:
		return fmt.Sprintf("The line below is: %q.", names.ValueOf(below.Stmt.Words))
	}
	return "There is no line."
}

// besideBad tells whether a line next to item k could not be read, or nobody
// knows whose it is: it may be the one that is meant.
func (c *Clock) besideBad(k int) bool {
	above, below := c.nearest(k)
	if is(above, "") || is(below, "") {
		return true
	}
	i, _ := slices.BinarySearch(c.bad, k)
	if i > 0 && (above == nil || c.bad[i-1] > above.Item) {
		return true
	}
	for i < len(c.bad) && c.bad[i] <= k {
		i++
	}
	return i < len(c.bad) && (below == nil || c.bad[i] < below.Item)
}
