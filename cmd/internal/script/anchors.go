// Anchors: the words that racks hang on.

package script

import (
	"fmt"
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
	begin int // where its words begin among all that its speaker says
}

// split splits the beats of a scene into words.
func split(beats []fountain.Beat) []utterance {
	list := make([]utterance, len(beats))
	said := map[string]int{}
	for i, b := range beats {
		u := utterance{Beat: b}
		if b.Who != "" {
			names := fountain.Speakers(b.Who)
			u.Who, u.with = names[0], names[1:]
		}
		u.begin = said[u.Who]
		u.text = strings.Join(strings.Fields(b.Text()), " ") // a note may have stood between
		u.words = speech.Split(u.text)
		u.folds = speech.Fold(u.words)
		said[u.Who] += len(u.words)
		list[i] = u
	}
	return list
}

// anchors names words of a scene, with which one it is where its speaker says it
// more than once there.
type anchors map[spoken][]int

// A spoken is a word as somebody says it.
type spoken struct{ who, folded string }

func newAnchors(scene []utterance) anchors {
	a := anchors{}
	for _, u := range scene {
		for i, word := range u.folds {
			key := spoken{u.Who, word}
			a[key] = append(a[key], u.begin+i)
		}
	}
	return a
}

// first returns the anchor of the first word of a speech, last that of its last;
// "" if it has no words.
func (a anchors) first(u *utterance) string { return a.of(u, 0) }
func (a anchors) last(u *utterance) string  { return a.of(u, len(u.words)-1) }

func (a anchors) of(u *utterance, i int) string {
	if len(u.words) == 0 {
		return ""
	}
	anchor := fmt.Sprintf("%s %s", lang.WriteName(u.Who), lang.WriteText(u.words[i].Text))
	same := a[spoken{u.Who, u.folds[i]}]
	for n, at := range same {
		if at == u.begin+i && len(same) > 1 {
			return fmt.Sprintf("%s %d", anchor, n+1)
		}
	}
	return anchor
}
