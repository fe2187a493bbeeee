// The time of a movement, against an independent model: its recordings, and the
// figures of its own threshold and fit, written apart from these.

package recorded

import (
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"pullscore/interp/hand"
)

// made returns the motion of angles at times.
func made(times, angles []float64) *motion {
	m := &motion{time: times, hand: angles}
	for i, h := range angles {
		m.frames = append(m.frames, Frame{Number: int64(i), Ring: h, read: h})
	}
	m.measure()
	return m
}

// byThreshold returns how long a motion lasts by its speed alone.
func byThreshold(m *motion) float64 {
	peak := 0
	for k, v := range m.speed {
		if v > m.speed[peak] {
			peak = k
		}
	}
	onset, landing := m.ends(peak, make([]bool, len(m.frames)))
	return m.time[landing] - m.time[onset]
}

// A coarse is how a pull so long was recorded in such steps.
type coarse struct{ lasts, step float64 }

// recordings returns the angles of the pulls that the model made.
func recordings(t *testing.T) map[coarse][][]float64 {
	t.Helper()
	data, err := os.ReadFile(filepath.Join("testdata", "coarse.tsv"))
	if err != nil {
		t.Fatal(err)
	}
	list := map[coarse][][]float64{}
	number := func(text string) float64 {
		v, err := strconv.ParseFloat(text, 64)
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
	for line := range strings.Lines(string(data)) {
		fields := strings.Split(strings.TrimSpace(line), "\t")
		if len(fields) != 3 || fields[0] == "seconds" {
			continue
		}
		c := coarse{number(fields[0]), number(fields[1])}
		var angles []float64
		for _, steps := range strings.Fields(fields[2]) {
			angles = append(angles, number(steps)*c.step)
		}
		list[c] = append(list[c], angles)
	}
	return list
}

// frameTimes are the times of so many frames at 24 a second.
func frameTimes(n int) (times []float64) {
	for i := range n {
		times = append(times, float64(i)/24)
	}
	return times
}

func meanAndSpread(list []float64) (mean, sd float64) {
	for _, v := range list {
		mean += v / float64(len(list))
	}
	for _, v := range list {
		sd += (v - mean) * (v - mean) / float64(len(list))
	}
	return mean, math.Sqrt(sd)
}

// Both ways to time a movement err as they do in the model: mean error and
// standard deviation over its 40 recordings of each kind, in seconds.
func TestMovementTimes(t *testing.T) {
	type figure struct{ mean, sd float64 }
	want := map[coarse]struct{ threshold, fit figure }{
		{0.6, 0.5}: {figure{0.028125, 0.084568}, figure{0.000083, 0.0024987}},
		{1.2, 0.5}: {figure{-0.092708, 0.04648}, figure{-0.000514, 0.0033904}},
		{1.2, 1.5}: {figure{-0.20312, 0.048758}, figure{0.00047928, 0.012376}},
		{2.5, 1.5}: {figure{-0.75208, 0.12975}, figure{0.0047589, 0.017688}},
	}
	made40 := recordings(t)
	for c, want := range want {
		if len(made40[c]) != 40 {
			t.Fatalf("%+v: %d recordings", c, len(made40[c]))
		}
		var threshold, fitted []float64
		for _, angles := range made40[c] {
			times := frameTimes(len(angles))
			threshold = append(threshold, byThreshold(made(times, angles))-c.lasts)
			f, ok := fitMovement(times, angles, false)
			if !ok {
				t.Fatalf("%+v: no fit to %v", c, angles)
			}
			fitted = append(fitted, f.lasts-c.lasts)
		}
		for name, figures := range map[string]struct {
			got  []float64
			want figure
		}{"threshold": {threshold, want.threshold}, "fit": {fitted, want.fit}} {
			mean, sd := meanAndSpread(figures.got)
			if math.Abs(mean-figures.want.mean) > 2e-4 || math.Abs(sd-figures.want.sd) > 2e-4 {
				t.Errorf("%+v, by the %s: %g (%g), want %g (%g)", c, name, mean, sd, figures.want.mean, figures.want.sd)
			}
		}
	}
}

// A pull of 0.8 s with a correction of a twentieth until 1.3 s after its start,
// in steps of half a degree: the figures of the model, which has no chance in it.
// What is left of the correction is too small to be told from rest, so that even
// the time to the rest is 0.16 s short.
func TestCorrection(t *testing.T) {
	times, angles := frameTimes(60), []float64{}
	for _, at := range times {
		h := 57*profile(false)((at-0.5)/0.8) + 3*profile(false)((at-1.4)/0.4)
		angles = append(angles, math.RoundToEven(h/0.5)*0.5)
	}
	f, ok := fitMovement(times, angles, false)
	if !ok {
		t.Fatal("no fit")
	}
	rest := max(f.lasts, restAfter(times, angles, 60, max(1.5*0.5, 0.02*60))-f.start)
	for _, c := range []struct {
		name      string
		got, want float64
	}{{"time of the fit, s", f.lasts, 0.84988}, {"what it leaves, share of the travel", f.rms / 60, 0.014991}, {"time to the rest, s", rest, 1.1396}} {
		if math.Abs(c.got-c.want) > 2e-4 {
			t.Errorf("%s: %g, want %g", c.name, c.got, c.want)
		}
	}
}

// A curve without steps or noise is found as it was made, evenly too.
func TestFitIsExact(t *testing.T) {
	for _, even := range []bool{false, true} {
		for _, lasts := range []float64{0.25, 0.6, 1.1, 3, 8} {
			var times, angles []float64
			for i := range int((lasts + 1) * 48) {
				at := float64(i) / 48
				times, angles = append(times, at), append(angles, 5+70*profile(even)((at-0.47)/lasts))
			}
			f, ok := fitMovement(times, angles, even)
			if !ok || math.Abs(f.start-0.47) > 1e-3 || math.Abs(f.lasts-lasts) > 2e-3 || f.rms > 0.01 {
				t.Errorf("even %t, %g s: %+v", even, lasts, f)
			}
		}
	}
	if _, ok := fitMovement([]float64{0, 1, 2}, []float64{3, 3, 3}, false); ok {
		t.Error("rest is fitted by a movement")
	}
	if u := (hand.MinJerkTime(0.75) - hand.MinJerkTime(0.25)); math.Abs(u-middle) > 1e-4 {
		t.Errorf("minimum jerk goes from a quarter to three quarters in %g of its time", u)
	}
}
