package pdf

import (
	"fmt"
	"regexp"
	"strconv"
	"testing"

	"pullscore/render/draw"
)

var (
	annotation = regexp.MustCompile(`/Subtype /Link /Rect \[([-0-9.]+) ([-0-9.]+) ([-0-9.]+) ([-0-9.]+)\] /Border \[0 0 0\] /Dest \[(\d+) 0 R /XYZ 0 ([-0-9.]+) null\]`)
	pageObject = regexp.MustCompile(`(?m)^(\d+) 0 obj\n<</Type /Page\n`)
)

// Links lead to pages before and after their own, whatever the sizes of the pages, and
// those without a target are left out.
func TestLinks(t *testing.T) {
	first := &draw.Page{Title: "One", W: 120, H: 60}
	first.Root.ID = "one"
	to := first.Root.Group("row")
	to.Link = "mark"
	to.Add(draw.Rect{Box: draw.Box{X: 10, Y: 20, W: 30, H: 5}, Fill: draw.Black})
	lost := first.Root.Group("row")
	lost.Link = "nowhere"
	lost.Add(draw.Rect{Box: draw.Box{X: 10, Y: 40, W: 30, H: 5}, Fill: draw.Black})
	second := &draw.Page{Title: "Two", W: 200, H: 100}
	mark := second.Root.Group("mark")
	mark.ID, mark.Link = "mark", "one"
	mark.Add(draw.Disc{Centre: draw.Point{X: 50, Y: 50}, Radius: 2, Fill: draw.Black})
	file := string(written(t, document{Pages: []*draw.Page{first, second}}))

	pages := pageObject.FindAllStringSubmatch(file, -1)
	found := annotation.FindAllStringSubmatch(file, -1)
	if len(pages) != 2 || len(found) != 2 {
		t.Fatalf("%d pages, %d links", len(pages), len(found))
	}
	const pt = 72 / 25.4
	for i, want := range []struct {
		area   draw.Box // from the foot of its page
		target string
		y      float64 // likewise
	}{
		{draw.Box{X: 9.5, Y: 60 - 19.5, W: 31, H: -6}, pages[1][1], 100 - (48 - targetAir)},
		{draw.Box{X: 47.5, Y: 100 - 47.5, W: 5, H: -5}, pages[0][1], 60},
	} {
		got := found[i]
		for k, v := range []float64{want.area.X, want.area.Y, want.area.X + want.area.W, want.area.Y + want.area.H, 0, want.y} {
			if k == 4 {
				continue
			}
			if w := fmt.Sprintf("%.2f", v*pt); got[k+1] != w && !near(got[k+1], v*pt) {
				t.Errorf("link %d: figure %d is %s, want %s", i, k, got[k+1], w)
			}
		}
		if got[5] != want.target {
			t.Errorf("link %d leads to object %s, want %s", i, got[5], want.target)
		}
	}
}

func near(s string, v float64) bool {
	got, err := strconv.ParseFloat(s, 64)
	return err == nil && got-v < 0.02 && v-got < 0.02
}
