package lists

import (
	"fmt"
	"slices"
	"strings"

	"pullscore/cmd/internal/console"
	"pullscore/interp/moments"
	"pullscore/interp/stops"
)

// WriteStops writes the tables of reports.
func WriteStops(screen console.Screen, reports ...*stops.Report) error {
	w := &stopWriter{console.Lines{Screen: screen}}
	var shown []*stops.Answer
	for i, r := range reports {
		w.title(i, r.Plan)
		if len(r.Shots) == 0 {
			w.Line("")
			w.Line("No shot in this file has stops to try.")
		}
		for _, a := range r.Shots {
			w.shot(a, fmt.Sprintf("camera %s, lens %s, %s", a.Camera, a.Lens, focal(a)))
		}
		shown = append(shown, r.Shots...)
	}
	w.key(shown)
	return w.Flush()
}

// A Comparison is of the shots of a plan with the same framing on another
// camera.
type Comparison struct {
	Plan    string       `json:"plan"`
	Against string       `json:"against"`
	Shots   []stops.Pair `json:"shots"`
}

// WriteStopPairs writes shots on two cameras, one under the other.
func WriteStopPairs(screen console.Screen, comparisons ...*Comparison) error {
	w := &stopWriter{console.Lines{Screen: screen}}
	var shown []*stops.Answer
	for i, c := range comparisons {
		w.title(i, c.Plan)
		for _, p := range c.Shots {
			shown = append(shown, p.Here.Answer)
			w.pair(p, c.Against)
		}
	}
	w.key(shown)
	return w.Flush()
}

// title writes the title of a plan, which has so many before it.
func (w *stopWriter) title(before int, title string) {
	if before > 0 {
		w.Line("")
	}
	w.Line(w.Screen.Paint(console.Bold, console.Clean(titleOf(title))))
}

// head writes the title of a shot, and below it what it is taken with.
func (w *stopWriter) head(id, title, with string) {
	w.Line("")
	name := w.Screen.Paint(console.Bold, console.Clean(id))
	if title != "" {
		name += "  " + console.Clean(title)
	}
	w.Line(name)
	w.Hanging(console.Dim, margin, with)
}

// pair writes a shot on its own camera and on another.
func (w *stopWriter) pair(p stops.Pair, camera string) {
	w.shot(p.Here.Answer, fmt.Sprintf("camera %s, %s, %s", p.Here.Camera, p.Here.With, focal(p.Here.Answer)))
	if p.There == nil {
		w.Line("")
		w.Hanging(console.Plain, margin, fmt.Sprintf("The same framing cannot be had on camera %s.", camera))
		return
	}
	text := fmt.Sprintf("framed alike on camera %s: %s, %s", p.There.Camera, p.There.With, focal(p.There.Answer))
	if p.There.Computed { // its words name the focal length
		text = fmt.Sprintf("framed alike on camera %s: %s, which the kit lacks", p.There.Camera, p.There.With)
	}
	w.shot(p.There.Answer, text)
}

// key says once what the columns show.
func (w *stopWriter) key(list []*stops.Answer) {
	text := ""
	if slices.ContainsFunc(list, func(a *stops.Answer) bool { return len(a.Racks) > 0 }) {
		text = "Lands: the rack least likely to land. Arcmin: the blur at the viewer's eye of what a rack leaves, of the rack that shows least. "
	}
	if slices.ContainsFunc(list, func(a *stops.Answer) bool { return len(a.Follows) > 0 || len(a.Rests) > 0 }) {
		text += "Stays: how often whom the focus is on is sharp, in the worst rest or half second of a follow. "
	}
	if slices.ContainsFunc(list, func(a *stops.Answer) bool {
		return slices.ContainsFunc(a.Tried, func(v stops.Verdict) bool { return !v.Sharp })
	}) {
		text += "Sharp: diffraction alone blurs by no more than is sharp."
	}
	if text != "" {
		w.Line("")
		w.Hanging(console.Dim, "", strings.TrimRight(text, " "))
	}
}

func focal(a *stops.Answer) string { return figures.Millimetres(float64(a.FocalMM) / 1000) }

func titleOf(title string) string {
	if title == "" {
		return "A plan without a title"
	}
	return title
}

type stopWriter struct{ console.Lines }

func (w *stopWriter) shot(a *stops.Answer, with string) {
	w.head(a.ID, a.Title, fmt.Sprintf("%s, set to %s%s, %s wanted", with, a.Set, a.InBrackets(a.SetF), figures.Wanted(float64(a.Wanted))))
	w.Line("")
	w.table(a)
	w.Line("")
	for _, s := range a.Says() {
		w.Hanging(console.Plain, margin, s)
	}
}

// A column is a head and how it writes a verdict.
type stopColumn struct {
	head string
	cell func(*stops.Answer, *stops.Verdict) string
}

// The width of figures, so that they stand under each other.
const (
	chanceWidth = len(" >99 %")
	blurWidth   = len("1000.0")
)

// stopColumns returns those that have something to say about a shot.
func stopColumns(a *stops.Answer) []stopColumn {
	list := []stopColumn{{"stop", func(_ *stops.Answer, v *stops.Verdict) string { return v.Stop }}}
	if a.Behind(a.SetF) != "" { // the stop on the lens's other scale, which needs no head
		list = append(list, stopColumn{"", func(a *stops.Answer, v *stops.Verdict) string { return a.Behind(v.Number) }})
	}
	if len(a.Racks) > 0 && (a.Landing || a.RingUnknown) {
		list = append(list, stopColumn{" lands", landing})
	}
	if len(a.Racks) > 0 {
		list = append(list, stopColumn{"arcmin", showing})
	}
	if len(a.Follows) > 0 && a.Landing || len(a.Rests) > 0 {
		list = append(list, stopColumn{" stays", staying})
	}
	list = append(list, stopColumn{"depth", func(_ *stops.Answer, v *stops.Verdict) string { return yes(v.Fits) }})
	if slices.ContainsFunc(a.Tried, func(v stops.Verdict) bool { return !v.Sharp }) {
		list = append(list, stopColumn{"sharp", func(_ *stops.Answer, v *stops.Verdict) string { return yes(v.Sharp) }})
	}
	list = append(list, stopColumn{"holds", holding})
	if a.Light {
		list = append(list, stopColumn{"light", func(_ *stops.Answer, v *stops.Verdict) string { return v.Exposure.Says() }})
	}
	return list
}

func landing(a *stops.Answer, v *stops.Verdict) string {
	r, _ := v.Worst()
	switch {
	case r != nil && a.RingUnknown:
		return figures.ChanceSpan(float64(r.Band[0]), float64(r.Band[1])) + rack(a, r)
	case r != nil:
		return console.Right(figures.Chance(float64(r.Probability), float64(a.Wanted)), chanceWidth) + rack(a, r)
	}
	return "-"
}

// staying writes how often somebody is sharp in the worst rest or follow.
func staying(a *stops.Answer, v *stops.Verdict) string {
	if share, ok := v.WorstShare(); ok {
		return console.Right(figures.Chance(float64(share), float64(a.Wanted)), chanceWidth)
	}
	return "-"
}

func showing(a *stops.Answer, v *stops.Verdict) string {
	if _, r := v.Worst(); r != nil {
		return console.Right(figures.Fixed(float64(r.LeftBlur), 1), blurWidth) + rack(a, r)
	}
	return "-"
}

// rack tells of several racks which one a figure is of.
func rack(a *stops.Answer, r *stops.RackAt) string {
	if len(a.Racks) == 1 {
		return ""
	}
	return fmt.Sprintf("  rack %d", r.Pull)
}

func yes(ok bool) string {
	if ok {
		return "yes"
	}
	return "no"
}

func holding(a *stops.Answer, v *stops.Verdict) string {
	text := yes(v.Holds)
	if v.Unsure {
		text = moments.RingNotKnown
	}
	if a.Window != nil && v.Number == a.Window.BestF {
		text = "best"
		if v.Unsure {
			text += ", " + moments.RingNotKnown
		}
	}
	if v.Number == a.SetF {
		text += ", set"
	}
	return text
}

// table writes a line for every stop tried, those that hold in full strength.
func (w *stopWriter) table(a *stops.Answer) {
	cols := stopColumns(a)
	widths := make([]int, len(cols))
	for i, c := range cols {
		widths[i] = console.Columns(c.head)
		for j := range a.Tried {
			widths[i] = max(widths[i], console.Columns(c.cell(a, &a.Tried[j])))
		}
	}
	row := func(style console.Style, cell func(stopColumn) string) {
		text := ""
		for i, c := range cols {
			text += console.Left(cell(c), widths[i]) + margin
		}
		w.Line(margin + w.Screen.Paint(style, strings.TrimRight(text, " ")))
	}
	row(console.Dim, func(c stopColumn) string { return c.head })
	for j := range a.Tried {
		v := &a.Tried[j]
		style := console.Dim
		if v.Holds {
			style = console.Plain
		}
		row(style, func(c stopColumn) string { return c.cell(a, v) })
	}
}
