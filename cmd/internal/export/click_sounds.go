// The sounds of a track.

package export

import (
	"cmp"
	"math"
	"slices"

	"pullscore/interp/plan"
)

// A sound is a struck tone that dies away. It begins at its full height, so
// that its first sample is where it is heard.
type sound struct {
	pitches []float64 // Hz
	loud    float64
	length  float64 // seconds
}

// The sounds differ in pitch, colour and length, so that they are told apart
// also on a small speaker.
var (
	count  = sound{[]float64{1600}, 0.4, 0.020}
	tick   = sound{[]float64{1000}, 0.25, 0.012}
	starts = sound{[]float64{500, 750}, 0.45, 0.045}
	lands  = sound{[]float64{1320, 1980, 2640}, 0.55, 0.120}
)

// play adds a sound to the mix.
func (m *maker) play(s sound, at int) {
	n := int(s.length * SampleRate)
	for i := range n {
		if at+i >= len(m.mix) {
			return
		}
		t := float64(i) / SampleRate
		left := 1 - float64(i)/float64(n)
		v := 0.0
		for _, f := range s.pitches {
			v += math.Cos(2 * math.Pi * f * t)
		}
		m.mix[at+i] += float32(s.loud * left * left * v / float64(len(s.pitches)))
	}
}

// The tone of a move goes up an octave, from the lower to the upper pitch, as
// the ring goes from where it starts to where it lands. It falls silent just
// before the landing, which is then heard to begin.
const (
	lower    = 330.0 // Hz
	loudness = 0.16
	silence  = 0.010 // seconds
	swell    = 0.008
)

// glide plays the tone of a move. It is worked out in the time of the track, so
// a slower track has the same pitches.
func (m *maker) glide(p *plan.Pull) {
	start, land := m.at(float64(p.Start)), m.at(float64(p.Land))
	end := land - int(silence*SampleRate)
	share := m.travel(p)
	phase := 0.0
	for i := max(start, 0); i < end && i < len(m.mix); i++ {
		u := share(float64(i-start) / float64(land-start))
		phase += 2 * math.Pi * lower * math.Exp2(u) / SampleRate
		edge := min(float64(i-start), float64(end-i)) / (swell * SampleRate)
		m.mix[i] += float32(loudness * min(edge, 1) * math.Sin(phase))
	}
}

// travel returns how much of its way the ring has gone at a share of a move's
// time. A rack goes as the ring of the plan does. A follow goes as who is followed does, in
// 1/distance, which is what a ring feels.
func (m *maker) travel(p *plan.Pull) func(u float64) float64 {
	start, land := float64(p.Start), float64(p.Land)
	if p.Kind != "follow" {
		return func(u float64) float64 { return p.Turned(start + u*(land-start)) }
	}
	near := func(t float64) float64 { return 1 / m.shot.FocusAt(t) }
	from, way := near(start), near(land)-near(start)
	return func(u float64) float64 {
		v := (near(start+u*(land-start)) - from) / way
		if math.IsNaN(v) || math.IsInf(v, 0) {
			return 0
		}
		return min(max(v, 0), 1)
	}
}

func sortCues(list []Mark) {
	slices.SortStableFunc(list, func(a, b Mark) int { return cmp.Compare(a.Position, b.Position) })
}
