package interp_test

import (
	"encoding/json"
	"strings"
	"testing"

	"pullscore/interp/plan"
)

// namedScene is a scene whose names and groups are lets.
const namedScene = `plan "Names in lets"
rate 24
watched on 12 m screen from 18 m
use "kit.pull"
subject NORA at 1.7 m
subject LAMP at HERO + 10 cm
subject "BELL FRAME" at 1.9 m, 8 cm right
voice OTTO
let HERO = NORA
let LEAD = HERO
let CALLER = OTTO
let EYES = HERO - 5 cm
let BOTH = LEAD and LAMP
let ALL = BOTH and "BELL FRAME"
move to_all(who)
  rack to who, on 12 s, over 3 s, because "all of it"
shot 1
  with stop f/21
  start on BOTH
  LEAD: "Where is the rope?"
  CALLER: "On the quay.", on end of HERO + 0.5 s
  rack to LEAD, on CALLER "quay", over 2 s
  rack to EYES, at 6 s, over 2 s
  HERO moves 5 cm nearer over 2 s, on 8 s
  follow LEAD until 11 s
  to_all(ALL)
`

// A name or a group of a let is what it stands for, wherever it stands.
func TestNamesInLetsAreWhatTheyStandFor(t *testing.T) {
	written := namedScene
	for _, of := range [][2]string{
		{"let HERO = NORA\n", ""}, {"let LEAD = HERO\n", ""}, {"let CALLER = OTTO\n", ""}, {"let EYES = HERO - 5 cm\n", ""},
		{"let BOTH = LEAD and LAMP\n", ""}, {"let ALL = BOTH and \"BELL FRAME\"\n", ""},
		{"to_all(ALL)", `rack to NORA and LAMP and "BELL FRAME", on 12 s, over 3 s, because "all of it"`},
		{"EYES", "NORA - 5 cm"}, {"BOTH", "NORA and LAMP"}, {"HERO", "NORA"}, {"LEAD", "NORA"}, {"CALLER", "OTTO"},
	} {
		written = strings.ReplaceAll(written, of[0], of[1])
	}
	var plans [2]string
	for i, src := range []string{namedScene, written} {
		res := interpret("plan.pull", src)
		if n := countErrors(res.Findings); n > 0 || len(res.Plan.Shots) != 1 {
			t.Fatalf("%d errors: %v\n%s", n, res.Findings, src)
		}
		plans[i] = withoutPlaces(t, res.Plan.Shots[0])
	}
	if plans[0] != plans[1] {
		t.Errorf("with lets\n%s\nwithout\n%s", plans[0], plans[1])
	}
	for _, text := range []string{`"NORA and LAMP and \"BELL FRAME\""`, `"NORA - 5 cm"`} {
		if !strings.Contains(plans[0], text) {
			t.Errorf("no pull goes to %s:\n%s", text, plans[0])
		}
	}
}

// withoutPlaces writes a shot without where in the text its pieces stand, and what
// a moment hangs on in the words of the plan.
func withoutPlaces(t *testing.T, s *plan.Shot) string {
	t.Helper()
	text, err := json.Marshal(s)
	if err != nil {
		t.Fatal(err)
	}
	var data any
	if err := json.Unmarshal(text, &data); err != nil {
		t.Fatal(err)
	}
	var strip func(v any)
	strip = func(v any) {
		switch v := v.(type) {
		case map[string]any:
			for key, inner := range v {
				switch strings.ToLower(key) {
				case "at", "range", "line", "anchor", "source", "from_move":
					delete(v, key)
					continue
				}
				strip(inner)
			}
		case []any:
			for _, inner := range v {
				strip(inner)
			}
		}
	}
	strip(data)
	text, err = json.MarshalIndent(data, "", " ")
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}
