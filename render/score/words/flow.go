// Text round plumb lines, and text cut in its middle.

package words

import (
	"slices"
	"strings"

	"pullscore/render/draw"
	"pullscore/render/sheet"
)

// cut sets as many of the words as have room, without those in the middle.
func (st *setter) cut(words []string, from, to float64, full string, a draw.Align) {
	f := sheet.FontSmall
	for keep := len(words) - 1; keep >= 0; keep-- {
		head, tail := words[:(keep+1)/2], words[len(words)-keep/2:]
		text := strings.Join(slices.Concat(head, []string{"…"}, tail), " ")
		if f.Room(text) > to-from {
			continue
		}
		t := draw.NewText(from, 0, text, f, draw.Black)
		if a == draw.End {
			t = t.Aligned(draw.End)
			t.At.X = to
		}
		t.Full = full
		st.runs = append(st.runs, Run{text: t})
		return
	}
}

// forward sets words from x to the right, round the plumb lines, and reports whether they
// end before the limit.
func (st *setter) forward(words []string, f draw.Font, x, limit float64) bool {
	var runs []Run
	for len(words) > 0 {
		stop, n := limit, 0
		for _, p := range st.Plumbs {
			if p+plumbGap > x {
				stop = min(stop, p-plumbGap)
			}
		}
		for n < len(words) && x+f.Room(strings.Join(words[:n+1], " ")) <= stop+1e-9 {
			n++
		}
		if n > 0 {
			t := draw.NewText(x, 0, strings.Join(words[:n], " "), f, draw.Black)
			runs, words = append(runs, Run{text: t}), words[n:]
		}
		if len(words) == 0 {
			break
		}
		if stop >= limit {
			return false
		}
		x = stop + 2*plumbGap + 1e-6
	}
	st.runs = append(st.runs, runs...)
	return true
}

// backward sets words so that they end at x, round the plumb lines, and reports whether
// they start right of where they may.
func (st *setter) backward(words []string, f draw.Font, x float64) bool {
	var runs []Run
	for len(words) > 0 {
		stop, n := st.Left, 0
		for _, p := range st.Plumbs {
			if p-plumbGap < x {
				stop = max(stop, p+plumbGap)
			}
		}
		for n < len(words) && x-f.Room(strings.Join(words[len(words)-n-1:], " ")) >= stop-1e-9 {
			n++
		}
		if n > 0 {
			t := draw.NewText(x, 0, strings.Join(words[len(words)-n:], " "), f, draw.Black).Aligned(draw.End)
			runs, words = append(runs, Run{text: t}), words[:len(words)-n]
		}
		if len(words) == 0 {
			break
		}
		if stop <= st.Left {
			return false
		}
		x = stop - 2*plumbGap - 1e-6
	}
	slices.Reverse(runs)
	st.runs = append(st.runs, runs...)
	return true
}
