package edits

import (
	"strings"
)

// each writes every caption anew.
func each(write func(i int, c Caption) string) func([]Caption) []Caption {
	return func(list []Caption) []Caption {
		for i := range list {
			list[i].Text = write(i, list[i])
		}
		return list
	}
}

// name writes a name with a capital only.
func name(s string) string { return s[:1] + strings.ToLower(s[1:]) }

// reworded writes the talk with other words for the same.
func reworded(pairs ...string) func([]Caption) []Caption {
	r := strings.NewReplacer(pairs...)
	return each(func(_ int, c Caption) string { return r.Replace(c.Text) })
}

// together puts captions in pairs, in which two people speak.
func together(write func(c Caption) string) func([]Caption) []Caption {
	return func(list []Caption) (pairs []Caption) {
		for i := 0; i < len(list); i += 2 {
			pairs = append(pairs, Caption{list[i].Start, list[i+1].End, "", write(list[i]) + "\n" + write(list[i+1])})
		}
		return pairs
	}
}

// halves parts the captions of more than four words in their middle.
func halves(list []Caption) (parts []Caption) {
	for _, c := range list {
		words := strings.Fields(c.Text)
		if n := len(words) / 2; n >= 2 {
			middle := (c.Start + c.End) / 2
			parts = append(parts, Caption{c.Start, middle, c.Who, strings.Join(words[:n], " ")}, Caption{middle, c.End, c.Who, strings.Join(words[n:], " ")})
			continue
		}
		parts = append(parts, c)
	}
	return parts
}

// noises puts subtitles without a word of the talk between the others.
func noises(list []Caption) (more []Caption) {
	for _, c := range list {
		more = append(more, Caption{c.Start - 0.25, c.Start, "", "[a chain rattles]"}, c)
	}
	return more
}

// A Variant is a way in which subtitles write a talk.
type Variant struct {
	Name   string
	Write  func([]Caption) []Caption
	Paired bool // two lines share a caption
}

// Variants are the ways in which subtitles write a talk.
var Variants = []Variant{
	{"plain", each(func(_ int, c Caption) string { return c.Text }), false},
	{"labels", each(func(_ int, c Caption) string { return c.Who + ": " + c.Text }), false},
	{"labels with a capital", each(func(_ int, c Caption) string { return name(c.Who) + ": " + c.Text }), false},
	{"labels with a remark", each(func(_ int, c Caption) string { return c.Who + " (O.S.): " + c.Text }), false},
	{"labels of strangers", each(func(i int, c Caption) string { return []string{"Keeper", "Old Man"}[i%2] + ": " + c.Text }), false},
	{"labels in brackets", each(func(_ int, c Caption) string { return "[" + c.Who + "] " + c.Text }), false},
	{"labels on a line", each(func(_ int, c Caption) string { return "(" + name(c.Who) + ")\n" + c.Text }), false},
	{"upper case", each(func(_ int, c Caption) string { return strings.ToUpper(c.Text) }), false},
	{"upper case with labels", each(func(_ int, c Caption) string { return strings.ToUpper(c.Who + ": " + c.Text) }), false},
	{"lower case", each(func(_ int, c Caption) string { return strings.ToLower(c.Text) }), false},
	{"dashes", each(func(_ int, c Caption) string { return "- " + c.Text }), false},
	{"long dashes", each(func(_ int, c Caption) string { return "–" + c.Text }), false},
	{"arrows", each(func(_ int, c Caption) string { return ">> " + c.Who + ": " + c.Text }), false},
	{"sounds", each(func(_ int, c Caption) string { return "[a door slams] " + c.Text }), false},
	{"remarks", each(func(_ int, c Caption) string { return "(whispering) " + c.Text }), false},
	{"remarks over two rows", each(func(_ int, c Caption) string { return c.Text + " (he coughs\nand sits down)" }), false},
	{"remarks within", each(func(_ int, c Caption) string { return strings.Replace(c.Text, " ", " [thunder] ", 1) }), false},
	{"sounds between", noises, false},
	{"music", each(func(_ int, c Caption) string { return "♪ " + c.Text + " ♪" }), false},
	{"number signs", each(func(_ int, c Caption) string { return "# " + c.Text + " #" }), false},
	{"tags", each(func(_ int, c Caption) string { return `{\an8}<i>` + c.Text + "</i>" }), false},
	{"written out", reworded("didn't", "did not", "I've", "I have", "there's", "there has", "they're", "they are", "can't", "cannot",
		"she'll", "she will", "won't", "will not", "Nobody's", "Nobody is"), false},
	{"contracted", reworded("I would have", "I'd've", "What is", "What's", "you are", "you're", "Let us", "Let's", "I am", "I'm", "because", "'cause"), false},
	{"without apostrophes", reworded("didn't", "didnt", "I've", "Ive", "there's", "theres", "they're", "theyre"), false},
	{"curly apostrophes", reworded("'", "’"), false},
	{"spoken", reworded("till", "'til", "looking", "lookin'", "because", "'cause", "coming", "comin'"), false},
	{"digits", reworded("Twenty-five", "25", "one hundred and five", "105", "nineteen eighty-seven", "1987", "ten percent", "10%"), false},
	{"other number words", reworded("one hundred and five", "one hundred five", "eighty-seven", "eighty seven", "percent", "per cent"), false},
	{"other signs", reworded(",", "", "Listen:", "Listen...", ".", "…"), false},
	{"parted", halves, false},
	{"two in one", together(func(c Caption) string { return c.Text }), true},
	{"two in one with dashes", together(func(c Caption) string { return "- " + c.Text }), true},
	{"two in one with labels", together(func(c Caption) string { return c.Who + ": " + c.Text }), true},
	{"two in one with both", together(func(c Caption) string { return "-" + name(c.Who) + ": (softly) " + c.Text }), true},
	{"a word misspelt", reworded("ledger", "leger", "signed every", "singed every", "freeze", "frieze", "wreck", "reck", "home", "hoam"), false},
	{"another first word", reworded("You didn't", "Yo didn't", "We can't", "Wee can't", "What is", "Wat is"), false},
}
