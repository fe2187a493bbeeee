package editor

import (
	"slices"
	"strings"
	"testing"

	"pullscore/cmd/internal/lsp"
)

// behind returns where a part of a text stands behind another.
func behind(t *testing.T, src, before, part string) int {
	t.Helper()
	i := strings.Index(src, before)
	if i < 0 || !strings.Contains(src[i:], part) {
		t.Fatalf("no %q behind %q", part, before)
	}
	return i + strings.Index(src[i:], part)
}

func TestHoverOfScenes(t *testing.T) {
	path, src := example(t, "staged/two-hander.pull")
	uri := uriOf(path)
	s := held(map[string]string{uri: src})
	for _, test := range []struct {
		before, at string
		says       []string
	}{
		{"subject OSKEL at", "GATE", []string{"mark GATE: 40 cm right, 1.3 m upstage", "1′3¾″ right, 4′3¼″ upstage", "from the near corner"}},
		{"scene \"", "scene", []string{"scene The gate", "lasts 10.6 s, 4 lines", "3 set-ups: 13A, 13B, 13C"}},
		{"subject ", "MARRIT", []string{"MARRIT: at the zero point, 1.5 m high", "13A sees MARRIT: tape 2.36 m, focus 2.34 m, off axis 6.8°", "13C sees"}},
		{"pause", `OSKEL: "`, []string{"OSKEL speaks from 3 s to 3.9 s of the scene, as the plan says", "13A holds all of it", "13B holds none of it", "13C holds all"}},
		{"shot 13A", "covers", []string{"13A: scene The gate, covers 0 s to 10.6 s of it"}},
		{"shot 13A", "camera at", []string{"80 cm right, 2.2 m downstage, 1.5 m high; pan 13.3° left,", "tilt 0.8° up"}},
		{"shot 13A", "MARRIT", []string{"MARRIT: 2.34 m, 27.7 cm left; sharp", "tape 2.36 m, focus 2.34 m, off axis 6.8° as 13A starts", "in the picture throughout"}},
		{"shot 13C", "matches", []string{"MARRIT to OSKEL: looks 107.9° camera right, back 20.6° camera left"}},
		{"matches ", "13B", []string{"13B  Single MARRIT", "lens 75"}},
	} {
		got := hovered(t, s, uri, behind(t, src, test.before, test.at))
		for _, want := range test.says {
			if !strings.Contains(got, want) {
				t.Errorf("%s %s: %q lacks %q", test.before, test.at, got, want)
			}
		}
	}
}

func TestHintsOfScenes(t *testing.T) {
	for name, labels := range map[string][]string{
		"staged/two-hander.pull": {"pan 13.3° left, tilt 0.8° up", "pan 142.4° left, tilt 0°", "pan 3.5° left, tilt 0°"},
		"staged/door.pull":       {"pan 20.8° right, tilt 2.8° up", "0 to 5 s, then pan 27.5° right, tilt 6.1° up", "5.7 to 6.9 s, then pan 24.6° right, tilt 17.9° down"},
	} {
		path, src := example(t, name)
		uri := uriOf(path)
		s := held(map[string]string{uri: src})
		s.Hints = "all"
		d, _ := s.document(uri)
		result, err := inlayHints(t.Context(), s, &lsp.RangeParams{TextDocument: lsp.TextDocument{URI: uri}, Range: lsp.Range{End: d.index().position(len(src), utf16)}})
		if err != nil {
			t.Fatal(err)
		}
		var got []string
		for _, h := range result.([]lsp.InlayHint) {
			if strings.Contains(h.Label, "pan") {
				got = append(got, h.Label)
			}
		}
		if !slices.Equal(got, labels) {
			t.Errorf("%s: %q", name, got)
		}
	}
}

func TestCompletionOfScenes(t *testing.T) {
	path, src := example(t, "staged/two-hander.pull")
	uri := uriOf(path)
	for _, test := range []struct {
		line string // in place of the last line
		want string
		not  string
	}{
		{"  camera at ", "GATE", ""},
		{"  camera at GATE, aims at ", "OSKEL", "GATE"},
		{"  camera at 20 cm towards ", "GATE", ""},
		{"  runs with ", "13B", "13C"},
		{"  matches ", "13A", "13C"},
		{"  camera as in ", "13B", "13C"},
		{"  measured ", "OSKEL", "GATE"},
		{"  measured OSKEL at ", "GATE", "OSKEL"},
		{"  rack to ", "MARRIT", "GATE"},
		{"  covers ", "all", ""},
		{"  covers \"", "letter", ""},
		{"  rack to MARRIT, on ", `"letter"`, ""},
		{"scene \"other\"\n  mark DOOR at ", "", "GATE"},
		{"scene \"other\"\n  cut to ", "13C", ""},
		{"  c", "camera", ""},
	} {
		text := src[:strings.LastIndex(strings.TrimSpace(src), "\n")+1] + test.line
		s := held(map[string]string{uri: text})
		var labels []string
		for _, it := range offered(t, s, uri, len(text)) {
			labels = append(labels, it.Label)
		}
		if test.want != "" && !slices.Contains(labels, test.want) || test.not != "" && slices.Contains(labels, test.not) {
			t.Errorf("%q: %q", test.line, labels)
		}
	}
}

// A scene is a symbol with its marks, people and lines, and folds; so are its shots.
func TestOutlineOfScenes(t *testing.T) {
	path, src := example(t, "staged/two-hander.pull")
	uri := uriOf(path)
	s := held(map[string]string{uri: src})
	s.client.TextDocument.DocumentSymbol.Hierarchical = true
	result, err := documentSymbols(t.Context(), s, &lsp.DocumentParams{TextDocument: lsp.TextDocument{URI: uri}})
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	for _, x := range result.([]lsp.DocumentSymbol) {
		got = append(got, x.Name)
		for _, child := range x.Children {
			if x.Kind == lsp.SymbolNamespace {
				got = append(got, "  "+child.Name)
			}
		}
	}
	want := []string{
		"The gate", "  GATE", "  MARRIT", "  OSKEL", "  TICKET", "  MARRIT: Nobody rows back tonight.", "  OSKEL: I know.",
		"  MARRIT: And the ticket?", "  OSKEL: Keep it. The letter said enough.", "13A", "13B", "13C",
	}
	if !slices.Equal(got, want) {
		t.Errorf("%q", got)
	}
	folds, err := folding(t.Context(), s, &lsp.DocumentParams{TextDocument: lsp.TextDocument{URI: uri}})
	if err != nil {
		t.Fatal(err)
	}
	line := uint32(strings.Count(src[:strings.Index(src, "scene \"The")], "\n"))
	if !slices.ContainsFunc(folds.([]lsp.FoldingRange), func(f lsp.FoldingRange) bool { return f.StartLine == line && f.EndLine > line+10 }) {
		t.Errorf("%v", folds)
	}
}

// A mark and somebody of a scene get another name wherever they stand, and a shot keeps
// its ID.
func TestRenameInScenes(t *testing.T) {
	path, src := example(t, "staged/two-hander.pull")
	uri := uriOf(path)
	for name, times := range map[string]int{"GATE": 2, "OSKEL": strings.Count(src, "OSKEL") - 1, "TICKET": 1} {
		s := held(map[string]string{uri: src})
		d, err := s.document(uri)
		if err != nil {
			t.Fatal(err)
		}
		result, err := rename(t.Context(), s, &lsp.RenameParams{
			TextDocument: lsp.TextDocument{URI: uri}, Position: d.index().position(strings.Index(src, " "+name)+1, utf16), NewName: "Q",
		})
		if err != nil {
			t.Fatal(err)
		}
		if edits := result.(lsp.WorkspaceEdit).Changes[uri]; len(edits) != times {
			t.Errorf("%s: %d edits, not %d: %v", name, len(edits), times, edits)
		}
	}
	s := held(map[string]string{uri: src})
	d, _ := s.document(uri)
	_, err := rename(t.Context(), s, &lsp.RenameParams{
		TextDocument: lsp.TextDocument{URI: uri}, Position: d.index().position(strings.Index(src, "13A"), utf16), NewName: "Q",
	})
	if err == nil {
		t.Error("a shot gets another ID")
	}
}
