// Setting the words of a row: each utterance on a lane on which it has room.

package lines

import (
	"slices"
	"strings"

	"pullscore/render/draw"
	"pullscore/render/score/bands"
	"pullscore/render/score/words"
	"pullscore/render/sheet"
)

// A Run is words of an utterance set as one text.
type Run struct {
	Said int // the utterance
	words.Run
}

// Set finds a place for every word of the row, with texts clear of plumb lines. An
// utterance that would run into another has a lane of its own.
func (r *Row) Set(w *bands.Window, plumbs ...float64) {
	const most = 6
	limit := w.Paper.W - sheet.Margin
	var ends []float64 // of the lanes
	r.Runs, r.lane = nil, make([]int, len(r.Said))
	for i, u := range r.Said {
		said, space := heard(w, u), words.Space{Left: w.Left, Limit: limit, Plumbs: plumbs}
		runs, from, to := words.Set(said, space)
		lane := slices.IndexFunc(ends, func(end float64) bool { return end+words.Gap <= from })
		switch {
		case lane < 0 && len(ends) < most:
			lane = len(ends)
			ends = append(ends, 0)
		case lane < 0: // what is on the lane stays; this has what it leaves
			lane = slices.Index(ends, slices.Min(ends))
			space.Left = min(ends[lane]+words.Gap, limit)
			runs, _, to = words.Set(said, space)
		}
		r.lane[i], ends[lane] = lane, max(ends[lane], to)
		for _, run := range runs {
			r.Runs = append(r.Runs, Run{i, run})
		}
	}
	r.Lanes = max(1, len(ends))
}

// heard returns what the window shows of an utterance: the words that start in it, and a
// text of one piece that goes on in it. Dots stand for what was before.
func heard(w *bands.Window, u Utterance) words.Said {
	said := words.Said{From: w.X(u.Start), To: w.X(u.End), Cue: u.Cue}
	if u.Start < w.From() && len(u.Words) > 0 && !u.Cue {
		said.Words = append(said.Words, words.Word{Text: "…", At: w.Left})
	}
	var full strings.Builder
	for i, word := range u.Words {
		text := draw.Clean(word.Text)
		if i > 0 && !word.Joined {
			full.WriteByte(' ')
		}
		full.WriteString(text)
		if text != "" && (w.Holds(word.Start) || len(u.Words) == 1 && !u.Cue) {
			joined := word.Joined && w.Holds(u.Words[i-1].Start)
			said.Words = append(said.Words, words.Word{Text: text, At: w.X(word.Start), Hangs: word.Hangs, Joined: joined})
		}
	}
	said.Full = full.String()
	return said
}
