// not-held, not-covered: words that no set-up holds, and words that none covers.

package covered

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"pullscore/interp/coverage"
	"pullscore/lang"
	"pullscore/lang/rule"
)

// held tells of the words of every line that nobody holds. With one set-up nobody can
// choose, so nothing is told.
func (f *finder) held() {
	if len(f.Setups) < 2 {
		return
	}
	for _, l := range f.Lines {
		if !l.Asks() {
			continue
		}
		for from := 0; from < len(l.Words); {
			kind, to := kindOf(&l.Words[from]), from+1
			for to < len(l.Words) && kindOf(&l.Words[to]) == kind {
				to++
			}
			switch words := l.Words[from:to]; kind {
			case uncovered:
				f.notCovered(l, words)
			case unheld:
				f.notHeld(l, words)
			}
			from = to
		}
	}
}

// What the set-ups have of a word.
const (
	held = iota
	unheld
	uncovered
)

func kindOf(w *coverage.Word) int {
	switch {
	case len(w.Cells) == 0:
		return uncovered
	case w.Held():
		return held
	}
	return unheld
}

func (f *finder) notCovered(l *coverage.Line, words []coverage.Word) {
	f.tell(rule.NotCovered, lang.Note, float64(words[0].Start),
		fmt.Sprintf("no set-up covers %s “%s”", l.Who, textOf(words)), "",
		span(words)...)
}

func (f *finder) notHeld(l *coverage.Line, words []coverage.Word) {
	var why []string
	least := math.Inf(1)
	for k := range f.Setups {
		reasons, blur := f.reasons(words, k)
		if len(reasons) == 0 {
			continue
		}
		why = append(why, f.Setups[k].Shot+" "+joinedWith(" and ", reasons))
		if blur > 0 {
			least = min(least, blur)
		}
	}
	f.tell(rule.NotHeld, lang.Warning, float64(words[0].Start),
		fmt.Sprintf("no set-up holds %s on “%s”: %s", l.Who, textOf(words), strings.Join(why, ", ")), "",
		append(span(words), lang.Figure{Name: "blur_arcmin", Value: least})...)
}

// reasons says why a set-up does not hold some words, in the order in which they come, and
// the largest blur of its speaker where that is a reason. A set-up that covers none of the
// words has no reason.
func (f *finder) reasons(words []coverage.Word, setup int) (list []string, blur float64) {
	focus, at := "", 0
	for i := range words {
		c, ok := words[i].Cell(setup)
		if !ok {
			continue
		}
		kind, blurred := reason(c)
		switch {
		case blurred && focus == "":
			focus, at = kind, len(list)
			list = append(list, kind)
		case blurred:
			focus = worse(focus, kind)
		case !slices.Contains(list, kind):
			list = append(list, kind)
		}
		if blurred {
			blur = max(blur, float64(c.Blur))
		}
	}
	if focus != "" {
		list[at] = fmt.Sprintf("%s (%s)", focus, f.units.Blur(blur))
	}
	return list, blur
}

// worse returns the worse of two reasons that lie in the focus.
func worse(a, b string) string {
	for _, kind := range []string{coverage.Soft, racks} {
		if a == kind || b == kind {
			return kind
		}
	}
	return a
}

// racks says that a rack is on its way.
const racks = "racks"

// reason says why a cell does not hold its word, and whether that lies in the focus.
func reason(c *coverage.Cell) (why string, blurred bool) {
	switch {
	case c.Focus == coverage.Voice:
		return "does not have the speaker", false
	case c.Frame == coverage.Out:
		return "out of frame", false
	case c.Frame == coverage.Blocked:
		return "behind " + c.By, false
	case c.Focus == coverage.Rack:
		return racks, true
	}
	return c.Focus, true
}

// span returns from when to when words sound, as figures.
func span(words []coverage.Word) []lang.Figure {
	return []lang.Figure{
		{Name: "start_s", Value: float64(words[0].Start)},
		{Name: "end_s", Value: float64(words[len(words)-1].End)},
	}
}

// textOf returns words as one text.
func textOf(words []coverage.Word) string {
	texts := make([]string, len(words))
	for i := range words {
		texts[i] = words[i].Text
	}
	return strings.Join(texts, " ")
}
