package editor

import (
	"bytes"
	"path/filepath"
	"strings"
	"testing"

	"pullscore/cmd/internal/console"
	"pullscore/cmd/internal/lists"
	"pullscore/cmd/internal/lsp"
	"pullscore/interp/moments"
)

// hovered returns the text of the hover over a part of a text.
func hovered(t *testing.T, s *snapshot, uri string, offset int) string {
	t.Helper()
	d, err := s.document(uri)
	if err != nil {
		t.Fatal(err)
	}
	result, err := hover(t.Context(), s, &lsp.PositionParams{TextDocument: lsp.TextDocument{URI: uri}, Position: d.index().position(offset, utf16)})
	if err != nil {
		t.Fatal(err)
	}
	if result == nil {
		return ""
	}
	text := result.(lsp.Hover).Contents.Value
	if n := strings.Count(text, "\n") + 1; n > mostLines {
		t.Errorf("a hover of %d lines: %q", n, text)
	}
	return text
}

func TestHover(t *testing.T) {
	path, src := example(t, "ticket-window.pull")
	uri := uriOf(path)
	s := held(map[string]string{uri: src})
	for _, test := range []struct {
		before, at string
		says       []string
	}{
		{`"One way.", lasting 0.9 s`, "rack to OSKEL", []string{"12A rack 1: MARRIT to OSKEL", "1.8 s to 3 s", "1.6 m to 2.9 m", "landing on \"one\"", "90 % wanted"}},
		{"shot 12A", "MARRIT", []string{"MARRIT: 1.6 m; sharp 1.57 m to 1.63 m"}},
		{"rate 24", "TICKET", []string{"TICKET: 1.2 m, 15 cm left"}},
		{"landing on ", "letter", []string{"“letter”", "OSKEL says from", "begins at 8."}},
		{"hold 1 s", `OSKEL: "Marrit`, []string{"OSKEL speaks from 0.5 s to 2.7 s, as the plan says", "“Marrit. Just stamp the ticket.”"}},
		{"rate 24", "subject", []string{"subject NAME at"}},
		{"rate 24", "1.6 m", []string{"1.6 m = 5′3″"}},
		{"Last boat", "1.8 s", []string{"1.8 s = 43 fr"}},
		{"cue stamp", "stamp", []string{"cue stamp: 3.57 s, frame 86"}},
		{"use", `"75"`, []string{`lens "75"`, "focal 75 mm", "in kit.pull, line 47"}},
		{"hold 1 s", "shot 12B", []string{"12B  The ticket", "lens 75, f/4 (T4.2)", "2 pulls"}},
		{"", "# A two-hander", nil},
	} {
		at := strings.Index(src, test.before)
		if test.before == "landing on " {
			at = strings.LastIndex(src, "landing on \"letter")
		}
		at += strings.Index(src[at:], test.at)
		got := hovered(t, s, uri, at)
		if test.says == nil && got != "" {
			t.Errorf("%s: %q", test.at, got)
		}
		for _, want := range test.says {
			if !strings.Contains(got, want) {
				t.Errorf("%s: %q lacks %q", test.at, got, want)
			}
		}
	}
}

// Every figure that a hover or a hint gives of a pull is in the list, written alike.
func TestHoverIsTheList(t *testing.T) {
	paths, _ := filepath.Glob("../../../examples/*.pull")
	asked := 0
	for _, relative := range paths {
		path, src := example(t, filepath.Base(relative))
		uri := uriOf(path)
		s := held(map[string]string{uri: src})
		p, err := s.plan(t.Context(), uri)
		if err != nil {
			t.Fatal(err)
		}
		var list bytes.Buffer
		if err := lists.WriteText(console.Screen{W: &list, Width: 1000}, p.result().Plan); err != nil {
			t.Fatal(err)
		}
		hints := map[int]string{}
		end := p.document.index().position(len(src), utf16)
		result, err := inlayHints(t.Context(), s, &lsp.RangeParams{TextDocument: lsp.TextDocument{URI: uri}, Range: lsp.Range{End: end}})
		if err != nil {
			t.Fatal(err)
		}
		for _, h := range result.([]lsp.InlayHint) {
			hints[s.offset(p.document, h.Position)] = h.Label
		}
		for _, shot := range p.result().Plan.Shots {
			for _, pull := range shot.Pulls {
				if p.reals[pull.File] != p.document.real || pullOf(shot, statementAt(p.tree(), p.document.index().starts[pull.Line-1]+pull.Column-1)) == nil {
					continue // of a move
				}
				asked++
				at := p.document.index().starts[pull.Line-1] + pull.Column - 1
				text := hovered(t, s, uri, at)
				in := s.style(shot)
				for _, figure := range []string{
					in.Time(float64(pull.Start)), in.Tape(float64(pull.FromM)), in.Tape(float64(pull.ToM)), moments.Chance(shot, pull, figures),
				} {
					if !strings.Contains(text, figure) || !strings.Contains(list.String(), figure) {
						t.Errorf("%s, rack %d of %s: %q is not in both the list and %q", relative, pull.Number, shot.ID, figure, text)
					}
				}
				if len(p.shotsOf(p.document, at)) > 1 {
					continue // a move, in which a line stands for several shots
				}
				for _, figure := range []string{figures.Time(float64(pull.Land)), moments.Chance(shot, pull, figures)} {
					if end := statementAt(p.tree(), at).Range().End.Offset; !strings.Contains(hints[end], figure) {
						t.Errorf("%s, rack %d of %s: the hint is %q, without %q", relative, pull.Number, shot.ID, hints[end], figure)
					}
				}
			}
		}
	}
	if asked < 15 {
		t.Errorf("only %d pulls", asked)
	}
}

// A rack without its time has a hint that writes it; what the plan says has none.
func TestHints(t *testing.T) {
	src := "rate 24\ncamera A\n  sensor 24.89 x 18.66 mm\nlens \"50\"\n  focal 50 mm\n  ring 270 deg\n  closest 50 cm\n  stops f/2 to f/22\nwith camera A, lens \"50\", stop f/4\nsubject OTTO at 2 m\nsubject BELL at 3 m\n" +
		"shot 1\n  start on OTTO\n  OTTO: \"Ring the bell.\"\n  OTTO: \"Now.\", lasting 1 s\n  rack to BELL\n  cue stroke\n  hold 1 s\n"
	uri := "file:///nowhere/a.pull"
	for want, choose := range map[string]choices{
		"OTTO: \"Ring the bell.\"|rack to BELL|cue stroke": {Hints: "all", Units: "plan"},
		"rack to BELL": {Hints: "pulls", Units: "plan"},
		"":             {Hints: "none", Units: "plan"},
	} {
		s := held(map[string]string{uri: src})
		s.choices = choose
		d, _ := s.document(uri)
		result, err := inlayHints(t.Context(), s, &lsp.RangeParams{TextDocument: lsp.TextDocument{URI: uri}, Range: lsp.Range{End: d.index().position(len(src), utf16)}})
		if err != nil {
			t.Fatal(err)
		}
		var lines []string
		for _, h := range result.([]lsp.InlayHint) {
			lines = append(lines, strings.TrimSpace(string(d.index().line(int(h.Position.Line)))))
			if strings.HasPrefix(lines[len(lines)-1], "rack") {
				if len(h.TextEdits) != 1 || !strings.HasPrefix(h.TextEdits[0].NewText, ", over ") {
					t.Errorf("%+v", h)
				}
				after := string(applied([]byte(src), h.TextEdits, utf16))
				again := held(map[string]string{uri: after})
				p, err := again.plan(t.Context(), uri)
				if err != nil || p.result().Plan.Shots[0].Pulls[0].Untimed {
					t.Errorf("written, it is not the time of the rack: %q", after)
				}
			}
		}
		if got := strings.Join(lines, "|"); got != want {
			t.Errorf("%+v: %q, not %q", choose, got, want)
		}
	}
}

// A word is explained as a part of the statement that it stands in, not of the first one of
// the language that has it.
func TestHoverWords(t *testing.T) {
	src := "plan \"The Orchard\"\nrate 24\nsubject WREN at 2 m, deep 6 cm\nsubject GATE at 3 m\nvoice GULL\n" +
		"shot 1\n  with camera A, lens \"90\", stop f/4\n  start on WREN\n  GULL: \"Mind the gate!\", lasting 1 s\n" +
		"  rack to GATE, landing on \"gate\", over 1 s\n  hold 1 s\n  rack to WREN, on end of GULL\n"
	uri := "file:///nowhere/orchard.pull"
	s := held(map[string]string{uri: src})
	for _, test := range []struct{ at, word, begins, says string }{
		{"rack to GATE", "to", "rack to TARGET", "the focus goes from where it is"},
		{"rack to GATE", "landing", "rack to TARGET", "the focus goes from where it is"},
		{"landing on", "on", "rack to TARGET", "the focus goes from where it is"},
		{"rack to GATE", "over", "rack to TARGET", "the focus goes from where it is"},
		{"start on", "on", "start on TARGET\n", "where the focus is when the shot begins"},
		{"subject WREN", "subject", "subject NAME at PLACE", "a person or thing that you can focus on"},
		{"subject WREN", "at", "subject NAME at PLACE", "a person or thing that you can focus on"},
		{"rate 24", "rate", "rate 24\n", "the frame rate, in frames a second"},
		{"voice GULL", "voice", "voice NAME\n", "a person who is heard and never focused on"},
		{"with camera", "with", "with camera NAME, lens", ""},
		{"with camera", "camera", "with camera NAME, lens", ""},
		{"with camera", "lens", "with camera NAME, lens", ""},
		{"lasting 1 s", "lasting", "NAME: \"WORDS\"", "a spoken line and its speaker"},
		{"on end of", "end", "end of OTTO: the end of OTTO's line", ""},
		{"at 2 m", "m", "lengths: mm cm m ft in", ""},
		{"over 1 s", "s", "times: s, ms, fr (frames)", ""},
	} {
		at := strings.Index(src, test.at)
		at += strings.Index(src[at:], test.word)
		if test.word == "m" || test.word == "s" {
			at = strings.Index(src, test.at) + len(test.at) - 1
		}
		got := hovered(t, s, uri, at)
		if !strings.HasPrefix(got, test.begins) || !strings.Contains(strings.Join(strings.Fields(got), " "), test.says) {
			t.Errorf("%s in %q: %q", test.word, test.at, got)
		}
		if strings.Contains(got, "are headers") || strings.Contains(got, "…") || strings.Count(got, test.begins) > 1 {
			t.Errorf("%s in %q says more than its statement: %q", test.word, test.at, got)
		}
	}
	if got := hovered(t, s, uri, strings.Index(src, "of GULL")); got != "" {
		t.Errorf("of: %q", got)
	}
}

// A place above the shots, or in a shot that could not be built, is in none, also where the
// plan has a single shot that could.
func TestAPlaceIsInItsOwnShotAlone(t *testing.T) {
	uri := "file:///nowhere/a.pull"
	src := opened + "  cue stroke\nshot 2\n  with lens \"gone\"\n  start on OTTO\n  cue stroke\n"
	s := held(map[string]string{uri: src})
	p, err := s.plan(t.Context(), uri)
	if err != nil || len(p.result().Plan.Shots) != 1 {
		t.Fatalf("%v: want one shot that could be built", err)
	}
	second := strings.Index(src, "shot 2")
	for at, want := range map[int]int{0: 0, strings.Index(src, "shot 1") + 3: 1, second + 3: 0, len(src): 0} {
		if got := len(p.shotIn(p.document, at)); got != want {
			t.Errorf("byte %d is in %d shots, not %d", at, got, want)
		}
	}
	end := p.document.index().position(len(src), utf16)
	result, err := inlayHints(t.Context(), s, &lsp.RangeParams{TextDocument: lsp.TextDocument{URI: uri}, Range: lsp.Range{End: end}})
	if err != nil {
		t.Fatal(err)
	}
	for _, h := range result.([]lsp.InlayHint) {
		if s.offset(p.document, h.Position) > second {
			t.Errorf("a hint of the first shot stands in the second: %+v", h)
		}
	}
}
