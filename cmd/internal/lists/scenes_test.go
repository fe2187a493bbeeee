package lists

import (
	"bytes"
	"strings"
	"testing"

	"pullscore/cmd/internal/console"
	"pullscore/interp/plan"
	"pullscore/render/testing/plans"
)

// listed returns the list of a plan on a screen of that width.
func listed(t *testing.T, p *plan.Plan, width int) string {
	t.Helper()
	var out bytes.Buffer
	if err := WriteText(console.Screen{W: &out, Width: width}, p); err != nil {
		t.Fatal(err)
	}
	return out.String()
}

// A list tells the scenes of a plan before its shots, and of a staged shot what it has of
// its scene and how its camera sees everyone.
func TestTextTellsScenes(t *testing.T) {
	p := plans.Scene()
	sc, a, b := p.Scenes[0], p.Shots[0], p.Shots[1]
	sc.Axes[0].Said = true
	sc.Cuts[0].Because = "he has turned"
	b.Matches = "18A"
	b.Views = []plan.SightLine{{A: "PEVIN", B: "YSOLT", EyeLine: -20.46, Side: -1.412}, {A: "YSOLT", B: "PEVIN", EyeLine: 150, Side: 1.412}, {A: "PEVIN", B: "INES", EyeLine: 5, Side: 0.1}}
	b.Subject("PEVIN").Measured = 5.1
	a.Subject("PEVIN").Blocked = []plan.Interval{{2, 3}}
	text := listed(t, p, 100)
	rest := text
	for _, want := range []string{
		"Scene The office\n", "  lasts 10 s, the zero point of its floor is the left front corner of the desk\n", "  2 set-ups: 18A, 18B\n",
		"  marks\n    DOOR: 1.6 m right, 4.2 m upstage\n    CHAIR: 70 cm right, 90 cm upstage\n",
		"  on the floor\n    PEVIN: 1.6 m right, 4.2 m upstage, eyes 1.7 m · at DOOR\n      1 s to 5 s: to 70 cm right, 90 cm upstage · on 1 s\n    LETTER: 20 cm right, 15 cm upstage, 78 cm high\n",
		"  lines of action\n    PEVIN to YSOLT, 5.5 s to 7.5 s, as the plan says\n", "  cuts\n    to 18B at 5.5 s · he has turned\n",
		"18A  In at the door\n", "  scene The office, covers 0 s to 10 s of it\n  camera at 60 cm left, 1.6 m downstage, 1.4 m high; pan 20.8° right, tilt 2.8° up\n",
		"      pan with PEVIN, 6.7° right, 4 s, peak 11°/s", "      camera moves 82 cm, 2 s, to 8 cm right, 1.22 m downstage, 1.65 m high · starts at 7 s\n",
		"    PEVIN: tape 6.21 m, focus 6.21 m, off axis 0°, in the picture 0 s to 5.83 s; behind somebody 2\n      s to 3 s\n",
		"18B", "of it, runs with 18A, matches 18A\n", "  PEVIN to YSOLT: looks 20.5° camera left, back 150° camera right; the camera 1.41 m left of their\n    line\n  PEVIN to INES: looks 5° camera right; the camera on their line\n", "    PEVIN: tape 5.1 m as measured, focus",
		"18C  The boat\n",
	} {
		_, after, ok := strings.Cut(rest, want)
		if !ok {
			t.Fatalf("%q is missing or not in order in\n%s", want, text)
		}
		rest = after
	}
	if strings.Contains(rest, "camera at") || strings.Contains(rest, "scene") {
		t.Errorf("a shot without a scene tells of one:\n%s", rest)
	}
	for _, width := range []int{40, 60} {
		for line := range strings.Lines(listed(t, p, width)) {
			if n := console.Columns(strings.TrimSuffix(line, "\n")); n > width && !strings.Contains(line, "ring from") && strings.Count(line, "  ") < 4 {
				t.Errorf("%d columns of %d: %s", n, width, line)
			}
		}
	}
}

// A height that nobody says is told as such, and people go to heights of their own.
func TestTextTellsHeights(t *testing.T) {
	p := plans.Scene()
	p.Scenes[0].Subjects[1].Unknown = true
	p.Scenes[0].Title = ""
	p.Scenes[0].Subjects[0].Legs[0].To.High = 1.2
	text := listed(t, p, 90)
	for _, want := range []string{"\nA scene without a title\n", "to 70 cm right, 90 cm upstage, eyes then 1.2 m high · on", "    LETTER: 20 cm right, 15 cm upstage, level with each lens"} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is missing in\n%s", want, text)
		}
	}
}

// Of a plan with one shot alone, its scene is left, and the shot still knows it.
func TestOnlyKeepsTheScene(t *testing.T) {
	p := plans.Scene()
	p.Scenes = append([]*plan.Scene{{Title: "Another"}}, p.Scenes...)
	for _, s := range p.Shots[:2] {
		s.Of = 1
	}
	only, ok := Only(p, "18B")
	if !ok || len(only.Scenes) != 1 || only.Scenes[only.Shots[0].Of].Title != "The office" || p.Shots[1].Of != 1 {
		t.Errorf("scenes %v", only.Scenes)
	}
	if only, _ := Only(p, "18C"); len(only.Scenes) != 0 {
		t.Errorf("a shot of no scene has %d", len(only.Scenes))
	}
}
