// The grammars of editors, in cmd/editors: their word lists come from the tags.

package lang

import (
	"encoding/json"
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// TestGrammarsAreDerived holds the grammars to the language. PULLSCORE_UPDATE=1, or go
// generate, writes them anew.
func TestGrammarsAreDerived(t *testing.T) {
	editors := filepath.Join("..", "cmd", "editors")
	n := newNeighbours()
	for path, derived := range map[string]string{
		filepath.Join(editors, "vscode", "syntaxes", "pull.tmLanguage.json"): textMateRules(n),
		filepath.Join(editors, "vim", "autoload", "pullscore", "words.vim"):  vimWords(n),
		filepath.Join(editors, "emacs", "pull-words.el"):                     emacsWords(),
	} {
		was, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		is := derived
		if byHand, _, ok := strings.Cut(string(was), generatedBelow); ok {
			is = byHand + generatedBelow + derived
		}
		switch {
		case is == string(was):
		case os.Getenv("PULLSCORE_UPDATE") == "":
			t.Errorf("%s is not what the tags say: go generate ./lang", path)
		default:
			if err := os.WriteFile(path, []byte(is), 0o644); err != nil {
				t.Fatal(err)
			}
		}
	}
}

// generatedBelow is the last line that is written by hand in a grammar that has such
// lines.
const generatedBelow = `    "generated": { "comment": "go generate ./lang writes all below this line", "patterns": [] },
`

// A group holds words that are treated alike.
type group struct {
	words []string
	soft  []string
}

// groupsOf joins the words that have the same soft words.
func groupsOf(words []string, soft map[string][]string) (list []group) {
	for _, word := range words {
		at := slices.IndexFunc(list, func(g group) bool { return slices.Equal(g.soft, soft[word]) })
		if at < 0 {
			list = append(list, group{nil, soft[word]})
			at = len(list) - 1
		}
		list[at].words = append(list[at].words, word)
	}
	return list
}

// excluded returns the soft words that are no names behind a word: all of them where no
// name can follow it.
func (n neighbours) excluded() map[string][]string {
	m := maps.Clone(n.behind)
	for _, s := range specs {
		if _, ok := m[s.word]; !ok {
			m[s.word] = SoftWords()
		}
	}
	return m
}

// behindGroups returns the words that a name can follow, by the soft words that can
// follow them too.
func (n neighbours) behindGroups() []group {
	return groupsOf(slices.Sorted(maps.Keys(n.behind)), n.behind)
}

// statementWords returns the words that begin statements: those that cannot be names,
// and those that can.
func statementWords() (hard, soft []string) {
	for _, word := range Words(RoleStatement) {
		switch {
		case word == movesWord || word == "shot": // their lines begin otherwise
		case isSoft(word):
			soft = append(soft, word)
		default:
			hard = append(hard, word)
		}
	}
	return hard, soft
}

// wordUnits returns the words among the units.
func wordUnits() (list []string) {
	for _, u := range Words(RoleUnit) {
		if word, _, _ := strings.Cut(u, "/"); isWordByte(word[0]) {
			list = append(list, word)
		}
	}
	return slices.Compact(list)
}

// Parts of the patterns of TextMate: that a word goes on, and that it is a name before
// a sign.
const (
	tmGoesOn   = `(?![\p{L}\p{M}\p{Nd}_]|[-'.’\x{200C}\x{200D}]\p{L})`
	tmAsName   = `(?!\s*[:(]|\s+moves` + tmGoesOn + `)`
	tmLineEnds = `$|^(?=\s*shot\s)`
)

func tmAny(words []string) string { return "(?:" + strings.Join(words, "|") + ")" + tmGoesOn }

// A tmRule is a rule of a TextMate grammar.
type tmRule struct {
	Comment       string            `json:"comment,omitempty"`
	Name          string            `json:"name,omitempty"`
	Match         string            `json:"match,omitempty"`
	Captures      map[string]tmRule `json:"captures,omitempty"`
	Begin         string            `json:"begin,omitempty"`
	BeginCaptures map[string]tmRule `json:"beginCaptures,omitempty"`
	End           string            `json:"end,omitempty"`
	Patterns      []tmRule          `json:"patterns,omitempty"`
	Include       string            `json:"include,omitempty"`
}

// textMateRules returns the rules of the TextMate grammar that come from the tags.
func textMateRules(n neighbours) string {
	var b strings.Builder
	put := func(name string, r tmRule) {
		var text strings.Builder
		e := json.NewEncoder(&text)
		e.SetEscapeHTML(false)
		e.SetIndent("    ", "  ")
		if err := e.Encode(r); err != nil {
			panic(err)
		}
		if b.Len() > 0 {
			b.WriteString(",\n")
		}
		fmt.Fprintf(&b, "    %q: %s", name, strings.TrimSpace(text.String()))
	}
	put("statements", tmRule{Comment: "A line that a word of the language begins. A soft word is a name before : ( and moves.", Patterns: n.tmStatements()})
	put("moves", tmRule{Comment: "NAME moves", Begin: `^\s*(?:(?="(?:\\.|[^"\\])*"\s+moves` + tmGoesOn + `)|[\p{L}_][^\s:("]*(?=\s+moves` + tmGoesOn + `))`, End: tmLineEnds, Patterns: n.tmInside(movesWord)})
	put("said", tmRule{Comment: "Soft words behind what somebody says.", Name: "keyword.other.pull", Match: tmAny(n.soft[speechWord])})
	put("names", tmRule{Comment: "Soft words behind a word or sign that a name follows: they are names.", Patterns: n.tmNames()})
	put("keywords", tmRule{Comment: "Words that are never names.", Name: "keyword.other.pull", Match: tmAny(Keywords())})
	put("units", tmRule{Comment: "Units behind a number.", Name: "keyword.other.unit.pull", Match: `(?<=\d|\d\s)(?:` + strings.Join(wordUnits(), "|") + `)(?![\p{L}\p{M}\p{Nd}_])`})
	b.WriteString("\n  }\n}\n")
	return b.String()
}

func (n neighbours) tmStatements() (list []tmRule) {
	list = n.tmReferences()
	hard, soft := statementWords()
	for _, words := range [][]string{hard, soft} {
		for _, g := range groupsOf(words, n.soft) {
			for _, by := range groupsOf(g.words, n.excluded()) {
				begin := `^\s*(` + strings.Join(by.words, "|") + `)` + tmGoesOn
				if isSoft(by.words[0]) {
					begin += tmAsName
				}
				if _, ok := n.behind[by.words[0]]; ok {
					begin += `(?:\s+` + softNot(by.soft) + `)?`
				}
				list = append(list, tmRule{
					Begin: begin, BeginCaptures: map[string]tmRule{"1": {Name: "keyword.control.pull"}}, End: tmLineEnds, Patterns: n.tmInside(g.words[0]),
				})
			}
		}
	}
	return list
}

// tmReferences returns the rules of statements with the ID of another shot, which goes up
// to a blank, a quote or a comma.
func (n neighbours) tmReferences() (list []tmRule) {
	for _, words := range [][]string{{"cut", "to"}, {"runs", "with"}, {"matches"}, {"camera", "as", "in"}} {
		begin, captures := `^\s*(`+words[0]+`)`+tmAsName, map[string]tmRule{"1": {Name: "keyword.control.pull"}}
		for i, word := range words[1:] {
			begin += `\s+(` + word + `)`
			captures[fmt.Sprint(i+2)] = tmRule{Name: "keyword.other.pull"}
		}
		captures[fmt.Sprint(len(words)+1)] = tmRule{Name: "entity.name.section.pull"}
		list = append(list, tmRule{Begin: begin + `\s+([^\s"“,]+)`, BeginCaptures: captures, End: tmLineEnds, Patterns: n.tmInside(words[0])})
	}
	return list
}

// tmInside returns the rules within a statement.
func (n neighbours) tmInside(word string) (list []tmRule) {
	list = append(list, tmRule{Include: "#before"})
	if soft := n.soft[word]; len(soft) > 0 {
		list = append(list, tmRule{Name: "keyword.other.pull", Match: tmAny(soft)})
	}
	if specOf[word] != nil && slices.ContainsFunc(allLeaves(specOf[word].shape().form), func(f *form) bool { return f.token == tokPerf }) {
		list = append([]tmRule{{Include: "#perforations"}}, list...)
	}
	return append(list, tmRule{Include: "#tokens"})
}

// tmNames returns the rules of soft words that are names.
func (n neighbours) tmNames() (list []tmRule) {
	for _, g := range n.behindGroups() {
		list = append(list, tmRule{
			Match:    `(` + strings.Join(g.words, "|") + `)\s+` + softNot(g.soft),
			Captures: map[string]tmRule{"1": {Name: "keyword.other.pull"}},
		})
	}
	return append(list, tmRule{Match: `[-+−*/=(]\s*` + softNot(nil)})
}

// softNot returns the pattern of all soft words but some.
func softNot(but []string) string { return tmAny(softBut(but)) }

// softBut returns the soft words but some, and without o'clock, which is part of a number.
func softBut(but []string) []string {
	return slices.DeleteFunc(SoftWords(), func(w string) bool { return w == "o'clock" || slices.Contains(but, w) })
}

// emacsWords returns the word lists of the Emacs mode.
func emacsWords() string {
	var b strings.Builder
	b.WriteString(";;; pull-words.el --- Word lists of pull-mode  -*- lexical-binding: t -*-\n\n;; go generate ./lang writes this file.\n\n;;; Code:\n\n")
	hard, soft := statementWords()
	for _, list := range []struct {
		name, says string
		words      []string
	}{
		{"keywords", "Words that are never names.", Keywords()},
		{"statements", "Words that begin statements, and are never names.", hard},
		{"soft-statements", "Words that begin statements, and are names before some signs.", soft},
	} {
		fmt.Fprintf(&b, "(defconst pull-words-%s\n  '(\"%s\")\n  %q)\n\n", list.name, strings.Join(list.words, "\" \""), list.says)
	}
	return b.String() + "(provide 'pull-words)\n;;; pull-words.el ends here\n"
}
