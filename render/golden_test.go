package render

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"pullscore/interp/plan"
)

// The goldens show in a review what a change does to a drawing. Set
// PULLSCORE_UPDATE=1 to write them anew, then look at them.
func TestGoldenScores(t *testing.T) {
	for name, s := range map[string]*plan.Shot{"three-racks": threeRacks(), "crowd": crowd(), "walk": walkAndDolly()} {
		for i, p := range Score(s, Options{}) {
			file := filepath.Join("..", "testdata", "golden", "score-"+name+suffix(i)+".svg")
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
