// Edits: what is written otherwise in a shot.

package change

import (
	"pullscore/interp/names"
	"pullscore/lang"
)

// An EditKind says what an edit does.
type EditKind uint8

// The kinds of edits.
const (
	_        EditKind = iota
	Over              // a rack takes Seconds; one that starts and lands at moments starts as much earlier
	Later             // the one moment that a rack hangs on, which Text says, is Seconds later
	OnEndOf           // a rack hangs on the end of the line of Who, which is at Seconds
	Because           // a rack has a reason
	Hold              // a hold of Seconds above the statement
	Pause             // a pause of Seconds above the statement
	Follow            // a follow of Who below the statement
	MoveOver          // a movement, of Who or of the camera's What where that is "", takes Seconds; Text tells it from others
	PanWith           // a pan with Who below the statement
	WithTurn          // a rack has the times of the last move of the camera of the kind that Who says
	Side              // Who stands Metres to the side, as the statement that places them says it
)

// An Edit is one thing written otherwise.
type Edit struct {
	Kind    EditKind
	Item    int // the statement that it is about, from 1, as the shot is without the change
	Seconds float64
	Metres  float64
	Who     string
	What    string // the kind of a camera move
	Text    string
}

// above reports whether the edit puts a statement above its own, and below
// whether it puts one below.
func (e Edit) above() bool { return e.Kind == Hold || e.Kind == Pause }
func (e Edit) below() bool { return e.Kind == Follow || e.Kind == PanWith }

// Apply returns the statements of a shot with the edits made. It writes neither
// to the list nor to what the list holds.
func (c Change) Apply(items []names.Item) []names.Item {
	if len(c.Edits) == 0 {
		return items
	}
	about := map[int][]Edit{}
	for _, e := range c.Edits {
		about[e.Item] = append(about[e.Item], e)
	}
	out := make([]names.Item, 0, len(items)+len(c.Edits))
	for i, it := range items {
		edits := about[i+1]
		for _, e := range edits {
			if e.above() {
				out = append(out, names.Item{Stmt: e.statement()})
			}
		}
		for _, e := range edits {
			it.Stmt = e.rewritten(it.Stmt)
		}
		out = append(out, it)
		for _, e := range edits {
			if e.below() {
				out = append(out, names.Item{Stmt: e.statement()})
			}
		}
	}
	return out
}

// Moved returns where a statement stands once the edits are made; 0, which is
// none, stays 0.
func (c Change) Moved(item int) int {
	moved := item
	for _, e := range c.Edits {
		if item > 0 && (e.above() && item >= e.Item || e.below() && item > e.Item) {
			moved++
		}
	}
	return moved
}

// statement returns what an edit puts into the shot.
func (e Edit) statement() lang.Statement {
	switch e.Kind {
	case Hold:
		return &lang.Hold{Time: seconds(e.Seconds)}
	case Pause:
		return &lang.Pause{Time: seconds(e.Seconds)}
	}
	if e.Kind == PanWith {
		return &lang.Turn{Pan: true, With: &lang.Name{Text: e.Who}}
	}
	return &lang.Follow{Who: &lang.Name{Text: e.Who}}
}

// rewritten returns a statement with the edit made, or itself where the edit is not
// about such statements.
func (e Edit) rewritten(s lang.Statement) lang.Statement {
	switch s := s.(type) {
	case *lang.Rack:
		return e.rewrite(s)
	}
	if e.Kind == MoveOver {
		return e.slowed(s)
	}
	return s
}

// slowed returns a movement that takes another time. One that has its times from two
// moments, or from another movement, stays as it is.
func (e Edit) slowed(s lang.Statement) lang.Statement {
	over := seconds(e.Seconds)
	free := func(on, landing *lang.Anchor, alongside string) bool {
		return alongside == "" && (on == nil || landing == nil)
	}
	switch s := s.(type) {
	case *lang.Moves:
		made := *s
		made.Over, made.Speed = over, nil
		return &made
	case *lang.Dolly:
		if made := *s; free(s.On, s.Landing, s.Alongside) {
			made.Over, made.Speed = over, nil
			return &made
		}
	case *lang.Track:
		if made := *s; free(s.On, s.Landing, s.Alongside) {
			made.Over, made.Speed = over, nil
			return &made
		}
	case *lang.Boom:
		if made := *s; free(s.On, s.Landing, s.Alongside) {
			made.Over, made.Speed = over, nil
			return &made
		}
	case *lang.Zoom:
		if made := *s; free(s.On, s.Landing, s.Alongside) {
			made.Over = over
			return &made
		}
	case *lang.Turn:
		if made := *s; s.With == nil && free(s.On, s.Landing, s.Alongside) {
			made.Over = over
			return &made
		}
	}
	return s
}

// rewrite returns a rack with the edit made, or the rack itself where the edit
// is not about racks.
func (e Edit) rewrite(r *lang.Rack) *lang.Rack {
	made := *r
	switch e.Kind {
	case Over:
		made.Over = seconds(e.Seconds)
		if r.Landing != nil {
			made.On = nil
		}
	case Later:
		made.On, made.Landing = later(r.On, e.Seconds), later(r.Landing, e.Seconds)
	case OnEndOf:
		made.On, made.Landing = &lang.Anchor{Kind: lang.AnchorEnd, Name: &lang.Name{Text: e.Who}}, nil
	case WithTurn:
		made.On, made.Landing, made.Over, made.Profile, made.Alongside = nil, nil, nil, lang.ProfileUnset, e.Who
	case Because:
		made.Because = &lang.Text{Value: "why"}
	default:
		return r
	}
	return &made
}

// later returns a moment with an offset; nil for none.
func later(a *lang.Anchor, t float64) *lang.Anchor {
	if a == nil {
		return nil
	}
	moved := *a
	moved.Offset = seconds(t)
	return &moved
}

// seconds returns a time as a plan writes it.
func seconds(t float64) *lang.Expr {
	return &lang.Expr{Kind: lang.ExprNumber, Value: t, Unit: lang.UnitS}
}
