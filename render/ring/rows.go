// The rows of the table: the marks of a shot, far to near.

package ring

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"pullscore/interp/plan"
	"pullscore/render/marks"
	"pullscore/render/ring/page"
	"pullscore/render/sheet"
)

// newTable makes the table of a ring that has angles.
func newTable(s *plan.Shot, named *lettered) *page.Table {
	var rows []page.Row
	geared := s.Gear.Known() && s.Gear != 1
	angles := func(deg float64) (ring, hand string) {
		if !geared {
			return "", sheet.Figures.AngleFixed(deg, 1)
		}
		return sheet.Figures.AngleFixed(deg, 1), sheet.Figures.AngleFixed(deg*float64(s.Gear), 1)
	}
	for i := len(named.list) - 1; i >= 0; i-- {
		m := named.list[i]
		r := page.Row{Start: m.Start, Pulls: m.Pulls, Name: nameOf(m), Aside: m.Aside(), BelowEnd: windowText(m, float64(s.Gear))}
		r.Ring, r.Hand = angles(m.Deg)
		if !math.IsNaN(m.Tape) {
			r.First, r.Second = sheet.Style(s).Both(m.Tape)
		}
		if named.used[i] {
			r.Letter = named.letter(i)
		}
		var below []string
		if r.Signs() > page.SignsMost {
			below = append(below, numbers(m))
		}
		if m.When != "" {
			below = append(below, "at "+m.When)
		}
		r.Below = strings.Join(append(below, turnText(s, m.Deg)), ", ")
		r.Below = strings.Trim(r.Below, ", ")
		rows = append(rows, r)
	}
	for _, m := range marks.OfLens(s) {
		if !m.Stop {
			continue
		}
		r := page.Row{Name: "lens's stop", First: strings.TrimPrefix(m.Text, "closest "), Second: m.Other, Lens: true}
		r.Ring, r.Hand = angles(m.Deg)
		if m.Deg > 0 {
			rows = slices.Insert(rows, 0, r)
		} else {
			rows = append(rows, r)
		}
	}
	return page.NewTable(s, rows)
}

// distanceTable makes the table of a lens without angles: where each pull lands.
func distanceTable(s *plan.Shot) *page.Table {
	var rows []page.Row
	for _, p := range s.Pulls {
		first, second := sheet.Style(s).Both(float64(p.ToM))
		rows = append(rows, page.Row{Pulls: []int{p.Number}, Name: marks.MarkName(s, p.To, p.Target, float64(p.Land)), First: first, Second: second})
	}
	return page.NewTable(s, rows)
}

// turnText says in which turn of the wheel an angle of the ring lies, and where; "" where
// the wheel turns no more than once.
func turnText(s *plan.Shot, deg float64) string {
	if float64(s.Gear)*s.Optics.Ring.Throw() <= 360 || !(s.WheelMM > 0) {
		return ""
	}
	deg *= float64(s.Gear)
	turn := math.Floor(deg / 360)
	return fmt.Sprintf("turn %.0f, at %s", turn+1, sheet.Figures.AngleTo(deg-360*turn, 1))
}

// windowText writes a window at the hand: from where to where it is sharp.
func windowText(m marks.Mark, gear float64) string {
	if !m.Sharp() {
		return ""
	}
	return "sharp " + sheet.Figures.AngleFixed(m.Window[0]*gear, 1) + " to " + sheet.Figures.AngleFixed(m.Window[1]*gear, 1)
}
