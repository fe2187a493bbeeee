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
		w.sheet(l, style)
	}
	w.defaults(l.Defaults)
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
