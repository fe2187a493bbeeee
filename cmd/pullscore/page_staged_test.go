// The staged form of the page command.

package main

import (
	"os"
	"regexp"
	"strings"
	"testing"

	"pullscore/interp"
	"pullscore/interp/plan"
	"pullscore/lang"
)

// The staged plan of a page of twists has no errors beside a kit, as written and with its
// singles and actions woken up; it has the page's lines, and a place for who is in sight.
func TestStagedPage(t *testing.T) {
	t.Chdir(t.TempDir())
	const kit = "camera A\n  sensor 24 x 18 mm\n  on tripod\nlens \"35\"\n  focal 35 mm\n  stops f/2 to f/22\n  closest 50 cm\n  ring 300 deg, diameter 90 mm\n"
	for name, content := range map[string]string{"page.fountain": twists, "kit.pull": kit} {
		if err := os.WriteFile(name, []byte(content), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	if code, _, errs := runs(t, "page", "--staged", "-o", "staged.pull", "page.fountain"); code != 0 || errs != "" {
		t.Fatalf("code %d, %s", code, errs)
	}
	asleep, err := os.ReadFile("staged.pull")
	if err != nil {
		t.Fatal(err)
	}
	awake := regexp.MustCompile(`(?m)^( *)# ( *)(shot|covers|camera|start on|action)`).ReplaceAll(asleep, []byte("$1$2$3"))
	for name, source := range map[string][]byte{"asleep": asleep, "awake": awake} {
		res := interp.Interpret("staged.pull", source, interp.Options{ReadFile: interp.ReadFile})
		for _, d := range res.Findings {
			if d.Severity == lang.Error {
				t.Errorf("%s, line %d: %s: %s in\n%s", name, d.Range.Start.Line, d.Code, d.Message, source)
			}
		}
		checkStaged(t, name, res.Plan)
	}
	for _, line := range []string{
		"  voice \"MRS. DALE\"\n",
		"  subject HALDIS at 0 m right  # tape it\n", "  subject PEVIN at 1 m right  # tape it\n", "  subject ORLA at 2 m right  # tape it\n",
		"  PEVIN: \"The tide was slack.\", off  # heard, not seen\n",
		"  camera at 1 m right, 4 m downstage, aims at HALDIS and ORLA  # tape it\n",
		"  # shot 27A-S2 \"Single PEVIN\"\n",
	} {
		if !strings.Contains(string(asleep), line) {
			t.Errorf("it has no %q:\n%s", line, asleep)
		}
	}
}

// checkStaged checks the scenes of a plan and that each has a shot that covers all of it.
func checkStaged(t *testing.T, name string, p *plan.Plan) {
	t.Helper()
	said := []int{}
	for _, sc := range p.Scenes {
		said = append(said, len(sc.Lines))
		if len(sc.Setups) == 0 {
			t.Errorf("%s: %s has no shot", name, sc.Title)
		}
	}
	if len(said) != 2 || said[0] != 6 || said[1] != 3 {
		t.Errorf("%s: the scenes have %v lines", name, said)
	}
	shots := map[string]int{"asleep": 2, "awake": 2 + 3 + 3}[name]
	if len(p.Shots) != shots {
		t.Errorf("%s: %d shots, not %d", name, len(p.Shots), shots)
	}
	for _, s := range p.Shots {
		if s.Staging == nil || !s.Placed || !s.Action || s.Covers[1] != p.Scenes[s.Of].Duration {
			t.Errorf("%s: shot %s does not cover its scene from a place on its floor", name, s.ID)
		}
	}
}

// More people than a row holds stand in the next one.
func TestStagedCrowd(t *testing.T) {
	t.Chdir(t.TempDir())
	var page strings.Builder
	page.WriteString("INT. HALL - DAY\n\n")
	for i := range 101 {
		page.WriteString("EXTRA " + strings.Repeat("I", i/26+1) + string(rune('A'+i%26)) + "\nHere.\n\n")
	}
	if err := os.WriteFile("page.fountain", []byte(page.String()), 0o666); err != nil {
		t.Fatal(err)
	}
	code, out, errs := runs(t, "page", "--staged", "page.fountain")
	if code != 0 || errs != "" || !strings.Contains(out, " at 99 m right  #") || !strings.Contains(out, " at 0 m right, 1 m upstage  #") || strings.Contains(out, "100 m right") {
		t.Errorf("code %d, %s in\n%s", code, errs, out)
	}
}

// What --staged does not go with is said.
func TestStagedGoesAlone(t *testing.T) {
	t.Chdir(t.TempDir())
	for name, content := range map[string]string{"page.fountain": twists, "talk.srt": "1\n00:00:01,000 --> 00:00:02,000\nSo.\n"} {
		if err := os.WriteFile(name, []byte(content), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	for _, args := range [][]string{{"--as", "json", "page.fountain"}, {"--against", "a.pull", "page.fountain"}, {"--revised=Pink", "page.fountain"}, {"talk.srt"}} {
		if code, out, errs := runs(t, append([]string{"page", "--staged"}, args...)...); code == 0 || out != "" || !strings.Contains(errs, "leave out --") {
			t.Errorf("%v: code %d, %s%s", args, code, out, errs)
		}
	}
}
