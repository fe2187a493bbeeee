// The brief: the crew papers of one plan or of many. Their words and tables
// are passages, which pages show on paper and HTML on a phone, so that both
// say the same.

package brief

import (
	"fmt"
	"path/filepath"
	"slices"
	"strings"

	"pullscore/interp/plan"
	"pullscore/interp/units"
	"pullscore/render/cards"
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
	Links     [][]string // for each cell the ID that it leads to, or ""; nil: none leads anywhere
	IDs       []string   // for each row its own ID, or ""; nil: none has one
	Drawn     bool       // a drawing of the shot shows the same, so paper does without
	Paper     bool       // only for paper: on a screen another passage has it
}

// A Column is the head of a table's column. Text wraps; figures do not.
type Column struct {
	Title string
	Text  bool
}

// said returns the passage without the columns in which no row says anything.
func (p Passage) said() Passage {
	t := sheet.Table{Rows: p.Rows, Links: p.Links}
	for _, c := range p.Columns {
		t.Columns = append(t.Columns, sheet.Column{Title: c.Title, Text: c.Text})
	}
	t.DropEmpty()
	p.Columns, p.Rows, p.Links = nil, t.Rows, t.Links
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
	Figures []Figure // in the order in which they are printed
	Place   Place
	Before  *Scene // the papers of its scene, which stand before its own; nil: they stand elsewhere, or there are none
}

// A Figure is a drawing of a shot.
type Figure struct {
	Name  string
	Pages []*draw.Page
	True  bool // drawn 1:1, to be printed at 100 %
	Words bool // it is the passages that no drawing shows, laid on pages
	Paper bool // to be printed and not looked at: a screen has something better
}

// A Place is where the papers of a shot begin in a brief.
type Place struct {
	Page    int    // from 1; 0: not known
	ID      string // of what begins with the shot
	Row     string // the ID of the row of the shot on the cover
	Finding string // the ID of the flag of its worst finding; "": none has one
}

// Places are where the papers of shots begin.
type Places map[*plan.Shot]Place

// NewShot draws the papers of a shot, and more figures after them. id tells the shot from
// all others of the brief; all IDs on the pages begin with it.
func NewShot(s *plan.Shot, id string, opt sheet.Options, more ...Figure) Shot {
	b := Shot{Name: sheet.ShotName(s), Setup: sheet.Setup(s), Sheet: shotSheet(s), Place: Place{ID: id, Row: "cover-" + id}}
	figures := []Figure{
		{Name: "Score", Pages: score.Score(s, opt)},
		{Name: "Ring", Pages: ring.Ring(s, opt), True: true},
		{Name: "Floor", Pages: floor.Draw(s, opt)},
		{Name: "Tolerance", Pages: cards.Tolerance(s, opt), True: true, Paper: true},
		{Name: "Log", Pages: cards.Log(s, opt), Paper: true},
	}
	figures = append(figures, more...)
	figures = append(figures, Figure{Name: "In words", Pages: wordPages(s, b.Sheet, opt), Words: true})
	for _, f := range figures {
		if len(f.Pages) == 0 {
			continue
		}
		draw.Under(id+"-", f.Pages...)
		b.Figures = append(b.Figures, f)
	}
	if worst := worstFlag(s); worst != nil {
		b.Place.Finding = flagID(b.Figures, worst)
	}
	if first := &b.Figures[0].Pages[0].Root; first.ID == "" {
		first.ID = id + "-first"
	}
	return b
}

// First returns the ID of the first page of a shot.
func (b *Shot) First() string { return b.Figures[0].Pages[0].Root.ID }

// flagID returns the ID of the flag of a finding on the pages; "" if it has none.
func flagID(figures []Figure, f *plan.Flag) string {
	for _, figure := range figures {
		for _, p := range figure.Pages {
			for it := range p.Root.All() {
				g, ok := it.(*draw.Group)
				if ok && g.ID != "" && g.Name == f.Severity && slices.ContainsFunc(g.Items, func(it draw.Item) bool {
					text, ok := it.(draw.Text)
					return ok && strings.Contains(text.String, f.Cause)
				}) {
					return g.ID
				}
			}
		}
	}
	return ""
}

// PlanTitle is the title of a plan as papers have it.
func PlanTitle(p *plan.Plan) string {
	if p.Title == "" {
		return "A plan without a title"
	}
	return p.Title
}

// Titles returns what the plans are called in one document: their titles, and with plans
// of one title their files besides.
func Titles(plans []*plan.Plan) []string {
	titles, called, files := make([]string, len(plans)), map[string]int{}, map[string]int{}
	base := func(p *plan.Plan) string { return filepath.Base(filepath.ToSlash(p.File)) }
	for i, p := range plans {
		titles[i] = PlanTitle(p)
		called[titles[i]]++
		files[base(p)]++
	}
	for i, p := range plans {
		if called[titles[i]] == 1 || p.File == "" {
			continue
		}
		file := base(p)
		if files[file] > 1 { // in several folders
			file = filepath.Base(filepath.Dir(filepath.ToSlash(p.File))) + "/" + file
		}
		titles[i] += " (" + file + ")"
	}
	return titles
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
const numberFoot = 3.4

// NumberPage writes at the foot of a page which sheet of all it is. The words lead to the
// group with that ID.
func NumberPage(p *draw.Page, number, of int, back string) {
	text := draw.NewText(p.W-sheet.Margin, p.H-numberFoot, fmt.Sprintf("sheet %d of %d", number, of), sheet.FontNote, draw.Grey)
	g := p.Root.Group("page-number")
	g.Link = back
	g.Add(text.Aligned(draw.End))
}
