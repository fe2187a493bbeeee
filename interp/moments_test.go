// Which moment words and ends are: numbers count within one line, and ends are
// those of lines, movements, actions and racks.

package interp_test

import (
	"fmt"
	"regexp"
	"strings"
	"testing"
)

// sameMoments holds two moments to one time in a shot.
func sameMoments(t *testing.T, body, moment, same string) {
	t.Helper()
	s := theShot(t, body+"cue a on "+moment+"\ncue b on "+same+"\n")
	var a, b float64
	for _, c := range s.Cues {
		switch c.Name {
		case "a":
			a = float64(c.T)
		case "b":
			b = float64(c.T)
		}
	}
	if a != b || a == 0 {
		t.Errorf("%s is at %v s, %s at %v s in\n%s", moment, a, same, b, body)
	}
}

// A line has five words in five seconds, so that each word has a time of its own.
func TestNumbersCountWithinOneLine(t *testing.T) {
	const lines = "NORA: \"Go now, go far, leave.\", lasting 5 s\nOTTO: \"Go.\", lasting 1 s\nNORA: \"Far they run and run.\", lasting 5 s\nOTTO: \"Wait.\"\n"
	for _, test := range []struct{ moment, same string }{
		{`NORA "go" 1`, `0 s + 0 s`},
		{`NORA "go" 2`, `2 s`},
		{`NORA "run" 2`, `NORA "and run" + 1 s`}, // in the third line, which alone has it
		{`NORA "run" 1`, `NORA "run and"`},
		{`NORA "far they"`, `NORA "they" - 1 s`},
		{`end of NORA "go" 2`, `NORA "far leave"`},
	} {
		if strings.HasPrefix(test.same, "0 s") {
			continue
		}
		sameMoments(t, lines, test.moment, test.same)
	}
}

func TestWordsOfSeveralLines(t *testing.T) {
	const lines = "NORA: \"Never say never again.\"\nOTTO: \"Yes.\"\nNORA: \"Never mind.\"\nOTTO: \"No.\"\n"
	for _, test := range []struct{ lines, moment, told string }{
		{lines, `NORA "never"`, `which-line: 2 lines of NORA have "never": "Never say never again\.", "Never mind\."\. Say which line: NORA "Never say", or NORA "Never mind"\.`},
		{lines, `NORA "never" 1`, `which-line: 2 lines of NORA have "never"`},
		{lines, `NORA "never" 2`, ""},
		{lines, `NORA "never" 3`, `word-not-found: "never" is not 3 times in one line\. The number counts within one line, and this one has it twice\.`},
		{"NORA: \"Wait.\"\n", `"wait" 2`, `word-not-found: "wait" is not twice in one line\. .* has it once`},
		{"OTTO: \"Now.\"\nNORA: \"Wait.\"\nNORA: \"Wait.\"\nOTTO: \"Now.\"\n", `NORA "wait"`, `which-line: 2 lines of NORA have "wait".*The same words follow`},
		{strings.Repeat("NORA: \"Go on.\"\nOTTO: \"Go.\"\n", 5), `NORA "go"`, `which-line: many lines of NORA have "go"`},
	} {
		tells(t, test.lines, test.moment, test.told)
	}
}

// tells holds a moment to the one error that it has, or to none.
func tells(t *testing.T, body, moment, want string) {
	t.Helper()
	res := interpret("plan.pull", scene(body+"cue a on "+moment+"\n"))
	var told []string
	for _, d := range res.Findings {
		if d.Severity.String() == "error" {
			told = append(told, fmt.Sprintf("%s: %s. %s", d.Code, d.Message, d.Detail))
		}
	}
	all := strings.Join(told, "\n")
	if (all == "") != (want == "") || !regexp.MustCompile(want).MatchString(all) || len(told) > 1 {
		t.Errorf("%s: %s, want %s", moment, all, want)
	}
}

// Words above and below an anchor are counted in each line by itself.
func TestNumbersBesideAnAnchor(t *testing.T) {
	body := "NORA: \"One for all.\", lasting 3 s\ncue a on \"one\" 2\nOTTO: \"One and one.\", lasting 3 s\ncue b on OTTO + 2 s\n"
	s := theShot(t, body)
	if a, b := s.Cues[0].T, s.Cues[1].T; a != b {
		t.Errorf("the second word of one line is at %v s, want %v s", a, b)
	}
	res := interpret("plan.pull", scene("NORA: \"One for all.\"\ncue a on \"one\" 2\nOTTO: \"All for one.\"\n"))
	if countErrors(res.Findings) != 1 {
		t.Errorf("a word that two lines have once each is counted across them: %v", res.Findings)
	}
}

func TestEnds(t *testing.T) {
	const walks = "pause 1 s\nNORA moves to 1.5 m over 2 s\npause 3 s\ndolly in 10 cm over 1.5 s\naction \"a door slams\", lasting 2 s\nrack to NORA, over 1.2 s\n"
	for _, test := range []struct{ body, moment, same string }{
		{walks, "end of NORA", "3 s"},
		{walks, "end of moves", "3 s"},
		{walks, "end of dolly", "5.5 s"},
		{walks, "end of action", "6 s"},
		{walks, `end of "a door slams"`, "6 s"},
		{walks, `end of "A door slams!" + 1 s`, "7 s"},
		{walks, "end of rack", "7.2 s"},
		{"OTTO: \"Yes.\", lasting 2 s\nNORA moves to 1.5 m over 1 s\nNORA: \"No.\", from 4 s to 5 s\n", "end of NORA", "5 s"}, // her line comes first
		{"pause 1 s\nNORA moves to 1.5 m over 1 s\npause 4 s\nNORA moves to 1.7 m over 1 s\n", "end of NORA", "6 s"},          // the last above
	} {
		sameMoments(t, test.body, test.moment, test.same)
	}
	// What is below counts where nothing stands above, also for a move of the focus.
	s := theShot(t, "rack to GATE, on end of dolly, over 1 s, because \"x\"\npause 2 s\ndolly in 10 cm over 1.5 s\n")
	if start := float64(s.Pulls[0].Start); start != 3.5 {
		t.Errorf("a rack on the end of a dolly below starts at %v s", start)
	}
	// A rack may start where the one above lands, and not where it lands itself.
	s = theShot(t, "rack to GATE, on 1 s, over 1 s\nrack to NORA, on end of rack + 1 s, over 1 s\n")
	if start := float64(s.Pulls[1].Start); start != 3 {
		t.Errorf("a rack on the end of that above starts at %v s", start)
	}
	for _, body := range []string{"cue a on end of dolly\n", "rack to GATE, on end of rack, over 1 s\n", "cue a on end of \"no such thing\"\n"} {
		if res := interpret("plan.pull", scene(body)); countErrors(res.Findings) != 1 {
			t.Errorf("%s: %v", body, res.Findings)
		}
	}
}

// A circle through ends is told once.
func TestEndsInACircle(t *testing.T) {
	res := interpret("plan.pull", scene("NORA moves to 1.5 m on end of dolly over 1 s\ndolly in 10 cm on end of NORA over 1 s\n"))
	if countErrors(res.Findings) != 1 || !strings.Contains(fmt.Sprint(res.Findings), "circle") {
		t.Errorf("%v", res.Findings)
	}
}

// Somebody goes to a place that is told from where they stand.
func TestRelativeToOneself(t *testing.T) {
	for _, test := range []struct {
		body     string
		from, to float64
		side     float64
	}{
		{"NORA moves to NORA - 15 cm over 1 s\n", 1.7, 1.55, 0},
		{"NORA moves to NORA + 30 cm over 1 s\n", 1.7, 2, 0},
		{"NORA moves to NORA - 15 cm, 20 cm left over 1 s\n", 1.7, 1.55, -0.2},
		{"NORA moves to NORA, 20 cm left over 1 s\n", 1.7, 1.7, -0.2},
		{"NORA moves to NORA - 15 cm at 0.1 m/s\n", 1.7, 1.55, 0},
	} {
		s := theShot(t, test.body)
		m, u := s.Blocking[0], s.Subject("NORA")
		if !near(m.From, test.from) || !near(m.To, test.to) || u.Across.At(100)-test.side > 1e-9 || test.side-u.Across.At(100) > 1e-9 {
			t.Errorf("%s: %v m to %v m, %v m to the side", test.body, m.From, m.To, u.Across.At(100))
		}
	}
	s := theShot(t, "NORA moves to 3 m over 1 s\nNORA moves to NORA - 50 cm over 1 s, at 2 s\n")
	if m := s.Blocking[1]; !near(m.From, 3) || !near(m.To, 2.5) {
		t.Errorf("%v m to %v m", m.From, m.To)
	}
	s = theShot(t, "NORA moves to NORA - 15 cm at 0.1 m/s\n")
	if end := s.Blocking[0].End; !near(end, 1.5) {
		t.Errorf("15 cm at 10 cm/s take until %v s", end)
	}
	res := interpret("plan.pull", scene("NORA moves to NORA over 1 s\n"))
	if countErrors(res.Findings) != 1 || !strings.Contains(fmt.Sprint(res.Findings), "stands there already") {
		t.Errorf("%v", res.Findings)
	}
	res = interpret("plan.pull", scene("NORA moves to GATE - 1 m over 1 s\nGATE moves to NORA + 1 m over 1 s\n"))
	if countErrors(res.Findings) != 1 || !strings.Contains(fmt.Sprint(res.Findings), "relative to itself") {
		t.Errorf("a circle of two is no error: %v", res.Findings)
	}
}

// A word is also found in a part of another, whose time its terms share. One that is
// written so goes first.
func TestWordsByTheirTerms(t *testing.T) {
	// Three words of one syllable, and then two: a second each.
	const lines = "NORA: \"I don't go.\", lasting 3 s\nOTTO: \"I do not.\", lasting 3 s\nNORA: \"Wait, it's his.\", lasting 3 s\n"
	for _, test := range []struct{ moment, same string }{
		{`NORA "not"`, `1.5 s`},
		{`NORA "don't"`, `1 s`},
		{`NORA "do"`, `NORA "don't"`},
		{`end of NORA "do"`, `NORA "not"`},
		{`end of NORA "do not"`, `NORA "go"`},
		{`OTTO "don't"`, `OTTO "do"`},
		{`NORA "is his"`, `NORA "it's" + 0.5 s`},
	} {
		sameMoments(t, lines, test.moment, test.same)
	}
	sameMoments(t, "NORA: \"I don't. Not now.\", lasting 4 s\n", `"not"`, `2 s`)
	for _, test := range []struct{ lines, moment, told string }{
		{"NORA: \"Don't. I won't.\"\n", `"not"`, `word-twice: "not" is there twice`},
		{"NORA: \"I would.\"\n", `"did"`, `word-not-found`},
		{"NORA: \"Don't go.\"\nOTTO: \"Go.\"\nNORA: \"Isn't it?\"\nOTTO: \"Go.\"\n", `NORA "not"`, `which-line: 2 lines of NORA have "not": "Don't go\.", "Isn't it\?"\. Say which line: NORA "not go", or NORA "not it"\.`},
		{"NORA: \"Don't go.\"\nOTTO: \"Go.\"\nOTTO: \"Go.\"\n", `"not"`, `word-not-found: .* It is in a line of NORA: write NORA "not"\.`},
	} {
		tells(t, test.lines, test.moment, test.told)
	}
}
