package gutter

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"pullscore/render/draw"
	"pullscore/render/signs"
)

// However many stand however near, each has its leader, none is too long, and every name
// is told, if need be in the full text of one that several share.
func TestEveryPlaceHasItsLeader(t *testing.T) {
	for n := 1; n <= 40; n++ {
		for _, apart := range []float64{0, 0.3, 1.5, 4} {
			var labels []Label
			for i := range n {
				labels = append(labels, Label{Name: fmt.Sprintf("WHO%d", i), First: "1.2 m", Y: 62 + min(apart*float64(i), 30)})
			}
			g := &draw.Group{}
			Draw(g, 46, labels, 60, 100)
			told, leaders := "", 0
			for it := range g.All() {
				switch it := it.(type) {
				case draw.Text:
					told += it.String + ", " + it.Full + ", "
				case *draw.Group:
					l := it.Items[0].(draw.Line)
					leaders++
					if long := math.Hypot(l.To.X-l.From.X, l.To.Y-l.From.Y); it.Name != signs.Leader || long > leaderMost {
						t.Errorf("%d names %v mm apart: a leader is %.1f mm long", n, apart, long)
					}
				}
			}
			if leaders != n {
				t.Errorf("%d names %v mm apart have %d leaders", n, apart, leaders)
			}
			for _, l := range labels {
				if !strings.Contains(told, l.Name+",") && !strings.Contains(told, l.Name+" ") {
					t.Errorf("%d names %v mm apart: %s is not told", n, apart, l.Name)
				}
			}
		}
	}
}

// A gutter that has no room for both figures writes the first alone, whole.
func TestANarrowGutterWritesOneFigure(t *testing.T) {
	label := Label{Name: "OTTO", First: "2.9 m", Second: "9′6″", Y: 50}
	for left, want := range map[float64]string{46: "2.9 m · 9′6″", 26: "2.9 m"} {
		g := &draw.Group{}
		Draw(g, left, []Label{label}, 40, 60)
		var written []string
		for it := range g.All() {
			if text, is := it.(draw.Text); is {
				written = append(written, text.String)
			}
		}
		if !slices.Contains(written, want) {
			t.Errorf("in %v mm stand %q, want %q", left, written, want)
		}
	}
}
