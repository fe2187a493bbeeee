// What is different in a number or a word, and when a number is different.

package diff

import (
	"encoding/json"
	"fmt"
	"math"
	"strings"

	"pullscore/interp/plan"
	"pullscore/interp/units"
)

// The least that counts as a change.
const (
	leastFrames = 0.5
	leastDeg    = 0.05
)

// A Reading is a number or a word; the zero Reading is neither.
type Reading struct {
	word   string
	number plan.Number
	counts bool // it is the number
}

func word(text string) Reading { return Reading{word: text} }

func number(n plan.Number) Reading {
	if !n.Known() {
		return Reading{}
	}
	return Reading{number: n, counts: true}
}

// IsZero reports whether there is nothing to read, for omitzero.
func (r Reading) IsZero() bool { return !r.counts && r.word == "" }

// MarshalJSON writes the number, null for infinity, or the word.
func (r Reading) MarshalJSON() ([]byte, error) {
	if r.counts {
		return r.number.MarshalJSON()
	}
	return json.Marshal(r.word)
}

// A list gathers the details of one thing; rate is in frames a second.
type list struct {
	details []Detail
	rate    float64
}

// newList returns a list without details, which JSON shows as such.
func newList(rate float64) *list { return &list{[]Detail{}, rate} }

// turned says that something has become something else.
func turned(name, before, after string) string {
	return strings.TrimSpace(fmt.Sprintf("%s %s -> %s", name, orNone(before), orNone(after)))
}

func orNone(text string) string {
	if text == "" {
		return "none"
	}
	return text
}

// word compares words; says is what people call them.
func (l *list) word(name, says, before, after string) {
	if before != after {
		l.details = append(l.details, Detail{
			Name: name, Before: word(before), After: word(after), Says: turned(says, before, after),
		})
	}
}

// number adds a detail of a number, and returns it to be added to.
func (l *list) number(name string, before, after plan.Number, says string) *Detail {
	l.details = append(l.details, Detail{Name: name, Before: number(before), After: number(after), Says: says})
	return &l.details[len(l.details)-1]
}

// figure compares numbers by how the pull list prints them.
func (l *list) figure(name, says string, before, after plan.Number, write func(plan.Number) string) {
	if b, a := write(before), write(after); b != a {
		l.number(name, before, after, turned(says, b, a))
	}
}

// mark compares places on the ring, and says how far one has moved.
func (l *list) mark(name, says string, before, after plan.Number) {
	if before.Known() != after.Known() {
		l.turn(name, says, before, after)
		return
	}
	if by := float64(after - before); math.Abs(by) >= leastDeg {
		l.number(name, before, after, fmt.Sprintf("%s %s, at %s", says, farther(by), tenth(after)))
	}
}

// turn compares angles that something is turned by, and widths of windows.
func (l *list) turn(name, says string, before, after plan.Number) {
	if before.Known() != after.Known() || math.Abs(float64(after-before)) >= leastDeg {
		l.number(name, before, after, turned(says, tenth(before), tenth(after)))
	}
}

// farther says how far a mark moved on the ring.
func farther(deg float64) string {
	if deg < 0 {
		return tenth(plan.Number(-deg)) + " nearer"
	}
	return tenth(plan.Number(deg)) + " farther"
}

// tenth writes an angle to a tenth of a degree; "" for what does not apply.
func tenth(n plan.Number) string {
	return figures.AngleTo(float64(n), 1)
}

// frames returns how many frames a time is, with its sign.
func (l *list) frames(seconds plan.Number) float64 { return float64(seconds) * l.rate }

// differ reports whether two times are half a frame apart or more.
func (l *list) differ(before, after plan.Number) bool {
	return math.Abs(l.frames(after-before)) >= leastFrames
}

// shift compares times; verb is what happens then, "lands". Without one it is
// the whole that is earlier or later, and lasts as long as it did.
func (l *list) shift(name, verb string, before, after plan.Number) {
	if l.differ(before, after) {
		by := l.frames(after - before)
		d := l.number(name, before, after, strings.TrimSpace(verb+" "+later(by, l.rate)))
		d.Frames, d.moved = int64(math.Round(by)), verb == ""
	}
}

// length compares how long something takes.
func (l *list) length(name, says string, before, after plan.Number) {
	if l.differ(before, after) {
		d := l.number(name, before, after, turned(says, figures.Time(float64(before)), figures.Time(float64(after))))
		d.Frames = int64(math.Round(l.frames(after - before)))
	}
}

// later says by how many frames something is later or earlier.
func later(frames, rate float64) string {
	way := "later"
	if frames < 0 {
		frames, way = -frames, "earlier"
	}
	return fmt.Sprintf("%s (%s) %s", units.Count(int(math.Round(frames)), "frame"), figures.Time(frames/rate), way)
}

// says joins what details say.
func says(details []Detail) string {
	var parts []string
	for _, d := range details {
		if !d.minor {
			parts = append(parts, d.Says)
		}
	}
	return strings.Join(parts, ", ")
}
