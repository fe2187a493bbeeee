package lists

import (
	"fmt"
	"math"

	"pullscore/cmd/internal/console"
	"pullscore/interp/plan"
	"pullscore/interp/stops"
	"pullscore/interp/units"
)

// WriteLenses writes the tables of reports.
func WriteLenses(screen console.Screen, reports ...*stops.LensReport) error {
	w := &stopWriter{console.Lines{Screen: screen}}
	shown := false
	for i, r := range reports {
		w.title(i, r.Plan)
		if len(r.Shots) == 0 {
			w.Line("")
			w.Line("No shot in this file can be compared.")
		}
		for _, l := range r.Shots {
			w.lenses(l)
			shown = true
		}
	}
	if shown {
		w.Line("")
		w.Hanging(console.Dim, "", "Camera: how far it goes so that the frame stays. Ring: how much of its turn the focus uses. Frame: how wide the picture is where the shot starts. "+
			"Arcmin: the blur of what a rack leaves, of the rack that shows least. Needs: the shortest time that lands as wanted, of the rack that needs the most. "+
			"Stays: how often whom the focus is on is sharp, at the worst. The last four are at the best stop, or without one at the set stop.")
	}
	return w.Flush()
}

// lenses writes a shot through all lenses of the kit.
func (w *stopWriter) lenses(l *stops.Lenses) {
	w.head(l.ID, l.Title, fmt.Sprintf("camera %s, lens %s, set to %s, %s wanted", l.Camera, l.Lens, l.Set, figures.Wanted(float64(l.Wanted))))
	w.Line("")
	rows := [][]string{{"lens", "camera", "holds", "best", "ring", "frame", "arcmin", "needs", "stays"}}
	for _, v := range l.Views {
		rows = append(rows, lensRow(l, v))
	}
	widths := widthsOf(rows)
	for i, r := range rows {
		text := ""
		for j, c := range r {
			text += console.Left(c, widths[j]) + margin
		}
		style := console.Plain
		if i == 0 || l.Views[i-1].Window == nil {
			style = console.Dim
		}
		w.Line(margin + w.Screen.Paint(style, text))
	}
}

func lensRow(l *stops.Lenses, v stops.View) []string {
	lengths := units.ForTable(l.Imperial)
	name := fmt.Sprintf("%s, %s", console.Clean(v.Lens), figures.Millimetres(float64(v.FocalMM)/1000))
	place := "here"
	switch {
	case v.Own:
		place = "as it is"
	case v.Moved && v.Back < 0:
		place = lengths.Gap(-float64(v.Back)) + " nearer"
	case v.Moved:
		place = lengths.Gap(float64(v.Back)) + " back"
	}
	if !v.Taken {
		return []string{name, place, "cannot be taken so", "", "", "", "", "", ""}
	}
	holds, best := "at no stop", "-"
	if len(v.Faults) > 0 {
		holds = "cannot be done"
	}
	if v.Window != nil {
		holds, best = v.Holds, v.Stop
	}
	needs := dashed(v.Needed, func(n float64) string { return figures.Time(math.Ceil(n*10-1e-9) / 10) })
	if v.Endless {
		needs = "no time does"
	}
	return []string{
		name, place, holds, best,
		dashed(v.RingShare, func(n float64) string { return figures.Share(n, 0) }),
		dashed(v.Frame, lengths.Gap),
		dashed(v.LeftBlur, func(n float64) string { return figures.Fixed(n, 1) }),
		needs,
		dashed(v.Share, func(n float64) string { return figures.Chance(n, float64(l.Wanted)) }),
	}
}

// dashed writes a figure, or a dash where there is none.
func dashed(n plan.Number, write func(float64) string) string {
	if !n.Known() {
		return "-"
	}
	return write(float64(n))
}
