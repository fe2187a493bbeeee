// Positions in every form, against each other, and why some cannot be read.

package ring

import (
	"errors"
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// said is what nobody says of a ring on a lens of 50 mm.
func said() Said {
	nan := math.NaN()
	return Said{Focal: 0.05, Closest: nan, Throw: nan, Girth: nan, Diameter: nan, Within: nan}
}

// degreesOf writes marks in degrees.
func degreesOf(marks []Mark) []Written {
	var list []Written
	for _, m := range marks {
		list = append(list, Written{Distance: m.Distance, At: Position{Value: m.Angle}})
	}
	return list
}

// scales draws a ring with both ends marked, less than a turn from mark to mark.
func scales(t *rapid.T) (marks []Mark, s Said) {
	marks = markings(t)
	zero := marks[0].Angle
	for i := range marks {
		marks[i].Angle -= zero
	}
	last := &marks[len(marks)-1]
	last.Distance = inf
	s = said()
	s.Closest, s.Throw = marks[0].Distance, last.Angle
	s.Girth = rapid.Float64Range(0.15, 0.5).Draw(t, "girth")
	s.Turns = rapid.SampledFrom([]string{"left", "right"}).Draw(t, "turns")
	return marks, s
}

// TestEveryFormGivesTheSameLaw writes one ring in every form that there is, from
// either end and from any zero.
func TestEveryFormGivesTheSameLaw(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		marks, s := scales(t)
		zero := rapid.Float64Range(0, 300).Draw(t, "zero")
		of := rapid.Float64Range(1, 65535).Draw(t, "parts")
		falls := rapid.Bool().Draw(t, "falls")
		scale := func(a float64) float64 { // degrees on a scale of somebody else
			if falls {
				return zero + s.Throw - a
			}
			return zero + a
		}
		forms := map[string]func(a float64) Position{
			"degrees": func(a float64) Position { return Position{Value: scale(a)} },
			"along":   func(a float64) Position { return Position{Form: Along, Value: scale(a) * s.Girth / 360} },
			"part":    func(a float64) Position { return Position{Form: Part, Value: scale(a) / s.Throw * of, Of: of} },
			"clock": func(a float64) Position {
				h := a / 30
				if s.Turns == "left" {
					h = -h
				}
				if h = math.Mod(zero/30+h, 12); h < 0 {
					h += 12
				}
				return Position{Form: Clock, Value: h}
			},
		}
		for name, form := range forms {
			var list []Written
			for _, m := range marks {
				list = append(list, Written{Distance: m.Distance, At: form(m.Angle)})
			}
			list = rapid.Permutation(list).Draw(t, "order")
			read, err := Complete(list, s)
			if err != nil {
				t.Fatalf("%s: %v", name, err)
			}
			if len(read.Marks) != len(marks) || !alike(read.Throw, s.Throw) {
				t.Fatalf("%s: %v, throw %v", name, read.Marks, read.Throw)
			}
			for i, m := range read.Marks {
				if m.Distance != marks[i].Distance || math.Abs(m.Angle-marks[i].Angle) > 1e-9 || m.Default {
					t.Errorf("%s: mark %v, want %v", name, m, marks[i])
				}
				if list[read.Order[i]].Distance != m.Distance {
					t.Errorf("%s: mark %d is written mark %d", name, i, read.Order[i])
				}
			}
			law, err := FromMarks(read.Marks, read.Shape(s.Focal))
			if err != nil {
				t.Fatalf("%s: %v", name, err)
			}
			want, err := FromMarks(marks, Shape{Focal: s.Focal, Throw: s.Throw})
			if err != nil {
				t.Fatal(err)
			}
			for part := 0.05; part < 1; part += 0.1 {
				d := want.Distance(part * s.Throw)
				if got := law.Angle(d); !(math.Abs(got-want.Angle(d)) <= 1e-9*s.Throw) {
					t.Errorf("%s: %v m at %v, want %v", name, d, got, want.Angle(d))
				}
			}
		}
	})
}

// TestEndsByDefault adds closest and infinity where no mark of them is written.
func TestEndsByDefault(t *testing.T) {
	s := said()
	s.Closest, s.Throw = 0.4572, 300
	read, err := Complete(degreesOf([]Mark{{Distance: 0.9144, Angle: 100}}), s)
	if err != nil {
		t.Fatal(err)
	}
	want := []Mark{{Distance: 0.4572, Default: true}, {Distance: 0.9144, Angle: 100}, {Distance: inf, Angle: 300, Default: true}}
	if !slices.Equal(read.Marks, want) || !slices.Equal(read.Order, []int{-1, 0, -1}) {
		t.Errorf("got %v, order %v", read.Marks, read.Order)
	}
	s.Throw = math.NaN()
	if read, err = Complete(degreesOf([]Mark{{Distance: 0.9144, Angle: 100}}), s); err != nil || len(read.Marks) != 2 || !math.IsNaN(read.Throw) {
		t.Errorf("without a throw: %v, %v", read, err)
	}
	s.Closest = math.NaN()
	if read, err = Complete(degreesOf([]Mark{{Distance: 0.9144, Angle: 100}, {Distance: inf, Angle: 240}}), s); err != nil || len(read.Marks) != 2 || read.Throw != 240 {
		t.Errorf("with infinity: %v, %v", read, err)
	}
}

// TestScalesWithOneEnd reads scales of which one end is marked, or none.
func TestScalesWithOneEnd(t *testing.T) {
	part := func(d, n float64) Written {
		return Written{Distance: d, At: Position{Form: Part, Value: n, Of: 100}}
	}
	hours := func(d, h float64) Written { return Written{Distance: d, At: Position{Form: Clock, Value: h}} }
	rim := func(d, mm float64) Written {
		return Written{Distance: d, At: Position{Form: Along, Value: mm / 1000}}
	}
	s := said()
	s.Closest, s.Throw, s.Turns = 0.5, 270, "left"
	for name, c := range map[string]struct {
		written []Written
		angles  []float64 // of the written marks
	}{
		"falling, infinity marked":          {[]Written{part(2, 39), part(inf, 4)}, []float64{175.5, 270}},
		"falling, neither":                  {[]Written{part(1, 60), part(2, 39)}, []float64{108, 164.7}},
		"falling, closest":                  {[]Written{{Closest: true, At: Position{Form: Part, Value: 90, Of: 100}}, part(2, 39)}, []float64{0, 137.7}},
		"rising, neither":                   {[]Written{part(1, 39), part(2, 60)}, []float64{105.3, 162}},
		"clock, infinity":                   {[]Written{hours(2, 2), hours(inf, 10.5)}, []float64{165, 270}},
		"rim, the throw says the way round": {[]Written{rim(2, 133), rim(inf, 266)}, []float64{135, 270}},
	} {
		read, err := Complete(c.written, s)
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		for i, at := range read.Order {
			if at >= 0 && !agree(read.Marks[i].Angle, c.angles[at], 1e-12) {
				t.Errorf("%s: %v m at %v, want %v", name, read.Marks[i].Distance, read.Marks[i].Angle, c.angles[at])
			}
		}
	}
}

// TestBothSides reads marks that were come to from both sides.
func TestBothSides(t *testing.T) {
	twice := func(d float64, form Form, first, second float64) Written {
		return Written{Distance: d, At: Position{Form: form, Value: first, Of: 100}, Second: &Position{Form: form, Value: second, Of: 100}}
	}
	s := said()
	s.Closest, s.Throw, s.Girth, s.Turns = 0.5, 270, 0.346, "left"
	for name, c := range map[string]struct {
		list []Written
		play float64
	}{
		"rim":           {[]Written{twice(1.2, Along, 0.143, 0.1415)}, 360 * 1.5 / 346},
		"rim, wrong":    {[]Written{twice(1.2, Along, 0.1415, 0.143)}, 0},
		"part, falling": {[]Written{twice(1, Part, 60, 61), twice(2, Part, 40, 41)}, 2.7},
		"clock":         {[]Written{twice(0.5, Clock, 12, 0.1), twice(2, Clock, 7, 7.1)}, 3},
	} {
		read, err := Complete(c.list, s)
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		if math.Abs(read.Play-c.play) > 1e-9 {
			t.Errorf("%s: play %v, want %v", name, read.Play, c.play)
		}
		for i, at := range read.Order {
			m := read.Marks[i]
			if m.Twice != (at >= 0) || m.Twice && !alike(m.Angle-m.Gap/2, m.Second()) {
				t.Errorf("%s: %+v", name, m)
			}
		}
	}
	read, _ := Complete([]Written{twice(1.2, Along, 0.143, 0.1415)}, s)
	if want := 360 * 142.25 / 346; !agree(read.Marks[1].Angle, want, 1e-12) {
		t.Errorf("the mean lies at %v, want %v", read.Marks[1].Angle, want)
	}
}

// TestReading is how well marks were read, in every form.
func TestReading(t *testing.T) {
	s := said()
	s.Closest, s.Throw, s.Diameter, s.Turns = 0.5, 300, 0.11, "right"
	rim := 360 * 0.0005 / (math.Pi * 0.11)
	for name, c := range map[string]struct {
		list   []Written
		within float64
		want   float64
	}{
		"degrees": {degreesOf([]Mark{{Distance: 1, Angle: 96}}), math.NaN(), rim},
		"said":    {degreesOf([]Mark{{Distance: 1, Angle: 96}}), 5, 2.5},
		"part":    {[]Written{{Distance: 1, At: Position{Form: Part, Value: 3.2, Of: 10, Step: 0.1}}}, math.NaN(), 0.1 / 10 * 300 / math.Sqrt(12)},
		"encoder": {[]Written{{Distance: 1, At: Position{Form: Part, Value: 41200, Of: 65535, Step: 1}}}, math.NaN(), rim},
		"clock":   {[]Written{{Closest: true, At: Position{Form: Clock, Value: 4}}, {Distance: 1, At: Position{Form: Clock, Value: 5}}}, math.NaN(), 3},
		"both":    {[]Written{{Distance: 1, At: Position{Value: 96}, Second: &Position{Value: 95}}}, math.NaN(), rim / math.Sqrt2},
	} {
		s.Within = c.within
		read, err := Complete(c.list, s)
		if err != nil {
			t.Errorf("%s: %v", name, err)
		} else if !agree(read.Reading, c.want, 1e-12) {
			t.Errorf("%s: reading %v, want %v", name, read.Reading, c.want)
		}
	}
}

// TestReasons are the marks that cannot be read, each with the figures that a message
// about it needs.
func TestReasons(t *testing.T) {
	rim := func(d, mm float64) Written {
		return Written{Distance: d, At: Position{Form: Along, Value: mm / 1000}}
	}
	part := Written{Distance: 1, At: Position{Form: Part, Value: 3.2, Of: 10}}
	hours := func(d, h float64) Written { return Written{Distance: d, At: Position{Form: Clock, Value: h}} }
	deg := func(d, a float64) Written { return Written{Distance: d, At: Position{Value: a}} }
	foot := 0.3048
	for name, c := range map[string]struct {
		list []Written
		set  func(*Said)
		want FormError
	}{
		"no rim":         {[]Written{rim(1, 79)}, func(s *Said) { s.Throw, s.Closest = 300, 0.5 }, FormError{Reason: NoRim}},
		"no throw":       {[]Written{part}, func(s *Said) { s.Closest = 0.5 }, FormError{Reason: NoThrow}},
		"mixed":          {[]Written{deg(1, 20), rim(2, 79)}, nil, FormError{Reason: MixedForms, Index: 1, Form: Along, Others: Degrees}},
		"mixed second":   {[]Written{deg(1, 20), {Distance: 2, At: Position{Value: 40}, Second: &Position{Form: Clock, Value: 3}}}, nil, FormError{Reason: MixedForms, Index: 1, Form: Clock, Others: Degrees}},
		"which way":      {[]Written{hours(1, 3), hours(2, 4)}, nil, FormError{Reason: WhichWay}},
		"no end":         {[]Written{hours(1, 3), hours(2, 4)}, func(s *Said) { s.Turns = "left" }, FormError{Reason: NoEnd}},
		"whole turn":     {[]Written{hours(0.5, 1), hours(1, 3), hours(2, 3)}, func(s *Said) { s.Turns, s.Closest = "left", 0.5 }, FormError{Reason: WholeTurn, Index: 2, Distance: 2, Other: 1}},
		"out of order":   {[]Written{deg(0.5, 0), deg(1, 118), deg(2, 96)}, nil, FormError{Reason: OutOfOrder, Index: 2, Distance: 2, Degrees: 96, Other: 1, OtherDegrees: 118}},
		"falling alone":  {[]Written{deg(1, 118), deg(2, 96)}, nil, FormError{Reason: OutOfOrder, Index: 1, Distance: 2, Degrees: 96, Other: 1, OtherDegrees: 118}},
		"no distance":    {[]Written{{Closest: true}}, nil, FormError{Reason: NoDistance, Distance: math.NaN()}},
		"one distance":   {[]Written{deg(1, 20), deg(1, 40)}, nil, FormError{Reason: SameDistance, Index: 1, Distance: 1, Other: 1}},
		"beyond closest": {[]Written{deg(0.4, 20)}, func(s *Said) { s.Closest = 0.45 }, FormError{Reason: BeyondClosest, Distance: 0.4, Other: 0.45}},
		"at closest":     {[]Written{deg(3*foot, 0), deg(2, 50)}, func(s *Said) { s.Closest = 18 * 0.0254 }, FormError{Reason: OneAngle, Index: 0, Distance: 3 * foot, Other: 18 * 0.0254, OtherDefault: true}},
		"at infinity":    {[]Written{deg(1, 50), deg(2, 300)}, func(s *Said) { s.Throw = 300 }, FormError{Reason: OneAngle, Index: 1, Distance: 2, Degrees: 300, Other: inf, OtherDegrees: 300, OtherDefault: true}},
		"one angle":      {[]Written{deg(1, 50), deg(2, 50)}, nil, FormError{Reason: OneAngle, Index: 1, Distance: 2, Degrees: 50, Other: 1, OtherDegrees: 50}},
		"past throw":     {[]Written{deg(1, 50), deg(2, 312)}, func(s *Said) { s.Throw = 300 }, FormError{Reason: PastThrow, Index: 1, Distance: 2, Measured: 312, Said: 300}},
		"throw":          {[]Written{rim(0.5, 0), rim(inf, 266)}, func(s *Said) { s.Closest, s.Throw, s.Girth = 0.5, 300, 0.346 }, FormError{Reason: ThrowDisagrees, Index: -1, Length: 0.266, Girth: 0.346, Measured: 360 * 266.0 / 346, Said: 300}},
		"girth":          {[]Written{rim(0.5, 0), rim(inf, 266)}, func(s *Said) { s.Girth, s.Diameter = 0.346, 0.08 }, FormError{Reason: GirthDisagrees, Index: -1, Girth: 0.346, Measured: 0.346 / math.Pi, Said: 0.08}},
		"lone":           {[]Written{deg(1, 50)}, nil, FormError{Reason: Lone, Distance: 1}},
		"before zero":    {[]Written{deg(0.5, 20), deg(1, 200), deg(2, 40)}, nil, FormError{Reason: OutOfOrder, Index: 2, Distance: 2, Degrees: 40, Other: 1, OtherDegrees: 200}},
	} {
		s := said()
		if c.set != nil {
			c.set(&s)
		}
		read, err := Complete(c.list, s)
		var got *FormError
		if !errors.As(err, &got) || read != nil {
			t.Errorf("%s: got %v, %v", name, read, err)
			continue
		}
		for _, v := range [][2]float64{
			{got.Distance, c.want.Distance}, {got.Degrees, c.want.Degrees}, {got.Other, c.want.Other}, {got.OtherDegrees, c.want.OtherDegrees},
			{got.Length, c.want.Length}, {got.Girth, c.want.Girth}, {got.Measured, c.want.Measured}, {got.Said, c.want.Said},
		} {
			if !alike(v[0], v[1]) {
				t.Errorf("%s: got %+v, want %+v", name, *got, c.want)
				break
			}
		}
		if got.Reason != c.want.Reason || got.Index != c.want.Index || got.Form != c.want.Form || got.Others != c.want.Others || got.OtherDefault != c.want.OtherDefault {
			t.Errorf("%s: got %+v, want %+v", name, *got, c.want)
		}
		if err.Error() == "" {
			t.Errorf("%s: no words", name)
		}
	}
}

// FuzzComplete feeds two marks as a file may have them: an error, or marks of which
// FromMarks makes a law.
func FuzzComplete(f *testing.F) {
	f.Add(uint8(0), 0.75, 20.0, 2.0, 118.0, 0.5, 310.0, 0.346, uint8(0))
	f.Add(uint8(1), 0.75, 0.02, 2.0, 0.1, 0.5, 310.0, math.NaN(), uint8(1))
	f.Add(uint8(2), 0.75, 3.2, inf, 0.5, 0.5, 310.0, 0.346, uint8(2))
	f.Add(uint8(3), 0.75, 4.5, 2.0, 10.0, 0.75, 310.0, 0.346, uint8(1))
	f.Fuzz(func(t *testing.T, form uint8, d0, p0, d1, p1, closest, throw, girth float64, turns uint8) {
		if throw <= 0 || girth <= 0 || closest <= 0 || math.IsInf(throw, 1) || math.IsInf(girth, 1) {
			return // the kit lets none of them in
		}
		s := said()
		s.Closest, s.Throw, s.Girth, s.Turns = closest, throw, girth, []string{"", "left", "right"}[turns%3]
		at := func(v float64) Position { return Position{Form: Form(form % 4), Value: v, Of: 10, Step: 0.1} }
		read, err := Complete([]Written{{Distance: d0, At: at(p0)}, {Distance: d1, At: at(p1)}}, s)
		if err != nil {
			return
		}
		var mark *MarkError
		if _, err := FromMarks(read.Marks, read.Shape(0.05)); err != nil && !errors.As(err, &mark) && !errors.Is(err, ErrShape) && !errors.Is(err, ErrThrow) {
			t.Fatalf("%v of %+v", err, read)
		}
	})
}
