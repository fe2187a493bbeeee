// Tables of what the rules of spelling cannot tell.

package speech

// A part is a piece of a word and a number of syllables.
type part struct {
	text      string
	syllables int
}

// An index finds parts by a letter, a to z, since going through them all for
// each word is slow.
type index ['z' - 'a' + 1][]part

// by returns the index of parts by the letter that key picks.
func by(key func(string) byte, parts []part) *index {
	var x index
	for _, p := range parts {
		c := key(p.text) - 'a'
		x[c] = append(x[c], p)
	}
	return &x
}

// of returns the parts under a letter.
func (x *index) of(c byte) []part {
	if c < 'a' || c > 'z' {
		return nil
	}
	return x[c-'a']
}

func first(s string) byte { return s[0] }
func last(s string) byte  { return s[len(s)-1] }

// beginnings are first parts of compounds that end in a silent vowel, before a
// consonant.
var beginnings = by(first, []part{
	{"base", 1}, {"bride", 1}, {"business", 2}, {"else", 1}, {"every", 2}, {"eye", 1},
	{"fire", 2}, {"fore", 1}, {"grape", 1}, {"grave", 1}, {"here", 1}, {"home", 1},
	{"house", 1}, {"ice", 1}, {"life", 1}, {"live", 1}, {"name", 1}, {"nine", 1}, {"note", 1},
	{"price", 1}, {"safe", 1}, {"sales", 1}, {"share", 1}, {"side", 1}, {"some", 1},
	{"space", 1}, {"spokes", 1}, {"stone", 1}, {"there", 1}, {"time", 1}, {"type", 1},
	{"where", 1}, {"white", 1}, {"whole", 1}, {"wise", 1},
})

// endings may follow a silent e.
var endings = by(last, []part{
	{"book", 1}, {"field", 1}, {"ful", 1}, {"fully", 2}, {"hart", 1}, {"house", 1},
	{"keeper", 2}, {"keeping", 2}, {"land", 1}, {"less", 1}, {"lessly", 2}, {"line", 1},
	{"ly", 1}, {"man", 1}, {"mann", 1}, {"men", 1}, {"ment", 1}, {"ness", 1}, {"out", 1},
	{"owner", 2}, {"some", 1}, {"sville", 1}, {"time", 1}, {"ville", 1}, {"way", 1},
	{"wood", 1}, {"work", 1}, {"worth", 1},
})

// adjusted are endings, and how many syllables more or fewer they have than
// their letters say: prism, rhythm, basically, andante.
var adjusted = by(last, []part{
	{"bling", 1}, {"dke", 1}, {"dl", 1}, {"eate", 1}, {"eation", 1}, {"ically", -1},
	{"ione", 1}, {"nte", 1}, {"sm", 1}, {"thm", 1}, {"tke", 1}, {"tl", 1}, {"zling", 1},
})

// restarts are beginnings of words that re- and pre- are put before with a
// break.
var restarts = []string{
	"act", "adj", "adm", "aff", "ali", "all", "alt", "app", "arr", "ass", "att", "aw",
	"ele", "emi", "emp", "ena", "ent", "eva", "exa", "exi",
	"ima", "imb", "imp", "inc", "inf", "ins", "int", "inv", "iss", "ite",
	"uni", "us",
}

// irregular returns the syllables of common words that the rules get wrong, and
// of sounds and abbreviations without a vowel; ok is false for all others.
func irregular(word string) (syllables int, ok bool) {
	switch word {
	case "brr", "grr", "hm", "hmm", "mm", "mmm", "ms", "nth", "pfft", "psst", "pst", "sh", "shh",
		"st", "tsk", "aisle", "isle", "ma'am", "queue":
		return 1, true
	case "dr", "mr", "mrs", "ok", "vs", "acne", "argue", "argued", "business", "cafe", "chaos",
		"chloe", "chocolate", "cliche", "colonel", "crooked", "evening", "every", "fire", "fired",
		"hired", "hour", "interest", "jagged", "maybe", "naive", "naked", "ragged", "really",
		"rugged", "sacred", "samuel", "soldier", "someone", "tired", "wednesday", "wicked", "without",
		"wretched", "zoe":
		return 2, true
	case "adobe", "anyone", "area", "chaotic", "coyote", "everyone", "fiance", "fiancee", "finale",
		"forever", "genuine", "interested", "interesting", "israel", "karate", "moreover", "naomi",
		"raphael", "recipe", "simile", "suicide", "vegetable", "wherever":
		return 3, true
	case "anemone", "apostrophe", "catastrophe", "epitome", "hyperbole":
		return 4, true
	}
	return 0, false
}
