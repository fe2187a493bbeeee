// A camera that turns: a scene in a mirror, and a turn that turns nothing.

package interp_test

import (
	"encoding/json"
	"fmt"
	"math"
	"regexp"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"
	"pullscore/interp"
	"pullscore/interp/plan"
)

// genTurning draws a shot whose camera turns and goes while people walk and the focus
// racks, one thing after the other or two at once.
func genTurning(t *rapid.T) string {
	var s strings.Builder
	line := func(format string, args ...any) { fmt.Fprintf(&s, format+"\n", args...) }
	between := func(lo, hi int, name string) int { return rapid.IntRange(lo, hi).Draw(t, name) }
	oneOf := func(name string, list ...string) string { return rapid.SampledFrom(list).Draw(t, name) }
	people := []string{"ANNA", "BRAM", "CLEO"}
	line("plan \"Generated\"\nrate 24\nwatched on 12 m screen from 18 m\nuse \"kit.pull\"")
	for _, who := range people {
		line("subject %s at %d cm, %d cm %s, deep 6 cm", who, between(200, 600, "distance"), between(5, 150, "side"), oneOf("way", "left", "right"))
	}
	line("shot 1\n  with stop f/4\n  start on %s", oneOf("first", people...))
	for i := range between(1, 6, "statements") {
		at := fmt.Sprintf("on %d s", 3*i+1)
		over := fmt.Sprintf("over %d.%d s, %s", between(1, 2, "s"), between(0, 9, "ds"), at)
		who := oneOf("who", people...)
		switch between(0, 10, "kind") {
		case 0:
			line("  pan %s %d deg %s", oneOf("way", "left", "right"), between(1, 40, "deg"), over)
		case 1:
			line("  pan to %s %s", who, over)
		case 2:
			line("  pan with %s until %d s, %s", who, 3*i+3, at)
		case 3:
			line("  pan to %s %s\n  rack to %s, with pan", who, over, who)
		case 4:
			line("  tilt %s %d deg %s", oneOf("way", "up", "down"), between(1, 20, "deg"), over)
		case 5:
			line("  pan and tilt to %s %s", who, over)
		case 6:
			line("  boom %s %d cm %s", oneOf("way", "up", "down"), between(1, 60, "cm"), over)
		case 7:
			line("  track %s %d cm %s", oneOf("way", "left", "right"), between(1, 60, "cm"), over)
		case 8:
			line("  push in %d cm %s", between(1, 30, "cm"), over)
		case 9:
			line("  %s moves to %d cm, %d cm %s %s", who, between(200, 600, "cm"), between(5, 150, "side"), oneOf("way", "left", "right"), over)
		case 10:
			line("  rack to %s %s", who, over)
		}
	}
	line("  lasts 24 s")
	return s.String()
}

var sides = regexp.MustCompile(`\b(left|right)\b`)

// mirrored is a plan in which left and right have changed places.
func mirrored(text string) string {
	return sides.ReplaceAllStringFunc(text, func(way string) string {
		return map[string]string{"left": "right", "right": "left"}[way]
	})
}

// codesFound are the findings by their names, in order of these.
func codesFound(res *interp.Result) (list []string) {
	for _, d := range res.Findings {
		list = append(list, fmt.Sprintf("%s %d", d.Code, d.Pull))
	}
	slices.Sort(list)
	return list
}

func TestMirroredPlanSwapsSides(t *testing.T) {
	compared := 0
	rapid.Check(t, func(t *rapid.T) {
		text := genTurning(t)
		a, b := interpret("plan.pull", text), interpret("plan.pull", mirrored(text))
		if got, want := codesFound(b), codesFound(a); !slices.Equal(got, want) {
			t.Fatalf("findings in a mirror\n%q, not\n%q\n%s", got, want, text)
		}
		if countErrors(a.Findings) > 0 {
			return
		}
		compared++
		s, m := a.Plan.Shots[0], b.Plan.Shots[0]
		if len(s.Pulls) != len(m.Pulls) {
			t.Fatalf("%d pulls, in a mirror %d\n%s", len(s.Pulls), len(m.Pulls), text)
		}
		for i, p := range s.Pulls {
			q := m.Pulls[i]
			for _, pair := range [][2]plan.Number{{p.Start, q.Start}, {p.Land, q.Land}, {p.FromM, q.FromM}, {p.ToM, q.ToM}, {p.Chance, q.Chance}} {
				if !(math.Abs(float64(pair[0]-pair[1])) <= 1e-9) && pair[0].Known() {
					t.Fatalf("pull %d: %v, in a mirror %v\n%s", p.Number, p, q, text)
				}
			}
		}
		for i, u := range s.Subjects {
			w := m.Subjects[i]
			for f := range 24 * 24 {
				at := float64(f) / 24
				x, y := s.ViewOf(u, at), m.ViewOf(w, at)
				if math.Abs(x.Along-y.Along)+math.Abs(x.Across+y.Across)+math.Abs(x.Above-y.Above) > 1e-9 {
					t.Fatalf("%s at %.3f s: %+v, in a mirror %+v\n%s", u.Name, at, x, y, text)
				}
			}
		}
	})
	if compared < 20 {
		t.Errorf("only %d plans without errors", compared)
	}
}

// plainFigures are the numbers of a shot as JSON has them, by their path, without those
// that say where the camera is.
func plainFigures(t *testing.T, s *plan.Shot) map[string]float64 {
	t.Helper()
	text, err := json.Marshal(s)
	if err != nil {
		t.Fatal(err)
	}
	var tree map[string]any
	if err := json.Unmarshal(text, &tree); err != nil {
		t.Fatal(err)
	}
	for _, key := range []string{"turns", "camera_path", "operator", "blocking", "line"} {
		delete(tree, key)
	}
	figures := map[string]float64{}
	var walk func(path string, v any)
	walk = func(path string, v any) {
		switch v := v.(type) {
		case map[string]any:
			for key, v := range v {
				walk(path+"."+key, v)
			}
		case []any:
			for i, v := range v {
				walk(fmt.Sprintf("%s.%d", path, i), v)
			}
		case float64:
			figures[path] = v
		}
	}
	walk("", tree)
	return figures
}

// Turns that turn nothing leave every figure of today's form as it is: a pan to somebody
// who stands in the middle, a tilt to somebody level with the lens.
func TestTurnOfNothingIsTodaysForm(t *testing.T) {
	const body = `NORA moves to 2.3 m over 3 s, on 1 s
follow NORA until 4 s
push in 20 cm over 2 s, on 2 s
rack to LAMP, on 5 s, over 1.2 s
rack to GATE, on 8 s, over 1.5 s
lasts 14 s`
	want := plainFigures(t, theShot(t, body))
	for _, turn := range []string{
		"pan to NORA over 1 s, on 6 s", "tilt to GATE over 1 s, on 3 s", "pan with NORA until 9 s, on 1 s",
		"tilt with LAMP until 9 s, on 1 s", "pan and tilt to NORA over 2 s, on 4 s",
	} {
		got := plainFigures(t, theShot(t, body+"\n"+turn))
		for path, v := range want {
			if w, ok := got[path]; !ok || !(math.Abs(v-w) <= 1e-9) {
				if strings.Contains(path, ".path.") || strings.HasSuffix(path, ".column") {
					continue // a path has a point more where a turn starts
				}
				t.Errorf("%s: %s is %.12g, without it %.12g", turn, path, w, v)
			}
		}
	}
}
