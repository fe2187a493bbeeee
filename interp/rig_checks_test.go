// What a camera that turns or leaves its axis is told, against figures by hand.

package interp_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"pullscore/interp"
	"pullscore/lang"
	"pullscore/optics"
)

// A lens of 50 mm on 36 x 24 mm, and somebody straight ahead at 4 m.
const turningKit = `plan "Rig"
rate 24
watched on 12 m screen from 18 m
camera A
  sensor 36 x 24 mm
  on tripod
lens "50"
  focal 50 mm
  stops f/1.4 to f/16
  closest 45 cm
  ring 270 deg, diameter 80 mm
puller IMKE
  hand 4.1 bit/s
puller SORA
  hand 4.1 bit/s
subject ANNA at 4 m
shot 1
  with lens "50", stop f/8, %s
  start on ANNA
`

// of returns the findings of a code.
func of(res *interp.Result, code string) []lang.Diagnostic {
	return slices.DeleteFunc(slices.Clone(res.Findings), func(d lang.Diagnostic) bool { return d.Code != code })
}

func figureOf(t *testing.T, d lang.Diagnostic, name string) float64 {
	t.Helper()
	for _, f := range d.Figures {
		if f.Name == name {
			return f.Value
		}
	}
	t.Fatalf("%s has no %s: %+v", d.Code, name, d.Figures)
	return 0
}

// The half of a picture that is focused at 4 m is atan(18 mm / v) wide, with v from the
// equation of thin lenses; a subject that was in the middle leaves it when the camera has
// turned by a little more, as its distance along the axis shrinks while the lens stands
// before the pivot. The exact angle comes from a search of its own.
func TestLeavesFrameWhenThePictureEnds(t *testing.T) {
	f, x := 0.05, lensDistance(4, 0.05)
	v := f * x / (x - f)
	outside := func(deg float64) bool {
		along, across := 4*math.Cos(deg*math.Pi/180), 4*math.Sin(deg*math.Pi/180)
		return across > lensDistance(along, f)*0.018/v
	}
	angle := 0.0
	for !outside(angle) {
		angle += 1e-5
	}
	for _, way := range []string{"left", "right"} {
		res := interpret("plan.pull", fmt.Sprintf(turningKit, "puller IMKE, operator SORA")+"  pan "+way+" 30 deg, on 1 s, over 3 s, even\n")
		found := of(res, "leaves-frame")
		if len(found) != 1 {
			t.Fatalf("a pan %s: %v", way, res.Findings)
		}
		if got, want := figureOf(t, found[0], "time_s"), 1+angle/10; math.Abs(got-want) > 0.0011 {
			t.Errorf("a pan %s leaves ANNA at %.4f s, want %.4f", way, got, want)
		}
	}
}

// lensDistance solves d = x + f x/(x-f) by halving.
func lensDistance(d, f float64) float64 {
	lo, hi := 2*f, d
	for range 100 {
		if mid := (lo + hi) / 2; mid+f*mid/(mid-f) > d {
			hi = mid
		} else {
			lo = mid
		}
	}
	return lo
}

func TestHandsTogether(t *testing.T) {
	const pan = "  pan right 5 deg, on 1 s, over 1.5 s\n"
	for _, c := range []struct {
		with, rack, want string
	}{
		{"puller IMKE, operator SORA", "on 1 s, over 1.5 s", ""},
		{"puller IMKE, operator IMKE", "on 1 s, over 1.5 s", "pan-and-pull: the pan and rack 1 overlap for 1.5 s"},
		{"puller IMKE, operator IMKE", "with pan", "pan-and-pull: the pan and rack 1 overlap for 1.5 s"},
		{"puller IMKE", "on 1.5 s, over 1.5 s", "pan-and-pull: the pan and rack 1 overlap for 1 s"},
		{"puller IMKE, operator IMKE", "on 1.2 s, over 1.5 s", "pan-and-pull: the pan and rack 1 overlap for 1.3 s"},
		{"puller IMKE, operator IMKE", "on 1.25 s, over 1.5 s", "hands-apart: IMKE pans and pulls at once, and the rack lands 0.25 s after the pan"},
		{"puller IMKE, operator IMKE", "on 1 s, over 1.2 s", "hands-apart: IMKE pans and pulls at once, and the rack lands 0.3 s before the pan"},
		{"puller IMKE, operator IMKE", "on 1.4 s, over 1.1 s", "hands-apart: IMKE pans and pulls at once, and the rack starts 0.4 s after the pan"},
		{"puller IMKE, operator IMKE", "on 2.5 s, over 1.5 s", ""},
		{"puller IMKE, operator IMKE", "on 0 s, over 1 s", ""},
	} {
		res := interpret("plan.pull", fmt.Sprintf(turningKit, c.with)+pan+"  rack to 3 m, "+c.rack+"\n  pause 5 s\n")
		var told []string
		for _, d := range append(of(res, "hands-apart"), of(res, "pan-and-pull")...) {
			told = append(told, d.Code+": "+d.Message)
		}
		if len(told) > 1 || c.want == "" && len(told) > 0 || c.want != "" && (len(told) == 0 || !strings.HasPrefix(told[0], c.want)) {
			t.Errorf("%s, rack %s: %q, want %q", c.with, c.rack, told, c.want)
		}
	}
}

// A turn is fast by the angle of the picture and its peak, both of which are known: 39.6
// degrees or a little less near, and 15/8 of the mean of minimum jerk.
func TestPansFast(t *testing.T) {
	x := lensDistance(4, 0.05)
	wide := 2 * math.Atan(0.018*(x-0.05)/(0.05*x)) * 180 / math.Pi
	for _, c := range []struct {
		turn   string
		factor float64 // of the mean speed
		fast   bool
	}{
		{"pan right 10 deg, on 1 s, over 4 s", 1.875, false},
		{"pan right 10 deg, on 1 s, over 1.4 s", 1.875, false}, // one quick move
		{"pan right 10 deg, on 1 s, over 1.6 s", 1.875, true},
		{"pan left 10 deg, on 1 s, over 1.6 s, even", 1, true},
		{"pan with ANNA, on 1 s", 1, false},
	} {
		res := interpret("plan.pull", fmt.Sprintf(turningKit, "puller IMKE, operator SORA")+"  "+c.turn+"\n  pause 9 s\n")
		found := of(res, "pans-fast")
		if len(found) > 1 || len(found) == 1 != c.fast {
			t.Errorf("%s: %v", c.turn, found)
			continue
		}
		if !c.fast {
			continue
		}
		want := wide / (c.factor * 10 / 1.6)
		if got := figureOf(t, found[0], "width_s"); math.Abs(got-want) > 1e-6 {
			t.Errorf("%s: crosses in %v s, want %v", c.turn, got, want)
		}
		if at := float64(res.Plan.Shots[0].Turns[0].Width); math.Abs(at-want) > 1e-6 {
			t.Errorf("%s: the plan has %v s, want %v", c.turn, at, want)
		}
	}
}

// The camera goes 1 m to the left of ANNA's line and then forth, past her at 1 m or into
// her at 20 cm; over her head it goes by.
func TestRunsIntoPeopleOnTheFloor(t *testing.T) {
	for _, c := range []struct {
		moves string
		at    float64 // when they meet; 0: they do not
	}{
		{"  track left 1 m, on 0 s, over 1 s\n  push in 5 m, on 2 s, over 5 s, even\n", 0},
		// at 2 s + y, with y from 4 m less the side of a triangle of 0.3 m and 0.2 m
		{"  track left 20 cm, on 0 s, over 1 s\n  push in 5 m, on 2 s, over 5 s, even\n", 2 + 4 - math.Sqrt(0.09-0.04)},
		{"  boom up 50 cm, on 0 s, over 1 s\n  push in 5 m, on 2 s, over 5 s, even\n", 0},
		{"  pan right 180 deg, on 0 s, over 1 s\n  push in 1 m, on 2 s, over 5 s, even\n", 0},
		{"  pan right 180 deg, on 0 s, over 1 s\n  pull out 5 m, on 2 s, over 5 s, even\n", 2 + 4 - 0.3},
	} {
		res := interpret("plan.pull", fmt.Sprintf(turningKit, "puller IMKE, operator SORA")+"  ANNA: \"Stand clear.\", on 0 s, lasting 1 s\n"+c.moves+"  pause 9 s\n")
		found := of(res, "runs-into")
		if len(found) > 1 || (len(found) == 1) != (c.at > 0) {
			t.Errorf("%s: %v", c.moves, res.Findings)
			continue
		}
		if c.at > 0 && math.Abs(found[0].Time-c.at) > 1.0/48+1e-9 {
			t.Errorf("%s: they meet at %v s, want %v", c.moves, found[0].Time, c.at)
		}
	}
}

// A mirrored plan is told the same, but for left and right.
func TestRigFindingsMirror(t *testing.T) {
	swap := strings.NewReplacer(" left", " right", " right", " left")
	const shot = "  subject LAMP at 2 m, 40 cm left\n  pan right 25 deg, on 1 s, over 2 s\n  track left 40 cm, on 1 s, over 2 s\n  tilt up 15 deg, on 4 s, over 2 s\n" +
		"  rack to LAMP, on 7 s, over 1 s, because \"so\"\n  pan to LAMP, on 9 s, over 2 s\n  rack to ANNA, with pan, because \"so\"\n  pause 3 s\n"
	told := func(src string) (list []string) {
		for _, d := range interpret("plan.pull", src).Findings {
			list = append(list, d.Code+": "+d.Message)
		}
		return list
	}
	src := fmt.Sprintf(turningKit, "puller IMKE, operator IMKE") + shot
	a, b := told(src), told(swap.Replace(src))
	for i := range b {
		b[i] = swap.Replace(b[i])
	}
	if len(a) < 4 || !slices.Equal(a, b) {
		t.Errorf("as it is:\n%s\nmirrored:\n%s", strings.Join(a, "\n"), strings.Join(b, "\n"))
	}
}

// Somebody out of the picture by height may go nowhere to be in it.
func TestMissCountsHeight(t *testing.T) {
	src := fmt.Sprintf(turningKit, "puller IMKE, operator SORA") + "  tilt up %s deg, on 0 s, over 1 s\n  rack to ANNA, on 2 s, over 1 s\n"
	miss := func(deg string) (left, right float64) {
		m := interpret("plan.pull", fmt.Sprintf(src, deg)).Plan.Shots[0].Pulls[0].Miss
		return float64(m.Left), float64(m.Right)
	}
	x := lensDistance(4*math.Cos(5*math.Pi/180), 0.05)
	want := x * math.Tan(optics.FieldOfView(0.036, 0.05, x)/2*math.Pi/180)
	if left, right := miss("5"); math.Abs(left-want) > 1e-6 || math.Abs(right-want) > 1e-6 {
		t.Errorf("may go %v left and %v right, want %v", left, right, want)
	}
	if left, right := miss("20"); left != 0 || right != 0 {
		t.Errorf("out of the picture, ANNA may go %v left and %v right", left, right)
	}
}
