// The head of the sheets of a shot: which paper it is, and which page of it.

package sheet

import (
	"fmt"
	"strconv"

	"pullscore/interp/plan"
	"pullscore/render/draw"
)

// A Folio says which sheet this is.
type Folio struct {
	Paper      string // the name of the drawing
	Number, Of int    // from 1
	Scale      string // of time or length; may be empty
	Back       string // the ID of the sheet that tells of all others; may be empty
}

// String returns the folio in words.
func (f Folio) String() string {
	return fmt.Sprintf("%s · page %d of %d", f.Paper, f.Number, max(f.Number, f.Of))
}

// DrawHead writes the shot and its set-up at the left, and at the right the folio, and
// below it the rate, the length and the scale.
func DrawHead(g *draw.Group, s *plan.Shot, paper Paper, f Folio) {
	drawFirst(g, s.ID, s.Title, paper, f)
	line := Joined([]string{Rate(s), f.Scale})
	right := draw.NewText(paper.W-Margin, HeadBase+HeadPitch, line, FontBody, draw.Grey).Aligned(draw.End)
	g.Add(right, draw.NewText(Margin, HeadBase+HeadPitch, Setup(s), FontBody, draw.Grey).Shortened(right.Room().X-4-Margin))
}

// drawFirst writes the first line of a head.
func drawFirst(g *draw.Group, name, title string, paper Paper, f Folio) {
	folio := draw.NewText(paper.W-Margin, HeadBase, f.String(), FontHeading, draw.Black).Aligned(draw.End)
	number := g.Group("folio")
	number.Link = f.Back
	number.Add(folio)
	room := folio.Room().X - 6 - Margin
	id := draw.NewText(Margin, HeadBase, name, FontID, draw.Black).Shortened(room)
	g.Add(id)
	if rest := room - id.Room().W - 4; title != "" && rest > 10 {
		g.Add(draw.NewText(Margin+id.Room().W+2, HeadBase, title, FontTitle, draw.Black).Shortened(rest))
	}
}

// DrawHeadOf writes the head of pages that belong to no shot.
func DrawHeadOf(g *draw.Group, h Heading, paper Paper, f Folio) {
	drawFirst(g, h.Name, h.Title, paper, f)
	right := draw.NewText(paper.W-Margin, HeadBase+HeadPitch, f.Scale, FontBody, draw.Grey).Aligned(draw.End)
	g.Add(right, draw.NewText(Margin, HeadBase+HeadPitch, h.Line, FontBody, draw.Grey).Shortened(right.Room().X-4-Margin))
}

// PageID returns the ID of a page of a paper of a shot. Number counts from 1.
func PageID(s *plan.Shot, paper string, number int) string {
	return draw.ID(s.ID, paper, strconv.Itoa(number))
}

// Rate returns the rate and the length of a shot as text.
func Rate(s *plan.Shot) string {
	line := fmt.Sprintf("%s fps · %s", s.Rate, Figures.Time(float64(s.Duration)))
	if screen := s.OnScreen(float64(s.Duration)); screen.Known() {
		line += fmt.Sprintf(", %s on the screen", Figures.Time(float64(screen)))
	}
	return line
}
