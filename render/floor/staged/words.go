// Places, heights and turns in words.

package staged

import (
	"math"
	"strings"

	"pullscore/interp/plan"
	"pullscore/interp/units"
	"pullscore/render/sheet"
)

// nowhere is how little is no way, in metres.
const nowhere = 0.0005

// ways says where a point is from the zero point: how far right or left, and upstage or
// downstage.
func ways(at Spot, in units.Style) string {
	right, up := way(at.X, "right", "left", in), way(at.Y, "upstage", "downstage", in)
	switch {
	case right == "" && up == "":
		return "at the zero point"
	case right == "":
		return up
	case up == "":
		return right
	}
	return right + ", " + up
}

// way says one way of two; "" for none.
func way(v float64, to, fro string, in units.Style) string {
	switch {
	case math.Abs(v) < nowhere:
		return ""
	case v < 0:
		return in.Tape(-v) + " " + fro
	}
	return in.Tape(v) + " " + to
}

// notes says what there is to say of a place besides its name.
func (p Place) notes(in units.Style) string {
	var words []string
	if p.Later {
		words = append(words, "from "+sheet.Figures.Time(p.From))
	}
	if p.Only != "" {
		words = append(words, "in "+p.Only)
	}
	return sheet.Joined(append(words, p.Mark, p.height(in)))
}

// height says how high the focus is put.
func (p Place) height(in units.Style) string {
	switch {
	case p.Level:
		return ""
	case p.Person:
		return "eyes " + in.Tape(p.Eyes)
	}
	return in.Tape(p.At.Z) + " high"
}

// wordOf returns the word that starts a walk, or else its time.
func wordOf(l plan.Leg, in units.Style) string {
	if word := strings.TrimSpace(l.Anchor); word != "" {
		return word
	}
	return "at " + in.Time(l.Start)
}

// looks says where a camera looks as it starts.
func looks(p plan.Pose) string {
	pan := sheet.Figures.AngleTo(math.Abs(plan.Wrapped(p.Pan)), 1)
	switch w := plan.Wrapped(p.Pan); {
	case w < -0.05 && w > -179.95:
		pan += " left"
	case w > 0.05 && w < 179.95:
		pan += " right"
	}
	tilt := "level"
	switch {
	case p.Tilt > 0.05:
		tilt = "tilt " + sheet.Figures.AngleTo(p.Tilt, 1) + " up"
	case p.Tilt < -0.05:
		tilt = "tilt " + sheet.Figures.AngleTo(-p.Tilt, 1) + " down"
	}
	return "pan " + pan + ", " + tilt
}
