package editor

import (
	"strings"
	"testing"

	"pullscore/cmd/internal/lsp"
)

// TestTypeAPlan types a whole plan, letter by letter, with slips that are taken back, and
// with letters of more than one UTF-16 unit, of more than one byte and of more than one
// character. After each letter every range that is told is a place in the text of that
// moment.
func TestTypeAPlan(t *testing.T) {
	path, src := example(t, "ticket-window.pull")
	src = strings.NewReplacer("OSKEL", "O\u0308SKEL", "window", "w\u00edndow \U0001F3AC", "#", "# e\u0301\U0001F468\u200d\U0001F467 ").Replace(src)
	for enc, every := range map[encoding]int{utf16: 1, utf8s: 10} { // letters between two looks
		s := held(map[string]string{uriOf(path): ""})
		s.settings.encoding = enc
		keys, told := 0, 0
		typed := func(back int, put string) {
			d := s.open[uriOf(path)]
			x := d.index()
			at := lsp.Range{Start: x.position(len(d.data)-back, enc), End: x.position(len(d.data), enc)}
			s = s.with(d.edited(d.version+1, []lsp.ContentChange{{Range: &at, Text: put}}, enc))
			if d = s.open[d.uri]; d.lost {
				t.Fatalf("lost at %q", put)
			}
			if keys++; keys%every == 0 {
				told += checkRanges(t, s, d)
			}
			if keys%100 == 0 {
				answered(t, s, d.uri, at.Start, d.index().position(len(d.data), enc), "O\u0308SKEL")
			}
		}
		for i, letter := range []rune(src) {
			typed(0, string(letter))
			if i%4 == 0 {
				typed(0, "\U0001F642")
				typed(len("\U0001F642"), "")
			}
		}
		if got := s.open[uriOf(path)]; string(got.data) != src || told < 50 || keys < 2000 {
			t.Errorf("%d keys, %d findings told, and the text is %q", keys, told, got.data)
		}
	}
}

// checkRanges checks the findings of a document, and returns how many there are.
func checkRanges(t *testing.T, s *snapshot, d *document) int {
	t.Helper()
	r, err := s.shared.plans.get(t.Context(), s, d.path)
	if err != nil {
		t.Fatal(err)
	}
	list := s.diagnostics(d.real, []*reading{r})
	for _, f := range list {
		start, ok := d.index().offset(f.Range.Start, s.encoding)
		end, also := d.index().offset(f.Range.End, s.encoding)
		if !ok || !also || start > end || d.index().ranged(start, end, s.encoding) != f.Range {
			t.Fatalf("%+v is no place in %q", f, d.data)
		}
	}
	return len(list)
}
