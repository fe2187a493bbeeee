package covered_test

import (
	"slices"
	"strings"
	"testing"

	"pullscore/interp/checks/covered"
	"pullscore/interp/plan"
	"pullscore/interp/testing/staged"
	"pullscore/lang"
)

var header = lang.Range{File: "made.pull", Start: lang.Pos{Line: 1, Column: 1}, End: lang.Pos{Offset: 5, Line: 1, Column: 6}}

// told returns what is told of the first scene of a plan.
func told(t *testing.T, st *staged.Stage) []lang.Diagnostic {
	t.Helper()
	found := covered.Of(st.Plan, 0, header, func(int, string) []lang.Edit { return nil })
	for _, d := range found {
		if d.Range != header || d.Scene != st.Scene.Title || d.Shot != "" {
			t.Errorf("%s stands at %+v, scene %q, shot %q", d.Message, d.Range, d.Scene, d.Shot)
		}
	}
	return found
}

// says returns findings as texts.
func says(found []lang.Diagnostic) (list []string) {
	for _, d := range found {
		text := d.Severity.String() + " " + d.Code + ": " + d.Message
		for _, c := range d.Cures {
			text += " [" + c.Text + "]"
		}
		list = append(list, text)
	}
	return list
}

func check(t *testing.T, st *staged.Stage, want ...string) {
	t.Helper()
	if got := says(told(t, st)); !slices.Equal(got, want) {
		t.Errorf("told\n%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
}

// The two-hander is held everywhere. Without the single of OSKEL it is not.
func TestNotHeld(t *testing.T) {
	st := staged.TwoHander()
	check(t, st)
	single := st.Shots[2]
	st.Shots = st.Shots[:2]
	check(t, st, "warning not-held: no set-up holds OSKEL on “I did. Until”: 12A racks (4.2 arcmin), 12B out of frame")
	st.Shots = st.Shots[:1] // with one set-up nobody can choose
	check(t, st)
	// Nor where nobody has to be seen.
	st.Shots = append(st.Shots, single)
	single.Subjects = nil
	single.Optics.Start = plan.Target{}
	for i := range st.Scene.Lines {
		st.Scene.Lines[i].Off = st.Scene.Lines[i].Who == "OSKEL"
	}
	check(t, st)
	st.Scene.Lines[3].Off = false
	check(t, st, "warning not-held: no set-up holds OSKEL on “I did. Until”: 12A racks (4.2 arcmin), 12C does not have the speaker")
}

func TestNotCovered(t *testing.T) {
	st := staged.TwoHander()
	for _, s := range st.Shots {
		s.Covers[1] = 8
	}
	check(t, st, "note not-covered: no set-up covers OSKEL “the letter came.”")
	st.Scene.Lines[3].Off = true
	check(t, st)
}

// A voice, whom no set-up can show, asks for nothing.
func TestVoices(t *testing.T) {
	st := staged.TwoHander()
	st.Line("PURSER", "All aboard.", 9.8, 10.4)
	check(t, st)
	for _, s := range st.Shots {
		s.Covers[1] = 9.7
	}
	check(t, st)
}

func TestNotOnScreen(t *testing.T) {
	st := staged.TwoHander()
	st.Cut("12B", 0)
	cut := st.Cut("12C", 3.7)
	check(t, st,
		"note not-on-screen: on “One” the cut is on 12B, and OSKEL, who speaks, is sharp in 12A and 12C [cut to 12C, on 3 s]",
		"note not-on-screen: on “You live on this side.” the cut is on 12C, and MARRIT, who speaks, is sharp in 12A and 12B")
	cut.FromEdit = true // it cannot be written
	if found := told(t, st); len(found) != 2 || len(found[0].Cures) > 0 {
		t.Errorf("told %v", says(found))
	}
	st.Scene.Cuts = nil
	check(t, st)
}

// MARRIT is sharp in the master, and the next set-up has her in its picture with the focus
// far behind her.
func TestFocusJumps(t *testing.T) {
	st := staged.TwoHander()
	next := st.Shots[1]
	next.Optics.Start.Distance = 6
	staged.Rack(next, "MARRIT", 1, 2.2)
	st.Cut("12A", 0)
	cut := st.Cut("12B", 1.5)
	check(t, st, "warning focus-jumps: at the cut from 12A to 12B, MARRIT goes from sharp to 41 arcmin soft [cut to 12B, on 1.833 s]",
		"note not-on-screen: on “One way.” the cut is on 12B, and OSKEL, who speaks, is sharp in 12A and 12C",
		"note not-on-screen: on “I did. Until the letter came.” the cut is on 12B, and OSKEL, who speaks, is sharp in 12C")
	cut.Because = "she is not there yet"
	check(t, st, "note not-on-screen: on “One way.” the cut is on 12B, and OSKEL, who speaks, is sharp in 12A and 12C",
		"note not-on-screen: on “I did. Until the letter came.” the cut is on 12B, and OSKEL, who speaks, is sharp in 12C")
}

// A set-up in whose picture nobody is sharp when it comes.
func TestNobodySharp(t *testing.T) {
	st := staged.TwoHander()
	next := st.Shots[1]
	next.Optics.Start.Distance = 6
	staged.Rack(next, "MARRIT", 5.4, 6.6)
	st.Cut("12C", 0)
	st.Cut("12B", 5.4)
	found := told(t, st)
	if !slices.ContainsFunc(says(found), func(s string) bool {
		return strings.HasPrefix(s, "warning focus-jumps: nobody in the picture is sharp for the first 0.3 s of 12B")
	}) {
		t.Errorf("told %v", says(found))
	}
	// Nothing is told where somebody becomes sharp within that time, and at a cut to a
	// set-up that is not known.
	next.Pulls[0].Start, next.Pulls[0].Land = 4.4, 5.6
	st.Cut("12X", 8)
	for _, text := range says(told(t, st)) {
		if strings.Contains(text, "focus-jumps") {
			t.Errorf("told %s", text)
		}
	}
}

// Findings of one code and cure have one letter.
func TestFlags(t *testing.T) {
	st := staged.TwoHander()
	st.Shots = st.Shots[1:2]
	st.SetUp("12D", 75, st.Shots[0].Home, 0, 10.6)
	found := told(t, st)
	flags := covered.Flags(found)
	if len(flags) != 2 || flags[0].Cause != "a" || flags[1].Cause != "a" || found[1].Cause != "a" || flags[0].Time != 3 || flags[0].Code != "not-held" {
		t.Errorf("flags %+v", flags)
	}
}
