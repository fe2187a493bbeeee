// Words: an answer in sentences, for tables and drawings alike.

package stops

import (
	"fmt"
	"strings"

	"pullscore/interp/plan"
	"pullscore/interp/units"
)

// words is how sentences write what has no length in it.
var words units.Style

// Says returns the answer in sentences: the window, what is recommended, and the ends,
// or what stands in the way of a window and what opens one.
func (a *Answer) Says() []string {
	var list []string
	if w := a.Window; w != nil {
		list = append(list, a.says(w)+".")
		list = append(list, a.recommendedSays()...)
		list = append(list, "Open end: "+a.endSays(w.Wide)+".", "Stopped-down end: "+a.endSays(w.Small)+".")
		for _, o := range a.Others {
			list = append(list, fmt.Sprintf("Another window lies %s.", a.span(o.From, o.To)))
		}
	} else {
		list = append(list, a.none())
		list = append(list, a.recommendedSays()...)
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
	holds := "Holds"
	if a.RingUnknown {
		holds = "Does not fail" // what it does hangs on the ring
	}
	text := fmt.Sprintf("%s %s, %s; best %s%s", holds, a.span(w.From, w.To), words.Stops(float64(w.Width)), w.Best, a.InBrackets(w.BestF))
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
	for i := range a.Tried {
		if v := &a.Tried[i]; v.Number >= from-slack && v.Number <= to+slack {
			if !inside {
				first, inside = v.Stop, true
			}
			last = v.Stop
		}
	}
	if inside {
		return first, last, true
	}
	return says(a.set.Spoken, float64(from), units.Open), says(a.set.Spoken, float64(to), units.Closed), false
}

// Behind writes an f-number on the lens's other scale, which the shot does not speak;
// "" if the lens has one scale.
func (a *Answer) Behind(number plan.Number) string {
	in := a.set.Spoken
	return words.Stop(in.Other(float64(number)), !in.T, units.Near)
}

// InBrackets writes the same as Behind, in brackets behind a space.
func (a *Answer) InBrackets(number plan.Number) string {
	if text := a.Behind(number); text != "" {
		return " (" + text + ")"
	}
	return ""
}

// span writes a range of stops.
func (a *Answer) span(from, to plan.Number) string {
	first, last, inside := a.ends(from, to)
	if inside {
		return "from " + first + " to " + last
	}
	return "between " + first + " and " + last
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
	case Light:
		return fmt.Sprintf("at %s %s, with all that there is to have", e.Stop, a.failSays(e))
	}
	return "at " + e.Stop + " " + a.failSays(e)
}

// failSays says what fails, with its figures.
func (a *Answer) failSays(e End) string {
	chance := func(p plan.Number) string { return words.Chance(float64(p), float64(a.Wanted)) }
	most := ""
	if a.RingUnknown {
		most = " at best, however far the ring turns"
	}
	switch e.Kind {
	case Lands:
		return fmt.Sprintf("%s lands %s of the time%s", a.pull(e.Pull), chance(e.Probability), most)
	case Seen:
		return fmt.Sprintf("%s is no longer seen: %s of blur, and %s is where it shows", a.pull(e.Pull), words.Blur(float64(e.LeftBlur)), words.Blur(float64(e.SeenFrom)))
	case Reached:
		return fmt.Sprintf("what %s reaches is not sharp", a.pull(e.Pull))
	case Follows:
		if e.Share < a.Wanted {
			return fmt.Sprintf("%s is sharp %s of the time at its worst", a.pull(e.Pull), chance(e.Share))
		}
		if e.Probability < a.Wanted {
			return fmt.Sprintf("%s ends sharp %s of the time%s", a.pull(e.Pull), chance(e.Probability), most)
		}
		return a.pull(e.Pull) + " asks for more than a hand can turn"
	case Rests:
		return fmt.Sprintf("%s is sharp %s of the time %s", e.Subject, chance(e.Share), a.restSpan(e.Pull))
	case Depth:
		return "a subject is deeper than what is sharp"
	case Diffracts:
		return "diffraction alone blurs by more than is sharp"
	case Light:
		return "the picture is " + offBy(e.Left)
	case Zoom:
		return "the lens closes as it zooms"
	}
	return "something in the shot becomes impossible"
}

// recommendedSays says the three recommendations, each with its price.
func (a *Answer) recommendedSays() []string {
	var list []string
	for _, r := range a.Recommended {
		switch {
		case r.Role == ForLight && !a.Light:
			continue // told among what is not judged
		case r.Stop == "":
			list = append(list, "widest: no marked stop meets all but light")
			continue
		}
		text := fmt.Sprintf("%s %s: holds", r.Role, r.Stop)
		switch {
		case r.Unsure:
			text = fmt.Sprintf("%s %s: ring not known", r.Role, r.Stop)
		case !r.Holds:
			text = fmt.Sprintf("%s %s: fails, %s", r.Role, r.Stop, a.failSays(*r.Fails))
		}
		if r.Price != nil {
			text += ", costs " + a.priceSays(r.Price)
		}
		list = append(list, text)
	}
	return list
}

// priceSays says what has to be changed for the light.
func (a *Answer) priceSays(p *Price) string {
	var parts []string
	if p.ND.Known() {
		text := "no nd"
		if p.ND > 0 {
			text = "nd " + units.Decimal(float64(p.ND), 2)
		}
		if a.set.ND > 0 {
			text += " for " + units.Decimal(a.set.ND, 2)
		}
		parts = append(parts, text)
	}
	if p.ISO.Known() {
		parts = append(parts, fmt.Sprintf("iso %s for %s", units.Decimal(float64(p.ISO), 0), units.Decimal(a.set.ISO, 0)))
	}
	if p.Shutter.Known() {
		parts = append(parts, fmt.Sprintf("shutter %s for %s", words.AngleTo(float64(p.Shutter), 1), words.AngleTo(a.set.Shutter, 1)))
	}
	if len(parts) == 0 {
		return "nothing"
	}
	return strings.Join(parts, ", ")
}

// pull names a rack or a follow by its number and whom it is on.
func (a *Answer) pull(number int) string {
	for _, r := range a.Racks {
		if r.Pull == number {
			return fmt.Sprintf("rack %d to %s", number, r.Target)
		}
	}
	for _, f := range a.Follows {
		if f.Pull == number {
			return fmt.Sprintf("follow %d of %s", number, f.Target)
		}
	}
	return fmt.Sprintf("pull %d", number)
}

// restSpan says when the rest after a pull is.
func (a *Answer) restSpan(after int) string {
	for _, r := range a.Rests {
		if r.After == after {
			return fmt.Sprintf("from %s to %s", words.Time(float64(r.Start)), words.Time(float64(r.End)))
		}
	}
	return "as the focus rests there"
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
		Follows: "is sharp as wanted", Diffracts: "diffraction leaves anything sharp",
		Light: "the light can be had", Zoom: "the stop stays through the zoom", Done: "the shot can be done",
	}[o.Kind]
	switch {
	case o.Kind == Rests:
		what = a.restName(o.Pull) + " is sharp as wanted " + a.restSpan(o.Pull)
	case o.Pull > 0:
		what = a.pull(o.Pull) + " " + what
	}
	switch {
	case !o.From.Known():
		return what + " at none" + a.bestSays(o)
	case o.From == o.To:
		return what + " at " + says(a.set.Spoken, float64(o.From), units.Near) + " only"
	}
	return fmt.Sprintf("%s %s", what, a.span(o.From, o.To))
}

// restName names whom the rest after a pull is on.
func (a *Answer) restName(after int) string {
	for _, r := range a.Rests {
		if r.After == after {
			return r.Subject
		}
	}
	return "the subject"
}

func (a *Answer) bestSays(o Obstacle) string {
	switch {
	case o.Share.Known():
		return ", " + words.Chance(float64(o.Share), float64(a.Wanted)) + " at best"
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

// NoAngles says why landing is not judged, as the beginning of a sentence.
func (a *Answer) NoAngles() string {
	if a.RingUnknown {
		return "Nothing says how far the ring of the lens turns"
	}
	return "The lens has no ring that is pulled by angle"
}

// notes says what has not been judged.
func (a *Answer) notes() []string {
	var list []string
	switch {
	case len(a.Racks) == 0 && len(a.Follows) == 0:
		list = append(list, "The shot has no rack and no follow: only rests, depth, diffraction and light are judged.")
	case a.RingUnknown:
		list = append(list, a.NoAngles()+": a stop fails only where a rack or a follow fails on every ring, and holds only where all land on every ring.")
	case !a.Landing:
		list = append(list, a.NoAngles()+": nobody can say whether racks land and follows keep up, so only what is seen, rests, depth, diffraction and light are judged.")
	}
	if text := a.untimed(); text != "" {
		list = append(list, text)
	}
	switch loss := a.set.Loss; {
	case !a.Light:
		list = append(list, "The shot has no meter, so light is not judged.")
	case loss.Tells() && loss.Spread() > 0.05:
		list = append(list, LostNear(loss, words)+"; light is set half-way between there and where the least is lost.")
	case loss.Tells():
		list = append(list, LostNear(loss, words)+".")
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
