// Figures: every number of every pull, once all of the shot has its times.

package built

import (
	"math"
	"slices"

	"pullscore/interp/plan"
	"pullscore/interp/viewer"
	"pullscore/optics"
)

// figures fills in the numbers of one pull.
func (b *Shot) figures(p *Pull, needed bool) {
	sh := b.Plan
	from, to := b.FocusBefore(p, p.Rack.StartS), b.LensDistance(&p.Rack.Aim, p.Rack.LandS)
	if p.Rack.Follow {
		from = b.LensDistance(&p.Rack.Aim, p.Rack.StartS)
	}
	p.Plan.FromLens, p.Plan.ToLens, p.Plan.Goal = from, to, b.sight().Target(&p.Rack.Aim, p.Rack.LandS)
	p.Plan.From, p.Plan.To, p.Plan.Target = b.GoalBefore(p).Name(), p.Rack.Aim.Name(), p.Rack.Aim.Text
	p.Plan.Untimed = p.Rack.ByDefault && !p.Rack.Follow
	p.Plan.Profile = "even"
	if p.Rack.Smooth {
		p.Plan.Profile = "smooth"
	}
	p.Plan.Start, p.Plan.Land = plan.Number(p.Rack.StartS), plan.Number(p.Rack.LandS)
	p.Plan.StartFrame, p.Plan.LandFrame = sh.Speed().Frames(p.Rack.StartS), sh.Speed().Frames(p.Rack.LandS)
	p.Plan.ScreenStart, p.Plan.ScreenLand = sh.OnScreen(p.Rack.StartS), sh.OnScreen(p.Rack.LandS)
	p.Plan.FromM, p.Plan.ToM = plan.Number(b.tapeBefore(p)), plan.Number(b.Tape(&p.Rack.Aim, p.Rack.LandS))
	set := sh.Judged(to, p.Rack.LandS)
	p.Plan.Near, p.Plan.Far = plan.Number(sh.ToTape(set.Near(to), p.Rack.LandS)), plan.Number(sh.ToTape(set.Far(to), p.Rack.LandS))
	p.Window = b.window(p.Rack, p.Rack.LandS)
	b.handFigures(p, needed)
	p.Plan.Stays = !p.Rack.Follow && b.StaysOn(p)
	p.Plan.LeftBlur, p.Plan.ReachedBlur, p.Plan.Breathing, p.Plan.Lag = plan.None(), plan.None(), plan.None(), plan.None()
	p.Plan.DiffractionMM, p.Plan.NearLoss, p.Plan.SubjectSpeed, p.Plan.SeenFrom = plan.None(), plan.None(), plan.None(), plan.None()
	if !(to > sh.Focal(p.Rack.LandS)) { // told as inside-closest
		return
	}
	set = sh.SettingTo(to, p.Rack.LandS)
	p.Plan.DiffractionMM, p.Plan.NearLoss = plan.Number(set.Diffraction(to)*1000), plan.Number(sh.NearLoss(to, p.Rack.LandS))
	if !p.Rack.Follow {
		b.viewerFigures(p)
		if speed, _ := b.walk(p.Rack, p.Rack.LandS); speed > 0 {
			p.Plan.SubjectSpeed = plan.Number(speed)
		}
	}
}

func (b *Shot) handFigures(p *Pull, needed bool) {
	none := plan.None()
	p.Plan.FromDeg, p.Plan.ToDeg, p.Plan.HandDeg, p.Plan.Peak, p.Plan.Needed = none, none, none, none, none
	p.Plan.Spread, p.Plan.Chance, p.Plan.Ceiling, p.Plan.WindowHand = none, none, none, plan.NoInterval()
	p.Plan.SharpShare, p.Plan.WorstShare, p.Plan.WorstAt, p.Plan.LagDeg = none, none, none, none
	p.Plan.ChanceBand, p.Plan.CeilingBand, p.Plan.Factor = plan.NoInterval(), plan.NoInterval(), plan.NoInterval()
	p.Plan.OnPaper, p.Plan.LawSigma, p.Plan.LawBound, p.Plan.PlayShift = none, none, none, none
	p.Plan.Asks.Travel = math.NaN()
	if b.guess(p); p.Guesses != nil {
		return
	}
	if b.Plan.Optics.Ring == nil || b.OutOfReach(p) { // a ring at its end is not where it should be
		return
	}
	gear := b.Setup.Gear
	from, to := b.Plan.RingDeg(p.Plan.FromLens, p.Rack.StartS), b.Plan.RingDeg(p.Plan.ToLens, p.Rack.LandS)
	p.Plan.FromDeg, p.Plan.ToDeg = plan.Number(from), plan.Number(to)
	if b.pastWheel(from) { // the wheel never was there
		p.Plan.FromDeg = none
	}
	if math.IsNaN(to) { // told as beyond-marks
		return
	}
	b.doubt(p)
	near, far := b.extremes(p.Rack, p.Rack.LandS)
	lo, hi := b.EdgesOf(near, far, p.Rack.LandS)
	p.Plan.WindowHand = plan.Interval{plan.Number(lo * gear), plan.Number(hi * gear)}
	ends := b.handEnds()
	p.Plan.OpenNear, p.Plan.OpenFar = ends.atLo && lo <= ends.lo, ends.atHi && hi >= ends.hi
	needs, ok := b.HandPull(p)
	if !ok {
		return
	}
	if p.Rack.Follow {
		return
	}
	p.Plan.HandDeg = plan.Number(math.Abs(to-from) * gear)
	if b.Setup.Lens.Slack() > 0 && to != from {
		p.Plan.HandDeg = plan.Number(needs.Travel)
		p.Plan.PlayShift = plan.Number(b.Setup.ShortBy(to > from) / gear)
	}
	p.Plan.Asks, p.Landed = needs, b.Setup.Hand.Land(needs)
	p.Plan.Regrips, p.Plan.OnPaper = p.Landed.Regrips, b.onPaper(p)
	if p.Landed.Possible {
		p.Plan.Peak, p.Plan.Spread = plan.Number(p.Landed.Peak), plan.Number(p.Landed.Spread)
	}
	p.Plan.Chance, p.Plan.Ceiling, p.Plan.AtStop = plan.Number(p.Landed.Chance), plan.Number(p.Landed.Ceiling), p.Landed.ByStop
	if needed {
		if t, ok := b.neededBy(p, needs); ok {
			p.Plan.Needed = plan.Number(t)
		}
	}
	if n := p.Landed.Regrips; n > 0 {
		p.Plan.LostEach = p.Landed.Lost / float64(n)
		p.Plan.Grips = p.Plan.LetsGo()
	}
}

// viewerFigures fills in what the audience sees of a rack: the blur of what is
// left and of what is reached once it has landed, and the breathing.
func (b *Shot) viewerFigures(p *Pull) {
	sh := b.Plan
	left := p.Plan.FromLens
	if u := b.GoalBefore(p).Subject; u != nil && b.GoalBefore(p).Split == nil {
		left = sh.LensDistanceAt(u.Subject, p.Rack.LandS)
	}
	p.LeftAt = left
	p.Plan.SeenFrom = plan.Number(viewer.SeenFrom(sh.Diffraction(p.Plan.ToLens, p.Rack.LandS)))
	p.Plan.LeftBlur = plan.Number(sh.Blur(left, p.Plan.ToLens, p.Rack.LandS))
	if !p.Rack.Aim.Soft() {
		worst := 0.0
		for _, u := range p.Rack.Aim.Members() {
			worst = max(worst, sh.Blur(sh.LensDistanceAt(u.Subject, p.Rack.LandS), p.Plan.ToLens, p.Rack.LandS))
		}
		p.Plan.ReachedBlur = plan.Number(worst)
	}
	p.Plan.Breathing = plan.Number(b.breathing(p))
}

// breathing is the change of the image's size over a rack, percent.
func (b *Shot) breathing(p *Pull) float64 {
	if v := b.Setup.Lens.Breathing; !math.IsNaN(v) {
		if !p.Plan.ToDeg.Known() {
			return math.NaN()
		}
		return v * math.Abs(float64(p.Plan.ToDeg-p.Plan.FromDeg)) / b.Plan.Optics.Ring.Throw()
	}
	sh := b.Plan
	from, to := sh.Grown(p.Plan.FromLens, p.Rack.StartS), sh.Grown(p.Plan.ToLens, p.Rack.LandS)
	if !math.IsNaN(from) && !math.IsNaN(to) {
		return math.Abs(100 * ((100+from)/(100+to) - 1))
	}
	image := func(x float64) float64 { return optics.ImageDistance(sh.FocalTo(x, p.Rack.LandS), x) }
	return math.Abs(100 * (image(p.Plan.FromLens)/image(p.Plan.ToLens) - 1))
}

// hang tells the lines which pulls hang on them.
func (b *Shot) hang() {
	for _, p := range b.Pulls {
		for _, l := range p.Rack.HangsOnLines {
			if !l.Timed || !b.Clock.At[l.Item].Known {
				continue
			}
			if to := &b.Plan.Lines[l.Listed]; !slices.Contains(to.Pulls[max(0, len(to.Pulls)-1):], p.Plan.Number) {
				to.Pulls = append(to.Pulls, p.Plan.Number)
			}
		}
	}
}
