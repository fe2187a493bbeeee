// What a plan says of a camera that turns: times, turns, paths, defaults, cures.

package interp_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"pullscore/interp/plan"
	"pullscore/interp/stops"
	"pullscore/lang"
)

const turnHead = `plan "Turns"
rate 24
subject ANNA at 2 m, 40 cm left
subject BRAM at 3 m, 80 cm right
camera A
  sensor 24 x 18 mm
lens "fifty"
  focal 50 mm
  stops f/2 to f/22
  closest 40 cm
  ring 200 deg, diameter 90 mm
shot 1
  with camera A, lens "fifty", stop f/4
  start on ANNA
`

// turnShot interprets a shot that has some lines, without errors.
func turnShot(t *testing.T, lines ...string) *plan.Shot {
	t.Helper()
	res := interpret("turns.pull", turnHead+"  "+strings.Join(lines, "\n  ")+"\n")
	for _, d := range res.Findings {
		if d.Severity == lang.Error {
			t.Fatalf("%s: %s\n%s", d.Code, d.Message, strings.Join(lines, "\n"))
		}
	}
	return res.Plan.Shots[0]
}

// Moves and racks that go together start and land together, whatever says their times.
func TestMovesGoTogether(t *testing.T) {
	for _, lines := range [][]string{
		{"pan to BRAM, on 1 s, over 1.5 s", "rack to BRAM, with pan"},
		{"pan to BRAM, landing on 2.5 s, over 1.5 s", "rack to BRAM, with pan"},
		{"pan to BRAM, on 1 s, landing on 2.5 s", "rack to BRAM, with pan"},
		{"pan and tilt to BRAM, on 1 s, over 1.5 s", "rack to BRAM, with tilt"},
		{"pan left 5 deg, on 0 s, over 0.5 s", "pan to BRAM, on 1 s, over 1.5 s", "pause 3 s", "rack to BRAM, with pan", "pan to ANNA, over 1 s"},
		{"pan with BRAM, on 1 s, until 2.5 s", "rack to BRAM, with pan"},
		{"track right 30 cm, on 1 s, at 0.2 m/s", "rack to BRAM, with track"},
		{"boom up 30 cm, landing on 2.5 s, at 0.2 m/s", "rack to BRAM, with boom"},
		{"push in 30 cm, on 1 s, over 1.5 s", "boom up 10 cm, with dolly", "rack to BRAM, with boom"},
		{"pause 1 s", "pull out 30 cm, over 1.5 s", "rack to BRAM, with dolly"},
	} {
		sh := turnShot(t, append(lines, "pause 4 s")...)
		p := sh.Pulls[0]
		if math.Abs(float64(p.Start)-1) > 1e-9 || math.Abs(float64(p.Land)-2.5) > 1e-9 || !strings.HasPrefix(p.Anchor, "with ") || p.Untimed {
			t.Errorf("from %v to %v, %q, untimed %v: %v", p.Start, p.Land, p.Anchor, p.Untimed, lines)
		}
		if u := sh.Subject("BRAM"); p.ToM != plan.Number(sh.DistanceAt(u, 2.5)) {
			t.Errorf("it goes to %v, and %s is at %v: %v", p.ToM, u.Name, sh.DistanceAt(u, 2.5), lines)
		}
	}
	if sh := turnShot(t, "pan to BRAM, on 1 s, over 1.5 s, even", "rack to BRAM, with pan"); sh.Pulls[0].Profile != "even" {
		t.Errorf("a rack with an even pan is %s", sh.Pulls[0].Profile)
	}
}

// A word moves a pan and all that goes with it. The hand waits for a word, and foresees
// a landing.
func TestTurnOnAWord(t *testing.T) {
	line := `ANNA: "Is that a door there?", from 1 s to 3 s`
	on := turnShot(t, line, `pan to BRAM, on "door", over 1 s`, "rack to BRAM, with pan")
	land := turnShot(t, line, `pan to BRAM, landing on "door", over 1 s`, "rack to BRAM, with pan")
	a, b := on.Pulls[0], land.Pulls[0]
	if a.Start != b.Land || a.Start <= 1 || !a.Asks.Reacts || b.Asks.Reacts || len(on.Lines[0].Pulls) != 1 {
		t.Errorf("on the word from %v, reacts %v, hangs %v; landing on it at %v, reacts %v", a.Start, a.Asks.Reacts, on.Lines[0].Pulls, b.Land, b.Asks.Reacts)
	}
}

// Every turn of a plan is listed with its angles, its speed and how fast the picture
// goes by.
func TestTurnFigures(t *testing.T) {
	sh := turnShot(t, "pan to BRAM, on 1 s, over 2 s", "tilt down 12 deg, on 4 s, over 3 s, even", "pan with ANNA, on 5 s",
		"ANNA moves to 2 m, 60 cm right, on 6 s, over 2 s", "pan left 4 deg, on 7 s, over 1 s", "pause 9 s")
	to := math.Atan2(0.8, 3) * 180 / math.Pi
	wide := 2 * math.Atan(0.012/(1/(1/0.05-1/(2-0.05))))
	want := []plan.Turn{
		{Kind: "pan", Target: "BRAM", Start: 1, End: 3, From: 0, To: plan.Number(to), Peak: plan.Number(to / 2 * 1.875), Profile: "smooth"},
		{Kind: "tilt", Start: 4, End: 7, From: 0, To: -12, Peak: 4, Profile: "even"},
		{Kind: "pan", Target: "ANNA", Start: 5, End: 7, From: plan.Number(to), Profile: "with"},
		{Kind: "pan", Start: 7, End: 8, Profile: "smooth", Peak: 4 * 1.875},
	}
	if len(sh.Turns) != len(want) {
		t.Fatalf("%d turns", len(sh.Turns))
	}
	for i, w := range want {
		got := sh.Turns[i]
		if got.Kind != w.Kind || got.Target != w.Target || got.Start != w.Start || got.End != w.End || got.Profile != w.Profile {
			t.Errorf("turn %d is %+v, want %+v", i, got, w)
		}
		if i < 2 && (math.Abs(float64(got.From-w.From)) > 1e-9 || math.Abs(float64(got.To-w.To)) > 1e-9) || i != 2 && math.Abs(float64(got.Peak-w.Peak)) > 1e-9 {
			t.Errorf("turn %d is %+v, want %+v", i, got, w)
		}
	}
	if seconds := wide * 180 / math.Pi / (to / 2 * 1.875); math.Abs(float64(sh.Turns[0].Width)-seconds) > 0.02*seconds {
		t.Errorf("the picture crosses its width in %v s, want about %v", sh.Turns[0].Width, seconds)
	}
	// half of the walk is done: ANNA from 40 cm left to 60 cm right goes through 10 cm right
	turned := (math.Atan2(0.1, 2) - math.Atan2(-0.4, 2)) * 180 / math.Pi
	if with, last := sh.Turns[2], sh.Turns[3]; math.Abs(float64(with.To-with.From)-turned) > 1e-9 || last.From != with.To || math.Abs(float64(last.To-last.From)+4) > 1e-9 || with.Peak < 10 {
		t.Errorf("with her it goes from %v to %v, at up to %v deg/s, and then to %v; she turns it by %v", with.From, with.To, with.Peak, last.To, turned)
	}
}

// One who is gone round is followed all the way, and not the shorter way back.
func TestPanWithAllTheWayRound(t *testing.T) {
	lines, want, far := []string{"pan with BRAM, on 0 s"}, 0.0, math.Hypot(0.8, 3)
	for i := range 14 {
		lines = append(lines, fmt.Sprintf("track right 3 m, on %d s, over 0.8 s", i+1))
		// square to where it looks, which is off BRAM by as much as at the start
		off := math.Atan2(0.8, 3)
		x, y := far*math.Sin(off)-3, far*math.Cos(off)
		want += (math.Atan2(x, y) - off) * 180 / math.Pi
		far = math.Hypot(x, y)
	}
	sh := turnShot(t, append(lines, "pause 16 s")...)
	if got := sh.Optics.Pose(15.5).Pan; math.Abs(got-want) > 1e-6 || want > -250 {
		t.Errorf("it has panned by %v deg, want %v", got, want)
	}
	before := 0.0
	for i := range 16 * 240 {
		now := sh.Optics.Pose(float64(i) / 240).Pan
		if math.Abs(now-before) > 2 {
			t.Fatalf("it jumps from %v to %v at %v s", before, now, float64(i)/240)
		}
		before = now
	}
}

// Between the points of their paths everyone and the camera go straight, to a millimetre.
func TestPathsAreStraightBetweenPoints(t *testing.T) {
	sh := turnShot(t, "pan right 200 deg, on 1 s, over 3 s", "tilt up 20 deg, on 2 s, over 3 s", "boom up 90 cm, on 1 s, over 2 s",
		"track left 1 m, on 3 s, over 3 s, even", "BRAM moves to 1 m, 1 m left, on 2 s, over 3 s", "pause 8 s")
	if n := len(sh.CameraPath); n < 20 || n > 300 {
		t.Errorf("%d points of the camera", n)
	}
	for _, u := range sh.Subjects {
		if n := len(u.Path); n < 20 || n > 300 {
			t.Errorf("%d points of %s", n, u.Name)
		}
		for i := 1; i < len(u.Path); i++ {
			a, b := u.Path[i-1], u.Path[i]
			for k := 1; k < 20; k++ {
				part := plan.Number(k) / 20
				at := float64(a.T + (b.T-a.T)*part)
				d, s := float64(a.Distance+(b.Distance-a.Distance)*part), float64(a.Side+(b.Side-a.Side)*part)
				if math.Abs(d-sh.DistanceAt(u, at)) > 1e-3 || math.Abs(s-sh.SideAt(u, at)) > 1e-3 {
					t.Fatalf("%s is at %v, %v at %v s, and by the path at %v, %v", u.Name, sh.DistanceAt(u, at), sh.SideAt(u, at), at, d, s)
				}
			}
		}
	}
}

// What a distance does not say of a height or a side is told where it counts.
func TestRigDefaults(t *testing.T) {
	for _, c := range []struct {
		line         string
		side, height bool
	}{
		{"pan left 5 deg, over 1 s", true, false}, {"track left 5 cm, over 1 s", true, false}, {"boom up 5 cm, over 1 s", false, true},
		{"tilt up 5 deg, over 1 s", false, true}, {"pan and tilt to BRAM, over 1 s", true, true}, {"push in 5 cm, over 1 s", false, false},
	} {
		res := interpret("turns.pull", strings.Replace(turnHead, "2 m, 40 cm left", "2 m", 1)+"  "+c.line+"\n")
		side, height := false, false
		for _, d := range res.Plan.Defaults {
			side, height = side || d.Name == "side" && strings.Contains(d.Why, "ANNA"), height || d.Name == "height"
		}
		if side != c.side || height != c.height {
			t.Errorf("%s: side %v, height %v", c.line, side, height)
		}
	}
}

// A rack that goes with a pan is cured by more time for both; another time for it alone
// keeps its landing.
func TestCuresKeepARackWithItsPan(t *testing.T) {
	text := turnHead + "  pan to BRAM, on 1 s, over 0.3 s\n  rack to BRAM, with pan\n  pause 4 s\n"
	res := interpret("turns.pull", text)
	cured := 0.0
	for _, d := range res.Findings {
		for _, c := range d.Cures {
			if d.Code == "hard-to-land" && strings.HasPrefix(c.Text, "pan over ") {
				cured = c.Value
			}
		}
	}
	if !(cured > 0.3) {
		t.Fatalf("no cure slows the pan: %v", res.Findings)
	}
	slower := interpret("turns.pull", strings.Replace(text, "over 0.3 s", fmt.Sprintf("over %v s", cured), 1))
	for _, d := range slower.Findings {
		if d.Code == "hard-to-land" {
			t.Errorf("with it: %s", d.Message)
		}
	}
	sh := res.Plan.Shots[0]
	take, ok := res.Retake(sh)(stops.Change{Over: map[int]float64{1: 0.9}})
	if !ok {
		t.Fatal("no take")
	}
	if p := take.Shot.Pulls[0]; math.Abs(float64(p.Land)-1.3) > 1e-9 || math.Abs(float64(p.Start)-0.4) > 1e-9 {
		t.Errorf("a longer one goes from %v to %v", p.Start, p.Land)
	}
}

// What cannot be timed is told once, at its line.
func TestTurnMistakes(t *testing.T) {
	for _, c := range []struct{ lines, code string }{
		{"rack to BRAM, with pan\npan to BRAM, over 1 s", "unknown-name"},
		{"pan with BRAM\nrack to BRAM, with pan", "unknown-name"},
		{"pan to BRAM, on end of rack, over 1 s\nrack to BRAM, with pan", "circle"},
		{"pan with BRAM, on 2 s, until 1 s", "lands-too-early"},
		{"pan to BRAM, on 2 s, landing on 2 s", "lands-too-early"},
		{"tilt up 80 deg, on 1 s, over 1 s\ntilt up 80 deg, on 3 s, over 1 s", "out-of-range"},
		{"pan right 1000 deg, over 3 s", "out-of-range"},
		{"pan to NOBODY, over 3 s", "unknown-name"},
		{"pan left 5 deg, on 1 s, over 2 s\npan left 5 deg, on 2 s, over 2 s", "moves-overlap"},
		{"boom up 5 cm, landing on 1 s, over 2 s", "before-the-shot"},
	} {
		text := turnHead + "  " + strings.ReplaceAll(c.lines, "\n", "\n  ") + "\n"
		told := 0
		for _, d := range interpret("turns.pull", text).Findings {
			if d.Severity == lang.Error {
				told++
				if d.Code != c.code {
					t.Errorf("%s: %s", d.Code, d.Message)
				}
			}
		}
		if told != 1 {
			t.Errorf("%d errors in\n%s", told, c.lines)
		}
	}
}
