package plan

import "testing"

func TestPercentOf(t *testing.T) {
	for _, tc := range []struct {
		p, wanted float64
		want      string
	}{
		{0.84, 0.9, "84 %"}, {0.897, 0.9, "under 90 %"}, {0.9, 0.9, "90 %"}, {0.904, 0.9, "90 %"},
		{0.9991, 0.9995, "over 99 %"}, {0.001, 0.9, "under 1 %"}, {0.999, 0.9, "over 99 %"},
	} {
		if got := PercentOf(tc.p, tc.wanted); got != tc.want {
			t.Errorf("PercentOf(%v, %v) = %q, want %q", tc.p, tc.wanted, got, tc.want)
		}
	}
}
