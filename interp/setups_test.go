package interp_test

import (
	"os"
	"slices"
	"strings"
	"testing"

	"pullscore/lang"
)

// ofSetups are the codes that are told between set-ups.
var ofSetups = []string{"crosses-line", "does-not-match", "sees-camera", "two-pulls"}

func setupsPlan(t *testing.T) string {
	t.Helper()
	src, err := os.ReadFile("testdata/findings/setups.pull")
	if err != nil {
		t.Fatal(err)
	}
	return string(src)
}

// What is told between set-ups is flagged on the drawings of the one in which it stands, and
// has its letter there.
func TestSetupsAreFlagged(t *testing.T) {
	res := interpret("plan.pull", setupsPlan(t))
	told := map[string]bool{}
	for _, d := range res.Findings {
		if !slices.Contains(ofSetups, d.Code) {
			continue
		}
		told[d.Code] = true
		flagged := false
		for _, s := range res.Plan.Shots {
			for _, f := range s.Flags {
				flagged = flagged || s.ID == d.Shot && f.Code == d.Code && f.Text == d.Message && f.Cause == d.Cause && len(f.CureTexts) == len(d.Cures)
			}
		}
		if d.Scene != "The ticket window" || d.Cause == "" || !flagged {
			t.Errorf("%s has no flag: %+v", d.Code, d)
		}
	}
	if len(told) != len(ofSetups) {
		t.Errorf("only %v is told", told)
	}
}

// A floor that is turned half round has the same findings, and one that is mirrored has
// them with left and right swapped.
func TestTurnedAndMirroredScenes(t *testing.T) {
	told := func(src string) (list []string) {
		for _, d := range interpret("plan.pull", src).Findings {
			list = append(list, d.Severity.String()+" "+d.Code+" "+d.Message+curesText(d))
		}
		slices.Sort(list)
		return list
	}
	swapped := strings.NewReplacer("left", "right", "right", "left")
	round := strings.NewReplacer("left", "right", "right", "left", "upstage", "downstage", "downstage", "upstage")
	plan := setupsPlan(t)
	is := told(plan)
	if len(is) < 8 {
		t.Fatalf("little is told: %q", is)
	}
	mirrored := told(swapped.Replace(plan))
	for i := range mirrored {
		mirrored[i] = swapped.Replace(mirrored[i])
	}
	if slices.Sort(mirrored); !slices.Equal(mirrored, is) {
		t.Errorf("mirrored\n\t%s\nnot\n\t%s", strings.Join(mirrored, "\n\t"), strings.Join(is, "\n\t"))
	}
	// A track is to the camera's own left, whichever way the floor lies.
	turned := told(strings.ReplaceAll(round.Replace(plan), "track right", "track left"))
	for i := range turned {
		if at := strings.Index(turned[i], " ["); at >= 0 { // a cure is a place on the floor
			turned[i] = turned[i][:at] + round.Replace(turned[i][at:])
		}
	}
	if slices.Sort(turned); !slices.Equal(turned, is) {
		t.Errorf("turned\n\t%s\nnot\n\t%s", strings.Join(turned, "\n\t"), strings.Join(is, "\n\t"))
	}
}

func curesText(d lang.Diagnostic) (s string) {
	for _, c := range d.Cures {
		s += " [" + c.Text + "]"
	}
	return s
}
