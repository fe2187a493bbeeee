// Runs: following words of a line that look alike in every set-up.

package coverage

import (
	"slices"
	"strings"

	"pullscore/interp/plan"
)

// A Run is a run of words of one line whose cells look alike.
type Run struct {
	Line  int    `json:"line"` // its number
	First int    `json:"word"` // the number of the first word in the line
	Who   string `json:"who"`
	Voice bool   `json:"voice,omitempty"` // no set-up has the speaker as a subject
	Off   bool   `json:"off,omitempty"`   // only heard: nobody has to be seen
	Text  string `json:"text"`

	// In the time of a scene that is staged; else none.
	Start plan.Number `json:"start_s,omitzero"`
	End   plan.Number `json:"end_s,omitzero"`

	Count int    `json:"words"`
	Cells []Cell `json:"cells"`
}

// runs returns lines as runs of words.
func runs(lines []*Line) []Run {
	list := []Run{}
	for _, l := range lines {
		for i := 0; i < len(l.Words); {
			end := i + 1
			for end < len(l.Words) && alike(&l.Words[i], &l.Words[end]) {
				end++
			}
			list = append(list, Run{
				Line: l.Number, First: i + 1, Who: l.Who, Voice: l.Voice, Off: l.Off,
				Start: l.Words[i].Start, End: l.Words[end-1].End,
				Text: textOf(l.Words[i:end]), Count: end - i, Cells: merged(l.Words[i:end]),
			})
			i = end
		}
	}
	return list
}

// alike reports whether two words have cells that look alike.
func alike(a, b *Word) bool {
	return slices.EqualFunc(a.Cells, b.Cells, func(a, b Cell) bool {
		return a.Setup == b.Setup && a.Focus == b.Focus && a.Frame == b.Frame && a.By == b.By && a.InCut == b.InCut && a.Held == b.Held && slices.Equal(a.Others, b.Others)
	})
}

// textOf returns words as one text.
func textOf(words []Word) string {
	texts := make([]string, len(words))
	for i := range words {
		texts[i] = words[i].Text
	}
	return strings.Join(texts, " ")
}

// merged returns the cells of a run: from its start to its end, with the worst figures.
func merged(words []Word) []Cell {
	cells := make([]Cell, len(words[0].Cells))
	for i := range cells {
		cells[i] = words[0].Cells[i]
		cells[i].Lands = slices.Clone(cells[i].Lands)
		for k := range words[1:] {
			c := &words[k+1].Cells[i]
			cells[i].End = c.End
			cells[i].Blur = max(cells[i].Blur, c.Blur)
			cells[i].Chance = min(cells[i].Chance, c.Chance) // None where one of them is
			cells[i].Lands = append(cells[i].Lands, c.Lands...)
		}
	}
	return cells
}
