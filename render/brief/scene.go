// The papers of a scene that is staged, which stand before those of its shots: its floor,
// its marks in words, and the card of all tapes.

package brief

import (
	"math"
	"slices"

	"pullscore/interp/plan"
	"pullscore/interp/units"
	"pullscore/render/draw"
	"pullscore/render/floor/staged"
	"pullscore/render/sheet"
)

// A Scene is the papers of a scene.
type Scene struct {
	ID      string // of what begins with the scene
	Title   string
	Sheet   []Passage
	Figures []Figure // in the order in which they are printed
}

// SceneBefore returns the index of the scene whose papers stand before those of a shot: it
// is the first of the plan whose camera stands on the scene's floor.
func SceneBefore(p *plan.Plan, s *plan.Shot) (scene int, ok bool) {
	for i := range p.Scenes {
		if shots := staged.ShotsOf(p, i); len(shots) > 0 && shots[0] == s {
			return i, true
		}
	}
	return 0, false
}

// NewScene draws the papers of a scene of a plan, by its index, and more figures after them.
// All IDs on the pages begin with id.
func NewScene(p *plan.Plan, scene int, id string, opt sheet.Options, more ...Figure) *Scene {
	f := staged.Of(p, scene)
	b := &Scene{ID: id, Title: f.Title, Sheet: []Passage{marksOf(f)}}
	figures := []Figure{
		{Name: "Floor of the scene", Pages: staged.Draw(p, scene, opt)},
		{Name: "Marks", Pages: markPages(f, b.Sheet, opt), Words: true},
		{Name: "Tapes", Pages: staged.Card(p, scene, opt), Paper: true},
	}
	for _, f := range append(figures, more...) {
		if len(f.Pages) > 0 {
			draw.Under(id+"-", f.Pages...)
			b.Figures = append(b.Figures, f)
		}
	}
	return b
}

// marksOf lists the places and marks of a floor, each with its ways from the zero point in
// both units.
func marksOf(f *staged.Floor) Passage {
	t := Passage{Heading: "Marks", Columns: []Column{
		{"letter", false}, {"who or what", true}, {"on", true}, {"right or left", false}, {"or", false}, {"upstage or downstage", false}, {"or", false}, {"high", false}, {"or", false},
	}}
	if f.Origin != "" {
		t.Sentences = append(t.Sentences, "The zero point is "+f.Origin+".")
	}
	t.Sentences = append(t.Sentences, "Heights are those of the eyes, or of what the focus is put on, over the zero point.")
	row := func(letter, name, on string, at staged.Spot, high bool) {
		right, right2 := way(at.X, "right", "left", f.Style)
		up, up2 := way(at.Y, "upstage", "downstage", f.Style)
		cells := []string{letter, name, on, right, right2, up, up2, "", ""}
		if high {
			cells[7], cells[8] = f.Style.Both(at.Z)
		}
		t.Rows = append(t.Rows, cells)
	}
	for _, p := range f.Places {
		name := p.Name
		if p.Later {
			name += ", from " + sheet.Figures.Time(p.From)
		}
		if p.Only != "" {
			name += ", in " + p.Only
		}
		row(p.Letter, name, p.Mark, p.At, !p.Level)
	}
	for _, m := range f.Marks {
		if !slices.ContainsFunc(f.Places, func(p staged.Place) bool { return p.Mark == m.Name }) {
			row("", m.Name, "", m.At, m.At.Z != 0)
		}
	}
	return t.said()
}

// way writes how far something lies on one of two sides, in both units.
func way(v float64, to, fro string, in units.Style) (first, other string) {
	side := to
	if v < 0 {
		side = fro
	}
	first, other = in.Both(math.Abs(v))
	if math.Abs(v) < 0.0005 { // half a millimetre is no way
		return "0", "0"
	}
	return first + " " + side, other
}

// markPages lays the passages of a scene out.
func markPages(f *staged.Floor, passages []Passage, opt sheet.Options) []*draw.Page {
	h := newPages(nil, opt)
	h.put(append(slices.Clone(passages), Passage{Heading: cautions, Sentences: f.Cautions}))
	return h.leaves(f.Title+": marks", "The places and marks of the scene, with their ways from the zero point.", func(p *draw.Page, number, of int) {
		p.Root.ID = draw.ID("marks", sheet.Figures.Number(float64(number), 0))
		sheet.DrawHeadOf(p.Root.Group("head"), sheet.Heading{Name: f.Title, Line: f.PlanName}, h.Paper, sheet.Folio{Paper: "marks", Number: number, Of: of})
	})
}
