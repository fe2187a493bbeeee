// What a log says of the chances of a plan, as text.

package lists

import (
	"fmt"

	"pullscore/cmd/internal/console"
	"pullscore/interp/takes/predicted"
	"pullscore/interp/units"
)

// mostPredicted is how many takes the text shows; JSON has them all.
const mostPredicted = 40

// WritePredicted writes every take beside the chance that was computed for it.
func WritePredicted(screen console.Screen, r *predicted.Report) error {
	w := &takeWriter{console.Lines{Screen: screen}}
	name := r.Plan
	if name == "" {
		name = "The plan"
	}
	w.Line(w.Screen.Paint(console.Bold, console.Clean(name+": predicted against landed")))
	for _, part := range []struct {
		n    int
		text string
	}{
		{r.Page, "on the page"},
		{r.Unsaid, "of which nobody knows whether it was sharp"},
		{r.Foreign, "of a follow, of another plan, or of no pull that is named"},
	} {
		if part.n > 0 {
			w.Wrapped(console.Dim, margin, fmt.Sprintf("Left out: %s %s.", units.Count(part.n, "take"), part.text))
		}
	}
	if r.All.Takes == 0 {
		w.Wrapped(console.Yellow, margin, "No take can be laid beside a chance of this plan.")
		return w.Flush()
	}
	w.bands(r)
	w.predictions(r)
	w.Line("")
	w.Wrapped(console.Dim, "", "Each chance is that of the plan, by the hand that could be known before that day: "+
		"a hand with published throughput, half a millimetre assumed at the rim, fitted to the takes of the days before.")
	return w.Flush()
}

func (w *takeWriter) bands(r *predicted.Report) {
	w.title("By bands of chance")
	rows := make([][]string, 0, len(r.Bands)+1)
	add := func(name string, b *predicted.Band) {
		rows = append(rows, []string{name, fmt.Sprintf("landed %d of %d", b.Hits, b.Takes),
			fmt.Sprintf("%s; 90 %% within %s to %s, said %s on the mean", percent(b.Rate), percent(b.Interval[0]), percent(b.Interval[1]), percent(b.Said))})
	}
	outside := 0
	for i := range r.Bands {
		b := &r.Bands[i]
		add(fmt.Sprintf("said %s to %s", figures.Number(100*float64(b.From), 0), figures.Share(float64(b.To), 0)), b)
		if !b.Holds() {
			outside++
		}
	}
	add("all", &r.All)
	w.table(rows)
	text := "In every band the interval holds what was said."
	if outside > 0 {
		text = fmt.Sprintf("In %d of %s the interval does not hold what was said; by chance alone that is so in one of ten.", outside, units.Count(len(r.Bands), "band"))
	}
	w.Wrapped(console.Plain, margin, text)
	if r.Slow > 0 {
		w.Wrapped(console.Plain, margin, fmt.Sprintf("%s moved for longer than planned, which makes landing easier than was said.", units.Count(r.Slow, "take")))
	}
}

func (w *takeWriter) predictions(r *predicted.Report) {
	w.title("Take by take")
	list := r.Takes
	if more := len(list) - mostPredicted; more > 0 {
		w.Line(margin + w.Screen.Paint(console.Dim, fmt.Sprintf("the last %d of %d; --as json has them all", mostPredicted, len(list))))
		list = list[more:]
	}
	rows := [][]string{{"", "", "said", "landed", "by a hand"}}
	for i := range list {
		p := &list[i]
		by, landed := "of no take", "soft"
		if p.Knew > 0 {
			by = "of " + units.Count(p.Knew, "take")
		}
		if p.Sharp {
			landed = "sharp"
		}
		rows = append(rows, []string{fmt.Sprintf("line %d  %s", p.Line, p.Date), place("", p.Shot, p.Pull), figures.Chance(float64(p.Chance), 0.5), landed, by})
	}
	w.table(rows)
}
