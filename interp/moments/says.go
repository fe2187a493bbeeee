// Moments in words.

package moments

import (
	"fmt"
	"math"
	"strings"

	"pullscore/interp/plan"
	"pullscore/interp/units"
)

// RingStep is the way for which a miss says how far the ring turns, metres.
const RingStep = 0.1

// Miss says how far somebody may miss a mark of a shot: forward and back until they
// are soft and until that shows, how far the ring turns for ten centimetres, and
// when they leave the picture. "" where there is nobody.
func Miss(s *plan.Shot, m *plan.Miss, in units.Style) string {
	if m == nil {
		return ""
	}
	text := fmt.Sprintf("may miss %s sharp, %s before it shows",
		in.Miss(float64(m.SoftForward), float64(m.SoftBack)), in.Miss(float64(m.SeenForward), float64(m.SeenBack)))
	if ring := Ring(s, m, in); ring != "" {
		text += "; " + ring
	}
	if m.Left.Known() {
		text += fmt.Sprintf("; out of the picture after %s left, %s right", in.Gap(float64(m.Left)), in.Gap(float64(m.Right)))
	}
	return text
}

// Ring says how far the ring turns for somebody who stands ten centimetres nearer, or
// where the lens does not focus there, farther; "" without a ring.
func Ring(s *plan.Shot, m *plan.Miss, in units.Style) string {
	deg, way := float64(m.RingNear), "nearer"
	if !m.RingNear.Known() {
		deg, way = float64(m.RingFar), "farther"
	}
	if math.IsNaN(deg) {
		return ""
	}
	deg = math.Abs(deg)
	text := fmt.Sprintf("%s %s is %s", in.Gap(RingStep), way, in.Angle(deg))
	if d := s.Optics.Diameter; d > 0 {
		text += fmt.Sprintf(", %s at the rim", in.Millimetres(deg*math.Pi*d/360))
	}
	return text
}

// Rest says how often somebody is sharp while the focus rests on them.
func Rest(s *plan.Shot, r *plan.Rest, in units.Style) string {
	wanted := float64(s.Wanted)
	return fmt.Sprintf("%s, %s to %s: sharp %s, all through %s", r.Subject, in.Time(float64(r.Start)), in.Time(float64(r.End)),
		in.Chance(float64(r.Share), wanted), in.Chance(float64(r.Stays), 0))
}

// Follow says how often somebody is sharp while they are followed, in the worst half
// second and where it ends; "" for a rack, and where nothing is known.
func Follow(s *plan.Shot, p *plan.Pull, in units.Style) string {
	if !p.WorstShare.Known() {
		return ""
	}
	wanted := float64(s.Wanted)
	return fmt.Sprintf("sharp %s, at worst %s from %s; at its end %s, at most %s",
		in.Chance(float64(p.SharpShare), wanted), in.Chance(float64(p.WorstShare), wanted), worstTime(p, in),
		in.Chance(float64(p.Chance), wanted), in.Chance(float64(p.Ceiling), wanted))
}

// worstTime says from when to when a follow is at its worst.
func worstTime(p *plan.Pull, in units.Style) string {
	return in.Time(float64(p.WorstAt)) + " to " + in.Time(float64(p.WorstUntil()))
}

// Lands writes how likely a pull lands, with between what that lies, and what it rests on
// where no marks stand behind it.
func Lands(s *plan.Shot, p *plan.Pull, in units.Style) string {
	text, on := Chance(s, p, in), RestsOn(s)
	if text == "" || on == "" {
		return text
	}
	return text + " " + on
}

// Chance writes how likely a pull lands, with between what that lies; of a ring of which
// nothing is known that alone.
func Chance(s *plan.Shot, p *plan.Pull, in units.Style) string {
	lo, hi := float64(p.ChanceBand[0]), float64(p.ChanceBand[1])
	if s.RingUnknown() {
		return in.ChanceSpan(lo, hi)
	}
	return in.ChanceRange(float64(p.Chance), lo, hi, float64(s.Wanted))
}

// Unsure says, as a sentence with a blank before it, between what the chance of a pull
// lies, or its ceiling, where that is on either side of what is wanted: then what
// nobody has measured of the hand decides. "" where it does not.
func Unsure(s *plan.Shot, p *plan.Pull, ceiling bool, in units.Style) string {
	band := p.ChanceBand
	if ceiling {
		band = p.CeilingBand
	}
	if !(band[0] < s.Wanted && band[1] >= s.Wanted) {
		return ""
	}
	text := fmt.Sprintf(" Between %s and %s, as ", in.Chance(float64(band[0]), 0), in.Chance(float64(band[1]), 0))
	hand, wide := "", ""
	if s.Hand.RimTo > 0 {
		hand = fmt.Sprintf("the hand sets a mark to %s or %s", in.Disc(s.Hand.RimTo), in.Disc(s.Hand.RimFrom))
	}
	if p.Factor[0].Known() {
		wide = fmt.Sprintf("the window is %.2f to %.2f times as wide", float64(p.Factor[0]), float64(p.Factor[1]))
	}
	switch {
	case hand == "":
		return text + wide + "; marks on the ring settle it."
	case wide != "":
		text += hand + " and " + wide + ","
	default:
		text += hand + ","
	}
	settles := " settles it."
	if wide != "" {
		settles = " and marks on the ring settle it."
	}
	if s.Hand.RimAssumed() {
		return text + " which no source gives; a log of takes" + settles
	}
	return text + " the ends of what its log shows; more takes" + strings.Replace(settles, "settles", "settle", 1)
}

// Circles writes a blur, in arc minutes at the viewer, as so many circles of confusion:
// the largest discs that still are sharp.
func Circles(s *plan.Shot, blur float64, in units.Style) string {
	n := blur / (s.Optics.Criterion * s.Optics.ArcminPerBlur)
	most := 0
	if units.Nearest(n, 10) < 10 {
		most = 1
	}
	return in.Number(n, most) + " × CoC"
}
