// Changes make what they say, leave the shot alone, and can be compared.

package change_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"pullscore/interp/change"
	"pullscore/interp/names"
	"pullscore/interp/units"
	"pullscore/lang"
)

const shot = `shot 1
  with camera A, lens B, stop f/2.8
  rack to ANN, on "far", over 1 s
  ANN: "How far is far?"
  rack to BEN, landing on end of ANN
`

func items(t *testing.T) []names.Item {
	t.Helper()
	file, told := lang.Parse("plan.pull", []byte(shot))
	if len(told) > 0 {
		t.Fatal(told)
	}
	var list []names.Item
	for _, s := range file.Sections[0].Body {
		list = append(list, names.Item{Stmt: s})
	}
	return list
}

// written says what kinds of statements a list holds, and what its racks say.
func written(list []names.Item) string {
	var out []string
	for _, it := range list {
		text := strings.ToLower(strings.TrimPrefix(fmt.Sprintf("%T", it.Stmt), "*lang."))
		if r, ok := it.Stmt.(*lang.Rack); ok {
			if r.Over != nil {
				text += fmt.Sprintf(" over %v", r.Over.Value)
			}
			for _, a := range []*lang.Anchor{r.On, r.Landing} {
				if a != nil && a.Offset != nil {
					text += fmt.Sprintf(" + %v", a.Offset.Value)
				}
				if a != nil && a.Kind == lang.AnchorEnd {
					text += " end of " + a.Name.Text
				}
			}
			if r.Alongside != "" {
				text += " with " + r.Alongside
			}
			if r.Because != nil {
				text += " because " + r.Because.Value
			}
		}
		out = append(out, text)
	}
	return strings.Join(out, "; ")
}

func TestApply(t *testing.T) {
	const as = "with; rack over 1; speech; rack end of ANN"
	for _, test := range []struct {
		edits []change.Edit
		want  string
		moved []int // where statements 0 to 5 stand then
	}{
		{nil, as, []int{0, 1, 2, 3, 4, 5}},
		{[]change.Edit{{Kind: change.Over, Item: 2, Seconds: 1.9}}, "with; rack over 1.9; speech; rack end of ANN", []int{0, 1, 2, 3, 4, 5}},
		{[]change.Edit{{Kind: change.Later, Item: 2, Seconds: 0.3}}, "with; rack over 1 + 0.3; speech; rack end of ANN", []int{0, 1, 2, 3, 4, 5}},
		{[]change.Edit{{Kind: change.Later, Item: 4, Seconds: 0.3}}, "with; rack over 1; speech; rack + 0.3 end of ANN", []int{0, 1, 2, 3, 4, 5}},
		{[]change.Edit{{Kind: change.OnEndOf, Item: 2, Who: "BEN"}}, "with; rack over 1 end of BEN; speech; rack end of ANN", []int{0, 1, 2, 3, 4, 5}},
		{[]change.Edit{{Kind: change.Because, Item: 4}}, "with; rack over 1; speech; rack end of ANN because why", []int{0, 1, 2, 3, 4, 5}},
		{[]change.Edit{{Kind: change.Hold, Item: 2, Seconds: 1}}, "with; hold; rack over 1; speech; rack end of ANN", []int{0, 1, 3, 4, 5, 6}},
		{[]change.Edit{{Kind: change.Pause, Item: 1, Seconds: 1}}, "pause; with; rack over 1; speech; rack end of ANN", []int{0, 2, 3, 4, 5, 6}},
		{[]change.Edit{{Kind: change.Follow, Item: 4, Who: "BEN"}}, "with; rack over 1; speech; rack end of ANN; follow", []int{0, 1, 2, 3, 4, 6}},
		{[]change.Edit{{Kind: change.PanWith, Item: 4, Who: "BEN"}}, "with; rack over 1; speech; rack end of ANN; turn", []int{0, 1, 2, 3, 4, 6}},
		{[]change.Edit{{Kind: change.WithTurn, Item: 2, Who: "pan"}}, "with; rack with pan; speech; rack end of ANN", []int{0, 1, 2, 3, 4, 5}},
		{[]change.Edit{{Kind: change.Side, Who: "BEN", Metres: 0.2}}, as, []int{0, 1, 2, 3, 4, 5}},
		{[]change.Edit{
			{Kind: change.Over, Item: 4, Seconds: 2}, {Kind: change.Hold, Item: 4, Seconds: 1}, {Kind: change.Over, Item: 2, Seconds: 3},
		}, "with; rack over 3; speech; hold; rack over 2 end of ANN", []int{0, 1, 2, 3, 5, 6}},
	} {
		list, c := items(t), change.Change{Edits: test.edits}
		before := slices.Clone(list)
		if got := written(c.Apply(list)); got != test.want {
			t.Errorf("%v: %s, want %s", test.edits, got, test.want)
		}
		if !slices.EqualFunc(list, before, func(a, b names.Item) bool { return a.Stmt == b.Stmt }) || written(list) != as {
			t.Errorf("%v: the list has been written to: %s", test.edits, written(list))
		}
		for item, want := range test.moved {
			if got := c.Moved(item); got != want {
				t.Errorf("%v: statement %d stands at %d, want %d", test.edits, item, got, want)
			}
		}
	}
}

func TestSays(t *testing.T) {
	nd := 0.6
	for _, test := range []struct {
		c    change.Change
		want string
		v    float64
		unit string
	}{
		{change.Change{Stop: 5.6}, "stop f/5.6", 5.6, "f"},
		{change.Change{TStop: 6.3}, "stop T6.3", 6.3, "T"},
		{change.Change{Gear: 0.8}, "gear 0.8", 0.8, "gear"},
		{change.Change{Wheel: 0.12}, "wheel 120 mm", 120, "mm"},
		{change.Change{Lens: "75", Focal: 0.05}, `lens "75" and focal 50 mm`, 0, ""},
		{change.Change{ND: &nd}, "nd 0.6", 0.6, "nd"},
		{change.Change{ISO: 800, Meter: 4}, "iso 800, which makes it meter f/4", 800, "iso"},
		{change.Change{ND: &nd, ISO: 800, Shutter: 90, Meter: 4}, "nd 0.6 and iso 800 and shutter 90 deg, which makes it meter f/4", 0.6, "nd"},
		{edit(change.Edit{Kind: change.Over, Item: 1, Seconds: 1.9}), "over 1.9 s", 1.9, "s"},
		{edit(change.Edit{Kind: change.Later, Item: 1, Seconds: 0.3, Text: `on "far"`}), `on "far" + 0.3 s`, 0.3, "s"},
		{edit(change.Edit{Kind: change.OnEndOf, Item: 1, Seconds: 3, Who: "the keeper"}), `on end of "the keeper"`, 3, "s"},
		{edit(change.Edit{Kind: change.Because, Item: 1}), `because "why"`, 0, ""},
		{edit(change.Edit{Kind: change.Hold, Item: 1, Seconds: 0.4}), "hold 0.4 s before it", 0.4, "s"},
		{edit(change.Edit{Kind: change.Pause, Item: 1, Seconds: 0.4}), "pause 0.4 s before the first line", 0.4, "s"},
		{edit(change.Edit{Kind: change.Follow, Item: 1, Who: "BEN"}), "follow BEN after it", 0, ""},
		{edit(change.Edit{Kind: change.MoveOver, Item: 1, Who: "BEN", Seconds: 2, Text: " (line 7)"}), "BEN moves over 2 s (line 7)", 2, "s"},
		{edit(change.Edit{Kind: change.MoveOver, Item: 1, What: "dolly", Seconds: 2}), "dolly over 2 s", 2, "s"},
		{edit(change.Edit{Kind: change.Side, Who: "BEN", Metres: -0.2}), "BEN 20 cm left", -0.2, "m"},
		{edit(change.Edit{Kind: change.MoveOver, Item: 1, What: "track", Seconds: 2}), "track over 2 s", 2, "s"},
		{edit(change.Edit{Kind: change.PanWith, Item: 1, Who: "BEN"}), "pan with BEN after it", 0, ""},
		{edit(change.Edit{Kind: change.WithTurn, Item: 1, Who: "pan"}), "with pan in place of its times", 0, ""},
		{change.Change{Back: 1}, "", 0, ""},
	} {
		got := test.c.Cure(units.Style{})
		if got.Text != test.want || got.Value != test.v || got.Unit != test.unit {
			t.Errorf("%+v: %+v, want %q %v %q", test.c, got, test.want, test.v, test.unit)
		}
	}
}

func edit(e change.Edit) change.Change { return change.Change{Edits: []change.Edit{e}} }

func TestKey(t *testing.T) {
	nd, same, other := 0.6, 0.6, 0.9
	a, b := change.Edit{Kind: change.Over, Item: 2, Seconds: 1}, change.Edit{Kind: change.Hold, Item: 3, Seconds: 1}
	equal := func(x, y change.Change, want bool) {
		t.Helper()
		if got := x.Key() == y.Key(); got != want {
			t.Errorf("%+v and %+v: equal keys is %v\n%s\n%s", x, y, got, x.Key(), y.Key())
		}
	}
	equal(change.Change{}, change.Change{}, true)
	equal(change.Change{ND: &nd}, change.Change{ND: &same}, true)
	equal(change.Change{ND: &nd}, change.Change{ND: &other}, false)
	equal(change.Change{ND: &nd}, change.Change{}, false)
	equal(change.Change{Stop: 2}, change.Change{Gear: 2}, false)
	equal(change.Change{Edits: []change.Edit{a, b}}, change.Change{Edits: []change.Edit{b, a}}, true)
	equal(change.Change{Edits: []change.Edit{a}}, change.Change{Edits: []change.Edit{a, b}}, false)
	equal(edit(change.Edit{Kind: change.Follow, Who: "a", Text: "b"}), edit(change.Edit{Kind: change.Follow, Who: `a" Text:"b`}), false)
}

// A camera move takes another time where it says one itself; where two moments say it,
// or another move, it stays.
func TestSlowerCameraMoves(t *testing.T) {
	moment, long := &lang.Anchor{}, &lang.Expr{Value: 1}
	slower := func(s lang.Statement) lang.Statement {
		c := edit(change.Edit{Kind: change.MoveOver, Item: 1, Seconds: 2})
		return c.Apply([]names.Item{{Stmt: s}})[0].Stmt
	}
	for _, s := range []lang.Statement{
		&lang.Turn{Pan: true, Over: long}, &lang.Track{Over: long, Landing: moment}, &lang.Boom{Speed: long, On: moment}, &lang.Dolly{Over: long}, &lang.Zoom{Over: long},
	} {
		var over, speed *lang.Expr
		switch s := slower(s).(type) {
		case *lang.Turn:
			over = s.Over
		case *lang.Track:
			over, speed = s.Over, s.Speed
		case *lang.Boom:
			over, speed = s.Over, s.Speed
		case *lang.Dolly:
			over, speed = s.Over, s.Speed
		case *lang.Zoom:
			over = s.Over
		}
		if over == nil || over.Value != 2 || speed != nil {
			t.Errorf("%T takes %v, at %v", s, over, speed)
		}
	}
	for _, s := range []lang.Statement{
		&lang.Turn{Pan: true, With: &lang.Name{}}, &lang.Turn{Tilt: true, Alongside: "pan"}, &lang.Track{On: moment, Landing: moment}, &lang.Boom{Alongside: "dolly"},
		&lang.Dolly{On: moment, Landing: moment}, &lang.Zoom{Alongside: "pan"},
	} {
		if slower(s) != s {
			t.Errorf("%T is written otherwise", s)
		}
	}
}

// One change on top of another keeps what the other does not touch.
func TestAnd(t *testing.T) {
	nd := 0.6
	over := func(item int, s float64) change.Edit { return change.Edit{Kind: change.Over, Item: item, Seconds: s} }
	a := change.Change{Stop: 2.8, Gear: 2, Edits: []change.Edit{over(1, 1), over(2, 1)}}
	b := change.Change{TStop: 4, ND: &nd, Edits: []change.Edit{over(2, 3), {Kind: change.Hold, Item: 2, Seconds: 1}}}
	got := a.And(b)
	want := change.Change{TStop: 4, Gear: 2, ND: &nd, Edits: []change.Edit{over(1, 1), over(2, 3), {Kind: change.Hold, Item: 2, Seconds: 1}}}
	if got.Key() != want.Key() {
		t.Errorf("%s, want %s", got.Key(), want.Key())
	}
	if len(a.Edits) != 2 || a.Edits[1].Seconds != 1 {
		t.Errorf("the first has been written to: %+v", a)
	}
	if got := (change.Change{}).And(a); got.Key() != a.Key() {
		t.Errorf("on top of nothing: %s", got.Key())
	}
}
