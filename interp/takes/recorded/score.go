// The score of a pull in a curve: when the hand set out and landed, where, and
// how that compares with the plan.

package recorded

import (
	"fmt"
	"math"
	"strings"

	"pullscore/interp/plan"
	"pullscore/interp/takes"
)

const (
	// moves is the share of the fastest speed of a pull above which the hand
	// counts as moving. Studies of aimed movements take two to five percent
	// (common practice, no source); at two, a pull of a second at 24 frames is
	// seen to begin and end within a frame of its planned curve.
	moves = 0.02

	// rests is how long the hand is still before it counts as landed, seconds:
	// longer than the halt before a correction. Our own choice.
	rests = 0.1

	// sought is how far before and after its planned time a pull is looked for,
	// seconds, as far as no other pull lies nearer. Our own choice.
	sought = 2.0

	// least is the share of the planned travel below which the focus has not
	// moved.
	least = 0.2

	// creep is how long a hand that moves may seem to rest between two steps of a
	// coarse recording, and pad how much of the rest about a movement its fit
	// sees, both in seconds. Our own choice.
	creep = 0.5
	pad   = 0.5

	// settled is the share of its travel within which a movement has come to
	// rest, where the steps of the recording are not coarser, and roughest the
	// share of it that a fit may leave. Our own choice.
	settled  = 0.02
	roughest = 0.05

	// slack is how far beyond the frames that it sees a fit may begin or end,
	// seconds: about a frame.
	slack = 0.05

	// usualDelay is how late a pull usually sets out or lands, seconds, and alike
	// how little two movements may differ by, in squares of what is usual, to fit
	// a pull about as well. Our own choice.
	usualDelay = 0.5
	alike      = 1.0

	// longestGap is how long frames may be missing within a movement, seconds.
	longestGap = 0.25
)

// A Score is how a pull went in a recording. Times are seconds from the start
// of the shot, angles degrees at the hand.
type Score struct {
	Shot string `json:"shot"`
	Pull int    `json:"pull"`
	From string `json:"from,omitempty"`
	To   string `json:"to"`

	Scored bool   `json:"scored"`
	Why    string `json:"why,omitempty"` // not scored, or with a word of caution

	Onset       plan.Number `json:"onset_s,omitzero"`
	OnsetCode   string      `json:"onset_timecode,omitempty"`
	Landing     plan.Number `json:"landing_s,omitzero"`
	LandingCode string      `json:"landing_timecode,omitempty"`
	// OnsetFrames and LandingFrames are how many frames late they are, negative
	// where early.
	OnsetFrames   int64 `json:"onset_frames"`
	LandingFrames int64 `json:"landing_frames"`

	Travel    plan.Number `json:"travel_deg,omitzero"`    // planned
	Error     plan.Number `json:"error_deg,omitzero"`     // landed less mark, positive past it
	Overshoot plan.Number `json:"overshoot_deg,omitzero"` // how far past where it came to rest
	Time      plan.Number `json:"time_s,omitzero"`        // from onset to landing
	InWindow  plan.Number `json:"in_window_s,omitzero"`   // sharp, from the onset until the next pull
	Hit       bool        `json:"hit"`                    // came to rest in the window
	Missing   int64       `json:"missing_frames,omitempty"`
}

// Scores scores every rack of the shot.
func (c *Curve) Scores() []Score {
	var list []Score
	for i, p := range c.Shot.Pulls {
		if p.Kind != "follow" {
			list = append(list, c.score(i))
		}
	}
	return list
}

// score scores a rack.
func (c *Curve) score(i int) Score {
	p := c.Shot.Pulls[i]
	none := plan.None()
	s := Score{Shot: c.Shot.ID, Pull: p.Number, From: p.From, To: p.Target, Onset: none, Landing: none,
		Travel: none, Error: none, Overshoot: none, Time: none, InWindow: none}
	if math.IsNaN(p.Asks.Travel) || !(p.Asks.Travel > 0) {
		s.Why = "the plan has no travel at the hand for it"
		return s
	}
	if c.By == ByRecord && p.InCut.IsRemoved() {
		s.Why = "it is not in the cut, and the recording is of the cut"
		return s
	}
	from, to, next := c.around(i)
	m := newMotion(c, p, c.slice(from, to))
	v, why := m.choose()
	if s.Why = why; why != "" {
		return s
	}
	s.fill(m, v)
	s.InWindow = plan.Number(c.inWindow(p, v.sets, next))
	return s
}

// around returns the time in which a pull is looked for, and when the next
// begins.
func (c *Curve) around(i int) (from, to, next float64) {
	p := c.Shot.Pulls[i]
	start, land := float64(p.Start), float64(p.Land)
	from, to, next = start-sought, land+sought, math.Inf(1)
	if i > 0 {
		from = max(from, (float64(c.Shot.Pulls[i-1].Land)+start)/2)
	}
	if i+1 < len(c.Shot.Pulls) {
		next = float64(c.Shot.Pulls[i+1].Start)
		to = min(to, (land+next)/2)
	}
	return min(from, start), max(to, land), next
}

// fill writes what a movement comes to.
func (s *Score) fill(m *motion, v movement) {
	p, shot := m.pull, m.curve.Shot
	s.Scored = true
	s.Onset, s.Landing, s.Time = plan.Number(v.sets), plan.Number(v.lands), plan.Number(v.lands-v.sets)
	onset, landing := shot.Speed().Frames(v.sets), shot.Speed().Frames(v.lands)
	s.OnsetCode, s.LandingCode = m.curve.clock.label(v.sets), m.curve.clock.label(v.lands)
	s.OnsetFrames, s.LandingFrames = onset-p.StartFrame, landing-p.LandFrame
	past := v.rest
	for k := v.onset; k <= v.landing; k++ {
		past = max(past, m.hand[k])
	}
	s.Travel, s.Error, s.Overshoot = plan.Number(p.Asks.Travel), plan.Number(v.rest), plan.Number(past-v.rest)
	s.Hit = p.Asks.Lo <= v.rest && v.rest <= p.Asks.Hi
	for k := v.onset; k < v.landing; k++ {
		s.Missing += m.missing(k)
	}
	var cautions []string
	if !v.smooth {
		cautions = append(cautions, "not one smooth movement, so its time is that above 2 % of its fastest speed")
	}
	if s.Missing > 0 {
		cautions = append(cautions, fmt.Sprintf("%d frames are missing in the movement, and are taken on a straight line", s.Missing))
	}
	s.Why = strings.Join(cautions, "; ")
}

// inWindow returns for how long the focus was within the window of a pull
// between two times.
func (c *Curve) inWindow(p *plan.Pull, from, to float64) (sum float64) {
	frames := c.slice(from, to)
	if len(frames) == 0 {
		return 0
	}
	last := min(to, frames[len(frames)-1].ends())
	for k, f := range frames {
		_, past, err := takes.AtHand(c.Shot, p, f.Ring)
		if err != nil || past < p.Asks.Lo || past > p.Asks.Hi {
			continue
		}
		end := min(f.ends(), last) // a frame that is missing says nothing
		if k+1 < len(frames) {
			end = min(end, frames[k+1].Time)
		}
		sum += max(0, end-f.Time)
	}
	return sum
}

// Take returns the score as a take for the log.
func (s *Score) Take(planName, puller, date string, rim float64) takes.Take {
	t := takes.Take{
		Date: date, Plan: planName, Shot: s.Shot, Pull: s.Pull, Puller: puller, Rim: rim,
		Travel: float64(s.Travel), Error: float64(s.Error), Time: float64(s.Time), Hit: takes.Missed, Note: "recorded",
	}
	if s.Hit {
		t.Hit = takes.Sharp
	}
	return t
}
