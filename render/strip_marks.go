// The marks of a shot on the ring: what strip and dial are made of.

package render

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"pullscore/interp/plan"
)

// A ringMark is a setting of the ring that has a name.
type ringMark struct {
	name   string
	deg    float64    // on the ring, from its closest stop
	tape   float64    // metres as the tape reads; may be infinite or NaN
	window [2]float64 // ring degrees in which it is sharp; NaN where not known
	open   [2]bool    // a stop of the ring bounds the window: the near one, the far one
	start  bool       // the focus starts here
	pulls  []int      // that land here
}

// sameMark is how far apart, in ring degrees, settings of one name may lie to
// share a mark: on a ring of 20 cm it is 0.03 mm.
const sameMark = 0.02

// ringMarks returns the marks of a shot from the closest stop on: where the
// focus starts, where each pull lands, and where the other subjects stand.
// Someone who moves has a mark for every place that the focus lands at, with
// the time in its name.
func ringMarks(s *plan.Shot) []ringMark {
	if s.Optics.Ring == nil {
		return nil
	}
	var marks []ringMark
	add := func(m ringMark) {
		if !finite(m.deg) {
			return
		}
		for i := range marks {
			if o := &marks[i]; o.name == m.name && math.Abs(o.deg-m.deg) <= sameMark {
				o.start, o.pulls = o.start || m.start, append(o.pulls, m.pulls...)
				return
			}
		}
		marks = append(marks, m)
	}
	add(startMark(s))
	for _, p := range s.Pulls {
		add(pullMark(s, p))
	}
	for _, u := range s.Subjects {
		add(subjectMark(s, u))
	}
	slices.SortStableFunc(marks, func(a, b ringMark) int {
		switch {
		case a.deg < b.deg:
			return -1
		case a.deg > b.deg:
			return 1
		}
		return strings.Compare(a.name, b.name)
	})
	return marks
}

// startMark is where the focus is when the shot starts.
func startMark(s *plan.Shot) ringMark {
	start := &s.Optics.Start
	if start.Text == "" && start.Name == "" {
		return ringMark{deg: math.NaN()}
	}
	deg, _ := s.RingDeg(start.Distance, 0)
	return ringMark{
		name: markName(s, start.Name, start.Text, 0), deg: deg,
		tape: s.ToTape(start.Distance, 0), start: true,
	}.withWindow(s, start.Distance, 0)
}

func pullMark(s *plan.Shot, p *plan.Pull) ringMark {
	land := float64(p.Land)
	m := ringMark{
		name: markName(s, p.To, p.Target, land), deg: float64(p.ToDeg),
		tape: float64(p.ToM), pulls: []int{p.Number},
	}
	lo, hi := float64(p.WindowHand[0]/s.Gear), float64(p.WindowHand[1]/s.Gear)
	if !(lo <= hi) { // crossed where no setting holds all that should be sharp
		m.window = [2]float64{math.NaN(), math.NaN()}
		return m
	}
	return m.bounded(s, lo, hi)
}

func subjectMark(s *plan.Shot, u *plan.Subject) ringMark {
	return ringMark{
		name: markName(s, u.Name, u.Name, 0), deg: float64(u.RingDeg), tape: float64(u.Distance),
	}.withWindow(s, s.LensDistanceAt(u, 0), 0)
}

// markName names a mark as the plan does: the subject, or an offset, a split or
// a distance as written. Someone who moves is named with the time.
func markName(s *plan.Shot, name, text string, t float64) string {
	target := targetName(s, "", text)
	if target == "" {
		target = name
	}
	if moves(s, s.Subject(name)) {
		return target + ", " + seconds(t)
	}
	return target
}

// moves reports whether the distance to a subject changes.
func moves(s *plan.Shot, u *plan.Subject) bool {
	return u != nil && (u.Along.Moves() || s.Optics.Camera.Moves())
}

// withWindow gives the mark the settings that keep what is x metres from the
// lens sharp.
func (m ringMark) withWindow(s *plan.Shot, x, t float64) ringMark {
	near, far := s.Setting(t).Window(x)
	lo, _ := s.RingDeg(near, t)
	hi, _ := s.RingDeg(far, t)
	return m.bounded(s, lo, hi)
}

// bounded holds a window to the ring.
func (m ringMark) bounded(s *plan.Shot, lo, hi float64) ringMark {
	throw := s.Optics.Ring.Throw()
	m.open = [2]bool{lo <= 0, hi >= throw}
	m.window = [2]float64{max(lo, 0), min(hi, throw)}
	return m
}

// sharp reports whether the mark has a window.
func (m ringMark) sharp() bool { return finite(m.window[0]) && finite(m.window[1]) }

// numbers writes what starts or lands at a mark: S for the start, and the
// numbers of the pulls.
func (m ringMark) numbers() string {
	var parts []string
	if m.start {
		parts = append(parts, "S")
	}
	for _, n := range m.pulls {
		parts = append(parts, strconv.Itoa(n))
	}
	return strings.Join(parts, " ")
}

// title says all of a mark in a sentence.
func (m ringMark) title(s *plan.Shot) string {
	text := m.name + " at " + degrees(m.deg) + " of the ring"
	if first, second := lengths(s, m.tape); !math.IsNaN(m.tape) {
		text += ", " + first
		if second != "" {
			text += " (" + second + ")"
		}
	}
	if m.start {
		text += ", the focus starts here"
	}
	if len(m.pulls) > 0 {
		text += fmt.Sprintf(", %s: %s", nounOf(len(m.pulls), "pull"), joinNumbers(m.pulls))
	}
	return text
}

// nounOf is a noun for so many things.
func nounOf(n int, thing string) string {
	if n == 1 {
		return thing
	}
	return thing + "s"
}

// joinNumbers writes numbers as a list.
func joinNumbers(numbers []int) string {
	parts := make([]string, len(numbers))
	for i, n := range numbers {
		parts[i] = strconv.Itoa(n)
	}
	return strings.Join(parts, ", ")
}
