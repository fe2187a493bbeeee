// Cameras, with their tracks, ways and turns.

package floor

import (
	"math"
	"slices"

	"pullscore/render/draw"
	"pullscore/render/floor/layout"
	"pullscore/render/floor/seek"
	"pullscore/render/sheet"
	"pullscore/render/signs"
)

var (
	fontName  = draw.Font{Size: 8.5, Bold: true}
	fontValue = draw.Font{Size: 7}
)

const (
	bodyBack  = 8.0 // from the lens to the back of a camera, millimetres on the page
	bodyFront = 2.4
	bodyHalf  = 2.1
	bodyRoom  = 3.9 // round its middle, where no line goes: its name keeps clear of all
)

// bodies returns the parts of the page that the cameras of a floor cover.
func (f *Floor) bodies(g ground) []seek.Circle {
	var list []seek.Circle
	for _, c := range f.Cameras {
		for _, v := range c.States {
			if !v.Shown {
				continue
			}
			ahead, right := headed(v)
			for _, at := range []float64{-6.4, -4, -1.4} {
				list = append(list, seek.Round(moved(g.at(v.Apex()), ahead, right, at, 0), 2.4))
			}
		}
	}
	return list
}

// drawCameras draws the cameras, the later states under the first, and what they go along.
func (l *layer) drawCameras(g *draw.Group, c *seek.Clearing) (words []seek.Label) {
	for _, camera := range l.floor.Cameras {
		words = append(words, l.drawTracks(g, c, camera)...)
		if run := l.run(camera.Path); run != nil && seek.LengthOf(run) > 1 {
			sub := g.Group("path")
			sub.Title = "the camera goes"
			signs.DrawWay(sub, run, 0.4)
			c.Lines = append(c.Lines, seek.SegmentsOf(run)...)
		}
		for i := len(camera.States) - 1; i >= 0; i-- {
			if v := camera.States[i]; v.Shown && (i == 0 || l.away(v, camera.States[:i])) {
				words = append(words, l.drawBody(g, c, camera.Name, v, i > 0)...)
			}
		}
		words = append(words, l.drawTurns(g, c, camera.Turns)...)
		for _, w := range camera.Words {
			words = append(words, wordAt(w.Text, l.at(w.At), 1))
		}
	}
	return words
}

// away reports whether a camera has its lens elsewhere on the page than in all those states.
func (l *layer) away(v layout.State, states []layout.State) bool {
	return !slices.ContainsFunc(states, func(o layout.State) bool { return seek.Distance(l.at(o.Apex()), l.at(v.Apex())) < 2.5 })
}

// wordAt returns a label of one line.
func wordAt(text string, at draw.Point, radius float64) seek.Label {
	return seek.Label{At: at, Radius: radius, Lines: []draw.Text{draw.NewText(0, 0, text, sheet.FontNote, draw.Black)}, Spare: 1}
}

// drawBody draws a camera with its lens where its field of view begins, and its name on it.
// It returns a name that has no room there.
func (l *layer) drawBody(g *draw.Group, c *seek.Clearing, name string, v layout.State, later bool) (words []seek.Label) {
	p := l.at(v.Apex())
	if !l.holds(p, -bodyBack) {
		return nil
	}
	sub, fill, ink, stroke := g.Group("camera"), draw.Black, draw.Paper, draw.Solid(draw.Black, draw.DashWidth)
	if later {
		sub, fill, ink, stroke = g.Group(signs.LaterState), draw.Paper, draw.Black, draw.Later(draw.Black)
	}
	ahead, right := headed(v)
	at := func(by, aside float64) draw.Point { return moved(p, ahead, right, by, aside) }
	body := []draw.Point{at(-bodyBack, -bodyHalf), at(-bodyFront, -bodyHalf), at(-bodyFront, bodyHalf), at(-bodyBack, bodyHalf)}
	hood := []draw.Point{at(-bodyFront, -0.8), at(0, -1.8), at(0, 1.8), at(-bodyFront, 0.8)}
	for _, run := range [][]draw.Point{body, hood} {
		sub.Add(draw.Path{Runs: [][]draw.Point{run}, Closed: true, Fill: fill, Stroke: stroke})
	}
	font := sheet.FontStrong
	middle := at(-(bodyBack+bodyFront)/2, 0)
	crowded := slices.ContainsFunc(l.pins, func(p seek.Pin) bool { return seek.Between(p.At, p.Disc).Off(middle) < 2.7 })
	switch {
	case later || name == "":
	case font.Room(name) > bodyBack-bodyFront-0.6 || crowded:
		t := wordAt(name, middle, bodyRoom)
		t.Lines[0], t.Told = draw.NewText(0, 0, name, font, draw.Black).Shortened(widestName), true
		words = append(words, t)
	default:
		sub.Add(draw.NewText(middle.X, middle.Y+font.Middle(), name, font, ink).Aligned(draw.Middle))
	}
	for _, by := range []float64{-6.6, -5.2, -3.8, -2.4, -0.8} {
		c.Discs = append(c.Discs, seek.Round(at(by, 0), 2.3))
	}
	return words
}

const (
	trackOff   = 5.2 // from the axis of the camera to the middle of its track
	trackPitch = 3.4 // from one track to the next
)

// drawTracks draws the tracks of a camera beside its axis, each with an arrow at its end.
func (l *layer) drawTracks(g *draw.Group, c *seek.Clearing, camera layout.Camera) (words []seek.Label) {
	_, right := headed(camera.States[0])
	for i, t := range camera.Tracks {
		off := trackOff + trackPitch*float64(i%3)
		from, to := moved(l.at(t.From), right, right, off, 0), moved(l.at(t.To), right, right, off, 0)
		s, ok := seek.Between(from, to).Clipped(l.box)
		if !ok || s.Length() < 0.3 {
			continue
		}
		sub := g.Group("dolly")
		signs.DrawTrack(sub, s.A, s.B)
		along := draw.Point{X: (s.B.X - s.A.X) / s.Length(), Y: (s.B.Y - s.A.Y) / s.Length()}
		head(sub, moved(s.B, along, along, 2.4, 0), along)
		c.Lines = append(c.Lines, seek.Between(moved(s.A, right, right, -0.7, 0), moved(s.B, right, right, -0.7, 0)), seek.Between(moved(s.A, right, right, 0.7, 0), moved(moved(s.B, right, right, 0.7, 0), along, along, 2.4, 0)))
		words = append(words, wordAt(t.Words, s.At(0.5), 1.3))
	}
	return words
}

// head draws the head of an arrow with its tip at p.
func head(g *draw.Group, p, along draw.Point) {
	const long, half = 1.8, 0.9
	across := draw.Point{X: -along.Y, Y: along.X}
	g.Add(draw.Path{Closed: true, Fill: draw.Black, Runs: [][]draw.Point{{p, moved(p, along, across, -long, half), moved(p, along, across, -long, -half)}}})
}

const (
	arcRadius = 16.0 // of the first pan, from the lens
	arcPitch  = 3.0  // from one to the next
)

// drawTurns draws each pan as an arc before the lens, with an arrow.
func (l *layer) drawTurns(g *draw.Group, c *seek.Clearing, turns []layout.Turn) (words []seek.Label) {
	for i, t := range turns {
		runs, ends := l.arc(t, arcRadius+arcPitch*float64(i%5))
		if len(runs) == 0 {
			words = append(words, wordAt(t.Words, l.at(t.At), 1))
			continue
		}
		sub := g.Group("pan")
		sub.Add(draw.Path{Runs: runs, Stroke: draw.Solid(draw.Black, draw.RulerWidth)})
		longest := runs[0]
		for _, run := range runs {
			c.Lines = append(c.Lines, seek.SegmentsOf(run)...)
			if len(run) > len(longest) {
				longest = run
			}
		}
		if last := runs[len(runs)-1]; ends {
			s := seek.Between(last[len(last)-2], last[len(last)-1])
			head(sub, s.B, draw.Point{X: (s.B.X - s.A.X) / s.Length(), Y: (s.B.Y - s.A.Y) / s.Length()})
		}
		words = append(words, wordAt(t.Words, longest[len(longest)/2], 0))
	}
	return words
}

// arc returns what of the arc of a turn lies in the box, and whether its end does.
func (l *layer) arc(t layout.Turn, radius float64) (runs [][]draw.Point, ends bool) {
	var run []draw.Point
	flush := func() {
		if len(run) > 1 {
			runs = append(runs, run)
		}
		run = nil
	}
	middle := l.at(t.At)
	steps := max(8, int(math.Abs(t.By)/3))
	for i := range steps + 1 {
		sin, cos := math.Sincos((t.From + t.By*float64(i)/float64(steps)) * math.Pi / 180)
		q := draw.Point{X: middle.X + radius*cos, Y: middle.Y + radius*sin}
		if l.holds(q, 1) {
			run = append(run, q)
			continue
		}
		flush()
	}
	ends = len(run) > 1
	flush()
	return runs, ends
}
