package editor

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"pullscore/cmd/internal/lsp"
	"pullscore/interp/units"
	"pullscore/lang"
)

// told returns the tokens of a document as words with their types.
func toldTokens(t *testing.T, s *snapshot, uri string, data []uint32) (list []string) {
	t.Helper()
	d, err := s.document(uri)
	if err != nil {
		t.Fatal(err)
	}
	var at lsp.Position
	for ; len(data) > 0; data = data[5:] {
		if data[0] > 0 {
			at.Character = 0
		}
		at.Line, at.Character = at.Line+data[0], at.Character+data[1]
		end := lsp.Position{Line: at.Line, Character: at.Character + data[2]}
		word := tokenTypes[data[3]] + " " + string(d.data[s.offset(d, at):s.offset(d, end)])
		for bit, name := range tokenModifiers {
			if data[4]&(1<<bit) != 0 {
				word += " " + name
			}
		}
		list = append(list, word)
	}
	return list
}

func TestSemanticTokens(t *testing.T) {
	path, src := example(t, "ticket-window.pull")
	uri := uriOf(path)
	s := held(map[string]string{uri: src})
	result, err := semanticTokens(t.Context(), s, &lsp.DocumentParams{TextDocument: lsp.TextDocument{URI: uri}})
	if err != nil {
		t.Fatal(err)
	}
	all := strings.Join(toldTokens(t, s, uri, result.(lsp.SemanticTokens).Data), "\n") + "\n"
	for _, want := range []string{
		"keyword plan\nstring \"The Last Boat, scene 12: the ticket window\"\n", "keyword with\nproperty camera\nclass A readonly\n",
		"class \"75\" readonly\n", "keyword subject\nvariable MARRIT declaration\n", "class 12A declaration\n", "keyword rack\nproperty to\nvariable OSKEL\n",
		"event stamp declaration\n", "event stamp\noperator +\nnumber 0.5\n", "comment # A two-hander",
	} {
		if !strings.Contains(all, want) {
			t.Errorf("%q is not in\n%s", want, all)
		}
	}
}

// Of any part of any example the tokens are those of the whole in it, in order, without
// overlap, and each is a token of the scanner.
func TestTokensOfAPart(t *testing.T) {
	paths, _ := filepath.Glob("../../../examples/*.pull")
	for _, relative := range paths {
		path, src := example(t, filepath.Base(relative))
		uri := uriOf(path)
		s := held(map[string]string{uri: src})
		d, _ := s.document(uri)
		result, err := semanticTokens(t.Context(), s, &lsp.DocumentParams{TextDocument: lsp.TextDocument{URI: uri}})
		if err != nil {
			t.Fatal(err)
		}
		whole := toldTokens(t, s, uri, result.(lsp.SemanticTokens).Data)
		scanned := map[string]bool{}
		for _, token := range lang.Tokens(d.data) {
			scanned[string(d.data[token.Start:token.End])] = true
		}
		for _, word := range whole {
			_, text, _ := strings.Cut(word, " ")
			text = strings.TrimSuffix(strings.TrimSuffix(text, " readonly"), " declaration")
			if !scanned[text] {
				t.Errorf("%s: %q is no token", relative, word)
			}
		}
		half := d.index().position(len(src)/2, utf16)
		half.Character = 0
		var parts []string
		for _, part := range []lsp.Range{{End: half}, {Start: half, End: d.index().position(len(src), utf16)}} {
			result, err := semanticTokensOf(t.Context(), s, &lsp.RangeParams{TextDocument: lsp.TextDocument{URI: uri}, Range: part})
			if err != nil {
				t.Fatal(err)
			}
			parts = append(parts, toldTokens(t, s, uri, result.(lsp.SemanticTokens).Data)...)
		}
		if fmt.Sprint(parts) != fmt.Sprint(whole) {
			t.Errorf("%s: the halves are not the whole", relative)
		}
	}
}

func TestCodeLens(t *testing.T) {
	path, src := example(t, "ticket-window.pull")
	kit, kitText := example(t, "kit.pull")
	s := held(map[string]string{uriOf(path): src, uriOf(kit): kitText})
	titles := func(uri string) map[string]string {
		result, err := codeLens(t.Context(), s, &lsp.DocumentParams{TextDocument: lsp.TextDocument{URI: uri}})
		if err != nil {
			t.Fatal(err)
		}
		d, _ := s.document(uri)
		list := map[string]string{}
		for _, l := range result.([]lsp.CodeLens) {
			list[string(d.index().line(int(l.Range.Start.Line)))] = l.Command.Title
		}
		return list
	}
	if got := titles(uriOf(path)); got[`shot 12A "He asks for one way"`] != "9.7 s, 3 pulls" || got[`shot 12B "The ticket"`] != "8.47 s, 2 pulls" {
		t.Errorf("%v", got)
	}
	for _, name := range []string{"75", "50", "old 85"} {
		used := 0
		for _, path := range plansOf(t, "examples") {
			text, err := os.ReadFile(path)
			if err != nil {
				t.Fatal(err)
			}
			uses := strings.Contains(string(text), `kit.pull"`) || strings.Contains(string(text), `use "two-hander.pull"`) // which uses the kit
			if !strings.HasPrefix(string(text), "# The kit") && strings.Contains(string(text), `lens "`+name+`"`) && uses {
				used++
			}
		}
		if got, want := titles(uriOf(kit))[`lens "`+name+`"`], "in "+units.Count(used, "plan"); got != want {
			t.Errorf("lens %q is %s, not %s", name, got, want)
		}
	}
}
