package sheet

import (
	"math"
	"testing"
)

func TestMetric(t *testing.T) {
	for _, tc := range []struct {
		m    float64
		want string
	}{
		{0.95, "95 cm"}, {0.9999, "1 m"}, {0.325, "32.5 cm"}, {1.7, "1.7 m"}, {1.625, "1.62 m"}, {12.34, "12.3 m"},
		{99.96, "100 m"}, {900.4, "900 m"}, {0, "0 cm"}, {-0.5, "−50 cm"}, {math.Inf(1), "∞"},
	} {
		if got := Metric(tc.m); got != tc.want {
			t.Errorf("metric(%v) = %q, want %q", tc.m, got, tc.want)
		}
	}
}

// One foot is 0.3048 m exactly (international yard and pound agreement, 1959).
func TestImperial(t *testing.T) {
	for _, tc := range []struct {
		m    float64
		want string
	}{
		{0.3048, "1′"}, {1.7, "5′7″"}, {0.95, "3′1½″"}, {0.0254, "1″"}, {0.0127, "½″"}, {0, "0″"},
		{0.3048 * 1.999, "2′"}, {5.2, "17′1″"}, {0.3048*5 + 0.0127, "5′½″"}, {60, "197′"}, {-0.3048, "−1′"}, {math.Inf(1), "∞"},
	} {
		if got := Imperial(tc.m); got != tc.want {
			t.Errorf("imperial(%v) = %q, want %q", tc.m, got, tc.want)
		}
	}
}

func TestFixed(t *testing.T) {
	for _, tc := range []struct {
		v        float64
		decimals int
		want     string
	}{{2, 2, "2"}, {2.50, 2, "2.5"}, {100, 0, "100"}, {-0.001, 2, "0"}, {0.0217, 4, "0.0217"}} {
		if got := Fixed(tc.v, tc.decimals); got != tc.want {
			t.Errorf("fixed(%v, %d) = %q, want %q", tc.v, tc.decimals, got, tc.want)
		}
	}
}
