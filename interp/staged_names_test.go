// Whom a name means in a staged shot, and under which scene a shot of another file stands.

package interp_test

import (
	"math"
	"testing"

	"pullscore/interp"
	"pullscore/interp/load"
	"pullscore/interp/plan"
)

const namesKit = `camera A
  sensor 24.89 x 18.66 mm
lens "50"
  focal 50 mm
  stops f/2 to f/22
  closest 50 cm
`

const namesScene = `scene "The yard"
  subject ANN at 3 m upstage
  subject BEN at 4 m upstage, 1 m right
  ANN: "Is it far?", lasting 1 s
`

const namesFile = `plan "Names"
rate 24
with camera A, lens "50", stop f/4
subject ANN at 9 m
subject VASE at 2.5 m
subject JAR at 1.5 m
` + namesKit + namesScene

// readOf interprets a plan with other files beside it.
func readOf(t *testing.T, files map[string]string) *plan.Plan {
	t.Helper()
	read := func(path string) ([]byte, error) { return []byte(files[path]), nil }
	res := interp.Interpret("p.pull", []byte(files["p.pull"]), load.Options{ReadFile: read})
	for _, d := range res.Findings {
		if d.Severity.String() == "error" {
			t.Fatalf("%s: %s", d.Code, d.Message)
		}
	}
	return res.Plan
}

// standsAt fails the test where the tape to somebody is another than wanted; a tape below
// 0 is that of somebody who is not there.
func standsAt(t *testing.T, s *plan.Shot, who string, want float64) {
	t.Helper()
	for _, u := range s.Subjects {
		if u.Name == who {
			if math.Abs(float64(u.Distance)-want) > 1e-6 {
				t.Errorf("%s: %s is %v m away, want %v", s.ID, who, u.Distance, want)
			}
			return
		}
	}
	if want >= 0 {
		t.Errorf("%s: %s is not there", s.ID, who)
	}
}

// gone is the distance of nobody, for standsAt.
const gone = -1

func TestNearestNameCounts(t *testing.T) {
	p := readOf(t, map[string]string{"p.pull": namesFile + `shot 1 "the scene's before the film's"
  covers all
  camera at 0 m right, 1.6 m high, aims at ANN
  start on ANN
  rack to VASE, on "far", because "it rings"
shot 2 "the shot's before the scene's"
  covers all
  subject ANN at 2.5 m upstage, 0 m right
  camera at 0 m right, 1.6 m high, aims at ANN
  start on ANN
shot 3 "none of the scene"
  start on ANN
`})
	standsAt(t, p.Shots[0], "ANN", 3)
	standsAt(t, p.Shots[0], "VASE", 2.5) // of the film, as the shot names it
	standsAt(t, p.Shots[0], "JAR", gone) // of the film, and not named
	standsAt(t, p.Shots[1], "ANN", 2.5)
	standsAt(t, p.Shots[2], "ANN", 9)
	if p.Shots[2].Staging != nil {
		t.Error("a shot that says nothing of a scene has one")
	}
}

func TestSceneOfAnotherFile(t *testing.T) {
	shots := `plan "Names"
rate 24
use "scene.pull"
with camera A, lens "50", stop f/4
shot 1
  covers all
  camera at 0 m right, 1.6 m high, aims at BEN
  start on BEN
`
	p := readOf(t, map[string]string{"p.pull": shots, "scene.pull": namesKit + namesScene})
	standsAt(t, p.Shots[0], "BEN", math.Hypot(4, 1))
	if len(p.Scenes) != 1 || len(p.Shots[0].Lines) != 1 {
		t.Errorf("%d scenes, %d lines; want one of each", len(p.Scenes), len(p.Shots[0].Lines))
	}
}
