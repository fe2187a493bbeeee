package score

import (
	"math"
	"slices"
	"strings"
	"testing"

	"pullscore/interp/plan"
	"pullscore/render/draw"
	"pullscore/render/sheet"
	"pullscore/render/testing/plans"
)

// lane returns the lane of a name.
func lane(t *testing.T, s *plan.Shot, name string) cameraLane {
	t.Helper()
	lanes := cameraLanes(s)
	i := slices.IndexFunc(lanes, func(l cameraLane) bool { return l.name == name })
	if i < 0 {
		t.Fatalf("no lane %s", name)
	}
	return lanes[i]
}

// The curves of the lanes are where the camera is: together they give its place.
func TestLanesAreTheCamera(t *testing.T) {
	s := plans.New("1", "", 10).Put("ADA", 3, 0.1).Start("ADA").
		Pan("", 30, 0, 1).Slide("dolly", 0.8, 2, 4).Slide("track", -0.5, 3, 6).Slide("boom", 0.3, 5, 7).Tilt(-9, 8, 9).Dolly(0.2, 8, 9).Shot
	pan, tilt, boom, track, push := lane(t, s, "pan"), lane(t, s, "tilt"), lane(t, s, "boom"), lane(t, s, "track"), lane(t, s, "dolly")
	sin, cos := math.Sincos(math.Pi / 6)
	for at := 0.0; at <= 10; at += 0.25 {
		p, dolly := s.Optics.Pose(at), s.Optics.Camera.At(at)
		in, side := push.at(at)-dolly, track.at(at)
		for name, v := range map[string][2]float64{
			"right": {p.X, in*sin + side*cos}, "upstage": {p.Y, dolly + in*cos - side*sin}, "high": {p.Z, boom.at(at)},
			"pan": {p.Pan, pan.at(at)}, "tilt": {p.Tilt, tilt.at(at)},
		} {
			if math.Abs(v[0]-v[1]) > 1e-9 {
				t.Errorf("%s at %g s: the camera is at %g, the lanes at %g", name, at, v[0], v[1])
			}
		}
	}
	if len(push.moves) != 2 || len(track.moves) != 1 || math.Abs(track.moves[0].by+0.5) > 1e-9 {
		t.Errorf("pushes %v, tracks %v", push.moves, track.moves)
	}
}

// A peak is the steepest place of its curve.
func TestPeaksAreTheSteepest(t *testing.T) {
	for _, s := range []*plan.Shot{plans.PanAndRack(), plans.AllWays()} {
		for _, l := range cameraLanes(s) {
			for _, m := range l.moves {
				const h = 1e-4
				speed := func(t float64) float64 { return math.Abs(l.at(t+h)-l.at(t-h)) / (2 * h) }
				if !strings.HasPrefix(m.who, "with ") && math.Abs(speed(m.at)-m.peak) > 1e-3*m.peak {
					t.Errorf("%s: %g at its peak, and %g is written", l.name, speed(m.at), m.peak)
				}
				for at := m.start + h; at < m.end-h; at += 0.01 {
					if speed(at) > speed(m.at)*1.02+1e-6 {
						t.Errorf("%s: faster at %g s than at its peak at %g s", l.name, at, m.at)
						break
					}
				}
			}
		}
	}
}

// The shade lies where a turn and a rack overlap, and nowhere else.
func TestJointsAreWhereBothGo(t *testing.T) {
	joints := jointsOf(plans.PanAndRack())
	if len(joints) != 2 {
		t.Fatalf("%d joints", len(joints))
	}
	apart := plans.New("1", "", 9).Put("ADA", 2, 0.1).Put("BO", 3, 0.1).Start("ADA").
		Pan("BO", 10, 1, 2).Rack("BO", "", "", 2, 3).Pan("", 0, 4, 6).Follow("BO", 4, 6).Shot
	if joints := jointsOf(apart); len(joints) != 0 {
		t.Errorf("%v overlap nowhere", joints)
	}
	groups := 0
	for _, p := range Score(plans.PanAndRack(), sheet.Options{}) {
		eachGroup(&p.Root, func(g *draw.Group) {
			if g.Name == "overlap" {
				groups++
			}
		})
	}
	if groups != 2 {
		t.Errorf("%d shades are drawn", groups)
	}
}

func eachGroup(g *draw.Group, do func(*draw.Group)) {
	do(g)
	for _, it := range g.Items {
		if sub, ok := it.(*draw.Group); ok {
			eachGroup(sub, do)
		}
	}
}

// Out of the picture is all of the shot in which the subject is not in it.
func TestOutIsTheRestOfIn(t *testing.T) {
	s := plans.PanAndRack()
	for _, u := range s.Subjects {
		outs := outOf(s, u)
		for at := 0.003; at < 10; at += 0.0137 {
			out := slices.ContainsFunc(outs, func(o [2]float64) bool { return o[0] < at && at < o[1] })
			near := slices.ContainsFunc(outs, func(o [2]float64) bool { return math.Abs(o[0]-at) < 0.01 || math.Abs(o[1]-at) < 0.01 })
			if in := s.FrameAt(u, at) != plan.OutOfFrame; in == out && !near {
				t.Errorf("%s at %g s: in %v, hatched %v", u.Name, at, in, out)
			}
		}
	}
	if outs := outOf(plans.WalkAndDolly(), plans.WalkAndDolly().Subjects[0]); outs != nil {
		t.Errorf("a camera on its axis hatches %v", outs)
	}
}

// A shot whose camera neither turns nor leaves its axis has no band of the camera.
func TestNoBandWithoutTurns(t *testing.T) {
	for name, s := range plans.Made() {
		has := strings.Contains(" "+plans.TextOf(Score(s, sheet.Options{}))+" ", " Camera ")
		if has != (s.Optics.Rig != nil) {
			t.Errorf("%s: the band is there: %v", name, has)
		}
	}
}

// The line of signs has room for all of them, on both papers.
func TestKeyHoldsEverySign(t *testing.T) {
	s := plans.PanAndRack()
	s.Pulls[0].Grips = []float64{2}
	for i, severity := range []string{"error", "warning", "note"} {
		s.Flags = append(s.Flags, plan.Flag{Number: i + 1, Severity: severity, Code: "hard-to-land", Text: "It is late.", Row: "hand", Time: 3})
	}
	for name, paper := range map[string]sheet.Paper{"A4": sheet.A4, "Letter": sheet.Letter} {
		pages := Score(s, sheet.Options{Paper: paper})
		plans.CheckPage(t, name, pages[0])
		for _, sign := range []string{"out of picture", "turn + rack", "re-grip", "cue of a move"} {
			if !strings.Contains(plans.TextOf(pages[:1]), sign) {
				t.Errorf("%s: the key has no %q", name, sign)
			}
		}
	}
}
