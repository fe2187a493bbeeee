// Tests of subtitles as they are written: with labels, sounds, contractions.

package interp_test

import (
	"fmt"
	"math"
	"strings"
	"testing"
)

// A caption is a subtitle of a test: one line of the plan or a part of it.
type caption struct {
	start, end float64
	who, text  string
}

// talk is a talk of our own, with the time of each line.
func talk() []caption {
	return []caption{
		{10, 11.8, "NORA", "You didn't sign the second ledger."},
		{12.1, 14.5, "OTTO", "I've signed every page that there's been."},
		{15, 16.2, "NORA", "Listen: they're coming."},
		{16.5, 17.1, "OTTO", "Who?"},
		{17.6, 20.4, "NORA", "Twenty-five men, and one hundred and five oars."},
		{21, 22.9, "OTTO", "We can't row, she'll freeze out there."},
		{23.3, 25, "NORA", "It won't help us to wait till dawn."},
		{25.2, 25.8, "OTTO", "No."},
		{26.4, 28.6, "NORA", "I would have gone in nineteen eighty-seven."},
		{29, 30.9, "OTTO", "What is it that you are looking at?"},
		{31.2, 33.3, "NORA", "Nobody's rowing to the wreck for ten percent."},
		{33.8, 35.9, "OTTO", "Let us go home, because I am cold."},
	}
}

// talkPlan is the plan of the talk.
func talkPlan(file string) string {
	var body strings.Builder
	for _, c := range talk() {
		fmt.Fprintf(&body, "%s: %q\n", c.who, c.text)
	}
	return inCut(fmt.Sprintf("edit %q\n", file), body.String())
}

// each writes every caption anew.
func each(write func(i int, c caption) string) func([]caption) []caption {
	return func(list []caption) []caption {
		for i := range list {
			list[i].text = write(i, list[i])
		}
		return list
	}
}

// name writes a name with a capital only.
func name(s string) string { return s[:1] + strings.ToLower(s[1:]) }

// reworded writes the talk with other words for the same.
func reworded(pairs ...string) func([]caption) []caption {
	r := strings.NewReplacer(pairs...)
	return each(func(_ int, c caption) string { return r.Replace(c.text) })
}

// together puts captions in pairs, in which two people speak.
func together(write func(c caption) string) func([]caption) []caption {
	return func(list []caption) (pairs []caption) {
		for i := 0; i < len(list); i += 2 {
			pairs = append(pairs, caption{list[i].start, list[i+1].end, "", write(list[i]) + "\n" + write(list[i+1])})
		}
		return pairs
	}
}

// halves parts the captions of more than four words in their middle.
func halves(list []caption) (parts []caption) {
	for _, c := range list {
		words := strings.Fields(c.text)
		if n := len(words) / 2; n >= 2 {
			middle := (c.start + c.end) / 2
			parts = append(parts, caption{c.start, middle, c.who, strings.Join(words[:n], " ")}, caption{middle, c.end, c.who, strings.Join(words[n:], " ")})
			continue
		}
		parts = append(parts, c)
	}
	return parts
}

// between puts subtitles without a word of the talk between the others.
func noises(list []caption) (more []caption) {
	for _, c := range list {
		more = append(more, caption{c.start - 0.25, c.start, "", "[a chain rattles]"}, c)
	}
	return more
}

// variants are the ways in which subtitles write the talk.
var variants = []struct {
	name   string
	write  func([]caption) []caption
	paired bool // two lines share a caption
}{
	{"plain", each(func(_ int, c caption) string { return c.text }), false},
	{"labels", each(func(_ int, c caption) string { return c.who + ": " + c.text }), false},
	{"labels with a capital", each(func(_ int, c caption) string { return name(c.who) + ": " + c.text }), false},
	{"labels with a remark", each(func(_ int, c caption) string { return c.who + " (O.S.): " + c.text }), false},
	{"labels of strangers", each(func(i int, c caption) string { return []string{"Keeper", "Old Man"}[i%2] + ": " + c.text }), false},
	{"labels in brackets", each(func(_ int, c caption) string { return "[" + c.who + "] " + c.text }), false},
	{"labels on a line", each(func(_ int, c caption) string { return "(" + name(c.who) + ")\n" + c.text }), false},
	{"upper case", each(func(_ int, c caption) string { return strings.ToUpper(c.text) }), false},
	{"upper case with labels", each(func(_ int, c caption) string { return strings.ToUpper(c.who + ": " + c.text) }), false},
	{"lower case", each(func(_ int, c caption) string { return strings.ToLower(c.text) }), false},
	{"dashes", each(func(_ int, c caption) string { return "- " + c.text }), false},
	{"long dashes", each(func(_ int, c caption) string { return "–" + c.text }), false},
	{"arrows", each(func(_ int, c caption) string { return ">> " + c.who + ": " + c.text }), false},
	{"sounds", each(func(_ int, c caption) string { return "[a door slams] " + c.text }), false},
	{"remarks", each(func(_ int, c caption) string { return "(whispering) " + c.text }), false},
	{"remarks over two rows", each(func(_ int, c caption) string { return c.text + " (he coughs\nand sits down)" }), false},
	{"remarks within", each(func(_ int, c caption) string { return strings.Replace(c.text, " ", " [thunder] ", 1) }), false},
	{"sounds between", noises, false},
	{"music", each(func(_ int, c caption) string { return "♪ " + c.text + " ♪" }), false},
	{"number signs", each(func(_ int, c caption) string { return "# " + c.text + " #" }), false},
	{"tags", each(func(_ int, c caption) string { return `{\an8}<i>` + c.text + "</i>" }), false},
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
	{"two in one", together(func(c caption) string { return c.text }), true},
	{"two in one with dashes", together(func(c caption) string { return "- " + c.text }), true},
	{"two in one with labels", together(func(c caption) string { return c.who + ": " + c.text }), true},
	{"two in one with both", together(func(c caption) string { return "-" + name(c.who) + ": (softly) " + c.text }), true},
	{"a word misspelt", reworded("ledger", "leger", "signed every", "singed every", "freeze", "frieze", "wreck", "reck", "home", "hoam"), false},
	{"another first word", reworded("You didn't", "Yo didn't", "We can't", "Wee can't", "What is", "Wat is"), false},
}

// However subtitles write a talk, its lines have their times: none is wrong by
// more than 60 ms. Of two in one caption the words have the time that their
// syllables have in what is said in it.
func TestWaysToWriteSubtitles(t *testing.T) {
	const most = 0.06
	paired := linesOf(t, "cut.srt", variantCues(together(func(c caption) string { return c.text })(talk())))
	for _, v := range variants {
		got := linesOf(t, "cut.srt", variantCues(v.write(talk())))
		for i, c := range talk() {
			want := [2]float64{c.start - talk()[0].start, c.end - talk()[0].start}
			if v.paired {
				want = paired[i]
			}
			if i >= len(got) || math.Abs(got[i][0]-want[0]) > most || math.Abs(got[i][1]-want[1]) > most {
				t.Errorf("%s: line %d, %q, is at %.3v, want %.3v", v.name, i+1, c.text, got[i], want)
			}
		}
	}
}

// Voice tags of WebVTT name speakers as labels do.
func TestVoicesInSubtitles(t *testing.T) {
	text := "WEBVTT\n\n"
	for _, c := range talk() {
		text += fmt.Sprintf("00:%06.3f --> 00:%06.3f\n<v %s>%s\n\n", c.start, c.end, name(c.who), c.text)
	}
	for i, got := range linesOf(t, "cut.vtt", text) {
		c := talk()[i]
		if math.Abs(got[0]-c.start+10) > 1e-9 || math.Abs(got[1]-c.end+10) > 1e-9 {
			t.Errorf("line %d is at %v, want %v to %v", i+1, got, c.start-10, c.end-10)
		}
	}
}

// Of two places that are equally like a line its own speaker's wins.
func TestSpeakerTellsThePlace(t *testing.T) {
	plan := inCut("edit \"cut.srt\"\n", "OTTO: \"The rope is wet.\"\npause 2 s\nNORA: \"Leave it where it is.\"\n")
	cues := srt(5.0, 6.0, "NORA: Leave it where it is.", 10.0, 11.0, "OTTO: The rope is wet.", 14.0, 15.0, "OTTO: Leave it where it is.", 18.0, 19.0, "NORA: Leave it where it is.")
	res := interpret("plan.pull", plan, "cut.srt", cues)
	if got := res.Plan.Shots[0].Lines[1].Start; !nearly(got, 8) {
		t.Errorf("the line is at %v", got)
	}
}

// variantCues writes captions as SubRip.
func variantCues(list []caption) string {
	var cues []any
	for _, c := range list {
		cues = append(cues, c.start, c.end, c.text)
	}
	return srt(cues...)
}

// linesOf returns the times of the lines of the talk in a cut.
func linesOf(t *testing.T, file, text string) (times [][2]float64) {
	t.Helper()
	res := interpret("plan.pull", talkPlan(file), file, text)
	for _, l := range res.Plan.Shots[0].Lines {
		times = append(times, [2]float64{float64(l.Start), float64(l.End)})
	}
	return times
}
