package html

import (
	"bufio"
	"fmt"
	"html"
	"io"
	"strings"

	"pullscore/interp/moments"
	"pullscore/interp/plan"
	"pullscore/render/brief"
	"pullscore/render/draw"
	"pullscore/render/sheet"
	"pullscore/render/svg"
)

// Options are what a file leaves to its user. The zero paper is A4.
type Options struct {
	Language string // of the words, by BCP 47
	Paper    sheet.Paper
}

// WriteHead writes the begin of the file: the cover, and links to all shots of
// the plans, which are at those places. Shots follow by WriteShot, in order, and
// WriteFoot. Each returns the first error of w; the same plans give the same bytes.
func WriteHead(w io.Writer, title string, plans []*plan.Plan, where brief.Places, opt Options) error {
	if opt.Paper == (sheet.Paper{}) {
		opt.Paper = sheet.A4
	}
	out := newWriter(w)
	out.head(title, opt)
	out.contents(plans, where)
	out.markup("<main>\n<section class=\"words\" id=\"cover\">\n")
	out.passages(brief.Cover(plans, where), 2)
	out.markup("</section>\n")
	out.collected(plans)
	return out.flush()
}

// WriteShot writes the papers of a shot. The first shot of a scene comes with the
// scene's title.
func WriteShot(w io.Writer, title string, first bool, s *plan.Shot, shot brief.Shot) error {
	out := newWriter(w)
	if first {
		out.markup("<h2 class=\"scene\" dir=\"auto\">%s</h2>\n", title)
	}
	out.scene(shot.Before)
	out.markup("<section id=\"%s\">\n<div class=\"words\">\n<h3 dir=\"auto\">%s</h3>\n<p class=\"setup\" dir=\"auto\">%s</p>\n", shot.Place.ID, shot.Name, shot.Setup)
	out.markup("<p class=\"screen\"><a href=\"#%s\">To the cover</a></p>\n", shot.Place.Row)
	out.passages(shot.Sheet, 4)
	out.markup("</div>\n")
	for _, f := range shot.Figures {
		if !f.Words { // the passages have it
			out.figure(shot.Name, f)
		}
	}
	out.log(s, shot.Name)
	out.markup("</section>\n")
	return out.flush()
}

// scene writes the papers of a scene that is staged; nothing for none.
func (w writer) scene(b *brief.Scene) {
	if b == nil {
		return
	}
	w.markup("<section id=\"%s\">\n<div class=\"words\">\n<h3 dir=\"auto\">%s</h3>\n", b.ID, b.Title)
	w.passages(b.Sheet, 4)
	w.markup("</div>\n")
	for _, f := range b.Figures {
		if !f.Words {
			w.figure(b.Title, f)
		}
	}
	w.markup("</section>\n")
}

// WriteFoot writes the end of the file.
func WriteFoot(w io.Writer) error {
	out := newWriter(w)
	out.markup("</main>\n<script>\n")
	out.out.WriteString(script)
	out.markup("</script>\n</body>\n</html>\n")
	return out.flush()
}

// A writer writes markup as it is and text escaped; the buffer keeps the first
// error of what it writes to.
type writer struct{ out *bufio.Writer }

func newWriter(w io.Writer) writer { return writer{bufio.NewWriter(w)} }

func (w writer) flush() error {
	if err := w.out.Flush(); err != nil {
		return fmt.Errorf("writing HTML: %w", err)
	}
	return nil
}

// markup writes a format of ours whose verbs get texts of the plan, which are
// cleaned and escaped.
func (w writer) markup(format string, texts ...string) {
	args := make([]any, len(texts))
	for i, text := range texts {
		args[i] = html.EscapeString(draw.Clean(text))
	}
	fmt.Fprintf(w.out, format, args...)
}

func (w writer) head(title string, opt Options) {
	w.markup("<!doctype html>\n<html lang=\"%s\">\n<head>\n<meta charset=\"utf-8\">\n"+
		"<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n<title>%s</title>\n", opt.Language, title)
	w.out.WriteString("<style>\n" + style(opt.Paper) + svg.Style(".sheet") + "</style>\n")
	w.markup("</head>\n<body>\n<header><h1>%s</h1></header>\n", title)
}

// contents links to every shot.
func (w writer) contents(plans []*plan.Plan, where brief.Places) {
	titles := brief.Titles(plans)
	w.markup("<nav aria-label=\"Contents\"><details><summary>Contents</summary>\n<ul>\n<li><a href=\"#log\">Log of takes</a></li>\n")
	for i, p := range plans {
		w.markup("<li dir=\"auto\">%s<ul>\n", titles[i])
		for _, s := range p.Shots {
			w.markup("<li><a href=\"#%s\" dir=\"auto\">%s</a></li>\n", where[s].ID, s.ID+" "+s.Title)
		}
		w.markup("</ul></li>\n")
	}
	w.markup("</ul>\n</details></nav>\n")
}

// figure writes a drawing, a page after the other. On a screen that is too
// narrow for it, it scrolls on its own.
func (w writer) figure(of string, f brief.Figure) {
	kind := "sheet"
	if f.True {
		kind += " true"
	}
	if f.Paper {
		kind += " paper"
	} else {
		w.markup("<h4 class=\"figure\">%s</h4>\n", f.Name)
	}
	for i, page := range f.Pages {
		label := fmt.Sprintf("%s of %s, page %d of %d", f.Name, of, i+1, len(f.Pages))
		w.markup("<div class=\""+kind+"\" tabindex=\"0\" role=\"group\" aria-label=\"%s\">\n", label)
		if err := svg.WriteBare(w.out, page); err != nil {
			return // the buffer keeps it
		}
		w.markup("</div>\n")
	}
}

// passages writes passages under headings of a level.
func (w writer) passages(list []brief.Passage, level int) {
	for _, p := range list {
		if p.Drawn || p.Paper {
			w.markup(map[bool]string{true: "<div class=\"screen\">\n", false: "<div class=\"paper\">\n"}[p.Drawn])
		}
		if p.Heading != "" {
			w.markup(strings.ReplaceAll("<hN dir=\"auto\">%s</hN>\n", "N", fmt.Sprint(level)), p.Heading)
		}
		for _, sentence := range p.Sentences {
			w.markup("<p dir=\"auto\">%s</p>\n", sentence)
		}
		if len(p.Rows) > 0 {
			w.table(p)
		}
		if p.Drawn || p.Paper {
			w.markup("</div>\n")
		}
	}
}

// table writes a table. On a narrow screen its rows become blocks and each cell
// has its column's head before it; so it has its roles in words, which browsers
// else take from a table's looks.
func (w writer) table(p brief.Passage) {
	w.markup("<div class=\"scroll\" tabindex=\"0\" role=\"group\" aria-label=\"%s\"><table class=\"rows\" role=\"table\">\n<thead role=\"rowgroup\"><tr role=\"row\">", p.Heading+", table")
	for _, c := range p.Columns {
		w.markup("<th scope=\"col\" role=\"columnheader\">%s</th>", c.Title)
	}
	w.markup("</tr></thead>\n<tbody role=\"rowgroup\">\n")
	for i, row := range p.Rows {
		if i < len(p.IDs) {
			w.markup("<tr role=\"row\" id=\"%s\">", p.IDs[i])
		} else {
			w.markup("<tr role=\"row\">")
		}
		for k, cell := range row {
			link := ""
			if i < len(p.Links) {
				link = p.Links[i][k]
			}
			w.cell(p.Columns[k], cell, link)
		}
		w.markup("</tr>\n")
	}
	w.markup("</tbody>\n</table></div>\n")
}

// cell writes a cell of a table, which leads to a link if it has one.
func (w writer) cell(c brief.Column, text, link string) {
	class := ""
	if c.Text {
		class = " class=\"text\""
	}
	w.markup("<td"+class+" role=\"cell\" data-head=\"%s\" dir=\"auto\">", c.Title)
	switch {
	case link != "" && text != "":
		w.markup("<a href=\"#%s\">%s</a>", link, text)
	case assumed(text):
		w.markup("<span class=\"assumed\">%s</span>", text)
	default:
		w.markup("%s", text)
	}
	w.markup("</td>")
}

// assumed reports whether a cell is a chance that no measured ring stands behind.
func assumed(cell string) bool {
	return strings.HasSuffix(cell, " "+moments.ByTheLaw) || strings.HasSuffix(cell, " "+moments.RingNotKnown)
}
