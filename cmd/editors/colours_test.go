package editors

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"pullscore/lang"
)

// plans returns the paths of the examples, of our own plans, and of the samples of the
// reference.
func plans(t *testing.T) (list []string) {
	t.Helper()
	for _, pattern := range []string{"examples/*.pull", "examples/*/*/*.pull", "cmd/editors/testdata/*.pull"} {
		found, err := filepath.Glob(filepath.Join("..", "..", filepath.FromSlash(pattern)))
		if err != nil || len(found) == 0 {
			t.Fatalf("%s: %v, %d files", pattern, err, len(found))
		}
		for _, path := range found {
			if _, diagnostics := lang.Parse(path, read(t, path)); len(diagnostics) > 0 {
				t.Fatalf("%s: %s", path, diagnostics[0].Message)
			}
			list = append(list, path)
		}
	}
	return append(list, samples(t)...)
}

var sample = regexp.MustCompile("(?ms)^```pull\n(.*?)^```$")

// samples writes the samples of the reference into files, and returns their paths.
func samples(t *testing.T) (list []string) {
	t.Helper()
	folder := t.TempDir()
	for i, m := range sample.FindAllSubmatch(read(t, filepath.Join("..", "..", "lang", "REFERENCE.md")), -1) {
		path := filepath.Join(folder, fmt.Sprintf("sample-%d.pull", i))
		if err := os.WriteFile(path, m[1], 0o644); err != nil {
			t.Fatal(err)
		}
		list = append(list, path)
	}
	if len(list) < 10 {
		t.Fatalf("only %d samples", len(list))
	}
	return list
}

func read(t *testing.T, path string) []byte {
	t.Helper()
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return text
}

// compareColours compares the tokens of a source with the kinds that an editor gives to
// their bytes: "comment", "text", "number", "keyword" or "" for anything else.
func compareColours(t *testing.T, path string, src []byte, kinds func(from, to int) []string) {
	t.Helper()
	tokens := lang.Tokens(src)
	if len(tokens) < 3 {
		t.Errorf("%s has only %d tokens", path, len(tokens))
	}
	for _, token := range tokens {
		want := token.Kind.String()
		switch token.Kind {
		case lang.TokenName, lang.TokenSign, lang.TokenUnknown:
			want = ""
		}
		for _, kind := range kinds(token.Start, token.End) {
			if kind != want {
				line := 1 + bytes.Count(src[:token.Start], []byte{'\n'})
				t.Errorf("%s:%d: %q is %q, coloured as %q, in %s", path, line, src[token.Start:token.End], token.Kind, kind, lineOf(src, line))
				break
			}
		}
	}
}

func lineOf(src []byte, n int) string { return strings.Split(string(src), "\n")[n-1] }

// TestSoftWordsAreSeen checks that the plans have the soft words in both their roles, so
// that the comparisons say something of them.
func TestSoftWordsAreSeen(t *testing.T) {
	seen := map[lang.TokenKind]map[string]bool{lang.TokenKeyword: {}, lang.TokenName: {}}
	for _, path := range plans(t) {
		src := read(t, path)
		for _, token := range lang.Tokens(src) {
			if words := seen[token.Kind]; words != nil {
				words[string(src[token.Start:token.End])] = true
			}
		}
	}
	names := 0
	for _, word := range lang.SoftWords() {
		if word != "o'clock" && !seen[lang.TokenKeyword][word] {
			t.Errorf("no plan has %s as a keyword", word)
		}
		if seen[lang.TokenName][word] {
			names++
		}
	}
	if names < 15 {
		t.Errorf("only %d soft words are names somewhere", names)
	}
}
