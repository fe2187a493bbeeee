package render

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"pullscore/interp/plan"
	"pullscore/render/draw"
)

// The goldens show in a review what a change does to a drawing. Set
// PULLSCORE_UPDATE=1 to write them anew, then look at them.
func TestGoldenDrawings(t *testing.T) {
	for name, s := range map[string]*plan.Shot{"three-racks": threeRacks(), "crowd": crowd(), "walk": walkAndDolly()} {
		checkGolden(t, "score-"+name, Score(s, Options{}))
		checkGolden(t, "overhead-"+name, Overhead(s, Options{}))
		checkGolden(t, "strip-"+name, Strip(s, Options{}))
	}
	checkGolden(t, "overhead-near-far", Overhead(nearAndFar(), Options{}))
	for name, gear := range map[string]plan.Number{"once": 1, "spiral": 2.5} {
		s := threeRacks()
		s.WheelMM, s.Gear = 80, gear
		checkGolden(t, "dial-"+name, Dial(s, Options{}))
	}
}

// checkGolden compares pages with their files.
func checkGolden(t *testing.T, name string, pages []*draw.Page) {
	t.Helper()
	for i, p := range pages {
		file := filepath.Join("..", "testdata", "golden", name+suffix(i)+".svg")
		got := svgOf(t, p)
		if os.Getenv("PULLSCORE_UPDATE") == "1" {
			if err := os.MkdirAll(filepath.Dir(file), 0o755); err != nil {
				t.Fatal(err)
			}
			if err := os.WriteFile(file, []byte(got), 0o644); err != nil {
				t.Fatal(err)
			}
		}
		want, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		if line, ok := firstDifference(got, string(want)); ok {
			t.Errorf("%s differs from line %d on", file, line)
		}
	}
}

// suffix tells the pages after the first.
func suffix(i int) string {
	if i == 0 {
		return ""
	}
	return "-" + string(rune('1'+i))
}

func firstDifference(a, b string) (line int, differs bool) {
	if a == b {
		return 0, false
	}
	as, bs := strings.Split(a, "\n"), strings.Split(b, "\n")
	for i := range min(len(as), len(bs)) {
		if as[i] != bs[i] {
			return i + 1, true
		}
	}
	return min(len(as), len(bs)) + 1, true
}
