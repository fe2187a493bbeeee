// Words of the language that are names too: a plan that uses them so has no findings,
// and the figures that it has with any other names.

package interp_test

import (
	"strings"
	"testing"

	"pullscore/interp"
	"pullscore/lang"
)

// namedPlan is a sound plan in which a letter behind $ stands for a name.
const namedPlan = `plan "Names"
rate 24
pace 150 wpm
watched on 11 m screen from 16 m
sharp to 2 arcmin
land 85 %
quickest 0.4 s
let $L = 1.5 s
let $G = $S and $T

subject $S at 1.8 m, 10 cm left, deep 8 cm, sways 1 cm
subject $T at $S + 1.6 m
voice $V

camera $A
  sensor 24.89 x 18.66 mm
  records 3840 px
  on tripod
  shutter 180 deg

lens $A
  focal 40 mm
  stops T1.9 to T22
  closest 40 cm
  ring 300 deg, diameter 110 mm
  turns left
  mark 40 cm at 0 deg
  mark 60 cm at 104 deg
  mark 1 m at 190 deg
  mark 2.5 m at 258 deg
  mark 6 m at 284 deg
  mark inf at 300 deg
  breathing 2 %

puller $A
  hand 5 bit/s
  spread 0.5 mm

move $M($P)
  rack to $P, over $L, because "it is so"

shot 1 "One"
  with camera $A, lens $A, stop T2.8, puller $A
  lasts 20 s
  start on $S
  $S: "Where is the letter that came this morning?", lasting 3 s
  $V: "It lies there.", lasting 1.5 s
  cue $C on $S "morning"
  rack to $T, on $S "letter", over $L, because "it is so"
  pause 2 * $L
  $M($S)
  $T moves to $S + 1.5 m over $L, on 18 s
`

// named returns the plan with the names of a list in the places of its letters.
func named(names []string) *interp.Result {
	var pairs []string
	for i, letter := range strings.Split("LGSTVAMPC", "") {
		pairs = append(pairs, "$"+letter, names[i%len(names)])
	}
	return interpret("names.pull", strings.NewReplacer(pairs...).Replace(namedPlan))
}

// Each of the soft words stands in each of the places once.
func TestSoftWordsAreNames(t *testing.T) {
	words := lang.SoftWords()
	plain := named(strings.Split("LONG GROUP NORA TILL WREN AXE MOVE PAR CUE", " "))
	for i := range words {
		turned := append(words[i:len(words):len(words)], words[:i]...)
		res := named(turned)
		for _, d := range res.Findings {
			t.Errorf("%s: line %d: %s", strings.Join(turned[:9], " "), d.Range.Start.Line, d.Message)
		}
		if len(res.Plan.Shots) != 1 || len(res.Plan.Shots[0].Pulls) != 2 {
			t.Fatalf("%s: no shot with two pulls", strings.Join(turned[:9], " "))
		}
		for k, pull := range res.Plan.Shots[0].Pulls {
			want := plain.Plan.Shots[0].Pulls[k]
			if pull.Start != want.Start || pull.Land != want.Land || pull.HandDeg != want.HandDeg || pull.Chance != want.Chance || pull.Target == want.Target {
				t.Errorf("%s: pull %d is %+v, want %+v", strings.Join(turned[:9], " "), k+1, pull, want)
			}
		}
	}
}
