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
var longThrow = []Mark{{Distance: 0.75, Angle: 0}, {Distance: 1, Angle: 118}, {Distance: 2, Angle: 240}, {Distance: 5, Angle: 290}, {Distance: inf, Angle: 310}}

// shape is that of a lens of 50 mm with a throw.
func shape(throw float64) Shape { return Shape{Focal: 0.05, Throw: throw, Reading: 0.5} }

func mustFromMarks(t testing.TB, marks []Mark, throw float64) *Law {
	t.Helper()
	law, err := FromMarks(marks, shape(throw))
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
		law, err := FromMarks(marks, shape(math.NaN()))
		if err != nil {
			t.Fatal(err)
		}
		for _, m := range marks {
			if angle := law.Angle(m.Distance); !(math.Abs(angle-m.Angle) <= 1e-12*law.Throw()) {
				t.Errorf("Angle(%v) = %v, marked %v", m.Distance, angle, m.Angle)
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
		law, err := FromMarks(marks, shape(marks[len(marks)-1].Angle+rapid.Float64Range(0, 20).Draw(t, "more throw")))
		if err != nil {
			t.Fatal(err)
		}
		first, last := marks[0], marks[len(marks)-1]
		near, far := coordinate(first.Distance, law.Origin()), coordinate(last.Distance, law.Origin())
		previous := -1.0
		for i := range 500 {
			d := law.Origin() + 1/max(far, near+(far-near)*float64(i)/499)
			angle := law.Angle(min(max(d, first.Distance), last.Distance))
			if !(angle >= previous) {
				t.Fatalf("Angle(%v) = %v, less than %v just nearer", d, angle, previous)
			}
			previous = angle
		}
		distance := law.Distance(first.Angle)
		for i := range 200 {
			d := law.Distance(first.Angle + (last.Angle-first.Angle)*float64(i+1)/200)
			if !(d >= distance) {
				t.Fatalf("Distance falls from %v to %v", distance, d)
			}
			distance = d
		}
	})
}

func TestMarksRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		marks := markings(t)
		law, err := FromMarks(marks, shape(marks[len(marks)-1].Angle+rapid.Float64Range(0, 20).Draw(t, "more throw")))
		if err != nil {
			t.Fatal(err)
		}
		checkRoundTrip(t, law, marks[0].Distance, min(1000, marks[len(marks)-1].Distance))
	})
}

func TestMarksAreFritschButland(t *testing.T) {
	// gonum's interpolant of the same points; 2f is less than half of 50 cm.
	marks := []Mark{{Distance: 0.5, Angle: 0}, {Distance: 0.6, Angle: 40}, {Distance: 0.8, Angle: 85}, {Distance: 1.2, Angle: 130}, {Distance: 2, Angle: 160}, {Distance: 4, Angle: 180}, {Distance: inf, Angle: 200}}
	law := mustFromMarks(t, marks, math.NaN())
	var qs, angles []float64
	for _, m := range slices.Backward(marks) {
		qs, angles = append(qs, 1/(m.Distance-0.1)), append(angles, m.Angle)
	}
	var general interp.FritschButland
	if err := general.Fit(qs, angles); err != nil {
		t.Fatal(err)
	}
	for d := 0.5; d <= 40; d *= 1.005 {
		if got := law.Angle(d); !agree(got, general.Predict(1/(d-0.1)), 1e-12) {
			t.Errorf("Angle(%v) = %v, gonum has %v", d, got, general.Predict(1/(d-0.1)))
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
		angle := unit.Angle(d)
		marks = append(marks, Mark{Distance: d, Angle: angle})
	}
	law := mustFromMarks(t, marks, math.NaN())
	for d := 0.5; d < 20; d *= 1.01 {
		want := unit.Angle(d)
		if got := law.Angle(d); math.Abs(got-want) > 0.25 {
			t.Errorf("Angle(%v) = %v, the lens has %v", d, got, want)
		}
	}
}

func TestOuterMarksAreNeverFlat(t *testing.T) {
	// The outer spans turn ten times less per q than those inside them, where the
	// plain interpolant lies flat at the last mark.
	at := func(q float64) float64 { return 0.1 + 1/q }
	law := mustFromMarks(t, []Mark{{Distance: at(2.5), Angle: 0}, {Distance: at(2), Angle: 7.5}, {Distance: at(1.5), Angle: 82.5}, {Distance: at(0.5), Angle: 232.5}, {Distance: inf, Angle: 240}}, math.NaN())
	for d := 0.5; d < 1e5; d *= 1.1 {
		angle := law.Angle(d)
		if got := law.Distance(angle); !agree(got, d, 1e-9) {
			t.Errorf("Distance(Angle(%v) = %v) = %v", d, angle, got)
		}
	}
	const q = 1e-6 // 1/m, so near the outer marks that the cubic is its slope
	const want = 7.5 / 0.5 / 3
	far := law.Angle(at(q))
	if got := (240 - far) / q; !agree(got, want, 1e-3) {
		t.Errorf("slope at infinity is %v deg m, want a third of the secant, %v", got, want)
	}
	near := law.Angle(at(2.5 - q))
	if got := near / q; !agree(got, want, 1e-3) {
		t.Errorf("slope at the closest mark is %v deg m, want a third of the secant, %v", got, want)
	}
}

func TestBeyondTheMarksNothingIsKnown(t *testing.T) {
	marks := []Mark{{Distance: 0.5, Angle: 20}, {Distance: 1, Angle: 120}, {Distance: 2, Angle: 150}}
	nan := math.NaN()
	for _, c := range []struct {
		throw                 float64
		distance, angle, held float64
	}{
		{200, 0.3, nan, 20},
		{200, 0.4999, nan, 20},
		{200, 0.5 * (1 - 1e-12), 20, 20},
		{200, 0.5, 20, 20},
		{200, 2, 150, 150},
		{200, 2 * (1 + 1e-12), 150, 150},
		{200, 2.0001, nan, 150},
		{200, inf, nan, 150},
		{nan, inf, nan, 150},
		{nan, nan, nan, nan},
	} {
		law := mustFromMarks(t, marks, c.throw)
		if got := law.Angle(c.distance); !alike(got, c.angle) {
			t.Errorf("throw %v: Angle(%v) = %v, want %v", c.throw, c.distance, got, c.angle)
		}
		if got := law.Held(c.distance); !alike(got, c.held) {
			t.Errorf("throw %v: Held(%v) = %v, want %v", c.throw, c.distance, got, c.held)
		}
	}
	law := mustFromMarks(t, marks, 200)
	for angle, want := range map[float64]float64{-1: nan, 0: nan, 10: nan, 20: 0.5, 150: 2, 165: nan, nan: nan} {
		if got := law.Distance(angle); !alike(got, want) {
			t.Errorf("Distance(%v) = %v, want %v", angle, got, want)
		}
	}
	if near, far := law.Stops(); near || !far || law.Closest() != 0.5 || law.Farthest() != 2 || law.Throw() != 200 {
		t.Errorf("stops %v %v, from %v to %v, throw %v", near, far, law.Closest(), law.Farthest(), law.Throw())
	}
	if near, far := mustFromMarks(t, marks, nan).Stops(); near || far {
		t.Errorf("without a throw: stops %v %v", near, far)
	}
}

// alike reports whether two figures agree to 1e-9; NaN is like NaN.
func alike(a, b float64) bool {
	return a == b || math.IsNaN(a) && math.IsNaN(b) || math.Abs(a-b) <= 1e-9
}

func TestTravelBeyondInfinity(t *testing.T) {
	law := mustFromMarks(t, longThrow, 320)
	for angle, want := range map[float64]float64{-5: 0.75, 0: 0.75, 310: inf, 315: inf, 320: inf, 330: inf} {
		if got := law.Distance(angle); got != want {
			t.Errorf("Distance(%v) = %v, want %v", angle, got, want)
		}
	}
	if near, far := law.Stops(); !near || !far || law.Throw() != 320 || law.Angle(inf) != 310 {
		t.Errorf("stops %v %v, throw %v, infinity at %v", near, far, law.Throw(), law.Angle(inf))
	}
}

func TestTheLawHasNoKinkBetweenItsEnds(t *testing.T) {
	law := mustFromMarks(t, longThrow, math.NaN())
	for _, m := range longThrow[1 : len(longThrow)-1] {
		const step = 1e-6
		at := law.Angle(m.Distance)
		after := law.Angle(1 / (1/m.Distance - step))
		before := law.Angle(1 / (1/m.Distance + step))
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
		{"distance falls", []Mark{{Distance: 1, Angle: 0}, {Distance: 2, Angle: 50}, {Distance: 1.5, Angle: 90}}, nan, 2, DistanceOrder},
		{"distance twice", []Mark{{Distance: 1, Angle: 0}, {Distance: 1, Angle: 50}}, nan, 1, DistanceOrder},
		{"infinity twice", []Mark{{Distance: 1, Angle: 0}, {Distance: inf, Angle: 50}, {Distance: inf, Angle: 60}}, nan, 2, DistanceOrder},
		{"after infinity", []Mark{{Distance: 1, Angle: 0}, {Distance: inf, Angle: 50}, {Distance: 5, Angle: 60}}, nan, 2, DistanceOrder},
		{"too close to tell", []Mark{{Distance: 1, Angle: 0}, {Distance: 1 + 1e-12, Angle: 50}}, nan, 1, DistanceOrder},
		{"as good as infinity", []Mark{{Distance: 1, Angle: 0}, {Distance: 1e200, Angle: 50}, {Distance: inf, Angle: 60}}, nan, 2, DistanceOrder},
		{"angle falls", []Mark{{Distance: 1, Angle: 0}, {Distance: 2, Angle: 50}, {Distance: 3, Angle: 40}, {Distance: 4, Angle: 30}}, nan, 2, AngleOrder},
		{"angle twice", []Mark{{Distance: 1, Angle: 0}, {Distance: 2, Angle: 0}}, nan, 1, AngleOrder},
		{"angle below 0", []Mark{{Distance: 1, Angle: -1}, {Distance: 2, Angle: 50}}, nan, 0, BadAngle},
		{"angle too little", []Mark{{Distance: 1, Angle: 0}, {Distance: 2, Angle: 1e-9}}, nan, 1, AngleOrder},
		{"angle of no ring", []Mark{{Distance: 1, Angle: 0}, {Distance: 2, Angle: 1e300}}, nan, 1, BadAngle},
		{"angle NaN", []Mark{{Distance: 1, Angle: 0}, {Distance: 2, Angle: nan}}, 90, 1, BadAngle},
		{"angle infinite", []Mark{{Distance: 1, Angle: 0}, {Distance: 2, Angle: inf}}, 90, 1, BadAngle},
		{"distance 0", []Mark{{Distance: 0, Angle: 0}, {Distance: 2, Angle: 50}}, nan, 0, BadDistance},
		{"distance below 0", []Mark{{Distance: -1, Angle: 0}, {Distance: 2, Angle: 50}}, nan, 0, BadDistance},
		{"distance NaN", []Mark{{Distance: 1, Angle: 0}, {Distance: nan, Angle: 50}}, nan, 1, BadDistance},
		{"beyond the throw", []Mark{{Distance: 1, Angle: 0}, {Distance: 2, Angle: 50}, {Distance: 3, Angle: 100}}, 90, 2, BeyondThrow},
	} {
		t.Run(c.name, func(t *testing.T) {
			law, err := FromMarks(c.marks, shape(c.throw))
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
	for _, marks := range [][]Mark{nil, {{Distance: 1, Angle: 0}}} {
		if _, err := FromMarks(marks, shape(90)); !errors.Is(err, ErrFewMarks) {
			t.Errorf("%d marks: %v", len(marks), err)
		}
	}
	for _, throw := range []float64{0, -90, inf} {
		if _, err := FromMarks(longThrow, shape(throw)); !errors.Is(err, ErrThrow) {
			t.Errorf("throw %v: %v", throw, err)
		}
	}
}

func TestMarkErrorCountsFromOne(t *testing.T) {
	_, err := FromMarks([]Mark{{Distance: 1, Angle: 0}, {Distance: 0.5, Angle: 50}}, shape(90))
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
		law, err := FromMarks([]Mark{{Distance: d0, Angle: a0}, {Distance: d1, Angle: a1}, {Distance: d2, Angle: a2}}, shape(throw))
		if err != nil {
			return
		}
		closest, previous := law.Closest(), 0.0
		from, to := law.Angle(closest), law.Angle(law.Farthest())
		for i := range 21 {
			angle := from + (to-from)*float64(i)/20
			d := law.Distance(angle)
			if math.IsNaN(d) || d < closest {
				t.Fatalf("Distance(%v) = %v", angle, d)
			}
			back := law.Angle(d)
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
