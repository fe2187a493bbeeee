// Figures of staged shots that an independent model computes, written in Python with its
// standard library alone and no part of this repository: its cases by their names. The axes
// of exports, of which it has cases too, are tested with the exports.

package interp_test

import (
	"math"
	"strings"
	"testing"

	"pullscore/interp/plan"
)

const masterScene = `scene "S"
  subject MARRIT at 0 m right, eyes 1.5 m
  subject OSKEL at 40 cm right, 1.3 m upstage, eyes 1.6 m
  MARRIT: "Last boat.", lasting 1 s
  OSKEL: "One way.", lasting 1 s
`

// staged returns a shot of a scene with one camera.
func staged(t *testing.T, scene, shot string) *plan.Shot {
	t.Helper()
	text := strings.NewReplacer("focal 50 mm", "focal 75 mm", "stops f/1.4", "stops f/1.8").Replace(stagedKit) + scene + "shot 1\n  covers all\n" + shot
	res := interpret("plan.pull", text)
	if len(res.Plan.Shots) != 1 {
		t.Fatalf("%+v\n%s", res.Findings, text)
	}
	return res.Plan.Shots[0]
}

func seenOf(s *plan.Shot, who string, at float64) plan.View {
	for _, u := range s.Subjects {
		if u.Name == who {
			return s.ViewOf(u, at)
		}
	}
	return plan.View{Along: math.NaN()}
}

func TestStagedFiguresOfTheScript(t *testing.T) {
	thing := func(at string) string {
		return "scene \"S\"\n  mark AHEAD at 9 m upstage, 1.5 m high\n  mark LOW at 9 m upstage, 75 cm high\n  subject X at " + at + "\n  voice OTTO\n  OTTO: \"Now.\", lasting 1 s\n"
	}
	level := staged(t, thing("3 m right, 4 m upstage, 1.5 m high"), "  camera at 0 m right, 1.5 m high, aims at AHEAD\n  start on X\n")
	low := staged(t, thing("1 m upstage, 0 m high"), "  camera at 0 m right, 75 cm high, aims at LOW\n  start on X\n")
	onto := staged(t, thing("1 m upstage, 0 m high"), "  camera at 0 m right, 75 cm high, aims at X\n  start on X\n")
	panned := staged(t, thing("3 m upstage, 1.5 m high"), "  camera at 0 m right, 1.5 m high, aims at AHEAD, 20 deg right\n  start on X\n")
	const a = "  camera at 80 cm right, 2.2 m downstage, 1.5 m high, aims at MARRIT and OSKEL\n  start on MARRIT\n"
	master := staged(t, masterScene, a)
	taped := staged(t, masterScene, a+"  measured MARRIT 2.36 m\n")
	b := staged(t, masterScene, "  camera at 1 m right, 1.3 m upstage, 1.5 m high, aims at MARRIT\n  start on MARRIT\n")
	answered := strings.Replace(masterScene, "  MARRIT: \"Last boat.\", lasting 1 s\n", "", 1) + "  MARRIT: \"Last boat.\", lasting 1 s\n" // OSKEL looks to MARRIT
	c := staged(t, answered, "  camera at 50 cm right, 35 cm downstage, 1.6 m high, aims at OSKEL\n  start on OSKEL\n")
	turning := staged(t, thing("3 m upstage, 1.5 m high"), "  camera at 0 m right, 1.5 m high, aims at AHEAD\n  start on X\n  pan right 30 deg, on 0 s, over 1.2 s\n")
	round := staged(t, strings.Replace(thing("5 m downstage, 1.5 m high"), "mark LOW", "subject Y at "+
		"86.8240888334652 cm left, 4.92403876506104 m downstage, 1.5 m high\n  mark BACK at 86.8240888334652 cm right, 4.92403876506104 m downstage, 1.5 m high\n  mark LOW", 1),
		"  camera at 0 m right, 1.5 m high, aims at BACK\n  start on Y\n  pan to Y, on 0 s, over 1 s\n")
	sight := func(s *plan.Shot, from, to string) plan.SightLine {
		for _, v := range s.Views {
			switch {
			case v.A == from && v.B == to:
				return v
			case v.A == to && v.B == from:
				return plan.SightLine{Side: -v.Side, EyeLine: plan.Number(math.NaN())}
			}
		}
		return plan.SightLine{Side: plan.Number(math.NaN())}
	}
	for _, k := range []struct {
		name      string
		got, want float64
	}{
		{"slant of 3 across, 4 upstage", seenOf(level, "X", 0).Tape(), 5},
		{"slant with height 0.75 over 1 m", seenOf(low, "X", 0).Tape(), 1.25},
		{"focus distance of that point, camera level", seenOf(low, "X", 0).Along, 1},
		{"the same, tilted onto it", seenOf(onto, "X", 0).Along, 1.25},
		{"tilt onto it, deg", onto.Stands(0).Tilt, -36.86989764584402},
		{"along, panned 20 deg off a point at 3 m", seenOf(panned, "X", 0).Along, 2.8190778623577253},
		{"across then (negative: camera left)", seenOf(panned, "X", 0).Across, -1.0260604299770062},
		{"12A pan, deg", master.Stands(0).Pan, -13.25145413677848},
		{"12A MARRIT focus distance, m", seenOf(master, "MARRIT", 0).Along, 2.3245676098},
		{"12A OSKEL focus distance, m", seenOf(master, "OSKEL", 0).Along, 3.499563793872},
		{"12A MARRIT by a tape of 2.36 m", seenOf(taped, "MARRIT", 0).Along, 2.34349432},
		{"12B MARRIT slant = focus distance, m", seenOf(b, "MARRIT", 0).Along, 1.6401219466856727},
		{"12B OSKEL across, m (camera right)", seenOf(b, "OSKEL", 0).Across, 0.4755743934628},
		{"12A line side, m (right positive)", float64(sight(master, "MARRIT", "OSKEL").Side), 1.41161207},
		{"12B eye-line of MARRIT to OSKEL, deg", float64(sight(b, "MARRIT", "OSKEL").EyeLine), 20.4658631},
		{"12C eye-line of OSKEL to MARRIT, deg", float64(sight(c, "OSKEL", "MARRIT").EyeLine), -20.5709582},
		{"pan 0 to 30 over 1.2 s at 0.3 s, deg", turning.Stands(0.3).Pan, 3.10546875},
		{"pan 170 to -170 at half-way, deg", round.Stands(0.5).Pan, 180},
	} {
		if !(math.Abs(k.got-k.want) <= 1e-8*math.Max(1, math.Abs(k.want))) {
			t.Errorf("%s: %v, want %v", k.name, k.got, k.want)
		}
	}
}

// The picture of a 75 mm lens at 3 m: how wide and how high it is.
func TestStagedPictureOfTheScript(t *testing.T) {
	frame := func(crop, at string) plan.Frame {
		scene := "scene \"S\"\n  mark AHEAD at 3 m upstage, 1.5 m high\n  subject F at AHEAD\n  subject X at " + at + "\n  voice OTTO\n  OTTO: \"Now.\", lasting 1 s\n"
		s := staged(t, crop+scene, "  camera at 0 m right, 1.5 m high, aims at AHEAD\n  start on F\n")
		for _, u := range s.Subjects {
			if u.Name == "X" {
				return s.FrameAt(u, 0)
			}
		}
		return plan.OutOfFrame
	}
	for _, k := range []struct {
		crop, at string
		want     plan.Frame
	}{
		{"", "AHEAD, 47.2582 cm right", plan.EdgeOfFrame}, // half the width is 0.47258227 m
		{"", "AHEAD, 47.2583 cm right", plan.OutOfFrame},
		{"crop 2.39\n", "AHEAD, 19.7733 cm up", plan.EdgeOfFrame}, // half the height is 0.19773317 m
		{"crop 2.39\n", "AHEAD, 19.7734 cm up", plan.OutOfFrame},
		{"", "AHEAD, 45 cm right", plan.EdgeOfFrame},
		{"", "AHEAD, 40 cm up", plan.OutOfFrame},
	} {
		if got := frame(k.crop, k.at); got != k.want {
			t.Errorf("%s%s: %v, want %v", k.crop, k.at, got, k.want)
		}
	}
}
