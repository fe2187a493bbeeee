package lists

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"pullscore/cmd/internal/console"
	"pullscore/cmd/internal/testing/film"
	"pullscore/interp"
	"pullscore/interp/plan"
)

const kit = `camera A
  sensor 24.89 x 18.66 mm
  on tripod
lens "75"
  focal 75 mm
  stops f/1.8 to f/21
  closest 75 cm
  ring 310 deg, diameter 110 mm
`

const ferry = `plan "Night, \"ferry\""
rate 25
watched on 12 m screen from 18 m
` + kit + `subject ILKA at 1.7 m
subject "A person, whose name is longer than others" at 3 m
shot 3A "The wrong ticket"
  with stop f/4
  begins at 10:00:00:00
  note "WATCH THE BOOM"
  start on ILKA
  rack to "A person, whose name is longer than others", on 1 s, over 1.2 s, because "a reason that goes on and on, so that it cannot stand on one line of eighty columns"
  rack to inf, on 4 s, over 2 s
  rack to ILKA, on 8 s, over 0.3 s
`

func interpret(t *testing.T, src string) *interp.Result {
	t.Helper()
	return interp.Interpret("ferry.pull", []byte(src), interp.Options{})
}

func TestText(t *testing.T) {
	var out bytes.Buffer
	if err := WriteText(console.Screen{W: &out, Width: 80}, interpret(t, ferry).Plan); err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{
		"Night, \"ferry\"\n25 frames a second, tape from the sensor\n",
		"3A  The wrong ticket\n  camera A, lens 75, f/4, CoC 0.022 mm, on a",
		"\n  note: WATCH THE BOOM\n",
		"   1  ILKA to \"A person, whose name is longer than others\" · 10:00:01:00 ·",
		"   2  A person, whose name is longer than others to inf · 10:00:04:00",
		"      starts ", " 1.7 m ", " ∞ ", "over ", "window", "lands",
		"Not in the plan; the default used\n", "3A puller:",
	} {
		if !strings.Contains(out.String(), want) {
			t.Errorf("%q is missing in\n%s", want, &out)
		}
	}
	for line := range strings.Lines(out.String()) {
		line = strings.TrimSuffix(line, "\n")
		if n := console.Columns(line); n > 80 || line != strings.TrimRight(line, " ") {
			t.Errorf("%d columns, or blanks at the end: %q", n, line)
		}
	}
}

// A chance under the wanted one is marked, one above it is not.
func TestTextMarksWhatMayFail(t *testing.T) {
	var out bytes.Buffer
	p := interpret(t, ferry).Plan
	if err := WriteText(console.Screen{W: &out, Width: 80, Colour: true}, p); err != nil {
		t.Fatal(err)
	}
	marked := 0
	for _, u := range p.Shots[0].Pulls {
		if u.Chance.Known() && u.Chance < p.Shots[0].Wanted {
			marked++
		}
	}
	if got := strings.Count(out.String(), "\x1b[33m"); got != marked || marked == 0 {
		t.Errorf("%d are marked, want %d of %d", got, marked, len(p.Shots[0].Pulls))
	}
}

func TestNoShots(t *testing.T) {
	var out bytes.Buffer
	if err := WriteText(console.Screen{W: &out, Width: 80}, interpret(t, kit).Plan); err != nil || !strings.Contains(out.String(), "No shot") {
		t.Errorf("printed %q, error %v", &out, err)
	}
	out.Reset()
	if err := WriteCSV(&out, interpret(t, kit).Plan); err != nil || strings.Count(out.String(), "\n") != 1 {
		t.Errorf("printed %q, error %v", &out, err)
	}
}

// The columns of the CSV that the JSON has too hold the same.
func TestCSVAgreesWithJSON(t *testing.T) {
	for _, src := range []string{ferry, film.Scene(3, 7)} {
		res := interpret(t, strings.Replace(src, "use \"../kit.pull\"", kit+"lens \"50\"\n  focal 50 mm\n  stops f/1.8 to f/21\n  closest 60 cm\n  ring 300 deg, diameter 110 mm\ncamera B\n  sensor 24.89 x 18.66 mm\n  on dolly\npuller NEVO\n  hand 4.4 bit/s\n", 1))
		var c, j bytes.Buffer
		if err := WriteCSV(&c, res.Plan); err != nil {
			t.Fatal(err)
		}
		if err := WriteJSON(&j, res.Plan, res.Findings); err != nil {
			t.Fatal(err)
		}
		rows, err := csv.NewReader(&c).ReadAll()
		if err != nil {
			t.Fatal(err)
		}
		var list struct {
			Shots []struct {
				ID    string
				Pulls []map[string]any
				Ring  struct{ Kind string }
			}
			Findings []any
		}
		if err := json.Unmarshal(j.Bytes(), &list); err != nil {
			t.Fatal(err)
		}
		n := 1
		for _, shot := range list.Shots {
			for _, pull := range shot.Pulls {
				if shot.Ring.Kind != "" { // the JSON says it once a shot
					pull["ring_kind"] = shot.Ring.Kind
				}
				compare(t, rows[0], rows[n], pull)
				n++
			}
		}
		if n != len(rows) || n < 3 {
			t.Errorf("%d rows, and the JSON has %d pulls", len(rows)-1, n-1)
		}
	}
}

func compare(t *testing.T, head, row []string, pull map[string]any) {
	t.Helper()
	for i, name := range head {
		value, ok := inJSON(pull, name)
		want := ""
		switch v := value.(type) {
		case float64:
			want = strings.TrimSuffix(fmt.Sprintf("%.9g", v), ".0")
			var back float64
			fmt.Sscan(row[i], &back)
			if math.Abs(back-v) > 1e-9*math.Abs(v) {
				t.Errorf("%s: %s, want %s", name, row[i], want)
			}
			continue
		case string:
			want = v
		case nil:
			if ok {
				want = "inf"
			} else if strings.HasSuffix(name, "_timecode") || name == "plan" || name == "shot" || strings.HasPrefix(name, "window_") {
				continue
			}
		}
		if row[i] != want {
			t.Errorf("%s: %q, want %q", name, row[i], want)
		}
	}
}

// inJSON returns the value of a column where the JSON of a pull has it: among its
// fields, in its miss or as an end of a band.
func inJSON(pull map[string]any, name string) (value any, ok bool) {
	if value, ok = pull[name]; ok {
		return value, ok
	}
	if miss, _ := pull["miss"].(map[string]any); miss != nil {
		if value, ok = miss[name]; ok {
			return value, ok
		}
	}
	for i, end := range []string{"_from", "_to"} {
		if figure, is := strings.CutSuffix(name, end); is {
			if band, _ := pull[figure+"_band"].([]any); band != nil {
				return band[i], true
			}
		}
	}
	return nil, false
}

func TestOnly(t *testing.T) {
	p := interpret(t, ferry+"shot 4\n  with stop f/8\n  start on ILKA\n  lasts 1 s\n").Plan
	only, ok := Only(p, "4")
	if !ok || len(only.Shots) != 1 || only.Shots[0].ID != "4" || len(p.Shots) != 2 {
		t.Errorf("only: %+v", only)
	}
	for _, d := range only.Defaults {
		if d.Shot == "3A" {
			t.Errorf("a default of another shot: %+v", d)
		}
	}
	if _, ok := Only(p, "5"); ok {
		t.Error("a shot that is not there")
	}
}

// Under each pull onto somebody stands how far they may miss the mark; of a follow, how
// often it is sharp; below all, how often somebody is whom the focus rests on. One under
// what is wanted is marked.
func TestTextTellsMoments(t *testing.T) {
	src := strings.Replace(ferry, "stop f/4", "stop f/1.8", 1) +
		"  follow ILKA, on 9 s, until 13 s\n  ILKA moves to 1.2 m over 2 s on 9.5 s, even\n  lasts 15 s\n"
	res := interpret(t, src)
	s := res.Plan.Shots[0]
	var out bytes.Buffer
	if err := WriteText(console.Screen{W: &out, Width: 200}, res.Plan); err != nil {
		t.Fatal(err)
	}
	in := style(s)
	follow := s.Pulls[3]
	for _, want := range []string{
		"starts on ILKA: may miss −", "may miss " + in.Miss(float64(s.Pulls[0].Miss.SoftForward), float64(s.Pulls[0].Miss.SoftBack)) + " sharp, ",
		"before it shows; 10 cm nearer is ", "at the rim",
		"sharp " + in.Chance(float64(follow.SharpShare), 0.9) + ", at worst " + in.Chance(float64(follow.WorstShare), 0.9) + " from " + in.Time(float64(follow.WorstAt)),
		"ILKA, 0 s to 1 s: sharp ", "all through ",
	} {
		if !strings.Contains(out.String(), want) {
			t.Errorf("%q is missing in\n%s", want, &out)
		}
	}
	if s.Pulls[1].Miss != nil || strings.Count(out.String(), "may miss") != 4 {
		t.Errorf("nobody stands at infinity:\n%s", &out)
	}
}

// Feet and inches by the yard of 0.9144 m (international agreement, 1959).
// What has no ring, or no chance, has an empty cell; a chance below what is wanted
// never reads as enough.
func TestRow(t *testing.T) {
	none := plan.None()
	s := &plan.Shot{Imperial: true, Wanted: 0.9}
	u := &plan.Pull{Start: 1, Land: 2.5, FromM: plan.Number(math.Inf(1)), ToM: 1.683, FromDeg: none, ToDeg: 9.96, HandDeg: 120.4, WindowHand: plan.NoInterval(), Chance: 0.896}
	want := []string{"1 s", "1.5 s", "∞", "5′6¼″", "", "10°", "120°", "", "<90 %"}
	if got := row(s, u); !slices.Equal(got, want) {
		t.Errorf("%q, want %q", got, want)
	}
	u.Chance = none
	if got := row(s, u); got[8] != "" {
		t.Errorf("no chance: %q", got[8])
	}
}
