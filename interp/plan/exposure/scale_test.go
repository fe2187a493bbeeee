package exposure

import (
	"math"
	"testing"
)

// Between two focal lengths a scale is linear in stops: half way from f/2 to f/4
// is f/2.8 (the square root of two times two), as on the marks of a lens.
func TestScale(t *testing.T) {
	zoom := Scale{{Focal: 0.025, Widest: 2, Smallest: 16}, {Focal: 0.075, Widest: 4, Smallest: 32}}
	for _, c := range []struct {
		scale            Scale
		focal            float64
		widest, smallest float64
	}{
		{zoom, 0.025, 2, 16},
		{zoom, 0.075, 4, 32},
		{zoom, 0.050, 2 * math.Sqrt2, 16 * math.Sqrt2},
		{zoom, 0.010, 2, 16},
		{zoom, 0.100, 4, 32},
		{Scale{{Focal: 0.025, Widest: 2.8, Smallest: 22}}, 0.060, 2.8, 22},
		{nil, 0.050, 0, 0},
	} {
		widest, smallest := c.scale.At(c.focal)
		if math.Abs(widest-c.widest) > 1e-12 || math.Abs(smallest-c.smallest) > 1e-12 {
			t.Errorf("%v at %v has f/%v to f/%v, want f/%v to f/%v", c.scale, c.focal, widest, smallest, c.widest, c.smallest)
		}
	}
}
