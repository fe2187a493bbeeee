// The lanes above the bands of a score: numbered discs where moves start, and
// flags where findings lie.

package bands

import (
	"slices"
	"strconv"

	"pullscore/interp/plan"
	"pullscore/render/draw"
	"pullscore/render/sheet"
)

// Lane returns the strip that opens a band of several rows.
func (w *Window) Lane(row, title string) Section {
	return Section{Name: row, Least: LaneHeight, Most: LaneHeight, OverTime: true,
		Draw: func(sh *Leaf, g *draw.Group, top, _ float64) {
			sh.Open(g, top, row, title)
		}}
}

// flags returns the findings of a row in the window. One without a row is about
// the shot as a whole and stands in the sentences alone.
func (w *Window) flags(row string) []plan.Flag {
	var flags []plan.Flag
	for _, f := range w.Shot.Flags {
		if f.Row == row && w.Holds(f.Time) {
			flags = append(flags, f)
		}
	}
	return flags
}

// A Sign is something that stands in a lane.
type Sign struct {
	Width float64
	Rank  int
	At    float64                        // where its middle wants to be
	Draw  func(g *draw.Group, x float64) // x is its middle
}

const (
	FlagHeight = 3.3
	BadgeSize  = 1.75 // radius
)

// drawLane draws a row's flags, and over the distances the numbers of moves.
func (sh *Leaf) drawLane(g *draw.Group, top float64, row string) {
	var signs []Sign
	for _, f := range sh.Window.flags(row) {
		signs = append(signs, sh.flagSign(f, top))
	}
	if row == "distance" {
		signs = append(signs, sh.Badges(top)...)
	}
	sh.DrawSigns(g, signs)
}

// DrawSigns puts signs where they belong in time, apart from each other. Where
// there are more than the lane holds, the least weighty are left out; they are
// in the sentences and the table.
func (sh *Leaf) DrawSigns(g *draw.Group, signs []Sign) {
	lo, hi := sh.Left-1, sh.Right+Apron
	slices.SortStableFunc(signs, func(a, b Sign) int { return b.Rank - a.Rank })
	sizes := make([]float64, len(signs))
	for i, s := range signs {
		sizes[i] = s.Width
	}
	signs = signs[:sheet.Capacity(sizes, hi-lo)]
	want := make([]float64, len(signs))
	for i, s := range signs {
		want[i] = s.At
	}
	for i, x := range sheet.Spread(want, sizes[:len(signs)], lo, hi) {
		signs[i].Draw(g, x)
	}
}

// Badges returns the numbered discs of the moves that start in the window.
func (sh *Leaf) Badges(top float64) []Sign {
	var signs []Sign
	for _, p := range sh.Shot.Pulls {
		if t := float64(p.Start); sh.Window.Holds(t) {
			signs = append(signs, Sign{At: sh.Window.X(t), Width: 2*BadgeRadius(p.Number) + 0.8, Rank: 3,
				Draw: func(g *draw.Group, x float64) {
					bg := g.Group("pull")
					bg.Title, bg.Number = PullTitle(sh.Shot, p), p.Number
					y := top + LaneAir + FlagLane/2
					sh.Pole(bg, x, y, sh.Window.X(t), top)
					Badge(bg, x, y, p.Number)
				}})
		}
	}
	return signs
}

// flagSign returns the flag of a finding, with its pole down to the row.
func (sh *Leaf) flagSign(f plan.Flag, top float64) Sign {
	width := FlagWidth(f.Number)
	return Sign{At: sh.Window.X(f.Time) + width/2, Width: width + 0.8, Rank: Rank(f.Severity),
		Draw: func(g *draw.Group, x float64) {
			fg := g.Group("finding")
			fg.Title, fg.Number = f.Severity+" "+f.Code+": "+f.Text, f.Number
			y := top + LaneAir + (FlagLane-FlagHeight)/2
			sh.Pole(fg, x-width/2, y, sh.Window.X(f.Time), top)
			Pennant(fg, x-width/2, y, f.Severity, strconv.Itoa(f.Number))
		}}
}

// Pole joins a sign to the place on the row's upper edge that it means.
func (sh *Leaf) Pole(g *draw.Group, x, y, to, top float64) {
	g.Add(draw.Path{Runs: [][]draw.Point{{{X: x, Y: y}, {X: x, Y: top + LaneHeight - 1}, {X: to, Y: top + LaneHeight + 0.6}}}, Stroke: sheet.Solid(draw.Grey, sheet.Thin)})
}

// BadgeRadius returns how large the disc of a move's number is, in millimetres.
func BadgeRadius(number int) float64 {
	return max(BadgeSize, sheet.FontNumber.Room(strconv.Itoa(number))/2+0.5)
}

// Badge draws the number of a move.
func Badge(g *draw.Group, x, y float64, number int) {
	g.Add(draw.Disc{Centre: draw.Point{X: x, Y: y}, Radius: BadgeRadius(number), Fill: draw.Black})
	g.Add(draw.NewText(x, y+sheet.FontNumber.Middle(), strconv.Itoa(number), sheet.FontNumber, draw.Paper).Aligned(draw.Middle))
}

// FlagWidth returns how wide the flag of a finding is, in millimetres.
func FlagWidth(number int) float64 { return sheet.FontNumber.Room(strconv.Itoa(number)) + 3 }

// Pennant draws the flag of a finding with its top left corner at (x, y): an
// error full, a warning outlined, a note outlined thinly.
func Pennant(g *draw.Group, x, y float64, severity, number string) {
	w := sheet.FontNumber.Room(number) + 3
	run := []draw.Point{{X: x, Y: y}, {X: x + w, Y: y}, {X: x + w - 1, Y: y + FlagHeight/2}, {X: x + w, Y: y + FlagHeight}, {X: x, Y: y + FlagHeight}}
	fill, stroke, ink := draw.Paper, sheet.Solid(draw.Grey, sheet.Hair), draw.Grey
	switch severity {
	case "error":
		fill, stroke, ink = draw.Rust, sheet.Solid(draw.Rust, sheet.Medium), draw.Paper
	case "warning":
		stroke, ink = sheet.Solid(draw.Rust, sheet.Medium), draw.Rust
	}
	g.Add(draw.Path{Runs: [][]draw.Point{run}, Closed: true, Fill: fill, Stroke: stroke})
	g.Add(draw.NewText(x+0.9, y+FlagHeight/2+sheet.FontNumber.Middle(), number, sheet.FontNumber, ink))
}
