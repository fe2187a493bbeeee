// Pages that a command writes to standard output.

package main

import (
	"errors"
	"fmt"

	"pullscore/interp/plan"
	"pullscore/render/draw"
	"pullscore/render/fonts"
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

// A printing is how a command writes pages to standard output.
type printing struct {
	form, title string
	paper       sheet.Paper
	how         rendering
}

// printPages writes pages to standard output: all of them as pdf or html, one as svg or
// png.
func (s *session) printPages(p printing, chapters []chapter) error {
	var pages []*draw.Page
	for i, c := range chapters {
		if len(chapters) > 1 {
			draw.Under(fmt.Sprintf("s%d-", i+1), c.pages...)
		}
		pages = append(pages, c.pages...)
	}
	if len(pages) == 0 {
		return errNoPage
	}
	if backends[p.form].embedded {
		defer s.noteLacking(fonts.Faces(p.how.fonts).Lacking(pages...), "--as html shows them in the fonts of the system")
	}
	switch {
	case p.form == "html":
		var list []html.Sheets
		for _, c := range chapters {
			list = append(list, html.Sheets{Heading: c.title, Pages: c.pages})
		}
		return html.WriteSheets(s.out, p.title, list, html.Options{Language: language, Paper: p.paper})
	case p.form == "pdf":
		return s.printPDF(p, chapters)
	case len(pages) > 1:
		return fmt.Errorf("standard output takes one page as %s, and there are %d: use --as pdf or --as html", p.form, len(pages))
	}
	return backends[p.form].write(s.out, &plan.Shot{Title: pages[0].Title}, pages, p.how)
}

// printPDF writes one file with a bookmark for each chapter.
func (s *session) printPDF(p printing, chapters []chapter) error {
	f := pdf.New(pdf.Info{Title: p.title, Desc: chapters[0].pages[0].Desc, Language: language, Fonts: p.how.fonts})
	for _, c := range chapters {
		f.Mark(c.title, 0)
		for _, page := range c.pages {
			f.Add(page)
		}
	}
	return f.Write(s.out)
}
