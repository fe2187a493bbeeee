package coverage

import (
	"fmt"
	"strings"

	"pullscore/interp/coverage"
	"pullscore/interp/units"
	"pullscore/render/draw"
	"pullscore/render/sheet"
)

// The sizes of the paper, in millimetres.
const (
	top       = 30.0 // of what is below the head
	foot      = 20.5
	headsEnd  = 42.0 // where names before the words end
	wordsFrom = 46.0
)

// Coverage draws a scene; nothing if nobody speaks in it.
func Coverage(sc *coverage.Scene, opt sheet.Options) []*draw.Page {
	if len(sc.Lines) == 0 {
		return nil
	}
	f := &flow{sheet.NewStack(opt.Size(), top, foot)}
	for _, l := range sc.Lines {
		f.line(sc, l)
	}
	f.below(sc)
	return f.pages(sc)
}

// A flow is pages under construction.
type flow struct{ sheet.Stack }

// right returns where the words end at most.
func (f *flow) right() float64 { return f.Paper.W - sheet.Margin }

// pages returns the finished pages, each with its head and its legend.
func (f *flow) pages(sc *coverage.Scene) []*draw.Page {
	head := heading(sc)
	pages := make([]*draw.Page, len(f.Roots))
	for i, root := range f.Roots {
		title := "coverage"
		if head.Name != "" {
			title = head.Name + ": coverage"
		}
		if len(f.Roots) > 1 {
			title += fmt.Sprintf(", page %d of %d", i+1, len(f.Roots))
		}
		p := &draw.Page{
			Title: draw.Clean(title), W: f.Paper.W, H: f.Paper.H,
			Desc: "What each set-up has of each word: a bar for each set-up below the words that it has, black where the speaker is sharp.",
		}
		p.Root.ID = draw.ID(head.Name, "coverage", fmt.Sprint(i+1))
		folio := sheet.Folio{Paper: "coverage", Number: i + 1, Of: len(f.Roots), Scale: "what each set-up has of each word"}
		sheet.DrawHeadOf(p.Root.Group("head"), head, f.Paper, folio)
		p.Root.Add(root.Items...)
		sheet.DrawLegend(&p.Root, f.Paper)
		pages[i] = p
	}
	return pages
}

// heading returns the head of a scene: what its title has behind a colon, and below it the
// rest.
func heading(sc *coverage.Scene) sheet.Heading {
	name, line := strings.TrimSpace(sc.Title), ""
	if before, after, ok := strings.Cut(name, ":"); ok && strings.TrimSpace(after) != "" {
		name, line = strings.TrimSpace(after), strings.TrimSpace(before)
	}
	if sc.Staged != nil && sc.Plan != sc.Title {
		line = strings.TrimSpace(sc.Plan)
	}
	line = sheet.Joined([]string{line, units.Count(len(sc.Setups), "set-up"), units.Count(sc.Words, "word")})
	return sheet.Heading{Name: name, Line: line}
}
