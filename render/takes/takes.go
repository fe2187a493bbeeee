// Takes: where a hand has landed, against the time and against the travel that
// it had, with the spread that the fitted hand expects.

package takes

import (
	"fmt"
	"math"
	"slices"

	"pullscore/interp/takes"
	"pullscore/render/draw"
	"pullscore/render/sheet"
)

// Takes draws a log of takes. It is always one page.
func Takes(sample *takes.Sample, r *takes.Report, opt sheet.Options) []*draw.Page {
	tp := newTakesPage(sample, r, opt.Size())
	p := &draw.Page{Title: draw.Clean(tp.name() + ": takes"), Desc: draw.Clean(tp.describe()), W: tp.paper.W, H: tp.paper.H}
	tp.drawHead(p.Root.Group("head"))
	for _, plot := range tp.plots() {
		plot.draw(p.Root.Group(plot.name))
	}
	tp.drawKey(p.Root.Group("key"))
	tp.drawAside(p.Root.Group("aside"))
	return []*draw.Page{p}
}

// A takesPage is the drawing in the making.
type takesPage struct {
	report *takes.Report
	paper  sheet.Paper
	dots   []takes.Dot
	reach  float64 // of the error scale, degrees either way
	beyond int     // takes past it, drawn at its edge

	travels, times [3]float64 // a tenth, the half and nine tenths of the takes lie below
}

// The room on the page, in millimetres.
const (
	takesGutter = 15.0 // left of the plots, for their scale
	takesAside  = 74.0 // right of them, for words
	takesUnder  = 13.0 // under each plot, for its scale
	takesKey    = 14.0 // at the foot
	takesOver   = 7.0  // over each plot, for its name
)

// spread90 is how many standard deviations hold 90 % of landings to both sides.
const spread90 = 1.644854

func newTakesPage(sample *takes.Sample, r *takes.Report, paper sheet.Paper) *takesPage {
	tp := &takesPage{report: r, paper: paper, dots: sample.Dots()}
	var errors, travels, times []float64
	for _, d := range tp.dots {
		errors = append(errors, math.Abs(d.Error))
		travels = append(travels, d.Travel)
		times = append(times, d.Moving)
	}
	for _, list := range [][]float64{errors, travels, times} {
		slices.Sort(list)
	}
	for i, share := range []float64{0.1, 0.5, 0.9} {
		tp.travels[i], tp.times[i] = quantile(travels, share), quantile(times, share)
	}
	// A few wild misses do not flatten all others: they stand at the edge.
	tp.reach = max(niceCeil(1.15*quantile(errors, 0.98)), 1)
	for _, e := range errors {
		if e > tp.reach {
			tp.beyond++
		}
	}
	return tp
}

// quantile returns the value below which that share of a sorted list lies, 0
// for an empty one.
func quantile(sorted []float64, share float64) float64 {
	if len(sorted) == 0 {
		return 0
	}
	return sorted[min(int(share*float64(len(sorted))), len(sorted)-1)]
}

// niceStep returns a step of 1, 2 or 5 times a power of ten that divides a
// length into at most so many parts.
func niceStep(length float64, parts int) float64 {
	least := length / float64(parts)
	power := math.Pow(10, math.Floor(math.Log10(least)))
	for _, k := range []float64{1, 2, 5} {
		if k*power >= least*(1-1e-9) {
			return k * power
		}
	}
	return 10 * power
}

// niceCeil returns a round number that is not below v, which is positive.
func niceCeil(v float64) float64 {
	if !(v > 0) {
		return 1
	}
	step := niceStep(v, 6)
	return math.Ceil(v/step-1e-9) * step
}

func (tp *takesPage) name() string {
	if tp.report.Puller != "" {
		return tp.report.Puller
	}
	return "A log of takes"
}

func (tp *takesPage) describe() string {
	r := tp.report
	return fmt.Sprintf("Landing error in degrees against time and travel, %d takes. Throughput %s bit/s (%s to %s), spread at leisure %s deg (%s to %s), bias %s deg (%s to %s).",
		r.Takes, sheet.Figures.Number(float64(r.Throughput), 2), sheet.Figures.Number(float64(r.ThroughputInterval[0]), 2), sheet.Figures.Number(float64(r.ThroughputInterval[1]), 2),
		sheet.Figures.Number(float64(r.Rim), 2), sheet.Figures.Number(float64(r.RimInterval[0]), 2), sheet.Figures.Number(float64(r.RimInterval[1]), 2),
		sheet.Figures.Number(float64(r.Bias), 2), sheet.Figures.Number(float64(r.BiasInterval[0]), 2), sheet.Figures.Number(float64(r.BiasInterval[1]), 2))
}

// drawHead writes whose takes these are, and of when.
func (tp *takesPage) drawHead(g *draw.Group) {
	base := sheet.Edge + 6.5
	kind := draw.NewText(tp.paper.W-sheet.Margin, base, "takes", sheet.FontBody, draw.Grey).Aligned(draw.End)
	g.Add(kind)
	g.Add(draw.NewText(sheet.Margin, base, draw.Clean(tp.name()), sheet.FontID, draw.Black).Shortened(kind.Room().X - 6 - sheet.Margin))
	text := fmt.Sprintf("%d takes", tp.report.Takes)
	if n := len(tp.report.Sessions); n > 0 {
		text += fmt.Sprintf(" · %s to %s", tp.report.Sessions[0].Date, tp.report.Sessions[n-1].Date)
	}
	if len(tp.dots) < tp.report.Fitted {
		text += fmt.Sprintf(" · %d drawn, picked by chance", len(tp.dots))
	}
	if tp.beyond > 0 {
		text += fmt.Sprintf(" · %d beyond the scale, at its edge", tp.beyond)
	}
	g.Add(draw.NewText(sheet.Margin, base+5.2, text, sheet.FontBody, draw.Grey).Shortened(tp.paper.W - 2*sheet.Margin))
}

// plots returns the two plots, the upper one against time.
func (tp *takesPage) plots() []*takesPlot {
	left, right := sheet.Margin+takesGutter, tp.paper.W-sheet.Margin-takesAside
	top := sheet.Edge + sheet.HeadHeight
	height := (tp.paper.H-sheet.Edge-takesKey-top)/2 - takesUnder - takesOver
	fit := &tp.report.Fit
	byTime := &takesPlot{
		page: tp, name: "against-time", title: "Error against the time of the movement", unit: "s", box: draw.Box{X: left, Y: top + takesOver, W: right - left, H: height},
		x: func(d *takes.Dot) float64 { return d.Moving }, spread: func(x, other float64) float64 { return fit.Spread(other, x) }, others: tp.travels, otherUnit: "°",
	}
	byTravel := &takesPlot{
		page: tp, name: "against-travel", title: "Error against the travel", unit: "°", box: draw.Box{X: left, Y: top + 2*takesOver + height + takesUnder, W: right - left, H: height},
		x: func(d *takes.Dot) float64 { return d.Travel }, spread: fit.Spread, others: tp.times, otherUnit: " s",
	}
	byTime.scale()
	byTravel.scale()
	return []*takesPlot{byTime, byTravel}
}

// drawKey says what the signs are.
func (tp *takesPage) drawKey(g *draw.Group) {
	y := tp.paper.H - sheet.Edge - 2
	x := sheet.Margin + takesGutter
	for _, k := range []struct {
		hit  takes.Hit
		text string
	}{{takes.Sharp, "hit"}, {takes.Missed, "miss"}, {takes.Unsaid, "not said"}} {
		drawTake(g, x+1, y-1, k.hit)
		text := draw.NewText(x+4, y, k.text, sheet.FontSmall, draw.Black)
		g.Add(text)
		x = text.Box().Right() + 6
	}
	g.Add(draw.Rect{Box: draw.Box{X: x, Y: y - 2.6, W: 8, H: 3}, Fill: draw.BluePale, Stroke: sheet.Solid(draw.Blue, sheet.Hair)})
	text := draw.NewText(x+10, y, "where nine in ten land, by the fit, at the middle of the other scale", sheet.FontSmall, draw.Black)
	g.Add(text)
	x = text.Box().Right() + 6
	g.Line(x, y-1, x+8, y-1, sheet.Dashed(draw.Blue, sheet.Thin, 1.4, 0.9))
	g.Add(draw.NewText(x+10, y, "at a tenth and at nine tenths of it", sheet.FontSmall, draw.Black))
}

// drawAside writes the fit in words and numbers.
func (tp *takesPage) drawAside(g *draw.Group) {
	r := tp.report
	x, y := tp.paper.W-sheet.Margin-takesAside+8, sheet.Edge+sheet.HeadHeight+takesOver+2
	room := tp.paper.W - sheet.Margin - x
	say := func(f draw.Font, ink draw.Ink, gap float64, text string) {
		for _, line := range f.Wrap(text, room) {
			g.Add(draw.NewText(x, y, line, f, ink))
			y += 1.35 * f.Size * draw.MM
		}
		y += gap
	}
	value := func(name, number, span string) {
		say(sheet.FontStrong, draw.Black, 0, name)
		if r.Fitted < takes.Enough {
			say(sheet.FontBody, draw.Black, 2, "90 % within "+span+", about "+number)
			return
		}
		say(sheet.FontBody, draw.Black, 2, number+"; 90 % within "+span)
	}
	span := func(lo, hi float64) string { return sheet.Figures.Number(lo, 2) + " to " + sheet.Figures.Number(hi, 2) }
	f := &r.Fit
	say(sheet.FontHeading, draw.Black, 2, "The hand")
	if r.Fitted < takes.Enough {
		say(sheet.FontBody, draw.Rust, 2, fmt.Sprintf("Fewer than %d takes: read the ranges, not the numbers.", takes.Enough))
	}
	value("Throughput", sheet.Figures.Number(f.Throughput.Value, 2)+" bit/s", span(f.Throughput.Lo, f.Throughput.Hi))
	value("Spread at leisure, on a rim of 80 mm", sheet.Figures.AngleTo(f.Rim.Value, 2), span(f.Rim.Lo, f.Rim.Hi))
	value("Bias, past the mark", sheet.Figures.AngleTo(f.Bias.Value, 2), span(f.Bias.Lo, f.Bias.Hi))
	if r.Slipped > 0 {
		say(sheet.FontBody, draw.Rust, 2, fmt.Sprintf("%d of %d takes are slips and are not in the spread; every chance is lessened by %s.", r.Slipped, r.Fitted, sheet.Figures.Share(float64(r.SlipShare), 1)))
	}
	y += 2
	say(sheet.FontHeading, draw.Black, 2, "The takes")
	if r.HitsOf > 0 {
		say(sheet.FontBody, draw.Black, 2, fmt.Sprintf("%d of %d hit (%s): %s, 95 %% within %s to %s", r.Hits, r.HitsOf, r.HitsFrom,
			sheet.Figures.Share(float64(r.HitRate), 0), sheet.Figures.Share(float64(r.HitInterval[0]), 0), sheet.Figures.Share(float64(r.HitInterval[1]), 0)))
	}
	if !r.Constant.Known() {
		return
	}
	say(sheet.FontBody, draw.Black, 2, fmt.Sprintf("Constant error %s, variable %s, absolute %s", sheet.Figures.AngleTo(float64(r.Constant), 2), sheet.Figures.AngleTo(float64(r.Variable), 2), sheet.Figures.AngleTo(float64(r.Absolute), 2)))
	say(sheet.FontBody, draw.Black, 4, fmt.Sprintf("%d short of the mark, %d past it", r.Short, r.Past))
	say(sheet.FontNote, draw.Grey, 0, "The landing model that is fitted is our own, on published parts.")
}
