// The sheet of an overview, from the top down.

package overview

import (
	"fmt"
	"math"
	"slices"

	"pullscore/interp/plan"
	"pullscore/interp/units"
	"pullscore/render/draw"
	"pullscore/render/score/bands"
	"pullscore/render/sheet"
	"pullscore/render/signs"
)

// A Cell is a sheet of the score: its number, its ID, and the time that it shows, in
// seconds.
type Cell struct {
	Number   int
	ID       string
	From, To float64
}

// Up to so long a shot is one row from margin to margin; a longer one has rows of so long
// each, in seconds.
const (
	oneRow = 600.0
	aRow   = 300.0
)

// rows returns how many rows a shot has, and how many of them a page shows.
func rows(s *plan.Shot, size sheet.Paper) (all, page int) {
	if bands.Lasting(s) <= oneRow {
		return 1, 1
	}
	const stationLeast = 5.0
	stations, _ := stationsOf(s, stays(s))
	least := cell + 4 + linePit*float64(min(len(speakers(s)), voices)) + 3 + 10 + stationLeast*float64(len(stations)) + under
	all = int(math.Ceil(bands.Lasting(s)/aRow - 1e-9))
	return all, max(1, int((room(size)+rowGap)/(least+rowGap)))
}

// room returns the height that the rows of a page have together.
func room(size sheet.Paper) float64 { return size.H - foot - 6 - top }

// Pages returns how many pages the overview of a shot has.
func Pages(s *plan.Shot, size sheet.Paper) int {
	all, page := rows(s, size)
	return (all + page - 1) / page
}

const (
	left    = 40.0 // of the time axis, millimetres
	apron   = 14.0 // right of it
	top     = 28.5
	cell    = 5.4 // height of the cells
	linePit = 3.7
	lineBar = 1.5
	headGap = 3.0
	foot    = 20.0
	voices  = 8    // rows of lines at most
	under   = 16.0 // a row's findings and its time
	rowGap  = 4.0
)

// A paper is the overview of a stretch of a shot in the making, a row of a page.
type paper struct {
	shot      *plan.Shot
	size      sheet.Paper
	from, to  float64
	top       float64 // of the row
	right     float64
	chart     *bands.Chart
	cells     []Cell
	held      []stay
	stations  []*station
	of        map[string]*station
	perSecond float64
	scale     scale
}

// Page returns one page of the overview, from 0; of is the number of all pages of the
// score.
func Page(sc *bands.Chart, cells []Cell, page, of int) *draw.Page {
	s := sc.Shot
	p := &paper{shot: s, size: sc.Paper, chart: sc, cells: cells, held: stays(s)}
	p.stations, p.of = stationsOf(s, p.held)
	out := &draw.Page{
		Title: draw.Clean(fmt.Sprintf("%s: overview, page %d of %d", sheet.ShotName(s), page+1, of)),
		Desc:  draw.Clean(p.describe()), W: p.size.W, H: p.size.H,
	}
	root := &out.Root
	root.ID = sheet.PageID(s, "score", page+1)
	sheet.DrawHead(root.Group("head"), s, p.size, sheet.Folio{Paper: "overview", Number: page + 1, Of: of, Scale: units.Count(len(s.Pulls), "move")})
	all, most := rows(s, p.size)
	long, width := bands.Lasting(s), p.size.W-apron-left
	if all > 1 {
		long = aRow
	}
	p.perSecond = width / long
	height := (room(p.size) - rowGap*float64(most-1)) / float64(most)
	for i := page * most; i < min(all, (page+1)*most); i++ {
		p.from = long * float64(i)
		p.to = min(p.from+long, bands.Lasting(s))
		p.right = p.x(p.to)
		p.top = top + (height+rowGap)*float64(i-page*most)
		p.draw(root, p.top+height-under)
	}
	p.drawHeld(root.Group("held"), p.size.H-foot-3)
	sheet.DrawLegend(root, p.size, "stations keep their order; true distances on the sheets")
	return out
}

func (p *paper) describe() string {
	return fmt.Sprintf("Shot %s as a graph of who holds the focus: %s between %s, %s.", sheet.ShotName(p.shot),
		units.Count(len(p.shot.Pulls), "move"), units.Count(len(p.stations), "station"), sheet.Figures.Time(float64(p.shot.Duration)))
}

// x returns where a time stands, held to the page.
func (p *paper) x(t float64) float64 {
	return left + (min(max(t, p.from), p.to)-p.from)*p.perSecond
}

// shows reports whether a stretch of time shows on the page.
func (p *paper) shows(from, to float64) bool { return from < p.to && to > p.from }

// draw draws a row, the stations down to a height.
func (p *paper) draw(root *draw.Group, bottom float64) {
	y := p.drawLines(root.Group("lines"), p.top+cell+4)
	p.heading(root, y+2, "Stations")
	p.place(y+5, bottom-5)
	p.drawCells(root.Group("sheets"), bottom)
	p.drawStations(root.Group("stations"))
	p.drawGraph(root)
	p.heading(root, bottom+4.4, "Findings")
	p.chart.Overall(left, p.perSecond, p.from, p.to).DrawFlags(root.Group("flags"), p.flags(), bottom+1.4, nil)
	p.drawTime(root.Group("ruler"), bottom+9.5)
}

// flags returns the findings of the row.
func (p *paper) flags() (list []plan.Flag) {
	for _, f := range p.shot.Flags {
		if (f.Time >= p.from || p.from == 0) && (f.Time < p.to || p.to >= bands.Lasting(p.shot)) {
			list = append(list, f)
		}
	}
	return list
}

func (p *paper) heading(g *draw.Group, base float64, text string) {
	g.Add(draw.NewText(sheet.Margin, base, text, sheet.FontHeading, draw.Black))
}

// drawCells draws which sheet shows what, with a guide where each begins.
func (p *paper) drawCells(g *draw.Group, bottom float64) {
	p.heading(g, p.top+cell/2+sheet.FontHeading.Middle(), "Sheets")
	until := 0.0
	for i, c := range p.cells {
		if !p.shows(c.From, c.To) {
			continue
		}
		x1, x2 := p.x(c.From), p.x(c.To)
		cg := g.Group("cell")
		cg.Link = c.ID
		if i%2 == 0 {
			cg.Add(draw.Rect{Box: draw.Box{X: x1, Y: p.top, W: x2 - x1, H: cell}, Fill: draw.Slab})
		}
		g.Line(x1, p.top, x1, bottom, draw.Solid(draw.Guide, draw.GuideWidth))
		for _, text := range []string{fmt.Sprintf("page %d", c.Number), fmt.Sprint(c.Number)} {
			t := draw.NewText((x1+x2)/2, p.top+cell/2+sheet.FontStrong.Middle(), text, sheet.FontStrong, draw.Black).Aligned(draw.Middle)
			if room := t.Room(); room.W <= x2-x1 || text == fmt.Sprint(c.Number) && room.X >= until {
				cg.Add(t)
				until = room.Right() + 1.6
				break
			}
		}
	}
	g.Line(p.right, p.top, p.right, bottom, draw.Solid(draw.Guide, draw.GuideWidth))
}

// speakers returns who speaks: subjects in the order of all papers, then other voices.
func speakers(s *plan.Shot) (names []string) {
	for _, u := range sheet.Order(s) {
		names = append(names, u.Name)
	}
	for _, l := range s.Lines {
		if !slices.Contains(names, l.Who) {
			names = append(names, l.Who)
		}
	}
	return slices.DeleteFunc(names, func(n string) bool {
		return !slices.ContainsFunc(s.Lines, func(l plan.Line) bool { return l.Who == n })
	})
}

// drawLines draws who speaks when, and returns where that ends.
func (p *paper) drawLines(g *draw.Group, y float64) float64 {
	names := speakers(p.shot)
	row := func(who string) int { return min(slices.Index(names, who), voices-1) }
	for i, name := range names[:min(len(names), voices)] {
		if i == voices-1 && len(names) > voices {
			name = others
		}
		base := y + linePit*(float64(i)+0.5) + sheet.FontNote.Middle()
		room := left - headGap - sheet.Margin
		if i == 0 {
			p.heading(g, base, "Lines")
			room -= sheet.FontHeading.Room("Lines") + 1.6
		}
		g.Add(draw.NewText(left-headGap, base, name, sheet.FontNote, draw.Grey).Aligned(draw.End).Shortened(room))
	}
	for _, l := range p.shot.Lines {
		if from, to := float64(l.Start), float64(l.End); p.shows(from, to) {
			middle := y + linePit*(float64(row(l.Who))+0.5)
			g.Add(draw.Rect{Box: draw.Box{X: p.x(from), Y: middle - lineBar/2, W: p.x(to) - p.x(from), H: lineBar}, Fill: draw.Soft})
		}
	}
	return y + linePit*float64(min(len(names), voices)) + 3
}

// drawStations names the stations, and draws their guides.
func (p *paper) drawStations(g *draw.Group) {
	const two = 6.6
	for i, st := range p.stations {
		g.Add(draw.Path{Runs: [][]draw.Point{p.along(st, p.from, p.to)}, Stroke: draw.Solid(draw.Guide, draw.GuideWidth)})
		name := draw.NewText(left-headGap, st.y+sheet.FontStrong.Middle(), st.name, sheet.FontStrong, draw.Black).Aligned(draw.End)
		room := left - headGap - sheet.Margin
		if wide := i+1 == len(p.stations) || p.stations[i+1].y-st.y >= two; wide && st.metres > 0 {
			first, second := sheet.Style(p.shot).Both(st.metres)
			if second != "" {
				first += " · " + second
			}
			name.At.Y -= 1.1
			g.Add(draw.NewText(left-headGap, st.y+2.9, first, sheet.FontSmall, draw.Grey).Aligned(draw.End).Shortened(room))
		}
		g.Add(name.Shortened(room))
	}
}

// along returns where a station stands from one time to another.
func (p *paper) along(st *station, from, to float64) []draw.Point {
	run := []draw.Point{{X: p.x(from), Y: p.y(st, from)}}
	if st.walks != nil {
		const every = 1.0 // millimetres
		for x := run[0].X + every; x < p.x(to); x += every {
			run = append(run, draw.Point{X: x, Y: p.y(st, p.from+(x-left)/p.perSecond)})
		}
	}
	return sheet.Simplify(append(run, draw.Point{X: p.x(to), Y: p.y(st, to)}))
}

// drawGraph draws who holds the focus, and the moves between.
func (p *paper) drawGraph(root *draw.Group) {
	slants, stays, numbers := root.Group("slants"), root.Group("stays"), root.Group("numbers")
	for i, h := range p.held {
		st := p.of[h.name]
		if p.shows(h.from, h.to) {
			signs.DrawStayAlong(stays, p.along(st, max(h.from, p.from), min(h.to, p.to)))
		}
		if i+1 < len(p.held) && p.shows(h.to, p.held[i+1].from+1e-9) {
			next := p.held[i+1]
			slants.Line(p.x(h.to), p.y(st, h.to), p.x(next.from), p.y(p.of[next.name], next.from), draw.Solid(draw.Black, draw.StopWidth))
		}
	}
	var taken []draw.Box
	if y := p.y(p.of[p.held[0].name], 0) - 3.4; p.from == 0 {
		signs.DrawStart(numbers, left-0.2, y)
		taken = append(taken, draw.Box{X: left - 3, Y: y - 1.8, W: 3, H: 3.6})
	}
	p.drawNumbers(numbers, taken)
}

// drawNumbers writes the number of each move where it starts: above the station if it goes
// nearer, below if it goes farther, so that no slant crosses it. Where they are too near to
// one another some are left out; the discs on the sheets have all.
func (p *paper) drawNumbers(g *draw.Group, taken []draw.Box) {
	const off, apart = 2.6, 4.0
	at := p.of[p.held[0].name]
	for _, pull := range p.shot.Pulls {
		to := p.of[sheet.TargetName(p.shot, pull.To, pull.Target)]
		t := float64(pull.Start)
		y := p.y(at, t) - off
		if p.y(to, t) < p.y(at, t) {
			y = p.y(at, t) + off
		}
		at = to
		wide := max(apart, sheet.FontStrong.Room(fmt.Sprint(pull.Number)))
		box := draw.Box{X: p.x(t) - wide/2, Y: y - 1.6, W: wide, H: 3.2}
		if t < p.from || t >= p.to && p.to < bands.Lasting(p.shot) || t > p.to || slices.ContainsFunc(taken, box.Overlaps) {
			continue
		}
		taken = append(taken, box)
		signs.DrawDeparture(g, p.x(t), y, pull.Number)
	}
}

// drawTime draws the time in minutes and seconds.
func (p *paper) drawTime(g *draw.Group, y float64) {
	p.heading(g, y+sheet.FontHeading.Middle(), "Time")
	g.Line(left, y, p.right, y, draw.Solid(draw.Black, draw.RulerWidth))
	steps := []float64{1, 2, 5, 10, 20, 30, 60, 120}
	step := func(least float64) float64 {
		for _, s := range steps {
			if s*p.perSecond >= least {
				return s
			}
		}
		return steps[len(steps)-1]
	}
	tick, label := step(1.2), step(18)
	for t := math.Ceil(p.from/tick) * tick; t <= p.to+1e-9; t += tick {
		long := 0.8
		if math.Mod(t, label) == 0 {
			long = 1.8
			text := fmt.Sprintf("%d:%02d", int(t)/60, int(t)%60)
			g.Add(draw.NewText(p.x(t), y+4.6, text, sheet.FontNote, draw.Grey).Aligned(draw.Middle))
		}
		g.Line(p.x(t), y, p.x(t), y+long, draw.Solid(draw.Black, draw.RulerWidth))
	}
}

// drawHeld writes how long each station holds the focus, and the extremes.
func (p *paper) drawHeld(g *draw.Group, base float64) {
	p.heading(g, base, "Held")
	end := draw.NewText(p.right, base, p.extremes(), sheet.FontNote, draw.Grey).Aligned(draw.End)
	g.Add(end)
	x, limit := left, end.Room().X-4
	for _, st := range p.stations {
		if st.stays == 0 {
			continue
		}
		name := draw.NewText(x, base, st.name, sheet.FontNumber, draw.Black)
		text := draw.NewText(name.Room().Right()+0.6, base, sheet.Figures.Number(st.held, 0)+" s, "+units.Count(st.stays, "stay"), sheet.FontNote, draw.Black)
		if text.Room().Right() > limit {
			return
		}
		g.Add(name, text)
		x = text.Room().Right() + 3
	}
}

// extremes names the shortest stay and the fastest move.
func (p *paper) extremes() string {
	short, fast := math.Inf(1), math.Inf(1)
	for _, h := range p.held {
		short = min(short, h.to-h.from)
	}
	for _, pull := range p.shot.Pulls {
		if pull.Kind != "follow" {
			fast = min(fast, float64(pull.Land-pull.Start))
		}
	}
	text := "shortest stay " + sheet.Figures.Time(short)
	if !math.IsInf(fast, 1) {
		text += " · fastest rack " + sheet.Figures.Time(fast)
	}
	return text
}
