package foreign

import (
	"math"
	"testing"

	"pullscore/interp"
)

// scene is a plan that uses the kit's lens, so that its law can be asked for.
const scene = `camera Z
  sensor 24.89 x 18.66 mm
  on tripod
subject ADA at 2 m
shot 1
  with camera Z, lens "my", stop f/2.8
  start on ADA
  hold 2 s
`

// From a recording to the law of the plan: with the blanks filled in, angles are
// those of the ring that was recorded, within what the plan says of them.
func TestRecordedRingIsRead(t *testing.T) {
	const throw, closest = 280, 0.6
	law := func(p float64) float64 { return p * (1.3 - 0.3*p) }
	for _, n := range []int{5, 16, 40, 400} {
		recording := `{"static":{"lens":{"nominalFocalLength":50}},"lens":{"fStop":2}} {"lens":{"fStop":16}}` + lawful(n, closest, 0, 1, law)
		k := kitOf(t, recording, "my")
		text := string(filled(k.Text, "60 cm")) + scene
		res := interp.Interpret("f.pull", []byte(text), interp.Options{})
		if len(res.Plan.Shots) != 1 || res.Plan.Shots[0].Optics.Ring == nil {
			t.Fatalf("%s\n%s", text, says(res.Findings))
		}
		ring := res.Plan.Shots[0].Optics.Ring
		worst := 0.0
		for _, d := range []float64{closest, 0.65, 0.8, 1, 1.5, 2, 4, 10, math.Inf(1)} {
			want := throw * (1 - law(closest/d))
			off := math.Abs(ring.Angle(d) - want)
			if off > 2*ring.Sigma(d)+0.01 || math.IsNaN(off) {
				t.Errorf("%d readings: %v m at %v deg, want %v, known to %v", n, d, ring.Angle(d), want, 2*ring.Sigma(d))
			}
			worst = max(worst, off)
		}
		t.Logf("%d readings: off by %.2f deg at most", n, worst)
		if n > 10 && worst > 1 {
			t.Errorf("%d readings: off by %.2f deg", n, worst)
		}
	}
}
