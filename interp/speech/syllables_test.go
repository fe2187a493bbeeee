package speech

import (
	"bufio"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// The dictionary writes a pronunciation as phones, of which each vowel ends in
// the digit of its stress.
var (
	entry = regexp.MustCompile(`^\s*(?:"([^"]+)"|([a-z]+)): "([^"]+)",?$`)
	vowls = regexp.MustCompile(`\d`)
)

// dictionary returns the CMU Pronouncing Dictionary as the npm package
// cmu-pronouncing-dictionary has it, or skips the test. PULLSCORE_CMUDICT is
// the folder that npm installed it in.
func dictionary(t *testing.T) *os.File {
	const inside = "node_modules/cmu-pronouncing-dictionary/index.js"
	roots := []string{"../../.cache", "../../.cache/cmudict"}
	if dir := os.Getenv("PULLSCORE_CMUDICT"); dir != "" {
		roots = []string{dir}
	}
	for _, dir := range roots {
		if f, err := os.Open(filepath.Join(dir, inside)); err == nil {
			t.Cleanup(func() { f.Close() })
			return f
		}
	}
	t.Skip("the CMU Pronouncing Dictionary is not here: install the npm package " +
		"cmu-pronouncing-dictionary and name the folder in PULLSCORE_CMUDICT")
	return nil
}

// The test for the main rule: nine words in ten, counted as the first
// pronunciation in the CMU Pronouncing Dictionary (Carnegie Mellon University)
// has them. Half of the dictionary are names.
func TestSyllablesAgreeWithDictionary(t *testing.T) {
	scanner := bufio.NewScanner(dictionary(t))
	words, agree := 0, 0
	for scanner.Scan() {
		m := entry.FindStringSubmatch(scanner.Text())
		if m == nil {
			continue
		}
		word := m[1] + m[2]
		if strings.HasSuffix(word, ")") || word[0] < 'a' || word[0] > 'z' {
			continue // an alternative, or no letter first
		}
		words++
		if Syllables(word) == len(vowls.FindAllString(m[3], -1)) {
			agree++
		}
	}
	if err := scanner.Err(); err != nil {
		t.Fatal(err)
	}
	if words < 100_000 {
		t.Fatalf("read %d words; the dictionary has over 100,000", words)
	}
	rate := float64(agree) / float64(words)
	t.Logf("agrees with the first pronunciation of %.2f %% of %d words", 100*rate, words)
	if rate < 0.95 {
		t.Errorf("agrees with %.2f %% of the dictionary, want 95 %% (90 %% is what a plan needs)", 100*rate)
	}
}

// Words of every kind of rule. The counts are those of the CMU Pronouncing
// Dictionary, except for what it does not have: numerals, capitals, marks and
// other scripts, which are counted by hand.
func TestSyllables(t *testing.T) {
	tests := map[string]int{
		"": 0, "...": 0, "—": 0, "'": 0,

		"cat": 1, "home": 1, "table": 2, "little": 2, "uncle": 2, "acre": 2, "the": 1, "eye": 1,
		"queue": 1, "vague": 1, "unique": 2, "played": 1, "wanted": 2, "handled": 2, "hundred": 2,
		"boxes": 2, "faces": 2, "places": 2, "shoes": 1, "studies": 2, "moved": 1, "buses": 2,
		"movement": 2, "hopeful": 2, "homework": 2, "something": 2, "household": 2, "lonely": 2,
		"nation": 2, "million": 2, "studio": 3, "lion": 2, "special": 2, "material": 4, "piano": 3,
		"science": 2, "patience": 2, "quiet": 2, "friend": 1, "video": 3, "people": 2, "area": 3,
		"idea": 3, "sea": 1, "going": 2, "being": 2, "flying": 2, "player": 2, "lawyer": 2,
		"react": 2, "read": 1, "reopen": 3, "cooperate": 4, "cool": 1, "poem": 2, "shoe": 1,
		"prism": 2, "rhythm": 2, "basically": 3, "gorgeous": 2, "serious": 3, "museum": 3,
		"mcdonald": 3, "yes": 1, "beyond": 2, "business": 2, "ledger": 2, "Wednesday": 2,

		"don't": 1, "didn't": 2, "couldn’t": 2, "I'm": 1, "I've": 1, "it'll": 2, "you’ll": 1,
		"boss's": 2, "Nadia's": 3, "o'clock": 2, "should've": 2, "ma'am": 1, "dogs'": 1,

		"TV": 2, "BBW": 5, "HMM": 1, "w": 3, "A": 1, "NO": 1, "14B": 3, "R2D2": 4, "3D": 2,
		"café": 2, "naïve": 2, "Zoë": 2, "fiancée": 3, "résumé": 3, "Müller": 2, "Øystein": 2,

		"0": 2, "1": 1, "7": 2, "14": 2, "17": 3, "21": 3, "70": 3, "100": 3, "101": 4, "110": 4,
		"999": 6, "1000": 3, "1,000": 3, "1,500": 6, "1500": 4, "1905": 4, "1984": 5, "2000": 3,
		"2005": 4, "2026": 5, "10000": 3, "1000000": 3, "007": 6, "1.85": 4, "2,350": 8,
		"12345678901234567890": 24, "٣": 1, "1st": 1, "2nd": 2, "12th": 1, "20th": 3, "21st": 3,
		"80s": 2, "100th": 3, "1980s": 4, "10th": 1,

		"帳簿": 2, "きみのちょうぼ": 7, "ノート": 3, "장부": 2, "จดหมาย": 6, "ຈົດ": 2, "សំបុត្រ": 4,
		"чернила": 3, "Μελάνι": 3, "كتاب": 2,
	}
	for word, want := range tests {
		if got := Syllables(word); got != want {
			t.Errorf("Syllables(%q) = %d, want %d", word, got, want)
		}
	}
}

// Whatever the word, the count stays between one and a few a letter, and case
// and the kind of apostrophe change nothing in a word of more than a few
// letters.
func TestSyllablesOfAnything(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		word := rapid.String().Draw(t, "word")
		n := Syllables(word)
		sounded := 0
		for _, r := range word {
			if kindOf(r) != other {
				sounded++
			}
		}
		if n < min(1, sounded) || n > 4*sounded {
			t.Fatalf("Syllables(%q) = %d for %d letters and digits", word, n, sounded)
		}
	})
	rapid.Check(t, func(t *rapid.T) {
		word := rapid.StringMatching(`[a-z]{4,8}(?:'[a-z]{1,6})?`).Draw(t, "word")
		same := strings.ReplaceAll(strings.ToUpper(word), "'", "’")
		if a, b := Syllables(word), Syllables(same); a != b {
			t.Fatalf("%q has %d syllables, %q has %d", word, a, same, b)
		}
	})
}

func FuzzSyllables(f *testing.F) {
	for _, seed := range []string{"don’t", "R2D2", "ɐ's", "1,500.5", "帳簿", "naïve", "\xff's", "mcs"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		for _, token := range Split(text) {
			if token.Syllables < 1 {
				t.Errorf("token %q of %q has %d syllables", token.Text, text, token.Syllables)
			}
		}
		Syllables(text)
	})
}

func BenchmarkSplit(b *testing.B) {
	line := "You really kept the second ledger without telling anybody."
	for b.Loop() {
		Split(line)
	}
}
