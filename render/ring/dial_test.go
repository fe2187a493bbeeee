package ring

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"

	"pullscore/interp/plan"
	"pullscore/render/draw"
	"pullscore/render/marks"
	"pullscore/render/sheet"
	"pullscore/render/testing/plans"
)

func TestDialsAreClean(t *testing.T) {
	for name, s := range plans.Made() {
		s.WheelMM, s.Gear = 80, 1.5
		plans.Held(s, "wheel")
		for size, paper := range map[string]sheet.Paper{"A4": sheet.A4, "Letter": sheet.Letter} {
			for i, p := range Dial(s, sheet.Options{Paper: paper}) {
				plans.CheckPage(t, fmt.Sprintf("%s, %s, page %d", name, size, i+1), p)
				plans.SVGOf(t, p)
			}
		}
	}
}

func TestGeneratedDialsAreClean(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := plans.Draw(t)
		s.WheelMM = plan.Number(rapid.SampledFrom([]float64{10, 40, 80, 110, 1000}).Draw(t, "wheel"))
		s.Gear = plan.Number(rapid.SampledFrom([]float64{0.05, 0.5, 1, 1.5, 4, 20}).Draw(t, "gear"))
		if rapid.Bool().Draw(t, "play") {
			s.Ring = plans.Play(rapid.Float64Range(0, 60).Draw(t, "degrees"))
		}
		if rapid.Bool().Draw(t, "held") {
			plans.Held(s, "wheel")
		}
		paper := rapid.SampledFrom([]sheet.Paper{sheet.A4, sheet.Letter}).Draw(t, "paper")
		for i, p := range Dial(s, sheet.Options{Paper: paper}) {
			plans.CheckPage(t, fmt.Sprintf("page %d", i+1), p)
			plans.SVGOf(t, p)
		}
	})
}

// Marks of a dial lie at the angle of the ring times the gear, from the top,
// whichever way and in whichever turn.
func TestDialMarksLieAtTheirAngle(t *testing.T) {
	for _, gear := range []float64{0.5, 1, 1.5, 4} {
		s := plans.ThreeRacks()
		s.WheelMM, s.Gear = 80, plan.Number(gear)
		for _, clockwise := range []bool{true, false} {
			d := newDial(s, marks.Of(s), 60, clockwise)
			d.centre = draw.Point{X: 100, Y: 100}
			for _, m := range d.marks {
				deg := d.hand(m.Deg)
				p := d.point(deg, d.track(deg))
				got := math.Atan2(p.X-100, 100-p.Y) * 180 / math.Pi
				want := m.Deg * gear
				if !clockwise {
					want = -want
				}
				if off := math.Remainder(got-want, 360); math.Abs(off) > 1e-6 {
					t.Errorf("gear %v: %s lies at %v deg, want %v", gear, m.Name, got, want)
				}
			}
		}
	}
}

// A place of the thumb is where the clock face says once the wheel has turned as far as
// the pull's start: on the disc for a wheel that turns clockwise, and mirrored on the
// other.
func TestThumbsLieByTheClock(t *testing.T) {
	for _, gear := range []float64{0.5, 1.5, 4} {
		s := plans.ThreeRacks()
		s.WheelMM, s.Gear = 80, plan.Number(gear)
		s.Pulls = s.Pulls[:1]
		p := plans.Held(s, "wheel").Pulls[0]
		p.HoldFrom = 2.5
		for _, clockwise := range []bool{true, false} { // of the disc's marks: the wheel turns the other way
			way := 1.0
			if clockwise {
				way = -1
			}
			d := newDial(s, marks.Of(s), 60, clockwise)
			list := d.thumbs()
			if len(list) != 1 {
				t.Fatalf("%d places", len(list))
			}
			at := d.point(list[0].deg, 30)
			onDisc := math.Atan2(at.X-d.centre.X, d.centre.Y-at.Y) * 180 / math.Pi
			if off := math.Remainder(onDisc+way*float64(p.FromDeg)*gear-way*75, 360); math.Abs(off) > 1e-6 {
				t.Errorf("gear %v, disc clockwise %v: the thumb is %v deg off 2:30", gear, clockwise, off)
			}
		}
	}
	s := plans.Held(plans.ThreeRacks(), "ring")
	if d := newDial(s, marks.Of(s), 60, true); len(d.thumbs()) > 0 {
		t.Error("a thumb on the ring has a place on the disc")
	}
}

// Turns of the spiral never touch: a mark's turn can be told.
func TestDialTurnsKeepApart(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := plans.ThreeRacks()
		s.WheelMM = plan.Number(rapid.Float64Range(wheelLeast, 300).Draw(t, "wheel"))
		s.Gear = plan.Number(rapid.Float64Range(0.05, 20).Draw(t, "gear"))
		d := newDial(s, nil, 70, true)
		end := 360 * d.turns
		for deg := 0.0; deg <= end; deg += 30 {
			if r := d.track(deg); r > d.outer || r < hubLeast-dialRim {
				t.Fatalf("at %v deg the line lies %v mm from the centre", deg, r)
			}
			if deg >= 360 && !(d.track(deg) < d.track(deg-360)) {
				t.Fatalf("at %v deg the line meets the turn before", deg)
			}
		}
	})
}

// Every mark has its name on the disc, or on a crowded one its letter, the same
// on both discs and in the table.
func TestDialNamesEveryMark(t *testing.T) {
	for name, s := range plans.Made() {
		s.WheelMM, s.Gear = 80, 1.5
		if s.Optics.Ring == nil {
			continue
		}
		list := marks.Of(s)
		for _, clockwise := range []bool{true, false} {
			d := newDial(s, list, 60, clockwise)
			labels, near := d.place(withDistance)
			if !near {
				labels = d.placeLetters()
			}
			letters := map[string]string{}
			for _, l := range labels {
				if l.box.W == 0 {
					t.Errorf("%s: %s has no name", name, l.mark.Name)
				}
				if other, taken := letters[l.letter]; taken && !near {
					t.Errorf("%s: %s and %s are both %s", name, l.mark.Name, other, l.letter)
				}
				letters[l.letter] = l.mark.Name
			}
			if len(labels) != len(list) {
				t.Errorf("%s: %d labels for %d marks", name, len(labels), len(list))
			}
		}
	}
}

func TestLetters(t *testing.T) {
	for i, want := range map[int]string{0: "a", 25: "z", 26: "aa", 51: "az", 52: "ba", 701: "zz", 702: "aaa"} {
		if got := letter(i); got != want {
			t.Errorf("letter %d is %q, want %q", i, got, want)
		}
	}
}

// The goldens show in a review what a change does to a drawing. Set
// PULLSCORE_UPDATE=1 to write them anew, then look at them.
func TestGoldenDials(t *testing.T) {
	for name, gear := range map[string]plan.Number{"once": 1, "spiral": 2.5} {
		s := plans.ThreeRacks()
		s.WheelMM, s.Gear = 80, gear
		plans.CheckGolden(t, "dial-"+name, Dial(s, sheet.Options{}))
	}
}
