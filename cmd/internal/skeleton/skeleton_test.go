package skeleton

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"pullscore/interp"
	"pullscore/lang"
	"pullscore/lang/fountain"
	"pullscore/lang/lines"
)

// kit is what a skeleton lacks before it can be computed.
const kit = `rate 24
camera A
  sensor 24 x 18 mm
lens "50"
  focal 50 mm
  stops f/2 to f/22
  closest 50 cm
  ring 300 deg, diameter 90 mm
with camera A, lens "50", stop f/4
`

// asleep matches what a skeleton has in comments to be woken up.
var asleep = regexp.MustCompile(`(?m)^( *)# (start on|rack|action)`)

// Whatever a page says, its skeleton is laid out, has no errors, and keeps
// having none about words and names once all comments are woken up.
func TestWakesUp(t *testing.T) {
	kinds := rapid.SampledFrom([]string{"speech", "action", "heading", "dual"})
	names := rapid.SampledFrom([]string{"ADA", "JEAN-LUC", "MRS. DALE", "RACK", "@ゆき", "ADA (V.O.)", "D'ARC", "@Said \"So\""})
	words := rapid.SliceOfN(rapid.SampledFrom([]string{"tide", "the", "The", "ADA", "don't", "\\*", "*so*", "港の", "1,500", "\"now\"", "well-known", "é", "e\u0301", "..."}), 1, 6)
	rapid.Check(t, func(t *rapid.T) {
		var page strings.Builder
		for i := range rapid.IntRange(1, 12).Draw(t, "beats") {
			text := strings.Join(words.Draw(t, "words"), " ")
			switch kinds.Draw(t, "kind") {
			case "speech":
				fmt.Fprintf(&page, "%s\n%s\n\n", names.Draw(t, "name"), text)
			case "dual":
				fmt.Fprintf(&page, "%s ^\n%s\n\n", names.Draw(t, "name"), text)
			case "action":
				fmt.Fprintf(&page, "!%s\n\n", text)
			case "heading":
				fmt.Fprintf(&page, "INT. ROOM %d #%d#\n\n", i, i%3)
			}
		}
		script, _ := fountain.Read(&lines.Text{Name: "page", Content: page.String()})
		plan := Plan("A page", script.Scenes)
		if again := lang.Format(plan); !bytes.Equal(again, plan) {
			t.Fatalf("is laid out anew:\n%s\nas\n%s", plan, again)
		}
		if _, diags := lang.Parse("plan.pull", plan); len(diags) > 0 {
			t.Fatalf("%v\n%s", diags[0], plan)
		}
		noFaults(t, asleep.ReplaceAll(plan, []byte("$1$2")), spoken(script))
	})
}

// spoken returns what a script says, speech by speech.
func spoken(s *fountain.Script) (said []string) {
	for _, scene := range s.Scenes {
		for _, b := range scene.Beats {
			if text := b.Text(); b.Who != "" && text != "" {
				said = append(said, text)
			}
		}
	}
	return said
}

// noFaults fails on errors about words, names and anchors, and on lines that are
// not those that were said.
func noFaults(t *rapid.T, awake []byte, want []string) {
	first, rest, _ := bytes.Cut(awake, []byte("\n"))
	res := interp.Interpret("plan.pull", slices.Concat(first, []byte("\n"+kit), rest), interp.Options{})
	for _, d := range res.Findings {
		// How fast it is and who is where are for those who wake it up.
		if d.Severity == lang.Error && !timing[d.Code] {
			t.Fatalf("%s: %s\n%s", d.Code, d.Message, awake)
		}
	}
	var got []string
	for _, s := range res.Plan.Shots {
		for _, l := range s.Lines {
			got = append(got, l.Text)
		}
	}
	if !slices.Equal(got, want) {
		t.Fatalf("says %q, want %q", got, want)
	}
}

// timing holds the errors that are about the hand, not about the words.
var timing = map[string]bool{"faster-than-a-hand": true, "no-time-to-move": true, "lands-too-early": true, "racks-overlap": true}

// What a page says as data: every form of scene.
func TestJSON(t *testing.T) {
	for page, want := range map[string]string{
		"": `{"scenes":[]}`, "Dusk.": `{"scenes":[]}`,
		"Dusk.\n\nADA\n(low)\nSo *late*, <so>.\n\nEXT. QUAY #3#\n\nNobody.\n":   `{"scenes":[{"number":"","heading":"","lines":[{"who":"ADA","text":"So late, <so>.","line":3}]},{"number":"3","heading":"EXT. QUAY","lines":[]}]}`,
		"INT. A #1#\n\nADA\nYes.\n\nBO\nNo \"\\\\\".\n\nINT. B\n\nBO\n(nods)\n": `{"scenes":[{"number":"1","heading":"INT. A","lines":[{"who":"ADA","text":"Yes.","line":3},{"who":"BO","text":"No \"\\\".","line":6}]},{"number":"","heading":"INT. B","lines":[{"who":"BO","text":"","line":11}]}]}`,
	} {
		var b, compact, indented bytes.Buffer
		err := WriteJSON(&b, fountain.Beats(&lines.Text{Content: page}, &lines.Faults{}))
		if err := errors.Join(err, json.Compact(&compact, b.Bytes()), json.Indent(&indented, compact.Bytes(), "", "  ")); err != nil {
			t.Fatal(err)
		}
		if compact.String() != want {
			t.Errorf("got  %s\nwant %s", &compact, want)
		}
		if indented.WriteByte('\n'); b.String() != indented.String() {
			t.Errorf("laid out as\n%s\nwant\n%s", &b, &indented)
		}
	}
}

// The example page is a plan as it comes.
func TestExample(t *testing.T) {
	src, err := os.ReadFile("../../../examples/ferry/ferry.fountain")
	if err != nil {
		t.Fatal(err)
	}
	text, _ := lines.Decode("ferry.fountain", src)
	script, _ := fountain.Read(text)
	plan := string(Plan("The Last Boat", script.Scenes))
	for _, want := range []string{
		"shot 27 \"INT. WHEELHOUSE - NIGHT\"\n",
		"  # rack to PEVIN, on PEVIN \"The\"\n  PEVIN: \"The tide was slack. I saw a light.\"\n",
	} {
		if !strings.Contains(plan, want) {
			t.Errorf("lacks %q:\n%s", want, plan)
		}
	}
}
