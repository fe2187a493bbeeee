// Folding many words: what was folded is remembered.

package speech

import (
	"strings"

	"golang.org/x/text/unicode/norm"
)

// A Folder folds words to terms. It remembers what it has folded, since a text
// says most of its words many times.
type Folder struct {
	Number func(term string) int32 // numbers a term; nil: 0 for all
	known  map[string]Word
	latest []remembered // of the known words, those that were met last, by place; nil: few are known
	under  [][]Term     // those of the numbers under a thousand that were met
	room   []Term       // of long numbers, until the next call of Words
}

// A remembered is a word that is known.
type remembered struct {
	text string
	word Word
}

const (
	mostKnown  = 1 << 15 // how many words a Folder remembers
	mostDigits = 4       // how long a number is that it remembers: longer ones seldom return
	mostSpoken = 6       // how long a number is that becomes words
	fewKnown   = 64      // words from which on places are made for the latest
	placeBits  = 11
)

// Words appends the words of a text to a list. They are those that Split
// returns. nfc is the text in normal form C, in which the words stand. Terms are
// good until the next call.
func (f *Folder) Words(list []Word, text string) (words []Word, nfc string) {
	nfc = norm.NFC.String(text) // the same text where it is so already
	f.room = f.room[:0]
	first, numbers := len(list), false
	for i := 0; i < len(nfc); {
		start, end := nextToken(nfc, i)
		if end == start {
			break
		}
		w := f.word(nfc, start, end)
		numbers = numbers || w.role == numberRole || w.role == scaleRole
		list = append(list, w)
		i = end
	}
	if numbers {
		f.inNumbers(list[first:])
	}
	return list, nfc
}

// word returns the word that stands between two bytes of a text.
func (f *Folder) word(text string, start, end int) (w Word) {
	s := text[start:end]
	before, after := lastSign(text[:start]), firstSign(text[end:])
	switch long := isDigit(s[0]) && len(s) > mostDigits; {
	case before != 0 || after != 0:
		w = f.fold(s, before, after)
	case long:
		if w = f.thousands(s); w.Terms == nil {
			w = f.fold(s, 0, 0)
		}
	case f.latest == nil:
		w = f.remember(s)
	default:
		at := &f.latest[place(s)]
		if at.text != s {
			w = f.remember(s)
			*at = remembered{strings.Clone(s), w} // a text of its own: s would keep the whole text
		} else {
			w = at.word
		}
	}
	w.Start, w.End = start, end
	return w
}

// place returns where a word is kept among the latest: by its ends and its length.
func place(s string) int {
	n := len(s)
	h := uint32(n)
	if n >= 4 {
		h += uint32(s[0]) | uint32(s[1])<<8 | uint32(s[2])<<16 | uint32(s[3])<<24
		h = h*0x9e3779b1 + (uint32(s[n-4]) | uint32(s[n-3])<<8 | uint32(s[n-2])<<16 | uint32(s[n-1])<<24)
	} else {
		h += uint32(s[0])<<8 | uint32(s[n/2])<<16 | uint32(s[n-1])<<24
	}
	return int(h * 0x9e3779b1 >> (32 - placeBits)) // the golden ratio spreads what is alike
}

// remember returns the word that a text without signs around it is.
func (f *Folder) remember(s string) Word {
	if w, known := f.known[s]; known {
		return w
	}
	w := f.fold(s, 0, 0)
	if len(f.known) < mostKnown {
		if f.known == nil {
			f.known = map[string]Word{}
		}
		f.known[strings.Clone(s)] = w
		if len(f.known) == fewKnown {
			f.latest = make([]remembered, 1<<placeBits)
		}
	}
	return w
}

// fold returns the word that a text between two signs is.
func (f *Folder) fold(s string, before, after sign) Word {
	terms, role := termsOf(s, before, after)
	w := Word{Terms: make([]Term, len(terms)), role: role}
	for i, t := range terms {
		w.Terms[i] = f.term(t)
	}
	return w
}

func (f *Folder) term(text string) Term {
	t := Term{Text: text}
	if f.Number != nil {
		t.Number = f.Number(text)
	}
	return t
}

// thousands returns the word that a numeral over 9999 is; without terms where the text is
// something else.
func (f *Folder) thousands(s string) Word {
	if len(s) > mostSpoken || s[0] == '0' || !digitsOnly(s) {
		return Word{}
	}
	if f.under == nil {
		f.under = make([][]Term, 1000)
	}
	first, v := len(f.room), valueOf(s)
	f.room = append(f.room, f.underThousand(v/1000)...)
	f.room = append(f.room, f.term("thousand"))
	f.room = append(f.room, f.underThousand(v%1000)...)
	w := Word{Terms: f.room[first:len(f.room):len(f.room)], role: numberRole}
	if v%100 == 0 {
		w.role = scaleRole // it ends in hundred or thousand
	}
	return w
}

// underThousand returns the terms of a number under a thousand, none for 0.
func (f *Folder) underThousand(v int) []Term {
	if f.under[v] == nil {
		for _, t := range underThousandWords(nil, v) {
			f.under[v] = append(f.under[v], f.term(t))
		}
	}
	return f.under[v]
}
