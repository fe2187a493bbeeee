// Real glass: what changes nothing, and what follows from the thin lens.

package interp_test

import (
	"encoding/json"
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"pullscore/interp/plan"
	"pullscore/lang/testing/cases"
)

// glassPlan is a plan of one shot on a lens of 50 mm with marks. Each of its lines may be
// one that says nothing.
func glassPlan(lens [3]string, with string, near float64) string {
	return fmt.Sprintf(`plan "Glass"
rate 24
watched on 12 m screen from 18 m
camera A
  sensor 24.89 x 18.66 mm, crop 2.39
  on tripod
lens "50"
  focal 50 mm
  stops f/1.8 to f/22
  closest 45 cm
  ring 300 deg, diameter 110 mm
  mark 1 m at 150 deg
  mark 3 m at 240 deg
  %s
  %s
  %s
subject NORA at 2 m, 5 cm left
subject LAMP at %.3f m
shot 1
  with camera A, lens "50", stop f/4, meter f/4%s
  start on NORA
  rack to LAMP, on 1 s, over 1 s
  hold 1 s
  rack to inf, over 1.2 s
`, lens[0], lens[1], lens[2], near, with)
}

// glassShot interprets such a plan, and returns its shot, all of it and all findings as
// JSON.
func glassShot(t *rapid.T, source string) (*plan.Shot, string) {
	r := interpret("glass.pull", source)
	if len(r.Plan.Shots) != 1 {
		t.Fatalf("no shot of\n%s%v", source, r.Findings)
	}
	shot, err := json.Marshal(r.Plan)
	if err != nil {
		t.Fatal(err)
	}
	findings, err := json.Marshal(r.Findings)
	if err != nil {
		t.Fatal(err)
	}
	return r.Plan.Shots[0], string(shot) + string(findings)
}

func TestGlassThatDoesNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		near := rapid.Float64Range(0.46, 1.9).Draw(t, "lamp")
		lens, with := [3]string{"squeeze 1", "play 0 deg", "planes 0 mm apart"}, ", diopter 0, tube 0 mm, shoots 24"
		_, same := glassShot(t, glassPlan(lens, with, near))
		// Remarks of the same length, so that all places stay.
		with = " #" + strings.Repeat("-", len(with)-2)
		for i, line := range lens {
			lens[i] = "#" + strings.Repeat("-", len(line)-1)
		}
		_, plain := glassShot(t, glassPlan(lens, with, near))
		if plain != same {
			a, b := diverge(plain, same)
			t.Errorf("it changes\n%s\nto\n%s", a, b)
		}
	})
}

// diverge returns two texts from shortly before they differ.
func diverge(a, b string) (string, string) {
	i := 0
	for i < len(a) && i < len(b) && a[i] == b[i] {
		i++
	}
	from := max(0, i-120)
	return a[from:min(len(a), i+120)], b[from:min(len(b), i+120)]
}

// TestSqueezeIsAWiderSensor compares a squeezed lens with a sensor that is as many times
// as wide: criterion, windows and chances are the same.
func TestSqueezeIsAWiderSensor(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := rapid.Float64Range(1.01, 2).Draw(t, "squeeze")
		near := rapid.Float64Range(0.46, 1.9).Draw(t, "lamp")
		source := strings.Replace(glassPlan([3]string{fmt.Sprintf("squeeze %v at rear", s), "# -", "# -"}, "", near), ", crop 2.39", "", 1)
		squeezed, _ := glassShot(t, source)
		wide, _ := glassShot(t, strings.NewReplacer("squeeze", "# squeeze", "sensor 24.89 x", fmt.Sprintf("sensor %v x", 24.89*s)).Replace(source))
		if !near9(float64(squeezed.CriterionMM), float64(wide.CriterionMM)) {
			t.Errorf("criterion %v and %v", squeezed.CriterionMM, wide.CriterionMM)
		}
		for i, p := range squeezed.Pulls {
			if o := wide.Pulls[i]; !near9(float64(p.Chance), float64(o.Chance)) || !near9(float64(p.Far), float64(o.Far)) {
				t.Errorf("pull %d: %v to %v, %v to %v", i+1, p.Chance, o.Chance, p.Far, o.Far)
			}
		}
	})
}

func near9(a, b float64) bool {
	return a == b || math.Abs(a-b) <= 1e-7*max(math.Abs(a), math.Abs(b))
}

// TestPlayIsLostOneWay: marks for both ways, and marks that were come to the same way,
// lose nothing; the other way the ring stays short by all of the play.
func TestPlayIsLostOneWay(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		play := rapid.Float64Range(0.1, 8).Draw(t, "play")
		near := rapid.Float64Range(0.46, 1.9).Draw(t, "lamp")
		chance := func(line string) plan.Number {
			s, _ := glassShot(t, glassPlan([3]string{line, "# -", "# -"}, "", near))
			return s.Pulls[0].Chance
		}
		firm, both := chance("# -"), chance(fmt.Sprintf("play %v deg, marked both ways", play))
		if firm != both {
			t.Errorf("marked both ways %v, without play %v", both, firm)
		}
		// The first rack goes nearer: marks that were come to so lose nothing.
		if got := chance(fmt.Sprintf("play %v deg, marked to closest", play)); got != firm {
			t.Errorf("the way of the marks: %v, not %v", got, firm)
		}
		s, _ := glassShot(t, glassPlan([3]string{fmt.Sprintf("play %v deg, marked to inf", play), "# -", "# -"}, "", near))
		first, second := s.Pulls[0], s.Pulls[1]
		if !near9(float64(first.PlayShift), play) || second.PlayShift != 0 {
			t.Errorf("short by %v and %v, play %v", first.PlayShift, second.PlayShift, play)
		}
		if turned := float64(second.HandDeg) - math.Abs(float64(second.ToDeg-second.FromDeg)); math.Abs(turned-play) > 1e-6 {
			t.Errorf("turning back the hand goes %v farther, play %v", turned, play)
		}
	})
}

// A wheel that is mapped to a part of the ring turns nowhere else: of a pull to or from
// there nothing follows of the hand. From 45 cm on, the part is drawn at random.
func TestNoChanceWhereTheWheelDoesNotGo(t *testing.T) {
	outside, inside := 0, 0
	cases.Check(t, manyPlans, func(t *rapid.T) {
		near := rapid.Float64Range(0.5, 1.4).Draw(t, "near")
		far := rapid.Float64Range(1.5, 4).Draw(t, "far")
		lamp := rapid.Float64Range(0.46, 6).Draw(t, "lamp")
		source := glassPlan([3]string{}, fmt.Sprintf(", travel 330 deg from %.3f m to %.3f m, wheel 80 mm", near, far), lamp)
		shot, found := glassShot(t, source)
		lamp, near, far = math.Round(lamp*1000)/1000, math.Round(near*1000)/1000, math.Round(far*1000)/1000
		if math.Abs(lamp-near) < 2e-3 || math.Abs(lamp-far) < 2e-3 || math.Abs(2-far) < 2e-3 {
			return // at the edge
		}
		at := []float64{2, lamp, math.Inf(1)}
		for i, p := range shot.Pulls {
			out := func(d float64) bool { return d < near || d > far }
			known := p.Chance.Known() || p.Peak.Known() || p.HandDeg.Known() || p.ChanceBand[0].Known() || p.OnPaper.Known() || p.Needed.Known()
			if want := !out(at[i]) && !out(at[i+1]); known != want {
				t.Fatalf("rack %d, from %v to %v, wheel from %v to %v: figures of the hand are %v, want %v\n%s", i+1, at[i], at[i+1], near, far, known, want, source)
			}
			if window := p.WindowHand[0].Known() || p.ToDeg.Known(); window == out(at[i+1]) {
				t.Fatalf("rack %d, to %v, wheel from %v to %v: a window or an angle is %v\n%s", i+1, at[i+1], near, far, window, source)
			}
			if out(at[i+1]) {
				outside++
			} else {
				inside++
			}
		}
		if !strings.Contains(found, "outside-travel") {
			t.Fatalf("infinity lies outside the wheel, and that is not told\n%s", source)
		}
	})
	if outside == 0 || inside == 0 {
		t.Errorf("%d racks outside, %d inside: both must be seen", outside, inside)
	}
}

// A macro lens behind a close-up lens, as two thin lenses in touch. Worked out by hand:
//
//	The lens: 100 mm, closest 30 cm at 1/1. c = min(2 f, D0/2) = 0.15 m. At closest it is
//	f' = D0/(2 + m + 1/m) = 0.3/4 = 75 mm. Set to 40 cm: q(D)/q(D0) = (0.3-0.15)/(0.4-0.15)
//	= 0.6, so f(D) = 100 - 25 x 0.6 = 85 mm.
//	The lens alone is sharp at x from itself with x + v = 0.4, x v/(x + v) = 0.085, so
//	x v = 0.034 and x = 0.2 + sqrt(0.04 - 0.034) = 0.277460 m, v = 0.122540 m.
//	With the close-up lens of 2 1/m: 1/F = 1/0.085 + 2, F = 0.0726496 m; v stays, so
//	1/d = 1/F - 1/v = 13.764706 - 8.160584 = 5.604122, d = 0.178440 m.
//	From the sensor that is d + v = 0.300980 m.
//
// So on a subject at 30.098 cm the ring stands at its mark of 40 cm.
func TestMacroBehindACloseupLens(t *testing.T) {
	const source = `plan "Two lenses"
rate 24
watched on 12 m screen from 18 m
camera A
  sensor 24.89 x 18.66 mm
  on tripod
lens "100"
  focal 100 mm
  stops f/2.8 to f/22
  closest 30 cm
  ratio 1/1 at 30 cm
  ring 300 deg, diameter 110 mm
  mark 40 cm at 137 deg
subject NORA at 28 cm
subject LAMP at 30.0980 cm
shot 1
  with camera A, lens "100", stop f/8, diopter 2
  start on NORA
  rack to LAMP, at 1 s, over 1 s
  hold 1 s
`
	r := interpret("two.pull", source)
	if len(r.Plan.Shots) != 1 {
		t.Fatal(r.Findings)
	}
	s := r.Plan.Shots[0]
	p := s.Pulls[0]
	for _, c := range []struct {
		what            string
		got, want, near float64
	}{
		{"the ring, degrees", float64(p.ToDeg), 137, 0.05},
		{"from the lens, metres", p.ToLens, 0.178440, 2e-5},
		{"focal length of both, metres", s.FocalTo(p.ToLens, 2), 0.0726496, 2e-5},
	} {
		if !(math.Abs(c.got-c.want) <= c.near) {
			t.Errorf("%s: %v, want %v", c.what, c.got, c.want)
		}
	}
}
