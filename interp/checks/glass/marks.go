// beyond-marks, few-marks, rough-mark, law-assumed: how well the marks of the lens tell
// where the ring has to stand.

package glass

import (
	"fmt"
	"math"

	"pullscore/interp/checks/check"
	"pullscore/interp/shot"
	"pullscore/lang"
	"pullscore/lang/rule"
	"pullscore/optics/ring"
)

var BeyondMarks = check.Check{Codes: []rule.Code{rule.BeyondMarks}, Run: outsideMarks}

func outsideMarks(b *check.Shot) (found []check.Finding) {
	law := b.Plan.Optics.Ring
	if law == nil || !b.Plan.Optics.Marked {
		return nil
	}
	for _, p := range b.Pulls {
		if b.OutOfReach(p) || p.Plan.ToDeg.Known() { // out of reach is told as inside-closest or macro
			continue
		}
		d := lang.Diagnostic{
			Code: "beyond-marks", Severity: lang.Warning,
			Message: fmt.Sprintf("%s lies beyond the last mark, and nothing says where infinity is: no angle, no chance", p.Rack.ToText()),
			Detail:  "As in: ring 300 deg, or mark inf at 300 deg.",
			Figures: []lang.Figure{check.Figure("distance_m", float64(p.Plan.ToM))},
		}
		if b.FromSensor(float64(p.Plan.ToM), p.Rack.LandS) < law.Closest() {
			d.Message = fmt.Sprintf("%s lies nearer than the first mark, and nothing says how close the lens focuses: no angle, no chance", p.Rack.ToText())
			d.Detail = "As in: closest 75 cm."
		}
		found = append(found, b.About(p, check.Finding{Diagnostic: d}))
	}
	return found
}

var FewMarks = check.Check{Codes: []rule.Code{rule.FewMarks, rule.RoughMark, rule.LawAssumed}, Run: roughlyKnown}

func roughlyKnown(b *check.Shot) (found []check.Finding) {
	law := b.Plan.Optics.Ring
	if law == nil || len(b.Pulls) == 0 {
		return nil
	}
	if !b.Plan.Optics.Marked {
		least, most := law.Factors(math.Inf(1))
		return []check.Finding{b.About(b.Pulls[0], check.Finding{Diagnostic: lang.Diagnostic{
			Code: "law-assumed", Severity: lang.Note,
			Message: fmt.Sprintf("the ring of lens %q has no marks: its angles are by the law of a lens that focuses as a unit", b.Setup.Lens.Name),
			Detail:  fmt.Sprintf("A window may be %.2f to %.2f times as wide. pullscore lens --sheet makes the paper to measure it.", least, most),
		}})}
	}
	for _, p := range b.Pulls {
		wanted := b.Setup.View.Wanted
		if onPaper := float64(p.Plan.OnPaper); p.Landed.Chance >= wanted && onPaper < wanted {
			found = append(found, b.About(p, rough(b, p, onPaper)))
		}
	}
	if p := leastKnown(b); p != nil {
		found = append(found, b.About(p, few(b, p)))
	}
	return found
}

// rough tells of a mark that is good enough where it is set by eye, and not from paper.
func rough(b *check.Shot, p *shot.Pull, onPaper float64) check.Finding {
	wanted, known := b.Setup.View.Wanted, 2*float64(p.Plan.LawSigma)
	detail := fmt.Sprintf("The mark is known to within %s.", b.Units.Angle(known))
	if w := window(b, p); !math.IsInf(w, 0) {
		detail = fmt.Sprintf("The window is %s and the mark known to within %s.", b.Units.Angle(w), b.Units.Angle(known))
	}
	return check.Finding{Diagnostic: lang.Diagnostic{
		Code: "rough-mark", Severity: lang.Note, Time: p.Rack.LandS,
		Message: fmt.Sprintf("taken from the printed tape it lands %s of the time, set by eye %s", b.Units.Chance(onPaper, wanted), b.Units.Chance(p.Landed.Chance, wanted)),
		Detail:  detail,
		Figures: []lang.Figure{
			check.Figure("probability_on_paper", onPaper), check.Figure("probability", p.Landed.Chance), check.Figure("wanted", wanted),
			check.Figure("law_sigma_deg", float64(p.Plan.LawSigma)),
		},
	}}
}

// window returns the width of the window of a pull in degrees of the ring.
func window(b *check.Shot, p *shot.Pull) float64 {
	return (p.Plan.Asks.Hi - p.Plan.Asks.Lo) / b.Setup.Gear
}

// leastKnown returns the rack whose mark may be off the most against its window; nil
// where none may be off by more than half of that.
func leastKnown(b *check.Shot) (worst *shot.Pull) {
	most := 1.0
	b.Racks(func(p *shot.Pull) {
		if !p.Plan.Chance.Known() || !p.Plan.LawBound.Known() {
			return
		}
		if ratio := float64(p.Plan.LawBound) / (window(b, p) / 2); ratio > most {
			worst, most = p, ratio
		}
	})
	return worst
}

// few tells which mark would help the mark of a rack most.
func few(b *check.Shot, p *shot.Pull) check.Finding {
	near, far, _ := b.Plan.Optics.Ring.Between(b.Plan.RingTape(p.Plan.ToLens, p.Rack.LandS))
	return check.Finding{Diagnostic: lang.Diagnostic{
		Code: "few-marks", Severity: lang.Note, Time: p.Rack.LandS,
		Message: fmt.Sprintf("the mark of %s is known to within %s: the nearest marks are %s and %s", b.Units.Tape(float64(p.Plan.ToM)),
			b.Units.Angle(2*float64(p.Plan.LawSigma)), markName(b, near), markName(b, far)),
		Detail: "Measure one between them, or set this mark by eye on the day.",
		Figures: []lang.Figure{
			check.Figure("law_sigma_deg", float64(p.Plan.LawSigma)), check.Figure("law_bound_deg", float64(p.Plan.LawBound)), check.Figure("window_deg", window(b, p)),
		},
	}}
}

// markName names a mark of the lens: closest, inf, or as it is engraved.
func markName(b *check.Shot, m ring.Mark) string {
	switch {
	case math.IsInf(m.Distance, 1):
		return "inf"
	case m.Default:
		return "closest"
	}
	for i, other := range b.Plan.Optics.Ring.Marks() {
		if written := b.Plan.Optics.Engraved[i]; other.Distance == m.Distance && written != "" {
			return written
		}
	}
	return b.Units.Tape(m.Distance)
}
