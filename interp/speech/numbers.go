// Numbers as terms: digits become the English words that they are said with.

package speech

import (
	"slices"
	"strings"
)

var (
	unitWords = [20]string{
		"zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve",
		"thirteen", "fourteen", "fifteen", "sixteen", "seventeen", "eighteen", "nineteen",
	}
	tenWords = [10]string{"", "", "twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"}
	ordinals = map[string]string{
		"one": "first", "two": "second", "three": "third", "five": "fifth", "eight": "eighth", "nine": "ninth",
		"twelve": "twelfth", "twenty": "twentieth", "thirty": "thirtieth",
	}
)

// mostSpelled is the largest number that becomes words, and lastOrdinal the
// largest ordinal: the days of a month.
const (
	mostSpelled = 999_999
	lastOrdinal = 31
)

// roleOf returns what a term may be in a number.
func roleOf(term string) role {
	switch {
	case term == "hundred", term == "thousand":
		return scaleRole
	case term == "and":
		return andRole
	case term == "oh":
		return ohRole
	case slices.Contains(unitWords[:], term), slices.Contains(tenWords[2:], term):
		return numberRole
	}
	return otherRole
}

func isDigit(c byte) bool { return '0' <= c && c <= '9' }

// numberTerms returns the terms of a word that begins with a digit: the word
// itself where it is no number that is spelled out.
func numberTerms(word string, before, after sign) ([]string, role) {
	terms, one := spellOut(word)
	if terms == nil {
		return []string{fold(word)}, otherRole
	}
	switch before {
	case dollars:
		return append(terms, coins("dollar", one)), otherRole
	case pounds:
		return append(terms, coins("pound", one)), otherRole
	case euros:
		return append(terms, coins("euro", one)), otherRole
	}
	if after == percent {
		return append(terms, "per", "cent"), otherRole
	}
	return terms, roleOf(terms[len(terms)-1])
}

func coins(word string, one bool) string {
	if one {
		return word
	}
	return word + "s"
}

// spellOut returns the words of a numeral, nil where it is none; one tells that
// it is 1.
func spellOut(s string) (terms []string, one bool) {
	n := 0
	for n < len(s) && (isDigit(s[n]) || s[n] == ',') {
		n++
	}
	plain, ok := withoutCommas(s[:n])
	if !ok {
		return nil, false
	}
	switch rest := s[n:]; {
	case rest == "":
		return cardinalWords(plain, n > len(plain)), plain == "1"
	case rest[0] == '.' && digitsOnly(rest[1:]):
		terms = cardinalWords(plain, true)
		if terms == nil {
			return nil, false
		}
		return append(append(terms, "point"), oneByOneWords(rest[1:])...), false
	default:
		return ordinalWords(plain, strings.ToLower(rest)), false
	}
}

// withoutCommas takes the commas between thousands out of digits; ok is false
// where they stand elsewhere.
func withoutCommas(s string) (plain string, ok bool) {
	if strings.IndexByte(s, ',') < 0 {
		return s, s != ""
	}
	groups := strings.Split(s, ",")
	for i, g := range groups {
		if i > 0 && len(g) != 3 || i == 0 && (g == "" || len(g) > 3) {
			return "", false
		}
	}
	return strings.Join(groups, ""), true
}

func digitsOnly(s string) bool {
	for i := range len(s) {
		if !isDigit(s[i]) {
			return false
		}
	}
	return s != ""
}

func oneByOneWords(s string) []string {
	list := make([]string, len(s))
	for i := range len(s) {
		list[i] = unitWords[s[i]-'0']
	}
	return list
}

// ordinalWords returns the words of an ordinal with its ending, up to the 31st.
func ordinalWords(s, ending string) []string {
	v := valueOf(s)
	if v < 1 || v > lastOrdinal || ending != "st" && ending != "nd" && ending != "rd" && ending != "th" {
		return nil
	}
	words := underThousandWords(nil, v)
	last := &words[len(words)-1]
	if o, odd := ordinals[*last]; odd {
		*last = o
	} else {
		*last += "th"
	}
	return words
}

// valueOf returns the value of some digits, or -1 beyond what is spelled out.
func valueOf(s string) int {
	if len(s) > 6 {
		return -1
	}
	v := 0
	for i := range len(s) {
		v = 10*v + int(s[i]-'0')
	}
	return v
}

// cardinalWords returns the words of a whole number; counted tells that it is no
// year.
func cardinalWords(s string, counted bool) []string {
	v := valueOf(s)
	switch {
	case v < 0 || v > mostSpelled:
		return nil
	case len(s) > 1 && s[0] == '0':
		return oneByOneWords(s)
	case v == 0:
		return []string{unitWords[0]}
	case len(s) == 4 && !counted && pairs(v):
		return pairWords(v/100, v%100)
	}
	words := make([]string, 0, 8) // most have fewer
	if v >= 1000 {
		words = append(underThousandWords(words, v/1000), "thousand")
	}
	return underThousandWords(words, v%1000)
}

// pairWords returns nineteen eighty four, nineteen zero five and fifteen hundred.
func pairWords(first, second int) []string {
	words := underThousandWords(nil, first)
	switch {
	case second == 0:
		return append(words, "hundred")
	case second < 10:
		words = append(words, unitWords[0])
	}
	return underThousandWords(words, second)
}

// underThousandWords appends the words of a number under a thousand, none for 0.
func underThousandWords(words []string, v int) []string {
	if v >= 100 {
		words = append(words, unitWords[v/100], "hundred")
		v %= 100
	}
	switch {
	case v == 0:
	case v < 20:
		words = append(words, unitWords[v])
	default:
		if words = append(words, tenWords[v/10]); v%10 > 0 {
			words = append(words, unitWords[v%10])
		}
	}
	return words
}
