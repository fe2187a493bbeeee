// The law through marks: the marks themselves, its order, its inverse.

package ring

import (
	"errors"
	"math"
	"slices"
	"sync"
	"testing"

	"gonum.org/v1/gonum/interp"
	"pgregory.net/rapid"
)

var inf = math.Inf(1)

// longThrow is a lens of our own: 75 cm to infinity in 310 degrees.
var longThrow = []Mark{{0.75, 0}, {1, 118}, {2, 240}, {5, 290}, {inf, 310}}

func mustFromMarks(t testing.TB, marks []Mark, throw float64) *Law {
	t.Helper()
	law, err := FromMarks(marks, throw)
	if err != nil {
		t.Fatal(err)
	}
	return law
}

// markings draws two to nine marks that a ring could have, half of them with
// one at infinity.
func markings(t *rapid.T) []Mark {
	n := rapid.IntRange(2, 9).Draw(t, "marks")
	marks := make([]Mark, n)
	d := rapid.Float64Range(0.2, 1).Draw(t, "closest")
	a := rapid.Float64Range(0, 10).Draw(t, "first angle")
	for i := range marks {
		marks[i] = Mark{Distance: d, Angle: a}
		d *= rapid.Float64Range(1.05, 2.5).Draw(t, "ratio")
		a += rapid.Float64Range(1, 60).Draw(t, "turn")
	}
	if rapid.Bool().Draw(t, "infinity") {
		marks[n-1].Distance = inf
	}
	return marks
}

func TestMarksAreKept(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		marks := markings(t)
		law, err := FromMarks(marks, math.NaN())
		if err != nil {
			t.Fatal(err)
		}
		for _, m := range marks {
			if angle, inside := law.Angle(m.Distance); !inside || math.Abs(angle-m.Angle) > 1e-12*law.Throw() {
				t.Errorf("Angle(%v) = %v, %v, marked %v", m.Distance, angle, inside, m.Angle)
			}
			if d := law.Distance(m.Angle); !agree(d, m.Distance, 1e-9) {
				t.Errorf("Distance(%v) = %v, marked %v", m.Angle, d, m.Distance)
			}
		}
		if !slices.Equal(law.Marks(), marks) || law.Throw() != marks[len(marks)-1].Angle {
			t.Errorf("marks %v, throw %v", law.Marks(), law.Throw())
		}
	})
}

func TestMarksRise(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		marks := markings(t)
		law, err := FromMarks(marks, marks[len(marks)-1].Angle+rapid.Float64Range(0, 20).Draw(t, "more throw"))
		if err != nil {
			t.Fatal(err)
		}
		previous, _ := law.Angle(0.1)
		for u := 10.0; u > 0; u -= 0.02 {
			angle, _ := law.Angle(1 / u)
			if angle < previous {
				t.Fatalf("Angle(%v) = %v, less than %v just nearer", 1/u, angle, previous)
			}
			previous = angle
		}
		distance := law.Distance(0)
		for i := range 200 {
			d := law.Distance(law.Throw() * float64(i+1) / 200)
			if d < distance {
				t.Fatalf("Distance falls from %v to %v", distance, d)
			}
			distance = d
		}
	})
}

func TestMarksRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		marks := markings(t)
		law, err := FromMarks(marks, marks[len(marks)-1].Angle+rapid.Float64Range(0, 20).Draw(t, "more throw"))
		if err != nil {
			t.Fatal(err)
		}
		checkRoundTrip(t, law, marks[0].Distance, 1000)
	})
}

func TestMarksAreFritschButland(t *testing.T) {
	// gonum's interpolant of the same points.
	marks := []Mark{{0.5, 0}, {0.6, 40}, {0.8, 85}, {1.2, 130}, {2, 160}, {4, 180}, {inf, 200}}
	law := mustFromMarks(t, marks, math.NaN())
	var us, angles []float64
	for _, m := range slices.Backward(marks) {
		us, angles = append(us, 1/m.Distance), append(angles, m.Angle)
	}
	var general interp.FritschButland
	if err := general.Fit(us, angles); err != nil {
		t.Fatal(err)
	}
	for d := 0.5; d <= 40; d *= 1.005 {
		if got, _ := law.Angle(d); !agree(got, general.Predict(1/d), 1e-12) {
			t.Errorf("Angle(%v) = %v, gonum has %v", d, got, general.Predict(1/d))
		}
	}
}

func TestMarksReadOffALensGiveItBack(t *testing.T) {
	// The usual engravings of a 50 mm lens, at the angles that its focusing
	// movement gives them: between the marks the law must be that movement.
	unit, err := Unit(0.05, 0.5, 200)
	if err != nil {
		t.Fatal(err)
	}
	var marks []Mark
	for _, d := range []float64{0.5, 0.6, 0.7, 0.8, 1, 1.2, 1.5, 2, 3, 5, inf} {
		angle, _ := unit.Angle(d)
		marks = append(marks, Mark{d, angle})
	}
	law := mustFromMarks(t, marks, math.NaN())
	for d := 0.5; d < 20; d *= 1.01 {
		want, _ := unit.Angle(d)
		if got, _ := law.Angle(d); math.Abs(got-want) > 0.25 {
			t.Errorf("Angle(%v) = %v, the lens has %v", d, got, want)
		}
	}
}

func TestOuterMarksAreNeverFlat(t *testing.T) {
	// The outer spans turn ten times less per 1/distance than those inside them,
	// where the plain interpolant lies flat at the last mark.
	law := mustFromMarks(t, []Mark{{0.5, 0}, {2.0 / 3, 7.5}, {1, 82.5}, {2, 157.5}, {inf, 165}}, math.NaN())
	for d := 0.5; d < 1e5; d *= 1.1 {
		angle, _ := law.Angle(d)
		if got := law.Distance(angle); !agree(got, d, 1e-9) {
			t.Errorf("Distance(Angle(%v) = %v) = %v", d, angle, got)
		}
	}
	const u = 1e-6 // 1/m, so near the outer marks that the cubic is its slope
	const want = 7.5 / 0.5 / 3
	far, _ := law.Angle(1 / u)
	if got := (165 - far) / u; !agree(got, want, 1e-3) {
		t.Errorf("slope at infinity is %v deg m, want a third of the secant, %v", got, want)
	}
	near, _ := law.Angle(1 / (2 - u))
	if got := near / u; !agree(got, want, 1e-3) {
		t.Errorf("slope at the closest mark is %v deg m, want a third of the secant, %v", got, want)
	}
}

func TestBeyondTheMarksIsTheLine(t *testing.T) {
	// In 1/distance the outer marks make lines of 100 deg per 1/m near and 60
	// deg per 1/m far.
	marks := []Mark{{0.5, 20}, {1, 120}, {2, 150}}
	law := mustFromMarks(t, marks, 200)
	for _, c := range []struct {
		distance, angle float64
		inside          bool
	}{
		{1 / 2.1, 10, false},
		{1 / 2.2, 0, false}, // 20 deg short of the first mark: the stop
		{0.3, 0, false},
		{4, 165, false},
		{inf, 180, false},
		{0.5, 20, true},
		{2, 150, true},
	} {
		if angle, inside := law.Angle(c.distance); math.Abs(angle-c.angle) > 1e-9 || inside != c.inside {
			t.Errorf("Angle(%v) = %v, %v, want %v, %v", c.distance, angle, inside, c.angle, c.inside)
		}
	}
	for angle, want := range map[float64]float64{-1: 1 / 2.2, 0: 1 / 2.2, 10: 1 / 2.1, 165: 4, 180: inf, 190: inf, 300: inf} {
		if got := law.Distance(angle); !agree(got, want, 1e-12) {
			t.Errorf("Distance(%v) = %v, want %v", angle, got, want)
		}
	}
	if got := law.Closest(); !agree(got, 1/2.2, 1e-12) {
		t.Errorf("Closest() = %v", got)
	}
}

func TestRingEndsBeforeInfinity(t *testing.T) {
	law := mustFromMarks(t, []Mark{{0.5, 0}, {1, 100}, {2, 150}}, 160)
	want := 1 / (0.5 - 10/100.0)
	if got := law.Distance(160); !agree(got, want, 1e-12) {
		t.Errorf("the ring ends at %v, want %v", got, want)
	}
	if angle, inside := law.Angle(inf); angle != 160 || inside {
		t.Errorf("Angle(+Inf) = %v, %v, want it held", angle, inside)
	}
}

func TestTheLawHasNoKinkBetweenItsEnds(t *testing.T) {
	law := mustFromMarks(t, longThrow, math.NaN())
	for _, m := range longThrow[1 : len(longThrow)-1] {
		const step = 1e-6
		at, _ := law.Angle(m.Distance)
		after, _ := law.Angle(1 / (1/m.Distance - step))
		before, _ := law.Angle(1 / (1/m.Distance + step))
		if far, near := (after-at)/step, (at-before)/step; !agree(far, near, 1e-3) {
			t.Errorf("slope at %v m is %v before, %v after", m.Distance, near, far)
		}
	}
}

func TestMarkFaults(t *testing.T) {
	nan := math.NaN()
	for _, c := range []struct {
		name  string
		marks []Mark
		throw float64
		index int
		fault Fault
	}{
		{"distance falls", []Mark{{1, 0}, {2, 50}, {1.5, 90}}, nan, 2, DistanceOrder},
		{"distance twice", []Mark{{1, 0}, {1, 50}}, nan, 1, DistanceOrder},
		{"infinity twice", []Mark{{1, 0}, {inf, 50}, {inf, 60}}, nan, 2, DistanceOrder},
		{"after infinity", []Mark{{1, 0}, {inf, 50}, {5, 60}}, nan, 2, DistanceOrder},
		{"too close to tell", []Mark{{1, 0}, {1 + 1e-12, 50}}, nan, 1, DistanceOrder},
		{"as good as infinity", []Mark{{1, 0}, {1e200, 50}, {inf, 60}}, nan, 2, DistanceOrder},
		{"angle falls", []Mark{{1, 0}, {2, 50}, {3, 40}, {4, 30}}, nan, 2, AngleOrder},
		{"angle twice", []Mark{{1, 0}, {2, 0}}, nan, 1, AngleOrder},
		{"angle below 0", []Mark{{1, -1}, {2, 50}}, nan, 0, BadAngle},
		{"angle too little", []Mark{{1, 0}, {2, 1e-9}}, nan, 1, AngleOrder},
		{"angle of no ring", []Mark{{1, 0}, {2, 1e300}}, nan, 1, BadAngle},
		{"angle NaN", []Mark{{1, 0}, {2, nan}}, 90, 1, BadAngle},
		{"angle infinite", []Mark{{1, 0}, {2, inf}}, 90, 1, BadAngle},
		{"distance 0", []Mark{{0, 0}, {2, 50}}, nan, 0, BadDistance},
		{"distance below 0", []Mark{{-1, 0}, {2, 50}}, nan, 0, BadDistance},
		{"distance NaN", []Mark{{1, 0}, {nan, 50}}, nan, 1, BadDistance},
		{"beyond the throw", []Mark{{1, 0}, {2, 50}, {3, 100}}, 90, 2, BeyondThrow},
	} {
		t.Run(c.name, func(t *testing.T) {
			law, err := FromMarks(c.marks, c.throw)
			var fault *MarkError
			if !errors.As(err, &fault) || law != nil {
				t.Fatalf("got %v, %v", law, err)
			}
			if fault.Index != c.index || fault.Fault != c.fault {
				t.Errorf("got %v, want mark %d: %v", err, c.index+1, c.fault)
			}
		})
	}
}

func TestFewMarksAndBadThrow(t *testing.T) {
	for _, marks := range [][]Mark{nil, {{1, 0}}} {
		if _, err := FromMarks(marks, 90); !errors.Is(err, ErrFewMarks) {
			t.Errorf("%d marks: %v", len(marks), err)
		}
	}
	for _, throw := range []float64{0, -90, inf} {
		if _, err := FromMarks(longThrow, throw); !errors.Is(err, ErrThrow) {
			t.Errorf("throw %v: %v", throw, err)
		}
	}
}

func TestMarkErrorCountsFromOne(t *testing.T) {
	_, err := FromMarks([]Mark{{1, 0}, {0.5, 50}}, 90)
	const want = "ring: mark 2 (0.5 m at 50 deg): distance is not farther than that of the mark before it"
	if err == nil || err.Error() != want {
		t.Errorf("got %v, want %s", err, want)
	}
}

func TestLawIsTheCallersOwn(t *testing.T) {
	marks := slices.Clone(longThrow)
	law := mustFromMarks(t, marks, math.NaN())
	marks[1].Angle = 7
	law.Marks()[2].Angle = 7
	if !slices.Equal(law.Marks(), longThrow) {
		t.Errorf("the law shares its marks: %v", law.Marks())
	}
}

func TestLawServesManyAtOnce(t *testing.T) {
	law := mustFromMarks(t, longThrow, math.NaN())
	want := law.Distance(200)
	var wait sync.WaitGroup
	for range 8 {
		wait.Go(func() {
			for range 1000 {
				if got := law.Distance(200); got != want {
					t.Errorf("got %v, want %v", got, want)
					return
				}
			}
		})
	}
	wait.Wait()
}

// FuzzFromMarks feeds three marks as a file may have them: either an error, or
// a law that rises and has no NaN.
func FuzzFromMarks(f *testing.F) {
	f.Add(0.75, 0.0, 1.0, 118.0, inf, 310.0, 310.0)
	f.Add(0.5, 20.0, 1.0, 120.0, 2.0, 150.0, math.NaN())
	f.Add(1.0, 0.0, 1e200, 50.0, inf, 60.0, 90.0)
	f.Add(1e-3, 0.0, 2e-3, 1e-6, 3e-3, 1e5, 1e300)
	f.Fuzz(func(t *testing.T, d0, a0, d1, a1, d2, a2, throw float64) {
		law, err := FromMarks([]Mark{{d0, a0}, {d1, a1}, {d2, a2}}, throw)
		if err != nil {
			return
		}
		closest, previous := law.Closest(), 0.0
		for i := range 21 {
			angle := law.Throw() * float64(i) / 20
			d := law.Distance(angle)
			if math.IsNaN(d) || d < closest {
				t.Fatalf("Distance(%v) = %v", angle, d)
			}
			back, _ := law.Angle(d)
			if math.IsNaN(back) || back < previous-1e-9*law.Throw() || back > law.Throw() {
				t.Fatalf("Angle(%v) = %v after %v", d, back, previous)
			}
			previous = back
		}
	})
}

func BenchmarkAngle(b *testing.B) {
	law := mustFromMarks(b, longThrow, math.NaN())
	for i := 0; b.Loop(); i++ {
		law.Angle(0.75 + float64(i%1000)/100)
	}
}

func BenchmarkDistance(b *testing.B) {
	law := mustFromMarks(b, longThrow, math.NaN())
	for i := 0; b.Loop(); i++ {
		law.Distance(float64(i % 310))
	}
}

func BenchmarkUnitDistance(b *testing.B) {
	law, err := Unit(0.05, 0.5, 200)
	if err != nil {
		b.Fatal(err)
	}
	for i := 0; b.Loop(); i++ {
		law.Distance(float64(i % 200))
	}
}
