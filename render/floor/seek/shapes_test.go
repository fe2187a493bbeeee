package seek

import (
	"testing"

	"pullscore/render/draw"
)

// A segment is cut to the box, and one outside it is none.
func TestClipped(t *testing.T) {
	box := draw.Box{X: 0, Y: 0, W: 10, H: 10}
	for _, tc := range []struct {
		s, want Segment
		ok      bool
	}{
		{Segment{draw.Point{X: -5, Y: 5}, draw.Point{X: 15, Y: 5}}, Segment{draw.Point{X: 0, Y: 5}, draw.Point{X: 10, Y: 5}}, true},
		{Segment{draw.Point{X: 2, Y: 2}, draw.Point{X: 3, Y: 4}}, Segment{draw.Point{X: 2, Y: 2}, draw.Point{X: 3, Y: 4}}, true},
		{Segment{draw.Point{X: 5, Y: -5}, draw.Point{X: 15, Y: 5}}, Segment{}, false},
		{Segment{draw.Point{X: -1, Y: 0}, draw.Point{X: -1, Y: 9}}, Segment{}, false},
	} {
		got, ok := tc.s.Clipped(box)
		if ok != tc.ok || ok && got != tc.want {
			t.Errorf("%v: %v, want %v", tc.s, got, tc.want)
		}
	}
}

// A line keeps out of circles.
func TestOutside(t *testing.T) {
	s := Segment{draw.Point{}, draw.Point{X: 20}}
	got := s.Outside([]Circle{{draw.Point{X: 10}, 2}, {draw.Point{X: 19.5}, 1}, {draw.Point{X: 3, Y: 9}, 2}})
	want := []Segment{{draw.Point{}, draw.Point{X: 8}}, {draw.Point{X: 12}, draw.Point{X: 18.5}}}
	if len(got) != 2 || got[0] != want[0] || got[1] != want[1] {
		t.Errorf("%v, want %v", got, want)
	}
}
