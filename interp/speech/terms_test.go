package speech

import (
	"slices"
	"strconv"
	"strings"
	"testing"
	"unicode/utf8"

	"pgregory.net/rapid"

	"pullscore/lang/testing/samples"
)

func terms(text string) string { return strings.Join(FoldText(text).Folded, " ") }

// Texts that are said alike are the same terms.
func TestTerms(t *testing.T) {
	for _, c := range []struct{ a, b string }{
		{"Don't", "do not"},
		{"DON’T!", "dont"},
		{"she'd", "she would"},
		{"she had", "she'd"},
		{"how'd it go", "how did it go"},
		{"couldn't've", "could not have"},
		{"I'll", "I shall"},
		{"Its mine", "it's mine"},
		{"'Tis late, 'twas dark", "it is late it was dark"},
		{"ask 'em", "ask them"},
		{"till dawn", "'til dawn"},
		{"'Cause I'm goin' home", "because I am going home"},
		{"c'mon, gimme that", "come on give me that"},
		{"I dunno", "I do not know"},
		{"kinda outta rope", "kind of out of rope"},
		{"Yes, ma'am.", "Yes, madam"},
		{"It's 7:30.", "it is seven thirty"},
		{"at 7:05", "at seven oh five"},
		{"in 1987", "in nineteen eighty-seven"},
		{"in 1905", "in nineteen oh five"},
		{"in 2004", "in two thousand and four"},
		{"in 2024", "in twenty twenty-four"},
		{"1,900 ropes", "one thousand nine hundred ropes"},
		{"1900", "nineteen hundred"},
		{"105 men", "one hundred and five men"},
		{"$5, £1 and €20", "five dollars one pound and twenty euros"},
		{"50% of it", "fifty percent of it"},
		{"50 per cent", "50%"},
		{"the 21st", "the twenty-first"},
		{"the 12th and the 30th", "the twelfth and the thirtieth"},
		{"1.5 m", "one point five m"},
		{"999,999", "nine hundred and ninety-nine thousand nine hundred ninety nine"},
		{"ﬁne", "fine"},
	} {
		if a, b := terms(c.a), terms(c.b); a != b {
			t.Errorf("%q is %q, and %q is %q", c.a, a, c.b, b)
		}
	}
	for text, want := range map[string]string{
		"cant wont ill well were shed hell id wed shell": "cant wont ill well were shed hell id wed shell",
		"geht's j'ai aujourd'hui":                        "geht is j'ai aujourd'hui",
		"He'll go":                                       "he will go",
		"1000000 R2 1,5 007":                             "1000000 r2 1,5 zero zero seven",
		"two hundred and nobody, and oh":                 "two hundred and nobody and oh",
		"今日":                                             "今 日",
		"the 32nd":                                       "the 32nd",
		"round the cause":                                "round the cause",
		"a basin'":                                       "a basing",
		"":                                               "",
	} {
		if got := terms(text); got != want {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
}

// The contractions of a public list (npm @stdlib/nlp-expand-contractions 0.2.3,
// Apache-2.0) fold as what they stand for.
func TestContractionsOfAList(t *testing.T) {
	text := samples.Read(t, samples.Cut+"/words/contractions.tsv")
	alike := 0
	for row := range strings.Lines(string(text)) {
		if f := strings.Split(strings.TrimSpace(row), "\t"); len(f) == 3 && f[2] == "yes" {
			alike++
			if a, b := terms(f[0]), terms(f[1]); a != b {
				t.Errorf("%q is %q, and %q is %q", f[0], a, f[1], b)
			}
		}
	}
	if alike != 83 {
		t.Errorf("%d rows were compared, and the list has 83", alike)
	}
}

// A folder that has folded much says the same as a new one, of words and of every numeral.
func TestFolderRemembers(t *testing.T) {
	written := strings.Fields("Don't dont and oh hundred thousand two R2 1,500 007 café ’tis a it in wreck alone harbour harbor 今日 21st 1.5 goin' 1900 the then they there")
	var kept Folder
	for n := range 60_000 {
		text := written[n%len(written)] + " " + strconv.Itoa(n*17) + " " + written[n/7%len(written)] + strconv.Itoa(n%3) + " and " + strconv.Itoa(n)
		if n%5 > 0 && n > 2000 { // all numerals below, a part of them beyond
			continue
		}
		words, nfc := kept.Words(nil, text)
		var fresh Folder
		want, _ := fresh.Words(nil, text)
		for i, w := range words {
			if s := nfc[w.Start:w.End]; isDigit(s[0]) && digitsOnly(s) {
				if terms, role := termsOf(s, 0, 0); w.role != role || !slices.EqualFunc(w.Terms, terms, func(t Term, s string) bool { return t.Text == s }) {
					t.Fatalf("%s: %v, want %v", s, w, terms)
				}
			}
			if v := want[i]; w.Start != v.Start || w.End != v.End || w.role != v.role || !slices.Equal(w.Terms, v.Terms) {
				t.Fatalf("%q: word %d is %v, and %v to a new folder", text, i, w, v)
			}
		}
	}
}

// Folding finds the words that Split finds, and a folder that remembers says the
// same as a new one.
func FuzzTerms(f *testing.F) {
	for _, seed := range []string{"Don't, I'd've said 1,500% of $7.5", "cafe\u0301 ﬁ ’tis 今日は", "1,,2 '90s 0 21st two hundred and oh one"} {
		f.Add(seed)
	}
	var kept Folder
	f.Fuzz(func(t *testing.T, text string) {
		if !utf8.ValidString(text) {
			return
		}
		tokens := Split(text)
		words, nfc := kept.Words(nil, text)
		if len(words) != len(tokens) {
			t.Fatalf("%d words, and Split finds %d", len(words), len(tokens))
		}
		var again []string
		for i, w := range words {
			if nfc[w.Start:w.End] != tokens[i].Text {
				t.Fatalf("word %d is %q, and Split has %q", i, nfc[w.Start:w.End], tokens[i].Text)
			}
			for _, term := range w.Terms {
				if term.Text == "" {
					t.Fatal("a term is empty")
				}
				again = append(again, term.Text)
			}
		}
		if all := FoldText(text); !slices.Equal(all.Folded, again) || len(all.Count) != len(tokens) {
			t.Fatalf("%q, and at first %q", all.Folded, again)
		}
	})
}

// Numbers that are spelled out are said with as many syllables as the numeral
// has by itself.
func TestNumbersKeepTheirSyllables(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		digits := rapid.StringMatching(`[1-9][0-9]{0,5}`).Draw(t, "digits")
		want := Syllables(digits)
		n := 0
		for _, w := range FoldText(digits).Folded {
			n += Syllables(w)
		}
		if v := valueOf(digits); len(digits) == 4 && pairs(v) && v%100 > 0 && v%100 < 10 {
			n-- // zero for oh
		}
		if n != want {
			t.Fatalf("%s: %d syllables in %q, and %d in the numeral", digits, n, terms(digits), want)
		}
	})
}
