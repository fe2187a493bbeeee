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

// irregular holds common words that the rules get wrong, and sounds and
// abbreviations without a vowel.
var irregular = map[string]uint8{
	"brr": 1, "dr": 2, "grr": 1, "hm": 1, "hmm": 1, "mm": 1, "mmm": 1, "mr": 2, "mrs": 2,
	"ms": 1, "nth": 1, "ok": 2, "pfft": 1, "psst": 1, "pst": 1, "sh": 1, "shh": 1, "st": 1,
	"tsk": 1, "vs": 2,

	"acne": 2, "adobe": 3, "aisle": 1, "anemone": 4, "anyone": 3, "apostrophe": 4, "area": 3,
	"argue": 2, "argued": 2, "business": 2, "cafe": 2, "catastrophe": 4, "chaos": 2,
	"chaotic": 3, "chloe": 2, "chocolate": 2, "cliche": 2, "colonel": 2, "coyote": 3,
	"crooked": 2, "epitome": 4, "evening": 2, "every": 2, "everyone": 3, "fiance": 3,
	"fiancee": 3, "finale": 3, "fire": 2, "fired": 2, "forever": 3, "genuine": 3, "hired": 2,
	"hour": 2, "hyperbole": 4, "interest": 2, "interested": 3, "interesting": 3, "isle": 1,
	"israel": 3, "jagged": 2, "karate": 3, "ma'am": 1, "maybe": 2, "moreover": 3, "naive": 2,
	"naked": 2, "naomi": 3, "queue": 1, "ragged": 2, "raphael": 3, "really": 2, "recipe": 3,
	"rugged": 2, "sacred": 2, "samuel": 2, "simile": 3, "soldier": 2, "someone": 2,
	"suicide": 3, "tired": 2, "vegetable": 3, "wednesday": 2, "wherever": 3, "wicked": 2,
	"without": 2, "wretched": 2, "zoe": 2,
}
