// The findings in words below the bands of a score: one sentence for each cause, whatever
// pulls it is about, with its letter, where it lies, and what cures it.

package score

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"pullscore/interp/plan"
	"pullscore/render/draw"
	"pullscore/render/score/bands"
	"pullscore/render/score/table"
	"pullscore/render/sheet"
	"pullscore/render/signs"
)

// A told is a cause on its way into words.
type told struct {
	plan.Lettered
	where string
	text  string
	cure  string
}

// tell puts the findings of a cause into words.
func tell(s *plan.Shot, l plan.Lettered) told {
	first := s.Flags[l.Flags[0]-1]
	t := told{Lettered: l, where: where(s, l), text: first.Text, cure: first.Cures}
	var others []string
	for _, n := range l.Flags[1:] {
		if text := s.Flags[n-1].Text; text != first.Text && !slices.Contains(others, text) {
			others = append(others, text)
		}
	}
	if len(others) > 0 {
		t.text += fmt.Sprintf(" (and %d more like it)", len(others))
	}
	return t
}

// where says where the findings of a cause lie: at a time, at pulls, at subjects, or how
// often.
func where(s *plan.Shot, l plan.Lettered) string {
	if len(l.Flags) == 1 {
		return sheet.When(s, s.Flags[l.Flags[0]-1].Time)
	}
	var pulls []int
	var who []string
	for _, n := range l.Flags {
		f := s.Flags[n-1]
		if f.Pull > 0 && !slices.Contains(pulls, f.Pull) {
			pulls = append(pulls, f.Pull)
		}
		if f.Who != "" && !slices.Contains(who, f.Who) {
			who = append(who, f.Who)
		}
	}
	slices.Sort(pulls)
	switch {
	case len(pulls) == len(l.Flags):
		return "pulls " + spanned(pulls)
	case len(who) == len(l.Flags) && len(who) <= 3:
		return strings.Join(who, ", ")
	}
	return strconv.Itoa(len(l.Flags)) + " times"
}

// spanned returns numbers in words: "1 to 6" where they follow one another, else up to five
// of them.
func spanned(list []int) string {
	const most = 5
	n := len(list)
	switch {
	case n > 2 && list[n-1]-list[0] == n-1:
		return fmt.Sprintf("%d to %d", list[0], list[n-1])
	case n > most:
		return sheet.JoinNumbers(list[:most-1]) + fmt.Sprintf(" and %d more", n-most+1)
	}
	return sheet.JoinNumbers(list)
}

// A teller sets sentences in columns.
type teller struct {
	shot    *plan.Shot
	causes  []told
	flagged float64 // the room of the flags
	placed  float64 // that of where they lie
}

func newTeller(s *plan.Shot) teller {
	t := teller{shot: s}
	for _, l := range s.Lettered() {
		c := tell(s, l)
		t.causes = append(t.causes, c)
		t.flagged = max(t.flagged, signs.FlagWidth(c.Letter)+2)
		t.placed = max(t.placed, sheet.FontNote.Room(c.where)+2)
	}
	t.placed = min(t.placed, 34)
	return t
}

// A sentenceLine is one printed line of a sentence.
type sentenceLine struct {
	cause  *told
	first  bool
	text   string
	cure   string  // after it
	cureAt float64 // from the column's left
}

// cureGap is the space between a sentence and its cure on one line.
const cureGap = 4.0

// lines wraps a sentence: what is wrong, then what cures it, on the same line if it has
// room there.
func (t *teller) lines(c *told, width float64) (list []sentenceLine) {
	at := t.flagged + t.placed
	for i, line := range sheet.FontNote.Wrap(c.text, width-at) {
		list = append(list, sentenceLine{cause: c, first: i == 0, text: line})
	}
	if c.cure == "" {
		return list
	}
	cure := "Cure: " + c.cure
	last := &list[len(list)-1]
	if from := at + sheet.FontNote.Room(last.text) + cureGap; from+sheet.FontNote.Room(cure) <= width {
		last.cure, last.cureAt = cure, from
		return list
	}
	for _, line := range sheet.FontNote.Wrap(cure, width-at) {
		list = append(list, sentenceLine{cause: c, cure: line, cureAt: at})
	}
	return list
}

// findings returns a section for every printed line: in two columns where every sentence
// has room on one line of half the width, else in one. Letters ascend down the page.
func findings(sc *bands.Chart) []bands.Section {
	t := newTeller(sc.Shot)
	if sc.Narrow() {
		t.placed = min(t.placed, narrowPlace)
	}
	whole := sc.Paper.W - sheet.Margin - sc.Words()
	half := (whole - table.ColumnGap) / 2
	var all [][]sentenceLine
	columns := 2
	for i := range t.causes {
		lines := t.lines(&t.causes[i], half)
		if all = append(all, lines); len(lines) > 1 {
			columns = 1
		}
	}
	if columns == 1 || len(all) < 4 {
		columns = 1
		for i := range all {
			all[i] = t.lines(&t.causes[i], whole)
		}
	}
	rows := (len(all) + columns - 1) / columns
	var sections []bands.Section
	for i := range rows {
		cells := [][]sentenceLine{all[i]}
		if columns == 2 && i+rows < len(all) {
			cells = append(cells, all[i+rows])
		}
		sections = append(sections, t.row(sc, cells, half)...)
	}
	return append(sections, together(sc)...)
}

// together returns a section for every printed line of what the cures leave once they are
// written into the plan together; none where that has not been tried, or helps nothing.
func together(sc *bands.Chart) (sections []bands.Section) {
	says := sc.Shot.SaysTogether()
	if says == "" {
		return nil
	}
	for _, line := range sheet.FontNote.Wrap("Tried together: "+says, sc.Paper.W-sheet.Margin-sc.Words()) {
		sections = append(sections, bands.Section{
			Name: "findings", Least: table.SentencePitch + 0.3, Most: table.SentencePitch + 0.3, Head: findingsHead(sc),
			Draw: func(_ *bands.Leaf, g *draw.Group, top, _ float64) {
				g.Add(draw.NewText(sc.Words(), top+2.9, line, sheet.FontNote, draw.Cure))
			},
		})
	}
	return sections
}

// findingsHead returns what stands over the findings.
func findingsHead(sc *bands.Chart) *bands.Section {
	return &bands.Section{Name: "findings", Least: table.FootAir + sc.HeadRoom(), Draw: func(_ *bands.Leaf, g *draw.Group, top, _ float64) {
		g.Add(draw.NewText(sheet.Margin, top+table.FootAir+2.9, "Findings", sheet.FontHeading, draw.Black))
	}}
}

// narrowPlace is the room of where findings lie on a narrow screen at most, millimetres.
const narrowPlace = 18.0

// mostTogether is how many lines are kept on one sheet.
const mostTogether = 12

// row returns a section for each line of the longest of the cells.
func (t *teller) row(sc *bands.Chart, cells [][]sentenceLine, half float64) (sections []bands.Section) {
	count := 0
	for _, c := range cells {
		count = max(count, len(c))
	}
	for k := range count {
		s := bands.Section{Name: "findings", Least: table.SentencePitch + 0.3, Most: table.SentencePitch + 0.3, Head: findingsHead(sc)}
		if k == count-1 {
			s.Least, s.Most = s.Least+0.9, s.Most+0.9
		}
		if k == 0 && count <= mostTogether {
			s.Together = count - 1
		}
		if k == 0 {
			for _, c := range cells {
				s.Flags = append(s.Flags, c[0].cause.Flags...)
			}
		}
		s.Draw = func(_ *bands.Leaf, g *draw.Group, top, _ float64) {
			for i, c := range cells {
				if k < len(c) {
					t.draw(g, c[k], sc.Words()+float64(i)*(half+table.ColumnGap), top+2.9)
				}
			}
		}
		sections = append(sections, s)
	}
	return sections
}

// draw draws a line of a sentence.
func (t *teller) draw(g *draw.Group, l sentenceLine, x, base float64) {
	c := l.cause
	for i, number := range c.Flags { // one in the other, so that each finding leads to its sentence
		g = g.Group("sentence")
		if g.Number = number; i == 0 && l.first {
			g.ID, g.Link = bands.SentenceID(t.shot, c.Letter), bands.FlagID(t.shot, c.Letter)
		}
	}
	if l.first {
		signs.DrawFlag(g, x, base-sheet.FontNote.Middle()-bands.FlagHeight/2, c.Severity, c.Letter)
		g.Add(draw.NewText(x+t.flagged, base, c.where, sheet.FontNote, draw.Grey).Shortened(t.placed - 1.6))
	}
	if l.text != "" {
		g.Add(draw.NewText(x+t.flagged+t.placed, base, l.text, sheet.FontNote, draw.Black))
	}
	if l.cure != "" {
		g.Add(draw.NewText(x+l.cureAt, base, l.cure, sheet.FontNote, draw.Cure))
	}
}
