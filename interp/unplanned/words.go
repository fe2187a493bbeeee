// What is said, sentence by sentence.

package unplanned

import (
	"slices"
	"strings"

	"pullscore/interp/speech"
	"pullscore/interp/subtitle"
	"pullscore/lang"
	"pullscore/lang/captions"
	"pullscore/lang/lines"
)

// pause is how long nobody speaks where a sentence is over without a sign that says so,
// in seconds. Our own choice.
const pause = 1.0

// A Word is a word that is said, in seconds from the start of the picture.
type Word struct {
	Text       string
	Start, End float64
}

// A Sentence is what is said up to a sign that ends it, or a pause.
type Sentence struct {
	Who        string // as the subtitles call them; "" where they do not say it
	Text       string
	Start, End float64 // seconds from the start of the picture
	Words      []Word
}

// Sentences returns what subtitles say, in the order of time. Words are spread over
// their subtitle by their syllables, as those of a line of a plan are.
func Sentences(t *lines.Text) (list []Sentence, diags []lang.Diagnostic) {
	cues, diags := captions.Read(t)
	slices.SortStableFunc(cues, func(a, b captions.Cue) int { return int(a.Start - b.Start) })
	clean := subtitle.New(nil)
	for _, c := range cues {
		clean.Learn(c.Text)
	}
	who := ""
	open := false // the last sentence goes on
	for _, c := range cues {
		if by := speakerOf(&c); by != "" && by != who {
			who, open = by, false
		}
		text, _ := clean.Said(c.Text)
		text = strings.Join(strings.Fields(text), " ")
		for _, w := range speech.Spread(speech.Split(text), float64(c.Start)/1000, float64(c.End)/1000) {
			if n := len(list); !open || w.Start-list[n-1].End > pause {
				list = append(list, Sentence{Who: who, Start: w.Start})
			}
			now := &list[len(list)-1]
			word := text[w.Token.Start:w.Token.End]
			now.Words = append(now.Words, Word{word, w.Start, w.End})
			now.Text, now.End = strings.TrimSpace(now.Text+" "+word+signs(text[w.Token.End:])), w.End
			open = !strings.ContainsAny(signs(text[w.Token.End:]), ".?!…")
		}
	}
	return list, diags
}

// label is a speaker in capitals before what they say, as in INES: or - MRS. DALE:.
var label = lines.Pattern(`^[-‐–—> ]*(\p{Lu}[\p{Lu}.'’ -]{0,30}):`)

// speakerOf returns who speaks in a subtitle, where it says so.
func speakerOf(c *captions.Cue) string {
	if len(c.Voices) > 0 {
		return strings.TrimSpace(c.Voices[0])
	}
	if found := label().FindStringSubmatch(c.Text); found != nil {
		return strings.TrimSpace(found[1])
	}
	return ""
}

// signs returns the signs that a text begins with, up to a blank or a letter.
func signs(text string) string {
	end := strings.IndexFunc(text, func(r rune) bool { return !strings.ContainsRune(`.,;:?!…"'”’)`, r) })
	if end < 0 {
		return text
	}
	return text[:end]
}
