// Pages of drawings alone, as one file.

package html

import (
	"fmt"
	"io"

	"pullscore/render/draw"
	"pullscore/render/sheet"
	"pullscore/render/svg"
)

// Sheets are pages with a heading.
type Sheets struct {
	Heading string
	Pages   []*draw.Page
}

// WriteSheets writes a file that holds pages of drawings and nothing else, with links to
// every heading if there are several. It returns the first error of w.
func WriteSheets(w io.Writer, title string, list []Sheets, opt Options) error {
	if opt.Paper == (sheet.Paper{}) {
		opt.Paper = sheet.A4
	}
	out := newWriter(w)
	out.head(title, opt)
	if len(list) > 1 {
		out.markup("<nav aria-label=\"Contents\"><details><summary>Contents</summary>\n<ul>\n")
		for i, s := range list {
			out.markup("<li><a href=\"#"+sheetsAnchor(i)+"\" dir=\"auto\">%s</a></li>\n", s.Heading)
		}
		out.markup("</ul>\n</details></nav>\n")
	}
	out.markup("<main>\n")
	for i, s := range list {
		out.markup("<section id=\""+sheetsAnchor(i)+"\">\n<h2 class=\"scene\" dir=\"auto\">%s</h2>\n", s.Heading)
		for _, page := range s.Pages {
			out.markup("<div class=\"sheet\" tabindex=\"0\" role=\"group\" aria-label=\"%s\">\n", page.Title)
			if err := svg.WriteBare(out.out, page); err != nil {
				return fmt.Errorf("writing HTML: %w", err)
			}
			out.markup("</div>\n")
		}
		out.markup("</section>\n")
	}
	out.markup("</main>\n</body>\n</html>\n")
	return out.flush()
}

func sheetsAnchor(i int) string { return fmt.Sprintf("sheets-%d", i+1) }
