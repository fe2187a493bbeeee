// Words that other set-ups of a scene hold now: in the picture and sharp.

package diff

import (
	"fmt"
	"slices"
	"strings"

	"pullscore/interp/coverage"
	"pullscore/interp/plan"
)

// hold compares which set-ups hold which words of the scenes in which anything changed.
// Nothing else can change that.
func (p *Plan) hold(before, after *plan.Plan) {
	for i := range p.Scenes {
		s := &p.Scenes[i]
		if s.was == nil || s.is == nil {
			continue
		}
		touched := s.Change != Same || slices.ContainsFunc(p.Shots, func(o Shot) bool {
			return o.Change != Same && slices.Contains(s.setups, o.ID)
		})
		if !touched {
			continue
		}
		h := holding{both: map[string]bool{}}
		for _, id := range s.is.Setups {
			h.both[id] = slices.Contains(s.was.Setups, id)
		}
		was := coverage.Staged(before, slices.Index(before.Scenes, s.was), false)
		is := coverage.Staged(after, slices.Index(after.Scenes, s.is), false)
		s.Held = h.compare(was.Lines, is.Lines)
	}
}

// A holding compares who holds the words of a scene. both are the set-ups that there are
// before and after.
type holding struct{ both map[string]bool }

// compare returns the runs of words that other set-ups hold, line by line. Lines that came
// or are gone have nothing to compare.
func (h holding) compare(before, after []*coverage.Line) []Piece {
	type said struct{ who, text string }
	of := func(l *coverage.Line) said {
		texts := make([]string, len(l.Words))
		for i := range l.Words {
			texts[i] = l.Words[i].Text
		}
		return said{l.Who, strings.Join(texts, " ")}
	}
	was := map[said][]*coverage.Line{}
	for _, l := range before {
		was[of(l)] = append(was[of(l)], l)
	}
	list := []Piece{}
	for _, l := range after {
		same := was[of(l)]
		if len(same) == 0 {
			continue
		}
		was[of(l)] = same[1:]
		if l.Asks() && same[0].Asks() {
			list = append(list, h.line(same[0], l)...)
		}
	}
	return list
}

// line compares the words of one line, and tells those together that go the same way.
func (h holding) line(before, after *coverage.Line) (list []Piece) {
	var words []string
	var was, is string
	flush := func() {
		if len(words) > 0 {
			list = append(list, held(after.Who, words, was, is))
		}
		words = nil
	}
	for i := range after.Words {
		b, a := h.of(&before.Words[i], &after.Words[i]), h.of(&after.Words[i], &before.Words[i])
		if b == a || b != was || a != is {
			flush()
		}
		if b != a {
			words, was, is = append(words, after.Words[i].Text), b, a
		}
	}
	flush()
	return list
}

// of returns the set-ups that hold a word. Those that there are only before, or only
// after, count where none but they hold it, as nobody wonders that a set-up that is gone
// holds nothing.
func (h holding) of(w, other *coverage.Word) string {
	alone := !heldBy(w, h.both) || !heldBy(other, h.both)
	var ids []string
	for i := range w.Cells {
		if c := &w.Cells[i]; c.Held && (alone || h.both[c.Shot]) {
			ids = append(ids, c.Shot)
		}
	}
	slices.Sort(ids)
	return strings.Join(ids, ", ")
}

// heldBy reports whether one of some set-ups holds a word.
func heldBy(w *coverage.Word, of map[string]bool) bool {
	return slices.ContainsFunc(w.Cells, func(c coverage.Cell) bool { return c.Held && of[c.Shot] })
}

// held tells that others hold words of somebody now.
func held(who string, words []string, was, is string) Piece {
	return Piece{Change: Changed, Kind: "held", Name: fmt.Sprintf("%s on “%s”", who, strings.Join(words, " ")), Details: []Detail{{
		Name: "held-changed", Before: word(orNone(was)), After: word(orNone(is)), Says: fmt.Sprintf("held by %s, now by %s", orNone(was), orNone(is)),
	}}}
}

// heldLine says in a sentence which words of a scene came to be held by a set-up, and which
// none holds any more; "" if there are none.
func (s *Scene) heldLine() string {
	var now, gone []string
	for _, p := range s.Held {
		switch d := p.Details[0]; {
		case d.Before.word == orNone(""):
			now = append(now, p.Name+" (by "+d.After.word+")")
		case d.After.word == orNone(""):
			gone = append(gone, p.Name)
		}
	}
	var parts []string
	if len(now) > 0 {
		parts = append(parts, "now held: "+strings.Join(now, ", "))
	}
	if len(gone) > 0 {
		parts = append(parts, "held by none any more: "+strings.Join(gone, ", "))
	}
	if len(parts) == 0 {
		return ""
	}
	return s.name() + ": " + strings.Join(parts, "; ")
}
