// The table of what a plan says of lenses, sensors and wheels, and the words that are
// names all the same.

package lang

import (
	"flag"
	"fmt"
	"os"
	"slices"
	"strings"
	"testing"
)

// TestLensUsage compares the usage lines with testdata/lens-usage.tsv. The table writes no
// brackets around what may be left out.
func TestLensUsage(t *testing.T) {
	table, err := os.ReadFile("../testdata/lens-usage.tsv")
	if err != nil {
		t.Fatal(err)
	}
	sections := map[string]section{"camera": inCamera, "lens": inLens, "shot, file": inShot | inFile}
	rows := 0
	for line := range strings.Lines(string(table)) {
		cells := strings.Split(strings.TrimRight(line, "\n"), "\t")
		if cells[0] == "word" || len(cells) < 4 {
			continue
		}
		rows++
		word, under, usage := cells[0], sections[cells[1]], cells[2]
		s := specOf[word].within(under & -under)
		if s.under != under {
			t.Errorf("%s stands under %s, want %s", word, s.under, cells[1])
		}
		noBrackets := strings.NewReplacer("[", "", "]", "")
		if got := s.usage(); noBrackets.Replace(got) != noBrackets.Replace(usage) {
			t.Errorf("%s: usage\n%s\nwant\n%s", word, got, usage)
		}
		for _, clause := range strings.FieldsFunc(strings.TrimSuffix(cells[3], " and those of today"), func(r rune) bool { return r == ',' || r == ' ' }) {
			isIt := func(leaf *form) bool { return leaf.kind == formLiteral && leaf.text == clause }
			if !slices.ContainsFunc(s.shape().form.leaves(), isIt) {
				t.Errorf("%s has no clause %s", word, clause)
			}
		}
	}
	if rows != 13 {
		t.Errorf("%d rows", rows)
	}
}

// A usage line that is written by hand has no word that the tags do not have, but for
// kinds of values and the words inside them.
func TestUsageByHand(t *testing.T) {
	for _, s := range specs {
		for _, word := range strings.FieldsFunc(s.says, func(r rune) bool { return !isWordByte(byte(r)) }) {
			isIt := func(leaf *form) bool { return leaf.kind == formLiteral && leaf.text == word }
			if !slices.ContainsFunc(allLeaves(s.shape().form), isIt) && word != strings.ToUpper(word) && word != "inf" && word != "o" && word != "clock" {
				t.Errorf("%s: the tags have no %s", s.word, word)
			}
		}
	}
}

// lensWords are the words that came with real lenses; none of them is reserved.
var lensWords = strings.Fields("crop type shoots girth linear o'clock marks engraved measured within ends hard slip squeeze " +
	"rear play marked both ways ratio darkens planes apart diopter tube travel")

// moveWords are the words that came with the moves of the camera.
var moveWords = strings.Fields("pan tilt boom track push pull operator up down")

func TestNewWordsAreSoft(t *testing.T) {
	for _, w := range append(moveWords, lensWords...) {
		if !isSoft(w) || isKeyword(w) || !isWordOf(w) {
			t.Errorf("%s is no soft word", w)
		}
	}
	if n := len(Keywords()); n != 74 {
		t.Errorf("%d words are reserved", n)
	}
}

// namesEverywhere is a plan that uses two names in every place where a name may stand.
const namesEverywhere = `let %[1]s = 2 m
let "v%[1]s" = 3 deg
use "x.pull"
subject %[1]s at %[2]s + 1 m, deep %[1]s, sways %[2]s
subject %[1]s at %[2]s
subject %[1]s at 1 m, %[2]s left
voice %[1]s
let A = %[1]s and %[2]s
watched on %[1]s screen from %[2]s
with camera %[1]s, lens %[2]s, stop %[1]s, focal %[2]s, puller %[1]s, gear %[2]s
with travel %[1]s from %[2]s to %[1]s, diopter %[2]s, tube %[1]s, shoots %[2]s, wheel %[1]s

camera %[1]s
  sensor (%[1]s) x %[2]s, crop %[1]s
  shoots %[2]s

lens %[2]s
  focal %[1]s to %[2]s
  closest %[1]s
  ring (%[1]s), diameter %[2]s, girth %[1]s
  ring by wire, linear over %[2]s
  mark %[1]s at %[2]s and %[1]s
  marks engraved, within %[1]s
  play %[2]s, marked both ways
  squeeze %[1]s at (%[2]s)
  ratio %[2]s at %[1]s
  darkens %[1]s to %[2]s at %[1]s
  breathing %[1]s at %[2]s
  planes %[1]s apart

puller %[1]s
  bias %[2]s

move %[1]s(%[2]s)
  rack to %[2]s, on %[1]s, over %[2]s

move %[2]s()
  %[1]s: "a", on %[2]s, lasting %[1]s
  %[2]s moves to %[1]s - %[2]s over %[1]s, on %[2]s
  %[2]s moves %[1]s nearer over %[2]s

shot 1
  start on %[1]s and %[2]s
  cue %[1]s on %[2]s "a" 2 + %[1]s
  %[1]s: "a", from %[2]s to %[1]s
  %[1]s(%[2]s, %[1]s - 1 s)
  rack to %[1]s - %[2]s, landing on %[2]s, over %[1]s
  follow %[1]s until end of %[2]s
  pause %[1]s * 2
  dolly in %[1]s over %[2]s
  hold %[2]s
  with operator %[1]s, puller %[2]s
  pan left %[1]s, on %[1]s, landing on %[2]s - %[1]s
  tilt up %[2]s over %[1]s, landing on %[2]s
  pan to %[1]s over %[2]s
  tilt to %[2]s, with pan
  pan and tilt to %[1]s, with zoom
  pan with %[2]s, on %[1]s, until %[2]s "a"
  pan and tilt with %[1]s until end of %[2]s
  tilt with %[1]s
  push in %[1]s over %[2]s, on %[1]s
  pull out %[2]s over %[1]s
  track left %[1]s, with tilt
  boom down %[2]s, on %[1]s, landing on %[2]s
  zoom to %[1]s over %[2]s, landing on %[1]s
  rack to %[1]s and %[2]s, with boom, because "a"
`

// everyPair has every soft word tried beside every other: go test ./lang -run Pairs -pairs
// takes ten seconds. Do so after a change of the words of the language.
var everyPair = flag.Bool("pairs", false, "try every pair of soft words in TestPairsOfSoftWordsAreNames")

// Every soft word is a name in every place where names stand, beside every third of the
// others.
func TestPairsOfSoftWordsAreNames(t *testing.T) {
	for i, a := range softWords {
		for j, b := range softWords {
			if (i+j)%3 != 0 && !*everyPair {
				continue
			}
			src := fmt.Sprintf(namesEverywhere, a, b)
			if _, diags := Parse("", []byte(src)); len(diags) > 0 {
				t.Fatalf("%s and %s: %s\n%s", a, b, diags[0].Message, Quote(diags[0], []byte(src)))
			}
		}
		checkFormat(t, []byte(fmt.Sprintf(namesEverywhere, a, softWords[len(a)])))
	}
}
