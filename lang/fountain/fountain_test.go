package fountain

import (
	"encoding/json"
	"fmt"
	"reflect"
	"runtime"
	"slices"
	"strings"
	"testing"
	"time"

	"pullscore/lang/lines"
	"pullscore/lang/testing/cputime"
	"pullscore/lang/testing/samples"
)

// expected is what a correct reader finds in a sample.
type expected struct {
	Blocks         int     `json:"dialogue_blocks"`
	FirstDialogue  []any   `json:"first_dialogue"` // a name, and its first line
	LastDialogue   []any   `json:"last_dialogue"`  // a name, and its last line
	Headings       [][]any `json:"scene_headings"`
	Speakers       map[string]int
	TitleKeys      []string `json:"title_keys"`
	Transitions    []string
	Dual           int `json:"dual_marked"`
	Boneyards      int
	Notes          int
	Lyrics         int
	Centred        int `json:"centered"`
	Parentheticals int
	Sections       int
	Synopses       int
	PageBreaks     int `json:"page_breaks"`
}

func TestSamples(t *testing.T) {
	samples.Each(t, "fountain/", func(t *testing.T, name string, src []byte, want expected) {
		if want.Headings == nil {
			t.Skip("skipped: another reader's own output, not a script")
		}
		text, diags := lines.Decode(name, src)
		script, more := Read(text)
		if len(diags)+len(more) > 0 {
			t.Errorf("told: %v %v", diags, more)
		}
		got := found(text, script)
		for i := range want.Headings { // nil is no number
			if want.Headings[i][1] == nil {
				want.Headings[i][1] = ""
			}
		}
		a, b := reflect.ValueOf(got), reflect.ValueOf(want)
		for i := range a.NumField() {
			x, _ := json.Marshal(a.Field(i).Interface())
			y, _ := json.Marshal(b.Field(i).Interface())
			if string(x) != string(y) {
				t.Errorf("%s: %s\nwant %s", a.Type().Field(i).Name, x, y)
			}
		}
	})
}

// found counts a script as the table does.
func found(text *lines.Text, s *Script) expected {
	got := expected{
		Speakers: map[string]int{}, Boneyards: s.Boneyards, Notes: s.Notes,
		Headings: [][]any{}, TitleKeys: []string{}, Transitions: []string{},
	}
	for _, f := range s.Title {
		got.TitleKeys = append(got.TitleKeys, f.Key)
	}
	for e := range Elements(text) {
		switch e.Kind {
		case Heading:
			got.Headings = append(got.Headings, []any{e.Text, e.Number})
		case Transition:
			got.Transitions = append(got.Transitions, e.Text)
		case Centred:
			got.Centred++
		case Parenthetical:
			got.Parentheticals++
		case Lyric:
			got.Lyrics++
		case Section:
			got.Sections++
		case Synopsis:
			got.Synopses++
		case PageBreak:
			got.PageBreaks++
		case Cue:
			got.Blocks++
			got.Speakers[e.Text]++
			if e.Dual {
				got.Dual++
			}
		}
	}
	line := func(b Beat, last bool) []any {
		said := []string{}
		for _, p := range b.Parts {
			if p.Kind == Dialogue {
				said = append(said, p.Text)
			}
		}
		switch n := len(said); {
		case n == 0:
			return []any{b.Who, said}
		case last:
			return []any{b.Who, said[n-1:]}
		}
		return []any{b.Who, said[:1]}
	}
	for _, scene := range s.Scenes {
		for _, b := range scene.Beats {
			if b.Who == "" {
				continue
			}
			if got.FirstDialogue == nil {
				got.FirstDialogue = line(b, false)
			}
			got.LastDialogue = line(b, true)
		}
	}
	return got
}

func show(src string) string {
	text, diags := lines.Decode("f.fountain", []byte(src))
	s, more := Read(text)
	var b strings.Builder
	for _, scene := range s.Scenes {
		fmt.Fprintf(&b, "[%s|%s]", scene.Number, scene.Heading)
		for _, beat := range scene.Beats {
			fmt.Fprintf(&b, " %d:%s<%s>", beat.Line, beat.Who, beat.Text())
		}
	}
	for _, d := range append(diags, more...) {
		fmt.Fprintf(&b, " / %d:%d %s", d.Range.Start.Line, d.Range.Start.Column, d.Code)
	}
	return b.String()
}

// Pages of our own, one rule each.
func TestRules(t *testing.T) {
	for _, c := range []struct{ name, src, want string }{
		{"a page", "INT. FERRY - NIGHT #12A#\n\nRope on the deck.\n\nHALDIS\n(low)\nYou *kept* it.\nAll of it.\n\nPEVIN (O.S.)\nAye.\n",
			"[12A|INT. FERRY - NIGHT] 3:<Rope on the deck.> 5:HALDIS<You kept it. All of it.> 10:PEVIN<Aye.>"},
		{"speech before any heading", "HALDIS\nAye.\n\nEXT. QUAY - DAY\n\nPEVIN\nNo.\n", "[|] 1:HALDIS<Aye.>[|EXT. QUAY - DAY] 6:PEVIN<No.>"},
		{"a name needs a line before it blank, and one after not", "Wind.\nHALDIS\nNo.\n\nPEVIN\n\nWaits.", "[|] 1:<Wind.> 2:<HALDIS> 3:<No.> 5:<PEVIN> 7:<Waits.>"},
		{"a name needs a capital", "23 (O.S.)\nNo.\n\nR2D2\nYes.", "[|] 1:<23 (O.S.)> 2:<No.> 4:R2D2<Yes.>"},
		{"forced name in small letters, and in a script without capitals", "@McDUFF\nAye.\n\n@灯台守\nはい。", "[|] 1:McDUFF<Aye.> 4:灯台守<はい。>"},
		{"an extension without a name is none", "@(V.O.)\nAye.", "[|] 1:<@(V.O.)> 2:<Aye.>"},
		{"many boneyards on a line", "a /* b */ c /* d */ e /* f\ng */ h", "[|] 1:<a  c  e  h>"},
		{"contd", "HALDIS (CONT'D) ^\nAye.", "[|] 1:HALDIS<Aye.>"},
		{"two blanks keep a speech", "HALDIS\nOne.\n  \nTwo.\n\nThree.", "[|] 1:HALDIS<One. Two.> 6:<Three.>"},
		{"one blank ends it", "HALDIS\nOne.\n \nTwo.", "[|] 1:HALDIS<One.> 4:<Two.>"},
		{"boneyard over lines", "HALDIS\nOne /* not\n\nthis */ two.\n\nPEVIN\nAye.", "[|] 1:HALDIS<One  two.> 6:PEVIN<Aye.>"},
		{"boneyard without end", "HALDIS\nOne /* two.\n", "[|] 1:HALDIS<One /* two.> / 2:5 unclosed-boneyard"},
		{"notes", "HALDIS\nOne [[what?]] two [[or\nmore]] three.\n[[aside]]\nFour.", "[|] 1:HALDIS<One  two  three. Four.>"},
		{"a note with an empty line is none", "One [[two\n\nthree]] four.", "[|] 1:<One [[two> 3:<three]] four.>"},
		{"title page", "Title: The Boat\nAuthor:\n    Nobody\n\tat all\n\nINT. X", "[|INT. X]"},
		{"a first line with another key", "FADE IN:\n\nINT. X", "[|] 1:<FADE IN:>[|INT. X]"},
		{"forced heading, and three dots", ".ON THE STAIRS #3-b#\n\n...and on.", "[3-b|ON THE STAIRS] 3:<...and on.>"},
		{"forced action", "!HALDIS\nAye.", "[|] 1:<HALDIS> 2:<Aye.>"},
		{"transition is no speech", "INT. X\n\nCUT TO:\n\n> FADE OUT.\n\nA", "[|INT. X] 7:<A>"},
		{"emphasis", "HALDIS\n***Both*** **bold** *it*, _under *in*_ \\*not\\* 2 * 3 * 4", "[|] 1:HALDIS<Both bold it, under in *not* 2 * 3 * 4>"},
		{"sung", "HALDIS\n~Row, row\nAye.\n\n~La", "[|] 1:HALDIS<Row, row Aye. La>"},
		{"CR line ends and a byte order mark", "\uFEFFHALDIS\r\nAye.\r\n\r\nPEVIN\rNo.", "[|] 1:HALDIS<Aye.> 4:PEVIN<No.>"},
	} {
		t.Run(c.name, func(t *testing.T) {
			if got := show(c.src); got != c.want {
				t.Errorf("got  %s\nwant %s", got, c.want)
			}
		})
	}
}

// A name tells whether its speaker is seen by what stands behind it.
func TestOff(t *testing.T) {
	for cue, want := range map[string]bool{
		"HALDIS": false, "HALDIS (V.O.)": true, "HALDIS (vo)": true, "HALDIS (O.S.) (CONT'D)": true, "HALDIS (O.C.)^": true,
		"HALDIS (CONT'D)": false, "HALDIS (on the radio)": false, "HALDIS (V.O./on the radio)": true, "HALDIS (VOICES)": false,
	} {
		text, _ := lines.Decode("f", []byte(cue+"\n(low)\nAye.\n"))
		s, _ := Read(text)
		b := s.Scenes[0].Beats[0]
		if b.Off != want || b.Who != "HALDIS" || !reflect.DeepEqual(b.Parts, []Part{{Parenthetical, "(low)"}, {Dialogue, "Aye."}}) {
			t.Errorf("%s: %+v", cue, b)
		}
	}
}

// A speech that has no end, and a note that has none, are not kept as a whole.
func TestEndless(t *testing.T) {
	text, _ := lines.Decode("f", []byte("\nHALDIS\n"+strings.Repeat("Aye.\n", MaxSpeech/4)+"\nPEVIN\nNo.\n"))
	s, diags := Read(text)
	beats := s.Scenes[0].Beats
	if len(diags) != 1 || diags[0].Code != "too-long" || diags[0].Range.Start.Line != 2 || len(beats) != 2 || len(beats[0].Text()) > MaxSpeech {
		t.Errorf("%d beats, %+v", len(beats), diags)
	}
	n := longestNote + 10
	if got, want := len(readAll("[[ open\n"+strings.Repeat("a\n", n)+"end ]]\n")), n+2; got != want {
		t.Errorf("%d elements, want %d", got, want)
	}
}

// What goes on for very many lines is not copied line by line.
func TestLongWholesAreQuick(t *testing.T) {
	const many = 300_000
	for name, src := range map[string]string{
		"boneyards": strings.Repeat("a/*\n*/", many), "notes": strings.Repeat("a[[\n]]", many),
		"a title page": "Title: The Boat\n" + strings.Repeat("   x\n", many),
	} {
		var found []Element
		if took := cputime.Of(func() { found = readAll(src) }); took > 2*time.Second {
			t.Errorf("%s took %v", name, took)
		}
		if len(found) > 1 || len(found) == 1 && len(found[0].Text) != many {
			t.Errorf("%s: %d elements", name, len(found))
		}
	}
}

func readAll(src string) []Element {
	text, _ := lines.Decode("f", []byte(src))
	return slices.Collect(Elements(text))
}

// What is read of a long text is let go of: at no time is more kept than one
// speech, whatever the text is made of.
func TestMemory(t *testing.T) {
	for name, piece := range map[string]string{
		"prose": "The rope lies on the deck, and nobody is there to see it.\n\n", "dialogue": "HALDIS\n(low)\nYou kept every ledger.\n\n",
		"short": "A\nb\n\n", "action": "a\n", "speeches": "\nA\n" + strings.Repeat("b\n", 1000), "one speech": "A\nb\n  \n",
		"headings": "INT. A\n\n", "blank": "\n", "notes": "a [[b]] /* c */\n", "an open note": "[[ a\n", "a long line": "*a* b ",
	} {
		const size = 4 << 20
		text := &lines.Text{Content: strings.Repeat(piece, size/len(piece))}
		start, most, passed := heap(), 0, 0
		for _, b := range Beats(text, &lines.Faults{}) {
			if passed++; passed%(size/8) == 1 {
				most = max(most, heap()-start)
			}
			runtime.KeepAlive(b)
		}
		if most = max(most, heap()-start); most > 2*MaxSpeech {
			t.Errorf("%s: %d kB are kept", name, most>>10)
		}
		runtime.KeepAlive(text)
	}
}

// heap returns how many bytes are in use.
func heap() int {
	runtime.GC()
	var m runtime.MemStats
	runtime.ReadMemStats(&m)
	return int(m.HeapAlloc)
}

func TestTitlePage(t *testing.T) {
	text, _ := lines.Decode("f", []byte("Title: The Boat\nAuthor:\n    Nobody\n\tat all\n\nINT. X"))
	s, _ := Read(text)
	if want := []Field{{"Title", "The Boat"}, {"Author", "Nobody\nat all"}}; !reflect.DeepEqual(s.Title, want) {
		t.Errorf("%q", s.Title)
	}
}

// Lines come in the order of the file, and words outside comments are kept.
func FuzzRead(f *testing.F) {
	f.Add("Title: X\n\nINT. A #1#\n\nHALDIS ^\n(so)\n*Aye* [[no\nte]] /* x */\n\n> CUT TO:\n===\n~la\n")
	f.Add("a [[b\n\n/* c")
	f.Fuzz(func(t *testing.T, src string) {
		text, _ := lines.Decode("f", []byte(src))
		script, _ := Read(text)
		last, words := 0, 0
		for e := range Elements(text) {
			if e.Line <= last {
				t.Fatalf("line %d behind line %d", e.Line, last)
			}
			last = e.Line
			words++
		}
		plain := !strings.Contains(src, "/*") && !strings.Contains(src, "[[") && len(script.Title) == 0
		filled := 0
		for l := range text.All() {
			if !l.Blank() {
				filled++
			}
		}
		if plain && words != filled {
			t.Errorf("%d lines, %d elements", filled, words)
		}
	})
}
