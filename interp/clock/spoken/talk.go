// The talk of a shot: all its lines, and which of them a name stands for.

package spoken

import (
	"cmp"
	"fmt"
	"slices"
	"sync"

	"pullscore/interp/names"
	"pullscore/interp/speech"
	"pullscore/lang"
)

// A Talk is all that is said in a shot.
type Talk struct {
	Lines   []*Line // by item; nil where an item is no line
	InOrder []*Line // the same in their order

	lex    *names.Lexicon
	speaks map[string][]*Line // the same by who speaks
	bad    []int              // the items that may be spoken lines, and could not be read
	said   func() *said       // the words of all lines, once they are asked for
	wide   Wide
}

// Wide says which items look in all lines, and not in those next above and below them:
// those of a shot whose lines are a scene's.
type Wide struct {
	From int    // the first such item
	Out  []bool // by item: a line that the shot does not have
}

// looks reports whether an item looks in all lines.
func (w *Wide) looks(item int) bool { return item >= w.From }

// has reports whether an item is no line that the shot does not have.
func (w *Wide) has(item int) bool { return item >= len(w.Out) || !w.Out[item] }

// An Ask is who asks for a line or for words.
type Ask struct {
	Item int          // that hangs on them
	In   names.Reader // of its anchor
}

// speechWord is what marks a spoken line, as a line that could not be read has
// it for its keyword.
const speechWord = ":"

// Read returns the talk of items, with the words of every line, so that anchors find
// them.
func Read(items []names.Item, lex *names.Lexicon, tokens func(*lang.Text) []speech.Token, wide Wide) *Talk {
	t := &Talk{Lines: make([]*Line, len(items)), lex: lex, speaks: map[string][]*Line{}, wide: wide}
	for i := range items {
		it := &items[i]
		if bad, ok := it.Stmt.(*lang.Bad); ok && (bad.Keyword == speechWord || bad.Keyword == "") {
			t.bad = append(t.bad, i)
		}
		s, ok := it.Stmt.(*lang.Speech)
		if !ok {
			continue
		}
		l := &Line{Item: i, Stmt: s, Tokens: tokens(s.Words), Hangs: map[int]bool{}}
		if d, ok := it.In.Who(s.Who, names.DeclSubject, names.DeclVoice); ok {
			l.Who = d.Name.Text
		}
		if t.Lines[i] = l; !wide.has(i) {
			continue
		}
		t.InOrder = append(t.InOrder, l)
		t.speaks[l.Who] = append(t.speaks[l.Who], l)
	}
	t.said = sync.OnceValue(func() *said { return newSaid(t.InOrder) })
	return t
}

// Of returns the lines of a speaker.
func (t *Talk) Of(who string) []*Line { return t.speaks[who] }

// Has reports whether a line has words as they are written.
func (t *Talk) Has(words string) bool {
	return len(t.said().all(speech.NewPhrase(words), speech.ByWords)) > 0
}

// is tells whether a line is somebody's.
func is(l *Line, who string) bool { return l != nil && l.Who == who }

// nearest returns the lines written next above and next below item k.
func (t *Talk) nearest(k int) (above, below *Line) {
	i, found := slices.BinarySearchFunc(t.InOrder, k, func(l *Line, k int) int { return cmp.Compare(l.Item, k) })
	if i > 0 {
		above = t.InOrder[i-1]
	}
	if found {
		i++
	}
	if i < len(t.InOrder) {
		below = t.InOrder[i]
	}
	return above, below
}

// besideBad tells whether a line next to item k could not be read, or nobody
// knows whose it is: it may be the one that is meant.
func (t *Talk) besideBad(k int) bool {
	if t.wide.looks(k) {
		return len(t.bad) > 0 || len(t.speaks[""]) > 0
	}
	above, below := t.nearest(k)
	if is(above, "") || is(below, "") {
		return true
	}
	i, _ := slices.BinarySearch(t.bad, k)
	if i > 0 && (above == nil || t.bad[i-1] > above.Item) {
		return true
	}
	if i < len(t.bad) && t.bad[i] == k {
		i++
	}
	return i < len(t.bad) && (below == nil || t.bad[i] < below.Item)
}

// LineOf returns the line that a speaker stands for: the nearest above or below if one of
// them alone is the speaker's, else the only one. ok is false where there is none, or
// nobody knows which, and it reports that.
func (t *Talk) LineOf(q Ask, who string, where lang.Range) (l *Line, ok bool) {
	above, below := t.nearest(q.Item)
	if t.wide.looks(q.Item) {
		above, below = nil, nil
	}
	lines := t.speaks[who]
	switch {
	case is(above, who) && !is(below, who):
		l = above
	case is(below, who) && !is(above, who):
		l = below
	case len(lines) == 1:
		l = lines[0]
	case len(lines) == 0:
		t.noLine(q, who, where)
		return nil, false
	default:
		if !t.besideBad(q.Item) { // else the line that cannot be read may be meant
			q.In.Fail(where, "which-line", fmt.Sprintf("%s has several lines here", who),
				fmt.Sprintf("Say which by its words, as in %s %q.", lang.WriteName(who), "first words"))
		}
		return nil, false
	}
	return l, true
}

// noLine tells of somebody who says nothing, unless there is a line that could not
// be read, or nobody knows whose it is.
func (t *Talk) noLine(q Ask, who string, where lang.Range) {
	if !t.lex.Here.Any(speechWord) && len(t.speaks[""]) == 0 {
		q.In.Fail(where, "no-line", fmt.Sprintf("%s has no line in this shot", who), "")
	}
}
