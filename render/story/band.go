// The band of a scene: stays and racks between stations.

package story

import (
	"cmp"
	"slices"

	"pullscore/interp/story"
	"pullscore/render/draw"
	"pullscore/render/sheet"
	"pullscore/render/signs"
)

// The sizes of a band, in millimetres.
const (
	bandAir   = 3.6 // above the first station
	pitch     = 3.5 // from station to station
	bandLeast = 15.0
	tickHigh  = 1.6
)

// mostStations is how many stations a band has; the rest share the last one.
const mostStations = 5

// others is the name of that one.
const others = "others"

var (
	fontScene   = draw.Font{Size: 11, Bold: true}
	fontStation = draw.Font{Size: 7.5}
)

// rowsOf returns the stations of a band from the top down, and the row of each name.
func rowsOf(sc *story.Scene) (names []string, row map[string]int) {
	kept := map[string]bool{}
	most := len(sc.Stations)
	if most > mostStations {
		most = mostStations - 1
	}
	held := slices.Clone(sc.Stations)
	slices.SortStableFunc(held, func(a, b story.Station) int { return cmp.Compare(b.Held, a.Held) })
	for _, st := range held[:most] {
		kept[st.Name] = true
	}
	row = map[string]int{}
	for _, st := range sc.Stations {
		if kept[st.Name] {
			row[st.Name] = len(names)
			names = append(names, st.Name)
		}
	}
	for _, st := range sc.Stations {
		if !kept[st.Name] {
			row[st.Name] = most
		}
	}
	if most < len(sc.Stations) {
		names = append(names, others)
	}
	return names, row
}

// speakers returns who of those that hold the focus speaks.
func speakers(list []story.Holder) map[string]bool {
	speaks := map[string]bool{}
	for _, h := range list {
		speaks[h.Name] = h.Speaks
	}
	return speaks
}

// A window is a part of a scene that stands in one band.
type window struct {
	from, to float64 // seconds from the start of the scene
	top      float64 // of the first station
	row      map[string]int
	speaks   map[string]bool // anywhere in the film
}

func (w window) y(row int) float64 { return w.top + pitch*float64(row) }

// scene draws a scene, in several bands if it is longer than the page is wide.
func (p *pages) scene(sc *story.Scene) {
	names, row := rowsOf(sc)
	height := max(bandLeast, bandAir+pitch*float64(len(names))+3)
	most := p.timeWidth() / p.scale
	end := float64(sc.Duration)
	for from := 0.0; from == 0 || from < end; from += most {
		g, y := p.Take(height, "scene")
		g.Title = draw.Clean(sc.Title)
		w := window{from: from, to: min(from+most, end), top: y + bandAir, row: row, speaks: speakers(p.film.Film.Holders)}
		p.drawName(g, sc, y, from > 0)
		p.drawStations(g, names, w)
		p.drawShots(g, sc, w)
		if from == 0 {
			p.drawFigures(g, sc, y)
		}
		g.Line(sheet.Margin, y+height, p.Paper.W-sheet.Margin, y+height, draw.Solid(draw.Guide, draw.GuideWidth))
	}
}

// drawName writes which scene it is.
func (p *pages) drawName(g *draw.Group, sc *story.Scene, y float64, more bool) {
	number, title := nameOf(p.film.Rest(sc))
	if more {
		number, title = number+" …", ""
	}
	name := draw.NewText(sheet.Margin, y+5, number, fontScene, draw.Black)
	if name.Room().W > sceneMost {
		name = draw.NewText(sheet.Margin, y+5, number, sheet.FontMark, draw.Black)
	}
	g.Add(name.Shortened(sceneMost))
	if title == "" {
		return
	}
	lines := fontStation.Wrap(title, sceneMost)
	for i, line := range lines[:min(2, len(lines))] {
		if i == 1 && len(lines) > 2 {
			line += " …"
		}
		g.Add(draw.NewText(sheet.Margin, y+8.6+3.2*float64(i), line, fontStation, draw.Grey).Shortened(sceneMost))
	}
}

// drawStations draws a guide for each station, with its name.
func (p *pages) drawStations(g *draw.Group, names []string, w window) {
	for i, name := range names {
		y := w.y(i)
		ink := draw.Grey
		if w.speaks[name] {
			ink = draw.Black
		}
		g.Add(draw.NewText(stationX, y+fontStation.Middle(), name, fontStation, ink).Aligned(draw.End).Shortened(nameMost))
		g.Line(timeFrom, y, timeFrom+(w.to-w.from)*p.scale, y, draw.Solid(draw.Guide, draw.GuideWidth))
	}
}

// drawShots draws the stays and the racks of all shots, one shot after the other.
func (p *pages) drawShots(g *draw.Group, sc *story.Scene, w window) {
	stays, racks, ticks := g.Group("stays"), g.Group("racks"), g.Group("shots")
	at := 0.0
	for i := range sc.Shots {
		s := &sc.Shots[i]
		if i > 0 && at > w.from && at < w.to {
			x := p.x(at, w)
			ticks.Line(x, w.top-1.0-tickHigh, x, w.top-1.0, draw.Solid(draw.Black, draw.RulerWidth))
		}
		for _, stay := range s.Stays {
			from, to := max(at+float64(stay.Start), w.from), min(at+float64(stay.End), w.to)
			if from < to {
				drawStay := signs.DrawStayOnThing
				if w.speaks[stay.On] {
					drawStay = signs.DrawStay
				}
				drawStay(stays, p.x(from, w), p.x(to, w), w.y(w.row[stay.On]))
			}
		}
		for k := range s.Racks {
			p.drawRack(racks, s, k, at, w)
		}
		at += float64(s.Duration)
	}
}

// x returns where a time of the scene stands in a band.
func (p *pages) x(t float64, w window) float64 { return timeFrom + (t-w.from)*p.scale }

// drawRack draws the line of a rack from station to station, as much of it as lies in a
// band. It ends where the focus does not stay on whom it goes to.
func (p *pages) drawRack(g *draw.Group, s *story.Shot, k int, at float64, w window) {
	r := &s.Racks[k]
	from, okFrom := w.row[r.From]
	to, okTo := w.row[r.To]
	start, land := at+float64(r.Start), at+float64(r.Land)
	if !okFrom || !okTo || !(start < land) || land <= w.from || start >= w.to {
		return
	}
	y := func(t float64) float64 {
		return w.y(from) + (w.y(to)-w.y(from))*(t-start)/(land-start)
	}
	a, b := max(start, w.from), min(land, w.to)
	line := g.Group("slant")
	line.Number = r.Number
	line.Line(p.x(a, w), y(a), p.x(b, w), y(b), draw.Solid(draw.Black, draw.DashWidth))
}
