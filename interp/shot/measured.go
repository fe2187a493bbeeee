// Tapes that were read in a shot.

package shot

import (
	"fmt"

	"pullscore/interp/names"
	"pullscore/interp/plan"
	"pullscore/interp/stage"
	"pullscore/lang"
)

// A measured is a tape that was read, with the line that says so.
type measured struct {
	*stage.Reading
	stmt *lang.Measured
}

// measure gives the stage the tapes that were read in the shot.
func (b *builder) measure() (list []measured) {
	in := b.lex.Outside()
	var read []*stage.Reading
	for _, s := range b.Section.Body {
		m, ok := s.(*lang.Measured)
		if !ok {
			continue
		}
		if b.staged == nil || !b.staged.placed {
			b.Fail(m.Range(), "not-staged", "`measured` needs a camera that has a place", "Below a scene, place it as in camera at 2 m downstage, aims at NAME.")
			continue
		}
		if r, ok := b.reading(m, in); ok {
			list, read = append(list, measured{r, m}), append(read, r)
		}
	}
	b.Stage.Measure(read)
	return list
}

// reading reads one tape.
func (b *builder) reading(m *lang.Measured, in names.Reader) (r *stage.Reading, ok bool) {
	r = &stage.Reading{AtEnd: m.CameraAtEnd}
	tape, okTape := in.Within(m.Reads, names.DimLength, 0.05, 1000, "a tape reads 5 cm to 1000 m")
	d, ok := in.Who(m.Name, names.DeclSubject)
	if m.At != nil {
		at, okAt := in.Who(m.At, names.DeclMark)
		r.Mark, ok = at, ok && okAt
	}
	if !ok || !okTape {
		return nil, false
	}
	r.Tape, r.Who = tape, b.Stage.Subjects[d.Name.Text]
	return r, r.Who != nil && r.Who.Ok
}

// fillReadings writes the tapes that were read into the shot, once everything lies where
// it does.
func (b *builder) fillReadings(list []measured) {
	for _, m := range list {
		mark := ""
		if m.Mark != nil {
			mark = m.Mark.Name.Text
		}
		if !m.Found {
			b.Fail(m.stmt.Range(), "wrong-kind", fmt.Sprintf("%s never stands at %s in this shot", m.Who.Name, mark), "")
			continue
		}
		b.Shot.Readings = append(b.Shot.Readings, plan.Reading{
			Who: m.Who.Name, At: mark, Tape: m.Tape, Floor: m.Floor, Line: m.stmt.Pos.Line,
		})
	}
}
