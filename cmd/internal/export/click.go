// The click track of a shot: a count-in, a tick every beat, a sound where each
// move of the focus starts and another where it lands, and between them a tone
// that rises with the travel of the ring, so that the hand hears how far it
// should be. Times are seconds of the shot, positions samples from the start of
// the file.

package export

import (
	"errors"
	"fmt"
	"math"

	"pullscore/interp/plan"
	"pullscore/interp/units"
)

// SampleRate is the samples a second of a track.
const SampleRate = 48_000

// countIn is the beats before the shot starts.
const countIn = 4

// longest is the seconds that a track may last: every second takes 96 kB, and
// no shot is rehearsed for a quarter of an hour on end.
const longest = 900.0

// ClickOptions say how a track is made. The zero value is one pass at full speed.
type ClickOptions struct {
	Beat  float64 // seconds between ticks at full speed; 0: as the plan says, else half a second
	Speed float64 // 0.5 takes twice as long; 0: 1. Pitches stay
	Loop  int     // passes, each with its count-in; 0: 1
}

// A Click is a finished track.
type Click struct {
	Samples []int16
	Cues    []Mark // in order of position
}

// A Mark is a place in a track with its name.
type Mark struct {
	Position int
	Label    string
}

// NewClick makes the track of a shot.
func NewClick(s *plan.Shot, opt ClickOptions) (*Click, error) {
	m, err := newMaker(s, opt)
	if err != nil {
		return nil, err
	}
	pass := m.pass()
	t := &Click{}
	for n := range m.loop {
		for _, c := range m.cues {
			if m.loop > 1 {
				c.Label = fmt.Sprintf("pass %d: %s", n+1, c.Label)
			}
			c.Position += n * len(pass)
			t.Cues = append(t.Cues, c)
		}
		t.Samples = append(t.Samples, pass...)
	}
	return t, nil
}

// A maker makes one pass.
type maker struct {
	shot        *plan.Shot
	beat, speed float64
	loop        int
	mix         []float32
	cues        []Mark
	busy        []int // positions of what is louder than a tick
}

// tail is the least that a pass goes on after its shot, for the last sound.
const tail = 0.25

func newMaker(s *plan.Shot, opt ClickOptions) (*maker, error) {
	m := &maker{shot: s, beat: opt.Beat, speed: opt.Speed, loop: opt.Loop}
	if m.beat == 0 {
		m.beat = s.Tick()
	}
	if m.speed == 0 {
		m.speed = 1
	}
	if m.loop == 0 {
		m.loop = 1
	}
	end := float64(s.Duration)
	if math.IsNaN(end) || math.IsInf(end, 0) || end < 0 {
		return nil, errors.New("the shot has no length")
	}
	beats := countIn + math.Ceil((end+tail)/m.beat-1e-9)
	if total := beats * m.beat / m.speed * float64(m.loop); total > longest {
		return nil, fmt.Errorf("the track would last %s s, and %s s is the most", units.Decimal(total, 0), units.Decimal(longest, 0))
	}
	m.mix = make([]float32, int(math.Round(beats*m.beat/m.speed*SampleRate)))
	return m, nil
}

// at is the position of a time of the shot.
func (m *maker) at(t float64) int {
	return int(math.Round((countIn*m.beat + t) / m.speed * SampleRate))
}

// pass makes one pass: the moves first, since a tick gives way to them.
func (m *maker) pass() []int16 {
	for _, p := range m.shot.Pulls {
		m.move(p)
	}
	for n := 0; ; n++ {
		t := (float64(n) - countIn) * m.beat
		at := m.at(t)
		if at >= len(m.mix) {
			break
		}
		sound := tick
		if n < countIn {
			sound = count
		}
		if !m.taken(at) {
			m.play(sound, at)
		}
	}
	m.mark(0, "count-in")
	m.mark(m.at(0), "shot "+m.shot.ID)
	sortCues(m.cues)
	out := make([]int16, len(m.mix))
	for i, v := range m.mix {
		out[i] = int16(math.Round(float64(min(max(v, -1), 1)) * math.MaxInt16))
	}
	return out
}

func (m *maker) mark(at int, label string) { m.cues = append(m.cues, Mark{at, label}) }

// move plays a move of the focus: where it starts, the tone on its way, where
// it lands. One that would start before the shot is an error of the plan; as
// much of it as falls into the pass is heard.
func (m *maker) move(p *plan.Pull) {
	start, land := float64(p.Start), float64(p.Land)
	name := fmt.Sprintf("%d to %s", p.Number, p.Target)
	if p.Kind == "follow" {
		name = fmt.Sprintf("%d follow %s", p.Number, p.Target)
	}
	m.glide(p)
	m.event(starts, start, name+" starts")
	if p.Kind == "follow" {
		m.event(lands, land, name+" ends")
		return
	}
	m.event(lands, land, name+" lands")
}

// event plays a sound at a time and marks it, where it falls into the pass.
func (m *maker) event(s sound, t float64, label string) {
	if at := m.at(t); at >= 0 && at < len(m.mix) {
		m.play(s, at)
		m.mark(at, label)
		m.busy = append(m.busy, at)
	}
}

// taken tells whether a tick would blur a louder sound: those are to be heard
// to begin.
func (m *maker) taken(at int) bool {
	for _, b := range m.busy {
		if d := b - at; d > -SampleRate*6/100 && d < SampleRate*6/100 {
			return true
		}
	}
	return false
}
