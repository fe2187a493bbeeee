// Near lenses, squeeze and crop: what holds for every lens. The figures themselves are
// checked in interp against testdata/lens-cases.tsv.

package optics

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

func TestCloseupIsUndone(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		x := rapid.Float64Range(0.2, 100).Draw(t, "x")
		power := rapid.Float64Range(0, 5).Draw(t, "power")
		d := Closeup(x, power)
		if got := CloseupSetting(d, power); math.Abs(got-x) > 1e-9*x*(1+power*x) {
			t.Errorf("a lens at %v m behind %v is sharp at %v; set for that it is at %v", x, power, d, got)
		}
		if power == 0 && d != x {
			t.Errorf("without power %v m becomes %v", x, d)
		}
		if power > 1e-6 {
			if far := Closeup(math.Inf(1), power); !math.IsInf(CloseupSetting(far, power), 1) || !math.IsNaN(CloseupSetting(far*1.001, power)) {
				t.Errorf("power %v: %v m is not the farthest", power, far)
			}
		}
	})
}

// TestBehindKeepsThePupil checks 1/f' = 1/f + power and that the pupil f/N stays as wide.
func TestBehindKeepsThePupil(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := Setting{Focal: rapid.Float64Range(0.01, 0.3).Draw(t, "f"), Number: rapid.Float64Range(1, 22).Draw(t, "n"), Criterion: 1e-5}
		power := rapid.Float64Range(0, 5).Draw(t, "power")
		b := s.Behind(power)
		if math.Abs(1/b.Focal-1/s.Focal-power) > 1e-9/s.Focal || math.Abs(b.Focal/b.Number-s.Focal/s.Number) > 1e-12 {
			t.Errorf("%+v behind %v is %+v", s, power, b)
		}
	})
}

func TestTubeSettingEndsWithTheRange(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := rapid.Float64Range(0.02, 0.2).Draw(t, "f")
		closest := f * rapid.Float64Range(4.5, 20).Draw(t, "closest/f")
		tube := f * rapid.Float64Range(0.01, 0.8).Draw(t, "tube/f")
		near, far := TubeRange(f, closest, tube)
		if x, _ := FromSensor(closest, f); Extension(f, x)+tube < f { // on the subject's side of 1:1
			if got := TubeSetting(near, f, tube); math.Abs(got-closest) > 1e-6*closest {
				t.Errorf("at its nearest, %v m, the ring shows %v, not %v", near, got, closest)
			}
		}
		if got := TubeSetting(far*(1-1e-6), f, tube); !(got > 10*f) {
			t.Errorf("at its farthest, %v m, the ring shows %v", far, got)
		}
		if got := TubeSetting(far*1.01, f, tube); !math.IsNaN(got) {
			t.Errorf("beyond its farthest, %v m, the ring shows %v", far, got)
		}
		if got := TubeSetting(closest, f, 0); math.Abs(got-closest) > 1e-9*closest {
			t.Errorf("without a tube the ring shows %v for %v", got, closest)
		}
	})
}

func TestMacroFocalIsAThinLens(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := rapid.Float64Range(0.1, 2).Draw(t, "D")
		m := rapid.Float64Range(0.1, 1).Draw(t, "m")
		f := MacroFocal(d, m)
		x, ok := FromSensor(d, f*(1-1e-12)) // at 1:1 D is 4f to the last digit
		if got := Magnification(f, x); !ok || math.Abs(got-m) > 1e-4 {
			t.Errorf("%v m from the sensor a lens of %v m has %v, not %v", d, f, got, m)
		}
	})
	if f := MacroFocalAt(math.Inf(1), 0.1, 0.3, 1); f != 0.1 {
		t.Errorf("at infinity %v m", f)
	}
}

func TestCropIsTheLargestPart(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, h := rapid.Float64Range(5, 60).Draw(t, "w"), rapid.Float64Range(5, 60).Draw(t, "h")
		shape, s := rapid.Float64Range(0.5, 4).Draw(t, "shape"), rapid.Float64Range(1, 2).Draw(t, "squeeze")
		a, b := Crop(w, h, shape, s)
		if a > w*(1+1e-12) || b > h*(1+1e-12) || a < w && b < h {
			t.Errorf("of %v x %v it takes %v x %v", w, h, a, b)
		}
		if got := ShapeOnScreen(a, b, s); math.Abs(got-shape) > 1e-9 {
			t.Errorf("the part has the shape %v, not %v", got, shape)
		}
	})
}

func TestWithoutSqueezeADiscIsRound(t *testing.T) {
	for _, rear := range []bool{false, true} {
		if a, b := SqueezedDisc(3, 1, rear); a != 3 || b != 3 {
			t.Errorf("rear %v: %v and %v", rear, a, b)
		}
	}
}
