// What each kind of mention leads to.

package interp_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"pullscore/interp"
	"pullscore/lang"
)

const mentioned = `plan "Mentions"
use "kit.pull"
subject NORA at 1.7 m
subject "MRS. DALE" at NORA + 20 cm
subject LAMP at 95 cm
voice OTTO
let late = 2 s
let BOTH = NORA and LAMP
let GUARD = NORA
move glance(who, word)
  cue seen on {WORD}
  who: "Look at the {word}, “please”, and \"listen\"."
  rack to who - 5 cm, on seen + late, over 1 s, because "{word}"
move nobody(who)
  rack to who, on LAMP, over 1 s
shot 12A "One"
  with camera A, lens "75", stop f/8, puller INES, operator INES
  subject LAMP at 1 m
  start on BOTH
  glance("MRS. DALE", "sea")
  OTTO: "Say \"yes\" or no to the kettle, Nora."
  rack to GUARD, landing on "kettle", over 1 s
  rack to LAMP, on OTTO "yes" , over 1 s
  action "sits down", lasting 2 s
  rack to NORA, on end of "sits down", over 1 s
  rack to LAMP ovr 1 s on NORA
  rack to NORA, on seen, over 1 s
  follow DORA
puller INES
  hand 5 bit/s
`

// standing writes a range with its text.
func standing(res *interp.Result, r lang.Range) string {
	return fmt.Sprintf("%d:%s", r.Start.Line, res.Sources[r.File][r.Start.Offset:r.End.Offset])
}

func TestMentions(t *testing.T) {
	res := interpret("plan.pull", strings.Replace(mentioned, " on {WORD}", "", 1))
	var got []string
	for _, m := range res.Names() {
		if m.Range.File != "plan.pull" {
			continue
		}
		line := fmt.Sprintf("%s %s", m.Kind, standing(res, m.Range))
		switch {
		case m.Declares:
		case m.Of.File != "plan.pull":
			line += " of the kit"
		default:
			line += " of " + standing(res, m.Of)
		}
		got = append(got, line)
	}
	want := strings.Split(strings.TrimSpace(`
subject 3:NORA
subject 4:"MRS. DALE"
subject 4:NORA of 3:NORA
subject 5:LAMP
voice 6:OTTO
let 7:late
group 8:BOTH
subject 8:NORA of 3:NORA
subject 8:LAMP of 5:LAMP
let 9:GUARD
subject 9:NORA of 3:NORA
move 10:glance
parameter 10:who
parameter 10:word
cue 11:seen
parameter 12:who of 10:who
parameter 12:word of 10:word
parameter 13:who of 10:who
cue 13:seen of 11:seen
let 13:late of 7:late
parameter 13:word of 10:word
move 14:nobody
parameter 14:who
parameter 15:who of 14:who
subject 15:LAMP of 5:LAMP
shot 16:12A
camera 17:A of the kit
lens 17:"75" of the kit
puller 17:INES of 29:INES
puller 17:INES of 29:INES
subject 18:LAMP
group 19:BOTH of 8:BOTH
move 20:glance of 10:glance
subject 20:"MRS. DALE" of 4:"MRS. DALE"
voice 21:OTTO of 6:OTTO
let 22:GUARD of 9:GUARD
word 22:"kettle" of 21:kettle
subject 23:LAMP of 18:LAMP
voice 23:OTTO of 6:OTTO
word 23:"yes" of 21:yes
subject 25:NORA of 3:NORA
word 25:"sits down" of 24:"sits down"
subject 26:LAMP of 18:LAMP
subject 26:NORA of 3:NORA
subject 27:NORA of 3:NORA
cue 27:seen of 11:seen
puller 29:INES
`), "\n")
	if !slices.Equal(got, want) {
		t.Errorf("got\n%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
}

// A subject that a shot places for itself is the one of the film for who renames it, a
// cue of one shot is none of the next.
func TestFamilies(t *testing.T) {
	res := interpret("plan.pull", scene("  cue go on 1 s\n  NORA: \"One.\", on go\n")+
		"shot 2\n  with stop f/4\n  subject NORA at 3 m\n  start on NORA\n  cue go on 2 s\n  rack to LAMP, on go, over 1 s\n")
	for _, c := range []struct {
		name string
		want string
	}{{"NORA", "5 11 13 17 18"}, {"go", "12 13"}, {"LAMP", "6 20"}} {
		all := res.Names()
		first := slices.IndexFunc(all, func(m interp.Mention) bool { return m.Name == c.name && m.Range.File == "plan.pull" })
		var lines []string
		for _, m := range interp.FamilyOf(all, all[first]) {
			lines = append(lines, fmt.Sprint(m.Range.Start.Line))
		}
		if got := strings.Join(lines, " "); got != c.want {
			t.Errorf("%s stands on lines %s, not %s", c.name, c.want, got)
		}
	}
}
