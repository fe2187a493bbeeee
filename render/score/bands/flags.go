// The lanes above the bands of a score: numbered discs where moves start, and
// flags where findings lie.

package bands

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"pullscore/interp/plan"
	"pullscore/render/draw"
	"pullscore/render/sheet"
	"pullscore/render/signs"
)

// A Sign is something that stands in a lane.
type Sign struct {
	Width float64
	Rank  int
	At    float64                        // where its middle wants to be
	Draw  func(g *draw.Group, x float64) // x is its middle
}

const (
	FlagHeight = signs.FlagHeight
	BadgeSize  = 1.9 // radius of a disc
)

// Open writes a band's heading, and in its lane the flags of its row and, over the
// distances, the moves of the focus.
func (sh *Leaf) Open(g *draw.Group, top float64, row, title string) {
	sh.Heading(g, top, title)
	lane := g.Group("flags")
	var taken []draw.Box
	if row == "distance" {
		taken = sh.drawDiscs(lane, top)
		for _, it := range lane.Items {
			if g, ok := it.(*draw.Group); ok && g.Name == "pull" {
				g.ID = PullID(sh.Shot, g.Number)
			}
		}
	} else if row == "hand" {
		taken = sh.discs
	}
	sh.DrawFlags(lane, sh.Window.flagsOn(row, ""), top+LaneAir+(FlagLane-FlagHeight)/2, taken)
}

// Lane returns the strip that opens a band of several rows.
func (w *Window) Lane(row, title string) Section {
	return Section{Name: row, Least: LaneHeight, Most: LaneHeight, OverTime: true,
		Draw: func(sh *Leaf, g *draw.Group, top, _ float64) {
			sh.Open(g, top, row, title)
		}}
}

// flagsOn returns the findings of the window that stand on a row. Of the rows of
// sharpness each has those of its subject.
func (w *Window) flagsOn(row, who string) []plan.Flag {
	var flags []plan.Flag
	for _, f := range w.Shot.Flags {
		if at, of := w.placeOf(f); at == row && of == who && w.Holds(f.Time) {
			flags = append(flags, f)
		}
	}
	return flags
}

// FlagsOf returns the findings of the window about how sharp somebody is.
func (w *Window) FlagsOf(who string) []plan.Flag { return w.flagsOn("sharp", who) }

// placeOf returns the row on which a finding has its flag, and of the rows of sharpness
// whose: what is about nobody, about lines or about the shot as a whole stands over the
// distances.
func (w *Window) placeOf(f plan.Flag) (row, who string) {
	switch f.Row {
	case "hand":
		return "hand", ""
	case "camera":
		if o := &w.Shot.Optics; o.Rig != nil && (o.Turns() || o.Travels()) { // else there is no such row
			return "camera", ""
		}
	case "sharp", "distance":
		if who := about(w.Shot, f); who != "" {
			return "sharp", who
		}
	}
	return "distance", ""
}

// about returns the subject that a finding is about; "" for none.
func about(s *plan.Shot, f plan.Flag) string {
	if f.Who == "" && f.Pull > 0 && f.Pull <= len(s.Pulls) {
		f.Who = s.Pulls[f.Pull-1].To
	}
	if s.Subject(f.Who) == nil {
		return ""
	}
	return f.Who
}

// FlagID returns the ID of the first flag with that letter.
func FlagID(s *plan.Shot, letter string) string { return draw.ID(s.ID, "flag", letter) }

// SentenceID returns the ID of the sentence about the findings of that letter.
func SentenceID(s *plan.Shot, letter string) string { return draw.ID(s.ID, "finding", letter) }

// PullID returns the ID of the disc of a pull over the distances.
func PullID(s *plan.Shot, number int) string { return draw.ID(s.ID, "pull", strconv.Itoa(number)) }

// RowID returns the ID of the row of a pull in the table.
func RowID(s *plan.Shot, number int) string { return draw.ID(s.ID, "pull-row", strconv.Itoa(number)) }

// A pennant is a flag in the making: of one finding, or of several at one place.
type pennant struct {
	*Chart
	flags []plan.Flag
	x     float64
}

// letters returns what stands in the flag: at most four letters.
func (p *pennant) letters() string {
	var all []string
	for _, f := range p.flags {
		if l := p.Chart.letters[f.Number]; !slices.Contains(all, l) {
			all = append(all, l)
		}
	}
	if len(all) > 4 {
		return all[0] + "+" + strconv.Itoa(len(all)-1)
	}
	return strings.Join(all, "")
}

// right returns where the next flag may stand.
func (p *pennant) right() float64 {
	const air = 0.6
	return p.x + signs.FlagWidth(p.letters()) + air
}

// worst returns the finding that weighs most.
func (p *pennant) worst() plan.Flag {
	return slices.MaxFunc(p.flags, func(a, b plan.Flag) int { return Rank(a.Severity) - Rank(b.Severity) })
}

// flagShift is how far right of its time a flag may stand, millimetres.
const flagShift = 4.0

// pennants gives each finding its flag, as near to its time as others let it: flags at
// one place become one.
func (sh *Leaf) pennants(flags []plan.Flag, taken []draw.Box) (list []pennant) {
	flags = slices.Clone(flags)
	slices.SortStableFunc(flags, func(a, b plan.Flag) int {
		switch {
		case a.Time < b.Time:
			return -1
		case a.Time > b.Time:
			return 1
		}
		return 0
	})
	for _, f := range flags {
		at := sh.Window.X(f.Time)
		p := pennant{Chart: sh.Chart, flags: []plan.Flag{f}, x: at}
		if n := len(list); n > 0 {
			last := &list[n-1]
			same := sh.Window.X(last.flags[0].Time) >= at-0.05
			if same || last.right()-at > flagShift {
				list = sh.merged(list[:n-1], append(last.flags, f), last.x, taken)
				continue
			}
			p.x = max(at, last.right())
		}
		p.x = sh.fitting(p.x, signs.FlagWidth(p.letters()), taken)
		if n := len(list); n > 0 && p.x < list[n-1].right() { // at the edge of the page
			p.flags = append(list[n-1].flags, f)
			list = sh.merged(list[:n-1], p.flags, list[n-1].x, taken)
			continue
		}
		list = append(list, p)
	}
	return list
}

// merged adds one flag of several findings to a list, and takes in those before it that it
// would cover.
func (sh *Leaf) merged(list []pennant, flags []plan.Flag, x float64, taken []draw.Box) []pennant {
	p := pennant{Chart: sh.Chart, flags: flags}
	p.x = sh.fitting(x, signs.FlagWidth(p.letters()), taken)
	if n := len(list); n > 0 && p.x < list[n-1].right() {
		return sh.merged(list[:n-1], append(slices.Clone(list[n-1].flags), flags...), list[n-1].x, taken)
	}
	return append(list, p)
}

// fitting returns the first place from x on where something of that width is clear of what
// is taken; if the page ends before, the last place on it that is clear.
func (sh *Leaf) fitting(x, width float64, taken []draw.Box) float64 {
	limit := sh.Paper.W - sheet.Margin
	if x = pushed(x, width, taken); x+width <= limit {
		return x
	}
	x = limit - width
	for moved := true; moved; {
		moved = false
		for _, b := range taken {
			if b.X < x+width-1e-9 && x < b.Right() {
				x, moved = b.X-width, true
			}
		}
	}
	return x
}

// pushed returns the first place from x on where something of that width is clear of what
// is taken.
func pushed(x, width float64, taken []draw.Box) float64 {
	for moved := true; moved; {
		moved = false
		for _, b := range taken {
			if b.X < x+width && x < b.Right() {
				x, moved = b.Right(), true
			}
		}
	}
	return x
}

// DrawFlags draws the flags of findings with their upper ends at y, each with its pole at
// its time.
func (sh *Leaf) DrawFlags(g *draw.Group, flags []plan.Flag, y float64, taken []draw.Box) {
	for _, p := range sh.pennants(flags, taken) {
		into := g
		for _, f := range p.flags { // one in the other, so that each can be found
			into = into.Group("finding")
			into.Title, into.Number = f.Severity+" "+f.Code+": "+f.Text, f.Number
			if sh.first[f.Number] {
				into.ID = FlagID(sh.Shot, sh.letters[f.Number])
			}
		}
		x := p.x
		at := sh.Window.X(p.flags[0].Time)
		ink := draw.Warning
		if p.worst().Severity == "note" {
			ink = draw.Grey
		}
		foot := y + FlagHeight + 0.9
		into.Add(draw.Path{Runs: [][]draw.Point{{{X: x, Y: y}, {X: x, Y: foot - 0.9}, {X: at, Y: foot}}}, Stroke: draw.Solid(ink, draw.RulerWidth)})
		flag := signs.DrawFlag(into, x, y, p.worst().Severity, p.letters())
		flag.Link = SentenceID(sh.Shot, sh.letters[p.flags[0].Number])
	}
}

// DrawSigns puts signs where they belong in time, apart from each other, and returns how
// far each reaches. Where there are more than the lane holds, the least weighty are left
// out; they are in the table.
func (sh *Leaf) DrawSigns(g *draw.Group, list []Sign) (taken []draw.Box) {
	lo, hi := sh.Left-2, sh.Window.Right+Apron
	slices.SortStableFunc(list, func(a, b Sign) int { return b.Rank - a.Rank })
	sizes := make([]float64, len(list))
	for i, s := range list {
		sizes[i] = s.Width
	}
	list = list[:sheet.Capacity(sizes, hi-lo)]
	want := make([]float64, len(list))
	for i, s := range list {
		want[i] = s.At
	}
	for i, x := range sheet.Spread(want, sizes[:len(list)], lo, hi) {
		list[i].Draw(g, x)
		taken = append(taken, draw.Box{X: x - sizes[i]/2, W: sizes[i]})
	}
	return taken
}

// The S of the first focus ends so far before the time axis, clear of a disc at its start,
// and takes so much, millimetres.
const (
	startOff  = 2.4
	startRoom = 3.0
)

// drawDiscs draws where the focus is at the start and where it moves, and returns how far
// the signs reach.
func (sh *Leaf) drawDiscs(g *draw.Group, top float64) (taken []draw.Box) {
	y := top + LaneAir + FlagLane/2
	if sh.Window.from == 0 {
		signs.DrawStart(g, sh.Left-startOff, y)
		taken = append(taken, draw.Box{X: sh.Left - startOff - startRoom, W: startRoom})
	}
	for _, p := range sh.Shot.Pulls {
		if from, to := sh.Window.X(float64(p.Start)), sh.Window.X(float64(p.Land)); p.Kind == "follow" && to > from {
			g.Group(signs.Follow).Line(from, y, to, y, draw.Solid(draw.Black, draw.DashWidth))
		}
	}
	return append(taken, sh.DrawSigns(g, sh.Badges(top))...)
}

// DrawDiscsAlone draws the discs of the moves over a band of the hand that stands alone.
func (sh *Leaf) DrawDiscsAlone(g *draw.Group, top float64) { sh.discs = sh.drawDiscs(g, top) }

// Badges returns the numbered discs of the moves that start in the window.
func (sh *Leaf) Badges(top float64) []Sign {
	var list []Sign
	for _, p := range sh.Shot.Pulls {
		if t := float64(p.Start); sh.Window.Holds(t) {
			list = append(list, Sign{At: sh.Window.X(t), Width: 2*signs.DiscRadius(p.Number) + 0.8, Rank: 3,
				Draw: func(g *draw.Group, x float64) {
					bg := g.Group("pull")
					bg.Title, bg.Number, bg.Link = PullTitle(sh.Shot, p), p.Number, RowID(sh.Shot, p.Number)
					y := top + LaneAir + FlagLane/2
					sh.Pole(bg, x, y, sh.Window.X(t), top)
					Badge(bg, x, y, p)
				}})
		}
	}
	return list
}

// Pole joins a sign that does not stand where it belongs to its place on the row's upper
// edge.
func (sh *Leaf) Pole(g *draw.Group, x, y, to, top float64) {
	if x-to < 0.05 && to-x < 0.05 {
		return
	}
	g.Add(draw.Path{Runs: [][]draw.Point{{{X: x, Y: y}, {X: x, Y: top + LaneHeight - 1}, {X: to, Y: top + LaneHeight}}}, Stroke: draw.Solid(draw.Grey, draw.FineWidth)})
}

// Badge draws the number of a pull of a table, with its middle at (x, y).
func Badge(g *draw.Group, x, y float64, p *plan.Pull) {
	signs.DrawPull(g, x, y, p.Number, p.Kind == "follow")
}

// PullTitle says the same with its number and its times.
func PullTitle(s *plan.Shot, p *plan.Pull) string {
	return fmt.Sprintf("%d: %s, %s to %s", p.Number, sheet.PullName(s, p), sheet.When(s, float64(p.Start)), sheet.When(s, float64(p.Land)))
}
