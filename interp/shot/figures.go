// Figures: every number of every pull, once all of the shot has its times.

package shot

import (
	"fmt"
	"math"
	"slices"

	"pullscore/interp/clock"
	"pullscore/interp/hand"
	"pullscore/interp/inwords"
	"pullscore/interp/kit"
	"pullscore/interp/names"
	"pullscore/interp/plan"
	"pullscore/interp/stage"
	"pullscore/lang"
	"pullscore/optics"
)

// finish computes the shot once everything has its time.
func (b *Builder) finish() {
	b.Pulls = b.Clock.Ordered()
	b.chain()
	b.duration()
	b.endFollows()
	if !b.Probing { // nobody looks at the lines of a shot that tries a cure
		b.Clock.Finish()
		b.fillBlocking()
	}
	for i, p := range b.Pulls {
		p.Number = i + 1
		b.figures(p)
		b.Shot.Pulls = append(b.Shot.Pulls, p.Pull)
	}
	if !b.Probing {
		b.hang()
		b.untimed()
	}
	b.fillSubjects()
	for _, p := range b.Pulls {
		if p.Follow {
			b.followFigures(p) // along the drawn curve, so after all else
		}
	}
}

// untimed lists the time of racks that do not say theirs, among what the plan
// leaves out.
func (b *Builder) untimed() {
	n, shortest, longest := 0, math.Inf(1), 0.0
	b.Racks(func(p *clock.Pull) {
		if p.Untimed {
			n++
			shortest, longest = min(shortest, p.LandS-p.StartS), max(longest, p.LandS-p.StartS)
		}
	})
	if n == 0 {
		return
	}
	value, who := inwords.Seconds(shortest), "1 rack does not say it"
	if text := inwords.Seconds(longest); text != value {
		value += " to " + text
	}
	if n > 1 {
		who = fmt.Sprintf("%d racks do not say it", n)
	}
	b.ByDefault("over", value, who+": the shortest that lands with the wanted chance, and 1 s where none does")
}

// chain ties every pull to the one before it, and times anew the racks whose
// length is the shortest, where the order of time is not the order written.
func (b *Builder) chain() {
	for range 2 {
		var before *clock.Pull
		for _, p := range b.Pulls {
			p.Previous = before
			before = p
		}
		changed := false
		for _, p := range b.Pulls {
			if p.ByDefault && p.Previous != b.Clock.WrittenBefore(p) {
				old := p.StartS
				long := b.shortest(p, p.StartS, p.LandS)
				if p.Landing != nil {
					p.StartS = p.LandS - long
				} else {
					p.LandS = p.StartS + long
				}
				changed = changed || p.StartS != old
			}
		}
		if !changed {
			return
		}
		b.Pulls = b.Clock.Ordered()
	}
}

// duration ends the shot with the last thing in it, or where `lasts` says.
func (b *Builder) duration() {
	end := b.Clock.Before[len(b.Items)]
	for _, m := range b.Clock.At {
		if m.Known {
			end = max(end, m.EndS)
		}
	}
	for _, p := range b.Pulls {
		if !math.IsInf(p.LandS, 0) {
			end = max(end, p.LandS)
		}
		end = max(end, p.StartS)
	}
	if b.Cut != nil && b.Cut.List != nil {
		for _, u := range b.Cut.InPicture(b.Rate) {
			end = max(end, u.To)
		}
	}
	if s, ok := b.Settings["lasts"].(*lang.Lasts); ok {
		if t, ok := b.Positive(s.Time, names.DimTime); ok {
			if end > t+1e-6 {
				b.Report(lang.Diagnostic{
					Code: "after-the-shot", Severity: lang.Error, Range: s.Range(),
					Message: fmt.Sprintf("the shot lasts %s, and what is in it takes %s", inwords.Seconds(t), inwords.Seconds(end)),
					Figures: []lang.Figure{{Name: "lasts_s", Value: t}, {Name: "needed_s", Value: end}},
					Cures:   []lang.Cure{{Text: "lasts " + inwords.Seconds(inwords.CeilTo(end, 100)), Value: inwords.CeilTo(end, 100), Unit: "s"}},
				})
			}
			end = t
		}
	}
	b.Shot.Duration = plan.Number(end)
}

// endFollows ends every follow at its `until`, at the next rack or with the
// shot, whichever comes first.
func (b *Builder) endFollows() {
	for i, p := range b.Pulls {
		if !p.Follow {
			continue
		}
		end := float64(b.Shot.Duration)
		if i+1 < len(b.Pulls) {
			end = b.Pulls[i+1].StartS
		}
		p.LandS = max(p.StartS, min(p.LandS, end))
	}
}

// FocusBefore is the focus, from the lens, as the pull before p leaves it at t.
func (b *Builder) FocusBefore(p *clock.Pull, t float64) float64 {
	prev := p.Previous
	if prev == nil {
		return b.Shot.Carried(b.Shot.Optics.Start.Distance, 0, t)
	}
	set := prev.LandS
	if prev.Follow {
		set = min(t, prev.LandS)
	}
	return b.Shot.Carried(b.LensDistance(&prev.Aim, set), set, t)
}

// tapeBefore is where the focus is when p starts, as the tape reads it.
func (b *Builder) tapeBefore(p *clock.Pull) float64 {
	switch prev := p.Previous; {
	case p.Follow:
		return b.Tape(&p.Aim, p.StartS)
	case prev == nil:
		return b.Tape(&b.Start, 0)
	case prev.Follow:
		return b.Tape(&prev.Aim, min(p.StartS, prev.LandS))
	default:
		return b.Tape(&prev.Aim, prev.LandS)
	}
}

// GoalBefore returns the goal that the focus is on before p.
func (b *Builder) GoalBefore(p *clock.Pull) *stage.Goal {
	if p.Previous == nil {
		return &b.Start
	}
	return &p.Previous.Aim
}

// shortest is the length of a rack that is to be as short as it can.
func (b *Builder) shortest(p *clock.Pull, start, land float64) float64 {
	if p.Previous == nil {
		p.Previous = b.Clock.WrittenBefore(p)
	}
	needs, ok := b.HandPull(p, start, land)
	if !ok {
		return 1
	}
	t, ok := b.Set.Hand.Needed(needs, b.Set.View.Wanted)
	if !ok {
		return 1
	}
	return max(inwords.CeilTo(t, 10), inwords.CeilTo(b.Set.View.Quickest, 10), 0.1)
}

// HandPull is the pull as the hand has it; ok is false for a lens without a
// ring that can be pulled by angle.
func (b *Builder) HandPull(p *clock.Pull, start, land float64) (out hand.Pull, ok bool) {
	sh, set := b.Shot, b.Set
	if sh.Optics.Ring == nil {
		return out, false
	}
	from, _ := sh.RingDeg(b.FocusBefore(p, start), start)
	x := b.LensDistance(&p.Aim, land)
	to, _ := sh.RingDeg(x, land)
	lo, hi := b.windowDeg(b.window(p, land), land)
	out = hand.Pull{
		Travel: math.Abs(to-from) * set.Gear, Time: land - start, Reacts: p.Reacts, Even: !p.Smooth,
		Rim: set.underHand(), SigmaX: b.spreadOfDistance(p, x, land) * set.Gear,
	}
	if to >= from {
		out.Lo, out.Hi = (lo-to)*set.Gear, (hi-to)*set.Gear
	} else {
		out.Lo, out.Hi = (to-hi)*set.Gear, (to-lo)*set.Gear
	}
	return out, !math.IsNaN(out.Travel)
}

// window is the range of focus settings, from the lens, that keeps what the
// pull goes to sharp.
func (b *Builder) window(p *clock.Pull, t float64) [2]float64 {
	set := b.Shot.Setting(t)
	if p.Aim.Split == nil {
		lo, hi := set.Window(b.LensDistance(&p.Aim, t))
		return [2]float64{lo, hi}
	}
	near, far := b.Extent(&p.Aim, t)
	_, hi := set.Window(near)
	lo, _ := set.Window(far)
	return [2]float64{lo, hi} // crossed where no setting holds both
}

// windowDeg turns a window into ring angles; an edge at or past an end of the
// ring is open, since the stop there holds the hand.
func (b *Builder) windowDeg(w [2]float64, t float64) (lo, hi float64) {
	lo, hi = b.Edges(w, t)
	throw := b.Shot.Optics.Ring.Throw()
	if lo <= 0 || lo >= throw {
		lo = math.Inf(-1)
	}
	if hi >= throw || hi <= 0 {
		hi = math.Inf(1)
	}
	return lo, hi
}

// Edges are the ring angles of a window, held at the ring's ends.
func (b *Builder) Edges(w [2]float64, t float64) (lo, hi float64) {
	lo, _ = b.Shot.RingDeg(w[0], t)
	hi, _ = b.Shot.RingDeg(w[1], t)
	return lo, hi
}

// spreadOfDistance is the distance's own spread through the ring law, degrees
// of ring: the camera's sway and the subject's.
func (b *Builder) spreadOfDistance(p *clock.Pull, x, t float64) float64 {
	sway := kit.SupportSway[b.Set.Camera.Support]
	for _, u := range p.Aim.Members() {
		if u.Sways.Known() {
			sway = math.Hypot(sway, float64(u.Sways))
		}
	}
	if sway == 0 || math.IsInf(x, 0) {
		return 0
	}
	near, _ := b.Shot.RingDeg(max(x-sway, 1e-4), t)
	far, _ := b.Shot.RingDeg(x+sway, t)
	return math.Abs(far-near) / 2
}

// figures fills in the numbers of one pull.
func (b *Builder) figures(p *clock.Pull) {
	sh := b.Shot
	from, to := b.FocusBefore(p, p.StartS), b.LensDistance(&p.Aim, p.LandS)
	if p.Follow {
		from = b.LensDistance(&p.Aim, p.StartS)
	}
	p.FromLens, p.ToLens, p.Goal = from, to, b.Target(&p.Aim, p.LandS)
	p.From, p.To, p.Target = b.GoalBefore(p).Name(), p.Aim.Name(), p.Aim.Text
	p.Untimed = p.ByDefault && !p.Follow
	p.Profile = "even"
	if p.Smooth {
		p.Profile = "smooth"
	}
	p.Start, p.Land = plan.Number(p.StartS), plan.Number(p.LandS)
	p.StartFrame, p.LandFrame = b.Rate.Frames(p.StartS), b.Rate.Frames(p.LandS)
	p.FromM, p.ToM = plan.Number(b.tapeBefore(p)), plan.Number(b.Tape(&p.Aim, p.LandS))
	set := sh.Setting(p.LandS)
	p.Near, p.Far = plan.Number(sh.ToTape(set.Near(to), p.LandS)), plan.Number(sh.ToTape(set.Far(to), p.LandS))
	p.Window = b.window(p, p.LandS)
	b.handFigures(p)
	p.Stays = !p.Follow && b.StaysOn(p)
	p.LeftBlur, p.ReachedBlur, p.Breathing, p.Lag = plan.None(), plan.None(), plan.None(), plan.None()
	if !p.Follow && to > sh.Focal(p.LandS) { // else told as inside-closest
		b.viewerFigures(p)
	}
}

func (b *Builder) handFigures(p *clock.Pull) {
	none := plan.None()
	p.FromDeg, p.ToDeg, p.HandDeg, p.Peak, p.Needed = none, none, none, none, none
	p.Spread, p.Chance, p.Ceiling, p.WindowHand = none, none, none, plan.NoInterval()
	p.Asks.Travel = math.NaN()
	needs, ok := b.HandPull(p, p.StartS, p.LandS)
	if !ok || b.OutOfReach(p) { // a ring at its end is not where it should be
		return
	}
	from, _ := b.Shot.RingDeg(p.FromLens, p.StartS)
	to, _ := b.Shot.RingDeg(p.ToLens, p.LandS)
	lo, hi := b.Edges(p.Window, p.LandS)
	gear := b.Set.Gear
	p.FromDeg, p.ToDeg = plan.Number(from), plan.Number(to)
	p.WindowHand = plan.Interval{plan.Number(lo * gear), plan.Number(hi * gear)}
	p.OpenNear, p.OpenFar = lo <= 0, hi >= b.Shot.Optics.Ring.Throw()
	if p.Follow {
		return
	}
	p.HandDeg = plan.Number(math.Abs(to-from) * gear)
	p.Asks, p.Landed = needs, b.Set.Hand.Land(needs)
	p.Regrips = p.Landed.Regrips
	if p.Landed.Possible {
		p.Peak, p.Spread = plan.Number(p.Landed.Peak), plan.Number(p.Landed.Spread)
	}
	p.Chance, p.Ceiling = plan.Number(p.Landed.Chance), plan.Number(p.Landed.Ceiling)
	if !b.Probing || b.Needs {
		if t, ok := b.Set.Hand.Needed(needs, b.Set.View.Wanted); ok {
			p.Needed = plan.Number(t)
		}
	}
	p.Grips = b.Set.Hand.RegripTimes(needs)
	for i := range p.Grips {
		p.Grips[i] += p.StartS
	}
	if n := p.Landed.Regrips; n > 0 {
		p.LostEach = p.Landed.Lost / float64(n)
	}
}

// viewerFigures fills in what the audience sees of a rack: the blur of what is
// left and of what is reached once it has landed, and the breathing.
func (b *Builder) viewerFigures(p *clock.Pull) {
	sh := b.Shot
	left := p.FromLens
	if u := b.GoalBefore(p).Subject; u != nil && b.GoalBefore(p).Split == nil {
		left = sh.LensDistanceAt(u.Subject, p.LandS)
	}
	p.LeftAt = left
	p.LeftBlur = plan.Number(sh.Blur(left, p.ToLens, p.LandS))
	if !p.Aim.Soft() {
		worst := 0.0
		for _, u := range p.Aim.Members() {
			worst = max(worst, sh.Blur(sh.LensDistanceAt(u.Subject, p.LandS), p.ToLens, p.LandS))
		}
		p.ReachedBlur = plan.Number(worst)
	}
	p.Breathing = plan.Number(b.breathing(p))
}

// breathing is the change of the image's size over a rack, percent.
func (b *Builder) breathing(p *clock.Pull) float64 {
	if v := b.Set.Lens.Breathing; !math.IsNaN(v) {
		if !p.ToDeg.Known() {
			return math.NaN()
		}
		return v * math.Abs(float64(p.ToDeg-p.FromDeg)) / b.Shot.Optics.Ring.Throw()
	}
	return math.Abs(optics.Breathing(b.Shot.Focal(p.LandS), p.FromLens, p.ToLens))
}

// fillBlocking writes the moves of people, camera and zoom into the shot.
func (b *Builder) fillBlocking() {
	sh := b.Shot
	none := plan.None()
	for _, m := range b.Stage.Moves {
		out := plan.Blocking{
			Kind: m.Kind, Start: plan.Number(m.Start), End: plan.Number(m.End), Profile: "even",
			From: none, To: none, FromMM: none, ToMM: none,
		}
		if m.Smooth {
			out.Profile = "smooth"
		}
		switch m.Kind {
		case "moves":
			out.Who = m.Who.Name
			out.From, out.To = plan.Number(sh.DistanceAt(m.Who.Subject, m.Start)), plan.Number(sh.DistanceAt(m.Who.Subject, m.End))
		case "dolly":
			out.From, out.To = plan.Number(sh.Optics.Camera.At(m.Start)), plan.Number(sh.Optics.Camera.At(m.End))
		case "zoom":
			out.FromMM, out.ToMM = plan.Number(sh.Focal(m.Start)*1000), plan.Number(sh.Focal(m.End)*1000)
		}
		sh.Blocking = append(sh.Blocking, out)
	}
}

// fillSubjects computes every subject as it stands at the start of the shot.
func (b *Builder) fillSubjects() {
	sh := b.Shot
	keys := sh.Optics.Camera.Keys()
	for _, u := range b.Stage.Order {
		d := sh.DistanceAt(u.Subject, 0)
		x := sh.FromTape(d, 0)
		set := sh.Setting(0)
		lo, hi := set.Window(x)
		u.Distance, u.LensDistance, u.Side = plan.Number(d), plan.Number(x), plan.Number(u.Across.At(0))
		u.Near, u.Far = plan.Number(sh.ToTape(set.Near(x), 0)), plan.Number(sh.ToTape(set.Far(x), 0))
		u.RingDeg, u.Window = plan.None(), plan.NoInterval()
		if sh.Optics.Ring != nil {
			deg, _ := sh.RingDeg(x, 0)
			a, z := b.Edges([2]float64{lo, hi}, 0)
			u.RingDeg, u.Window = plan.Number(deg), plan.Interval{plan.Number(a), plan.Number(z)}
		}
		if u.SlantDeg == 0 {
			u.Slant = plan.None()
		}
		u.Path = b.path(u, keys)
		sh.Subjects = append(sh.Subjects, u.Subject)
	}
}

// path is where a subject stands whenever it or the camera starts or stops.
func (b *Builder) path(u *stage.Subject, camera []float64) []plan.Point {
	times := SortedTimes(append(append([]float64{0}, u.Along.Keys()...), camera...))
	path := make([]plan.Point, 0, len(times))
	for _, t := range times {
		if t < 0 || t > float64(b.Shot.Duration) {
			continue
		}
		path = append(path, plan.Point{
			T: plan.Number(t), Distance: plan.Number(b.Shot.DistanceAt(u.Subject, t)), Side: plan.Number(u.Across.At(t)),
		})
	}
	return path
}

// SortedTimes sorts times and leaves out those that come again.
func SortedTimes(list []float64) []float64 {
	slices.Sort(list)
	return slices.Compact(list)
}
