// Every cure that is printed is written into the plan, and the finding has to
// be gone.

package interp_test

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"pullscore/lang"
	"pullscore/lang/testing/cases"
)

// manyPlans is how many plans are tried of what must come up at least once, such as every
// kind of cure.
const manyPlans = 400

func TestCuresHold(t *testing.T) {
	tried := map[string]int{}
	cases.Check(t, manyPlans, func(t *rapid.T) {
		src := genPlan(t)
		res := interpret("plan.pull", src)
		for _, f := range res.Findings {
			for _, c := range f.Cures {
				tried[f.Code]++
				for what, is := range map[string]bool{
					"light by two": strings.Contains(c.Text, " and iso "), "on tripod": c.Text == "on tripod",
					"moves over": strings.Contains(c.Text, " moves over "), "dolly over": strings.HasPrefix(c.Text, "dolly over "),
					"with what remains": c.Then != "",
				} {
					if is {
						tried[what]++
					}
				}
				checkCure(t, src, f, c)
			}
			if checkNeed(t, src, f) {
				tried["what it needs"]++
			}
		}
	})
	for _, code := range []string{
		"hard-to-land", "never-sure", "no-time-to-move", "faster-than-a-hand", "racks-overlap",
		"too-deep", "not-seen", "faint", "cuts-into-line", "unmotivated", "jarring", "no-time-to-see", "re-grip",
		"light", "light by two", "falls-behind", "goes-soft", "out-of-frame",
		"drifts-soft", "hard-to-follow", "what it needs", "with what remains",
	} {
		if tried[code] == 0 {
			t.Errorf("no cure of %s was tried", code)
		}
	}
	t.Logf("cures tried: %v", tried)
}

func checkCure(t interface{ Fatalf(string, ...any) }, src string, f lang.Diagnostic, c lang.Cure) {
	made, ok := lang.ApplyEdits([]byte(src), c.Edits)
	if !ok || len(c.Edits) == 0 {
		t.Fatalf("%s: %q cannot be written by %+v into\n%s", f.Code, c.Text, c.Edits, src)
	}
	cured := string(made)
	res := interpret("plan.pull", cured)
	line := f.Range.Start.Line
	if !strings.HasSuffix(c.Text, " after it") { // others insert above, if at all
		line += strings.Count(cured, "\n") - strings.Count(src, "\n")
	}
	left := func(d lang.Diagnostic) bool { return d.Code == f.Code && d.Range.Start.Line == line }
	if i := slices.IndexFunc(res.Findings, left); i >= 0 {
		t.Fatalf("%s is not cured by %q: %s\n--- before: %s\n%s\n--- after\n%s", f.Code, c.Text, res.Findings[i].Message, f.Message, src, cured)
	}
	if n, m := countErrors(res.Findings), countErrors(interpret("plan.pull", src).Findings); n > m {
		t.Fatalf("%q cures %s and brings %d errors more\n%s", c.Text, f.Code, n-m, cured)
	}
}

// Cures that few generated plans have are held too.
func TestRareCuresHold(t *testing.T) {
	const kit = `plan "Rare"
rate 24
watched on 12 m screen from 18 m
camera A
  sensor 36 x 24 mm
  on %s
lens "ring"
  focal 85 mm
  stops f/1.4 to f/16
  closest 80 cm
  ring 270 deg, diameter 80 mm
lens "both"
  focal 85 mm
  stops f/1.4 to f/16
  stops T1.5 to T17
  closest 80 cm
  ring 270 deg, diameter 80 mm
subject ANNA at 3 m
subject BRAM at 110 cm
`
	for _, c := range []struct{ on, shot, code, cure string }{
		{"hand", "shot 1\n  with lens \"ring\", stop f/2.8\n  start on BRAM\n  BRAM: \"Word by the river and over the hill, and on.\"\n", "drifts-soft", "on tripod"},
		{"tripod", "shot 1\n  with lens \"ring\", stop f/2.8\n  start on ANNA\n  pause 1 s\n  ANNA moves to 180 cm over 2500 ms\n  follow ANNA\n", "hard-to-follow", "ANNA moves over 7.5 s"},
		{"tripod", "shot 1\n  with lens \"ring\", stop f/2.8\n  start on ANNA\n  ANNA moves to 301 cm over 500 ms\n  pause 2 s\n  ANNA moves to 180 cm over 2500 ms\n  follow ANNA\n", "hard-to-follow", "ANNA moves over 7.5 s (line 25)"},
		{"dolly", "shot 1\n  with lens \"ring\", stop f/2.8\n  start on ANNA\n  pause 1 s\n  dolly in 120 cm over 2500 ms\n  follow ANNA\n", "hard-to-follow", "dolly over 7.5 s"},
		{"hand", "shot 1\n  with lens \"both\", stop T2.2\n  start on BRAM\n  BRAM: \"Word by the river and over the hill, and on.\"\n", "drifts-soft", "stop T3.5"},
		{"tripod", "shot 1\n  with lens \"ring\", stop f/8, operator IMKE\n  start on ANNA\n  ANNA moves to 3 m, 1 m right over 3 s, on 1 s\n  boom up 5 cm, on 1 s, over 1 s\n", "leaves-frame", "pan with ANNA after it"},
		{"tripod", "puller IMKE\n  hand 4.1 bit/s\nshot 1\n  with lens \"ring\", stop f/2.8, operator IMKE\n  start on ANNA\n  pan right 5 deg, on 1 s, over 1200 ms\n  rack to 2 m, on 1500 ms, over 1200 ms\n", "hands-apart", "with pan in place of its times"},
		{"tripod", "shot 1\n  with lens \"ring\", stop f/8\n  start on ANNA\n  pan right 20 deg, on 1 s, over 2000 ms\n  pause 20 s\n", "pans-fast", "pan over 11.3 s"},
	} {
		src := fmt.Sprintf(kit, c.on) + c.shot
		found := false
		for _, f := range interpret("plan.pull", src).Findings {
			for _, k := range f.Cures {
				found = found || f.Code == c.code && k.Text == c.cure
				checkCure(t, src, f, k)
			}
		}
		if !found {
			t.Errorf("no %q of %s in\n%s%v", c.cure, c.code, src, interpret("plan.pull", src).Findings)
		}
	}
}

// checkNeed writes the time that a rack is said to need, and it has to land then. It
// is false where nothing is said of that.
func checkNeed(t *rapid.T, src string, f lang.Diagnostic) bool {
	_, needs, ok := strings.Cut(f.Message, ": it needs ")
	if !ok {
		return false
	}
	lines := strings.Split(src, "\n")
	at := f.Range.Start.Line
	lines[at-1] = clause(lines[at-1], "over", "over "+needs)
	for _, d := range interpret("plan.pull", strings.Join(lines, "\n")).Findings {
		if d.Range.Start.Line == at && slices.Contains([]string{"no-time-to-move", "faster-than-a-hand", "never-sure", "hard-to-land"}, d.Code) {
			t.Fatalf("it needs %s, and with that %s\n%s", needs, d.Message, strings.Join(lines, "\n"))
		}
	}
	return true
}

func countErrors(list []lang.Diagnostic) (n int) {
	for _, d := range list {
		if d.Severity == lang.Error {
			n++
		}
	}
	return n
}

func index(lines []string, prefix string) int {
	return slices.IndexFunc(lines, func(l string) bool { return strings.HasPrefix(l, prefix) })
}

// clause replaces a clause of a line, or adds it.
func clause(line, word, text string) string {
	re := regexp.MustCompile(`,? ` + word + ` [^,]*`)
	if text != "" {
		text = ", " + text
	}
	if re.MatchString(line) {
		return re.ReplaceAllLiteralString(line, text)
	}
	return line + text
}
