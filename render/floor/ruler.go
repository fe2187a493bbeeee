// The tape under the floor, in both units, and below it a row for each focus: a tape from
// the camera as it then stands to the focus, over what is sharp.

package floor

import (
	"math"
	"strconv"
	"strings"

	"pullscore/interp/plan"
	"pullscore/interp/units"
	"pullscore/render/draw"
	"pullscore/render/sheet"
	"pullscore/render/signs"
)

const (
	rulerRoom = 11.0
	rowPitch  = 4.6
	rulerGap  = 10.0 // between two figures of the second unit
)

// drawRuler draws the ruler of a sheet: in the plan's units, and below in the others.
func (l *layer) drawRuler(g *draw.Group) {
	y := l.box.Bottom()
	l.drawScale(g, y, l.floor.Style, sheet.FontNote, draw.Black, 17)
	other := units.ForTable(l.floor.Style.System != units.Imperial)
	l.drawScale(g, y+5.4, other, fontValue, draw.Grey, rulerGap+4)
}

// drawScale draws one scale of the ruler, with figures at least so many millimetres apart.
func (l *layer) drawScale(g *draw.Group, y float64, style units.Style, font draw.Font, ink draw.Ink, least float64) {
	zero := l.origin.X
	g.Line(zero, y, l.box.Right(), y, draw.Solid(ink, draw.FineWidth))
	step := tapeStep(style.System == units.Imperial, l.perMetre, least)
	for n := 0; ; n++ {
		x := zero + float64(n)*step*l.perMetre
		text := draw.NewText(x, y+3.7, style.Tape(float64(n)*step), font, ink).Aligned(draw.Middle)
		if n == 0 {
			text = draw.NewText(x, y+3.7, "0", font, ink).Aligned(draw.Middle)
		}
		if x > l.box.Right()+1e-6 || text.Room().Right() > l.box.Right()+6 {
			return
		}
		g.Line(x, y, x, y+1.2, draw.Solid(ink, draw.FineWidth))
		g.Add(text)
	}
}

// tapeStep returns the metres between two figures of a ruler: a round number that leaves
// them so much room.
func tapeStep(imperial bool, perMetre, least float64) float64 {
	if imperial {
		for _, inches := range []float64{0.5, 1, 2, 3, 6, 12, 24, 60, 120, 240, 600, 1200} {
			if step := inches * plan.Inch; step*perMetre >= least {
				return step
			}
		}
	}
	unit := 0.001
	if imperial {
		unit = 100 * plan.InchesPerFoot * plan.Inch
	}
	for ; ; unit *= 10 {
		for _, n := range []float64{1, 2, 5} {
			if n*unit*perMetre >= least {
				return n * unit
			}
		}
	}
}

// drawRows draws the rows of the sheet's zones.
func (l *layer) drawRows(g *draw.Group) {
	y := l.box.Bottom() + rulerRoom
	for _, z := range l.zones {
		sub := g.Group("focus-row")
		sub.Title = draw.Clean(l.zoneTitle(z.Zone))
		l.drawRow(sub, z.Zone, y+rowPitch/2)
		y += rowPitch
	}
}

// drawRow draws a row with its middle at y.
func (l *layer) drawRow(g *draw.Group, z Zone, y float64) {
	tick := l.at(z.Seen.from(0, 0)).X
	on := func(along float64) float64 {
		return min(max(tick+along*l.perMetre, l.box.X), l.box.Right())
	}
	bar := draw.Box{X: on(z.Near), Y: y - 1.2, W: on(z.Far) - on(z.Near), H: 2.4}
	at, shown := on(z.At), tick+z.At*l.perMetre <= l.box.Right()+1e-9
	l.drawBar(g.Group(signs.Focus), z, bar, at, shown)
	if tick+z.Far*l.perMetre > l.box.Right()+1e-9 {
		drawOn(g.Group(signs.Edge), l.box.Right(), y)
	}
	l.writeRow(g, z, tick, bar, y)
}

// drawBar draws what is sharp, with the focus.
func (l *layer) drawBar(g *draw.Group, z Zone, bar draw.Box, at float64, shown bool) {
	if bar.W > 0 {
		g.Add(draw.Rect{Box: bar, Fill: draw.Zone}, draw.Path{Runs: hatched(corners(bar), 45), Stroke: draw.Solid(draw.Blue, draw.HatchWidth)})
		g.Line(bar.X, bar.Y, bar.X, bar.Bottom(), draw.Solid(draw.Blue, draw.FineWidth))
		if bar.Right() < l.box.Right() {
			g.Line(bar.Right(), bar.Y, bar.Right(), bar.Bottom(), draw.Solid(draw.Blue, draw.FineWidth))
		}
	}
	width := draw.FocusWidth
	if bar.W < 1.2 {
		width = draw.WindowWidth
	}
	if shown {
		g.Line(at, bar.Y-0.4, at, bar.Bottom()+0.4, draw.Solid(draw.Black, width))
	}
}

// drawOn draws that something goes on to the right.
func drawOn(g *draw.Group, x, y float64) {
	g.Add(draw.Path{Closed: true, Fill: draw.Blue, Runs: [][]draw.Point{{{X: x + 0.4, Y: y - 0.9}, {X: x + 1.8, Y: y}, {X: x + 0.4, Y: y + 0.9}}}})
}

// writeRow draws the tape of a row and writes what it is: right of the bar, or in a gap of
// the tape.
func (l *layer) writeRow(g *draw.Group, z Zone, tick float64, bar draw.Box, y float64) {
	const air = 1.6
	end := min(tick+z.At*l.perMetre, l.box.Right())
	tape := g.Group(signs.Tape)
	tape.Line(tick, y-0.9, tick, y+0.9, draw.Solid(draw.Black, draw.RulerWidth))
	name, value := l.rowWords(z)
	wide := pullsWide(z) + name.Room().W + air + value.Room().W
	x, room := bar.Right()+air, l.box.Right()-bar.Right()-air
	if gap := bar.X - tick - 2*air; room < wide && gap >= wide {
		x, room = bar.X-air-wide, gap
	} else if room < wide { // on the bar itself, whose tint may be covered, beside the focus
		x, room = l.besideFocus(end, tick, wide)
		g.Group("halo").Add(sheet.Halo(draw.Box{X: x - 0.5, Y: y - 1.6, W: min(wide, room) + 1, H: 3.2}))
	}
	stroke := draw.Solid(draw.Black, draw.RulerWidth)
	if x >= end { // the words are beyond the tape
		tape.Line(tick, y, end, y, stroke)
	} else {
		tape.Line(tick, y, x-0.8, y, stroke)
		if from := x + min(wide, room) + 0.8; from < end {
			tape.Line(from, y, end, y, stroke)
		}
	}
	drawPulls(g, z, x, y)
	x, room = x+pullsWide(z), room-pullsWide(z)
	name.At, value.At.Y = draw.Point{X: x, Y: y + name.Font.Middle()}, y+value.Font.Middle()
	if left := room - value.Room().W - air; name.Room().W > left {
		name = name.Shortened(max(left, 6) / draw.Slack)
	}
	value.At.X = x + name.Room().W + air
	if left := x + room - value.At.X; value.Room().W > left {
		value = value.Shortened(max(left, 4) / draw.Slack)
	}
	g.Add(name, value)
}

// besideFocus returns where words of that width start on a row, on whichever side of the
// focus there is more room, and how much room they have.
func (l *layer) besideFocus(focus, tick, wide float64) (x, room float64) {
	const air = 2.0
	right, left := l.box.Right()-focus-2*air, focus-tick-2*air
	if right > left {
		return max(focus+air, l.box.Right()-air-wide), right
	}
	return max(tick+air, focus-air-wide), left
}

const (
	mostDiscs  = 6 // of pulls in a row; more are numbers
	pullPitch  = 4.6
	pullsMost  = 30.0
	startWidth = 3.4
)

// pullsWide returns the width of the signs of what starts or lands at a focus.
func pullsWide(z Zone) float64 {
	w := 0.0
	if z.Start {
		w += startWidth
	}
	if len(z.Pulls) > mostDiscs {
		return w + min(numbersOf(z).Room().W, pullsMost) + 1.6
	}
	return w + pullPitch*float64(len(z.Pulls))
}

// numbersOf returns the numbers of the pulls of a focus as a text.
func numbersOf(z Zone) draw.Text {
	numbers := make([]string, len(z.Pulls))
	for i, p := range z.Pulls {
		numbers[i] = strconv.Itoa(p.Number)
	}
	return draw.NewText(0, 0, strings.Join(numbers, " · "), sheet.FontNumber, draw.Black)
}

// drawPulls draws the signs of what starts or lands at a focus, from x on.
func drawPulls(g *draw.Group, z Zone, x, y float64) {
	if z.Start {
		signs.DrawStart(g, x+startWidth-0.6, y)
		x += startWidth
	}
	if len(z.Pulls) > mostDiscs {
		text := numbersOf(z).Shortened(pullsMost / draw.Slack)
		text.At = draw.Point{X: x, Y: y + text.Font.Middle()}
		g.Add(text)
		return
	}
	for _, p := range z.Pulls {
		if p.Follow {
			signs.DrawFollow(g, x+pullPitch/2-0.3, y, p.Number)
		} else {
			signs.DrawRack(g, x+pullPitch/2-0.3, y, p.Number)
		}
		x += pullPitch
	}
}

// rowWords returns what a row is of, and its figures.
func (l *layer) rowWords(z Zone) (name, value draw.Text) {
	style := l.floor.Style
	words := style.Tape(z.At) + ", sharp " + style.Tape(z.Near) + " to " + style.Tape(z.Far)
	if z.When != "" {
		words += ", " + z.When
	}
	return draw.NewText(0, 0, z.Name, sheet.FontStrong, draw.Black), draw.NewText(0, 0, words, sheet.FontNote, draw.Black)
}

// rowsFor returns how many rows have room under a floor that keeps at least half of the
// height.
func rowsFor(height float64) int {
	return max(1, int(math.Floor(height/4/rowPitch)))
}
