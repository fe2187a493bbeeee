// Takes and plans: of which pull a take is, and what its landing is at the
// hand.

package takes

import (
	"errors"
	"fmt"
	"math"
	"path/filepath"
	"strings"

	"pullscore/interp/hand"
	"pullscore/interp/plan"
	"pullscore/interp/units"
)

// Plans are the plans that the rows of a log may name.
type Plans []*plan.Plan

// A misfit tells why a take's pull was not found.
type misfit struct {
	column string // whose field is at fault
	other  bool   // the take is of a plan that is not among these
	text   string
}

// find returns the pull that a take names. A take that names no plan means the
// only one.
func (ps Plans) find(t *Take) (*plan.Shot, *plan.Pull, *misfit) {
	pl := ps.plan(t.Plan)
	switch {
	case pl == nil && t.Plan == "":
		return nil, nil, &misfit{"shot", true, "the row names no plan, and no single plan was given"}
	case pl == nil:
		return nil, nil, &misfit{"plan", true, fmt.Sprintf("plan %q was not given", t.Plan)}
	}
	for _, s := range pl.Shots {
		if !strings.EqualFold(s.ID, t.Shot) {
			continue
		}
		if t.Pull > len(s.Pulls) {
			return nil, nil, &misfit{"pull", false, fmt.Sprintf("shot %s has no pull %d; it has %d", s.ID, t.Pull, len(s.Pulls))}
		}
		return s, s.Pulls[t.Pull-1], nil
	}
	return nil, nil, &misfit{"shot", false, fmt.Sprintf("the plan has no shot %q", t.Shot)}
}

// Pull returns the pull that a take names; ok is false where these plans do not
// have it.
func (ps Plans) Pull(t *Take) (s *plan.Shot, p *plan.Pull, ok bool) {
	if t.Shot == "" || t.Pull == 0 {
		return nil, nil, false
	}
	s, p, lost := ps.find(t)
	return s, p, lost == nil
}

// plan returns the plan of that title or file name.
func (ps Plans) plan(name string) *plan.Plan {
	if name == "" && len(ps) == 1 {
		return ps[0]
	}
	for _, p := range ps {
		base := filepath.Base(p.File)
		if name != "" && (strings.EqualFold(name, p.Title) || name == base || name == p.File || name == strings.TrimSuffix(base, filepath.Ext(base))) {
			return p
		}
	}
	return nil
}

// place finds the pull of a drafted take and takes from it what the row leaves
// out.
func (r *Reader) place(d *draft) (Take, error) {
	byLanding := d.byLanding()
	if !byLanding && (d.Shot == "" || d.Pull == 0) {
		return d.Take, nil
	}
	s, p, lost := r.plans.find(&d.Take)
	switch {
	case lost != nil && lost.other && !byLanding:
		return d.Take, nil // a take of another film: all that it needs it has
	case lost != nil:
		f := d.field(lost.column)
		fault := r.rows.Fault(f.Line, f.Column, "%s", lost.text)
		fault.Kept, fault.Unplaced = !byLanding, lost.other
		return d.Take, fault
	}
	if byLanding {
		if err := d.convert(s, p); err != nil {
			f := d.field("landed")
			return Take{}, r.rows.Fault(f.Line, f.Column, "%v", err)
		}
	}
	d.fromPull(s, p)
	return d.Take, nil
}

// fromPull takes from a pull what the row does not say: the rim, whether it
// was sharp, what the end of the ring had to do with it, and how long the move
// should have taken.
func (d *draft) fromPull(s *plan.Shot, p *plan.Pull) {
	asks := &p.Asks
	if math.IsNaN(asks.Travel) || p.Kind == "follow" {
		return
	}
	if d.Rim == 0 {
		d.Rim = asks.Rim
	}
	d.Window = [2]float64{asks.Lo, asks.Hi}
	if d.Hit == Unsaid && !d.Unmeasured {
		d.Hit = Missed
		if asks.Lo <= d.Error && d.Error <= asks.Hi {
			d.Hit = Sharp
		}
	}
	if d.Unmeasured {
		return
	}
	d.Stop = stopOf(s, p, d.Error)
	d.Planned = asks.Time
	if asks.Reacts {
		d.Planned -= hand.Reaction
	}
}

// atStop is how near the end of its ring a focus comes to rest that was held by
// it, degrees of the ring.
const atStop = 0.25

// stopOf tells what the end of the ring has to do with a landing that far past
// the mark, degrees at the hand.
func stopOf(s *plan.Shot, p *plan.Pull, past float64) Stop {
	if s.Optics.Ring == nil || !p.ToDeg.Known() || p.ToDeg == p.FromDeg {
		return NoStop
	}
	end := float64(p.ToDeg) // from the mark on to the end of the ring
	if p.ToDeg > p.FromDeg {
		end = s.Optics.Ring.Throw() - end
	}
	gear := float64(s.Gear)
	switch {
	case p.Asks.Stopped:
		return SharpStop
	case past >= (end-atStop)*gear:
		return HeldByStop
	}
	return NoStop
}

// A landed is where the focus came to rest: a distance in metres as the tape
// reads it, or an angle of the ring in degrees.
type landed struct {
	said, ring bool
	value      float64
}

func parseLanded(text string) (landed, error) {
	if number, rest := cutNumber(text); number != "" {
		switch strings.TrimSpace(rest) {
		case "deg", "°":
			v, err := ParseNumber(number)
			return landed{true, true, v}, err
		}
	}
	v, err := ParseLength(text, "")
	if err != nil {
		err = fmt.Errorf("%w; a distance is wanted as in 1.72 m or 5'6\", or degrees of the ring as in 121 deg", err)
	}
	return landed{true, false, v}, err
}

// convert turns a landing into angles at the hand.
func (d *draft) convert(s *plan.Shot, p *plan.Pull) error {
	deg, err := d.landed.angle(s, float64(p.Land))
	if err != nil {
		return err
	}
	d.Travel, d.Error, err = AtHand(s, p, deg)
	return err
}

// angle returns the ring angle of a landing at that time of the shot.
func (l landed) angle(s *plan.Shot, t float64) (float64, error) {
	if s.Optics.Ring == nil {
		return 0, fmt.Errorf("lens %s has no ring to pull by angle", s.Lens)
	}
	if l.ring {
		if throw := s.Optics.Ring.Throw(); l.value < 0 || l.value > throw {
			return 0, fmt.Errorf("the ring goes from 0 to %s", units.Style{}.AngleTo(throw, 1))
		}
		return l.value, nil
	}
	return RingAngle(s, l.value, t)
}

// RingAngle returns the angle of the ring, in degrees, that focuses at a
// distance as the tape reads it, which may be infinite, at a time of the shot.
func RingAngle(s *plan.Shot, tape, t float64) (float64, error) {
	if s.Optics.Ring == nil {
		return 0, fmt.Errorf("lens %s has no ring to pull by angle", s.Lens)
	}
	if math.IsInf(tape, 1) {
		if deg := s.Optics.Ring.Angle(tape); !math.IsNaN(deg) {
			return deg, nil
		}
		return 0, errors.New("nothing says where infinity lies on the ring")
	}
	x := s.FromTape(tape, t)
	switch deg := s.RingDeg(x, t); {
	case !math.IsNaN(deg):
		return deg, nil
	case x > s.Focal(t):
		return 0, fmt.Errorf("nothing says where %s lies on the ring", units.Style{}.Gap(tape))
	}
	return 0, fmt.Errorf("the lens forms no image of what is %s away", units.Style{}.Gap(tape))
}

// LandedAt returns the distance that a landing so far past the mark sets, degrees
// at the hand, as a log has it: to a hundredth of a millimetre, or "inf".
func LandedAt(s *plan.Shot, p *plan.Pull, past float64) string {
	if p.ToDeg < p.FromDeg {
		past = -past
	}
	t := float64(p.Land)
	deg := min(max(float64(p.ToDeg)+past/float64(s.Gear), 0), s.Optics.Ring.Throw())
	tape := s.ToTape(s.RingDistance(deg, t), t)
	if math.IsInf(tape, 1) {
		return "inf"
	}
	return units.Decimal(tape, 5) + " m"
}

// AtHand returns what a landing at an angle of the ring comes to at the hand:
// the travel of the pull, and how far past the mark it is in the direction of
// travel, both in degrees. A follow has neither.
func AtHand(s *plan.Shot, p *plan.Pull, ringDeg float64) (travel, past float64, err error) {
	if p.Kind == "follow" {
		return 0, 0, fmt.Errorf("pull %d of shot %s is a follow, which lands nowhere", p.Number, s.ID)
	}
	if !p.HandDeg.Known() || !p.ToDeg.Known() {
		return 0, 0, fmt.Errorf("pull %d of shot %s has no angles at the hand", p.Number, s.ID)
	}
	past = (ringDeg - float64(p.ToDeg)) * float64(s.Gear)
	if p.ToDeg < p.FromDeg {
		past = -past
	}
	return float64(p.HandDeg), past, nil
}
