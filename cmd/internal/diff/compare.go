// What is different in a plan, a shot, a pull.

package diff

import (
	"fmt"
	"slices"

	"pullscore/interp/plan"
	"pullscore/interp/units"
	"pullscore/lang/lines"
)

// planDetails compares what a plan says of all its shots.
func planDetails(before, after *plan.Plan) []Detail {
	l := newList(0)
	l.word("plan", "title", before.Title, after.Title)
	l.word("rate", "frames a second", before.Rate, after.Rate)
	l.word("tape", "tape from the", before.Tape, after.Tape)
	l.word("units", "units", before.Units, after.Units)
	return l.details
}

// compareShots compares a shot with what it was; one of them is nil where it
// came or is gone. What is told of its scene is not told again; nil: nothing is.
func compareShots(before, after *plan.Shot, of *once) Shot {
	s := Shot{Change: Same, Before: before, After: after, Details: []Detail{}, Subjects: []Piece{}, Pulls: []Pull{}, Events: []Piece{}}
	switch {
	case before == nil:
		s.Change, s.ID = New, after.ID
		for _, p := range after.Pulls {
			s.Pulls = append(s.Pulls, newPull(p))
		}
	case after == nil:
		s.Change, s.ID = Gone, before.ID
		for _, p := range before.Pulls {
			s.Pulls = append(s.Pulls, gonePull(p))
		}
	default:
		c := comparison{before, after, frameRate(after), of}
		s.ID, s.Details, s.Subjects, s.Events = after.ID, c.shot(), c.subjects(), c.events()
		for _, m := range matchPulls(before.Pulls, after.Pulls) {
			s.Pulls = append(s.Pulls, c.pull(m))
		}
	}
	return s
}

// frameRate returns the frames a second of a shot.
func frameRate(s *plan.Shot) float64 {
	return s.Speed().PerSecond()
}

// A comparison compares a shot that is there before and after, in the units
// and at the rate that it has after.
type comparison struct {
	before, after *plan.Shot
	rate          float64
	scene         *once // what is told of their scene; nil: nothing is
}

// tape writes a distance.
func (c comparison) tape(n plan.Number) string {
	return units.ForTable(c.after.Imperial).Tape(float64(n))
}

// aside writes how far to the side somebody is. What is left of the error of a computation
// is no side.
func (c comparison) aside(n plan.Number) string {
	const none = 1e-9
	switch {
	case n < -none:
		return c.tape(-n) + " left"
	case n > none:
		return c.tape(n) + " right"
	}
	return "in the middle"
}

func (c comparison) shot() []Detail {
	b, a := c.before, c.after
	l := newList(c.rate)
	l.word("title", "title", b.Title, a.Title)
	l.word("camera", "camera", b.Camera, a.Camera)
	l.word("lens", "lens", b.Lens, a.Lens)
	l.figure("focal_mm", "focal length", b.FocalMM, a.FocalMM, millimetres)
	l.word("stop", "stop", b.Stop, a.Stop)
	l.figure("shoots", "frames a second", b.Shoots, a.Shoots, written(func(n float64) string { return units.Decimal(n, 3) }))
	l.word("support", "support", b.Support, a.Support)
	l.word("puller", "puller", b.Puller, a.Puller)
	l.word("operator", "operator", b.Operator, a.Operator)
	l.figure("gear", "gear", b.Gear, a.Gear, written(figures.Gear))
	l.figure("wheel_mm", "wheel", b.WheelMM, a.WheelMM, millimetres)
	c.staging(l)
	if !c.lastsAsCovered() {
		l.length("duration_s", "lasts", b.Duration, a.Duration)
	}
	l.word("begins_at", "begins at", b.BeginsAt, a.BeginsAt)
	l.figure("wanted", "wanted chance", b.Wanted, a.Wanted, written(figures.Wanted))
	l.figure("quickest_s", "quickest rack", b.Quickest, a.Quickest, written(figures.Time))
	l.figure("criterion_mm", "CoC", b.CriterionMM, a.CriterionMM, func(n plan.Number) string { return figures.Disc(float64(n) / 1000) })
	from, to := starts(b), starts(a)
	l.figure("starts_m", "starts at", from, to, c.tape)
	l.mark("starts_deg", "starting mark", startDeg(b), startDeg(a))
	c.rest(l, "sharp until the first pull", 0, 0)
	return l.details
}

// rest compares how often somebody is sharp while the focus rests on them, from one time
// before and another after: those of landings, or 0 for the start.
func (c comparison) rest(l *list, says string, before, after plan.Number) {
	b, a := restFrom(c.before, before), restFrom(c.after, after)
	if b == nil || a == nil || b.Subject != a.Subject {
		return // it follows from the pulls
	}
	if was, is := share(c.before, b.Share), share(c.after, a.Share); was != is {
		l.number("rest_sharp_share", b.Share, a.Share, turned(says, was, is))
	}
}

// restFrom returns the rest of a shot that begins at a time; nil for none.
func restFrom(s *plan.Shot, t plan.Number) *plan.Rest {
	i := slices.IndexFunc(s.Rests, func(r plan.Rest) bool { return r.Start == t })
	if i < 0 {
		return nil
	}
	return &s.Rests[i]
}

// share writes how often something is sharp, beside what is wanted in its shot; ""
// where that is not known.
func share(s *plan.Shot, of plan.Number) string {
	return figures.Chance(float64(of), float64(s.Wanted))
}

// figures is the style of what is written alike in both systems.
var figures = units.ForTable(false)

// written lets a style write a number of a plan.
func written(write func(float64) string) func(plan.Number) string {
	return func(n plan.Number) string { return write(float64(n)) }
}

// millimetres writes what the plan's data has in millimetres.
func millimetres(n plan.Number) string { return figures.Millimetres(float64(n) / 1000) }

// counted writes a whole number.
func counted(n plan.Number) string { return figures.Number(float64(n), 0) }

// starts is the distance, as the tape reads it, that the focus is at when a
// shot starts; startDeg is the ring's.
func starts(s *plan.Shot) plan.Number {
	return plan.Number(s.ToTape(s.Optics.Start.Distance, 0))
}

func startDeg(s *plan.Shot) plan.Number {
	deg := s.RingDeg(s.Optics.Start.Distance, 0)
	return plan.Number(deg)
}

func newPull(p *plan.Pull) Pull {
	return Pull{Change: New, Kind: p.Kind, Target: p.Target, Number: p.Number, Details: []Detail{}, After: p}
}

func gonePull(p *plan.Pull) Pull {
	return Pull{Change: Gone, Kind: p.Kind, Target: p.Target, NumberBefore: p.Number, Details: []Detail{}, Before: p}
}

// pull compares a pull with what it was. Where it comes from is not told: it
// follows from the pull before.
func (c comparison) pull(m match) Pull {
	switch {
	case m.before < 0:
		return newPull(c.after.Pulls[m.after])
	case m.after < 0:
		return gonePull(c.before.Pulls[m.before])
	}
	b, a := c.before.Pulls[m.before], c.after.Pulls[m.after]
	l := newList(c.rate)
	l.word("target", "to", b.Target, a.Target)
	c.cut(l, b, a)
	if was, is := chance(c.before, b), chance(c.after, a); was != is {
		l.number("probability", b.Chance, a.Chance, turned("chance", was, is))
	}
	if was, is := share(c.before, b.WorstShare), share(c.after, a.WorstShare); was != is {
		l.number("worst_share", b.WorstShare, a.WorstShare, turned("at its worst", was, is))
	}
	c.timing(l, b, a)
	if a.ToDeg.Known() && b.ToDeg.Known() {
		l.mark("to_deg", "mark", b.ToDeg, a.ToDeg)
	} else {
		l.figure("to_m", "to", b.ToM, a.ToM, c.tape)
	}
	major := len(l.details)
	l.figure("needed_s", "needs", b.Needed, a.Needed, needed)
	l.turn("hand_deg", "travel", b.HandDeg, a.HandDeg)
	l.turn("window_hand_deg", "window", windowOf(b), windowOf(a))
	for i := major; major > 0 && i < len(l.details); i++ {
		l.details[i].minor = true // it follows from what is told
	}
	l.figure("regrips", "re-grips", plan.Number(b.Regrips), plan.Number(a.Regrips), counted)
	l.word("profile", "profile", b.Profile, a.Profile)
	if hook(b.Anchor) != hook(a.Anchor) {
		l.word("anchor", "cue", b.Anchor, a.Anchor)
	}
	l.word("because", "because", b.Because, a.Because)
	c.rest(l, "sharp after it", b.Land, a.Land)
	p := Pull{Change: Same, Kind: a.Kind, Target: a.Target, Number: a.Number, NumberBefore: b.Number, Details: l.details, Before: b, After: a}
	if len(l.details) > 0 {
		p.Change = Changed
	}
	return p
}

// chance writes how likely a pull lands, beside what is wanted in its shot.
func chance(s *plan.Shot, p *plan.Pull) string {
	if s.RingUnknown() {
		return figures.ChanceSpan(float64(p.ChanceBand[0]), float64(p.ChanceBand[1]))
	}
	return figures.Chance(float64(p.Chance), float64(s.Wanted))
}

// timing compares when a pull is. One that only is earlier or later says so in
// one detail.
func (c comparison) timing(l *list, b, a *plan.Pull) {
	if l.differ(b.Land-b.Start, a.Land-a.Start) {
		l.shift("land_s", lands(a), b.Land, a.Land)
		l.length("over_s", "over", b.Land-b.Start, a.Land-a.Start)
		return
	}
	l.shift("land_s", "", b.Land, a.Land)
}

// lands is the verb of a pull's end: a follow does not land.
func lands(p *plan.Pull) string {
	if p.Kind == "follow" {
		return "ends"
	}
	return "lands"
}

// offset is the time in an anchor: of "on bell + 0.2 s", of "on 4.2 s".
var offset = lines.Pattern(`\b\d[\d.:;]*( ?(s|ms|fr))?$`)

// hook returns the cue of an anchor, without how long before or after it,
// which the time of the pull tells.
func hook(anchor string) string { return offset().ReplaceAllString(anchor, "") }

// needed writes the shortest time that a pull needs; "" for one that has none.
func needed(n plan.Number) string {
	switch {
	case !n.Known():
		return ""
	case n.IsInf():
		return "more than any time"
	}
	return figures.Time(float64(n))
}

// windowOf is how wide the landing window is at the hand.
func windowOf(p *plan.Pull) plan.Number { return p.WindowHand[1] - p.WindowHand[0] }

// Name says which pull it is: "rack 2 to CHART".
func (p Pull) Name() string {
	n := p.Number
	if p.Change == Gone {
		n = p.NumberBefore
	}
	return fmt.Sprintf("%s %d to %s", p.Kind, n, p.Target)
}
