// What figures take for granted: constants that no study of focus pulling gives.

package moments

import (
	"fmt"
	"slices"
	"strings"

	"pullscore/interp/hand"
	"pullscore/interp/plan"
	"pullscore/interp/units"
)

// Assumed returns the constants that figures of the shots went by and that nobody
// has measured of pullers, each once, with how far it is to be trusted.
func Assumed(shots []*plan.Shot) (list []plan.Default) {
	u := used{}
	for _, s := range shots {
		u.look(s)
	}
	say := func(is bool, name, value, why string) {
		if is {
			list = append(list, plan.Default{Name: name, Value: value, Why: why})
		}
	}
	in := units.Style{}
	say(len(u.sways) > 0, "sways", in.Gap(hand.Person),
		fmt.Sprintf("%s, without sways of their own: who speaks or moves never stands quite still; from memory of force-plate studies", named(u.sways)))
	say(u.tau, "time of sway", in.Time(hand.Tau), "how long a sway takes to turn; assumed")
	say(u.walks, "seeing distance", in.Share(hand.See, 1), "how well a hand sees how far away somebody is who walks; assumed")
	slip := in.Time(hand.Slip)
	if u.reacts {
		slip += ", " + in.Time(hand.SlipReacting) + " where a rack reacts"
	}
	say(u.walks, "slip", slip, "by how much the moment varies at which the hand is where it should be; assumed")
	say(u.rim, "rim spread", in.Disc(hand.Default().RimSpread), "how well a hand without a log sets a mark; assumed, half and twice of it make the ranges")
	return list
}

// used is what figures went by.
type used struct {
	sways                   []string // those who are taken to sway
	tau, walks, reacts, rim bool
}

// look notes what the figures of a shot went by.
func (u *used) look(s *plan.Shot) {
	for _, r := range s.Rests {
		u.sway(s, r.Subject)
		u.tau = u.tau || r.Sway > 0
	}
	for _, p := range s.Pulls {
		if !p.Chance.Known() {
			continue
		}
		u.rim = u.rim || s.Puller != "" && s.Hand.RimAssumed()
		for _, name := range append(slices.Clone(p.Goal.Names), p.To) {
			u.sway(s, name)
		}
		follow := p.WorstShare.Known()
		u.tau = u.tau || follow && p.Asks.SigmaX > 0
		u.walks = u.walks || follow && p.LagDeg > 0 || p.SubjectSpeed.Known()
		u.reacts = u.reacts || p.SubjectSpeed.Known() && p.Asks.Reacts
	}
}

// sway notes somebody who is taken to sway.
func (u *used) sway(s *plan.Shot, name string) {
	if who := s.Subject(name); who != nil && who.SwayAssumed && !slices.Contains(u.sways, name) {
		u.sways = append(u.sways, name)
	}
}

// mostNames is how many are named before they are counted.
const mostNames = 4

// named returns a list of names for a sentence.
func named(list []string) string {
	if n := len(list); n > mostNames {
		return fmt.Sprintf("%s and %d more", strings.Join(list[:mostNames-1], ", "), n-mostNames+1)
	}
	return strings.Join(list, ", ")
}
