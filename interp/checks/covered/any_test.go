package covered_test

import (
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"pullscore/interp/plan"
	"pullscore/interp/testing/staged"
	"pullscore/lang"
)

// Whatever a scene comes to, something can be told of it: parts that end before they
// begin, times that are none, cuts to nowhere, shots without people.
func TestAnyScene(t *testing.T) {
	rng := rand.New(rand.NewPCG(11, 4))
	odd := []float64{math.NaN(), math.Inf(1), -3, 0, 5.4, 8.7, 1e9}
	times := func() plan.Number { return plan.Number(odd[rng.IntN(len(odd))]) }
	codes := map[string]int{}
	for range 400 {
		st := staged.TwoHander()
		for range rng.IntN(4) {
			st.Cut([]string{"12A", "12B", "12C", "12X", ""}[rng.IntN(5)], float64(times()))
		}
		s := st.Shots[rng.IntN(3)]
		switch rng.IntN(6) {
		case 0:
			s.Covers = plan.Interval{times(), times()}
		case 1:
			s.Duration = times()
		case 2:
			s.Subjects = nil
		case 3:
			s.Optics.Start = plan.Target{Name: "NOBODY", Distance: float64(times())}
		case 4:
			s.Optics.Rig = nil
		case 5:
			l := &st.Scene.Lines[rng.IntN(4)]
			l.Words[0].Start, l.Words[len(l.Words)-1].End = float64(times()), float64(times())
		}
		for _, d := range told(t, st) {
			codes[d.Code]++
			if d.Message == "" || strings.Contains(d.Message, "%!") || slices.ContainsFunc(d.Cures, func(c lang.Cure) bool { return strings.Contains(c.Text, "NaN") || c.Value < 0 }) {
				t.Errorf("%+v", d)
			}
			for _, f := range d.Figures {
				if math.IsNaN(f.Value) || math.IsInf(f.Value, 0) {
					t.Errorf("%s: the figure %s is %v", d.Message, f.Name, f.Value)
				}
			}
		}
	}
	for _, code := range []string{"not-held", "not-covered", "not-on-screen", "focus-jumps"} {
		if codes[code] == 0 {
			t.Errorf("%s was never told: %v", code, codes)
		}
	}
}
