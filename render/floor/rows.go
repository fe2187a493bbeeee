// The rows under the ruler, one for each focus: a tape from the camera as it then stands to
// the focus, over what is sharp.
//
// A row runs to the right, or to the left for a camera that looks back. It is laid as if it
// ran to the right; a bench turns what runs to the left.

package floor

import (
	"math"
	"strconv"
	"strings"

	"pullscore/render/draw"
	"pullscore/render/floor/layout"
	"pullscore/render/floor/seek"
	"pullscore/render/sheet"
	"pullscore/render/signs"
)

const rowPitch = 4.6

// A bench is where a row lies: between two sides of the page, with the camera at tick. All
// are as if the row ran to the right.
type bench struct {
	tick, right float64
	sum         float64 // of a place and of its mirror image; 0: the row runs to the right
	perMetre    float64
	y           float64 // its middle
}

// benchFor returns where the row of a zone lies. It runs the way that the camera looks,
// unless only the other has room.
func (l *layer) benchFor(z layout.Zone, y float64) bench {
	tick := l.at(z.Seen.From(0, 0)).X
	ahead, _ := headed(z.Seen)
	far := z.At * l.perMetre
	fits, fitsBack := tick+far <= l.box.Right(), tick-far >= l.box.X
	b := bench{tick: tick, right: l.box.Right(), perMetre: l.perMetre, y: y}
	if ahead.X < 0 && fitsBack || !fits && fitsBack {
		b.sum = l.box.X + l.box.Right()
		b.tick = b.sum - tick
	}
	return b
}

// on returns where something lies that far along the axis, cut at the end of the bench.
func (b bench) on(along float64) float64 { return min(b.tick+along*b.perMetre, b.right) }

// beyond reports whether something lies beyond the end of the bench.
func (b bench) beyond(along float64) bool { return b.tick+along*b.perMetre > b.right+1e-9 }

// x returns where on the page something lies.
func (b bench) x(at float64) float64 {
	if b.sum != 0 {
		return b.sum - at
	}
	return at
}

// left returns where on the page something begins that is so wide.
func (b bench) left(at, wide float64) float64 {
	if b.sum != 0 {
		return b.sum - at - wide
	}
	return at
}

// drawRows draws the rows of the sheet's zones.
func (l *layer) drawRows(g *draw.Group) {
	y := l.box.Bottom() + rulerRoom + rowPitch/2
	for _, z := range l.zones {
		sub := g.Group("focus-row")
		sub.Title = draw.Clean(l.zoneTitle(z.Zone))
		b := l.benchFor(z.Zone, y)
		b.drawBar(sub.Group(signs.Focus), z.Zone)
		if b.beyond(z.Far) {
			b.drawOn(sub.Group(signs.Edge))
		}
		l.writeRow(sub, z, b)
		y += rowPitch
	}
}

// drawBar draws what is sharp, with the focus.
func (b bench) drawBar(g *draw.Group, z layout.Zone) {
	const half = 1.2
	near, far := b.on(z.Near), b.on(z.Far)
	limit := func(at float64) {
		g.Line(b.x(at), b.y-half, b.x(at), b.y+half, draw.Solid(draw.Blue, draw.FineWidth))
	}
	if far > near {
		bar := draw.Box{X: b.left(near, far-near), Y: b.y - half, W: far - near, H: 2 * half}
		g.Add(draw.Rect{Box: bar, Fill: draw.Zone}, draw.Path{Runs: seek.Hatched(seek.Corners(bar), 45, signs.HatchPitch, signs.HatchLeast), Stroke: draw.Solid(draw.Blue, draw.HatchWidth)})
		limit(near)
		if !b.beyond(z.Far) {
			limit(far)
		}
	}
	width := draw.FocusWidth
	if far-near < 1.2 {
		width = draw.WindowWidth
	}
	if at := b.x(b.on(z.At)); !b.beyond(z.At) {
		g.Line(at, b.y-half-0.4, at, b.y+half+0.4, draw.Solid(draw.Black, width))
	}
}

// drawOn draws that what is sharp goes on beyond the end of the bench.
func (b bench) drawOn(g *draw.Group) {
	from, tip := b.x(b.right+0.4), b.x(b.right+1.8)
	g.Add(draw.Path{Closed: true, Fill: draw.Blue, Runs: [][]draw.Point{{{X: from, Y: b.y - 0.9}, {X: tip, Y: b.y}, {X: from, Y: b.y + 0.9}}}})
}

// writeRow draws the tape of a row and writes what it is.
func (l *layer) writeRow(g *draw.Group, z camZone, b bench) {
	name, value := l.rowWords(z)
	wide := pullsWide(z.Zone) + name.Room().W + rowAir + value.Room().W
	x, room, halo := b.wordsFor(z.Zone, wide)
	wide = min(wide, room)
	if halo {
		g.Group("halo").Add(sheet.Halo(draw.Box{X: b.left(x, wide) - 0.5, Y: b.y - 1.6, W: wide + 1, H: 3.2}))
	}
	b.drawTape(g.Group(signs.Tape), b.on(z.At), x, wide)
	from := b.left(x, wide)
	drawPulls(g, z.Zone, from, b.y)
	from, wide = from+pullsWide(z.Zone), wide-pullsWide(z.Zone)
	if left := wide - value.Room().W - rowAir; name.Room().W > left+1e-9 {
		name = name.Shortened(max(left, 6) / draw.Slack)
	}
	if left := wide - name.Room().W - rowAir; value.Room().W > left+1e-9 {
		value = value.Shortened(max(left, 4) / draw.Slack)
	}
	name.At = draw.Point{X: from, Y: b.y + name.Font.Middle()}
	value.At = draw.Point{X: from + name.Room().W + rowAir, Y: b.y + value.Font.Middle()}
	g.Add(name, value)
}

const rowAir = 1.6

// wordsFor returns where words of that width begin on a row, how much room they have, and
// whether they lie on what is sharp: beyond it, or in a gap of the tape, or else on
// whichever side of the focus there is more room.
func (b bench) wordsFor(z layout.Zone, wide float64) (x, room float64, halo bool) {
	const air = 2.0
	near, far, focus := b.on(z.Near), b.on(z.Far), b.on(z.At)
	if room = b.right - far - rowAir; room >= wide {
		return far + rowAir, room, false
	}
	if room = near - b.tick - 2*rowAir; room >= wide {
		return near - rowAir - wide, room, false
	}
	after, before := b.right-focus-2*air, focus-b.tick-2*air
	if after > before {
		return max(focus+air, b.right-air-wide), after, true
	}
	return max(b.tick+air, focus-air-wide), before, true
}

// drawTape draws the tape of a row to its end, with a gap for words.
func (b bench) drawTape(g *draw.Group, end, words, wide float64) {
	stroke := draw.Solid(draw.Black, draw.RulerWidth)
	line := func(from, to float64) { g.Line(b.x(from), b.y, b.x(to), b.y, stroke) }
	g.Line(b.x(b.tick), b.y-0.9, b.x(b.tick), b.y+0.9, stroke)
	if words >= end { // they are beyond it
		line(b.tick, end)
		return
	}
	line(b.tick, words-0.8)
	if from := words + wide + 0.8; from < end {
		line(from, end)
	}
}

const (
	mostDiscs  = 6 // of pulls in a row; more are numbers
	pullPitch  = 4.6
	pullsMost  = 30.0
	startWidth = 3.4
)

// pullsWide returns the width of the signs of what starts or lands at a focus.
func pullsWide(z layout.Zone) float64 {
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
func numbersOf(z layout.Zone) draw.Text {
	numbers := make([]string, len(z.Pulls))
	for i, p := range z.Pulls {
		numbers[i] = strconv.Itoa(p.Number)
	}
	return draw.NewText(0, 0, strings.Join(numbers, " · "), sheet.FontNumber, draw.Black)
}

// drawPulls draws the signs of what starts or lands at a focus, from x on.
func drawPulls(g *draw.Group, z layout.Zone, x, y float64) {
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
		signs.DrawPull(g, x+pullPitch/2-0.3, y, p.Number, p.Follow)
		x += pullPitch
	}
}

// rowWords returns what a row is of, and its figures.
func (l *layer) rowWords(z camZone) (name, value draw.Text) {
	style := l.floor.Style
	words := style.Tape(z.At) + ", sharp " + style.Tape(z.Near) + " to " + style.Tape(z.Far)
	if z.When != "" {
		words += ", " + z.When
	}
	who := z.Name
	if len(l.floor.Cameras) > 1 {
		who = l.floor.Cameras[z.camera].Name + " · " + who
	}
	return draw.NewText(0, 0, who, sheet.FontStrong, draw.Black), draw.NewText(0, 0, words, sheet.FontNote, draw.Black)
}

// rowsFor returns how many rows have room under a floor that keeps at least half of the
// height.
func rowsFor(height float64) int {
	return max(1, int(math.Floor(height/4/rowPitch)))
}
