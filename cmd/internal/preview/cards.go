// Cards: what the page says beside a pull or a subject that somebody points at.

package preview

import (
	"pullscore/interp/plan"
	"pullscore/render/draw"
	"pullscore/render/score"
	"pullscore/render/sheet"
)

// A toldFigure is a line of a card.
type toldFigure struct {
	Title string `json:"title"`
	Text  string `json:"text"`
}

// A toldWho is somebody in the shot.
type toldWho struct {
	Name    string       `json:"name"`
	Figures []toldFigure `json:"figures"`
}

// tellFigures returns the card of a pull: what the table of the score says of it.
func tellFigures(s *plan.Shot, p *plan.Pull) (name string, figures []toldFigure) {
	name, cells := score.Told(s, p)
	for _, c := range cells {
		figures = append(figures, toldFigure{draw.Clean(c.Title), draw.Clean(c.Text)})
	}
	return draw.Clean(name), figures
}

// tellSubjects returns the subjects of a shot in the order of its papers, with their
// cards: how far away each is, and how deep.
func tellSubjects(s *plan.Shot) []toldWho {
	list := []toldWho{}
	style := sheet.Style(s)
	both := func(t float64, u *plan.Subject) string {
		near, other := style.Both(s.DistanceAt(u, t))
		return sheet.Joined([]string{near, other})
	}
	for _, u := range sheet.Order(s) {
		t := toldWho{Name: draw.Clean(u.Name), Figures: []toldFigure{{"at the start", both(0, u)}}}
		if end := float64(s.Duration); sheet.Moves(s, u) && finite(s.Duration) {
			t.Figures = append(t.Figures, toldFigure{"at the end", both(end, u)})
		}
		if u.Deep.Known() {
			t.Figures = append(t.Figures, toldFigure{"deep", style.Gap(float64(u.Deep))})
		}
		list = append(list, t)
	}
	return list
}
