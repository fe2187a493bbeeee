package speech

import (
	"math"
	"reflect"
	"strings"
	"testing"

	"golang.org/x/text/unicode/norm"
	"pgregory.net/rapid"
)

func texts(tokens []Token) []string {
	var all []string
	for _, t := range tokens {
		all = append(all, t.Text)
	}
	return all
}

func TestSplit(t *testing.T) {
	tests := []struct {
		line string
		want []string
	}{
		{"You kept the second ledger.", []string{"You", "kept", "the", "second", "ledger"}},
		{"“Don’t!” she said—twice.", []string{"Don’t", "she", "said", "twice"}},
		{"'Tis the dogs' rock 'n' roll", []string{"Tis", "the", "dogs", "rock", "n", "roll"}},
		{"twenty-one", []string{"twenty", "one"}},
		{"1,500 crates, 2.5 m, at 10:30.", []string{"1,500", "crates", "2.5", "m", "at", "10", "30"}},
		{"e\u0301t\u00e9", []string{"\u00e9t\u00e9"}},
		{"帳簿を見た。", []string{"帳", "簿", "を", "見", "た"}},
		{"Nadia帳簿 ok", []string{"Nadia", "帳", "簿", "ok"}},
		{"か\u3099く", []string{"が", "く"}},
		{"จดหมาย", []string{"จ", "ด", "ห", "ม", "า", "ย"}},
		{"ນ້ຳ", []string{"ນ້", "ຳ"}},
		{"soft\u00adhyphen", []string{"soft\u00adhyphen"}},
		{"... — !", nil},
		{"", nil},
	}
	for _, tt := range tests {
		if got := texts(Split(tt.line)); !reflect.DeepEqual(got, tt.want) {
			t.Errorf("Split(%q) = %q, want %q", tt.line, got, tt.want)
		}
	}
}

// Tokens come in order, do not overlap, and are what stands at their offsets,
// composed.
func TestSplitOffsets(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		pieces := rapid.SliceOf(rapid.SampledFrom([]string{
			"a", "é", "e\u0301", "'", "’", " ", "-", "1", ",", ".", "か\u3099", "簿", "한", "\u1112\u1161\u11ab",
			"กิ", "\u200d", "ᾳ", "\u03b1\u0345", "\xff",
		})).Draw(t, "pieces")
		line := strings.Join(pieces, "")
		at := 0
		for _, token := range Split(line) {
			if token.Start < at || token.End <= token.Start || token.End > len(line) {
				t.Fatalf("%q: token %q is at %d to %d, after %d", line, token.Text, token.Start, token.End, at)
			}
			at = token.End
			if got := norm.NFC.String(line[token.Start:token.End]); got != token.Text {
				t.Fatalf("%q: token %q stands at %q", line, token.Text, got)
			}
		}
	})
}

func TestMatch(t *testing.T) {
	tests := []struct {
		line, words string
		want        []int
	}{
		{"I kept every ledger.", "every", []int{2}},
		{"I kept every ledger.", "EVERY ledger!", []int{2}},
		{"No, no, no.", "no", []int{0, 1, 2}},
		{"No, no, no.", "No no", []int{0, 1}},
		{"I don’t know", "don't", []int{1}},
		{"I don't know", "don‘t", []int{1}},
		{"I do not know", "don't", nil},
		{"Everything", "every", nil},
		{"STRASSE", "straße", []int{0}},
		{"ΟΔΟΣ", "οδος", []int{0}},
		{"Cafe\u0301", "CAFÉ", []int{0}},
		{"soft\u00adhyphen", "softhyphen", []int{0}},
		{"帳簿を見た。帳簿だ", "帳簿", []int{0, 5}},
		{"帳簿を見た", "簿を", []int{1}},
		{"장부를 봤어", "장부", []int{0}},
		{"ledger", "...", nil},
		{"ledger", "", nil},
		{"", "ledger", nil},
	}
	for _, tt := range tests {
		if got := Match(Split(tt.line), tt.words); !reflect.DeepEqual(got, tt.want) {
			t.Errorf("Match(%q, %q) = %v, want %v", tt.line, tt.words, got, tt.want)
		}
	}
}

// Any run of a line's words is found where it stands, whatever its case.
func TestMatchFindsItself(t *testing.T) {
	word := rapid.StringMatching(`[a-z]{1,3}|[a-z]'[a-z]|[а-я]{2}|簿`)
	rapid.Check(t, func(t *rapid.T) {
		words := rapid.SliceOfN(word, 1, 8).Draw(t, "words")
		line := strings.Join(words, " ")
		tokens := Split(line)
		i := rapid.IntRange(0, len(tokens)-1).Draw(t, "from")
		k := rapid.IntRange(i+1, len(tokens)).Draw(t, "to")
		phrase := strings.ToUpper(line[tokens[i].Start:tokens[k-1].End])
		for _, at := range Match(tokens, phrase) {
			if at == i {
				return
			}
		}
		t.Fatalf("%q is not found at word %d of %q", phrase, i, line)
	})
}

func TestDuration(t *testing.T) {
	// 150 syllables are a minute's hundred words.
	hundred := strings.Repeat("go little ", 50)
	if got := Duration(hundred, 100); math.Abs(got-60) > 1e-9 {
		t.Errorf("100 words at 100 wpm take %v s", got)
	}
	if got, want := Duration(hundred, 0), Duration(hundred, DefaultPace); got != want {
		t.Errorf("without a pace %v s, want %v", got, want)
	}
	if got := Duration(hundred, math.NaN()); got != 40 {
		t.Errorf("at no number of words a minute %v s, want 40", got)
	}
	if got := Duration("...", 150); got != 0 {
		t.Errorf("silence takes %v s", got)
	}
}

// The words of a line tile its time: none overlaps, nothing is left over, and
// each has a share as large as its syllables.
func TestSpreadTiles(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		words := rapid.SliceOfN(rapid.SampledFrom([]string{"go", "little", "area", "1984", "簿"}), 1, 12).Draw(t, "words")
		start := rapid.Float64Range(0, 1e4).Draw(t, "start")
		end := start + rapid.Float64Range(0, 60).Draw(t, "length")
		tokens := Split(strings.Join(words, " "))
		timed := Spread(tokens, start, end)
		if len(timed) != len(tokens) {
			t.Fatalf("%d words, %d times", len(tokens), len(timed))
		}
		each := (end - start) / float64(count(tokens))
		at := start
		for i, w := range timed {
			if w.Token != tokens[i] || w.Start != at || w.End < w.Start {
				t.Fatalf("word %d is %+v, after %v", i, w, at)
			}
			if share := each * float64(w.Token.Syllables); math.Abs(w.End-w.Start-share) > 1e-9 {
				t.Fatalf("word %d lasts %v, want %v", i, w.End-w.Start, share)
			}
			at = w.End
		}
		if at != end {
			t.Fatalf("the last word ends at %v, the line at %v", at, end)
		}
	})
	if got := Spread(nil, 0, 1); got != nil {
		t.Errorf("no words have times: %v", got)
	}
}
