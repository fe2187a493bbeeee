// Properties of a camera that turns, whatever its angles.

package plan

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// drawPose is a camera anywhere near, which looks anywhere.
func drawPose(t *rapid.T) Pose {
	m := rapid.Float64Range(-20, 20)
	return Pose{X: m.Draw(t, "x"), Y: m.Draw(t, "y"), Z: m.Draw(t, "z"),
		Pan: rapid.Float64Range(-720, 720).Draw(t, "pan"), Tilt: rapid.Float64Range(-90, 90).Draw(t, "tilt")}
}

func drawPoint(t *rapid.T) (x, y, z float64) {
	m := rapid.Float64Range(-20, 20)
	return m.Draw(t, "px"), m.Draw(t, "py"), m.Draw(t, "pz")
}

func same(t *rapid.T, what string, got, want, within float64) {
	if !(math.Abs(got-want) <= within) {
		t.Fatalf("%s: %.15g, not %.15g", what, got, want)
	}
}

// A floor seen in a mirror swaps left and right, and nothing else.
func TestMirroredViewSwapsSides(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawPose(t)
		x, y, z := drawPoint(t)
		a := p.View(x, y, z)
		p.X, p.Pan = -p.X, -p.Pan
		b := p.View(-x, y, z)
		same(t, "along", b.Along, a.Along, 1e-9)
		same(t, "across", b.Across, -a.Across, 1e-9)
		same(t, "above", b.Above, a.Above, 1e-9)
	})
}

// A camera that turns changes no length: the tape to a point is the same, and never
// shorter than the way along the axis.
func TestTurningKeepsTheTape(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawPose(t)
		x, y, z := drawPoint(t)
		v := p.View(x, y, z)
		tape := math.Sqrt((x-p.X)*(x-p.X) + (y-p.Y)*(y-p.Y) + (z-p.Z)*(z-p.Z))
		same(t, "tape", math.Sqrt(v.Along*v.Along+v.Across*v.Across+v.Above*v.Above), tape, 1e-9)
		if v.Along > tape+1e-9 {
			t.Fatalf("%.15g along the axis, and the tape is %.15g", v.Along, tape)
		}
	})
}

// Turning the floor together with the camera, or shifting both, changes nothing.
func TestViewGoesWithTheFloor(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawPose(t)
		x, y, z := drawPoint(t)
		a := p.View(x, y, z)
		by := rapid.Float64Range(-180, 180).Draw(t, "by")
		dx, dy, dz := drawPoint(t)
		sin, cos := math.Sincos(by * math.Pi / 180)
		turn := func(x, y float64) (float64, float64) { return x*cos + y*sin + dx, y*cos - x*sin + dy }
		q := Pose{Z: p.Z + dz, Pan: p.Pan + by, Tilt: p.Tilt}
		q.X, q.Y = turn(p.X, p.Y)
		x, y = turn(x, y)
		b := q.View(x, y, z+dz)
		same(t, "along", b.Along, a.Along, 1e-9)
		same(t, "across", b.Across, a.Across, 1e-9)
		same(t, "above", b.Above, a.Above, 1e-9)
	})
}

// A camera that looks where Bearing says has the point in the middle.
func TestBearingPutsInTheMiddle(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawPose(t)
		x, y, z := drawPoint(t)
		p.Pan, p.Tilt = p.Bearing(x, y, z)
		v := p.View(x, y, z)
		same(t, "across", v.Across, 0, 1e-9)
		same(t, "above", v.Above, 0, 1e-9)
		if v.Along < 0 {
			t.Fatalf("the point lies %.15g m behind the camera", -v.Along)
		}
	})
}

// An angle and its shortest turn look the same way, and no turn is over half-way round.
func TestWrappedLooksTheSameWay(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		deg := rapid.Float64Range(-4000, 4000).Draw(t, "deg")
		w := Wrapped(deg)
		if w <= -180 || w > 180 {
			t.Fatalf("%v becomes %v", deg, w)
		}
		round := (deg - w) / 360
		same(t, "whole turns", round, math.Round(round), 1e-9)
	})
}

// A pan of nothing is no pan: everyone is seen as from a camera that has none.
func TestTurnByNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := Shot{Optics: Optics{Camera: Still(0)}}
		s.Optics.Camera.Add(Step{Start: 1, End: 3, To: Spot{Offset: 0.4}, Smooth: true})
		u := &Subject{Along: Still(rapid.Float64Range(0.5, 20).Draw(t, "along")), Across: Still(rapid.Float64Range(-5, 5).Draw(t, "across"))}
		at := rapid.Float64Range(0, 5).Draw(t, "at")
		plain := s.ViewOf(u, at)
		s.Optics.Rig = &Rig{
			Slides: []Slide{{Start: 0, End: 4, Smooth: true}},
			Pans:   []Sweep{{Start: 1, End: 2, Smooth: true}}, Tilts: []Sweep{{Start: 1, End: 4}},
		}
		rigged := s.ViewOf(u, at)
		same(t, "along", rigged.Along, plain.Along, 1e-9)
		same(t, "across", rigged.Across, plain.Across, 1e-9)
		same(t, "above", rigged.Above, plain.Above, 1e-9)
	})
}

// A pan and the same pan back end where they began.
func TestPanAndBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		from, by := rapid.Float64Range(-180, 180).Draw(t, "from"), rapid.Float64Range(-720, 720).Draw(t, "by")
		smooth := rapid.Bool().Draw(t, "smooth")
		o := Optics{Camera: Still(0), Rig: &Rig{Pans: []Sweep{
			{Start: 1, End: 2, From: from, To: from + by, Smooth: smooth},
			{Start: 2.5, End: 4, From: from + by, To: from, Smooth: smooth},
		}}}
		same(t, "half-way", o.Pose(2.2).Pan, from+by, 1e-9)
		same(t, "at the end", o.Pose(9).Pan, from, 1e-9)
	})
}

// A smooth turn peaks at 15/8 of its mean speed, half-way (Flash and Hogan, The
// coordination of arm movements, J. Neurosci. 5, 1985); an even one keeps its mean.
func TestPeakOfASmoothTurn(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		by, over := rapid.Float64Range(1, 720).Draw(t, "by"), rapid.Float64Range(0.1, 30).Draw(t, "over")
		s := Sweep{Start: 0, End: over, To: by, Smooth: true}
		peak := func(s Sweep) (most float64) {
			const steps = 2000
			for i := range steps {
				a, b := over*float64(i)/steps, over*float64(i+1)/steps
				most = max(most, (turned(s, b)-turned(s, a))/(b-a))
			}
			return most
		}
		mean := by / over
		same(t, "smooth, over its mean", peak(s)/mean, 1.875, 1e-5)
		s.Smooth = false
		same(t, "even, over its mean", peak(s)/mean, 1, 1e-9)
	})
}

// A pan with somebody keeps them where they are in the picture from side to side, past
// straight behind the camera too.
func TestPanWithKeepsTheAngle(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := rapid.Float64Range(-8, 8)
		u := &Subject{Along: Still(m.Draw(t, "along")), Across: Still(m.Draw(t, "across"))}
		u.Along.Add(Step{Start: 1, End: 4, To: Spot{Offset: m.Draw(t, "to along")}, Smooth: true})
		u.Across.Add(Step{Start: 1, End: 4, To: Spot{Offset: m.Draw(t, "to across")}, Smooth: true})
		from := rapid.Float64Range(-90, 90).Draw(t, "from")
		o := Optics{Camera: Still(0), Rig: &Rig{Pans: []Sweep{
			{Start: 0, End: 0.5, From: 0, To: from}, {Start: 0.5, End: 4.5, From: from, With: u},
		}}}
		off := func(t float64) float64 {
			v := o.Pose(t).View(u.Across.At(t), u.Along.At(t), 0)
			return math.Atan2(v.Across, v.Along) * 180 / math.Pi
		}
		at := rapid.Float64Range(0.6, 4.4).Draw(t, "at")
		if math.Hypot(u.Along.At(at), u.Across.At(at)) < 0.01 || math.Hypot(u.Along.At(0), u.Across.At(0)) < 0.01 {
			t.Skip("who stands in the camera has no bearing")
		}
		same(t, "off the axis", Wrapped(off(at)-off(0.5)), 0, 1e-6)
	})
}
