package floor

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"pullscore/render/floor/layout"
	"pullscore/render/sheet"
	"pullscore/render/signs"
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
		v := layout.StateAt(m.Shot, 8)
		x, y := rapid.Float64Range(-5, 5).Draw(t, "x"), rapid.Float64Range(-5, 5).Draw(t, "y")
		seen := v.Pose.View(x, y, 0)
		if seen.Along < 0.5 {
			t.Skip("behind the camera")
		}
		got := v.Spot(seen.Along, seen.Across/((seen.Along-v.Lens)*v.PerSide))
		if layout.Apart(got, layout.Spot{X: x, Y: y}) > 1e-6 {
			t.Errorf("it is drawn at %v, and lies at %v, %v", got, x, y)
		}
	})
}

// The camera ends where its pose is, and a pan alone leaves it where it was.
func TestLensIsWhereTheCameraIs(t *testing.T) {
	states := layout.Of(plans.PanAndRack()).Cameras[0].States
	if len(states) != 3 {
		t.Fatalf("%d states, want those of the start and of two pans", len(states))
	}
	for _, v := range states {
		if d := layout.Apart(v.Apex(), layout.Spot{}); math.Abs(d-v.Lens) > 1e-9 {
			t.Errorf("the lens is %g m from the sensor mark, want %g", d, v.Lens)
		}
	}
	s := plans.AllWays()
	v, want := layout.StateAt(s, 14), s.Optics.Pose(14)
	sin, cos := math.Sincos(want.Pan * math.Pi / 180)
	if at := (layout.Spot{X: want.X + v.Lens*sin, Y: want.Y + v.Lens*cos}); layout.Apart(at, v.Apex()) > 1e-9 {
		t.Errorf("the lens is at %v, want %v", v.Apex(), at)
	}
}

// The drawing says in words what each move of the camera is, and warns of those that take
// it elsewhere alone.
func TestRigIsTold(t *testing.T) {
	text := plans.TextOf(Draw(plans.AllWays(), sheet.Options{}))
	for _, want := range []string{"right, 0.5 s to 3.5 s", "left, 7 s to 9 s", "tilt 6° down", "boom 45 cm down", "track 60 cm right", "dolly 40 cm in", "Moving camera"} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is not told in %q", want, text)
		}
	}
	text = plans.TextOf(Draw(plans.PanAndRack(), sheet.Options{}))
	for _, no := range []string{"Moving camera", "People move"} {
		if strings.Contains(text, no) {
			t.Errorf("a camera that only pans has %q", no)
		}
	}
}

// Of many pans as many ends are drawn as can be told apart, and all have their tapes.
func TestManyPansHaveFewViews(t *testing.T) {
	m := plans.New("1", "", 60).Put("ADA", 3, 0).Start("ADA")
	for i := range 20 {
		m.Pan("", 3*float64(i+1), 3*float64(i), 3*float64(i)+2)
	}
	shown, taped := 0, 0
	for _, v := range layout.Of(m.Shot).Cameras[0].States {
		if v.Shown {
			shown++
		}
		taped += len(v.Tapes)
	}
	if shown != layout.MostViews || taped != 21 {
		t.Errorf("%d views, %d tapes", shown, taped)
	}
	if plain := layout.Of(plans.OneRack()).Cameras[0].States; len(plain) != 1 {
		t.Errorf("%d states of a camera that stands", len(plain))
	}
}

// A camera that only booms has no way that is seen from above.
func TestBoomHasNoWay(t *testing.T) {
	m := plans.New("1", "", 8).Put("ADA", 3, 0).Start("ADA").Slide("boom", 0.5, 1, 3)
	pages := Draw(m.Shot, sheet.Options{})
	if text := plans.TextOf(pages); !strings.Contains(text, "boom 50 cm up") {
		t.Errorf("it says %q", text)
	}
	if got := len(groupsOf(&pages[0].Root, signs.Way)); got != 0 {
		t.Errorf("%d ways", got)
	}
}

// Each state of the camera has its own block of tapes: a dolly in makes them shorter by as
// much.
func TestTapesOfAState(t *testing.T) {
	m := plans.New("1", "", 10).Put("ADA", 6, 0).Aside("ADA", 0.8).Put("BO", 2, 0).Start("ADA").Dolly(1.5, 1, 4)
	states := layout.Of(m.Shot).Cameras[0].States
	if len(states) != 2 || states[1].Words != "4 s" {
		t.Fatalf("%d states, the last %q", len(states), states[len(states)-1].Words)
	}
	for i, want := range [][]layout.Tape{
		{{Place: 0, Along: 6, Slant: math.Hypot(6, 0.8), Aside: 0.8}, {Place: 1, Along: 2, Slant: 2}},
		{{Place: 0, Along: 4.5, Slant: math.Hypot(4.5, 0.8), Aside: 0.8}, {Place: 1, Along: 0.5, Slant: 0.5}},
	} {
		for k, got := range states[i].Tapes {
			w := want[k]
			if got.Place != w.Place || math.Abs(got.Along-w.Along)+math.Abs(got.Slant-w.Slant)+math.Abs(got.Aside-w.Aside) > 1e-9 {
				t.Errorf("%s: %v, want %v", states[i].Words, got, w)
			}
		}
	}
}

// The floor of one shot of a scene has the tapes of the scene's floor, with heights: the
// ticket is 40 cm below the eyes, which makes a tape of 2.61 m one of 2.64 m. Nobody's side
// is assumed, and where pans end is dashed.
func TestOverheadOfAStagedShot(t *testing.T) {
	text := plans.TextOf(Draw(plans.TicketWindow().Shots[0], sheet.Options{}))
	for _, want := range []string{"2.59 m", "2.64 m", "3.52 m"} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is not in %q", want, text)
		}
	}
	pages := Draw(plans.MessTable().Shots[1], sheet.Options{})
	if text := plans.TextOf(pages); strings.Contains(text, "not said") {
		t.Errorf("a side is assumed: %q", text)
	}
	if n := len(groupsOf(&pages[0].Root, signs.LaterState)); n < 3 {
		t.Errorf("%d later fields of view", n)
	}
	for name, p := range plans.MadeScenes() {
		for _, s := range p.Shots {
			plans.CheckPaper(t, name, nil, Draw(s, sheet.Options{}))
		}
	}
}
