package editor

import (
	"slices"
	"testing"

	"pullscore/cmd/internal/lsp"
	"pullscore/lang"
)

// applied returns a text after edits.
func applied(text []byte, edits []lsp.TextEdit, enc encoding) []byte {
	x := newLineIndex(text)
	out, at := []byte{}, 0
	for _, e := range edits {
		start, _ := x.offset(e.Range.Start, enc)
		end, _ := x.offset(e.Range.End, enc)
		out = append(append(out, text[at:start]...), e.NewText...)
		at = end
	}
	return append(out, text[at:]...)
}

func TestFormattingIsTheLayout(t *testing.T) {
	for _, src := range []string{
		"", "\n\n", "plan \"A\"\nrate   24\n\n\n\nshot 1\nwith camera A", "plan \"A\"\r\nrate   24\r\n\r\nshot 1\r\n  hold 2 s\r\n",
		"rate 24\rshot 1", "  # one\n\tplan \"B\"\n\n\n", "rate 24\n",
	} {
		uri := "file:///nowhere/a.pull"
		s := held(map[string]string{uri: src})
		result, err := formatting(t.Context(), s, &lsp.FormattingParams{TextDocument: lsp.TextDocument{URI: uri}})
		if err != nil {
			t.Fatal(err)
		}
		edits := result.([]lsp.TextEdit)
		want := lang.Format([]byte(src))
		if got := applied([]byte(src), edits, utf16); string(got) != string(want) {
			t.Errorf("%q: %q, not %q, by %+v", src, got, want, edits)
		}
		if string(want) == src && len(edits) > 0 {
			t.Errorf("%q: edits of a text that is laid out", src)
		}
		if !slices.IsSortedFunc(edits, func(a, b lsp.TextEdit) int { return int(a.Range.Start.Line) - int(b.Range.Start.Line) }) {
			t.Errorf("%q: edits out of order", src)
		}
	}
}
