package lists

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"pullscore/cmd/internal/console"
	"pullscore/interp/lenses"
	"pullscore/interp/plan"
	"pullscore/interp/units"
)

// WriteRings writes what is known of lenses.
func WriteRings(screen console.Screen, list []*lenses.Lens) error {
	w := &ringWriter{console.Lines{Screen: screen}}
	for i, l := range list {
		if i > 0 {
			w.Line("")
		}
		w.lens(l)
	}
	return w.Flush()
}

type ringWriter struct{ console.Lines }

func (w *ringWriter) lens(l *lenses.Lens) {
	style := units.ForTable(l.Imperial)
	w.Line(w.Screen.Paint(console.Bold, console.Clean(l.Name)) + fmt.Sprintf("  %s, closest %s", l.Focal, style.Tape(l.Closest)))
	if l.Ringless != "" {
		w.Wrapped(console.Plain, margin, "Nothing to measure: "+l.Ringless+".")
	} else {
		w.ring(l, style)
		w.steps(l, style)
		w.next(l, style)
		w.sheet(l, style)
	}
	w.defaults(l.Defaults)
}

// ring says what the angles of a ring rest on, and its sizes.
func (w *ringWriter) ring(l *lenses.Lens, style units.Style) {
	r := l.Ring
	var parts []string
	add := func(name string, n plan.Number, write func(float64) string) {
		if n.Known() {
			parts = append(parts, name+" "+write(float64(n)))
		}
	}
	mm := func(v float64) string { return figures.Millimetres(v / 1000) }
	switch r.Kind {
	case plan.Measured:
		parts = append(parts, "Ring measured, "+units.Count(len(r.Marks), "mark"))
	case plan.Engraved:
		parts = append(parts, "Ring by its marks, "+units.Count(len(r.Marks), "mark"))
	case plan.ByLaw:
		parts = append(parts, "Ring by the law of unit focusing, not measured")
	default:
		w.Wrapped(console.Yellow, margin, "Ring not known: nothing says how far it turns. To measure it: pullscore lens --sheet, or pullscore help throw.")
		return
	}
	add("throw", r.Throw, figures.Angle)
	add("way round", r.Girth, mm)
	add("play", r.Play, figures.Angle)
	w.Wrapped(console.Plain, margin, strings.Join(parts, ", ")+".")
	switch {
	case r.Offset.Known():
		w.Wrapped(console.Dim, margin, fmt.Sprintf("Between the marks: a smooth rising curve, nearly straight in 1/(distance - %s).", style.Tape(float64(r.Offset))))
	case r.Kind == plan.ByLaw:
		w.Wrapped(console.Dim, margin, fmt.Sprintf("The true windows may be %s to %s times as wide as computed. To measure the ring: pullscore lens --sheet.", figures.Number(float64(l.Factor[0]), 2), figures.Number(float64(l.Factor[1]), 2)))
	}
}

// steps writes a line for each mark, and one for the place halfway to the next, where the
// ring is known least; without marks, a line for each distance of the sheet.
func (w *ringWriter) steps(l *lenses.Lens, style units.Style) {
	if len(l.Steps) == 0 {
		return
	}
	rows := [][]string{{"distance", "ring", "", "known to", "", ""}}
	for _, s := range l.Steps {
		rows = append(rows, stepRow(l, s, style))
	}
	if !l.Steps[0].Sigma.Known() {
		rows[0][3] = ""
	}
	w.Line("")
	widths := widthsOf(rows)
	for i, r := range rows {
		text := margin + cells(r[:5], widths[:5], 2) + margin + r[5]
		style := console.Plain
		if i == 0 || l.Steps[i-1].Kind == lenses.Between {
			style = console.Dim
		}
		w.Line(w.Screen.Paint(style, strings.TrimRight(text, " ")))
	}
	w.Line("")
}

// stepRow returns the cells of a step: the distance, where it lies in degrees and in
// millimetres of rim, to how much of either it is known, and whether it is a mark.
func stepRow(l *lenses.Lens, s lenses.Step, style units.Style) []string {
	kind := map[string]string{lenses.Marked: "mark", lenses.Default: "mark by default"}[s.Kind]
	row := []string{style.Tape(float64(s.Distance)), figures.AngleFixed(float64(s.Deg), 1), "", "", "", kind}
	if s.Rim.Known() {
		row[2] = figures.Fixed(float64(s.Rim), 1) + " mm"
	}
	if s.Sigma.Known() {
		known := 2 * float64(s.Sigma)
		row[3] = "±" + figures.AngleFixed(known, 1)
		if s.Rim.Known() {
			row[4] = "±" + figures.Fixed(known*float64(l.Ring.Girth)/360, 1) + " mm"
		}
	}
	return row
}

// next names the mark that would help most.
func (w *ringWriter) next(l *lenses.Lens, style units.Style) {
	if !l.Next.Known() {
		return
	}
	for _, s := range l.Steps {
		if s.Distance == l.Next {
			w.Wrapped(console.Plain, margin, fmt.Sprintf("One more mark helps most at %s, now known to ±%s.", style.Tape(float64(l.Next)), figures.AngleFixed(2*float64(s.Sigma), 1)))
		}
	}
}

// sheet names the distances to measure.
func (w *ringWriter) sheet(l *lenses.Lens, style units.Style) {
	var names []string
	for _, d := range l.Sheet {
		if !math.IsInf(float64(d), 1) {
			names = append(names, style.Tape(float64(d)))
		}
	}
	at := ""
	if l.At != "" {
		at = " and " + l.At
	}
	stop := l.Stop
	if l.Widest {
		stop = "its widest stop, " + stop
	}
	w.Wrapped(console.Plain, margin, fmt.Sprintf("Measure for %s%s, sharp to %s: %s, and infinity farther than %s.",
		stop, at, figures.Disc(l.Criterion), strings.Join(names, ", "), style.Tape(float64(l.Infinity))))
}

// defaults lists what stands in for what the kit does not say.
func (w *ringWriter) defaults(list []plan.Default) {
	for i, d := range list {
		if slices.Index(list, d) < i {
			continue
		}
		if i == 0 {
			w.Line(margin + w.Screen.Paint(console.Dim, "Not in the kit; the default used:"))
		}
		w.Wrapped(console.Dim, margin+margin, fmt.Sprintf("%s: %s (%s)", d.Name, d.Value, d.Why))
	}
}
