// What one speaker says in the scene, and which lines may be found in it.
//
// It takes long to compare a line with all places of a text that resemble it, and most
// lines of a shot are in no other. So lines are first counted. A line of n words that is found
// has at least leastSame of its words in a stretch that is longer by at most the words
// that differ; where no stretch has as many, it is not looked for.

package coverage

import (
	"slices"

	"pullscore/interp/speech"
	"pullscore/interp/wording"
)

// spoken is all that one speaker says in the scene.
type spoken struct {
	lines  []*sceneLine
	slots  []*slot
	ofLine []int            // the index in lines of the line of each of slots
	where  map[string][]int // each word in slots
	stream *wording.Stream  // of the words of slots; nil until somebody asks
}

// mostOften is up to how many places of a word are counted. One that is said more often
// counts as said everywhere.
const mostOften = 500

// spokenBy returns what a speaker says in the scene.
func (j *joiner) spokenBy(who string) *spoken {
	if sp := j.spoken[who]; sp != nil {
		return sp
	}
	sp := &spoken{where: map[string][]int{}}
	for _, l := range j.lines {
		if l.who == who {
			sp.add(l)
		}
	}
	j.spoken[who] = sp
	return sp
}

// add adds a line at the end.
func (sp *spoken) add(l *sceneLine) {
	for _, s := range l.slots {
		sp.where[s.fold] = append(sp.where[s.fold], len(sp.slots))
		sp.slots = append(sp.slots, s)
		sp.ofLine = append(sp.ofLine, len(sp.lines))
	}
	sp.lines = append(sp.lines, l)
	if sp.stream != nil {
		sp.stream.Append(l.written())
	}
}

// streamOf returns the words of all lines as a text to look in.
func (sp *spoken) streamOf(known wording.Vocabulary) *wording.Stream {
	if sp.stream == nil {
		sp.stream = wording.New(known)
		for _, l := range sp.lines {
			sp.stream.Append(l.written())
		}
	}
	return sp.stream
}

// mayHave reports whether a stretch of what is said has enough words of a line for the
// line to be found there.
func (sp *spoken) mayHave(line speech.Folded) bool {
	everywhere := 0
	var places []int
	for i, w := range line {
		switch at := sp.where[w]; {
		case len(at) > mostOften:
			everywhere++
		case !slices.Contains(line[:i], w):
			places = append(places, at...)
		}
	}
	least := enough(len(line)) - everywhere
	if least <= 0 {
		return true
	}
	slices.Sort(places)
	for i := least - 1; i < len(places); i++ {
		if places[i]-places[i-least+1] < longest(len(line)) {
			return true
		}
	}
	return false
}

// likeAny returns the lines that are not taken and may be found in one of those of a shot
// with the indices lost.
func (sp *spoken) likeAny(lines []shotLine, lost []int, taken map[*sceneLine]bool) (free []*sceneLine, folds []speech.Folded) {
	like := make([]bool, len(sp.lines))
	count := make([]int, len(sp.lines))
	for _, i := range lost {
		clear(count)
		everywhere := false
		for k, w := range lines[i].folds {
			at := sp.where[w]
			if everywhere = everywhere || len(at) > mostOften; everywhere {
				break
			}
			if slices.Contains(lines[i].folds[:k], w) {
				continue
			}
			for _, p := range at {
				count[sp.ofLine[p]]++
			}
		}
		for n, l := range sp.lines {
			like[n] = like[n] || everywhere || count[n] >= enough(len(l.slots))
		}
	}
	for n, l := range sp.lines {
		if like[n] && !taken[l] {
			free, folds = append(free, l), append(folds, foldsOf(l.slots))
		}
	}
	return free, folds
}

// enough returns how many of so many words are found at least where a line is.
func enough(words int) int { return words - wrong(words) }

// longest returns how long a stretch is at most in which a line of so many words is found.
func longest(words int) int { return words + wrong(words) }

// wrong returns how many of the words of a line may be others where it is found.
func wrong(words int) int { return int((1-leastSame)*float64(words) + 1e-9) }

// written returns the words of a line of the scene as one text.
func (l *sceneLine) written() string {
	size := 0
	for _, s := range l.slots {
		size += len(s.text) + 1
	}
	text := make([]byte, 0, size)
	for _, s := range l.slots {
		text = append(append(text, s.text...), ' ')
	}
	return string(text)
}

// foldsOf returns slots as they are compared.
func foldsOf(slots []*slot) speech.Folded {
	folds := make(speech.Folded, len(slots))
	for i, s := range slots {
		folds[i] = s.fold
	}
	return folds
}
