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
	f := &flow{paper: opt.Size()}
	f.turn()
	for _, l := range sc.Lines {
		f.line(sc, l)
	}
	f.below(sc)
	return f.pages(sc)
}

// A flow is pages under construction.
type flow struct {
	paper sheet.Paper
	roots []*draw.Group
	y     float64 // the lower end of what is filled
}

// turn begins a new page.
func (f *flow) turn() {
	f.roots = append(f.roots, &draw.Group{})
	f.y = top
}

// take reserves a strip across the page, on a new one if it does not fit, and returns the
// group to draw in and the top of the strip.
func (f *flow) take(height float64, name string) (g *draw.Group, at float64) {
	if f.y+height > f.paper.H-foot && f.y > top {
		f.turn()
	}
	at = f.y
	f.y += height
	return f.roots[len(f.roots)-1].Group(name), at
}

// right returns where the words end at most.
func (f *flow) right() float64 { return f.paper.W - sheet.Margin }

// pages returns the finished pages, each with its head and its legend.
func (f *flow) pages(sc *coverage.Scene) []*draw.Page {
	head := heading(sc)
	pages := make([]*draw.Page, len(f.roots))
	for i, root := range f.roots {
		title := "coverage"
		if head.Name != "" {
			title = head.Name + ": coverage"
		}
		if len(f.roots) > 1 {
			title += fmt.Sprintf(", page %d of %d", i+1, len(f.roots))
		}
		p := &draw.Page{
			Title: draw.Clean(title), W: f.paper.W, H: f.paper.H,
			Desc: "What each set-up has of each word: a bar for each set-up below the words that it has, black where the speaker is sharp.",
		}
		p.Root.ID = draw.ID(head.Name, "coverage", fmt.Sprint(i+1))
		folio := sheet.Folio{Paper: "coverage", Number: i + 1, Of: len(f.roots), Scale: "what each set-up has of each word"}
		sheet.DrawHeadOf(p.Root.Group("head"), head, f.paper, folio)
		p.Root.Add(root.Items...)
		sheet.DrawLegend(&p.Root, f.paper)
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
	line = sheet.Joined([]string{line, units.Count(len(sc.Setups), "set-up"), units.Count(sc.Words, "word")})
	return sheet.Heading{Name: name, Line: line}
}
