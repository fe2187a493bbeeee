// Properties of rings: on no kit is there a chance, a window or a mark on paper without a
// known angle, and the printed range holds the chance.

package interp_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"pullscore/interp/plan"
	"pullscore/optics"
	"pullscore/render/marks"
)

// anyRing writes what a kit says of a ring: marks of any form, at random, some of them
// contradicting; few, or none.
func anyRing(t *rapid.T) string {
	var b strings.Builder
	yes := func(name string, ofTen int) bool { return rapid.IntRange(1, 10).Draw(t, name) <= ofTen }
	if yes("closest said", 7) {
		fmt.Fprintf(&b, "  closest %d cm\n", rapid.IntRange(40, 90).Draw(t, "closest"))
	}
	var parts []string
	if yes("throw said", 6) {
		parts = append(parts, fmt.Sprintf("%d deg", rapid.IntRange(60, 400).Draw(t, "throw")))
	}
	if yes("girth said", 5) {
		parts = append(parts, fmt.Sprintf("girth %d mm", rapid.IntRange(200, 400).Draw(t, "girth")))
	}
	if len(parts) > 0 {
		fmt.Fprintf(&b, "  ring %s\n", strings.Join(parts, ", "))
	}
	if yes("turns said", 5) {
		b.WriteString("  turns " + rapid.SampledFrom([]string{"left", "right"}).Draw(t, "turns") + "\n")
	}
	if yes("kind said", 3) {
		b.WriteString("  marks measured, within 2 deg\n")
	}
	form := rapid.SampledFrom([]string{"%d deg", "%d mm", "%d of 400", "%d of 65535", "%d:30 o'clock"}).Draw(t, "form")
	cm, at := rapid.IntRange(40, 80).Draw(t, "first"), rapid.IntRange(0, 40).Draw(t, "at")
	for range rapid.IntRange(0, 5).Draw(t, "marks") {
		n := at
		if strings.HasSuffix(form, "clock") {
			n = at/30%12 + 1
		}
		fmt.Fprintf(&b, "  mark %d cm at "+form+"\n", cm, n)
		cm += rapid.IntRange(5, 200).Draw(t, "farther")
		at += rapid.IntRange(-3, 80).Draw(t, "on") // now and then it goes back
	}
	if yes("inf marked", 3) {
		fmt.Fprintf(&b, "  mark inf at "+form+"\n", map[bool]int{true: at, false: at/30%12 + 1}[!strings.HasSuffix(form, "clock")])
	}
	return b.String()
}

// anyShot writes a shot with racks to any distance, near and far, and a follow.
func anyShot(t *rapid.T) string {
	var b strings.Builder
	b.WriteString("subject ANN at 2 m\nsubject BOB at 80 cm\nsubject CAL at 9 m\nshot 1\n  with camera A, lens \"50\", stop f/2.8\n  start on ANN\n")
	for i := range rapid.IntRange(1, 5).Draw(t, "racks") {
		to := rapid.SampledFrom([]string{"ANN", "BOB", "CAL", "inf", "30 cm", "55 cm", "1.3 m", "4 m", "60 m"}).Draw(t, "to")
		fmt.Fprintf(&b, "  rack to %s, at %d s, over 1.2 s\n", to, 2*i+1)
	}
	b.WriteString("  follow ANN, at 14 s, until 20 s\n")
	fmt.Fprintf(&b, "  ANN moves to %d cm over 4 s, at 15 s\n", rapid.IntRange(45, 1500).Draw(t, "goes to"))
	return b.String()
}

func TestNoChanceWithoutAnAngle(t *testing.T) {
	kinds := map[string]int{}
	rapid.Check(t, func(t *rapid.T) {
		src := "plan \"P\"\nrate 24\nwatched on 12 m screen from 18 m\ncamera A\n  sensor 24.89 x 18.66 mm\n" +
			"lens \"50\"\n  focal 50 mm\n  stops f/1.8 to f/22\n" + anyRing(t) + anyShot(t)
		res := interpret("plan.pull", src)
		if len(res.Plan.Shots) == 0 {
			kinds["refused"]++
			return
		}
		s := res.Plan.Shots[0]
		kinds[s.Ring.Kind]++
		onPaper := marks.Of(s)
		for _, p := range s.Pulls {
			if wrong := judgedWithout(s, p, onPaper); wrong != "" {
				t.Errorf("%s %d: %s\n%s", p.Kind, p.Number, wrong, src)
			}
		}
	})
	t.Logf("what became of the plans: %v", kinds)
}

// judgedWithout returns what a pull has that it may not have, "" for nothing.
func judgedWithout(s *plan.Shot, p *plan.Pull, onPaper []marks.Mark) string {
	law, d := s.Optics.Ring, optics.ToSensor(p.ToLens, s.Focal(float64(p.Land)))
	drawn := slices.ContainsFunc(onPaper, func(m marks.Mark) bool { return slices.Contains(m.Pulls, p.Number) })
	for _, m := range onPaper {
		if math.IsNaN(m.Deg) || m.Deg < 0 || m.Deg > law.Throw() {
			return fmt.Sprintf("a mark at %v degrees on paper", m.Deg)
		}
	}
	if !p.ToDeg.Known() {
		switch {
		case p.Chance.Known() || p.Ceiling.Known() || p.OnPaper.Known():
			return "a chance without an angle"
		case p.WindowHand[0].Known() || p.WindowHand[1].Known() || p.HandDeg.Known():
			return "a window or a travel without an angle"
		case drawn:
			return "a mark on paper without an angle"
		case p.ChanceBand[0].Known() && !s.RingUnknown():
			return "a range of chances without an angle"
		case p.WorstShare.Known() || p.SharpShare.Known():
			return "a share of a follow without an angle"
		}
		return ""
	}
	switch {
	case law == nil || math.IsNaN(law.Angle(d)) || math.Abs(law.Angle(d)-float64(p.ToDeg)) > 1e-9:
		return "an angle that the law does not know"
	case p.Chance.Known() && !p.FromDeg.Known():
		return "a chance from where no angle is"
	case p.Chance.Known() && !(p.ChanceBand[0] <= p.Chance && p.Chance <= p.ChanceBand[1] && p.CeilingBand[0] <= p.Ceiling && p.Ceiling <= p.CeilingBand[1]):
		return fmt.Sprintf("a chance of %v outside its range %v", p.Chance, p.ChanceBand)
	}
	return ""
}
