// Package sampled holds how figures go over the frames of a shot, written short, as the
// stage of the live page is told them.
package sampled

import (
	"math"
	"strconv"

	"pullscore/interp/plan"
)

// most bounds the figures of an answer: a shot that has more frames times subjects than
// this is told every second, third, nth frame.
const most = 240_000

// A Series is a figure at every sample, or one figure where it never changes.
type Series []float64

// seriesDigits is how many significant digits a figure of a series has. The
// stage draws pixels, and its blur is compared to what `list` prints.
const seriesDigits = 7

// MarshalJSON writes an infinite figure as null, and one that there is none of
// as 0, which no distance and no focal length is.
func (s Series) MarshalJSON() ([]byte, error) {
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

// Samples are the frames of a shot at which its figures are taken.
type Samples struct {
	shot  *plan.Shot
	Every int64 // frames from sample to sample
	N     int64
}

// Of takes every frame of a shot, or as many as an answer may have.
func Of(s *plan.Shot) Samples {
	frames := s.Speed().Frames(float64(s.Duration)) + 1
	columns := int64(3*len(s.Subjects) + 6)
	if s.Optics.Rig != nil {
		columns += int64(len(s.Subjects) + 6)
	}
	every := max((frames*columns+most-1)/most, 1)
	return Samples{shot: s, Every: every, N: (frames + every - 1) / every}
}

// Figure returns a figure over the shot.
func (m Samples) Figure(at func(t float64) float64) Series {
	all := make(Series, m.N)
	same := true
	for i := range all {
		all[i] = at(m.shot.Speed().Seconds(int64(i) * m.Every))
		same = same && (all[i] == all[0] || math.IsNaN(all[i]) && math.IsNaN(all[0]))
	}
	if same {
		return all[:1]
	}
	return all
}
