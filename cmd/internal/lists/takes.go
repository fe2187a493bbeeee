package lists

import (
	"fmt"
	"math"
	"strings"

	"pullscore/cmd/internal/console"
	"pullscore/interp/plan"
	"pullscore/interp/takes"
	"pullscore/interp/units"
)

// Limits on what the text shows; JSON has it all.
const (
	mostSessions = 12
	mostPulls    = 8
	mostSlips    = 8
)

// WriteTakes writes a report.
func WriteTakes(screen console.Screen, r *takes.Report) error {
	w := &takeWriter{console.Lines{Screen: screen}}
	w.head(r)
	w.hand(r)
	w.slips(r)
	w.scores(r)
	w.sessions(r)
	w.pulls("Pulls, those that hit least first", r.Pulls)
	w.practise(r)
	w.page(r)
	w.Line("")
	w.Wrapped(console.Dim, "", "The hand is fitted to a landing model of our own, put together from published measurements, "+
		"and is held to a hand with published throughput, half a millimetre assumed at the rim, where takes are few.")
	return w.Flush()
}

type takeWriter struct{ console.Lines }

func (w *takeWriter) title(text string) {
	w.Line("")
	w.Line(w.Screen.Paint(console.Bold, console.Clean(text)))
}

func (w *takeWriter) head(r *takes.Report) {
	name := r.Puller
	if name == "" {
		name = "A log of takes"
	}
	w.Line(w.Screen.Paint(console.Bold, console.Clean(name)))
	text := units.Count(r.Takes, "take")
	if n := len(r.Sessions); n > 0 {
		text += fmt.Sprintf(" in %s, %s", units.Count(n, "session"), r.Sessions[0].Date)
		if n > 1 {
			text += " to " + r.Sessions[n-1].Date
		}
	}
	w.Wrapped(console.Dim, margin, text)
	if r.Fitted < takes.Enough {
		w.Wrapped(console.Yellow, margin, fmt.Sprintf("Fewer than %d takes: read the ranges, not the numbers.", takes.Enough))
	}
	if r.Others > 0 {
		w.Wrapped(console.Dim, margin, fmt.Sprintf("Left out: %s of other pullers.", units.Count(r.Others, "take")))
	}
	if r.TooFast > 0 {
		w.Wrapped(console.Yellow, margin, fmt.Sprintf("Scored but not fitted: %s with no time to move besides the re-grips that such a turn asks for. A grip of more degrees (--grip) may suit this hand.", units.Count(r.TooFast, "take")))
	}
	if r.OnTheStop > 0 {
		w.Wrapped(console.Dim, margin, fmt.Sprintf("Scored but not fitted: %s onto a mark where the end of the ring is sharp too, so that nobody knows what the hand aimed at.", units.Count(r.OnTheStop, "take")))
	}
	if r.Unmeasured > 0 {
		w.Wrapped(console.Dim, margin, fmt.Sprintf("Counted but not fitted: %s that do not say where the focus came to rest.", units.Count(r.Unmeasured, "take")))
	}
	if r.Censored > 0 {
		w.Wrapped(console.Dim, margin, fmt.Sprintf("Held by the end of the ring: %s, which would have gone on.", units.Count(r.Censored, "take")))
	}
	if r.PageLeftOut > 0 {
		w.Wrapped(console.Dim, margin, fmt.Sprintf("Left out: %s on the page, below in a table of their own.", tries(r.PageLeftOut)))
	}
}

// tries counts tries.
func tries(n int) string {
	if n == 1 {
		return "1 try"
	}
	return fmt.Sprintf("%d tries", n)
}

// hand writes the fit. The range stands before the number where takes are few.
func (w *takeWriter) hand(r *takes.Report) {
	few := r.Fitted < takes.Enough
	head := []string{"", "fitted", "90 % within"}
	if few {
		head = []string{"", "90 % within", "fitted"}
	}
	rows := [][]string{head}
	add := func(name string, v plan.Number, in plan.Interval, unit string, signed bool) {
		number := takeFigure(float64(v), signed) + " " + unit
		span := takeFigure(float64(in[0]), signed) + " to " + takeFigure(float64(in[1]), signed)
		if few {
			rows = append(rows, []string{name, span + " " + unit, takeFigure(float64(v), signed)})
			return
		}
		rows = append(rows, []string{name, number, span})
	}
	mm := r.RimMM / r.Rim
	add("throughput", r.Throughput, r.ThroughputInterval, "bit/s", false)
	add("spread at leisure", r.RimMM, plan.Interval{r.RimInterval[0] * mm, r.RimInterval[1] * mm}, "mm of rim", false)
	add("  on a rim of "+figures.Millimetres(float64(r.ReferenceMM)/1000), r.Rim, r.RimInterval, "deg", false)
	add("bias, past the mark", r.Bias, r.BiasInterval, "deg", true)
	w.title("The hand")
	w.table(rows)
}

// slips names the takes that the fit leaves out.
func (w *takeWriter) slips(r *takes.Report) {
	if r.Slipped == 0 {
		return
	}
	w.title("Slips, which are not in the spread")
	rows := [][]string{{"", "error", "spreads", "of"}}
	for _, s := range r.Slips[:min(len(r.Slips), mostSlips)] {
		of := ""
		if s.Shot != "" && s.Pull > 0 {
			of = place(s.Plan, s.Shot, s.Pull)
		}
		rows = append(rows, []string{fmt.Sprintf("line %d  %s", s.Line, s.Date), takeFigure(float64(s.Error), true) + " deg", units.Decimal(float64(s.Spreads), 1), of})
	}
	w.table(rows)
	if more := r.Slipped - min(len(r.Slips), mostSlips); more > 0 {
		w.Line(margin + w.Screen.Paint(console.Dim, fmt.Sprintf("and %d more", more)))
	}
	w.Wrapped(console.Plain, margin, fmt.Sprintf("%s of %s: every chance of this hand is lessened by %s.", units.Count(r.Slipped, "slip"), units.Count(r.Fitted, "take"), figures.Share(float64(r.SlipShare), 1)))
}

func (w *takeWriter) scores(r *takes.Report) {
	if r.Takes == 0 {
		return
	}
	w.title("The takes")
	var rows [][]string
	if r.HitsOf > 0 {
		rows = append(rows, []string{"hits", fmt.Sprintf("%d of %d, %s", r.Hits, r.HitsOf, r.HitsFrom), fmt.Sprintf("%s; 95 %% within %s to %s",
			percent(r.HitRate), percent(r.HitInterval[0]), percent(r.HitInterval[1]))})
	}
	if r.Constant.Known() {
		rows = append(rows, errorRows(r)...)
	}
	if r.Timed > 0 {
		rows = append(rows, []string{"time", takeFigure(float64(r.Lateness), true) + " s", fmt.Sprintf("over the plan's; %d early, %d late of %d", r.Early, r.Late, r.Timed)})
	}
	if len(rows) > 0 {
		w.table(rows)
	}
}

func errorRows(r *takes.Report) [][]string {
	return [][]string{
		{"constant error", takeFigure(float64(r.Constant), true) + " deg", "the mean, past the mark where positive"},
		{"variable error", takeFigure(float64(r.Variable), false) + " deg", "the spread about that mean"},
		{"absolute error", takeFigure(float64(r.Absolute), false) + " deg", fmt.Sprintf("%d short of the mark, %d past it", r.Short, r.Past)},
	}
}

func (w *takeWriter) sessions(r *takes.Report) {
	if len(r.Sessions) < 2 {
		return
	}
	w.title("Sessions")
	list := r.Sessions
	if more := len(list) - mostSessions; more > 0 {
		w.Line(margin + w.Screen.Paint(console.Dim, fmt.Sprintf("the last %d of %d", mostSessions, len(list))))
		list = list[more:]
	}
	rows := [][]string{{"", "takes", "constant", "variable", "hits", "spread over fit"}}
	for _, s := range list {
		rows = append(rows, []string{s.Date, fmt.Sprint(s.Takes), takeFigure(float64(s.Constant), true), takeFigure(float64(s.Variable), false),
			fmt.Sprintf("%d of %d", s.Hits, s.HitsOf), takeFigure(float64(s.Spread), false)})
	}
	w.table(rows)
	if r.Change != nil {
		w.Wrapped(console.Plain, margin, changed(r.Change))
	}
}

// changed says what the last session has that those before it had not, as far
// as the takes can tell.
func changed(c *takes.Change) string {
	var parts []string
	switch {
	case c.SpreadInterval[1] < 1:
		parts = append(parts, fmt.Sprintf("lands tighter, by a factor of %s (%s to %s)", takeFigure(float64(c.Spread), false), takeFigure(float64(c.SpreadInterval[0]), false), takeFigure(float64(c.SpreadInterval[1]), false)))
	case c.SpreadInterval[0] > 1:
		parts = append(parts, fmt.Sprintf("spreads wider, by a factor of %s (%s to %s)", takeFigure(float64(c.Spread), false), takeFigure(float64(c.SpreadInterval[0]), false), takeFigure(float64(c.SpreadInterval[1]), false)))
	}
	if c.BiasInterval[0] > 0 || c.BiasInterval[1] < 0 {
		parts = append(parts, fmt.Sprintf("has moved its mean by %s deg (%s to %s)", takeFigure(float64(c.Bias), true), takeFigure(float64(c.BiasInterval[0]), true), takeFigure(float64(c.BiasInterval[1]), true)))
	}
	if len(parts) == 0 {
		return fmt.Sprintf("The session of %s is no different from those before it, as far as so many takes can tell.", c.Date)
	}
	return fmt.Sprintf("Against those before it, the session of %s %s.", c.Date, strings.Join(parts, " and "))
}

func (w *takeWriter) pulls(title string, list []takes.PullLine) {
	if len(list) == 0 {
		return
	}
	w.title(title)
	rows := [][]string{{"", "takes", "hits", "constant", "variable"}}
	for _, p := range list[:min(len(list), mostPulls)] {
		rows = append(rows, []string{place(p.Plan, p.Shot, p.Pull), fmt.Sprint(p.Takes), fmt.Sprintf("%d of %d", p.Hits, p.HitsOf),
			takeFigure(float64(p.Constant), true), takeFigure(float64(p.Variable), false)})
	}
	w.table(rows)
}

func (w *takeWriter) practise(r *takes.Report) {
	if len(r.Practise) == 0 {
		return
	}
	w.title("To practise next")
	rows := [][]string{{"", "lands", "wanted", "takes", ""}}
	for _, p := range r.Practise[:min(len(r.Practise), mostPulls)] {
		note := ""
		if p.Ceiling < p.Wanted {
			note = "more time cannot help: " + figures.Chance(float64(p.Ceiling), float64(p.Wanted)) + " at most"
		}
		rows = append(rows, []string{place(p.Plan, p.Shot, p.Pull), figures.Chance(float64(p.Chance), float64(p.Wanted)), figures.Wanted(float64(p.Wanted)), fmt.Sprint(p.Takes), note})
	}
	w.table(rows)
	if r.Practise[0].Short() <= 0 {
		w.Wrapped(console.Plain, margin, "By the model, every rack of the plan has the wanted chance with this hand.")
	}
}

// page writes how the tries on the page of a plan went.
func (w *takeWriter) page(r *takes.Report) {
	if r.Page == nil {
		return
	}
	w.title("On the page")
	rows := [][]string{{"hits", fmt.Sprintf("%d of %d", r.Page.Hits, r.Page.HitsOf), "by mouse, keys or a wheel at the page, which is no ring: no fit knows of them"}}
	if r.Page.Constant.Known() {
		rows = append(rows, []string{"constant error", takeFigure(float64(r.Page.Constant), true) + " deg", ""},
			[]string{"variable error", takeFigure(float64(r.Page.Variable), false) + " deg", ""})
	}
	w.table(rows)
	w.pulls("Pulls tried on the page, those that hit least first", r.Page.Pulls)
}

// place names a pull, the plan last: of a long name the end may be cut off.
func place(plan, shot string, pull int) string {
	name := fmt.Sprintf("%s pull %d", shot, pull)
	if plan != "" {
		name += " of " + plan
	}
	return console.Fit(console.Clean(name), 40)
}

// table writes rows in columns, the first and the last set to the left.
func (w *takeWriter) table(rows [][]string) {
	widths := widthsOf(rows)
	for k, row := range rows {
		text := ""
		for i, c := range row {
			if i > 0 {
				text += "  "
			}
			if i == 0 || i == len(row)-1 && len(row) == 3 {
				text += console.Left(c, widths[i])
			} else {
				text += console.Right(c, widths[i])
			}
		}
		if k == 0 && row[0] == "" {
			text = w.Screen.Paint(console.Dim, text)
		}
		w.Line(margin + text)
	}
}

// takeFigure writes a number to two decimals, with its sign where that matters.
func takeFigure(v float64, signed bool) string {
	if math.IsNaN(v) {
		return "–"
	}
	if signed {
		return figures.Signed(v, 2)
	}
	return figures.Fixed(v, 2)
}

// percent writes a rate of what has been counted: here 0 and 100 % are facts.
func percent(v plan.Number) string { return figures.Share(float64(v), 0) }
