// The band of changes: over the time of every pull that changed, what changed,
// beside an arrow from its old landing to its new one.

package difference

import (
	"math"
	"slices"
	"strconv"

	"pullscore/render/draw"
	"pullscore/render/score/bands"
	"pullscore/render/sheet"
	"pullscore/render/signs"
)

const (
	changePitch = 4.2
	changeLanes = 10   // on a sheet at most; the table has all
	changeRoom  = 95.0 // for a text at most; the table has it whole
	changeAir   = 2.2  // round an arrow
	signGap     = 2.0  // between two changes on a lane
)

// A changeSign is a change on its way to its place.
type changeSign struct {
	change *PullChange
	at     [2]float64 // millimetres, of the landings, held to the sheet
	on     [2]bool    // they are on it
	text   draw.Text
	left   float64 // what it takes of a lane
	right  float64
	badge  float64 // the badges' left end
	lane   int
}

// changesBand returns the band of a sheet, if anything changed on it.
func (df *differ) changesBand(i int) []bands.Section {
	signs, lanes := df.changeSigns(i)
	if len(signs) == 0 {
		return nil
	}
	height := bands.LaneHeight - bands.FlagLane/2 + changePitch*float64(lanes)
	return []bands.Section{{Name: "changes", Least: height, Most: height, OverTime: true,
		Draw: func(sh *bands.Leaf, g *draw.Group, top, _ float64) {
			sh.Heading(g, top, "Changes")
			for _, s := range signs {
				s.draw(sh, g, top+bands.LaneAir+bands.FlagLane/2+changePitch*float64(s.lane))
			}
		}}}
}

// changeSigns places what changed on a sheet, and returns how many lanes that
// needs.
func (df *differ) changeSigns(i int) (signs []*changeSign, lanes int) {
	if !df.both() {
		return nil, 0 // all is new, or gone
	}
	w := df.main.Windows[i]
	for _, c := range df.changesOn(w) {
		s := &changeSign{change: c}
		s.measure(w)
		signs = append(signs, s)
	}
	return stack(signs)
}

// stack gives every sign the first lane that is free where it stands, and
// leaves out those for which there is none.
func stack(signs []*changeSign) (kept []*changeSign, lanes int) {
	for _, s := range signs {
		onLane := func(o *changeSign) bool {
			return o.lane == s.lane && o.left < s.right+signGap && s.left < o.right+signGap
		}
		for s.lane = 0; slices.ContainsFunc(kept, onLane); {
			s.lane++
		}
		if s.lane < changeLanes {
			kept, lanes = append(kept, s), max(lanes, s.lane+1)
		}
	}
	return kept, lanes
}

// measure sets where the arrow stands, and the text beside it: right of it, or
// left where it has more room there.
func (s *changeSign) measure(w *bands.Window) {
	from, to := math.Inf(1), math.Inf(-1)
	for side, p := range s.change.states() {
		if p != nil {
			t := float64(p.Land)
			s.at[side], s.on[side] = w.X(t), w.Holds(t)
			from, to = min(from, s.at[side]), max(to, s.at[side])
		}
	}
	from, to = from-changeAir, to+changeAir
	width := s.change.badges() + 1.2
	s.text = draw.NewText(0, 0, s.change.says(w), sheet.FontSmall, draw.Black)
	leftRoom, rightRoom := from-w.Left-width, w.Paper.W-sheet.Margin-to-width
	if wish := min(s.text.Room().W, changeRoom); rightRoom >= min(wish, leftRoom) {
		s.text = sheet.ShortenedPhrases(s.text, min(rightRoom, changeRoom))
		s.left, s.badge, s.right = from, to, to+width+s.text.Room().W
	} else {
		s.text = sheet.ShortenedPhrases(s.text, min(leftRoom, changeRoom))
		s.badge = from - width - s.text.Room().W
		s.left, s.right = s.badge, to
	}
	s.text.At.X = s.badge + width
}

// says is what the band says of a change.
func (c *PullChange) says(w *bands.Window) string {
	if c.Before != nil && c.After != nil {
		return arrows(c.Text)
	}
	name := "new: " + sheet.PullName(w.Shot, c.pull())
	if c.After == nil {
		name = "gone: " + sheet.PullName(w.Shot, c.pull())
	}
	if c.Text != "" {
		name += ", " + arrows(c.Text)
	}
	return name
}

// draw draws the change on its lane, with its middle at y.
func (s *changeSign) draw(sh *bands.Leaf, g *draw.Group, y float64) {
	cg := g.Group("change")
	cg.Title = s.text.String
	if s.text.Full != "" {
		cg.Title = s.text.Full
	}
	from, to := draw.Point{X: s.at[before], Y: y}, draw.Point{X: s.at[after], Y: y}
	if s.change.Before != nil && s.change.After != nil {
		shift(cg, from, to, 0)
	}
	for side, at := range []draw.Point{from, to} {
		if s.on[side] {
			landing(cg, at, side)
		}
	}
	s.change.drawBadges(cg, s.badge, y)
	s.text.At.Y = y + sheet.FontSmall.Middle()
	cg.Add(s.text)
}

// arrowRoom is between an old number and a new one.
const arrowRoom = 4.4

// badges returns the width of the badges of a change.
func (c *PullChange) badges() float64 {
	switch {
	case c.Before == nil || c.After == nil:
		return 2 * signs.DiscRadius(c.pull().Number)
	case c.Before.Number != c.After.Number:
		return 2*signs.DiscRadius(c.Before.Number) + arrowRoom + 2*signs.DiscRadius(c.After.Number)
	}
	return 2 * signs.DiscRadius(c.After.Number)
}

// drawBadges draws the numbers that the pull has and had, from x on.
func (c *PullChange) drawBadges(g *draw.Group, x, y float64) {
	if c.After == nil {
		hollowBadge(g, x+signs.DiscRadius(c.Before.Number), y, c.Before.Number)
		return
	}
	if c.Before != nil && c.Before.Number != c.After.Number {
		r := signs.DiscRadius(c.Before.Number)
		hollowBadge(g, x+r, y, c.Before.Number)
		g.Add(draw.NewText(x+2*r+arrowRoom/2, y+sheet.FontSmall.Middle(), "→", sheet.FontSmall, draw.Black).Aligned(draw.Middle))
		x += 2*r + arrowRoom
	}
	bands.Badge(g, x+signs.DiscRadius(c.After.Number), y, c.After)
}

// hollowBadge draws the number that a move had.
func hollowBadge(g *draw.Group, x, y float64, number int) {
	bg := g.Group(signs.Before)
	bg.Add(draw.Disc{Centre: draw.Point{X: x, Y: y}, Radius: signs.DiscRadius(number) - was.Width/2, Fill: draw.Paper, Stroke: was})
	bg.Add(draw.NewText(x, y+sheet.FontNumber.Middle(), strconv.Itoa(number), sheet.FontNumber, draw.Grey).Aligned(draw.Middle))
}
