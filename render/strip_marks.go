// The marks of a shot on the ring: what strip and dial are made of.

package render

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"pullscore/interp/plan"
	"pullscore/render/draw"
)

// A ringMark is a setting of the ring that has a name.
type ringMark struct {
	name   string     // with the time where one name has several places
	label  string     // the name with the distance, as it stands beside the mark
	deg    float64    // on the ring, from its closest stop
	tape   float64    // metres as the tape reads; may be infinite or NaN
	window [2]float64 // ring degrees in which it is sharp; NaN where not known
	open   [2]bool    // a stop of the ring bounds the window: the near one, the far one
	start  bool       // the focus starts here
	pulls  []int      // that land here
	time   float64    // when the subject is here, seconds
	moved  bool       // somebody moves: it is not always here
	length bool       // the name is a distance
}

// sameMark is how far apart, in ring degrees, settings of one name may lie to
// share a mark: on a ring of 20 cm it is 0.03 mm.
const sameMark = 0.02

// ringMarks returns the marks of a shot from the closest stop on: where the
// focus starts, where each pull lands, and where the other subjects stand that
// always stand there.
func ringMarks(s *plan.Shot) []ringMark {
	if s.Optics.Ring == nil {
		return nil
	}
	marks := addMark(nil, startMark(s))
	for _, p := range s.Pulls {
		marks = addMark(marks, pullMark(s, p))
	}
	for _, u := range s.Subjects {
		named := slices.ContainsFunc(marks, func(m ringMark) bool { return m.name == u.Name })
		if !named && !moves(s, u) {
			marks = addMark(marks, ringMark{name: u.Name, deg: float64(u.RingDeg), tape: float64(u.Distance), window: noWindow})
		}
	}
	labelMarks(s, marks)
	slices.SortStableFunc(marks, func(a, b ringMark) int {
		return cmp.Or(cmp.Compare(a.deg, b.deg), strings.Compare(a.name, b.name))
	})
	return marks
}

// addMark adds a mark, to that of the same name and place where there is one.
func addMark(marks []ringMark, m ringMark) []ringMark {
	if !finite(m.deg) {
		return marks
	}
	for i := range marks {
		if o := &marks[i]; o.name == m.name && math.Abs(o.deg-m.deg) <= sameMark {
			o.start, o.pulls = o.start || m.start, append(o.pulls, m.pulls...)
			return marks
		}
	}
	return append(marks, m)
}

// labelMarks writes what stands beside the marks: name and distance, and the
// time where a name has several places because somebody moves.
func labelMarks(s *plan.Shot, marks []ringMark) {
	places := map[string]int{}
	for _, m := range marks {
		places[m.name]++
	}
	for i := range marks {
		m := &marks[i]
		several := places[m.name] > 1
		m.label = m.name
		if !m.length && !math.IsNaN(m.tape) {
			m.label += ", " + length(s, m.tape)
		}
		if several && m.moved {
			m.name, m.label = m.name+", "+seconds(m.time), m.label+", "+seconds(m.time)
		}
	}
}

// noWindow is that of a mark of which none is known, or wanted.
var noWindow = [2]float64{math.NaN(), math.NaN()}

// aside reports whether nothing of the plan happens at the mark.
func (m ringMark) aside() bool { return !m.start && len(m.pulls) == 0 }

// ink is that of the mark and its label.
func (m ringMark) ink() draw.Ink {
	if m.aside() {
		return draw.Grey
	}
	return draw.Black
}

// startMark is where the focus is when the shot starts.
func startMark(s *plan.Shot) ringMark {
	start := &s.Optics.Start
	if start.Text == "" && start.Name == "" {
		return ringMark{deg: math.NaN()}
	}
	deg, _ := s.RingDeg(start.Distance, 0)
	return ringMark{
		name: targetName(s, "", cmp.Or(start.Text, start.Name)), deg: deg, tape: s.ToTape(start.Distance, 0), start: true,
		moved: moves(s, s.Subject(start.Name)), length: isLength(start.Name, start.Names, start.Text),
	}.withWindow(s, start.Distance, 0)
}

func pullMark(s *plan.Shot, p *plan.Pull) ringMark {
	m := ringMark{
		name: targetName(s, "", cmp.Or(p.Target, p.To)), deg: float64(p.ToDeg), tape: float64(p.ToM), pulls: []int{p.Number},
		time: float64(p.Land), moved: moves(s, s.Subject(p.To)), length: isLength(p.To, p.Goal.Names, p.Target),
	}
	lo, hi := float64(p.WindowHand[0]/s.Gear), float64(p.WindowHand[1]/s.Gear)
	if !(lo <= hi) { // crossed where no setting holds all that should be sharp
		m.window = noWindow
		return m
	}
	return m.bounded(s, lo, hi)
}

// isLength reports whether a target is written as a distance, or infinity.
func isLength(name string, names []string, text string) bool {
	return name == "" && len(names) == 0 && (text == "inf" || text != "" && strings.ContainsRune("0123456789.", rune(text[0])))
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
