// A shot speaks the scale of its own stop.

package interp_test

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"pullscore/interp/stops"
	"pullscore/lang/testing/cases"
)

// written is a stop in a text, and behind is one on the lens's other scale, which
// stands in brackets.
var (
	written = regexp.MustCompile(`(?:f/|\bT)[0-9]+(?:\.[0-9]+)?`)
	behind  = regexp.MustCompile(` \((?:f/|T)[0-9.]+\)`)
	metered = regexp.MustCompile(`makes it meter [^ ,;]+`)
)

// Every stop that is printed of a shot is on the scale of its own stop; the meter
// keeps its own, and what the kit says of a lens is not of the shot.
func TestAShotSpeaksItsOwnScale(t *testing.T) {
	var cured, said int
	cases.Check(t, manyPlans, func(t *rapid.T) {
		src := genPlan(t)
		res := interpret("plan.pull", src)
		_, clauses, _ := strings.Cut(src, "\n  with ")
		letter := written.FindString(clauses)[:1]
		meter := written.FindString(clauses[strings.Index(clauses, "meter"):])[:1]
		check := func(text, letter string) int {
			list := written.FindAllString(text, -1)
			if i := slices.IndexFunc(list, func(s string) bool { return s[:1] != letter }); i >= 0 {
				t.Fatalf("%s is on another scale than %s, in %q\n%s", list[i], letter, text, src)
			}
			return len(list)
		}
		for _, f := range res.Findings {
			if f.Code == "stop-not-on-lens" { // says what the kit says of the lens
				continue
			}
			said += check(f.Message+" "+f.Detail, letter)
			for _, c := range f.Cures {
				check(metered.FindString(c.Text), meter)
				cured += check(metered.ReplaceAllString(c.Text, ""), letter)
			}
		}
		if len(res.Plan.Shots) == 0 {
			return
		}
		sh := res.Plan.Shots[0]
		check(sh.Stop, letter)
		check(behind.ReplaceAllString(sh.BothStops(), ""), letter)
	})
	if cured == 0 || said == 0 {
		t.Errorf("%d stops in cures, %d in findings", cured, said)
	}
}

// scales is a kit with every kind of lens, and two people whom no wide stop holds.
const scales = `plan "Scales"
rate 24
watched on 12 m screen from 18 m
camera A
  sensor 36 x 24 mm
  iso 800
  on tripod
lens "both"
  focal 75 mm
  stops T1.9 to T22
  stops f/1.8 to f/21
  closest 75 cm
  ring 310 deg, diameter 110 mm
lens "T"
  focal 75 mm
  stops T1.9 to T22
  closest 75 cm
  ring 310 deg, diameter 110 mm
lens "f"
  focal 75 mm
  stops f/1.8 to f/22
  closest 75 cm
  ring 310 deg, diameter 110 mm
subject ANNA at 3 m, deep 20 cm
subject BRAM at 150 cm
shot 1
  with lens "LENS", stop STOP, meter METER
  start on BRAM
  pause 2 s
  rack to ANNA, over 2 s, because "the letter"
  hold 2 s
`

// of puts a lens, a stop and a meter into the kit.
func scaled(lens, stop, meter string) string {
	return strings.NewReplacer("LENS", lens, "STOP", stop, "METER", meter).Replace(scales)
}

// What stops says of a shot is on its scale too: the table, the sentences and the
// ends of the window. Every stop of the table can be written, and is what it says.
func TestStopsSpeakTheScaleOfTheShot(t *testing.T) {
	for _, c := range []struct{ lens, stop, widest, smallest, behind string }{
		{"both", "T2.8", "T1.9", "T22", "f/2.7"},
		{"both", "f/2.8", "f/1.8", "f/21", "T3"},
		{"T", "T2.8", "T1.9", "T22", ""},
		{"T", "f/2.8", "f/1.9", "f/22", ""},
		{"f", "f/2.8", "f/1.8", "f/22", ""},
		{"f", "T2.8", "T1.8", "T22", ""},
	} {
		res, a, ok := findStops(scaled(c.lens, c.stop, "f/5.6"), stops.Options{Levers: true})
		if !ok {
			t.Fatalf("%+v: no answer: %v", c, res.Findings)
		}
		if first, last := a.Tried[0].Stop, a.Tried[len(a.Tried)-1].Stop; first != c.widest || last != c.smallest {
			t.Errorf("%+v: from %s to %s", c, first, last)
		}
		if got := a.Behind(a.SetF); got != c.behind {
			t.Errorf("%+v: behind it stands %q", c, got)
		}
		for _, s := range a.Says() {
			for _, w := range written.FindAllString(behind.ReplaceAllString(s, ""), -1) {
				if w[:1] != c.stop[:1] {
					t.Errorf("%+v: %s in %q", c, w, s)
				}
			}
		}
		if !slices.ContainsFunc(a.Tried, func(v stops.Verdict) bool { return v.Stop == a.Set && v.Number == a.SetF }) {
			t.Errorf("%+v: the set stop %s is not in the table", c, a.Set)
		}
		for _, v := range a.Tried {
			again := interpret("plan.pull", scaled(c.lens, v.Stop, "f/5.6")).Plan.Shots
			if len(again) != 1 || again[0].FNumber != v.Number || again[0].Pulls[0].Chance != v.Racks[0].Probability {
				t.Errorf("%+v: %s written is not what was told", c, v.Stop)
			}
		}
	}
}

var stopRow = regexp.MustCompile(`(?:(f/|T)([\d.]+) on (?:it|a lens)|, transmittance|-number of (f/|T)([\d.]+)$)`)

// The rows of an independent model, on whole plans.
func TestStopsAreTheModels(t *testing.T) {
	rows := 0
	eachCase(t, "stops", func(name string, want, within float64) {
		rows++
		m := stopRow.FindStringSubmatch(name)
		if m == nil {
			t.Fatalf("no stop: %s", name)
		}
		lens, stop := "both", m[1]+m[2]+m[3]+m[4]
		src := ""
		switch {
		case strings.Contains(name, "transmittance 0.81"): // so f/1.8 is T2
			src = strings.Replace(scaled("both", "T2", "f/5.6"), "stops T1.9 to T22", "stops T2 to T22", 1)
		case strings.Contains(name, "with T alone"):
			lens = "T"
			fallthrough
		default:
			src = scaled(lens, stop, "f/5.6")
		}
		sh := slowShot(t, src)
		got := sh.FNumber
		if strings.Contains(name, "T-number") {
			got = sh.TNumber
		}
		if d := float64(got)/want - 1; d > within || d < -within {
			t.Errorf("%s: %v, the model has %v", name, got, want)
		}
	})
	if rows != 25 {
		t.Errorf("%d rows, not 25", rows)
	}
}

// The set-up says both stops where the lens has both, and the meter keeps its letter.
func TestBothStopsOfASetUp(t *testing.T) {
	for _, c := range []struct{ lens, stop, meter, both, cure string }{
		{"both", "T2.8", "T6.3", "T2.8 (f/2.7)", "which makes it meter T"},
		{"both", "f/2.8", "T6.3", "f/2.8 (T3)", "which makes it meter T"},
		{"T", "T2.8", "f/6.3", "T2.8", "which makes it meter f/"},
		{"f", "T2.8", "f/6.3", "T2.8", "which makes it meter f/"},
	} {
		res := interpret("plan.pull", scaled(c.lens, c.stop, c.meter))
		if got := res.Plan.Shots[0].BothStops(); got != c.both {
			t.Errorf("%+v: %s", c, got)
		}
		found := false
		for _, f := range res.Findings {
			for _, k := range f.Cures {
				found = found || strings.Contains(k.Text, c.cure)
			}
		}
		if !found {
			t.Errorf("%+v: no cure has %q: %v", c, c.cure, res.Findings)
		}
	}
}
