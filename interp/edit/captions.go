// Subtitles as a stream of words in time.

package edit

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"
	"sync"

	"pullscore/interp/speech"
	"pullscore/interp/subtitle"
	"pullscore/interp/wording"
	"pullscore/lang"
	"pullscore/lang/captions"
	"pullscore/lang/lines"
)

// Subtitles are the words that are said in a cut, in terms, in the order of time.
// Of the terms only their numbers are kept, in which lines are looked for, and the
// subtitles that they come from.
type Subtitles struct {
	*wording.Stream
	cues    []cue
	cleaner *subtitle.Cleaner
	names   []string // of the plan's people, in the order of their numbers

	// latest is the subtitle whose words were wanted last, from 1: lines that
	// follow each other are often in one.
	latest int
	words  []Word
}

// A cue is a subtitle in which something is said.
type cue struct {
	text  string
	start int64 // ms
	long  int32 // ms
	first int32 // its first term
}

// A Word is a term of the subtitles, and the word that it is written in.
type Word struct {
	Text       string  // with the punctuation behind it
	Part       int     // which term of the word it is, from 0
	Folded     string  // as it is compared
	Start, End float64 // seconds from the start of the picture
}

// captions reads subtitles in which a plan's lines are looked for. How a file
// writes the names of speakers is known only when all of it has been seen.
func (c *Cut) captions(t *lines.Text, want Wanted) []lang.Diagnostic {
	var faults lines.Faults
	stream := wording.NewWhole()
	if want.Words != nil {
		stream = wording.New(want.Words)
	}
	s := &Subtitles{Stream: stream, cleaner: subtitle.New(want.Names), names: want.Names}
	c.Said = s
	s.cues = make([]cue, 0, min(strings.Count(t.Content, "-->"), len(t.Content)/usual))
	sorted := true
	for cap := range captions.Cues(t, &faults) {
		now := cue{start: cap.Start, long: int32(min(cap.End-cap.Start, math.MaxInt32)), text: subtitle.Voiced(cap.Text, cap.Turns)}
		sorted = sorted && (len(s.cues) == 0 || now.start >= s.cues[len(s.cues)-1].start)
		s.cleaner.Learn(now.text)
		s.cues = append(s.cues, now)
	}
	if !sorted {
		slices.SortStableFunc(s.cues, func(a, b cue) int { return cmp.Compare(a.start, b.start) })
	}
	if at, full := s.listen(); full {
		faults.Add(lang.Diagnostic{
			Code: "too-large", Severity: lang.Error, Range: t.Start(),
			Message: fmt.Sprintf("from %s on the subtitles have more than %d words", clock(at), wording.MostWords),
			Detail:  "The rest is left out.",
		})
	}
	return faults.List()
}

// usual is how many bytes of a file a subtitle of two rows takes with its times: room is made for
// as many, since a list that grows takes its room twice.
const usual = 110

// clock writes a time as subtitles do, to the second.
func clock(ms int64) string {
	return fmt.Sprintf("%02d:%02d:%02d", ms/3_600_000, ms/60_000%60, ms/1000%60)
}

// batch is how many subtitles are listened to at once: enough that it does not matter
// that others are listened to beside them.
const batch = 256

// listen takes the words of all subtitles, and drops those in which nothing is said.
// full tells that there are too many, from a time in ms on.
func (s *Subtitles) listen() (from int64, full bool) {
	words := 0
	for _, c := range s.cues {
		words += 1 + strings.Count(c.text, " ") + strings.Count(c.text, "\n")
	}
	s.Expect(words)
	spare := sync.Pool{New: func() any { return &wording.Talk{} }} // their memory is used again
	talks := lines.InOrder((len(s.cues)+batch-1)/batch, s.Listener, func(l *wording.Listener, i int) *wording.Talk {
		talk := spare.Get().(*wording.Talk)
		talk.Reset()
		for _, c := range s.cues[i*batch : min((i+1)*batch, len(s.cues))] {
			text, turns := s.cleaner.Said(c.text)
			l.Listen(talk, text, voicesOf(turns))
		}
		return talk
	})
	next, kept, begin := 0, 0, 0
	for talk := range talks {
		ends, ok := s.Take(talk)
		for _, end := range ends {
			if end > begin {
				s.cues[kept] = s.cues[next] // nobody reads those of this batch any more
				s.cues[kept].first = int32(begin)
				kept++
			}
			next, begin = next+1, end
		}
		spare.Put(talk)
		if !ok {
			from, full = s.cues[next].start, true
			break
		}
	}
	s.cues = s.cues[:kept]
	return from, full
}

func voicesOf(turns []subtitle.Turn) (voices []wording.Voice) {
	for _, t := range turns {
		voices = append(voices, wording.Voice{At: t.At, By: int32(t.By)})
	}
	return voices
}

// Who returns the number of one of the plan's people as a speaker, 0 for nobody.
func (s *Subtitles) Who(name string) int32 { return int32(slices.Index(s.names, name) + 1) }

// Label returns whom of the plan a label before a word names, "" for somebody else;
// ok is false where none stands there.
func (s *Subtitles) Label(word int) (name string, ok bool) {
	by, begins := s.By(word)
	if by > 0 {
		name = s.names[by-1]
	}
	return name, by != 0 && begins
}

// Words returns the words from one up to another. The words of a subtitle are
// spread over its time by their syllables, as those of a line are.
func (s *Subtitles) Words(from, to int) (words []Word) {
	i, found := slices.BinarySearchFunc(s.cues, from, func(c cue, word int) int { return cmp.Compare(int(c.first), word) })
	if !found {
		i--
	}
	for ; i < len(s.cues) && int(s.cues[i].first) < to; i++ {
		list, first := s.of(i), int(s.cues[i].first)
		words = append(words, list[max(0, from-first):min(len(list), to-first)]...)
	}
	return words
}

// An Edge is where one subtitle ends and the next begins, in seconds from the start of
// the picture.
type Edge struct{ Ends, Begins float64 }

// Edges returns where subtitles begin behind the first of the words from one up to
// another.
func (s *Subtitles) Edges(from, to int) (list []Edge) {
	i, found := slices.BinarySearchFunc(s.cues, from, func(c cue, word int) int { return cmp.Compare(int(c.first), word) })
	if found {
		i++
	}
	for ; i > 0 && i < len(s.cues) && int(s.cues[i].first) < to; i++ {
		before := s.cues[i-1]
		list = append(list, Edge{seconds(before.start + int64(before.long)), seconds(s.cues[i].start)})
	}
	return list
}

// Between returns the words that are said between two times, in seconds from
// the start of the picture.
func (s *Subtitles) Between(start, end float64) (from, to int) {
	from = s.wordAt(start)
	return from, max(from, s.wordAt(end))
}

// wordAt returns the first word that begins at a time or later.
func (s *Subtitles) wordAt(t float64) int {
	next, _ := slices.BinarySearchFunc(s.cues, t, func(c cue, t float64) int {
		if seconds(c.start) < t {
			return -1
		}
		return 1
	})
	if next == 0 {
		return 0
	}
	words := s.of(next - 1) // some of them may be later
	i := slices.IndexFunc(words, func(w Word) bool { return w.Start >= t })
	if i < 0 {
		i = len(words)
	}
	return int(s.cues[next-1].first) + i
}

// of returns the words of a subtitle.
func (s *Subtitles) of(i int) []Word {
	if s.latest != i+1 {
		s.latest, s.words = i+1, s.wordsOf(s.cues[i])
	}
	return s.words
}

func seconds(ms int64) float64 { return float64(ms) / 1000 }

// wordsOf returns the terms of a subtitle. The terms of a word share its time.
func (s *Subtitles) wordsOf(c cue) []Word {
	text, _ := s.cleaner.Said(c.text)
	tokens := speech.Split(text)
	terms := speech.FoldText(text)
	timed := speech.Spread(tokens, seconds(c.start), seconds(c.start+int64(c.long)))
	words := make([]Word, len(terms.Folded))
	for i, folded := range terms.Folded {
		of, part, n := terms.Of[i], terms.Part[i], float64(terms.Count[terms.Of[i]])
		end := len(text) // of what is written, up to the next word that has terms
		for next := i + 1; next < len(terms.Of); next++ {
			if terms.Of[next] > of {
				end = tokens[terms.Of[next]].Start
				break
			}
		}
		w, long := timed[of], timed[of].End-timed[of].Start
		words[i] = Word{
			Text: text[w.Token.Start:end], Part: part, Folded: folded,
			Start: w.Start + long*float64(part)/n, End: w.End - long*(n-1-float64(part))/n,
		}
	}
	return words
}
