package drawtest

import (
	"math"
	"strings"
	"testing"

	"pullscore/render/draw"
)

func TestFaults(t *testing.T) {
	body := draw.Font{Size: 8}
	ink := draw.Stroke{Ink: draw.Black, Width: 0.1}
	for _, tc := range []struct {
		name  string
		items []draw.Item
		want  string // part of the one fault; empty for none
	}{
		{"texts apart", []draw.Item{draw.NewText(5, 10, "above", body, draw.Black), draw.NewText(5, 13.4, "below", body, draw.Black)}, ""},
		{"texts that overlap", []draw.Item{draw.NewText(5, 10, "above", body, draw.Black), draw.NewText(6, 11, "below", body, draw.Black)}, "overlap"},
		{"small type", []draw.Item{draw.NewText(5, 10, "x", draw.Font{Size: 6.9}, draw.Black)}, "6.9 points"},
		{"text over the edge", []draw.Item{draw.NewText(45, 10, "over the edge", body, draw.Black)}, "leaves"},
		{"box over the edge", []draw.Item{draw.Rect{Box: draw.Box{X: 45, W: 6, H: 1}}}, "leaves"},
		{"disc over the edge", []draw.Item{draw.Disc{Centre: draw.Point{X: 1, Y: 10}, Radius: 2}}, "leaves"},
		{"line over the edge", []draw.Item{draw.Line{To: draw.Point{X: 5, Y: 31}, Stroke: ink}}, "leaves"},
		{"path over the edge", []draw.Item{draw.Path{Runs: [][]draw.Point{{{X: 1, Y: 1}, {X: 3, Y: -1}}}, Stroke: ink}}, "leaves"},
		{"path to nowhere", []draw.Item{draw.Path{Runs: [][]draw.Point{{{X: math.NaN(), Y: 1}}}, Stroke: ink}}, "leaves"},
	} {
		p := &draw.Page{W: 50, H: 30}
		p.Root.Group("within").Add(tc.items...)
		faults := Faults(p)
		switch {
		case tc.want == "" && len(faults) > 0:
			t.Errorf("%s: %v", tc.name, faults)
		case tc.want != "" && (len(faults) != 1 || !strings.Contains(faults[0], tc.want)):
			t.Errorf("%s: %v, want one that says %q", tc.name, faults, tc.want)
		}
	}
}
