// Subtitles as a stream of words in time.

package edit

import (
	"cmp"
	"slices"
	"strings"
	"unicode"

	"pullscore/interp/speech"
	"pullscore/interp/wording"
	"pullscore/lang"
	"pullscore/lang/captions"
	"pullscore/lang/lines"
)

// captions reads subtitles. The words of one are spread over its time by their
// syllables, as those of a line are.
func (c *Cut) captions(t *lines.Text) []lang.Diagnostic {
	list, diags := captions.Read(t)
	slices.SortStableFunc(list, func(a, b captions.Cue) int { return cmp.Compare(a.Start, b.Start) })
	for _, cue := range list {
		text := spoken(cue.Text)
		tokens := speech.Split(text)
		for i, w := range speech.Spread(tokens, float64(cue.Start)/1000, float64(cue.End)/1000) {
			end := len(text)
			if i+1 < len(tokens) {
				end = tokens[i+1].Start
			}
			c.Words = append(c.Words, Word{Text: text[w.Token.Start:end], Start: w.Start, End: w.End})
		}
		c.Folded = append(c.Folded, speech.Fold(tokens)...)
	}
	c.Stream = wording.New(c.Folded)
	return diags
}

// spoken returns what is said in a subtitle: without sounds in square brackets
// and without the speaker's name before a colon, which subtitles for the hard
// of hearing have (common practice, no source).
func spoken(text string) string {
	var said []string
	for line := range strings.Lines(text) {
		line = withoutSounds(line)
		if name, rest, ok := strings.Cut(line, ":"); ok && isName(name) {
			line = rest
		}
		if line = strings.Join(strings.Fields(line), " "); line != "" {
			said = append(said, line)
		}
	}
	return strings.Join(said, " ")
}

// withoutSounds takes out what stands in square brackets.
func withoutSounds(line string) string {
	for {
		from := strings.IndexByte(line, '[')
		if from < 0 {
			return line
		}
		to := strings.IndexByte(line[from:], ']')
		if to < 0 {
			return line
		}
		line = line[:from] + " " + line[from+to+1:]
	}
}

// isName reports whether a text is a speaker's name: a few words, all in upper
// case.
func isName(s string) bool {
	letters := 0
	for _, r := range s {
		if unicode.IsLower(r) {
			return false
		}
		if unicode.IsUpper(r) {
			letters++
		}
	}
	return letters > 1 && len(strings.Fields(s)) <= 3
}
