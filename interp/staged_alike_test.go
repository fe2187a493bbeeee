// Staged plans that say the same in two ways have the same figures.

package interp_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"pullscore/interp/plan"
)

// A floorPlan is a staged plan whose floor can be turned, shifted and mirrored: every
// place is said by itself, in metres.
type floorPlan struct {
	people, walk [2][3]float64 // right, upstage, high
	camera, to   [3]float64
	covers       string
	more         string // shots behind the first
}

func drawFloor(r *rand.Rand) floorPlan {
	m := func(lo, hi float64) float64 { return math.Round((lo+(hi-lo)*r.Float64())*100) / 100 }
	return floorPlan{
		people: [2][3]float64{{m(-.4, .4), m(.5, 1.5), m(1.2, 1.8)}, {m(.5, .9), m(2, 3.5), m(1.2, 1.8)}},
		walk:   [2][3]float64{{m(-.3, .3), m(0, 1), m(1, 1.7)}},
		camera: [3]float64{m(-.6, .6), m(-3, -2), m(1.2, 1.7)}, to: [3]float64{m(-.6, .6), m(-2.5, -2), m(1.2, 1.7)},
		covers: "covers all",
	}
}

// moved returns the plan with every place moved.
func (f floorPlan) moved(by func(x, y float64) (float64, float64)) floorPlan {
	for _, p := range []*[3]float64{&f.people[0], &f.people[1], &f.walk[0], &f.camera, &f.to} {
		p[0], p[1] = by(p[0], p[1])
	}
	return f
}

func (f floorPlan) text(way string) string {
	at := func(p [3]float64) string {
		x, y := "right", "upstage"
		if p[0] < 0 {
			x = "left"
		}
		if p[1] < 0 {
			y = "downstage"
		}
		return fmt.Sprintf("%.15f m %s, %.15f m %s", math.Abs(p[0]), x, math.Abs(p[1]), y)
	}
	return stagedKit + fmt.Sprintf(`scene "S"
  subject ANNA at %s, eyes %g m, deep 5 cm
  subject BRAM at %s, eyes %g m
  ANNA: "Last boat there and back.", lasting 2 s
  BRAM: "One way.", lasting 1 s
  ANNA moves to %s over 2 s, eyes %g m, on 3.5 s
  pause 6 s
shot 1
  %s
  camera at %s, %g m high, aims at ANNA and BRAM, 2 deg %s
  start on ANNA
  rack to BRAM, on "one", over 1 s
  camera moves to %s, %g m high over 2 s, on 3 s
  pan to ANNA, on 4 s, over 1.2 s
  rack to ANNA, with pan
  follow ANNA until 6 s
`, at(f.people[0]), f.people[0][2], at(f.people[1]), f.people[1][2], at(f.walk[0]), f.walk[0][2], f.covers,
		at(f.camera), f.camera[2], way, at(f.to), f.to[2]) + f.more
}

// figuresAlike compares all that a shot tells of its lens and hand at every frame. side is
// -1 where left and right are swapped.
func figuresAlike(t *testing.T, a, b *plan.Shot, side, from float64) {
	t.Helper()
	near := func(what string, x, y float64) {
		if math.Abs(x-y) > 1e-8*math.Max(1, math.Abs(x)) {
			t.Errorf("%s: %v and %v", what, x, y)
		}
	}
	if len(a.Pulls) != len(b.Pulls) || len(a.Subjects) != len(b.Subjects) {
		t.Fatalf("%d and %d pulls, %d and %d subjects", len(a.Pulls), len(b.Pulls), len(a.Subjects), len(b.Subjects))
	}
	for i, p := range a.Pulls {
		q := b.Pulls[i]
		near("start", float64(p.Start), float64(q.Start)+from)
		near("hand", float64(p.HandDeg), float64(q.HandDeg))
		if p.Chance.Known() || q.Chance.Known() {
			near("chance", float64(p.Chance), float64(q.Chance))
		}
	}
	for i, u := range a.Subjects {
		for k := range 24 * 8 {
			at := float64(k)/24 + from
			v, w := a.ViewOf(u, at), b.ViewOf(b.Subjects[i], at-from)
			near("along", v.Along, w.Along)
			near("across", v.Across, w.Across*side)
			near("above", v.Above, w.Above)
		}
	}
}

func findingsOf(t *testing.T, text string) (s *plan.Shot, told string) {
	t.Helper()
	res := interpret("plan.pull", text)
	if len(res.Plan.Shots) == 0 {
		t.Fatalf("%+v\n%s", res.Findings, text)
	}
	var list []string
	for _, d := range res.Findings {
		list = append(list, fmt.Sprintf("%d %s %s", d.Range.Start.Line, d.Code, d.Message))
	}
	return res.Plan.Shots[0], strings.Join(list, "\n")
}

func TestStagedFloorsAlike(t *testing.T) {
	r := rand.New(rand.NewPCG(16, 9))
	for range 6 {
		f := drawFloor(r)
		plain, told := findingsOf(t, f.text("right"))
		sin, cos := math.Sincos(2 * math.Pi * r.Float64())
		turned := f.moved(func(x, y float64) (float64, float64) { return x*cos - y*sin + 7.25, x*sin + y*cos - 3.5 })
		s, tells := findingsOf(t, turned.text("right"))
		figuresAlike(t, plain, s, 1, 0)
		if tells != told {
			t.Errorf("turned, it tells\n%s\nand not\n%s", tells, told)
		}
		mirrored := f.moved(func(x, y float64) (float64, float64) { return -x, y })
		s, tells = findingsOf(t, mirrored.text("left"))
		figuresAlike(t, plain, s, -1, 0)
		if swapped := strings.NewReplacer("left", "right", "right", "left").Replace(tells); swapped != told && tells != told {
			t.Errorf("mirrored, it tells\n%s\nand not\n%s", tells, told)
		}
		whole := f
		whole.covers = "covers start to end"
		s, tells = findingsOf(t, whole.text("right"))
		figuresAlike(t, plain, s, 1, 0)
		if tells != told {
			t.Errorf("from start to end, it tells\n%s\nand not\n%s", tells, told)
		}
	}
}

// A shot that runs with another has its times.
func TestRunsWithHasTheSameTimes(t *testing.T) {
	f := drawFloor(rand.New(rand.NewPCG(16, 11)))
	f.covers = "covers \"there\" to 8 s"
	f.more = "shot 2\n  runs with 1\n  camera at 1 m right, 2.5 m downstage, 1.5 m high, aims at BRAM\n  start on BRAM\n"
	shots := interpret("plan.pull", f.text("right")).Plan.Shots
	if len(shots) != 2 || shots[0].Covers != shots[1].Covers || len(shots[0].Lines) != 2 || len(shots[1].Lines) != 2 {
		t.Fatalf("%d shots", len(shots))
	}
	for i := range shots[0].Lines {
		if a, b := shots[0].Lines[i], shots[1].Lines[i]; a.Start != b.Start || a.End != b.End {
			t.Errorf("%q is at %v and at %v", a.Text, a.Start, b.Start)
		}
	}
}

// A camera at the zero point that looks upstage, with everyone as high as its lens, has the
// figures of the same shot in today's form. The camera leaves its place once they have
// walked: else the distance of a walk would count from where the camera is by then.
func TestStagedAtTheZeroPointIsPlain(t *testing.T) {
	body := "  start on ANNA\n  rack to BRAM, on \"one\", over 1 s\n  ANNA moves to %s over 2 s, on 3.5 s\n  pan right 5 deg, on 4 s, over 1.2 s\n" +
		"  rack to ANNA, with pan\n  follow ANNA, on 5.3 s, until 6.2 s\n  push in 20 cm over 2 s, on 5.6 s\n  track left 10 cm over 1 s, on 6 s\n"
	lines := "  ANNA: \"Last boat there and back.\", lasting 2 s\n  BRAM: \"One way.\", lasting 1 s\n  pause 6 s\n"
	plain := stagedKit + "subject ANNA at 2.5 m, 20 cm left, deep 5 cm\nsubject BRAM at 4 m, 50 cm right\nshot 1\n" + lines + fmt.Sprintf(body, "2 m, 10 cm right")
	floor := stagedKit + "scene \"S\"\n  mark AHEAD at 9 m upstage, 1.5 m high\n  subject ANNA at 20 cm left, 2.5 m upstage, eyes 1.5 m, deep 5 cm\n" +
		"  subject BRAM at 50 cm right, 4 m upstage, eyes 1.5 m\n" + lines + "  ANNA moves to 10 cm right, 2 m upstage over 2 s, on 3.5 s\n" +
		"shot 1\n  covers all\n  camera at 0 m right, 1.5 m high, aims at AHEAD\n" + strings.Replace(body, "  ANNA moves to %s over 2 s, on 3.5 s\n", "", 1)
	a, _ := findingsOf(t, plain)
	b, _ := findingsOf(t, floor)
	figuresAlike(t, a, b, 1, 0)
	for i := range a.Pulls {
		was, is := figuresOf(t, a.Pulls[i]), figuresOf(t, b.Pulls[i])
		for name, v := range was {
			if name != "line" && name != "column" && name != "file" && name != "miss" && !sameFigure(v, is[name]) {
				t.Errorf("pull %d: %s is %v, and %v on a floor", i+1, name, v, is[name])
			}
		}
	}
}
