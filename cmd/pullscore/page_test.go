// The page command: what scripts see of it, and what becomes of what it writes.

package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"testing/synctest"
	"time"

	"pullscore/cmd/internal/console"
	"pullscore/interp"
	"pullscore/lang"
	"pullscore/lang/testing/samples"
)

// runs runs a command line and returns what it prints.
func runs(t *testing.T, args ...string) (code int, out, errs string) {
	t.Helper()
	var o, e bytes.Buffer
	code = run(args, strings.NewReader(""), &o, &e)
	return code, o.String(), e.String()
}

// A samplePage is what another reader says of a script.
type samplePage struct {
	Blocks   int     `json:"dialogue_blocks"`
	First    []any   `json:"first_dialogue"` // a name, and its first line
	Last     []any   `json:"last_dialogue"`
	Headings [][]any `json:"scene_headings"` // with the number, or null
	Speakers map[string]int
}

// A readPage is what the command says of one, as JSON.
type readPage struct {
	Scenes []struct {
		Number, Heading string
		Lines           []struct {
			Who, Text string
			Line      int
		}
	}
}

// What the command makes of other people's scripts as JSON.
func TestPageOfSamples(t *testing.T) {
	samples.Each(t, "fountain/", func(t *testing.T, name string, src []byte, want samplePage) {
		if want.Headings == nil {
			t.Skip("skipped: another reader's own output, not a script")
		}
		file := filepath.Join(t.TempDir(), "a.fountain")
		if err := os.WriteFile(file, src, 0o666); err != nil {
			t.Fatal(err)
		}
		code, out, errs := runs(t, "page", "--as", "json", file)
		var page readPage
		if err := json.Unmarshal([]byte(out), &page); err != nil || code != 0 || errs != "" {
			t.Fatalf("code %d, %v, %s", code, err, errs)
		}
		if a, b := fmt.Sprintf("%q", page.headings()), fmt.Sprintf("%q", want.headings()); a != b {
			t.Errorf("headings %s, want %s", a, b)
		}
		page.checkSpeeches(t, want)
	})
}

func (p readPage) headings() (list []string) {
	for _, scene := range p.Scenes {
		if scene.Heading != "" {
			list = append(list, fmt.Sprint(scene.Heading, scene.Number))
		}
	}
	return list
}

func (p samplePage) headings() (list []string) {
	for _, h := range p.Headings {
		number := h[1]
		if number == nil {
			number = ""
		}
		list = append(list, fmt.Sprint(h[0], number))
	}
	return list
}

// checkSpeeches checks who speaks how often, and the first and the last words.
func (p readPage) checkSpeeches(t *testing.T, want samplePage) {
	t.Helper()
	speakers := map[string]int{}
	blocks, last, ends := 0, 0, ""
	for _, scene := range p.Scenes {
		for _, l := range scene.Lines {
			if l.Line <= last {
				t.Errorf("line %d behind line %d", l.Line, last)
			}
			if blocks++; blocks == 1 {
				begins := text(want.First)
				if l.Who != want.First[0] || !strings.HasPrefix(l.Text, begins) {
					t.Errorf("begins with %s: %q, want %q", l.Who, l.Text, begins)
				}
			}
			last, ends = l.Line, l.Who+l.Text
			speakers[l.Who]++
		}
	}
	if a, b := fmt.Sprint(blocks, speakers), fmt.Sprint(want.Blocks, want.Speakers); want.Speakers != nil && a != b {
		t.Errorf("speakers %s, want %s", a, b)
	}
	if want.Last != nil && (!strings.HasPrefix(ends, want.Last[0].(string)) || !strings.HasSuffix(ends, text(want.Last))) {
		t.Errorf("ends with %q, want %q", ends, want.Last)
	}
}

// text returns the one line of a speech in the table, without its emphasis;
// there may be none.
func text(dialogue []any) string {
	for _, line := range dialogue[1].([]any) {
		return strings.NewReplacer("*", "", "_", "").Replace(line.(string))
	}
	return ""
}

// twists is a page with everything that a page can have.
const twists = `Title: _The Last Boat_
Author: Nobody

INT. WHEELHOUSE - NIGHT #27A#

Rain on the glass. HALDIS winds the chronometer. /* cut:
the cat */ PEVIN stands in the door.

HALDIS
(without turning)
You rowed out to the wreck. [[alone?]] Alone.

PEVIN (O.S.)
The tide was slack.

HALDIS (CONT'D)
(beat)
It never is.

MRS. DALE (V.O.)
~Row, row, slack the tide
~and never look behind

PEVIN
I saw a *light*.

HALDIS ^
I saw nothing.

PEVIN
(nods)

She puts the key down. Pevin looks at it. Orla comes in.

> CUT TO:

.THE QUAY

= They part.

@McDuff
Later, then. Later.

HALDIS
"Later" is what they all say.

ORLA
So do I.

> THE END <
`

// The skeleton of a page of twists has no errors but the lack of a kit; with one
// and all its comments woken up it has none at all, and can be drawn.
func TestSkeletonWakesUp(t *testing.T) {
	t.Chdir(t.TempDir())
	asleep := regexp.MustCompile(`(?m)^( *)# (use|with|script|start on|rack|action)`)
	const kit = "camera A\n  sensor 24 x 18 mm\nlens \"50\"\n  focal 50 mm\n  stops f/2 to f/22\n  closest 50 cm\n  ring 300 deg, diameter 90 mm\n"
	for name, content := range map[string]string{"page.fountain": twists, "kit.pull": kit} {
		if err := os.WriteFile(name, []byte(content), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	for _, scene := range []string{"", "27a", "2"} {
		code, plan, errs := runs(t, "page", "--scene", scene, "page.fountain")
		if code != 0 || errs != "" {
			t.Fatalf("scene %q: code %d, %s", scene, code, errs)
		}
		for _, d := range errorsOf(plan) {
			if d.Code != "no-camera" && d.Code != "no-lens" && d.Code != "no-stop" {
				t.Errorf("scene %q: %s: %s in\n%s", scene, d.Code, d.Message, plan)
			}
		}
		awake := asleep.ReplaceAllString(plan, "$1$2")
		for _, d := range errorsOf(awake) {
			t.Errorf("scene %q, awake: line %d: %s: %s in\n%s", scene, d.Range.Start.Line, d.Code, d.Message, awake)
		}
		if err := os.WriteFile("awake.pull", []byte(awake), 0o666); err != nil {
			t.Fatal(err)
		}
		if code, _, errs := runs(t, "draw", "-o", ".", "awake.pull"); code != 0 {
			t.Errorf("scene %q: %s", scene, errs)
		}
	}
}

func errorsOf(plan string) (list []lang.Diagnostic) {
	for _, d := range interp.Interpret("plan.pull", []byte(plan), interp.Options{}).Findings {
		if d.Severity == lang.Error {
			list = append(list, d)
		}
	}
	return list
}

// On a terminal the reading of a long text shows how far it is, each text for
// itself, and nowhere else.
func TestReadingIsShown(t *testing.T) {
	for _, terminal := range []bool{true, false} {
		synctest.Test(t, func(t *testing.T) {
			var shown bytes.Buffer
			s := newSession(strings.NewReader(""), &bytes.Buffer{}, &shown)
			s.errScreen = console.Screen{W: &shown, Terminal: terminal}
			tell := s.reading()
			for _, total := range []int{100, 60} {
				for done := range total {
					tell(done<<20, total<<20)
					time.Sleep(50 * time.Millisecond)
				}
			}
			got := shown.String()
			for _, want := range []string{"reading, MB ", "50 of 100", "50 of 60"} {
				if strings.Contains(got, want) != terminal {
					t.Errorf("terminal %v: %q is shown, or not, in %q", terminal, want, got)
				}
			}
		})
	}
}
