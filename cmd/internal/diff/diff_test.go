package diff

import (
	"bytes"
	"encoding/json"
	"fmt"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"pullscore/cmd/internal/console"
	"pullscore/interp"
	"pullscore/interp/plan"
	"pullscore/lang"
)

// kit is the camera and the lens of the plans here.
const kit = `camera A
  sensor 24.89 x 18.66 mm
  on tripod
lens "75"
  focal 75 mm
  stops f/1.8 to f/21
  closest 75 cm
  ring 310 deg, diameter 110 mm
`

// scene is a plan to change in one place after the other.
const scene = `plan "Jetty"
rate 24
` + kit + `lens "75 old"
  focal 75 mm
  stops f/1.8 to f/21
  closest 75 cm
  ring 200 deg, diameter 80 mm
subject MARRIT at 1.6 m
subject OSKEL at 2.9 m
subject TICKET at 1.2 m
shot 1 "One"
  with camera A, lens "75", stop f/4
  start on MARRIT
  MARRIT: "We had two of these", from 0 s to 1 s
  rack to OSKEL, at 1 s, over 1.2 s, because "he speaks"
  OSKEL: "Who has the other", from 3 s to 4 s
  cue bell at 4 s
  rack to TICKET, at 4.2 s, over 1.4 s, because "she sees it"
  rack to OSKEL, at 7.6 s, over 1.4 s, because "he waits"
  OSKEL moves to 3.4 m over 1 s, at 9.5 s
  pause 1 s
shot 2 "Two"
  with camera A, lens "75", stop f/4
  start on OSKEL
  pause 2 s
`

// state interprets a text; its findings may hold no mistakes of form.
func state(t interface {
	Helper()
	Fatalf(string, ...any)
}, text string) State {
	t.Helper()
	res := interp.Interpret("jetty.pull", []byte(text), interp.Options{})
	for _, d := range res.Findings {
		if d.Severity == lang.Error {
			t.Fatalf("%d: %s: %s\n%s", d.Range.Start.Line, d.Code, d.Message, text)
		}
	}
	return State{Name: "jetty.pull", Plan: res.Plan, Findings: res.Findings}
}

func edited(edit []string) string {
	text := scene
	for i := 0; i+1 < len(edit); i += 2 {
		if !strings.Contains(text, edit[i]) {
			panic("the scene has no " + edit[i])
		}
		text = strings.Replace(text, edit[i], edit[i+1], 1)
	}
	return text
}

func TestCompare(t *testing.T) {
	for _, test := range []struct {
		name string
		edit []string // old, new, old, new ...
		want []string // how the phrases begin
	}{
		{"nothing", nil, nil},
		{"a comment", []string{"subject OSKEL", "# taller now\nsubject OSKEL"}, nil},
		{"another layout", []string{"  start on MARRIT", "\tstart   on MARRIT"}, nil},
		{"another order of subjects", []string{"subject TICKET at 1.2 m\n", "", "subject MARRIT", "subject TICKET at 1.2 m\nsubject MARRIT"}, nil},
		{"a third of a frame", []string{"at 4.2 s", "at 4.214 s"}, nil},
		{"a frame", []string{"at 4.2 s", "at 4.242 s"}, []string{"1 rack 2 to TICKET: 1 frame (0.04 s) later"}},
		{"a name of the plan", []string{`"Jetty"`, `"Pier"`}, []string{"title Jetty -> Pier"}},
		{"a name of a shot", []string{`"Two"`, `"Too"`}, []string{"2: title Two -> Too"}},
		{"a quicker rack", []string{`over 1.2 s`, `over 0.5 s`}, []string{
			"1 rack 1 to OSKEL: chance >99 % -> ", "1 new warning: pull 1: MARRIT to OSKEL lands",
		}},
		{"all later", []string{"at 1 s,", "at 2 s,", "at 4.2 s", "at 5.2 s", "at 7.6 s", "at 8.6 s", "over 1 s, at 9.5 s", "over 1 s, at 10.5 s"}, []string{
			"1: lasts 10.5 s -> 11.5 s", "1 pulls 1 to 3: 24 frames (1 s) later", "1 OSKEL moves: 24 frames (1 s) later",
		}},
		{"earlier", []string{"at 7.6 s", "at 7.1 s"}, []string{"1 rack 3 to OSKEL: 12 frames (0.5 s) earlier, sharp after it 57 % -> 68 %"}},
		{"a rack put in between", []string{"  rack to TICKET", "  rack to MARRIT, at 2.6 s, over 1.2 s, because \"she waits\"\n  rack to TICKET"}, []string{
			"1 rack 2 to MARRIT: new, lands at 3.8 s, chance", "1 rack 3 to TICKET: ",
		}},
		{"a rack taken out", []string{"  rack to OSKEL, at 7.6 s, over 1.4 s, because \"he waits\"\n", ""}, []string{
			"1 rack 3 to OSKEL: gone",
		}},
		{"another stop", []string{"f/4", "f/2.8"}, []string{
			"1: stop f/4 -> f/2.8", "1 rack 1 to OSKEL: needs", "1 rack 2 to TICKET: needs", "1 rack 3 to OSKEL: needs",
		}},
		{"another lens", []string{`lens "75",`, `lens "75 old",`}, []string{
			"1: lens 75 -> 75 old, starting mark ", "1 rack 1 to OSKEL: ", "1 rack 2 to TICKET: ", "1 rack 3 to OSKEL: ",
		}},
		{"another place", []string{"TICKET at 1.2 m", "TICKET at 1.3 m"}, []string{
			"1 rack 2 to TICKET: mark 15.4° farther, at ", "1 rack 3 to OSKEL: ", "1 TICKET: 1.2 m -> 1.3 m", "2 TICKET: 1.2 m -> 1.3 m",
		}},
		{"to the side", []string{"TICKET at 1.2 m", "TICKET at 1.2 m, 8 cm left"}, []string{"1 TICKET: in the middle -> 8 cm left", "2 TICKET: in the middle -> 8 cm left"}},
		{"another shot", []string{`shot 2 "Two"`, `shot 3 "Two"`}, []string{"3: new, 0 pulls", "2: gone"}},
		{"whom it goes to", []string{"rack to TICKET", "rack to MARRIT"}, []string{"1 rack 2: to TICKET -> MARRIT", "1 rack 3 to OSKEL: "}},
		{"what it hangs on", []string{"rack to TICKET, at 4.2 s", "rack to TICKET, on bell + 0.2 s", "cue bell at 4 s", "cue bell at 4 s"}, []string{"1 rack 2 to TICKET: needs 0.86 s -> 1.02 s, cue on 4.2 s -> on bell + 0.2 s"}},
		{"another line", []string{"Who has the other", "Who has the last"}, []string{
			"1 OSKEL “Who has the last”: new", "1 OSKEL “Who has the other”: gone",
		}},
		{"a line later", []string{"3 s to 4 s", "2.75 s to 3.75 s"}, []string{"1 OSKEL “Who has the other”: 6 frames (0.25 s) earlier"}},
		{"lines later", []string{"0 s to 1 s", "0.5 s to 1.5 s", "3 s to 4 s", "2.75 s to 3.75 s"}, []string{
			"1 2 lines: from 6 frames (0.25 s) earlier to 12 frames (0.5 s) later",
		}},
		{"a note", []string{"  start on MARRIT", "  note \"WATCH\"\n  start on MARRIT"}, []string{"1 note “WATCH”: new"}},
		{"a cue", []string{"bell at 4 s", "bell at 4.5 s"}, []string{"1 cue bell: 12 frames (0.5 s) later"}},
		{"a move", []string{"moves to 3.4 m", "moves to 3.6 m"}, []string{"1 rack 3 to OSKEL: sharp after it 57 % -> 50 %", "1 OSKEL moves: to 3.4 m -> 3.6 m"}},
		{"one who sways", []string{"subject MARRIT at 1.6 m", "subject MARRIT at 1.6 m, sways 8 cm"}, []string{"1: sharp until the first pull >99 % -> 44 %", "1 MARRIT: sways 5 mm -> 8 cm", "2 MARRIT: sways 5 mm -> 8 cm"}},
	} {
		before, after := state(t, scene), state(t, edited(test.edit))
		d := Compare(before, after)
		got := slices.DeleteFunc(d.Lines(), func(s string) bool { // the findings are told elsewhere
			return strings.Contains(s, "], jetty.pull:") && !strings.Contains(s, "hard-to-land")
		})
		if !slices.EqualFunc(got, test.want, strings.HasPrefix) {
			t.Errorf("%s:\n%s\nwant\n%s", test.name, strings.Join(got, "\n"), strings.Join(test.want, "\n"))
		}
		if d.Differs() != (test.want != nil) {
			t.Errorf("%s: differs %v", test.name, d.Differs())
		}
	}
}

// A follow that became harder says so in its worst half second.
func TestFollowsAreCompared(t *testing.T) {
	with := func(over string) State {
		return state(t, edited([]string{"  rack to OSKEL, at 7.6 s, over 1.4 s, because \"he waits\"\n", "  follow TICKET, on 6 s\n  TICKET moves to 80 cm over " + over + " on 6.5 s\n"}))
	}
	d := Compare(with("2.5 s"), with("1.2 s"))
	if !slices.ContainsFunc(d.Lines(), func(s string) bool {
		return strings.HasPrefix(s, "1 follow 3 to TICKET: ") && strings.Contains(s, "at its worst ")
	}) {
		t.Errorf("%s", strings.Join(d.Lines(), "\n"))
	}
}

func TestCompareWithNothing(t *testing.T) {
	is := state(t, scene)
	came, gone := Compare(State{}, is), Compare(is, State{})
	if came.Change != New || came.Shots[0].Change != New || came.Shots[0].Pulls[2].Change != New || came.Title != "Jetty" {
		t.Errorf("came: %+v", came)
	}
	if gone.Change != Gone || gone.Shots[1].Change != Gone || gone.Shots[0].Pulls[0].Change != Gone || gone.Title != "Jetty" {
		t.Errorf("gone: %+v", gone)
	}
}

// Where a state has errors, nobody knows whether a shot that it lacks is gone.
func TestShotThatAnErrorHides(t *testing.T) {
	was := state(t, scene)
	res := interp.Interpret("jetty.pull", []byte(strings.Replace(scene, "focal 75 mm", "focal 75 kg", 1)), interp.Options{})
	d := Compare(was, State{Plan: res.Plan, Findings: res.Findings})
	if !d.Faulty[1] || d.Shots[0].Change != Gone || !d.Shots[0].Unsure || !strings.Contains(d.Shots[0].Note(), "or an error") {
		t.Errorf("%+v: %s", d.Faulty, d.Shots[0].Note())
	}
	if d := Compare(was, State{Plan: &plan.Plan{}}); d.Shots[0].Unsure {
		t.Error("unsure of a shot in a plan without errors")
	}
}

// A finding about a pull is the same though the pull has another number, and
// gone with its pull.
func TestFindingsFollowTheirPulls(t *testing.T) {
	quick := []string{"over 1.2 s", "over 0.5 s"}
	before := state(t, edited(quick))
	putIn := state(t, edited(append(quick, "  rack to OSKEL", "  rack to TICKET, at 0 s, over 0.8 s\n  rack to OSKEL")))
	for _, f := range Compare(before, putIn).Shots[0].Findings {
		if f.Change == Gone && f.Is.Code == "hard-to-land" {
			t.Errorf("gone, with its pull still there: %s", f.Is.Message)
		}
	}
	takenOut := state(t, edited([]string{"  rack to OSKEL, at 1 s, over 1.2 s, because \"he speaks\"\n", ""}))
	if !slices.ContainsFunc(Compare(before, takenOut).Shots[0].Findings, func(f Finding) bool {
		return f.Change == Gone && f.Is.Code == "hard-to-land"
	}) {
		t.Error("a finding stays, and its pull is gone")
	}
}

func TestFigureOfAFindingMayChange(t *testing.T) {
	at := func(message string) []lang.Diagnostic { return []lang.Diagnostic{{Code: "x", Message: message}} }
	if got := (pairs{}).findings(at("stands at 1.62 m, 3 times"), at("stands at 1.7 m, 4 times")); len(got) != 0 {
		t.Errorf("%v", got)
	}
	if got := (pairs{}).findings(at("stands at 1.62 m"), at("stands at 1.62 ft")); len(got) != 2 {
		t.Errorf("%v", got)
	}
}

// drawScene draws an edited scene.
func drawScene(t *rapid.T, name string) State {
	changes := [][2]string{
		{"f/4", "f/2.8"}, {"at 4.2 s", "at 4.5 s"}, {"over 1.4 s", "over 0.9 s"}, {"TICKET at 1.2 m", "TICKET at 1.4 m"},
		{"rack to TICKET", "rack to MARRIT"}, {"We had two", "We have two"}, {`shot 2 "Two"`, `shot 3 "Three"`},
		{"  rack to OSKEL, at 7.6 s, over 1.4 s, because \"he waits\"\n", ""}, {"rate 24", "rate 25"}, {"bell at 4 s", "knock at 4 s"},
		{`lens "75",`, `lens "75 old",`}, {"moves to 3.4 m", "moves to 2.2 m"}, {"on tripod", "on shoulder"},
	}
	text := scene
	for _, c := range changes {
		if rapid.Bool().Draw(t, name+": "+c[1]) {
			text = strings.Replace(text, c[0], c[1], 1)
		}
	}
	return state(t, text)
}

// A plan is the same as itself, and as itself laid out.
func TestSameAsItself(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawScene(t, "scene")
		if d := Compare(s, s); d.Differs() || len(d.Lines()) > 0 {
			t.Fatalf("%q", d.Lines())
		}
	})
}

// Read backwards, a difference holds the same: what came is gone, and shifts
// have the other sign.
func TestBackwards(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := drawScene(t, "before"), drawScene(t, "after")
		if a.Plan.Rate != b.Plan.Rate { // frames are those of the rate after
			t.Skip()
		}
		there, back := Compare(a, b), Compare(b, a)
		if there.Differs() != back.Differs() {
			t.Fatalf("%q, and back: %q", there.Lines(), back.Lines())
		}
		if got, want := tally(there, 1), tally(back, -1); !slices.Equal(got, want) {
			t.Fatalf("%q\nand back\n%q", got, want)
		}
	})
}

// tally lists the changes of pulls, pieces and findings, in no order; sign -1
// turns them round.
func tally(p Plan, sign int64) []string {
	turn := func(c Change) Change {
		switch {
		case sign < 0 && c == New:
			return Gone
		case sign < 0 && c == Gone:
			return New
		}
		return c
	}
	var list []string
	for _, s := range p.Shots {
		for _, u := range s.Pulls {
			line := fmt.Sprint(s.ID, turn(u.Change))
			if u.Change != Changed {
				line += u.Target
			}
			for _, d := range u.Details {
				line += fmt.Sprint(" ", d.Name, sign*d.Frames)
			}
			list = append(list, line)
		}
		for _, e := range append(s.Subjects, s.Events...) {
			list = append(list, fmt.Sprint(s.ID, turn(e.Change), e.Kind, e.Name, len(e.Details)))
		}
		for _, f := range s.Findings {
			list = append(list, fmt.Sprint(s.ID, turn(f.Change), f.Is.Code, f.Is.Severity))
		}
	}
	slices.Sort(list)
	return list
}

// Nothing in the text is wider than the screen, and the JSON is as promised.
func TestWrite(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := []Plan{Compare(drawScene(t, "before"), drawScene(t, "after"))}
		var text, js bytes.Buffer
		if err := WriteText(console.Screen{W: &text, Width: 80}, d, false); err != nil {
			t.Fatal(err)
		}
		for line := range strings.Lines(text.String()) {
			if console.Columns(strings.TrimSuffix(line, "\n")) > 80 {
				t.Fatalf("too wide: %q", line)
			}
		}
		if err := WriteJSON(&js, d); err != nil {
			t.Fatal(err)
		}
		var back struct {
			Same  bool
			Plans []struct{ Shots []struct{ ID string } }
		}
		if err := json.Unmarshal(js.Bytes(), &back); err != nil || back.Same == d[0].Differs() || len(back.Plans[0].Shots) != len(d[0].Shots) {
			t.Fatalf("%v\n%s", err, &js)
		}
	})
}

// Pulls that were put in between change no match of the others, nor do pulls
// that were taken out. (One put in and one taken out may be one that was
// edited.)
func TestMatchPulls(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		insert := rapid.Bool().Draw(t, "insert")
		name := rapid.StringMatching("[A-C]")
		var before, after []*plan.Pull
		same := map[int]int{}
		for i := range rapid.IntRange(0, 12).Draw(t, "pulls") {
			p := &plan.Pull{Kind: "rack", Target: name.Draw(t, "to"), Because: fmt.Sprint("why ", i), Number: i + 1}
			before = append(before, p)
			touched := rapid.Bool().Draw(t, "edit")
			if touched && !insert { // taken out
				continue
			}
			if touched {
				after = append(after, &plan.Pull{Kind: "rack", Target: name.Draw(t, "new"), Because: fmt.Sprint("new ", i)})
			}
			copied := *p
			same[i] = len(after)
			after = append(after, &copied)
		}
		kept, i, j := 0, 0, 0
		for _, m := range matchPulls(before, after) {
			if m.before >= 0 {
				if m.before != i {
					t.Fatalf("pull %d before comes where %d is next", m.before, i)
				}
				i++
			}
			if m.after >= 0 {
				if m.after != j {
					t.Fatalf("pull %d after comes where %d is next", m.after, j)
				}
				j++
			}
			if want, ok := same[m.before]; ok && want == m.after {
				kept++
			}
		}
		if kept != len(same) || i != len(before) || j != len(after) {
			t.Fatalf("%d of %d pulls found again, %d of %d and %d of %d seen", kept, len(same), i, len(before), j, len(after))
		}
	})
}

// A shot of very many pulls is matched too, in time and in order.
func TestMatchManyPulls(t *testing.T) {
	var list []*plan.Pull
	for i := range 5000 {
		list = append(list, &plan.Pull{Kind: "rack", Target: fmt.Sprint(i)})
	}
	got := matchPulls(list, list[:4000])
	if len(got) != 5000 || got[3999] != (match{3999, 3999}) || got[4999] != (match{4999, -1}) {
		t.Errorf("%d matches", len(got))
	}
}
