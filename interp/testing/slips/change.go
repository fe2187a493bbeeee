// One line with a slip in it.

package slips

import (
	"math/rand/v2"
	"regexp"
	"slices"
	"strings"
	"unicode"
)

// A token is a piece of a line. The tests have their own idea of what one is,
// since what they test is how the program reads lines.
type token struct {
	text     string
	from, to int
}

var piece = regexp.MustCompile(`"[^"]*"|#.*|f/[0-9.]+|T[0-9.]+|[0-9][0-9:;.]*(?:/[0-9]+)?|[\pL_][\pL\pN_'’-]*|\S`)

func tokens(line string) (list []token) {
	for _, at := range piece.FindAllStringIndex(line, -1) {
		if line[at[0]] != '#' {
			list = append(list, token{line[at[0]:at[1]], at[0], at[1]})
		}
	}
	return list
}

func (t token) quoted() bool { return t.text[0] == '"' && len(t.text) > 2 }
func (t token) number() bool { return t.text[0] >= '0' && t.text[0] <= '9' }
func (t token) word() bool {
	return unicode.IsLetter(rune(t.text[0])) && !strings.ContainsAny(t.text, "/.0123456789")
}
func (t token) keyword() bool { return keywords[t.text] }

func replace(line string, t token, by string) string { return line[:t.from] + by + line[t.to:] }

// changed makes one slip in a line.
func changed(r *rand.Rand, kind Kind, line string) (string, bool) {
	t := tokens(line)
	switch kind {
	case Keyword:
		return oneOf(r, line, t, func(i int) bool { return t[i].keyword() && t[i].word() && !isUnit(t, i) }, func(t token) string { return typo(r, t.text) })
	case Name:
		return oneOf(r, line, t, func(i int) bool { return isName(t, i) }, func(t token) string {
			if t.quoted() {
				return `"` + typo(r, t.text[1:len(t.text)-1]) + `"`
			}
			return typo(r, t.text)
		})
	case Unit:
		return oneOf(r, line, t, func(i int) bool { return isUnit(t, i) }, func(token) string { return wrongUnits[r.IntN(len(wrongUnits))] })
	case NoUnit:
		return oneOf(r, line, t, func(i int) bool { return isUnit(t, i) }, func(token) string { return "" })
	case Quote:
		return oneOf(r, line, t, func(i int) bool { return t[i].quoted() }, func(t token) string { return unquoted(r, t.text) })
	case Comma:
		return comma(r, line, t)
	}
	if len(t) < 2 {
		return line, false
	}
	i := r.IntN(len(t) - 1)
	a, b := t[i], t[i+1]
	return line[:a.from] + b.text + " " + a.text + line[b.to:], a.text != b.text
}

// oneOf changes one of the tokens that may be changed.
func oneOf(r *rand.Rand, line string, t []token, may func(i int) bool, change func(token) string) (string, bool) {
	var list []int
	for i := range t {
		if may(i) {
			list = append(list, i)
		}
	}
	if len(list) == 0 {
		return line, false
	}
	at := t[list[r.IntN(len(list))]]
	return replace(line, at, change(at)), true
}

// isUnit reports whether a token is the unit of the number before it.
func isUnit(t []token, i int) bool {
	return i > 0 && t[i-1].number() && !strings.ContainsAny(t[i-1].text, ":;") && (t[i].text == "%" || t[i].word() && t[i].keyword() && units[t[i].text])
}

var units = map[string]bool{
	"mm": true, "cm": true, "m": true, "ft": true, "in": true, "deg": true, "turn": true, "arcmin": true,
	"s": true, "ms": true, "fr": true, "px": true, "wpm": true, "bit": true,
}

// wrongUnits are spellings that the language lacks, and units that fit elsewhere.
var wrongUnits = []string{"mtr", "cn", "sec", "degs", "frm", "pct", "bit/s", "wpm", "px", "arcmin"}

// isName reports whether a token is a name, or words that a moment hangs on.
// What is only shown to people, such as a title, is none: no slip shows there.
func isName(t []token, i int) bool {
	if !t[i].quoted() {
		return t[i].word() && !t[i].keyword() && len(t[i].text) > 1
	}
	return i > 0 && !slices.Contains([]string{":", "because", "plan", "action", "="}, t[i-1].text) && t[0].text != "shot"
}

// typo changes a letter of a word, as fingers do.
func typo(r *rand.Rand, word string) string {
	w := []rune(word)
	i := r.IntN(len(w))
	switch kind := r.IntN(4); {
	case kind == 0 && len(w) > 2: // left out
		return string(slices.Delete(w, i, i+1))
	case kind == 1 && i+1 < len(w) && w[i] != w[i+1]: // changed places
		w[i], w[i+1] = w[i+1], w[i]
		return string(w)
	case kind == 2: // double
		return string(slices.Insert(w, i, w[i]))
	}
	other := 'k' // another key
	if w[i] == other {
		other = 'j'
	}
	if unicode.IsUpper(w[i]) {
		other = unicode.ToUpper(other)
	}
	w[i] = other
	return string(w)
}

// unquoted is a text in quotes with one of them, or both, lost or another.
func unquoted(r *rand.Rand, text string) string {
	inner := text[1 : len(text)-1]
	return [...]string{`"` + inner, inner + `"`, inner, "'" + inner + "'"}[r.IntN(4)]
}

// comma loses, doubles or adds a comma.
func comma(r *rand.Rand, line string, t []token) (string, bool) {
	var commas []token
	for _, at := range t {
		if at.text == "," {
			commas = append(commas, at)
		}
	}
	if len(commas) == 0 || r.IntN(3) == 0 { // at the end, or between two words
		if i := r.IntN(len(t)); i+1 < len(t) && r.IntN(2) == 0 {
			return line[:t[i].to] + "," + line[t[i].to:], t[i].text != "," && t[i+1].text != ","
		}
		return line + ",", !strings.HasSuffix(line, ",")
	}
	at := commas[r.IntN(len(commas))]
	return replace(line, at, []string{"", ",,", ";", "."}[r.IntN(4)]), true
}
