package speech

import (
	"testing"
	"unicode"
	"unicode/utf8"

	"golang.org/x/text/cases"
	"golang.org/x/text/unicode/norm"
)

// Letters are one word where Unicode's full case folding makes them one, for
// every letter that folds to a single one (golang.org/x/text/cases, which has
// the Unicode Character Database's CaseFolding.txt).
func TestFoldIsUnicodes(t *testing.T) {
	full := cases.Fold()
	folded := 0
	for r := range unicode.MaxRune {
		s := norm.NFC.String(string(r))
		want := full.String(s)
		if !unicode.IsLetter(r) || want == s || utf8.RuneCountInString(want) != 1 {
			continue
		}
		folded++
		if got := fold(s); got != fold(want) {
			t.Errorf("%q folds to %q, and %q to %q", s, got, want, fold(want))
		}
	}
	if folded < 1300 {
		t.Errorf("only %d letters were compared", folded)
	}
	for a, b := range map[string]string{"STRASSE": "straße", "ΟΔΟΣ": "οδος", "Don’t": "DON'T", "CAFÉ": "cafe\u0301"} {
		if fold(norm.NFC.String(a)) != fold(norm.NFC.String(b)) {
			t.Errorf("%q and %q are two words", a, b)
		}
	}
}
