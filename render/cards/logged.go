// Which pulls have a column in the log, and what stands above each.

package cards

import (
	"cmp"
	"path/filepath"
	"strings"

	"pullscore/interp/plan"
	"pullscore/render/draw"
	"pullscore/render/sheet"
	"pullscore/render/signs"
)

// Logged returns the pulls of a shot that have a column in its log: the follows, and the
// racks that land.
func Logged(s *plan.Shot) []*plan.Pull {
	var list []*plan.Pull
	for _, p := range s.Pulls {
		if p.Kind == "follow" || p.Land.Known() && p.Land >= p.Start {
			list = append(list, p)
		}
	}
	return list
}

// drawPullHead writes what stands above the column of a pull, from x on: its number, from
// where to where it goes, its mark in both units, its time, and what is sharp there.
func drawPullHead(g *draw.Group, s *plan.Shot, p *plan.Pull, x float64) {
	in := sheet.Style(s)
	radius := signs.DiscRadius(p.Number)
	signs.DrawPull(g, x+1+radius, logTop+3.4, p.Number, p.Kind == "follow")
	left := x + 2.6 + 2*radius
	room := x + pullWidth - 1 - left
	g.Add(draw.NewText(left, logTop+5, sheet.PullName(s, p), fontPull, draw.Black).Shortened(room / draw.Slack))
	end := left
	write := func(text string, f draw.Font, ink draw.Ink) {
		t := draw.NewText(end, logTop+10.2, text, f, ink)
		if text == "" || t.Room().Right() > left+room {
			return
		}
		g.Add(t)
		end = t.Room().Right() + 2.5
	}
	write(markWords(s, p), fontFigure, draw.Black)
	write(in.Time(float64(p.Land-p.Start)), fontFigure, draw.Black)
	write(sharpWords(s, p), sheet.FontBody, draw.Grey)
}

// markWords returns where a pull lands, in both units.
func markWords(s *plan.Shot, p *plan.Pull) string {
	if !p.ToM.Known() {
		return ""
	}
	first, other := sheet.Style(s).Both(float64(p.ToM))
	return sheet.Joined([]string{first, other})
}

// sharpWords returns what is sharp once a pull has landed.
func sharpWords(s *plan.Shot, p *plan.Pull) string {
	if !p.Near.Known() || !p.Far.Known() || p.Far <= 0 {
		return ""
	}
	in := sheet.Style(s)
	return "sharp " + in.Tape(float64(p.Near)) + " to " + in.Tape(float64(p.Far))
}

// Says returns in one line what stands above the column of a pull besides its name: its
// mark, its time, and what is sharp.
func Says(s *plan.Shot, p *plan.Pull) string {
	return sheet.Joined([]string{markWords(s, p), sheet.Style(s).Time(float64(p.Land - p.Start)), sharpWords(s, p)})
}

// PlanWord returns what a row of a log has in the column plan for a shot: the name of its
// file without the ending, or else the title of the plan.
func PlanWord(s *plan.Shot) string {
	base := filepath.Base(filepath.ToSlash(s.File))
	if name, ok := strings.CutSuffix(base, ".pull"); ok && name != "" {
		return name
	}
	return cmp.Or(s.PlanName, "its title")
}
