// Pages that a command writes to standard output.

package main

import (
	"errors"
	"fmt"

	"pullscore/interp/plan"
	"pullscore/render/draw"
	"pullscore/render/html"
	"pullscore/render/pdf"
	"pullscore/render/sheet"
)

// errNoPage ends a command that draws pages, where there is nothing to draw.
var errNoPage = errors.New("there is nothing to draw")

// A chapter is pages with a title.
type chapter struct {
	title string
	pages []*draw.Page
}

// printPages writes pages to standard output: all of them as pdf or html, one as svg or
// png.
func (s *session) printPages(form, title string, chapters []chapter, paper sheet.Paper) error {
	var pages []*draw.Page
	for i, c := range chapters {
		if len(chapters) > 1 {
			draw.Under(fmt.Sprintf("s%d-", i+1), c.pages...)
		}
		pages = append(pages, c.pages...)
	}
	switch {
	case len(pages) == 0:
		return errNoPage
	case form == "html":
		var list []html.Sheets
		for _, c := range chapters {
			list = append(list, html.Sheets{Heading: c.title, Pages: c.pages})
		}
		return html.WriteSheets(s.out, title, list, html.Options{Language: language, Paper: paper})
	case form == "pdf":
		defer s.noteLacking(draw.Lacking(pages...), "--as html shows them")
		return s.printPDF(title, chapters)
	case len(pages) > 1:
		return fmt.Errorf("standard output takes one page as %s, and there are %d: use --as pdf or --as html", form, len(pages))
	}
	if backends[form].embedded {
		defer s.noteLacking(draw.Lacking(pages...), "--as html shows them")
	}
	return backends[form].write(s.out, &plan.Shot{Title: pages[0].Title}, pages, drawDPI)
}

// printPDF writes one file with a bookmark for each chapter.
func (s *session) printPDF(title string, chapters []chapter) error {
	f := pdf.New(pdf.Info{Title: title, Desc: chapters[0].pages[0].Desc, Language: language})
	for _, c := range chapters {
		if len(c.pages) == 0 {
			continue
		}
		f.Mark(c.title, 0)
		for _, p := range c.pages {
			f.Add(p)
		}
	}
	return f.Write(s.out)
}
