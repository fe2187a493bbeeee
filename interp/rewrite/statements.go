// What the statements of a shot say otherwise.

package rewrite

import (
	"math"

	"pullscore/interp/change"
	"pullscore/interp/names"
	"pullscore/interp/units"
	"pullscore/lang"
)

// statement returns the edits that make one edit of a change.
func (s Shot) statement(e change.Edit, u units.Style) []lang.Edit {
	switch e.Kind {
	case change.Side:
		return s.side(e, u)
	case change.Pause:
		return s.pause(e, u)
	}
	if e.Item < 1 || e.Item > len(s.Items) || !s.ownLine(s.Items[e.Item-1]) {
		return nil
	}
	stmt := s.Items[e.Item-1].Stmt
	f := s.file(stmt)
	text := e.Writes(u)
	switch e.Kind {
	case change.Hold:
		return []lang.Edit{lang.InsertAbove(f, stmt, text)}
	case change.Follow, change.PanWith:
		return []lang.Edit{lang.InsertBelow(f, stmt, text)}
	case change.Later:
		return later(stmt, u.Time(e.Seconds))
	case change.Over, change.MoveOver:
		clauses := []lang.Clause{{Word: "over", Text: text}}
		if r, ok := stmt.(*lang.Rack); ok && r.On != nil && r.Landing != nil {
			clauses = append(clauses, lang.Clause{Word: "on"})
		}
		return amend(f, stmt, clauses...)
	case change.OnEndOf:
		return amend(f, stmt, lang.Clause{Word: "landing"}, lang.Clause{Word: "on", Text: text})
	case change.WithTurn:
		return amend(f, stmt, lang.Clause{Word: "on"}, lang.Clause{Word: "landing"}, lang.Clause{Word: "over"},
			lang.Clause{Word: "smooth"}, lang.Clause{Word: "with", Text: text})
	case change.Because:
		return amend(f, stmt, lang.Clause{Word: "because", Text: text})
	}
	return nil
}

// later returns the edit that adds a time to the one moment of a rack.
func later(stmt lang.Statement, time string) []lang.Edit {
	r, ok := stmt.(*lang.Rack)
	if !ok {
		return nil
	}
	moment := r.On
	if moment == nil {
		moment = r.Landing
	}
	if moment == nil || moment.Offset != nil {
		return nil
	}
	at := moment.Range()
	at.Start = at.End
	return []lang.Edit{{Range: at, Text: " + " + time}}
}

// pause returns the edit that writes a pause above the first line that takes time.
func (s Shot) pause(e change.Edit, u units.Style) []lang.Edit {
	text := e.Writes(u)
	for _, stmt := range s.Body {
		switch stmt.(type) {
		case *lang.Subject, *lang.Voice, *lang.Remark, *lang.Clip, *lang.Bad:
			continue
		}
		if names.SettingKey(stmt) != "" {
			continue
		}
		return []lang.Edit{lang.InsertAbove(s.file(stmt), stmt, text)}
	}
	return nil
}

// side returns the edit that places a subject farther to the side. Where others stand by
// the same line too, the shot gets a line of its own.
func (s Shot) side(e change.Edit, u units.Style) []lang.Edit {
	stmt, own := s.subject(e.Who)
	if stmt == nil || stmt.Place.Side == nil {
		return nil
	}
	way := " right"
	if e.Metres < 0 {
		way = " left"
	}
	at := stmt.Place.Range()
	at.Start = stmt.Place.Side.Range().Start
	edit := lang.Edit{Range: at, Text: u.Gap(math.Abs(e.Metres)) + way}
	if own || len(s.Film.Shots) == 1 {
		return []lang.Edit{edit}
	}
	src, whole := s.file(stmt).Source, stmt.Range()
	text := string(src[whole.Start.Offset:at.Start.Offset]) + edit.Text + string(src[at.End.Offset:whole.End.Offset])
	return s.begin(text)
}

// subject returns the statement that places a subject in the shot, and whether it is the
// shot's own.
func (s Shot) subject(who string) (stmt *lang.Subject, own bool) {
	for _, b := range s.Body {
		if stmt, ok := b.(*lang.Subject); ok && stmt.Name.Text == who {
			return stmt, true
		}
	}
	if d := s.Film.Scope.Find(names.DeclSubject, who); d != nil {
		stmt, _ = d.Stmt.(*lang.Subject)
	}
	return stmt, false
}

// ownLine reports whether a statement is said once in the plan: in the shot, or in a move
// that nothing else uses.
func (s Shot) ownLine(it names.Item) bool {
	move := it.In.Env.Move()
	return move == nil || s.uses(move, map[*lang.Move]bool{}) == 1
}

// uses counts the places that use a move, up to 2, with those of the moves that use it.
func (s Shot) uses(move *lang.Move, within map[*lang.Move]bool) (n int) {
	if within[move] {
		return 0 // a circle, which has been told
	}
	within[move] = true
	defer delete(within, move)
	for _, sec := range s.Film.Sections {
		calls := 0
		for _, stmt := range sec.Body {
			if call, ok := stmt.(*lang.Call); ok && call.Name.Text == move.Name.Text {
				calls++
			}
		}
		if by, ok := sec.Head.(*lang.Move); ok && calls > 0 {
			calls *= s.uses(by, within)
		}
		if n += calls; n > 1 {
			return 2
		}
	}
	return n
}
