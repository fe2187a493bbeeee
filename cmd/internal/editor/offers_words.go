// What can stand in quotes: files, names, and words that somebody says.

package editor

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"pullscore/cmd/internal/lsp"
	"pullscore/interp/mention"
	"pullscore/interp/speech"
	"pullscore/lang"
)

// inQuotes returns what the text can say that is being written.
func (w *writer) inQuotes() []offer {
	switch w.at.Statement {
	case "use":
		return w.files(".pull")
	case "edit":
		return w.files(".edl", ".otio", ".srt", ".vtt")
	case "script":
		return w.files(".fountain", ".fdx")
	case "clips":
		return w.files(".ale")
	case "takes":
		return w.files(".csv")
	}
	switch {
	case w.expects("a moment"):
		return w.wordsInQuotes()
	case w.expects("a name"), w.expects("a place"):
		var list []offer
		for _, o := range w.values() {
			if name, quoted := strings.CutPrefix(o.label, `"`); quoted {
				o.label = strings.TrimSuffix(name, `"`)
				list = append(list, o)
			}
		}
		return list
	}
	return nil
}

// expects reports whether a value of a kind can come next.
func (w *writer) expects(kind string) bool {
	return slices.ContainsFunc(w.at.Choices, func(c lang.Choice) bool { return strings.HasPrefix(c.Text, kind) })
}

// files returns the files beside the plan that have one of the endings, and those in
// folders beside it.
func (w *writer) files(endings ...string) (list []offer) {
	folder := filepath.Dir(w.doc.path)
	add := func(under string) {
		entries, err := os.ReadDir(filepath.Join(folder, under))
		if err != nil {
			return
		}
		for _, e := range entries {
			name := filepath.ToSlash(filepath.Join(under, e.Name()))
			if !e.IsDir() && slices.Contains(endings, strings.ToLower(filepath.Ext(name))) && filepath.Join(folder, name) != w.doc.path {
				list = append(list, offer{label: name, kind: lsp.ItemFile})
			}
		}
	}
	add(".")
	add("..")
	entries, _ := os.ReadDir(folder)
	for _, e := range entries {
		if e.IsDir() && !strings.HasPrefix(e.Name(), ".") {
			add(e.Name())
		}
	}
	return list
}

// A spokenWord is a word of a line of the shot.
type spokenWord struct {
	word  string
	nth   int // which of those that are written alike in the shot, from 1
	line  int // the line that it is in, from the top
	who   string
	text  string
	above bool // its line stands above the place
}

// spokenWords returns the words of the lines of the shot and of its scene, those of the line above the place
// first. Of one line, names of subjects come first, then the longer words: a rack answers
// what is said, not the little words between.
func (w *writer) spokenWords() []spokenWord {
	var list []spokenWord
	count := map[string]int{}
	body := w.tree.Body
	if w.section != nil {
		body = w.section.Body
	}
	if scene := w.scene(); scene != nil {
		body = slices.Concat(scene.Body, body)
	}
	line := 0
	for _, one := range body {
		said, ok := one.(*lang.Speech)
		if !ok {
			continue
		}
		line++
		for _, t := range speech.Tokens(said.Words.Value) {
			word := strings.ToLower(t.Text)
			count[word]++
			list = append(list, spokenWord{word, count[word], line, said.Who.Text, said.Words.Value, said.Range().Start.Offset < w.at.From})
		}
	}
	names := w.names(mention.Subject)
	weight := func(word string) int {
		if slices.ContainsFunc(names, func(m mention.Mention) bool { return strings.EqualFold(m.Name, word) }) {
			return targetWeight
		}
		return len([]rune(word))
	}
	sortStable(list, func(a, b spokenWord) int {
		switch {
		case a.above != b.above:
			if a.above {
				return -1
			}
			return 1
		case a.line != b.line && a.above:
			return b.line - a.line
		case a.line != b.line:
			return a.line - b.line
		}
		return weight(b.word) - weight(a.word)
	})
	return list
}

// targetWeight is longer than any word.
const targetWeight = 1000

// wordsInQuotes offers the words of the lines for a text that is being written.
func (w *writer) wordsInQuotes() (list []offer) {
	for _, word := range w.spokenWords() {
		o := offer{label: word.word, kind: lsp.ItemText, detail: word.who + ": " + word.text}
		if word.nth > 1 {
			closing := w.unclosed()
			if closing == "" {
				continue // the number would have to stand behind the quote
			}
			o.label += fmt.Sprintf(" %d", word.nth)
			o.insert = fmt.Sprintf("%s%s %d", word.word, closing, word.nth)
		}
		list = append(list, o)
	}
	return list
}

// wordsAsMoments offers the words of the lines where no quote is open.
func (w *writer) wordsAsMoments() (list []offer) {
	for _, word := range w.spokenWords() {
		o := offer{label: fmt.Sprintf("%q", word.word), kind: lsp.ItemText, detail: word.who + ": " + word.text}
		if word.nth > 1 {
			o.label += fmt.Sprintf(" %d", word.nth)
		}
		list = append(list, o)
	}
	return list
}
