// Straight pieces: a way in time by so few points that it is straight between them.

package plan

import (
	"math"
	"slices"
)

// Straight returns the times up to an end, with so many more between them that what changes
// in time is straight between two, to a millimetre. of returns its values at a time, in
// metres.
func Straight(times []float64, end float64, of func(float64) []float64) []float64 {
	const most, deep = 0.001, 12
	keys := Sorted(slices.DeleteFunc(times, func(t float64) bool { return !(t >= 0 && t <= end) }))
	var out []float64
	var split func(from, to float64, a, z []float64, level int)
	split = func(from, to float64, a, z []float64, level int) {
		var mid []float64
		bent := false
		for k := 1; k < 8; k++ {
			u := float64(k) / 8
			v := of(from + (to-from)*u)
			for i := range v {
				bent = bent || math.Abs(v[i]-(a[i]+(z[i]-a[i])*u)) > most*0.9
			}
			if k == 4 {
				mid = v
			}
		}
		if !bent || level >= deep {
			return
		}
		half := from + (to-from)/2
		split(from, half, a, mid, level+1)
		out = append(out, half)
		split(half, to, mid, z, level+1)
	}
	for i, t := range keys {
		if i > 0 {
			split(keys[i-1], t, of(keys[i-1]), of(t), 0)
		}
		out = append(out, t)
	}
	return out
}
