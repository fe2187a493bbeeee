package editor

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"pullscore/cmd/internal/lsp"
)

const shaped = `plan "The quay" # no comment of its own line
use "kit.pull"
use "gone.pull"

# The set is
# a made-up one.
shot 1 "One"
with camera A, lens "50", stop f/4
subject OTTO at 2 m,
  sways 2 cm
# alone
OTTO: "Who is there?"

shot 2
hold 1 s
`

// shape returns a snapshot of the text above, in a folder that has its kit.
func shape(t *testing.T) (*snapshot, string) {
	folder := t.TempDir()
	if err := os.WriteFile(filepath.Join(folder, "kit.pull"), []byte("camera A\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	uri := uriOf(filepath.Join(folder, "quay.pull"))
	return held(map[string]string{uri: shaped}), uri
}

func TestFolding(t *testing.T) {
	s, uri := shape(t)
	result, err := folding(t.Context(), s, &lsp.DocumentParams{TextDocument: lsp.TextDocument{URI: uri}})
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	for _, f := range result.([]lsp.FoldingRange) {
		got = append(got, fmt.Sprint(f.StartLine, "-", f.EndLine, f.Kind))
	}
	if want := []string{"4-5comment", "6-11region", "8-9", "13-14region"}; !slices.Equal(got, want) {
		t.Errorf("%q, not %q", got, want)
	}
}

func TestSelectionGrowsFromWordToFile(t *testing.T) {
	s, uri := shape(t)
	doc, _ := s.document(uri)
	at := strings.Index(shaped, "cm\n")
	result, err := selection(t.Context(), s, &lsp.SelectionRangeParams{
		TextDocument: lsp.TextDocument{URI: uri}, Positions: []lsp.Position{doc.index().position(at, utf16)},
	})
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	for r := &result.([]lsp.SelectionRange)[0]; r != nil; r = r.Parent {
		got = append(got, shaped[s.offset(doc, r.Range.Start):s.offset(doc, r.Range.End)])
	}
	section := shaped[strings.Index(shaped, "shot 1"):strings.Index(shaped, "\n\nshot 2")]
	want := []string{"cm", "sways 2 cm", "subject OTTO at 2 m,\n  sways 2 cm", section, shaped}
	if !slices.Equal(got, want) {
		t.Errorf("%q\nnot %q", got, want)
	}
}

func TestLinksLeadToFilesThatAreThere(t *testing.T) {
	s, uri := shape(t)
	result, err := links(t.Context(), s, &lsp.DocumentParams{TextDocument: lsp.TextDocument{URI: uri}})
	if err != nil {
		t.Fatal(err)
	}
	list := result.([]lsp.DocumentLink)
	doc, _ := s.document(uri)
	if len(list) != 1 || !strings.HasSuffix(list[0].Target, "/kit.pull") {
		t.Fatalf("%+v", list)
	}
	if at := list[0].Range; shaped[s.offset(doc, at.Start):s.offset(doc, at.End)] != `"kit.pull"` {
		t.Errorf("the link stands at %+v", at)
	}
}
