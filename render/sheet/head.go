// The head of every page of every drawing: the shot, and its camera, lens and stop.

package sheet

import (
	"fmt"
	"strings"

	"pullscore/interp/plan"
	"pullscore/interp/units"
	"pullscore/render/draw"
)

// DrawPageHead writes the shot and its set-up, and to the right one or two lines that
// name this page.
func DrawPageHead(g *draw.Group, s *plan.Shot, paper Paper, right ...string) {
	room := DrawPageTitle(g, s, paper, right...)
	g.Add(draw.NewText(Margin, HeadBase+HeadPitch, Setup(s), FontBody, draw.Grey).Shortened(room))
}

// The baselines of the head's first line, and the second's below it.
const (
	HeadBase  = Edge + 6.5
	HeadPitch = 5.2
)

// DrawPageTitle writes the head without the set-up. It returns the width that is left
// for the set-up, in millimetres.
func DrawPageTitle(g *draw.Group, s *plan.Shot, paper Paper, right ...string) (room float64) {
	return drawTitle(g, s.ID, s.Title, paper, right...)
}

// A Heading is the head of pages that belong to no shot: a name, a title beside it, and
// a line below.
type Heading struct{ Name, Title, Line string }

// DrawHeading writes a heading, and to the right one or two lines that name this page.
func DrawHeading(g *draw.Group, h Heading, paper Paper, right ...string) {
	room := drawTitle(g, h.Name, h.Title, paper, right...)
	g.Add(draw.NewText(Margin, HeadBase+HeadPitch, h.Line, FontBody, draw.Grey).Shortened(room))
}

func drawTitle(g *draw.Group, name, title string, paper Paper, right ...string) (room float64) {
	rooms := [2]float64{paper.W - 2*Margin, paper.W - 2*Margin}
	for i, line := range right {
		text := draw.NewText(paper.W-Margin, HeadBase+HeadPitch*float64(i), line, FontBody, draw.Grey).Aligned(draw.End)
		g.Add(text)
		rooms[i] = text.Room().X - 6 - Margin
	}
	id := draw.NewText(Margin, HeadBase, name, FontID, draw.Black).Shortened(rooms[0])
	g.Add(id)
	if rest := rooms[0] - id.Room().W - 4; title != "" && rest > 10 {
		g.Add(draw.NewText(Margin+id.Room().W+4, HeadBase, title, FontTitle, draw.Black).Shortened(rest))
	}
	return rooms[1]
}

// Setup returns the set-up of a shot as one line: camera, lens, stop and the rest.
func Setup(s *plan.Shot) string {
	parts := []string{s.PlanName}
	if s.Camera != "" {
		camera := "camera " + s.Camera
		if s.Support != "" {
			camera += " " + supported(s)
		}
		parts = append(parts, camera)
	}
	if s.Lens != "" {
		parts = append(parts, "lens "+s.Lens)
	}
	parts = append(parts, Figures.Millimetres(float64(s.FocalMM)/1000), s.BothStops(), sharpTo(s))
	if s.Screen != nil {
		parts[len(parts)-1] += fmt.Sprintf(" (%s screen from %s)", Style(s).Tape(float64(s.Screen.Width)), Style(s).Tape(float64(s.Screen.Viewer)))
	}
	if at := s.Speed(); at.Off() {
		parts = append(parts, units.Shoots(at.Shoots, at.Factor()))
	}
	if s.Gear.Known() && s.Gear != 1 {
		parts = append(parts, "gear "+Figures.Gear(float64(s.Gear)))
	}
	parts = append(parts, hands(s)...)
	if s.Optics.FromLens {
		parts = append(parts, "tape from lens")
	}
	if parts[0] == "" {
		parts = parts[1:]
	}
	return strings.Join(parts, " · ")
}

// hands says who pulls, and who pans and tilts: in few words where the shot is staged, as
// there both are said as a rule.
func hands(s *plan.Shot) (list []string) {
	switch {
	case s.Staging != nil && s.Puller != "" && s.Puller == s.Operator:
		return []string{s.Puller + " pulls and operates"}
	case s.Staging != nil && s.Puller != "" && s.Operator != "":
		return []string{s.Puller + " pulls, " + s.Operator + " operates"}
	}
	if s.Puller != "" {
		list = append(list, "pulled by "+s.Puller)
	}
	if s.Operator != "" {
		list = append(list, "operated by "+s.Operator)
	}
	return list
}

// sharpTo returns up to which blur a shot is sharp: at the viewer, unless the plan gives
// the disc on the sensor.
func sharpTo(s *plan.Shot) string {
	if s.Screen == nil {
		return "sharp to " + Figures.Disc(float64(s.CriterionMM)/1000)
	}
	return "sharp to " + Figures.Blur(s.Optics.Criterion*s.Optics.ArcminPerBlur)
}

// supported returns what carries the camera, in words.
func supported(s *plan.Shot) string {
	switch s.Support {
	case "hand":
		return "hand-held"
	case "shoulder":
		return "on the shoulder"
	}
	return "on " + s.Support
}

// ShotName returns the name of the shot for use in a sentence.
func ShotName(s *plan.Shot) string {
	if s.Title == "" {
		return s.ID
	}
	return s.ID + " " + s.Title
}

// HeadHeight is the height of the title of a page, in millimetres.
const HeadHeight = 15.5
