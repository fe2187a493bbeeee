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
	cured, ok := applyCure(src, f, c.Text)
	if !ok {
		t.Fatalf("%s: nobody can tell where to write %q in\n%s", f.Code, c.Text, src)
	}
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

// applyCure writes a cure into a plan of genPlan, as a reader of the message
// would.
func applyCure(src string, f lang.Diagnostic, cure string) (string, bool) {
	lines := strings.Split(src, "\n")
	at := f.Range.Start.Line - 1
	word, _, _ := strings.Cut(cure, " ")
	before, isBefore := strings.CutSuffix(cure, " before it")
	first, isFirst := strings.CutSuffix(cure, " before the first line")
	light, meter, isLight := strings.Cut(cure, ", which makes it meter ")
	after, isAfter := strings.CutSuffix(cure, " after it")
	switch {
	case isAfter:
		lines = slices.Insert(lines, at+1, "  "+after)
	case isBefore:
		lines = slices.Insert(lines, at, "  "+before)
	case isFirst:
		lines = slices.Insert(lines, index(lines, "  start on")+1, "  "+first)
	case isLight:
		with := index(lines, "  with ")
		for _, part := range strings.Split(light, " and ") {
			word := strings.Fields(part)[0]
			if word == "nd" {
				lines[with] = clause(lines[with], word, part)
			} else {
				lines[index(lines, "  "+word)] = "  " + part
			}
		}
		lines[with] = clause(lines[with], "meter", "meter "+meter)
	case slices.Contains([]string{"stop", "nd", "gear", "wheel"}, word):
		with := index(lines, "  with ")
		lines[with] = clause(lines[with], word, cure)
	case strings.HasPrefix(cure, "on ") && supports.MatchString(cure):
		lines[index(lines, "  on ")] = "  " + cure
	case strings.Contains(cure, " moves over ") || ofCamera.MatchString(cure):
		said, where, _ := strings.Cut(cure, " (line ")
		start := "  " + said[:strings.Index(said, "over ")]
		i := index(lines, strings.TrimSuffix(start, "over "))
		if where != "" {
			if _, err := fmt.Sscanf(where, "%d)", &i); err != nil {
				return "", false
			}
			i--
		}
		lines[i] = overs.ReplaceAllLiteralString(lines[i], " "+said[strings.Index(said, "over "):])
	case strings.HasSuffix(cure, " in place of its times"):
		for _, times := range []string{"on", "landing on", "over"} {
			lines[at] = clause(lines[at], times, "")
		}
		lines[at] += ", " + strings.TrimSuffix(cure, " in place of its times")
	case word == "over":
		lines[at] = clause(lines[at], "over", cure)
	case word == "because":
		lines[at] += ", " + cure
	case word == "on" || word == "landing":
		lines[at] = clause(clause(lines[at], "landing on", ""), "on", cure)
	case strings.HasSuffix(cure, " left") || strings.HasSuffix(cure, " right"):
		i := index(lines, "subject "+word+" ")
		lines[i] = besides.ReplaceAllLiteralString(lines[i], ", "+strings.TrimPrefix(cure, word+" "))
	default:
		return "", false
	}
	return strings.Join(lines, "\n"), true
}

// supports are what a camera may be on, overs how long a movement takes, and ofCamera a
// cure that is about one of the camera.
var (
	ofCamera = regexp.MustCompile(`^(?:dolly|track|boom|pan|tilt|zoom) over `)
	supports = regexp.MustCompile(`^on (tripod|dolly|shoulder|hand)$`)
	overs    = regexp.MustCompile(` over \d+ ms`)
)

// besides is what a subject's statement says of its side.
var besides = regexp.MustCompile(`, \d+ cm (left|right)`)

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
