// What a plan writes at such a place: what is written once is written again, so the words
// that a plan has used come before those that it has not.

package editor

import (
	"cmp"
	"slices"

	"pullscore/lang"
)

// Habits count words by where they stand.
type habits struct {
	next   map[[2]string]int // statements, by the statement before
	within map[[2]string]int // words, by the statement that they are in
	behind map[[3]string]int // words, by the statement and the word before
	units  map[string]int    // words behind numbers, wherever they stand
}

// habitsOf counts the words of a document, but not the one that begins at a place.
func habitsOf(d *document, tree *lang.File, except int) habits {
	h := habits{next: map[[2]string]int{}, within: map[[2]string]int{}, behind: map[[3]string]int{}, units: map[string]int{}}
	tokens := lang.Tokens(d.data)
	text := func(t lang.Token) string { return string(d.data[t.Start:t.End]) }
	before := ""
	count := func(one lang.Statement) {
		at := spanOf(one.Range())
		var words []lang.Token
		first, _ := slices.BinarySearchFunc(tokens, at.start, func(t lang.Token, start int) int { return cmp.Compare(t.Start, start) })
		for _, t := range tokens[first:] {
			if t.Start >= at.end {
				break
			}
			if t.Kind != lang.TokenComment {
				words = append(words, t)
			}
		}
		if len(words) == 0 {
			return
		}
		statement := keyOf(words, text)
		if words[0].Start != except {
			h.next[[2]string{before, statement}]++
		}
		before = statement
		for i, t := range words[1:] {
			if t.Kind == lang.TokenKeyword && t.Start != except {
				h.within[[2]string{statement, text(t)}]++
				h.behind[[3]string{statement, shapeOfToken(words[i], text), text(t)}]++
				if words[i].Kind == lang.TokenNumber {
					h.units[text(t)]++
				}
			}
		}
	}
	for one := range everything(tree) {
		count(one)
	}
	return h
}

// keyOf returns the word by which a statement is known.
func keyOf(words []lang.Token, text func(lang.Token) string) string {
	if words[0].Kind != lang.TokenKeyword && len(words) > 1 {
		switch second := text(words[1]); second {
		case ":", "(", "moves":
			return second
		}
	}
	return text(words[0])
}

// shapeOfToken returns a word of the language as it is, and the kind of anything else.
func shapeOfToken(t lang.Token, text func(lang.Token) string) string {
	if t.Kind == lang.TokenKeyword || t.Kind == lang.TokenSign {
		return text(t)
	}
	return t.Kind.String()
}

// before returns the statement above a place by its word, "" at the top.
func (w *writer) before() string {
	if len(w.above) == 0 {
		return ""
	}
	at := spanOf(w.above[len(w.above)-1].Range())
	tokens := lang.Tokens(w.doc.data[at.start:at.end])
	if len(tokens) == 0 {
		return ""
	}
	return keyOf(tokens, func(t lang.Token) string { return string(w.doc.data[at.start+t.Start : at.start+t.End]) })
}
