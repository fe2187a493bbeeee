// The card of all tapes of a scene: from every camera, as its shot starts and where it ends,
// to every place and mark, with boxes for what the tape reads.

package staged

import (
	"fmt"
	"math"
	"slices"
	"strconv"

	"pullscore/interp/plan"
	"pullscore/render/draw"
	"pullscore/render/sheet"
)

const (
	cardNames   = 54.0 // the column of places
	cardColumns = 4    // of cameras on a sheet
	cardRow     = 9.0
	cardTop     = 27.0
	cardHead    = 16.0
	boxWide     = 19.0
	boxHigh     = 6.4
)

// A stand is a camera at the start or the end of its shot.
type stand struct {
	*Setup
	pose plan.Pose
	end  bool
}

// A goal is what a tape goes to: a place, or a mark on which nobody stands.
type goal struct {
	letter, name, notes string
	at                  Spot
	level               bool
	only                string
}

// Card draws the card of a scene of a plan, by its index; nothing where no camera stands on
// its floor.
func Card(p *plan.Plan, scene int, opt sheet.Options) []*draw.Page {
	return Of(p, scene).card(opt.Size())
}

func (f *Floor) card(paper sheet.Paper) (pages []*draw.Page) {
	rows := int((paper.H - footRoom - cardTop - cardHead) / cardRow)
	for goals := range slices.Chunk(f.goals(), rows) {
		for stands := range slices.Chunk(f.stands(), cardColumns) {
			p := &draw.Page{W: paper.W, H: paper.H}
			f.drawCard(p.Root.Group("tapes"), paper, stands, goals)
			sheet.DrawLegend(&p.Root, paper, "write what a tape reads into its box, and into the plan: measured NAME LENGTH")
			sheet.DrawSentences(p.Root.Group("cautions"), paper, paper.H-cautionBase, f.Cautions)
			pages = append(pages, p)
		}
	}
	for i, p := range pages {
		folio := sheet.Folio{Paper: "tapes", Number: i + 1, Of: len(pages)}
		p.Title = draw.Clean(fmt.Sprintf("%s: %s", f.Title, folio))
		p.Desc = "The tapes from every camera to every place and mark of the scene, with boxes for readings."
		p.Root.ID = draw.ID("scene", strconv.Itoa(f.number), "card", strconv.Itoa(i+1))
		sheet.DrawHeadOf(p.Root.Group("head"), f.heading(), paper, folio)
	}
	return pages
}

// stands returns the cameras in the order of their shots, those that go elsewhere twice.
func (f *Floor) stands() (list []stand) {
	for i := range f.Setups {
		c := &f.Setups[i]
		list = append(list, stand{c, c.Pose, false})
		if apart(spotOfPose(c.Pose), spotOfPose(c.End)) >= sameSpot || math.Abs(c.Pose.Z-c.End.Z) >= sameSpot {
			list = append(list, stand{c, c.End, true})
		}
	}
	return list
}

// goals returns the places by their letters, and then the marks on which nobody stands.
func (f *Floor) goals() (list []goal) {
	taken := map[string]bool{}
	for _, p := range f.Places {
		taken[p.Mark] = true
		list = append(list, goal{p.Letter, p.Name, p.notes(f.Style), p.At, p.Level, p.Only})
	}
	for _, m := range f.Marks {
		if !taken[m.Name] {
			list = append(list, goal{"", m.Name, "the mark on the floor", m.At, false, ""})
		}
	}
	return list
}

// tapeTo returns how long the tape is from a camera to something. What has no height of its
// own is level with the lens as the shot starts.
func (s stand) tapeTo(g goal) float64 {
	high := g.at.Z
	if g.level {
		high = s.Pose.Z
	}
	return math.Hypot(math.Hypot(g.at.X-s.pose.X, g.at.Y-s.pose.Y), high-s.pose.Z)
}

// read returns what a tape read as the shot starts.
func (s stand) read(g goal) (metres float64, ok bool) {
	for _, t := range s.Tapes {
		if !s.end && t.Measured && g.letter != "" && t.Letter == g.letter {
			return t.Tape, true
		}
	}
	return 0, false
}

// drawCard draws the cells of a sheet.
func (f *Floor) drawCard(g *draw.Group, paper sheet.Paper, stands []stand, goals []goal) {
	wide := (paper.W - 2*sheet.Margin - cardNames) / cardColumns
	right := sheet.Margin + cardNames + wide*float64(len(stands))
	for i, s := range stands {
		f.drawStand(g.Group("stand"), sheet.Margin+cardNames+wide*float64(i), wide, s)
	}
	y := cardTop + cardHead
	g.Line(sheet.Margin, y, right, y, draw.Solid(draw.Black, draw.FineWidth))
	for _, to := range goals {
		row := g.Group("card-row")
		row.Title = draw.Clean(to.name)
		row.Add(draw.NewText(sheet.Margin, y+5.2, to.letter, fontCard, draw.Black),
			draw.NewText(sheet.Margin+7, y+4.2, to.name, fontCard, draw.Black).Shortened(cardNames-9))
		if to.notes != "" {
			row.Add(draw.NewText(sheet.Margin+7, y+7.6, to.notes, fontValue, draw.Grey).Shortened(cardNames - 9))
		}
		for i, s := range stands {
			if to.only == "" || to.only == s.ID {
				f.drawCell(row, sheet.Margin+cardNames+wide*float64(i), y, wide, s, to)
			}
		}
		y += cardRow
		g.Line(sheet.Margin, y, right, y, draw.Solid(draw.Guide, draw.GuideWidth))
	}
}

var (
	fontCard   = draw.Font{Size: 10, Bold: true}
	fontCamera = draw.Font{Size: 12, Bold: true}
)

// drawStand writes the head of a column: which camera, when, and where it stands.
func (f *Floor) drawStand(g *draw.Group, x, wide float64, s stand) {
	words := []string{"as the shot starts", ways(spotOfPose(s.pose), f.Style), f.Style.Tape(s.pose.Z) + " high"}
	if s.end {
		words[0] = "at the end"
	}
	g.Add(draw.NewText(x, cardTop+4.4, s.ID, fontCamera, draw.Black).Shortened(wide - 3))
	for i, text := range []string{words[0] + " · " + words[2], words[1]} {
		g.Add(draw.NewText(x, cardTop+8.8+3.4*float64(i), text, fontValue, draw.Grey).Shortened(wide - 3))
	}
}

// drawCell draws a tape with its box, and in the box what has been read.
func (f *Floor) drawCell(g *draw.Group, x, y, wide float64, s stand, to goal) {
	first, other := f.Style.Both(s.tapeTo(to))
	g.Add(draw.NewText(x, y+4.2, first, fontCard, draw.Black), draw.NewText(x, y+7.6, other, fontValue, draw.Grey))
	box := draw.Box{X: x + wide - boxWide - 4, Y: y + (cardRow-boxHigh)/2, W: boxWide, H: boxHigh}
	g.Group("reading").Add(draw.Rect{Box: box, Stroke: draw.Solid(draw.Black, draw.FineWidth)})
	if metres, ok := s.read(to); ok {
		g.Add(draw.NewText(box.X+1.5, box.Y+box.H/2+sheet.FontBody.Middle(), f.Style.Tape(metres), sheet.FontBody, draw.Black))
	}
}
