// Takes: where a hand has landed, against the time and against the travel that
// it had, with the spread that the fitted hand expects. Where all travels are much alike,
// the errors are counted instead.

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
	plots := tp.plots()
	plots[0].draw(p.Root.Group(plots[0].name))
	if tp.spreads() {
		plots[1].draw(p.Root.Group(plots[1].name))
	} else {
		h := histogram{takesPage: tp, takesPlot: plots[1]}
		h.draw(p.Root.Group("histogram"))
	}
	tp.drawAside(p.Root.Group("aside"))
	sheet.DrawLegend(&p.Root, tp.paper, "our own landing model, on published parts")
	return []*draw.Page{p}
}

// A takesPage is the drawing in the making.
type takesPage struct {
	report *takes.Report
	paper  sheet.Paper
	dots   []takes.Dot
	reach  float64 // of the error scale, degrees either way
	beyond int     // takes past it, drawn at its edge
	window window

	travels, times [3]float64 // a tenth, the half and nine tenths of the takes lie below
}

// The room on the page, in millimetres.
const (
	takesGutter = 15.0 // left of the plots, for their scale
	takesAside  = 74.0 // right of them, for words
	takesUnder  = 13.0 // under each plot, for its scale
	takesKey    = sheet.FootRule
	takesOver   = 7.0 // over each plot, for its name
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
	tp.window = windowOf(tp.dots, r)
	return tp
}

// mostAlike is by what factor travels may differ and count as one travel.
const mostAlike = 1.3

// spreads reports whether the travels differ enough to be a scale.
func (tp *takesPage) spreads() bool {
	least, most := math.Inf(1), 0.0
	for _, d := range tp.dots {
		least, most = min(least, d.Travel), max(most, d.Travel)
	}
	return most > mostAlike*least
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
	parts := []string{fmt.Sprintf("%d takes", tp.report.Takes)}
	if n := len(tp.report.Sessions); n > 0 {
		parts = append(parts, fmt.Sprintf("%s to %s", tp.report.Sessions[0].Date, tp.report.Sessions[n-1].Date))
	}
	if len(tp.dots) < tp.report.Fitted {
		parts = append(parts, fmt.Sprintf("%d drawn, picked by chance", len(tp.dots)))
	}
	if tp.beyond > 0 {
		parts = append(parts, fmt.Sprintf("%d beyond the scale, at its edge", tp.beyond))
	}
	sheet.DrawHeadOf(g, sheet.Heading{Name: draw.Clean(tp.name()), Line: sheet.Joined(parts)}, tp.paper, sheet.Folio{Paper: "takes", Number: 1, Of: 1})
}

// plots returns the two plots, the upper one against time.
func (tp *takesPage) plots() []*takesPlot {
	left, right := sheet.Margin+takesGutter, tp.paper.W-sheet.Margin-takesAside
	top := sheet.Edge + sheet.HeadHeight
	height := (tp.paper.H-takesKey-top)/2 - takesUnder - takesOver
	fit := &tp.report.Fit
	byTime := &takesPlot{
		page: tp, name: "against-time", title: "Error against the time of the movement", unit: "s", box: draw.Box{X: left, Y: top + takesOver, W: right - left, H: height},
		x: func(d *takes.Dot) float64 { return d.Moving }, spread: func(x, other float64) float64 { return fit.Spread(other, x) }, others: tp.travels,
	}
	byTravel := &takesPlot{
		page: tp, name: "against-travel", title: "Error against the travel", unit: "°", box: draw.Box{X: left, Y: top + 2*takesOver + height + takesUnder, W: right - left, H: height},
		x: func(d *takes.Dot) float64 { return d.Travel }, spread: fit.Spread, others: tp.times,
	}
	byTime.scale()
	byTravel.scale()
	return []*takesPlot{byTime, byTravel}
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
		say(sheet.FontBody, draw.Warning, 2, fmt.Sprintf("Fewer than %d takes: read the ranges, not the numbers.", takes.Enough))
	}
	value("Throughput", sheet.Figures.Number(f.Throughput.Value, 2)+" bit/s", span(f.Throughput.Lo, f.Throughput.Hi))
	value("Spread at leisure, on a rim of 80 mm", sheet.Figures.AngleTo(f.Rim.Value, 2), span(f.Rim.Lo, f.Rim.Hi))
	value("Bias, past the mark", sheet.Figures.AngleTo(f.Bias.Value, 2), span(f.Bias.Lo, f.Bias.Hi))
	if r.Slipped > 0 {
		say(sheet.FontBody, draw.Warning, 2, fmt.Sprintf("%d of %d takes are slips and are not in the spread; every chance is lessened by %s.", r.Slipped, r.Fitted, sheet.Figures.Share(float64(r.SlipShare), 1)))
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
	say(sheet.FontNote, draw.Grey, 0, tp.bandSays())
}

// bandSays explains the band of the plots.
func (tp *takesPage) bandSays() string {
	n := func(v float64) string { return sheet.Figures.Number(v, 2) }
	text := fmt.Sprintf("Grey: where nine in ten land, by the fit, at a travel of %s°", n(tp.travels[1]))
	if !tp.spreads() {
		return text + ". The line in the middle of the grey is the bias."
	}
	text += fmt.Sprintf("; lines: at %s and %s°. Against the travel, at %s s, and at %s and %s s.", n(tp.travels[0]), n(tp.travels[2]), n(tp.times[1]), n(tp.times[0]), n(tp.times[2]))
	return text + " The line in the middle of the grey is the bias."
}
