package lanes

import (
	"math"
	"slices"
	"strings"
	"testing"

	"pullscore/interp/plan"
	"pullscore/render/testing/plans"
)

// lane returns the lane of a name.
func lane(t *testing.T, s *plan.Shot, name string) Lane {
	t.Helper()
	all := Of(s)
	i := slices.IndexFunc(all, func(l Lane) bool { return l.Name == name })
	if i < 0 {
		t.Fatalf("no lane %s", name)
	}
	return all[i]
}

// The curves of the lanes are where the camera is: together they give its place.
func TestLanesAreTheCamera(t *testing.T) {
	s := plans.New("1", "", 10).Put("ADA", 3, 0.1).Start("ADA").
		Pan("", 30, 0, 1).Slide("dolly", 0.8, 2, 4).Slide("track", -0.5, 3, 6).Slide("boom", 0.3, 5, 7).Tilt(-9, 8, 9).Dolly(0.2, 8, 9).Shot
	pan, tilt, boom, track, push := lane(t, s, "pan"), lane(t, s, "tilt"), lane(t, s, "boom"), lane(t, s, "track"), lane(t, s, "dolly")
	sin, cos := math.Sincos(math.Pi / 6)
	for at := 0.0; at <= 10; at += 0.25 {
		p, dolly := s.Optics.Pose(at), s.Optics.Camera.At(at)
		in, side := push.At(at)-dolly, track.At(at)
		for name, v := range map[string][2]float64{
			"right": {p.X, in*sin + side*cos}, "upstage": {p.Y, dolly + in*cos - side*sin}, "high": {p.Z, boom.At(at)},
			"pan": {p.Pan, pan.At(at)}, "tilt": {p.Tilt, tilt.At(at)},
		} {
			if math.Abs(v[0]-v[1]) > 1e-9 {
				t.Errorf("%s at %g s: the camera is at %g, the lanes at %g", name, at, v[0], v[1])
			}
		}
	}
	if len(push.Moves) != 2 || len(track.Moves) != 1 || math.Abs(track.Moves[0].By+0.5) > 1e-9 {
		t.Errorf("pushes %v, tracks %v", push.Moves, track.Moves)
	}
}

// A peak is the steepest place of its curve.
func TestPeaksAreTheSteepest(t *testing.T) {
	for _, s := range []*plan.Shot{plans.PanAndRack(), plans.AllWays()} {
		for _, l := range Of(s) {
			for _, m := range l.Moves {
				const h = 1e-4
				speed := func(t float64) float64 { return math.Abs(l.At(t+h)-l.At(t-h)) / (2 * h) }
				if !strings.HasPrefix(m.who, "with ") && math.Abs(speed(m.At)-m.Peak) > 1e-3*m.Peak {
					t.Errorf("%s: %g at its peak, and %g is written", l.Name, speed(m.At), m.Peak)
				}
				for at := m.Start + h; at < m.End-h; at += 0.01 {
					if speed(at) > speed(m.At)*1.02+1e-6 {
						t.Errorf("%s: faster at %g s than at its peak at %g s", l.Name, at, m.At)
						break
					}
				}
			}
		}
	}
}

// A camera that is taken straight to another place has one lane for how far it has gone, and
// its words say where to. Its pan is told as the floor of the scene has it.
func TestPlacedLanes(t *testing.T) {
	s := plans.Scene().Shots[0]
	names := ""
	for _, l := range Of(s) {
		names += l.Name + " "
	}
	if names != "pan tilt way " {
		t.Errorf("lanes %s", names)
	}
	way, pan, tilt := lane(t, s, "way"), lane(t, s, "pan"), lane(t, s, "tilt")
	p, q := s.Stands(7), s.Stands(9)
	sin, cos := math.Sincos(p.Pan * math.Pi / 180)
	x, y, z := q.X-p.X, q.Y-p.Y, q.Z-p.Z
	if m := way.Moves[0]; math.Abs(m.parts[0]-(x*sin+y*cos)) > 1e-9 || math.Abs(m.parts[1]-(x*cos-y*sin)) > 1e-9 || math.Abs(m.parts[2]-z) > 1e-9 ||
		math.Abs(way.At(9)-math.Sqrt(x*x+y*y+z*z)) > 1e-9 || way.At(7) != 0 {
		t.Errorf("goes %v, %g m; the camera goes %g, %g, %g", m.parts, way.At(9), x, y, z)
	}
	if got, want := way.Words(s, way.Moves[0])[0], "63.2 cm in, 45.9 cm right, 25 cm up, peak 0.8 m/s"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
	if pan.At(0) != s.Home.Pan || pan.Low != s.Home.Pan || pan.First != s.Home.Pan || math.Abs(pan.High-27.5) > 0.1 || tilt.First != s.Home.Tilt {
		t.Errorf("pan %g, shown from %g to %g; tilt from %g", pan.At(0), pan.Low, pan.High, tilt.First)
	}
}
