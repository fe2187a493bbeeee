// Contractions: English words that are written as one and said as several, and
// forms of the spoken language.

package speech

import "strings"

// The terms that several words share.
const (
	notTerm  = "not"
	willTerm = "will" // will, shall, 'll
	haveTerm = "have"
	areTerm  = "are"
	amTerm   = "am"
	hadTerm  = "had" // had, would, did, 'd
	isTerm   = "is"  // is, has, 's
)

// suffixes are what is written on to a word with an apostrophe.
var suffixes = [...]struct{ written, term string }{
	{"n't", notTerm}, {"'ll", willTerm}, {"'ve", haveTerm}, {"'re", areTerm},
	{"'m", amTerm}, {"'d", hadTerm}, {"'s", isTerm},
}

// expand returns the terms of a folded word. elided tells that an apostrophe
// stands before it, cut that one stands behind it.
func expand(word string, elided, cut bool) []string {
	var after []string
	for rest := word; ; {
		if terms := whole(rest, elided); terms != nil {
			return append(terms, after...)
		}
		short, term := shorten(rest)
		if short == "" {
			if cut && len(rest) > 3 && strings.HasSuffix(rest, "in") {
				rest += "g"
			}
			return append([]string{rest}, after...)
		}
		rest, after = short, append([]string{term}, after...)
	}
}

// shorten takes the last suffix off a word; "" where it has none.
func shorten(word string) (rest, term string) {
	if strings.IndexByte(word, '\'') < 0 {
		return "", ""
	}
	for _, s := range suffixes {
		if rest, ok := strings.CutSuffix(word, s.written); ok && rest != "" {
			return rest, s.term
		}
	}
	return "", ""
}

// whole returns the terms of words that no suffix explains, and of the members
// of classes; nil for all others.
func whole(word string, elided bool) []string {
	if elided {
		if terms := headless(word); terms != nil {
			return terms
		}
	}
	if terms := member(word); terms != nil {
		return terms
	}
	if terms := blend(word); terms != nil {
		return terms
	}
	return bare(word)
}

// headless returns the terms of a word whose beginning is left out: 'em, 'tis.
func headless(word string) []string {
	switch word {
	case "em":
		return []string{"them"}
	case "cause":
		return []string{"because"}
	case "bout":
		return []string{"about"}
	case "round":
		return []string{"around"}
	case "tis":
		return []string{"it", isTerm}
	case "twas":
		return []string{"it", "was"}
	case "s":
		return []string{isTerm}
	case "ll":
		return []string{willTerm}
	case "ve":
		return []string{haveTerm}
	case "re":
		return []string{areTerm}
	case "m":
		return []string{amTerm}
	case "d":
		return []string{hadTerm}
	}
	return nil
}

// member returns the term of the class that a word is of.
func member(word string) []string {
	switch word {
	case "shall":
		return []string{willTerm}
	case "would", "did":
		return []string{hadTerm}
	case "has":
		return []string{isTerm}
	case "til", "till":
		return []string{"until"}
	case "cos", "cuz":
		return []string{"because"}
	case "ma'am":
		return []string{"madam"}
	case "percent":
		return []string{"per", "cent"}
	}
	return nil
}

// blend returns the terms of words that have grown together.
func blend(word string) []string {
	switch word {
	case "won't":
		return []string{willTerm, notTerm}
	case "can't", "cannot":
		return []string{"can", notTerm}
	case "shan't":
		return []string{willTerm, notTerm}
	case "let's", "lets":
		return []string{"let", "us"}
	case "its":
		return []string{"it", isTerm}
	case "gonna":
		return []string{"going", "to"}
	case "wanna":
		return []string{"want", "to"}
	case "gotta":
		return []string{"got", "to"}
	case "gimme":
		return []string{"give", "me"}
	case "lemme":
		return []string{"let", "me"}
	case "kinda":
		return []string{"kind", "of"}
	case "sorta":
		return []string{"sort", "of"}
	case "outta":
		return []string{"out", "of"}
	case "dunno":
		return []string{"do", notTerm, "know"}
	case "y'all":
		return []string{"you", "all"}
	case "d'you":
		return []string{"do", "you"}
	case "c'mon":
		return []string{"come", "on"}
	}
	return nil
}

// bare returns the terms of contractions written without their apostrophe, where
// that is no English word of its own.
func bare(word string) []string {
	switch word {
	case "dont", "doesnt", "isnt", "wasnt", "werent", "arent", "couldnt", "shouldnt", "hasnt", "havent",
		"hadnt", "mustnt", "didnt", "wouldnt":
		return append(expand(word[:len(word)-2], false, false), notTerm)
	case "im":
		return []string{"i", amTerm}
	case "ive", "youve", "theyve", "weve", "couldve", "shouldve", "wouldve", "mightve":
		return append(expand(word[:len(word)-2], false, false), haveTerm)
	case "youre", "theyre":
		return []string{word[:len(word)-2], areTerm}
	case "youll", "theyll":
		return []string{word[:len(word)-2], willTerm}
	case "thats", "whats", "wheres", "theres", "hes", "shes":
		return []string{word[:len(word)-1], isTerm}
	}
	return nil
}
