// The log of takes: one row a take, one column a pull, to be filled in by hand and typed
// in as the log that the command takes reads.

package cards

import (
	"strconv"

	"pullscore/interp/plan"
	"pullscore/render/draw"
	"pullscore/render/sheet"
)

// The sizes of the log, in millimetres.
const (
	logTop    = 26.0 // the head of the columns
	logRule   = 43.4 // the rule below it
	takeRows  = 14
	takePitch = 8.6
	takeWidth = 15.0
	pullWidth = landWidth + hitWidth + timeWidth + wayWidth
	landWidth = 26.0
	hitWidth  = 20.0
	timeWidth = 18.0
	wayWidth  = 22.0
	pullsMost = 3
	group     = 5 // rows between heavier rules
)

var fontPull = draw.Font{Size: 12, Bold: true}

// Log draws the log of takes of a shot, some pulls a sheet; nothing if none has a column.
func Log(s *plan.Shot, opt sheet.Options) []*draw.Page {
	pulls := Logged(s)
	paper := opt.Size()
	most := min(pullsMost, int((paper.W-2*sheet.Margin-takeWidth)/pullWidth))
	var pages []*draw.Page
	of := (len(pulls) + most - 1) / most
	for n := range of {
		f := sheet.Folio{Paper: "log", Number: n + 1, Of: of}
		p := newPage(s, paper, f, "A log of takes to fill in: a row a take, a column a pull.")
		drawLog(p, s, pulls[n*most:min((n+1)*most, len(pulls))])
		drawLogFoot(p.Root.Group("words"), s, paper)
		sheet.DrawLegend(&p.Root, paper, "36 takes and more fit a hand")
		pages = append(pages, p)
	}
	return pages
}

// drawLog draws the table of a sheet.
func drawLog(p *draw.Page, s *plan.Shot, pulls []*plan.Pull) {
	g, right := p.Root.Group("log"), p.W-sheet.Margin
	bottom := logRule + takeRows*takePitch
	rule := func(x1, y1, x2, y2, width float64, ink draw.Ink) { g.Line(x1, y1, x2, y2, draw.Solid(ink, width)) }
	g.Add(draw.NewText(sheet.Margin, logRule-2, "take", sheet.FontStrong, draw.Black))
	x := sheet.Margin + takeWidth
	for _, pull := range pulls {
		column := g.Group("column")
		column.Number = pull.Number
		drawPullHead(column, s, pull, x)
		drawCells(column, pull, x)
		rule(x, logTop, x, bottom, draw.StopWidth, draw.Black)
		x += pullWidth
	}
	if right-x > 20 {
		rule(x, logTop, x, bottom, draw.StopWidth, draw.Black)
		g.Add(draw.NewText(x+1.4, logRule-2, "remarks", sheet.FontBody, draw.Grey))
	}
	for i := range takeRows + 1 {
		y := logRule + takePitch*float64(i)
		if i > 0 {
			g.Add(draw.NewText(sheet.Margin+takeWidth/2-1, y-takePitch/2+fontFigure.Middle(), strconv.Itoa(i), fontFigure, draw.Grey).Aligned(draw.Middle))
		}
		if i%group == 0 {
			rule(sheet.Margin, y, right, y, draw.StopWidth, draw.Black)
		} else {
			rule(sheet.Margin, y, right, y, draw.GuideWidth, draw.Guide)
		}
	}
}

// drawCells draws the cells of a pull: where it landed, whether it hit, how long it took,
// early or late. A follow lands nowhere, so those cells are closed.
func drawCells(g *draw.Group, pull *plan.Pull, x float64) {
	bottom := logRule + takeRows*takePitch
	follow := pull.Kind == "follow"
	for _, c := range []struct {
		head   string
		x      float64
		closed bool
	}{
		{"landed at", x, follow}, {"hit", x + landWidth, false},
		{"time", x + landWidth + hitWidth, follow}, {"early / late", x + landWidth + hitWidth + timeWidth, false},
	} {
		g.Add(draw.NewText(c.x+1.4, logRule-2, c.head, sheet.FontBody, draw.Grey))
		if c.closed {
			width := landWidth
			if c.head == "time" {
				width = timeWidth
			}
			g.Add(draw.Rect{Box: draw.Box{X: c.x, Y: logRule, W: width, H: bottom - logRule}, Fill: draw.Slab})
		}
		if c.x > x {
			g.Line(c.x, logRule-4.6, c.x, bottom, draw.Solid(draw.Guide, draw.GuideWidth))
		}
	}
	for i := range takeRows {
		drawChoices(g, x, logRule+takePitch*(float64(i)+0.5))
	}
}

// drawChoices draws what is to be ringed in a row: y or n, and early, neither or late.
func drawChoices(g *draw.Group, x, y float64) {
	const radius = 2.6
	write := func(x float64, text string) {
		g.Add(draw.NewText(x, y+fontFigure.Middle(), text, fontFigure, draw.Grey).Aligned(draw.Middle))
	}
	for i, text := range []string{"y", "n"} {
		at := x + landWidth + 5 + 9*float64(i)
		g.Add(draw.Disc{Centre: draw.Point{X: at, Y: y}, Radius: radius, Stroke: draw.Solid(draw.Grey, draw.FineWidth)})
		write(at, text)
	}
	for i, text := range []string{"−", "0", "+"} {
		write(x+landWidth+hitWidth+timeWidth+5+6*float64(i), text)
	}
}

// drawLogFoot writes how the log is filled in and typed in.
func drawLogFoot(g *draw.Group, s *plan.Shot, paper sheet.Paper) {
	y := logRule + takeRows*takePitch + 8
	x := sheet.Margin
	for _, line := range []struct {
		word  string
		width float64
	}{{"Date", 40}, {"Puller", 70}} {
		text := draw.NewText(x, y, line.word, sheet.FontBody, draw.Grey)
		g.Add(text)
		x = text.Room().Right() + 1
		g.Line(x, y+0.8, x+line.width, y+0.8, draw.Solid(draw.Black, draw.FineWidth))
		x += line.width + 5
	}
	y += 5.4
	for _, sentence := range []string{
		"“Landed at” is where the focus came to rest, by tape or ring, in metres, feet or degrees: write the unit, and the time beside it. “Hit” is what the picture shows, not what the hand felt; − is early, + late.",
		"Typed in as a log: plan,shot,take,pull,landed,time_s,hit,result. Plan is " + PlanWord(s) + "; hit is y or n; result is sharp, early, late, or buzz for neither. An empty cell is no row. A row without a landing counts, and is not fitted.",
	} {
		for _, line := range sheet.FontNote.Wrap(sentence, (paper.W-2*sheet.Margin)/draw.Slack) {
			g.Add(draw.NewText(sheet.Margin, y, line, sheet.FontNote, draw.Grey))
			y += 3.6
		}
	}
}
