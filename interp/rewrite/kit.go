// What cameras and lenses do otherwise.

package rewrite

import (
	"slices"

	"pullscore/interp/names"
	"pullscore/lang"
)

// camera returns the edit that writes a statement of the shot's camera; none if another
// shot is taken with that too.
func (s Shot) camera(c lang.Clause) []lang.Edit {
	stmt := s.ofKit(names.DeclCamera, s.Camera, func(stmt lang.Statement) bool {
		switch stmt.(type) {
		case *lang.ISO:
			return c.Word == "iso"
		case *lang.Shutter:
			return c.Word == "shutter"
		case *lang.Support:
			return c.Word == "on"
		}
		return false
	})
	switch stmt := stmt.(type) {
	case *lang.ISO:
		return value(stmt.Value, c)
	case *lang.Shutter:
		return value(stmt.Value, c)
	case *lang.Support:
		return amend(s.file(stmt), stmt, c)
	}
	return nil
}

// value returns the edit that writes a value behind a word in place of another.
func value(was *lang.Expr, c lang.Clause) []lang.Edit {
	return []lang.Edit{{Range: was.Range(), Text: c.Text[len(c.Word)+1:]}}
}

// bothWays returns the edit that has the shot's lens marked for both ways; none if another
// shot is taken with that too.
func (s Shot) bothWays() []lang.Edit {
	stmt := s.ofKit(names.DeclLens, s.Lens, func(stmt lang.Statement) bool { _, ok := stmt.(*lang.Play); return ok })
	if stmt == nil {
		return nil
	}
	return amend(s.file(stmt), stmt, lang.Clause{Word: "marked", Text: "marked both ways"})
}

// ofKit returns a statement of a camera or lens that this shot alone is taken with; nil for
// none.
func (s Shot) ofKit(kind names.DeclKind, name string, wanted func(lang.Statement) bool) lang.Statement {
	d := s.Film.Scope.Find(kind, name)
	if d == nil || d.Section == nil || s.othersTake(kind, name) {
		return nil
	}
	i := slices.IndexFunc(d.Section.Body, wanted)
	if i < 0 {
		return nil
	}
	return d.Section.Body[i]
}

// othersTake reports whether another shot is taken with a camera or lens, or may be.
func (s Shot) othersTake(kind names.DeclKind, name string) bool {
	film, _ := s.Film.Scope.Settings["with"].(*lang.With)
	for _, other := range s.Film.Shots {
		if other.Section.Head.Range() == s.Head.Range() {
			continue
		}
		var own *lang.With
		for _, stmt := range other.Section.Body {
			if with, ok := stmt.(*lang.With); ok && own == nil {
				own = with
			}
		}
		with := names.Clauses(film, own)
		said := with.Camera
		if kind == names.DeclLens {
			said = with.Lens
		}
		if said == nil || said.Text == name {
			return true
		}
	}
	return false
}

// tapeFromLens returns the edit that has distances measured from the lens; none if the film
// has other shots, whose distances would change too.
func (s Shot) tapeFromLens() []lang.Edit {
	const text = "tape from lens"
	if len(s.Film.Shots) != 1 {
		return nil
	}
	if stmt := s.Film.Scope.Settings["tape"]; stmt != nil {
		return amend(s.file(stmt), stmt, lang.Clause{Word: "tape", Text: text})
	}
	if stmt := s.Film.Scope.Settings["plan"]; stmt != nil {
		return []lang.Edit{lang.InsertBelow(s.file(stmt), stmt, text)}
	}
	return nil
}
