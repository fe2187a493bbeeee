// The stops that a lens has, over its focal lengths.

package exposure

import "math"

// Stops holds the widest and the smallest f-number of a lens at a focal length.
type Stops struct {
	Focal            float64 // metres
	Widest, Smallest float64
}

// A Scale is the stops of a lens from its shortest focal length to its longest.
type Scale []Stops

// At returns the widest and the smallest f-number at a focal length in metres. It
// interpolates linearly in stops between the focal lengths of the scale, and is
// constant beyond them. For an empty scale both are 0.
func (s Scale) At(focal float64) (widest, smallest float64) {
	if len(s) == 0 {
		return 0, 0
	}
	last := s[0]
	for _, r := range s {
		if r.Focal >= focal {
			if r.Focal <= last.Focal {
				return r.Widest, r.Smallest
			}
			u := (focal - last.Focal) / (r.Focal - last.Focal)
			mix := func(a, b float64) float64 { return a * math.Pow(b/a, u) }
			return mix(last.Widest, r.Widest), mix(last.Smallest, r.Smallest)
		}
		last = r
	}
	return last.Widest, last.Smallest
}
