// Series: how a figure goes over the frames of a shot, written short.

package preview

import (
	"math"
	"strconv"

	"pullscore/interp/plan"
)

// A series is a figure at every sample, or one figure where it never changes.
type series []float64

// seriesDigits is how many significant digits a figure of a series has. The
// stage draws pixels, and its blur is compared to what `list` prints.
const seriesDigits = 7

// MarshalJSON writes an infinite figure as null, and one that there is none of
// as 0, which no distance and no focal length is.
func (s series) MarshalJSON() ([]byte, error) {
	b := append(make([]byte, 0, 9*len(s)+2), '[')
	for i, v := range s {
		if i > 0 {
			b = append(b, ',')
		}
		switch {
		case math.IsInf(v, 0):
			b = append(b, "null"...)
		case math.IsNaN(v) || v == 0:
			b = append(b, '0')
		default:
			b = strconv.AppendFloat(b, v, 'g', seriesDigits, 64)
		}
	}
	return append(b, ']'), nil
}

// samples are the frames of a shot at which its figures are taken.
type samples struct {
	shot  *plan.Shot
	every int64
	n     int64
}

// newSamples takes every frame, or as many as maxSamples allows.
func newSamples(s *plan.Shot) samples {
	frames := s.Speed().Frames(float64(s.Duration)) + 1
	columns := int64(3*len(s.Subjects) + 6)
	if s.Optics.Rig != nil {
		columns += int64(len(s.Subjects) + 6)
	}
	every := max((frames*columns+maxSamples-1)/maxSamples, 1)
	return samples{shot: s, every: every, n: (frames + every - 1) / every}
}

// of returns a figure over the shot.
func (m samples) of(at func(t float64) float64) series {
	all := make(series, m.n)
	same := true
	for i := range all {
		all[i] = at(m.shot.Speed().Seconds(int64(i) * m.every))
		same = same && (all[i] == all[0] || math.IsNaN(all[i]) && math.IsNaN(all[0]))
	}
	if same {
		return all[:1]
	}
	return all
}
