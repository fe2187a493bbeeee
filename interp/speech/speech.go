// Package speech says how long the words of a line take and where in its time
// they fall: times in seconds, paces in words a minute.
package speech

const (
	// DefaultPace is the pace of a line of which nothing is said, words a
	// minute: talk in US English (about 150, as the National Center for Voice
	// and Speech is quoted). Reading aloud is faster (183: Brysbaert 2019, J
	// Mem Lang 109, 104047).
	DefaultPace = 150

	// PerWord is how many syllables a pace counts as a word. From memory:
	// spoken English runs at 1.4 to 1.5 syllables a word.
	PerWord = 1.5

	// Gap is the silence between two speakers, seconds (Stivers et al. 2009,
	// PNAS 106(26), 10587-10592: language means lie within a quarter of a
	// second of their common mean, which is near 0.2; that figure is from
	// memory).
	Gap = 0.2
)

// Duration returns how long a text takes to say at a pace in words a minute, in
// seconds: its syllables, PerWord of them to a word. A pace that is not
// positive stands for DefaultPace.
func Duration(text string, wpm float64) float64 {
	return DurationOf(Split(text), wpm)
}

// DurationOf is Duration for a text that has been split.
func DurationOf(tokens []Token, wpm float64) float64 {
	if !(wpm > 0) {
		wpm = DefaultPace
	}
	return float64(count(tokens)) / PerWord / wpm * 60
}

// count returns the syllables of some tokens together.
func count(tokens []Token) int {
	n := 0
	for i := range tokens {
		n += tokens[i].Syllables
	}
	return n
}

// A Timed is a token and when it sounds, in seconds.
type Timed struct {
	Token      Token
	Start, End float64
}

// Spread spreads the tokens of a line over its time by their syllables: each
// begins where the one before it ends, the first at start, and the last ends at
// end.
func Spread(tokens []Token, start, end float64) []Timed {
	total := count(tokens)
	if total == 0 {
		return nil
	}
	timed := make([]Timed, len(tokens))
	at, done := start, 0
	for i, t := range tokens {
		done += t.Syllables
		next := end
		if done < total {
			next = start + (end-start)*float64(done)/float64(total)
		}
		timed[i] = Timed{Token: t, Start: at, End: next}
		at = next
	}
	return timed
}
