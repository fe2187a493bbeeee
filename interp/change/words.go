// The words of a change: what a plan would write, so that a cure can be typed
// into it.

package change

import (
	"math"
	"strings"

	"pullscore/interp/units"
	"pullscore/lang"
)

// Says returns what to write for the change: `over 1.9 s`, or for two things at
// once `nd 0.6 and iso 400`. What no plan can write (a lens of half the length,
// a camera farther back) has no words.
func (c Change) Says(u units.Style) string {
	var parts []string
	for _, clause := range c.SetUp(u) {
		if clause.Word != "meter" {
			parts = append(parts, clause.Text)
		}
	}
	for _, clause := range c.OfCamera(u) {
		parts = append(parts, clause.Text)
	}
	if c.BothWays {
		parts = append(parts, "marked both ways")
	}
	if c.FromLens {
		parts = append(parts, "tape from lens")
	}
	for _, e := range c.Edits {
		parts = append(parts, e.says(u))
	}
	text := strings.Join(parts, " and ")
	if c.Meter > 0 {
		text += ", which makes it meter " + c.meter(u)
	}
	return text
}

// SetUp returns the clauses of the set-up that the change writes.
func (c Change) SetUp(u units.Style) (list []lang.Clause) {
	add := func(ok bool, word, value string) {
		if ok {
			list = append(list, lang.Clause{Word: word, Text: word + " " + value})
		}
	}
	add(c.Camera != "", "camera", `"`+c.Camera+`"`)
	add(c.Lens != "", "lens", `"`+c.Lens+`"`)
	add(c.Focal > 0, "focal", u.Millimetres(c.Focal))
	add(c.Stop > 0, "stop", u.Stop(c.Stop, false, units.Exact))
	add(c.TStop > 0, "stop", u.Stop(c.TStop, true, units.Exact))
	add(c.Gear > 0, "gear", units.Decimal(c.Gear, 2))
	add(c.Wheel > 0, "wheel", u.Millimetres(c.Wheel))
	if c.ND != nil {
		add(true, "nd", units.Decimal(*c.ND, 1))
	}
	add(c.Meter > 0, "meter", c.meter(u))
	return list
}

// meter returns the stop that the meter shows.
func (c Change) meter(u units.Style) string {
	return u.Stop(units.Nearest(c.Meter, 10), c.MeterT, units.Exact)
}

// OfCamera returns the statements of the camera that the change writes.
func (c Change) OfCamera(u units.Style) (list []lang.Clause) {
	add := func(ok bool, word, value string) {
		if ok {
			list = append(list, lang.Clause{Word: word, Text: word + " " + value})
		}
	}
	add(c.ISO > 0, "iso", units.Decimal(c.ISO, 0))
	add(c.Shutter > 0, "shutter", u.AngleTo(c.Shutter, 0))
	add(c.Support != "", "on", c.Support)
	return list
}

// says returns what to write for one edit, and where, if that is not in the
// statement itself.
func (e Edit) says(u units.Style) string {
	text := e.Writes(u)
	switch e.Kind {
	case Hold:
		return text + " before it"
	case Pause:
		return text + " before the first line"
	case Follow, PanWith:
		return text + " after it"
	case WithTurn:
		return text + " in place of its times"
	case MoveOver:
		if e.Who == "" {
			return e.What + " " + text + e.Text
		}
		return lang.WriteName(e.Who) + " moves " + text + e.Text
	}
	return text
}

// Writes returns the clause or statement that an edit writes.
func (e Edit) Writes(u units.Style) string {
	switch e.Kind {
	case Over, MoveOver:
		return "over " + u.Time(e.Seconds)
	case Later:
		return e.Text + " + " + u.Time(e.Seconds)
	case OnEndOf:
		return "on end of " + lang.WriteName(e.Who)
	case Because:
		return `because "why"`
	case Hold:
		return "hold " + u.Time(e.Seconds)
	case Pause:
		return "pause " + u.Time(e.Seconds)
	case Follow:
		return "follow " + lang.WriteName(e.Who)
	case PanWith:
		return "pan with " + lang.WriteName(e.Who)
	case WithTurn:
		return "with " + e.Who
	case Side:
		way := " right"
		if e.Metres < 0 {
			way = " left"
		}
		return lang.WriteName(e.Who) + " " + u.Gap(math.Abs(e.Metres)) + way
	}
	return ""
}

// Cure returns the change as a cure: its words, and the number in them with its
// unit where there is one.
func (c Change) Cure(u units.Style) lang.Cure {
	cure := lang.Cure{Text: c.Says(u)}
	cure.Value, cure.Unit = c.number()
	return cure
}

// number returns the number that a change is about, and its unit; "" for none.
func (c Change) number() (v float64, unit string) {
	switch {
	case c.ND != nil:
		return *c.ND, "nd"
	case c.ISO > 0:
		return c.ISO, "iso"
	case c.Shutter > 0:
		return c.Shutter, "deg"
	case c.Stop > 0:
		return c.Stop, "f"
	case c.TStop > 0:
		return c.TStop, "T"
	case c.Gear > 0:
		return c.Gear, "gear"
	case c.Wheel > 0:
		return c.Wheel * 1000, "mm"
	case len(c.Edits) == 0:
		return 0, ""
	}
	switch e := c.Edits[0]; e.Kind {
	case Over, Later, OnEndOf, Hold, Pause, MoveOver:
		return e.Seconds, "s"
	case Side:
		return e.Metres, "m"
	}
	return 0, ""
}
