// The clock of a shot, by the rules of the language reference. The times are
// worked out by hand.

package interp_test

import (
	"math"
	"strings"
	"testing"

	"pullscore/interp/plan"
)

// theShot interprets the body of a scene and returns its shot.
func theShot(t *testing.T, body string) *plan.Shot {
	t.Helper()
	res := interpret("plan.pull", scene(body))
	if n := countErrors(res.Findings); n > 0 || len(res.Plan.Shots) != 1 {
		t.Fatalf("%d errors: %v", n, res.Findings)
	}
	return res.Plan.Shots[0]
}

func near(a plan.Number, b float64) bool { return math.Abs(float64(a)-b) < 1e-6 }

// A line of three one-syllable words lasts 3 / 1.5 / 150 minutes: 0.8 s.
func TestClockOfLines(t *testing.T) {
	tests := []struct {
		name, body string
		starts     []float64 // of the lines
		duration   float64
	}{
		{"one line", `NORA: "One two three."`, []float64{0}, 0.8},
		{"0.2 s pass between two speakers", "NORA: \"One two three.\"\nOTTO: \"One two three.\"", []float64{0, 1}, 1.8},
		{"none between two lines of one", "NORA: \"One two three.\"\nNORA: \"One two three.\"", []float64{0, 0.8}, 1.6},
		{"a pause replaces them", "NORA: \"One two three.\"\npause 0.1 s\nOTTO: \"One two three.\"", []float64{0, 0.9}, 1.7},
		{"an anchor replaces them", "NORA: \"One two three.\"\nOTTO: \"One two three.\", on end of NORA", []float64{0, 0.8}, 1.6},
		{"a time of its own", "NORA: \"One two three.\", lasting 2.1 s\nOTTO: \"One two three.\", from 5 s to 6 s", []float64{0, 5}, 6},
		{"the clock never goes back", "NORA: \"One two three.\", lasting 4 s\nOTTO: \"One two three.\", on 1 s\nNORA: \"One two three.\"", []float64{0, 1, 4.0}, 4.8},
		{"actions move the clock, cues do not", "action \"she sits\", lasting 2 s\ncue now\nNORA: \"One two three.\"", []float64{2}, 2.8},
		{"frames", "pause 12 fr\nNORA: \"One two three.\"", []float64{0.5}, 1.3},
		{"lasts fixes the end", "lasts 9 s\nNORA: \"One two three.\"", []float64{0}, 9},
		{"moves leave the clock", "NORA moves to 2 m over 3 s\nNORA: \"One two three.\"", []float64{0}, 3},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			s := theShot(t, test.body)
			for i, want := range test.starts {
				if !near(s.Lines[i].Start, want) {
					t.Errorf("line %d starts at %v, want %v", i, s.Lines[i].Start, want)
				}
			}
			if !near(s.Duration, test.duration) {
				t.Errorf("the shot lasts %v, want %v", s.Duration, test.duration)
			}
		})
	}
}

func TestClockOfPulls(t *testing.T) {
	type span struct{ start, land float64 }
	tests := []struct {
		name, body string
		pulls      []span
	}{
		{"where the clock stands", "pause 2 s\nrack to GATE, over 1 s", []span{{2, 3}}},
		{"one under another follow one another", "rack to GATE, over 1 s\nrack to NORA, over 1 s", []span{{0, 1}, {1, 2}}},
		{"a hold counts from the landing", "rack to GATE, over 1 s\nhold 1.5 s\nrack to NORA, over 1 s", []span{{0, 1}, {2.5, 3.5}}},
		{"a hold never goes back", "rack to GATE, over 1 s\npause 5 s\nhold 1 s\nrack to NORA, over 1 s", []span{{0, 1}, {5, 6}}},
		{"on a word below", "pause 1 s\nrack to GATE, on \"two\", over 1 s\nNORA: \"One two three.\", lasting 3 s", []span{{2, 3}}},
		{"landing on a word above", "pause 3 s\nNORA: \"One two three.\", lasting 3 s\nrack to GATE, landing on \"three\", over 1 s", []span{{4, 5}}},
		{"both give the length", "pause 3 s\nNORA: \"One two three.\", lasting 3 s\nrack to GATE, on NORA, landing on end of NORA", []span{{3, 6}}},
		{"a word moved by a time", "NORA: \"One two three.\", lasting 3 s\nrack to GATE, on \"two\" + 0.5 s, over 1 s", []span{{1.5, 2.5}}},
		{"on a cue that stands below", "rack to GATE, on knock, over 1 s\npause 2 s\ncue knock", []span{{2, 3}}},
		{"on a cue that hangs on a word", "cue knock on OTTO \"two\" - 0.2 s\npause 1 s\nOTTO: \"One two three.\", lasting 3 s\nrack to GATE, on knock, over 1 s", []span{{1.8, 2.8}}},
		{"on a timecode", "begins at 01:00:10:12\nrack to GATE, on 01:00:12:00, over 1 s", []span{{1.5, 2.5}}},
		{"a follow ends with the shot", "NORA moves to 3 m over 4 s, on 1 s\nfollow NORA", []span{{0, 5}}},
		{"a follow ends at its until", "NORA moves to 3 m over 4 s, on 1 s\nfollow NORA until 2 s", []span{{0, 2}}},
		{"a follow begins on its moment", "NORA moves to 3 m over 4 s, on 1 s\ncue go on 0.4 s\nfollow NORA on go + 0.5 s", []span{{0.9, 5}}},
		{"a follow from a word to another", "NORA: \"One two three.\", lasting 3 s\nNORA moves to 3 m over 4 s, on 1 s\nfollow NORA on \"two\", until end of NORA", []span{{1, 3}}},
		{"a follow ends at the next rack", "NORA moves to 3 m over 4 s, on 1 s\nfollow NORA\nrack to GATE, on 3 s, over 1 s", []span{{0, 3}, {3, 4}}},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			s := theShot(t, test.body)
			if len(s.Pulls) != len(test.pulls) {
				t.Fatalf("%d pulls, want %d", len(s.Pulls), len(test.pulls))
			}
			for i, want := range test.pulls {
				if p := s.Pulls[i]; !near(p.Start, want.start) || !near(p.Land, want.land) {
					t.Errorf("pull %d from %v to %v, want %v to %v", i+1, p.Start, p.Land, want.start, want.land)
				}
			}
		})
	}
}

// A rack without a length is the shortest that lands with the wanted chance, in
// tenths of a second; 1 s where none does.
func TestShortestRack(t *testing.T) {
	p := theShot(t, "pause 2 s\nrack to GATE").Pulls[0]
	took := float64(p.Land - p.Start)
	if took < float64(p.Needed) || took > float64(p.Needed)+0.1 || math.Abs(took*10-math.Round(took*10)) > 1e-6 {
		t.Errorf("it takes %v, and needs %v", took, p.Needed)
	}
	if p.Chance < 0.9 {
		t.Errorf("its chance is %v", p.Chance)
	}
	if p := theShot(t, "land 99.99 %\npause 2 s\nrack to GATE").Pulls[0]; !near(p.Land-p.Start, 1) {
		t.Errorf("a rack that never is sure takes %v, want 1 s", p.Land-p.Start)
	}
	if p := theShot(t, "quickest 3 s\npause 2 s\nrack to GATE").Pulls[0]; !near(p.Land-p.Start, 3) {
		t.Errorf("a rack in a slow film takes %v, want 3 s", p.Land-p.Start)
	}
}

// What racks do not say of their time stands among what the plan leaves out.
func TestUntimedRacksAreListed(t *testing.T) {
	for body, want := range map[string]string{
		"pause 2 s\nrack to GATE, over 1 s":                                "",
		"land 99.99 %\npause 2 s\nrack to GATE":                            "1 s: 1 rack does not say it",
		"quickest 3 s\npause 2 s\nrack to GATE\nhold 1 s\nrack to NORA":    "3 s: 2 racks do not say it",
		"quickest 800 ms\npause 2 s\nrack to GATE\nhold 1 s\nrack to NORA": "1 s to 1.3 s: 2 racks do not say it",
	} {
		got := ""
		for _, d := range interpret("plan.pull", scene(body)).Plan.Defaults {
			if d.Name == "over" && d.Shot == "1" {
				got = d.Value + ": " + d.Why
			}
		}
		if before, _, _ := strings.Cut(got, ": the shortest"); before != want {
			t.Errorf("%q lists %q, want %q", body, got, want)
		}
	}
}

func TestPlaces(t *testing.T) {
	tests := []struct {
		name, body string
		who        string
		at         float64 // seconds
		distance   float64
		side       float64
	}{
		{"as it stands", "", "LAMP", 0, 0.95, -0.1},
		{"relative to another", "subject KEY at NORA - 35 cm, 5 cm right", "KEY", 0, 1.35, 0.05},
		{"it goes where she goes", "subject KEY at NORA - 35 cm\nNORA moves to 3 m over 2 s", "KEY", 1, 2.0, 0},
		{"people go even", "NORA moves to 3.7 m over 2 s", "NORA", 0.5, 2.2, 0},
		{"or smooth", "NORA moves to 3.7 m over 2 s, smooth", "NORA", 1, 2.7, 0},
		{"a dolly changes every distance", "dolly in 40 cm over 2 s", "GATE", 2, 4.8, 0.8},
		{"and people's places are from where it stands", "dolly in 40 cm over 2 s\nNORA moves to 2 m over 2 s", "NORA", 2, 2.0, 0},
		{"a slant tape", "subject BENCH at 2 m, 60 deg left", "BENCH", 0, 1, -math.Sqrt(3)},
		{"another place in this shot", "subject NORA at 6'", "NORA", 0, 1.8288, 0},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			s := theShot(t, test.body)
			u := s.Subject(test.who)
			if d := s.DistanceAt(u, test.at); math.Abs(d-test.distance) > 1e-9 {
				t.Errorf("distance %v, want %v", d, test.distance)
			}
			if x := u.Across.At(test.at); math.Abs(x-test.side) > 1e-9 {
				t.Errorf("side %v, want %v", x, test.side)
			}
		})
	}
}

func TestTargets(t *testing.T) {
	s := theShot(t, "subject FACE at 3 m\nsubject HAND at 2.9 m\npause 2 s\nrack to FACE and HAND, over 1 s\nrack to GATE - 20 cm, over 1 s\nrack to 4 m, over 1 s\nrack to inf, over 2 s")
	set := s.Setting(0)
	a, b := s.FromTape(2.9, 0), s.FromTape(3, 0)
	if got, want := float64(s.Pulls[0].ToM), s.ToTape(set.Split(a, b), 0); math.Abs(got-want) > 1e-9 || got < 2.945 || got > 2.95 {
		t.Errorf("a split of 2.9 and 3 m goes to %v, want %v", got, want)
	}
	for i, want := range []float64{0, 5.0, 4.0, math.Inf(1)} {
		if got := float64(s.Pulls[i].ToM); i > 0 && got != want && math.Abs(got-want) > 1e-9 {
			t.Errorf("pull %d goes to %v, want %v", i+1, got, want)
		}
	}
	for i, want := range []string{"FACE and HAND", "GATE - 20 cm", "4 m", "inf"} {
		if got := s.Pulls[i].Target; got != want {
			t.Errorf("pull %d is to %q, want %q", i+1, got, want)
		}
	}
}

// A move that is used is its statements written out, with what it is given.
func TestMovesAreTheirStatements(t *testing.T) {
	plain := theShot(t, "pause 3 s\nOTTO: \"Take the lamp.\"\nrack to LAMP, landing on \"lamp\", over 1.2 s\nhold 1.5 s\nrack to NORA, over 800 ms, because \"so\"\n")
	text := scene("pause 3 s\nOTTO: \"Take the lamp.\"\nglance(LAMP, NORA, \"lamp\", 0.4 s * 2)\n") +
		"move glance(who, back, word, t)\nrack to who, landing on word, over 1.2 s\nhold 1.5 s\nrack to back, over t, because \"so\"\n"
	res := interpret("plan.pull", text)
	if countErrors(res.Findings) > 0 {
		t.Fatal(res.Findings)
	}
	used := res.Plan.Shots[0]
	for i, p := range plain.Pulls {
		q := used.Pulls[i]
		if !near(q.Start, float64(p.Start)) || !near(q.Land, float64(p.Land)) || q.Target != p.Target || q.Anchor != p.Anchor || q.Chance != p.Chance {
			t.Errorf("pull %d is %+v, want %+v", i+1, *q, *p)
		}
	}
}

// A plan has each hold from the landing that it counts from, as long as it is written, also
// where something else lasts longer.
func TestHoldsAreInThePlan(t *testing.T) {
	s := theShot(t, "rack to GATE, over 1 s\nhold 1.5 s\nrack to NORA, over 1 s\npause 5 s\nhold 2 s\nhold 0 s")
	want := []plan.Pause{{Start: 1, End: 2.5}, {Start: 3.5, End: 5.5}}
	if len(s.Held) != len(want) {
		t.Fatalf("%d holds, want %d", len(s.Held), len(want))
	}
	for i, h := range s.Held {
		if !near(h.Start, float64(want[i].Start)) || !near(h.End, float64(want[i].End)) {
			t.Errorf("hold %d is from %v to %v, want %v", i+1, h.Start, h.End, want[i])
		}
	}
}
