package floor

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"pullscore/interp/plan"
	"pullscore/render/draw"
	"pullscore/render/sheet"
	"pullscore/render/testing/plans"
)

// What a camera sees somewhere lies on the page where it is on the floor, however the
// camera turns, tilts, booms and goes: spot undoes plan.Pose.View.
func TestTurnedViewsAreOnTheFloor(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := plans.New("1", "", 8).Put("ADA", 3, 0).Start("ADA").
			Pan("", rapid.Float64Range(-170, 170).Draw(t, "pan"), 0, 1).Tilt(rapid.Float64Range(-60, 60).Draw(t, "tilt"), 1, 2)
		for i, kind := range []string{"track", "dolly", "boom"} {
			m.Slide(kind, rapid.Float64Range(-2, 2).Draw(t, kind), 2+float64(i), 3+float64(i))
		}
		f := newOverhead(m.Shot, sheet.A4).floors()[0]
		v := sightAt(m.Shot, 8)
		x, y := rapid.Float64Range(-5, 5).Draw(t, "x"), rapid.Float64Range(-5, 5).Draw(t, "y")
		seen := v.pose.View(x, y, 0)
		if seen.Along < 0.5 {
			t.Skip("behind the camera")
		}
		along := v.pose.Y + seen.Along
		got := f.spot(v, along, seen.Across/((along-v.x)*v.perSide))
		if want := f.at(y, x); math.Hypot(got.X-want.X, got.Y-want.Y) > 1e-6 {
			t.Errorf("it is drawn at %v, and lies at %v", got, want)
		}
	})
}

// The camera ends where its pose is, and a pan alone leaves it where it was.
func TestLensIsWhereTheCameraIs(t *testing.T) {
	s := plans.PanAndRack()
	f := newOverhead(s, sheet.A4).floors()[0]
	views := sights(s)
	if len(views) != 3 {
		t.Fatalf("%d views, want those of the start and of two pans", len(views))
	}
	sensor := f.at(0, 0)
	for _, v := range views {
		p := f.apex(v)
		if d := math.Hypot(p.X-sensor.X, p.Y-sensor.Y) * f.scale / 1000; math.Abs(d-(v.x-v.pose.Y)) > 1e-9 {
			t.Errorf("the lens is %g m from the sensor mark, want %g", d, v.x-v.pose.Y)
		}
	}
	s = plans.AllWays()
	f = newOverhead(s, sheet.A4).floors()[0]
	v := sightAt(s, 14)
	p, want := f.apex(v), s.Optics.Pose(14)
	sin, cos := math.Sincos(want.Pan * math.Pi / 180)
	behind := v.x - want.Y
	if at := f.at(want.Y+behind*cos, want.X+behind*sin); at != p {
		t.Errorf("the lens is at %v, want %v", p, at)
	}
}

// A line is cut to the box, and one outside it is none.
func TestClipped(t *testing.T) {
	box := draw.Box{X: 0, Y: 0, W: 10, H: 10}
	for _, tc := range []struct {
		a, b draw.Point
		want []draw.Point
	}{
		{draw.Point{X: -5, Y: 5}, draw.Point{X: 15, Y: 5}, []draw.Point{{X: 0, Y: 5}, {X: 10, Y: 5}}},
		{draw.Point{X: 2, Y: 2}, draw.Point{X: 3, Y: 4}, []draw.Point{{X: 2, Y: 2}, {X: 3, Y: 4}}},
		{draw.Point{X: 5, Y: -5}, draw.Point{X: 15, Y: 5}, nil},
		{draw.Point{X: -1, Y: 0}, draw.Point{X: -1, Y: 9}, nil},
	} {
		run, ok := clipped(tc.a, tc.b, box)
		if ok != (tc.want != nil) || ok && (run[0] != tc.want[0] || run[1] != tc.want[1]) {
			t.Errorf("%v to %v: %v, want %v", tc.a, tc.b, run, tc.want)
		}
	}
}

// The overhead says in words what each move of the camera is, and warns of those that
// take it elsewhere alone.
func TestRigIsTold(t *testing.T) {
	text := plans.TextOf(Overhead(plans.AllWays(), sheet.Options{}))
	for _, want := range []string{"right, 0.5 s to 3.5 s", "left, 7 s to 9 s", "tilt 6° down", "boom 45 cm down", "track 60 cm right", "dolly 40 cm in", "way of the camera", "where a pan ends", "Moving camera"} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is not told in %q", want, text)
		}
	}
	text = plans.TextOf(Overhead(plans.PanAndRack(), sheet.Options{}))
	for _, no := range []string{"Moving camera", "way of the camera", "People move"} {
		if strings.Contains(text, no) {
			t.Errorf("a camera that only pans has %q", no)
		}
	}
}

// Of many pans as many ends are drawn as can be told apart.
func TestManyPansHaveFewViews(t *testing.T) {
	m := plans.New("1", "", 60).Put("ADA", 3, 0).Start("ADA")
	for i := range 20 {
		m.Pan("", 3*float64(i+1), 3*float64(i), 3*float64(i)+2)
	}
	if views := sights(m.Shot); len(views) != mostViews {
		t.Errorf("%d views", len(views))
	}
	if plain := sights(plans.OneRack()); len(plain) != 1 || plain[0].pose != (*plan.Pose)(nil) {
		t.Errorf("%v of a camera that stands", plain)
	}
}

// A camera that only booms has no way that is seen from above.
func TestBoomHasNoWay(t *testing.T) {
	m := plans.New("1", "", 8).Put("ADA", 3, 0).Start("ADA").Slide("boom", 0.5, 1, 3)
	if text := plans.TextOf(Overhead(m.Shot, sheet.Options{})); strings.Contains(text, "way of the camera") || !strings.Contains(text, "boom 50 cm up") {
		t.Errorf("it says %q", text)
	}
}
