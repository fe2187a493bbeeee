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
subject "BELL FRAME" at 1.89 m, 8 cm right
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

// spokenMoves are moves with parameters in what is said, and the same written out.
const spokenMoves, spokenOut = `move ask(who, word, why)
  who: "You kept the {word} {ledger}.", lasting 2 s
  rack to who, on who "the {word}", over 1.4 s, because "{why} ({who})"
  action "{who} points", lasting 1 s
  again(who, "the {word} page", 2 s)
move again(who, what, long)
  OTTO: "Not {what} in {long}.", on end of "{who} points" + long, lasting long
  cue done on "Not {what}"
`, `  NORA: "You kept the second {ledger}.", lasting 2 s
  rack to NORA, on NORA "the second", over 1.4 s, because "who is there? (NORA)"
  action "NORA points", lasting 1 s
  OTTO: "Not the second page in 2 s.", on end of "NORA points" + 2 s, lasting 2 s
  cue done on "Not the second page"
`

// Parameters in braces are what the use of the move gives them.
func TestParametersInTexts(t *testing.T) {
	const body = "  rack to LAMP, on 0.5 s, over 1 s, because \"so\"\n  pause 2 s\n"
	for i, where := range []string{"", "edit \"cut.srt\"\n"} {
		files := []string{"cut.srt", "1\n00:00:10,000 --> 00:00:12,000\nYou kept the second ledger.\n\n2\n00:00:20,000 --> 00:00:22,000\nNot the second page in 2 s.\n"}
		var plans [2]string
		for n, src := range []string{
			where + "let HERO = NORA\n" + scene(body+"  ask(HERO, \"second\", \"who is there?\")\n") + spokenMoves,
			where + scene(body+spokenOut),
		} {
			res := interpret("plan.pull", src, files...)
			if n := countErrors(res.Findings); len(res.Plan.Shots) != 1 || n > 0 {
				t.Fatalf("%d errors: %v\n%s", n, res.Findings, src)
			}
			plans[n] = withoutPlaces(t, res.Plan.Shots[0])
		}
		if plans[0] != plans[1] {
			t.Errorf("%d: with the move\n%s\nwritten out\n%s", i, plans[0], plans[1])
		}
	}
}

// A move with texts to fill in says other words at each use.
func TestParametersInTextsOfEachUse(t *testing.T) {
	src := scene("  say(\"first\")\n  pause 3 s\n  say(\"second\")\n") +
		"move say(word)\n  NORA: \"The {word}.\", lasting 1 s\n  rack to LAMP, on \"{word}\", over 1 s\n"
	res := interpret("plan.pull", src)
	if len(res.Plan.Shots) != 1 || len(res.Plan.Shots[0].Lines) != 2 {
		t.Fatal(res.Findings)
	}
	s := res.Plan.Shots[0]
	if a, b := s.Lines[0].Text, s.Lines[1].Text; a != "The first." || b != "The second." {
		t.Errorf("said are %q and %q", a, b)
	}
	if a, b := s.Pulls[0].Anchor, s.Pulls[1].Anchor; a != `on "first"` || b != `on "second"` {
		t.Errorf("the racks are %q and %q", a, b)
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
