// The marks of a shot on the ring: what strip and dial are made of.

package marks

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"pullscore/interp/plan"
	"pullscore/render/draw"
	"pullscore/render/sheet"
)

// A Mark is a setting of the ring that has a name.
type Mark struct {
	Name   string     // with the time where one name has several places
	Who    string     // the name alone
	When   string     // that time, "" where the name has one place
	Label  string     // the name with the distance, as it stands beside the mark
	Deg    float64    // on the ring, from its closest stop
	Tape   float64    // metres as the tape reads; may be infinite or NaN
	Sides  [2]float64 // ring degrees where it lies come to from the far side, and from the near one; alike where it is one place
	Window [2]float64 // ring degrees in which it is sharp; NaN where not known
	Open   [2]bool    // a stop of the ring bounds the window: the near one, the far one
	Start  bool       // the focus starts here
	Pulls  []int      // that land here
	Sigma  float64    // how well the lens's marks tell its place, ring degrees; NaN where not known
	Rough  bool       // not known well enough to go by: it is to be set by eye
	time   float64    // when the subject is here, seconds
	moved  bool       // somebody moves: it is not always here
	length bool       // the name is a distance
}

// sameMark is how far apart, in ring degrees, settings of one name may lie to
// share a mark: on a ring of 20 cm it is 0.03 mm.
const sameMark = 0.02

// Of returns the marks of a shot from the closest stop on: where the
// focus starts, where each pull lands, and where the other subjects stand that
// always stand there.
func Of(s *plan.Shot) []Mark {
	if s.Optics.Ring == nil {
		return nil
	}
	marks := addMark(nil, startMark(s))
	for _, p := range s.Pulls {
		marks = addMark(marks, pullMark(s, p))
	}
	for _, u := range s.Subjects {
		named := slices.ContainsFunc(marks, func(m Mark) bool { return m.Name == u.Name })
		if !named && !sheet.Moves(s, u) {
			marks = addMark(marks, Mark{
				Name: u.Name, Deg: float64(u.RingDeg), Tape: float64(u.Distance), Window: noWindow, Sigma: float64(u.LawSigma), Rough: byLaw(s),
			})
		}
	}
	labelMarks(s, marks)
	for i := range marks {
		marks[i].Sides = sides(s, marks[i])
	}
	slices.SortStableFunc(marks, func(a, b Mark) int {
		return cmp.Or(cmp.Compare(a.Deg, b.Deg), strings.Compare(a.Name, b.Name))
	})
	return marks
}

// sides returns where the ring stands at a mark, in degrees, come to from the far side and
// from the near one. On a ring that was marked both ways the mark lies between: half of the
// play is lost along the travel either way, so the ring has to go that much farther. No
// place lies beyond a stop of the ring.
func sides(s *plan.Shot, m Mark) [2]float64 {
	if m.Aside() || s.Ring == nil || s.Ring.Marked != "both" || !(s.Ring.Play > 0) {
		return [2]float64{m.Deg, m.Deg}
	}
	half := float64(s.Ring.Play) / 2
	fromFar, fromNear := m.Deg-half, m.Deg+half
	if s.Ring.Ends == "slip" || s.Ring.Ends == "linear" { // nothing holds the ring there
		return [2]float64{fromFar, fromNear}
	}
	atClosest, atThrow := s.Optics.Ring.Stops()
	if atClosest {
		fromFar = max(fromFar, min(m.Deg, 0))
	}
	if atThrow {
		fromNear = min(fromNear, max(m.Deg, s.Optics.Ring.Throw()))
	}
	return [2]float64{fromFar, fromNear}
}

// addMark adds a mark, to that of the same name and place where there is one.
func addMark(marks []Mark, m Mark) []Mark {
	if !sheet.Finite(m.Deg) {
		return marks
	}
	for i := range marks {
		if o := &marks[i]; o.Name == m.Name && math.Abs(o.Deg-m.Deg) <= sameMark {
			o.Start, o.Pulls, o.Rough = o.Start || m.Start, append(o.Pulls, m.Pulls...), o.Rough || m.Rough
			return marks
		}
	}
	return append(marks, m)
}

// labelMarks writes what stands beside the marks: name and distance, and the
// time where a name has several places because somebody moves.
func labelMarks(s *plan.Shot, marks []Mark) {
	places := map[string]int{}
	for _, m := range marks {
		places[m.Name]++
	}
	for i := range marks {
		m := &marks[i]
		several := places[m.Name] > 1
		m.Who, m.Label = m.Name, m.Name
		if !m.length && !math.IsNaN(m.Tape) {
			m.Label += ", " + sheet.Style(s).Tape(m.Tape)
		}
		if m.Rough {
			m.Label = RoughSign + " " + m.Label
		}
		if several && m.moved {
			m.When = sheet.Figures.Time(m.time)
			m.Name, m.Label = m.Name+", "+sheet.Figures.Time(m.time), m.Label+", "+sheet.Figures.Time(m.time)
		}
	}
}

// RoughSign stands before a mark that is to be set by eye.
const RoughSign = "~"

// byLaw reports whether the lens has no marks, so that every place is a computed one.
func byLaw(s *plan.Shot) bool { return !s.Optics.Marked }

// rough reports whether a finding says that the mark of a pull is not known well enough.
func rough(s *plan.Shot, p *plan.Pull) bool {
	return byLaw(s) || slices.ContainsFunc(s.Flags, func(f plan.Flag) bool {
		return f.Pull == p.Number && (f.Code == "rough-mark" || f.Code == "few-marks")
	})
}

// noWindow is that of a mark of which none is known, or wanted.
var noWindow = [2]float64{math.NaN(), math.NaN()}

// Aside reports whether nothing of the plan happens at the mark.
func (m Mark) Aside() bool { return !m.Start && len(m.Pulls) == 0 }

// Ink is that of the mark and its label.
func (m Mark) Ink() draw.Ink {
	if m.Aside() {
		return draw.Grey
	}
	return draw.Black
}

// startMark is where the focus is when the shot starts.
func startMark(s *plan.Shot) Mark {
	start := &s.Optics.Start
	if start.Text == "" && start.Name == "" {
		return Mark{Deg: math.NaN()}
	}
	deg := s.RingDeg(start.Distance, 0)
	return Mark{
		Name: sheet.TargetName(s, "", cmp.Or(start.Text, start.Name)), Deg: deg, Tape: s.ToTape(start.Distance, 0), Start: true,
		moved: sheet.Moves(s, s.Subject(start.Name)), length: isLength(start.Name, start.Names, start.Text),
		Sigma: s.LawSigma(start.Distance, 0), Rough: byLaw(s),
	}.withWindow(s, start.Distance, 0)
}

func pullMark(s *plan.Shot, p *plan.Pull) Mark {
	m := Mark{
		Name: sheet.TargetName(s, "", cmp.Or(p.Target, p.To)), Deg: float64(p.ToDeg), Tape: float64(p.ToM), Pulls: []int{p.Number},
		time: float64(p.Land), moved: sheet.Moves(s, s.Subject(p.To)), length: isLength(p.To, p.Goal.Names, p.Target),
		Sigma: float64(p.LawSigma), Rough: rough(s, p),
	}
	lo, hi := float64(p.WindowHand[0]/s.Gear), float64(p.WindowHand[1]/s.Gear)
	if !(lo <= hi) { // crossed where no setting holds all that should be sharp
		m.Window = noWindow
		return m
	}
	return m.bounded(s, lo, hi)
}

// isLength reports whether a target is written as a distance, or infinity.
func isLength(name string, names []string, text string) bool {
	return name == "" && len(names) == 0 && (text == "inf" || text != "" && strings.ContainsRune("0123456789.", rune(text[0])))
}

// MarkName names a mark as the plan does: the subject, or an offset, a split or
// a distance as written. Someone who moves is named with the time.
func MarkName(s *plan.Shot, name, text string, t float64) string {
	target := sheet.TargetName(s, "", text)
	if target == "" {
		target = name
	}
	if sheet.Moves(s, s.Subject(name)) {
		return target + ", " + sheet.Figures.Time(t)
	}
	return target
}

// withWindow gives the mark the settings that keep what is x metres from the
// lens sharp.
func (m Mark) withWindow(s *plan.Shot, x, t float64) Mark {
	near, far := s.Judged(x, t).Window(x)
	lo := s.RingHeld(near, t)
	hi := s.RingHeld(far, t)
	return m.bounded(s, lo, hi)
}

// bounded holds a window to the ring.
func (m Mark) bounded(s *plan.Shot, lo, hi float64) Mark {
	throw := s.Optics.Ring.Throw()
	atClosest, atThrow := s.Optics.Ring.Stops()
	m.Open = [2]bool{atClosest && lo <= 0, atThrow && hi >= throw}
	m.Window = [2]float64{max(lo, 0), min(hi, throw)}
	if m.Window[0] > m.Window[1] { // all of it lies beyond a stop of the ring
		m.Window = noWindow
	}
	return m
}

// Sharp reports whether the mark has a window.
func (m Mark) Sharp() bool { return sheet.Finite(m.Window[0]) && sheet.Finite(m.Window[1]) }

// Title says all of a mark in a sentence.
func (m Mark) Title(s *plan.Shot) string {
	text := m.Name + " at " + sheet.Figures.Angle(m.Deg) + " of the ring"
	if first, second := sheet.Style(s).Both(m.Tape); !math.IsNaN(m.Tape) {
		text += ", " + first
		if second != "" {
			text += " (" + second + ")"
		}
	}
	if m.Sides[0] < m.Sides[1] {
		text += ", come to from near at " + sheet.Figures.AngleTo(m.Sides[1], 1) + ", from far at " + sheet.Figures.AngleTo(m.Sides[0], 1)
	}
	if m.Start {
		text += ", the focus starts here"
	}
	if len(m.Pulls) > 0 {
		text += fmt.Sprintf(", %s: %s", sheet.NounOf(len(m.Pulls), "pull"), sheet.JoinNumbers(m.Pulls))
	}
	return text
}
