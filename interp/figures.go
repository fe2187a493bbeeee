// Figures: every number of every pull, once all of the shot has its times.

package interp

import (
	"fmt"
	"math"

	"pullscore/interp/hand"
	"pullscore/interp/plan"
	"pullscore/lang"
	"pullscore/optics"
)

// The spread of the distance itself by what the camera is on, metres: from
// memory of studies of quiet standing on force plates (the centre of pressure
// wanders by 4 to 6 mm).
var supportSway = map[string]float64{"hand": 0.006, "shoulder": 0.004}

// finish computes the shot once everything has its time.
func (b *builder) finish() {
	b.pulls = b.clock.ordered()
	b.chain()
	b.duration()
	b.endFollows()
	if !b.probing { // nobody looks at the lines of a shot that tries a cure
		b.clock.finish()
		b.fillBlocking()
	}
	for i, p := range b.pulls {
		p.Number = i + 1
		b.figures(p)
		b.shot.Pulls = append(b.shot.Pulls, p.Pull)
	}
	if !b.probing {
		b.hang()
		b.untimed()
	}
	b.fillSubjects()
	for _, p := range b.pulls {
		if p.follow {
			b.followFigures(p) // along the drawn curve, so after all else
		}
	}
}

// untimed lists the time of racks that do not say theirs, among what the plan
// leaves out.
func (b *builder) untimed() {
	n, shortest, longest := 0, math.Inf(1), 0.0
	b.racks(func(p *pull) {
		if p.Untimed {
			n++
			shortest, longest = min(shortest, p.land-p.start), max(longest, p.land-p.start)
		}
	})
	if n == 0 {
		return
	}
	value, who := seconds(shortest), "1 rack does not say it"
	if text := seconds(longest); text != value {
		value += " to " + text
	}
	if n > 1 {
		who = fmt.Sprintf("%d racks do not say it", n)
	}
	b.byDefault("over", value, who+": the shortest that lands with the wanted chance, and 1 s where none does")
}

// chain ties every pull to the one before it, and times anew the racks whose
// length is the shortest, where the order of time is not the order written.
func (b *builder) chain() {
	for range 2 {
		var before *pull
		for _, p := range b.pulls {
			p.previous = before
			before = p
		}
		changed := false
		for _, p := range b.pulls {
			if p.byDefault && p.previous != b.clock.writtenBefore(p) {
				old := p.start
				long := b.shortest(p, p.start, p.land)
				if p.landing != nil {
					p.start = p.land - long
				} else {
					p.land = p.start + long
				}
				changed = changed || p.start != old
			}
		}
		if !changed {
			return
		}
		b.pulls = b.clock.ordered()
	}
}

// duration ends the shot with the last thing in it, or where `lasts` says.
func (b *builder) duration() {
	end := b.clock.before[len(b.items)]
	for _, m := range b.clock.at {
		if m.known {
			end = max(end, m.end)
		}
	}
	for _, p := range b.pulls {
		if !math.IsInf(p.land, 0) {
			end = max(end, p.land)
		}
		end = max(end, p.start)
	}
	if b.cut != nil && b.cut.list != nil {
		for _, u := range b.cut.inPicture(b.rate) {
			end = max(end, u.to)
		}
	}
	if s, ok := b.settings["lasts"].(*lang.Lasts); ok {
		if t, ok := b.positive(s.Time, dimTime); ok {
			if end > t+1e-6 {
				b.report(lang.Diagnostic{
					Code: "after-the-shot", Severity: lang.Error, Range: s.Range(),
					Message: fmt.Sprintf("the shot lasts %s, and what is in it takes %s", seconds(t), seconds(end)),
					Figures: []lang.Figure{{Name: "lasts_s", Value: t}, {Name: "needed_s", Value: end}},
					Cures:   []lang.Cure{{Text: "lasts " + seconds(ceilTo(end, 100)), Value: ceilTo(end, 100), Unit: "s"}},
				})
			}
			end = t
		}
	}
	b.shot.Duration = plan.Number(end)
}

func ceilTo(v, perUnit float64) float64 { return math.Ceil(v*perUnit-1e-6) / perUnit }

// endFollows ends every follow at its `until`, at the next rack or with the
// shot, whichever comes first.
func (b *builder) endFollows() {
	for i, p := range b.pulls {
		if !p.follow {
			continue
		}
		end := float64(b.shot.Duration)
		if i+1 < len(b.pulls) {
			end = b.pulls[i+1].start
		}
		p.land = max(p.start, min(p.land, end))
	}
}

// focusBefore is the focus, from the lens, as the pull before p leaves it at t.
func (b *builder) focusBefore(p *pull, t float64) float64 {
	prev := p.previous
	if prev == nil {
		return b.shot.Carried(b.shot.Optics.Start.Distance, 0, t)
	}
	set := prev.land
	if prev.follow {
		set = min(t, prev.land)
	}
	return b.shot.Carried(b.lensDistance(&prev.goal, set), set, t)
}

// tapeBefore is where the focus is when p starts, as the tape reads it.
func (b *builder) tapeBefore(p *pull) float64 {
	switch prev := p.previous; {
	case p.follow:
		return b.tape(&p.goal, p.start)
	case prev == nil:
		return b.tape(&b.start, 0)
	case prev.follow:
		return b.tape(&prev.goal, min(p.start, prev.land))
	default:
		return b.tape(&prev.goal, prev.land)
	}
}

func (b *builder) goalBefore(p *pull) *goal {
	if p.previous == nil {
		return &b.start
	}
	return &p.previous.goal
}

// shortest is the length of a rack that is to be as short as it can.
func (b *builder) shortest(p *pull, start, land float64) float64 {
	if p.previous == nil {
		p.previous = b.clock.writtenBefore(p)
	}
	needs, ok := b.handPull(p, start, land)
	if !ok {
		return 1
	}
	t, ok := b.set.hand.Needed(needs, b.set.view.wanted)
	if !ok {
		return 1
	}
	return max(ceilTo(t, 10), ceilTo(b.set.view.quickest, 10), 0.1)
}

// handPull is the pull as the hand has it; ok is false for a lens without a
// ring that can be pulled by angle.
func (b *builder) handPull(p *pull, start, land float64) (out hand.Pull, ok bool) {
	sh, set := b.shot, b.set
	if sh.Optics.Ring == nil {
		return out, false
	}
	from, _ := sh.RingDeg(b.focusBefore(p, start), start)
	x := b.lensDistance(&p.goal, land)
	to, _ := sh.RingDeg(x, land)
	lo, hi := b.windowDeg(b.window(p, land), land)
	out = hand.Pull{
		Travel: math.Abs(to-from) * set.gear, Time: land - start, Reacts: p.reacts, Even: !p.smooth,
		Rim: set.underHand(), SigmaX: b.spreadOfDistance(p, x, land) * set.gear,
	}
	if to >= from {
		out.Lo, out.Hi = (lo-to)*set.gear, (hi-to)*set.gear
	} else {
		out.Lo, out.Hi = (to-hi)*set.gear, (to-lo)*set.gear
	}
	return out, !math.IsNaN(out.Travel)
}

// window is the range of focus settings, from the lens, that keeps what the
// pull goes to sharp.
func (b *builder) window(p *pull, t float64) [2]float64 {
	set := b.shot.Setting(t)
	if p.goal.split == nil {
		lo, hi := set.Window(b.lensDistance(&p.goal, t))
		return [2]float64{lo, hi}
	}
	near, far := b.extent(&p.goal, t)
	_, hi := set.Window(near)
	lo, _ := set.Window(far)
	return [2]float64{lo, hi} // crossed where no setting holds both
}

// windowDeg turns a window into ring angles; an edge at or past an end of the
// ring is open, since the stop there holds the hand.
func (b *builder) windowDeg(w [2]float64, t float64) (lo, hi float64) {
	lo, hi = b.edges(w, t)
	throw := b.shot.Optics.Ring.Throw()
	if lo <= 0 || lo >= throw {
		lo = math.Inf(-1)
	}
	if hi >= throw || hi <= 0 {
		hi = math.Inf(1)
	}
	return lo, hi
}

// edges are the ring angles of a window, held at the ring's ends.
func (b *builder) edges(w [2]float64, t float64) (lo, hi float64) {
	lo, _ = b.shot.RingDeg(w[0], t)
	hi, _ = b.shot.RingDeg(w[1], t)
	return lo, hi
}

// spreadOfDistance is the distance's own spread through the ring law, degrees
// of ring: the camera's sway and the subject's.
func (b *builder) spreadOfDistance(p *pull, x, t float64) float64 {
	sway := supportSway[b.set.camera.support]
	for _, u := range p.goal.members() {
		if u.Sways.Known() {
			sway = math.Hypot(sway, float64(u.Sways))
		}
	}
	if sway == 0 || math.IsInf(x, 0) {
		return 0
	}
	near, _ := b.shot.RingDeg(max(x-sway, 1e-4), t)
	far, _ := b.shot.RingDeg(x+sway, t)
	return math.Abs(far-near) / 2
}

// figures fills in the numbers of one pull.
func (b *builder) figures(p *pull) {
	sh := b.shot
	from, to := b.focusBefore(p, p.start), b.lensDistance(&p.goal, p.land)
	if p.follow {
		from = b.lensDistance(&p.goal, p.start)
	}
	p.FromLens, p.ToLens, p.Goal = from, to, b.target(&p.goal, p.land)
	p.From, p.To, p.Target = b.goalBefore(p).name(), p.goal.name(), p.goal.text
	p.Untimed = p.byDefault && !p.follow
	p.Profile = "even"
	if p.smooth {
		p.Profile = "smooth"
	}
	p.Start, p.Land = plan.Number(p.start), plan.Number(p.land)
	p.StartFrame, p.LandFrame = b.rate.Frames(p.start), b.rate.Frames(p.land)
	p.FromM, p.ToM = plan.Number(b.tapeBefore(p)), plan.Number(b.tape(&p.goal, p.land))
	set := sh.Setting(p.land)
	p.Near, p.Far = plan.Number(sh.ToTape(set.Near(to), p.land)), plan.Number(sh.ToTape(set.Far(to), p.land))
	p.window = b.window(p, p.land)
	b.handFigures(p)
	p.Stays = !p.follow && b.staysOn(p)
	p.LeftBlur, p.ReachedBlur, p.Breathing, p.Lag = plan.None(), plan.None(), plan.None(), plan.None()
	if !p.follow && to > sh.Focal(p.land) { // else told as inside-closest
		b.viewerFigures(p)
	}
}

func (b *builder) handFigures(p *pull) {
	none := plan.None()
	p.FromDeg, p.ToDeg, p.HandDeg, p.Peak, p.Needed = none, none, none, none, none
	p.Spread, p.Chance, p.Ceiling, p.WindowHand = none, none, none, plan.NoInterval()
	p.Asks.Travel = math.NaN()
	needs, ok := b.handPull(p, p.start, p.land)
	if !ok || b.outOfReach(p) { // a ring at its end is not where it should be
		return
	}
	from, _ := b.shot.RingDeg(p.FromLens, p.start)
	to, _ := b.shot.RingDeg(p.ToLens, p.land)
	lo, hi := b.edges(p.window, p.land)
	gear := b.set.gear
	p.FromDeg, p.ToDeg = plan.Number(from), plan.Number(to)
	p.WindowHand = plan.Interval{plan.Number(lo * gear), plan.Number(hi * gear)}
	p.OpenNear, p.OpenFar = lo <= 0, hi >= b.shot.Optics.Ring.Throw()
	if p.follow {
		return
	}
	p.HandDeg = plan.Number(math.Abs(to-from) * gear)
	p.Asks, p.landed = needs, b.set.hand.Land(needs)
	p.Regrips = p.landed.Regrips
	if p.landed.Possible {
		p.Peak, p.Spread = plan.Number(p.landed.Peak), plan.Number(p.landed.Spread)
	}
	p.Chance, p.Ceiling = plan.Number(p.landed.Chance), plan.Number(p.landed.Ceiling)
	if !b.probing || b.needs {
		if t, ok := b.set.hand.Needed(needs, b.set.view.wanted); ok {
			p.Needed = plan.Number(t)
		}
	}
	p.Grips = b.set.hand.RegripTimes(needs)
	for i := range p.Grips {
		p.Grips[i] += p.start
	}
	if n := p.landed.Regrips; n > 0 {
		p.LostEach = p.landed.Lost / float64(n)
	}
}

// viewerFigures fills in what the audience sees of a rack: the blur of what is
// left and of what is reached once it has landed, and the breathing.
func (b *builder) viewerFigures(p *pull) {
	sh := b.shot
	left := p.FromLens
	if u := b.goalBefore(p).subject; u != nil && b.goalBefore(p).split == nil {
		left = sh.LensDistanceAt(u.Subject, p.land)
	}
	p.leftAt = left
	p.LeftBlur = plan.Number(sh.Blur(left, p.ToLens, p.land))
	if !p.goal.soft() {
		worst := 0.0
		for _, u := range p.goal.members() {
			worst = max(worst, sh.Blur(sh.LensDistanceAt(u.Subject, p.land), p.ToLens, p.land))
		}
		p.ReachedBlur = plan.Number(worst)
	}
	p.Breathing = plan.Number(b.breathing(p))
}

// breathing is the change of the image's size over a rack, percent.
func (b *builder) breathing(p *pull) float64 {
	if v := b.set.lens.breathing; !math.IsNaN(v) {
		if !p.ToDeg.Known() {
			return math.NaN()
		}
		return v * math.Abs(float64(p.ToDeg-p.FromDeg)) / b.shot.Optics.Ring.Throw()
	}
	return math.Abs(optics.Breathing(b.shot.Focal(p.land), p.FromLens, p.ToLens))
}

// followFigures fills in the speed and the lag of a follow. The lag is worst
// where the speed of the distance changes most; nobody says where a hand that
// follows lands, so there is no chance.
func (b *builder) followFigures(p *pull) {
	p.shifts = b.shiftsIn(p)
	lag := 0.0
	for _, t := range p.changes() {
		lag = max(lag, p.lagAt(t))
	}
	p.Lag = plan.Number(lag)
	if p.FromDeg.Known() && p.land > p.start {
		p.Peak, p.HandDeg = b.followSpeed(p)
	}
}

// followSpeed is the fastest that the hand has to turn in a follow, and how far
// it turns, by the frame.
func (b *builder) followSpeed(p *pull) (peak, travel plan.Number) {
	const step = 1.0 / 48
	n := int(min(math.Ceil((p.land-p.start)/step), 20_000))
	dt := (p.land - p.start) / float64(max(n, 1))
	handAt := func(t float64) float64 {
		deg, _ := b.shot.RingDeg(b.lensDistance(&p.goal, t), t)
		return deg * b.set.gear
	}
	last := handAt(p.start)
	for i := 1; i <= n; i++ {
		a := handAt(p.start + float64(i)*dt)
		peak = max(peak, plan.Number(math.Abs(a-last)/dt))
		travel += plan.Number(math.Abs(a - last))
		last = a
	}
	return peak, travel
}

// fillBlocking writes the moves of people, camera and zoom into the shot.
func (b *builder) fillBlocking() {
	sh := b.shot
	none := plan.None()
	for _, m := range b.stage.moves {
		out := plan.Blocking{
			Kind: m.kind, Start: plan.Number(m.start), End: plan.Number(m.end), Profile: "even",
			From: none, To: none, FromMM: none, ToMM: none,
		}
		if m.smooth {
			out.Profile = "smooth"
		}
		switch m.kind {
		case "moves":
			out.Who = m.who.Name
			out.From, out.To = plan.Number(sh.DistanceAt(m.who.Subject, m.start)), plan.Number(sh.DistanceAt(m.who.Subject, m.end))
		case "dolly":
			out.From, out.To = plan.Number(sh.Optics.Camera.At(m.start)), plan.Number(sh.Optics.Camera.At(m.end))
		case "zoom":
			out.FromMM, out.ToMM = plan.Number(sh.Focal(m.start)*1000), plan.Number(sh.Focal(m.end)*1000)
		}
		sh.Blocking = append(sh.Blocking, out)
	}
}

// fillSubjects computes every subject as it stands at the start of the shot.
func (b *builder) fillSubjects() {
	sh := b.shot
	keys := sh.Optics.Camera.Keys()
	for _, u := range b.stage.order {
		d := sh.DistanceAt(u.Subject, 0)
		x := sh.FromTape(d, 0)
		set := sh.Setting(0)
		lo, hi := set.Window(x)
		u.Distance, u.LensDistance, u.Side = plan.Number(d), plan.Number(x), plan.Number(u.Across.At(0))
		u.Near, u.Far = plan.Number(sh.ToTape(set.Near(x), 0)), plan.Number(sh.ToTape(set.Far(x), 0))
		u.RingDeg, u.Window = plan.None(), plan.NoInterval()
		if sh.Optics.Ring != nil {
			deg, _ := sh.RingDeg(x, 0)
			a, z := b.edges([2]float64{lo, hi}, 0)
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
func (b *builder) path(u *subject, camera []float64) []plan.Point {
	times := sortedTimes(append(append([]float64{0}, u.Along.Keys()...), camera...))
	path := make([]plan.Point, 0, len(times))
	for _, t := range times {
		if t < 0 || t > float64(b.shot.Duration) {
			continue
		}
		path = append(path, plan.Point{
			T: plan.Number(t), Distance: plan.Number(b.shot.DistanceAt(u.Subject, t)), Side: plan.Number(u.Across.At(t)),
		})
	}
	return path
}
