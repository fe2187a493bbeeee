// The brief: the crew papers of one plan or of many. Their words and tables
// are passages, which pages show on paper and HTML on a phone, so that both
// say the same.

package brief

import (
	"strconv"
	"strings"

	"pullscore/interp/plan"
	"pullscore/interp/units"
	"pullscore/render/draw"
	"pullscore/render/floor"
	"pullscore/render/ring"
	"pullscore/render/score"
	"pullscore/render/sheet"
)

// A Passage is a part of a paper in words: a heading, sentences, a table.
type Passage struct {
	Heading   string
	Sentences []string
	Columns   []Column
	Rows      [][]string
	Blank     bool // rows to fill in by hand
}

// A Column is the head of a table's column. Text wraps; figures do not.
type Column struct {
	Title string
	Text  bool
}

// said returns the passage without the columns in which no row says anything.
func (p Passage) said() Passage {
	t := sheet.Table{Rows: p.Rows}
	for _, c := range p.Columns {
		t.Columns = append(t.Columns, sheet.Column{Title: c.Title, Text: c.Text})
	}
	t.DropEmpty()
	p.Columns, p.Rows = nil, t.Rows
	for _, c := range t.Columns {
		p.Columns = append(p.Columns, Column{c.Title, c.Text})
	}
	return p
}

// A Shot is the papers of one shot.
type Shot struct {
	Name    string
	Setup   string // with what it is made
	Sheet   []Passage
	Pages   []*draw.Page // the sheet's passages as pages
	Figures []Figure
}

// A Figure is a drawing of a shot.
type Figure struct {
	Name  string
	Pages []*draw.Page
	True  bool // drawn 1:1, to be printed at 100 %
}

// NewShot draws the papers of a shot.
func NewShot(s *plan.Shot, opt sheet.Options) Shot {
	b := Shot{Name: sheet.ShotName(s), Setup: sheet.Setup(s), Sheet: shotSheet(s)}
	b.Pages = shotPages(s, b.Sheet, opt)
	b.Figures = []Figure{
		{"Score", score.Score(s, opt), false}, {"Floor", floor.Draw(s, opt), false},
		{"Strip", ring.Strip(s, opt), true},
	}
	if s.WheelMM.Known() { // without a wheel there is no dial
		b.Figures = append(b.Figures, Figure{"Dial", ring.Dial(s, opt), true})
	}
	return b
}

// PlanTitle is the title of a plan as papers have it.
func PlanTitle(p *plan.Plan) string {
	if p.Title == "" {
		return "A plan without a title"
	}
	return p.Title
}

// Title is what the plans' titles have in common: the film, or the scene
// where there is but one.
func Title(plans []*plan.Plan) string {
	if len(plans) == 1 {
		return PlanTitle(plans[0])
	}
	scenes := units.Count(len(plans), "scene")
	if film := commonTitle(plans); film != "" {
		return film + ": " + scenes
	}
	return scenes
}

// commonTitle is what all titles of the plans begin with, up to a sign that
// parts it from the rest; empty for nothing.
func commonTitle(plans []*plan.Plan) string {
	common := ""
	for i, p := range plans {
		if i == 0 {
			common = p.Title
		}
		for !strings.HasPrefix(p.Title, common) {
			common = common[:len(common)-1]
		}
	}
	return strings.TrimSpace(common[:max(strings.LastIndexAny(common, ",:;("), 0)])
}

// numberFoot is how far above the sheet's lower edge page numbers stand: where
// printers still print, and drawings have nothing.
const numberFoot = 3.6

// NumberPage writes a page's number at its foot.
func NumberPage(p *draw.Page, number int) {
	text := draw.NewText(p.W-sheet.Margin, p.H-numberFoot, strconv.Itoa(number), sheet.FontSmall, draw.Grey)
	p.Root.Group("page-number").Add(text.Aligned(draw.End))
}
