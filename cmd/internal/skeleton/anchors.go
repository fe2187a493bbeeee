// Anchors: the words that racks hang on.

package skeleton

import (
	"fmt"

	"pullscore/interp/speech"
	"pullscore/lang"
	"pullscore/lang/fountain"
)

// anchors names the first and last words of the speeches of a scene.
type anchors struct {
	beats []fountain.Beat
	words map[string][]speech.Token // all that each speaker says in the scene
	begin []int                     // where each beat's words begin in them
}

func newAnchors(beats []fountain.Beat) anchors {
	a := anchors{beats: beats, words: map[string][]speech.Token{}, begin: make([]int, len(beats))}
	for i, b := range beats {
		if b.Who != "" {
			a.begin[i] = len(a.words[b.Who])
			a.words[b.Who] = append(a.words[b.Who], speech.Split(b.Text())...)
		}
	}
	return a
}

// first returns the anchor of the first word of a speech, last that of its last;
// "" if it has no words.
func (a anchors) first(beat int) string { return a.of(beat, a.begin[beat]) }

func (a anchors) last(beat int) string {
	return a.of(beat, a.begin[beat]+len(speech.Split(a.beats[beat].Text()))-1)
}

// of returns the anchor of a word of a speech's speaker, with which one it is
// where the speaker says it more than once.
func (a anchors) of(beat, place int) string {
	if len(speech.Split(a.beats[beat].Text())) == 0 {
		return ""
	}
	who := a.beats[beat].Who
	word := a.words[who][place].Text
	anchor := fmt.Sprintf("%s %s", lang.WriteName(who), lang.WriteText(word))
	same := speech.Match(a.words[who], word)
	for n, at := range same {
		if at == place && len(same) > 1 {
			return fmt.Sprintf("%s %d", anchor, n+1)
		}
	}
	return anchor
}
