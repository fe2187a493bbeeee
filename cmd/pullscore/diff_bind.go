// All changed shots in one PDF file: first the changes in words, with the page of each shot,
// then the drawings.

package main

import (
	"cmp"
	"fmt"

	"pullscore/cmd/internal/diff"
	"pullscore/interp/plan"
	"pullscore/interp/units"
	"pullscore/render/brief"
	"pullscore/render/difference"
	"pullscore/render/draw"
	"pullscore/render/fonts"
)

// A place is where a shot begins in a document.
type place struct {
	page int // from 1; 0: nowhere
	id   string
}

// bind draws all that changed into one file. The pages in words come first and name pages
// that come later: room is kept for them, and they are drawn last.
func (c *diffCmd) bind(s *session, plans []diff.Plan, out output, how rendering) error {
	f := newSheaf(how)
	front := c.front(plans, func(*plan.Shot) place { return place{page: 1} })
	f.file.Mark("changes", 0)
	for _, p := range front {
		f.file.Add(&draw.Page{Title: p.Title, W: p.W, H: p.H})
	}
	f.pages = len(front)
	places := map[*plan.Shot]place{}
	for _, p := range plans {
		f.begin(shownPlan(p), cmp.Or(p.Title, "A plan without a title")+" ("+cmp.Or(p.After, p.Before)+")")
		for _, shot := range p.Shots {
			if shot.Change != diff.Same {
				is, _ := shotOf(p, shot)
				at := place{}
				at.page, at.id = f.add(is, []set{{what: "diff", pages: difference.Draw(overlaid(p, shot), c.options())}})
				places[is] = at
			}
		}
	}
	if len(places) == 0 {
		return errNothingToDraw
	}
	f.desc = "What changed, in words and drawn."
	for i, p := range c.front(plans, func(s *plan.Shot) place { return places[s] }) {
		f.file.Over(i+1, p)
		f.lacking = append(f.lacking, fonts.Faces(f.fonts).Lacking(p)...)
	}
	for n := range f.pages {
		p := &draw.Page{W: front[0].W, H: front[0].H}
		brief.NumberPage(p, n+1, f.pages, front[0].Root.ID)
		f.file.Over(n+1, p)
	}
	g := pile{session: s, out: out, sheaf: f}
	return g.end()
}

// front returns the pages that tell the changes in words, with the places of the shots.
func (c *diffCmd) front(plans []diff.Plan, where func(*plan.Shot) place) []*draw.Page {
	var passages []brief.Passage
	differ := 0
	for _, p := range plans {
		if !p.Differs() {
			continue
		}
		differ++
		t := brief.Passage{Heading: cmp.Or(p.Title, "A plan without a title"), Sentences: p.Phrases(c.All),
			Columns: []brief.Column{{Title: "shot"}, {Title: "title", Text: true}, {Title: "what changed", Text: true}, {Title: "on sheet"}}}
		for _, shot := range p.Shots {
			if shot.Change == diff.Same {
				continue
			}
			is, _ := shotOf(p, shot)
			at := where(is)
			for i, text := range shot.Phrases(c.All) {
				row := []string{"", "", text, ""}
				if i == 0 {
					row = []string{is.ID, is.Title, text, fmt.Sprint(at.page)}
				}
				t.Rows = append(t.Rows, row)
				t.Links = append(t.Links, []string{at.id, at.id, "", at.id})
			}
		}
		passages = append(passages, t)
	}
	passages = append(passages, brief.Passage{Sentences: []string{diff.Summary(plans) + "."}})
	return brief.FrontPages("What changed in "+units.Count(differ, "plan"), "changes", "What changed for the crew, with the page of each shot.", passages, c.options())
}

// shownPlan returns what a sheaf calls a plan after.
func shownPlan(p diff.Plan) *plan.Plan { return &plan.Plan{Title: p.Title} }
