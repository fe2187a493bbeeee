// Names before the bands, kept apart, with leader lines to what they name. Each has two
// lines where all have room for it, else one. A leader is no longer than the eye follows:
// where names would have to go farther from their places, neighbours share a label.

package gutter

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"pullscore/render/draw"
	"pullscore/render/sheet"
	"pullscore/render/signs"
)

const (
	// HeadGap is between a row head and the time axis.
	HeadGap  = 4.0
	labelTwo = 6.6 // height of a label of two lines
	// LabelOne is the height of a label of one line.
	LabelOne = 3.4
	nameLow  = 1.55 // from the middle of a label of two lines up to its name's
)

// A leader goes from so far right of a label to so far left of the band, and is at most so
// long, millimetres.
const (
	leaderNear = HeadGap - 0.7
	leaderFar  = 0.3
	leaderMost = 12.0
)

// A Label is a name with figures, to stand at y.
type Label struct {
	Name, First, Second string
	Y                   float64
}

// A shared label names one thing, or several that stand near one another.
type shared []Label

// top and bottom return where the first and the last of the things stand.
func (l shared) top() float64    { return l[0].Y }
func (l shared) bottom() float64 { return l[len(l)-1].Y }

// reach returns how long the longest leader is from a label at y.
func (l shared) reach(y float64) float64 {
	return math.Hypot(max(math.Abs(y-l.top()), math.Abs(y-l.bottom())), leaderNear-leaderFar)
}

// Draw writes labels before a time axis that starts at left, between top and bottom.
func Draw(g *draw.Group, left float64, labels []Label, top, bottom float64) {
	var list []shared
	names := map[string]int{}
	for _, l := range labels {
		list = append(list, shared{l})
		names[l.Name]++
	}
	slices.SortStableFunc(list, func(a, b shared) int { return cmp.Compare(a.top(), b.top()) })
	if at, far := stand(list, labelTwo, nameLow, top, bottom); far < 0 {
		for i, l := range list {
			labelOnTwo(g, left, l[0], at[i])
			leader(g, left, l.top(), at[i]-nameLow)
		}
		return
	}
	at, far := stand(list, LabelOne, 0, top, bottom)
	for far >= 0 && len(list) > 1 {
		list = joined(list, at, far)
		at, far = stand(list, LabelOne, 0, top, bottom)
	}
	for i, l := range list {
		labelOnOne(g, left, l, names[l[0].Name] > 1, at[i])
		for _, one := range l {
			leader(g, left, one.Y, at[i])
		}
	}
}

// stand returns the middles of labels of a height, whose names stand so much above them,
// and which of them has the longest leader if that is too long; -1 for none. Labels that
// have no room are too far, all of them.
func stand(list []shared, height, low, top, bottom float64) (at []float64, far int) {
	want, size := make([]float64, len(list)), make([]float64, len(list))
	for i, l := range list {
		want[i], size[i] = (l.top()+l.bottom())/2+low, height
	}
	at, far = sheet.Spread(want, size, top, bottom), -1
	most := leaderMost
	if height*float64(len(list)) > bottom-top+1e-9 {
		most = 0
	}
	for i, l := range list {
		if reach := l.reach(at[i] - low); reach > most {
			far, most = i, reach
		}
	}
	return at, far
}

// joined joins two labels that stand one on the other, the two of those round the one that
// is too far whose places are nearest.
func joined(list []shared, at []float64, far int) []shared {
	from, to := far, far
	for touch := LabelOne + 0.01; from > 0 && at[from]-at[from-1] < touch; {
		from--
	}
	for touch := LabelOne + 0.01; to+1 < len(list) && at[to+1]-at[to] < touch; {
		to++
	}
	if from == to { // it stands alone, at an end
		from, to = max(0, far-1), min(len(list)-1, far+1)
	}
	best := from
	for i := from; i < to; i++ {
		if list[i+1].top()-list[i].bottom() < list[best+1].top()-list[best].bottom() {
			best = i
		}
	}
	pair := slices.Concat(list[best], list[best+1])
	return slices.Replace(slices.Clone(list), best, best+2, pair)
}

// labelOnTwo writes the name and, below it, the figure in both units; in the first alone
// where both have no room, and then both in the full text.
func labelOnTwo(g *draw.Group, left float64, l Label, y float64) {
	x := left - HeadGap
	name := draw.NewText(x, y-nameLow+sheet.FontStrong.Middle(), l.Name, sheet.FontStrong, draw.Black).Aligned(draw.End)
	g.Add(name.Shortened(x - sheet.Margin))
	figure := func(s string) draw.Text {
		return draw.NewText(x, y+nameLow+sheet.FontSmall.Middle()-0.1, s, sheet.FontSmall, draw.Grey).Aligned(draw.End)
	}
	written := figure(l.First)
	if l.Second != "" {
		if both := figure(l.First + " · " + l.Second); both.Room().W <= x-sheet.Margin {
			written = both
		} else {
			written.Full = both.String
		}
	}
	g.Add(written.Shortened(x - sheet.Margin))
}

// labelOnOne writes the name and the first figure on a line; both figures where another
// label has the name too; of several the names alone.
func labelOnOne(g *draw.Group, left float64, l shared, twice bool, y float64) {
	x, base := left-HeadGap, y+sheet.FontSmall.Middle()
	if len(l) > 1 {
		g.Add(l.names(x, base, x-sheet.Margin))
		return
	}
	figures := l[0].First
	if twice && l[0].Second != "" {
		figures += " · " + l[0].Second
	}
	figure := draw.NewText(x, base, figures, sheet.FontSmall, draw.Grey).Aligned(draw.End)
	g.Add(figure)
	x -= figure.Room().W + 1.2
	g.Add(draw.NewText(x, base, l[0].Name, sheet.FontNumber, draw.Black).Aligned(draw.End).Shortened(x - sheet.Margin))
}

// names returns the names of several things as one text that ends at x: as many as have
// room, and how many more there are; all of them, with their figures, are in its full text.
func (l shared) names(x, base, room float64) draw.Text {
	all, full := make([]string, len(l)), make([]string, len(l))
	for i, one := range l {
		all[i], full[i] = one.Name, one.Name+" "+one.First
	}
	for n := len(l); n > 0; n-- {
		text := strings.Join(all[:n], ", ")
		if n < len(l) {
			text += fmt.Sprintf(" +%d", len(l)-n)
		}
		t := draw.NewText(x, base, text, sheet.FontNumber, draw.Black).Aligned(draw.End)
		if t.Room().W <= room || n == 1 {
			t = t.Shortened(room)
			t.Full = strings.Join(full, ", ")
			return t
		}
	}
	return draw.Text{}
}

// leader joins a label that stands at y to what it names, at to.
func leader(g *draw.Group, left float64, to, y float64) {
	lg := g.Group(signs.Leader)
	lg.Line(left-leaderNear, y, left-leaderFar, to, draw.Solid(draw.Grey, draw.FineWidth))
}
