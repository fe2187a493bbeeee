package script

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
	"time"

	"pgregory.net/rapid"

	"pullscore/interp"
	"pullscore/lang"
	"pullscore/lang/fountain"
	"pullscore/lang/lines"
	"pullscore/lang/testing/cputime"
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
	kinds := rapid.SampledFrom([]string{"speech", "action", "heading", "dual", "how", "nod"})
	names := rapid.SampledFrom([]string{"ADA", "JEAN-LUC", "MRS. DALE", "RACK", "@ゆき", "ADA (V.O.)", "BO (O.S.)", "D'ARC", "ADA & BO", "BO/CY (V.O.)", "@Said \"So\""})
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
			case "how":
				fmt.Fprintf(&page, "%s\n(%s)\n%s\n(then, low)\n%s\n\n", names.Draw(t, "name"), text, text, text)
			case "nod":
				fmt.Fprintf(&page, "%s\n(%s)\n\n", names.Draw(t, "name"), text)
			case "action":
				fmt.Fprintf(&page, "!%s\n\n", text)
			case "heading":
				fmt.Fprintf(&page, "INT. ROOM %d #%d#\n\n", i, i%3)
			}
		}
		script, _ := fountain.Read(&lines.Text{Name: "page", Content: page.String()})
		plan := Plan(Page{Title: "A page", File: "page.fountain"}, script.Scenes, castOf(script))
		if again := lang.Format(plan); !bytes.Equal(again, plan) {
			t.Fatalf("is laid out anew:\n%s\nas\n%s", plan, again)
		}
		if _, diags := lang.Parse("plan.pull", plan); len(diags) > 0 {
			t.Fatalf("%v\n%s", diags[0], plan)
		}
		noFaults(t, asleep.ReplaceAll(plan, []byte("$1$2")), page.String(), speeches(script))
	})
}

// castOf returns who speaks in a script.
func castOf(s *fountain.Script) *Cast {
	c := &Cast{}
	for _, scene := range s.Scenes {
		for i := range scene.Beats {
			c.Add(&scene.Beats[i])
		}
	}
	return c
}

// speeches returns what a script says, speech by speech.
func speeches(s *fountain.Script) (said []string) {
	for _, scene := range s.Scenes {
		for _, b := range scene.Beats {
			if text := b.Text(); b.Who != "" && text != "" {
				said = append(said, text)
			}
		}
	}
	return said
}

// noFaults fails on errors about words, names and anchors, on what the page has
// otherwise, and on lines that are not those that were said.
func noFaults(t *rapid.T, awake []byte, page string, want []string) {
	first, rest, _ := bytes.Cut(awake, []byte("\n"))
	res := interp.Interpret("plan.pull", slices.Concat(first, []byte("\n"+kit), rest), interp.Options{
		ReadFile: func(string) ([]byte, error) { return []byte(page), nil },
	})
	if res.Revision == nil || len(res.Revision) > 0 {
		t.Fatalf("the page has otherwise: %+v\n%s\nthan\n%s", res.Revision, page, awake)
	}
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

// What becomes of each thing on a page.
func TestRules(t *testing.T) {
	const head = "plan \"A\"\n# use \"kit.pull\"\n# with camera A, lens \"50\", stop f/4\n\n"
	ada, bo := "subject ADA at 2 m  # 2 m until it is taped\n", "subject BO at 2 m   # 2 m until it is taped\n"
	for _, c := range []struct{ name, page, want string }{
		{"who is only heard is a voice, and no focus goes there", "ADA\nHello?\n\nBO (V.O.)\nYes.\n\nBO (O.S.) (CONT'D)\nYes!\n\nADA\nWho is it?",
			"subject ADA at 2 m  # 2 m until it is taped\nvoice BO\n\nshot S1\n  # start on ADA\n  ADA: \"Hello?\"\n  BO: \"Yes.\"\n  BO: \"Yes!\"\n  ADA: \"Who is it?\"\n"},
		{"who is seen once is a subject", "BO (V.O.)\nYes.\n\nADA\nNo.\n\nBO\nBut.",
			"subject BO at 2 m   # 2 m until it is taped\n" + ada + "\nshot S1\n  BO: \"Yes.\"  # heard, not seen\n  # start on ADA\n  ADA: \"No.\"\n  # rack to BO, on BO \"But\", because \"speaks for the first time\"\n  BO: \"But.\"\n"},
		{"who is seen, and how it is said out of sight", "ADA\nNo.\n\nADA (O.S.)\n(low)\nNo?",
			ada + "\nshot S1\n  # start on ADA\n  ADA: \"No.\"\n  ADA: \"No?\"  # heard, not seen; (low)\n"},
		{"two who speak together are both declared, and the first has the line", "BO\nSo.\n\nADA & BO\nNo.\n\nADA AND CY (V.O.)\nYes.",
			bo + ada + "voice CY\n\nshot S1\n  # start on BO\n  BO: \"So.\"\n  # rack to ADA, on ADA \"No\", because \"speaks for the first time\"\n  ADA: \"No.\"  # together with BO\n  ADA: \"Yes.\"  # together with CY; heard, not seen\n"},
		{"how a line is said stands beside it", "ADA\n(low)\nNo.\n(louder,  *then*)\nNo!",
			ada + "\nshot S1\n  # start on ADA\n  ADA: \"No. No!\"  # (low) (louder, then)\n"},
		{"a speech without words is business", "ADA\nNo.\n\nBO\n(nods)",
			ada + bo + "\nshot S1\n  # start on ADA\n  ADA: \"No.\"\n  # action \"BO (nods)\", lasting 2 s\n  # rack to BO, on ADA \"No\", because \"what is done names them\"\n"},
		{"action names who speaks in another scene", "INT. A #1#\n\nADA\nNo.\n\nBo waits. Nobody else.\n\nINT. B #2#\n\nBO\nYes.\n\nNOBODY (V.O.)\nHush.",
			ada + "subject BO at 2 m      # 2 m until it is taped\nvoice NOBODY\n\nshot 1 \"INT. A\"\n  # start on ADA\n  ADA: \"No.\"\n  # action \"Bo waits. Nobody else.\", lasting 2 s\n  # rack to BO, on ADA \"No\", because \"what is done names them\"\n\nshot 2 \"INT. B\"\n  # start on BO\n  BO: \"Yes.\"\n  NOBODY: \"Hush.\"\n"},
		{"of two that action names the one that is not in focus", "ADA\nNo  [[really]] no.\n\nAda turns to Bo.\n\nBO\nYes.",
			ada + bo + "\nshot S1\n  # start on ADA\n  ADA: \"No no.\"\n  # action \"Ada turns to Bo.\", lasting 2 s\n  # rack to BO, on ADA \"no\" 2, because \"what is done names them\"\n  BO: \"Yes.\"\n"},
		{"a small letter is no name", "ADA\nNo.\n\nThe bo waits.\n\nBO\nYes.",
			ada + bo + "\nshot S1\n  # start on ADA\n  ADA: \"No.\"\n  # action \"The bo waits.\", lasting 2 s\n  # rack to BO, on BO \"Yes\", because \"speaks for the first time\"\n  BO: \"Yes.\"\n"},
		{"action before any word, and twice after one: of racks that no hand can do after another the first", "Ada waits.\n\nBo comes.\n\nADA\nNo.\n\nBo sits.\n\nAda goes.\n\nBO\nYes.",
			ada + bo + "\nshot S1\n  # action \"Ada waits.\", lasting 2 s\n  # start on ADA\n  # action \"Bo comes.\", lasting 2 s\n  # rack to BO, because \"what is done names them\"\n  ADA: \"No.\"\n" +
				"  # action \"Bo sits.\", lasting 2 s\n  # action \"Ada goes.\", lasting 2 s\n  BO: \"Yes.\"\n  # Racks left out: 2 too soon after another.\n"},
		{"who speaks again is no reason, and an answer is one", "ADA\nThe tide was slack and the night was clear.\n\nBO\nNobody rows out there on a night like that one.\n\nADA\nI did, and I saw the lamp.\n\nBO\nWho lit it, then, after all of these years?\n\nADA\nMy father.",
			ada + bo + "\nshot S1\n  # start on ADA\n  ADA: \"The tide was slack and the night was clear.\"\n  # rack to BO, on BO \"Nobody\", because \"speaks for the first time\"\n  BO: \"Nobody rows out there on a night like that one.\"\n  ADA: \"I did, and I saw the lamp.\"\n" +
				"  BO: \"Who lit it, then, after all of these years?\"\n  # rack to ADA, on ADA \"My\", because \"answers\"\n  ADA: \"My father.\"\n  # Racks left out: 1 to who speaks again.\n"},
	} {
		t.Run(c.name, func(t *testing.T) {
			script, _ := fountain.Read(&lines.Text{Name: "page", Content: c.page})
			got := string(Plan(Page{Title: "A"}, script.Scenes, castOf(script)))
			if squeezed := columns.ReplaceAllString(got, "  # 2 m until it is taped"); squeezed != columns.ReplaceAllString(head+c.want, "  # 2 m until it is taped") {
				t.Errorf("got\n%s\nwant\n%s", got, head+c.want)
			}
		})
	}
}

// Few racks are proposed of a talk, and all of them can be done: woken up with people
// who stand apart, no rack overlaps another, with what is done awake or asleep.
func TestRacksCanBeDone(t *testing.T) {
	talk := []string{"You rowed out alone?", "The tide was slack.", "Nobody does that!", "I did.", "Why?", "There was a light.", "Where?", "On the wreck."}
	names := []string{"ADA", "BO", "CY"}
	for n := range 40 {
		var page strings.Builder
		for i := range 14 {
			fmt.Fprintf(&page, "%s\n%s\n\n", names[(i*(1+n%2)+i/5+n)%3], talk[(i*(n+3)+n)%len(talk)])
			if (i+n)%4 == 0 {
				fmt.Fprintf(&page, "Then %s turns.\n\n", []string{"Ada", "Bo", "Cy"}[(i*n+1)%3])
			}
		}
		script, _ := fountain.Read(&lines.Text{Name: "page", Content: page.String()})
		plan := Plan(Page{Title: "A page", File: "page.fountain"}, script.Scenes, castOf(script))
		for _, wake := range []string{"start on|rack", "start on|rack|action"} {
			awake := regexp.MustCompile(`(?m)^( *)# (`+wake+`)`).ReplaceAll(plan, []byte("$1$2"))
			awake = bytes.Replace(awake, []byte("BO at 2 m"), []byte("BO at 3 m"), 1)
			awake = bytes.Replace(awake, []byte("CY at 2 m"), []byte("CY at 4 m"), 1)
			first, rest, _ := bytes.Cut(awake, []byte("\n"))
			res := interp.Interpret("plan.pull", slices.Concat(first, []byte("\n"+kit), rest), interp.Options{
				ReadFile: func(string) ([]byte, error) { return []byte(page.String()), nil },
			})
			for _, d := range res.Findings {
				if d.Severity == lang.Error {
					t.Fatalf("%d, %s: %s: %s\n%s", n, wake, d.Code, d.Message, awake)
				}
			}
			if racks := len(res.Plan.Shots[0].Pulls); racks > 7 || racks < 2 {
				t.Errorf("%d: %d racks of 14 speeches", n, racks)
			}
		}
	}
}

// columns matches what comments are set under one another with.
var columns = regexp.MustCompile(` +# 2 m until it is taped`)

// The script of a whole film, also as one scene, is a plan in a moment: the work
// on each word is the same, however many there are. What is measured is what
// is made, which no other program disturbs.
func TestWholeFilm(t *testing.T) {
	perWord := func(speeches int) float64 {
		var page strings.Builder
		for i := range speeches {
			fmt.Fprintf(&page, "%s\nThe boat and the rope and word%d.\n\nAda looks at Bo.\n\n", []string{"ADA", "BO", "CY"}[i%3], i)
		}
		script, _ := fountain.Read(&lines.Text{Name: "page", Content: page.String()})
		cast := castOf(script)
		return testing.AllocsPerRun(1, func() { Plan(Page{Title: "A"}, script.Scenes, cast) }) / float64(speeches)
	}
	if few, many := perWord(100), perWord(3000); many > 1.5*few {
		t.Errorf("%.0f for each speech among 100, %.0f among 3000", few, many)
	}
}

// What a page says as data: every form of scene.
// A page with one number for all its scenes, or with one name over and over,
// takes no longer than another.
func TestRepetitionIsQuick(t *testing.T) {
	for name, page := range map[string]string{
		"numbers": strings.Repeat(".A #1#\n\nx\n\n", 10_000),
		"names":   ".A\n\nBOB\nHi.\n\n.B\n\n" + strings.Repeat("bob ", 100_000) + "\n",
	} {
		text, _ := lines.Decode("page.fountain", []byte(page))
		script, _ := fountain.Read(text)
		cast, scenes := castOf(script), script.Scenes[len(script.Scenes)/2:]
		if name == "numbers" {
			scenes = script.Scenes
		}
		var plan []byte
		if took := cputime.Of(func() { plan = Plan(Page{}, scenes, cast) }); took > 5*time.Second {
			t.Errorf("%s took %v", name, took)
		}
		if got, want := bytes.Count(plan, []byte("\nshot ")), len(scenes); got != want {
			t.Errorf("%s: %d shots, want %d", name, got, want)
		}
		if name == "numbers" && !bytes.Contains(plan, []byte("\nshot 1-10000 ")) {
			t.Errorf("%s: no shot has the last number", name)
		}
	}
}

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
	plan := string(Plan(Page{Title: "The Last Boat"}, script.Scenes, castOf(script)))
	for _, want := range []string{
		"shot 27 \"INT. WHEELHOUSE - NIGHT\"\n",
		"  # rack to PEVIN, on PEVIN \"The\", because \"speaks for the first time\"\n  PEVIN: \"The tide was slack. I saw a light.\"\n",
	} {
		if !strings.Contains(plan, want) {
			t.Errorf("lacks %q:\n%s", want, plan)
		}
	}
}

// The page is named with the scene that was taken of it, unless that is all of
// several, or has no number; as a comment where it is not known from where.
func TestNamesThePage(t *testing.T) {
	const one, two = "INT. A #1a#\n\nADA\nNo.\n\n", "INT. B #2#\n\nADA\nYes.\n"
	file := Page{File: "sub/page \"one\".fountain"}
	asleep := Page{File: "page.fountain", Asleep: true}
	for _, c := range []struct {
		page    Page
		content string
		want    string
	}{
		{file, one, `script "sub/page \"one\".fountain" scene "1a"`},
		{file, "Dusk.\n\n" + one, `script "sub/page \"one\".fountain" scene "1a"`},
		{file, one + two, `script "sub/page \"one\".fountain"`},
		{file, "INT. A\n\nADA\nNo.\n", `script "sub/page \"one\".fountain"`},
		{asleep, two, `# script "page.fountain" scene "2"`},
		{Page{}, one, `# use "kit.pull"`},
	} {
		script, _ := fountain.Read(&lines.Text{Name: "page", Content: c.content})
		plan := string(Plan(c.page, script.Scenes, castOf(script)))
		if got := strings.Split(plan, "\n")[1]; got != c.want {
			t.Errorf("%q: %s, want %s", c.content, got, c.want)
		}
	}
}
