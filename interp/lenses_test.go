package interp_test

import (
	"math"
	"strings"
	"testing"

	"pullscore/interp"
	"pullscore/interp/lenses"
)

// lensesOf returns what is known of the lenses of a kit, which must have no errors.
func lensesOf(t *testing.T, kit string, stop lenses.Stop) map[string]*lenses.Lens {
	t.Helper()
	res := interp.Interpret("kit.pull", []byte(kit), interp.Options{})
	for _, d := range res.Findings {
		t.Errorf("%d: %s", d.Range.Start.Line, d.Message)
	}
	all := map[string]*lenses.Lens{}
	for _, l := range res.Lenses(stop) {
		all[l.Name] = l
	}
	return all
}

const lensKit = `watched on 12 m screen from 18 m

camera A
  sensor 24.89 x 18.66 mm

camera B
  sensor 36 x 24 mm

camera C
  sensor 6 x 4 mm
  records 100 px

lens "marked"
  focal 75 mm
  stops T2 to T22
  stops f/1.8 to f/20
  closest 75 cm
  ring 310 deg, diameter 110 mm
  mark 75 cm at 0 deg
  mark 1 m at 118 deg
  mark 2 m at 240 deg
  mark 5 m at 290 deg
  mark inf at 310 deg

lens "by law"
  focal 75 mm
  stops f/1.8 to f/22
  closest 75 cm
  ring 310 deg, diameter 110 mm

lens "unknown"
  focal 24 mm to 75 mm
  stops f/1.4 to f/22 at 24 mm
  stops f/2.8 to f/22 at 75 mm
  closest 75 cm
  keeps focus through zoom

lens "none"
  focal 75 mm
  stops T2 to T22
  closest 75 cm
  ring none
`

// Marks and the middles between them alternate; a middle is known less well than the
// marks beside it, and the next mark is the middle that is known least.
func TestStepsOfLenses(t *testing.T) {
	all := lensesOf(t, lensKit, lenses.Stop{Number: 2.8})
	l := all["marked"]
	if len(l.Steps) != 9 {
		t.Fatalf("%d steps, not 5 marks and 4 between them", len(l.Steps))
	}
	worst := l.Steps[1]
	for i, s := range l.Steps {
		if between := s.Kind == lenses.Between; between != (i%2 == 1) {
			t.Errorf("step %d is %s", i, s.Kind)
		} else if between && (s.Sigma <= l.Steps[i-1].Sigma || s.Sigma <= l.Steps[i+1].Sigma) {
			t.Errorf("%v m is known to %v deg, the marks beside it to %v and %v", s.Distance, s.Sigma, l.Steps[i-1].Sigma, l.Steps[i+1].Sigma)
		}
		if s.Sigma > worst.Sigma {
			worst = s
		}
		if want := math.Pi * 110 * float64(s.Deg) / 360; math.Abs(float64(s.Rim)-want) > 1e-9 {
			t.Errorf("%v deg is %v mm of rim, want %v", s.Deg, s.Rim, want)
		}
	}
	if l.Next != worst.Distance {
		t.Errorf("one more mark helps most at %v m, want %v", l.Next, worst.Distance)
	}
	for _, s := range all["by law"].Steps {
		if s.Kind != lenses.Between || s.Sigma.Known() || !s.Deg.Known() {
			t.Errorf("by law: %+v", s)
		}
	}
	if n := len(all["by law"].Steps); n != len(all["by law"].Sheet) {
		t.Errorf("by law: %d steps for %d distances", n, len(all["by law"].Sheet))
	}
	for _, name := range []string{"unknown", "none"} {
		if l := all[name]; len(l.Steps) > 0 || l.Next.Known() || l.Law != nil {
			t.Errorf("%s: %+v", name, l)
		}
	}
}

// The sheet is for the most demanding use of the lens: the longest focal length, and the
// smallest criterion of the cameras, which is never below a recorded pixel.
func TestSheetsOfLenses(t *testing.T) {
	all := lensesOf(t, lensKit, lenses.Stop{Number: 2.8})
	want := []float64{0.75, 0.82, 0.92, 1.04, 1.22, 1.48, 1.92, 2.8, 5.5, math.Inf(1)}
	for _, name := range []string{"marked", "by law", "unknown"} {
		l := all[name]
		if len(l.Sheet) != len(want) || l.Stop != "f/2.8" {
			t.Fatalf("%s: for %s measure %v", name, l.Stop, l.Sheet)
		}
		for i, d := range l.Sheet {
			if float64(d) != want[i] && math.Abs(float64(d)-want[i]) > 1e-9 {
				t.Errorf("%s: distance %d is %v m, want %v", name, i+1, d, want[i])
			}
		}
	}
	if l := all["none"]; len(l.Sheet) > 0 || l.Ringless == "" {
		t.Errorf("none: %+v", l)
	}
	wide := lensesOf(t, lensKit, lenses.Stop{})
	for name, stop := range map[string]string{"marked": "f/1.8", "by law": "f/1.8", "unknown": "f/2.8"} {
		if l := wide[name]; l.Stop != stop || !l.Widest {
			t.Errorf("%s: measured for %s, its widest is %s", name, l.Stop, stop)
		}
	}
	if l := lensesOf(t, lensKit, lenses.Stop{Number: 3, T: true})["marked"]; l.Stop != "T3" || len(l.Sheet) != 10 {
		t.Errorf("T3: for %s measure %v", l.Stop, l.Sheet) // f/2.7 there
	}
}

// What is cropped away is not part of the picture: the criterion is that of the rest.
func TestSheetOfCroppedCamera(t *testing.T) {
	const lens = "\nlens \"a\"\n  focal 75 mm\n  stops f/1.8 to f/22\n  closest 75 cm\n"
	cropped := lensesOf(t, "camera A\n  sensor 40 x 20 mm, crop 1\n"+lens, lenses.Stop{})["a"]
	same := lensesOf(t, "camera A\n  sensor 20 x 20 mm\n"+lens, lenses.Stop{})["a"]
	whole := lensesOf(t, "camera A\n  sensor 40 x 20 mm\n"+lens, lenses.Stop{})["a"]
	if cropped.Criterion != same.Criterion || cropped.Criterion >= whole.Criterion {
		t.Errorf("criteria: %v cropped, %v of that size, %v whole", cropped.Criterion, same.Criterion, whole.Criterion)
	}
}

// A macro lens without marks is by a law too: its factors are those of that law, and it
// has a step for each distance of the sheet.
func TestMacroLensByLaw(t *testing.T) {
	l := lensesOf(t, "lens \"macro\"\n  focal 100 mm\n  stops f/2.8 to f/32\n  closest 30 cm\n  ring 270 deg\n", lenses.Stop{Number: 2.8})["macro"]
	if l.Law == nil || len(l.Steps) != len(l.Sheet) || l.Next.Known() {
		t.Fatalf("%d steps for %d distances, next %v", len(l.Steps), len(l.Sheet), l.Next)
	}
	// K of that law is 0.25, and a window may be 1 -/+ 2.5 K times as wide.
	if least, most := l.Factor[0], l.Factor[1]; least != 0.375 || most != 1.625 {
		t.Errorf("windows are %v to %v times as wide", least, most)
	}
}

// A lens that goes too near behind a close-up lens or on a tube is told of with what it
// has on: it focuses closer so than alone.
func TestTooNearWithGlassOn(t *testing.T) {
	const plan = `plan "Near"
subject COIN at 35 cm
camera A
  sensor 24.89 x 14 mm
  on tripod
lens "75"
  focal 75 mm
  stops f/2 to f/22
  closest 70 cm
  ring 300 deg
shot 1
  with camera A, lens "75", stop f/8`
	for on, want := range map[string]string{
		"":                         `the focus cannot go to COIN (35 cm): lens "75" focuses no closer than 70 cm`,
		", diopter 2":              `the focus cannot go to COIN (35 cm): with diopter 2 lens "75" focuses no closer than 36.1 cm`,
		", tube 12 mm":             `the focus cannot go to COIN (35 cm): with a tube of 12 mm lens "75" focuses no closer than 42.3 cm`,
		", diopter 1, tube 1 mm":   `the focus cannot go to COIN (35 cm): with diopter 1 and a tube of 1 mm lens "75" focuses no closer than`,
		", diopter 3":              "",
		", diopter 2, tube 2.5 mm": "",
	} {
		got := ""
		for _, f := range interpret("plan.pull", plan+on+"\n  start on COIN\n  hold 1 s\n").Findings {
			if f.Code == "inside-closest" {
				got = f.Message
			}
		}
		if !strings.HasPrefix(got, want) || want == "" && got != "" {
			t.Errorf("%q: told %q, want %q", on, got, want)
		}
	}
}

// A part of the throw is no more than all of it: what is more is told at the mark, and
// nothing of the order of the marks.
func TestPartsOfTheThrow(t *testing.T) {
	for position, ok := range map[string]bool{"64 %": true, "6.4 of 10": true, "130 %": false, "12 of 10": false} {
		kit := "camera A\n  sensor 24.89 x 14 mm\n  on tripod\nlens \"75\"\n  focal 75 mm\n  stops f/2 to f/22\n  closest 70 cm\n  ring 300 deg\n  mark 2 m at " + position + "\n"
		codes := []string{}
		for _, f := range interpret("kit.pull", kit).Findings {
			codes = append(codes, f.Code)
		}
		if told := strings.Join(codes, " "); ok && told != "" || !ok && told != "out-of-range" {
			t.Errorf("mark at %s: told %q", position, told)
		}
	}
}

// A lens is told in the units that its own distances are written in, unless somebody
// says units: then in these.
func TestUnitsOfLenses(t *testing.T) {
	lens := func(lines string) string {
		return "camera A\n  sensor 24.89 x 14 mm\nlens \"50\"\n  focal 50 mm\n  stops f/1.8 to f/22\n  ring 300 deg, diameter 110 mm\n" + lines
	}
	feet, metres := "  mark 3' at 0 deg\n  mark 5' at 180 deg\n  mark 10' at 250 deg\n", "  mark 1 m at 0 deg\n  mark 2 m at 180 deg\n"
	for _, c := range []struct {
		kit  string
		feet bool
	}{
		{lens("  closest 3'\n"), true},
		{lens("  closest 36 in\n"), true},
		{lens("  closest (2' + 1')\n"), true},
		{lens(feet), true},
		{"let NEAREST = 90 cm\n" + lens("  closest NEAREST\n"+strings.Replace(feet, "3' at 0", "3' at 10", 1)), true},
		{lens("  closest 90 cm\n"), false},
		{lens(metres), false},
		{lens("  closest 90 cm\n" + strings.Replace(feet, "3' at 0", "3' at 10", 1)), false},
		{"units metric\n" + lens(feet), false},
		{"units imperial\n" + lens(metres), true},
	} {
		l := lensesOf(t, c.kit, lenses.Stop{})["50"]
		if l.Imperial != c.feet {
			t.Errorf("in feet: %v\n%s", l.Imperial, c.kit)
		}
		inches := 0
		for _, d := range l.Sheet[1 : len(l.Sheet)-1] { // between closest and infinity
			if n := float64(d) / 0.0254 * 2; math.Abs(n-math.Round(n)) < 1e-6 {
				inches++
			}
		}
		if between := len(l.Sheet) - 2; between < 2 || (inches == between) != c.feet {
			t.Errorf("%d of %d distances are whole halves of an inch, in feet: %v\n%s", inches, between, c.feet, c.kit)
		}
	}
}
