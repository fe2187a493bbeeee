// Anchors: the words that racks hang on.

package script

import (
	"fmt"
	"slices"
	"strings"

	"pullscore/interp/speech"
	"pullscore/lang"
	"pullscore/lang/fountain"
)

// An utterance is a beat with its words. Its Who is one name: where several
// speak together the first has the line.
type utterance struct {
	fountain.Beat
	with  []string // who else speaks
	text  string
	words []speech.Token
	folds speech.Folded
}

// split splits the beats of a scene into words.
func split(beats []fountain.Beat) []utterance {
	list := make([]utterance, len(beats))
	for i, b := range beats {
		u := utterance{Beat: b}
		if b.Who != "" {
			names := fountain.Speakers(b.Who)
			u.Who, u.with = names[0], names[1:]
		}
		u.text = strings.Join(strings.Fields(b.Text()), " ") // a note may have stood between
		u.words = speech.Split(u.text)
		u.folds = speech.Fold(u.words)
		list[i] = u
	}
	return list
}

// mostWords is with how many words an anchor names a line at most: more of them
// are no longer a name that one can read.
const mostWords = 4

// anchors names words of a scene so that each name means one word there.
type anchors struct {
	said []utterance
	in   map[string]*count // the phrases that may become anchors, by their key
	key  []byte            // of the phrase last asked for
}

// A count is how many lines of a speaker have a phrase, and the last of them.
type count struct{ lines, last int }

func newAnchors(scene []utterance) *anchors {
	a := &anchors{said: scene, in: map[string]*count{}}
	for i := range scene {
		if u := &scene[i]; len(u.words) > 0 {
			for n := range min(mostWords, len(u.words)) {
				a.in[string(a.spell(u, 0, n+1))] = &count{last: -1}
			}
			a.in[string(a.spell(u, len(u.words)-1, len(u.words)))] = &count{last: -1}
		}
	}
	for i := range scene {
		u := &scene[i]
		for k := range u.words {
			for end := k + 1; end <= min(k+mostWords, len(u.words)); end++ {
				if c := a.in[string(a.spell(u, k, end))]; c != nil && c.last != i {
					c.lines, c.last = c.lines+1, i
				}
			}
		}
	}
	return a
}

// spell writes the key of words of a speaker; the next call writes over it.
func (a *anchors) spell(u *utterance, k, end int) []byte {
	a.key = append(a.key[:0], u.Who...)
	for _, word := range u.folds[k:end] {
		a.key = append(append(a.key, 0), word...)
	}
	return a.key
}

// first returns the anchor of the first word of a speech, for a move that stands
// above it; "" if it has no words, or none that would mean this speech alone.
func (a *anchors) first(i int) string { return a.of(i, 0, a.line(i, -1)) }

// last returns the anchor of the last word of a speech, for a move that stands
// below it; "" as first does.
func (a *anchors) last(i int) string { return a.of(i, len(a.said[i].words)-1, a.line(i, +1)) }

// line returns the next speech before (step -1) or after (+1) the i-th.
func (a *anchors) line(i, step int) speech.Folded {
	for i += step; i >= 0 && i < len(a.said); i += step {
		if u := &a.said[i]; u.Who != "" && u.text != "" {
			return u.folds
		}
	}
	return nil
}

// of names the k-th word of the i-th speech: by its speaker, with as many of the
// words behind it as no other line of theirs has. Where the speaker says the same
// again the line beside the move is meant, which needs no speaker, unless the
// line on the other side of the move has the word too.
func (a *anchors) of(i, k int, beside speech.Folded) string {
	u := &a.said[i]
	if len(u.words) == 0 {
		return ""
	}
	for end := k + 1; end <= min(k+mostWords, len(u.words)); end++ {
		if a.in[string(a.spell(u, k, end))].lines == 1 {
			return lang.WriteName(u.Who) + " " + u.phrase(k, end)
		}
	}
	if len(beside.Find(u.folds[k:k+1])) == 0 {
		return u.phrase(k, k+1)
	}
	return ""
}

// phrase writes the words from the k-th up to end, with a number where the speech
// has them several times.
func (u *utterance) phrase(k, end int) string {
	text := lang.WriteText(u.text[u.words[k].Start:u.words[end-1].End])
	if hits := u.folds.Find(u.folds[k:end]); len(hits) > 1 {
		return fmt.Sprintf("%s %d", text, slices.Index(hits, k)+1)
	}
	return text
}
