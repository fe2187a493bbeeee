// Words: an answer in sentences, for tables and drawings alike.

package stops

import (
	"fmt"
	"strconv"
	"strings"

	"pullscore/interp/plan"
	"pullscore/interp/units"
	"pullscore/interp/viewer"
)

// words is how sentences write what has no length in it.
var words units.Style

// Says returns the answer in sentences: the window with its ends, or what
// stands in its way and what opens one.
func (a *Answer) Says() []string {
	var list []string
	if w := a.Window; w != nil {
		list = append(list, a.says(w)+".", "Open end: "+a.endSays(w.Wide)+".", "Stopped-down end: "+a.endSays(w.Small)+".")
		for _, o := range a.Others {
			list = append(list, fmt.Sprintf("A narrower window lies %s.", a.span(o.From, o.To)))
		}
	} else {
		list = append(list, a.none())
		for _, l := range a.Levers {
			list = append(list, a.leverSays(l))
		}
		if len(a.Levers) == 0 {
			list = append(list, "Nothing opens one by itself: not time, gear, distance, focal length or sensor.")
		}
	}
	return append(list, a.notes()...)
}

// says describes a window in a sentence without its stop.
func (a *Answer) says(w *Window) string {
	text := fmt.Sprintf("Holds %s, %s; best %s", a.span(w.From, w.To), words.Stops(float64(w.Width)), w.Best)
	if w.AtBest != nil && w.AtBest.Exposure != nil {
		text += " with " + w.AtBest.Exposure.Says()
	}
	return text
}

// Ends writes the ends of a window: the first and the last marked third that lie
// in it, or those on both sides of it where it lies between two.
func (a *Answer) Ends(w *Window) (first, last string) {
	first, last, _ = a.ends(w.From, w.To)
	return first, last
}

func (a *Answer) ends(from, to plan.Number) (first, last string, inside bool) {
	first, last = words.Stop(float64(from), a.TOnly, units.Closed), words.Stop(float64(to), a.TOnly, units.Open)
	if number(first) <= number(last) {
		return first, last, true
	}
	return words.Stop(float64(from), a.TOnly, units.Open), words.Stop(float64(to), a.TOnly, units.Closed), false
}

// span writes a range of stops.
func (a *Answer) span(from, to plan.Number) string {
	first, last, inside := a.ends(from, to)
	if inside {
		return "from " + first + " to " + last
	}
	return "between " + first + " and " + last
}

// number returns the number of a stop as it is written.
func number(stop string) float64 {
	n, _ := strconv.ParseFloat(strings.TrimLeft(stop, "f/T"), 64)
	return n
}

// Says writes what is done about the light.
func (e *Exposure) Says() string {
	if !e.Enough {
		return offBy(e.Left)
	}
	var parts []string
	if e.ND > 0 {
		parts = append(parts, "nd "+units.Decimal(float64(e.ND), 2))
	}
	if e.ISO.Known() {
		parts = append(parts, "iso "+units.Decimal(float64(e.ISO), 0))
	}
	if e.Shutter.Known() {
		parts = append(parts, "shutter "+words.AngleTo(float64(e.Shutter), 0))
	}
	if len(parts) == 0 {
		return "no nd"
	}
	return strings.Join(parts, ", ")
}

// offBy writes how many stops too much or too little light there is.
func offBy(left plan.Number) string {
	if left > 0 {
		return words.Stops(float64(left)) + " too bright"
	}
	return words.Stops(-float64(left)) + " too dark"
}

func (a *Answer) endSays(e End) string {
	switch e.Kind {
	case TheLens:
		return "the lens has no stop beyond that"
	case Lands:
		return fmt.Sprintf("at %s %s lands %s of the time", e.Stop, a.rack(e.Pull), words.Chance(float64(e.Probability), float64(a.Wanted)))
	case Seen:
		return fmt.Sprintf("at %s %s is no longer seen: %s of blur, and %s is where it shows", e.Stop, a.rack(e.Pull), words.Blur(float64(e.LeftBlur)), words.Blur(viewer.Seen))
	case Reached:
		return fmt.Sprintf("at %s what %s reaches is not sharp", e.Stop, a.rack(e.Pull))
	case Depth:
		return fmt.Sprintf("at %s a subject is deeper than what is sharp", e.Stop)
	case Light:
		return fmt.Sprintf("at %s the picture is %s, with all that there is to have", e.Stop, offBy(e.Left))
	case Zoom:
		return fmt.Sprintf("at %s the lens closes as it zooms", e.Stop)
	}
	return fmt.Sprintf("at %s something in the shot becomes impossible", e.Stop)
}

// rack names a rack by its number and whom it goes to.
func (a *Answer) rack(number int) string {
	for _, r := range a.Racks {
		if r.Pull == number {
			return fmt.Sprintf("rack %d to %s", number, r.Target)
		}
	}
	return fmt.Sprintf("rack %d", number)
}

// none says why there is no window.
func (a *Answer) none() string {
	var parts []string
	for _, o := range a.Obstacles {
		parts = append(parts, a.obstacleSays(o))
	}
	return "No stop holds: " + strings.Join(parts, "; ") + "."
}

func (a *Answer) obstacleSays(o Obstacle) string {
	what := map[Kind]string{
		Lands: "lands as wanted", Seen: "is seen", Reached: "reaches what is sharp", Depth: "the subjects are sharp in all their depth",
		Light: "the light can be had", Zoom: "the stop stays through the zoom", Done: "the shot can be done",
	}[o.Kind]
	if o.Pull > 0 {
		what = a.rack(o.Pull) + " " + what
	}
	switch {
	case !o.From.Known():
		return what + " at none" + a.bestSays(o)
	case o.From == o.To:
		return what + " at " + words.Stop(float64(o.From), a.TOnly, units.Near) + " only"
	}
	return fmt.Sprintf("%s %s", what, a.span(o.From, o.To))
}

func (a *Answer) bestSays(o Obstacle) string {
	switch {
	case o.Probability.Known():
		return ", " + words.Chance(float64(o.Probability), float64(a.Wanted)) + " at best"
	case o.LeftBlur.Known():
		return ", " + words.Blur(float64(o.LeftBlur)) + " of blur at most"
	}
	return ""
}

func (a *Answer) leverSays(l Lever) string {
	return fmt.Sprintf("Opens one: %s (%s, best %s).", l.Text, a.span(l.Window.From, l.Window.To), l.Window.Best)
}

// notes says what has not been judged.
func (a *Answer) notes() []string {
	var list []string
	switch {
	case len(a.Racks) == 0:
		list = append(list, "The shot has no rack: only depth and light are judged.")
	case !a.Landing:
		list = append(list, "The lens has no ring that is pulled by angle: nobody can say whether the racks land, so only what is seen, depth and light are judged.")
	}
	if text := a.untimed(); text != "" {
		list = append(list, text)
	}
	if !a.Light {
		list = append(list, "The shot has no meter, so light is not judged.")
	}
	return list
}

// untimed says how long the racks take that do not say it, "" where all do.
func (a *Answer) untimed() string {
	var parts []string
	for _, r := range a.Racks {
		if r.Untimed {
			parts = append(parts, fmt.Sprintf("rack %d over %s", r.Pull, words.Time(r.Over)))
		}
	}
	if parts == nil {
		return ""
	}
	return "Racks without `over` take as long at every stop as at the one set: " + strings.Join(parts, ", ") + "."
}
