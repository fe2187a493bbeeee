// A shot to be written into, and its set-up.

package rewrite

import (
	"pullscore/interp/change"
	"pullscore/interp/film"
	"pullscore/interp/names"
	"pullscore/interp/units"
	"pullscore/lang"
)

// A Shot is a shot as its plan has it.
type Shot struct {
	Film         *film.Film
	Head         *lang.Shot
	Body         []lang.Statement
	Settings     map[string]lang.Statement // of the shot itself
	Items        []names.Item              // its statements, moves written out
	Camera, Lens string                    // that it is taken with
}

// Edits returns the edits that write a change into the plan. It returns none if a part of
// the change cannot be written for this shot alone.
func (s Shot) Edits(ch change.Change, u units.Style) []lang.Edit {
	var list []lang.Edit
	whole := true
	add := func(part []lang.Edit) {
		whole = whole && len(part) > 0
		list = append(list, part...)
	}
	if clauses := ch.SetUp(u); len(clauses) > 0 {
		add(s.SetUp(clauses...))
	}
	for _, clause := range ch.OfCamera(u) {
		add(s.camera(clause))
	}
	if ch.BothWays {
		add(s.bothWays())
	}
	if ch.FromLens {
		add(s.tapeFromLens())
	}
	for _, e := range ch.Edits {
		add(s.statement(e, u))
	}
	if !whole {
		return nil
	}
	return list
}

// SetUp returns the edit that writes clauses into the shot's own set-up, or gives it one.
func (s Shot) SetUp(clauses ...lang.Clause) []lang.Edit {
	with, ok := s.Settings["with"].(*lang.With)
	if ok {
		return amend(s.file(with), with, clauses...)
	}
	text := "with "
	for i, c := range clauses {
		if i > 0 {
			text += ", "
		}
		text += c.Text
	}
	return s.begin(text)
}

// begin returns the edit that writes a line right below the header of the shot.
func (s Shot) begin(text string) []lang.Edit {
	const indent = "  "
	return []lang.Edit{lang.InsertBelow(s.file(s.Head), s.Head, indent+text)}
}

// file returns the file that a statement stands in, as far as edits need it.
func (s Shot) file(of lang.Statement) *lang.File { return File(s.Film, of) }

// File returns the file of a plan that a statement stands in, as far as edits need it.
func File(f *film.Film, of lang.Statement) *lang.File {
	path := of.Range().File
	return &lang.File{Path: path, Source: f.Source(path)}
}

// amend returns the edit that writes clauses into a statement; nil if it cannot.
func amend(f *lang.File, stmt lang.Statement, clauses ...lang.Clause) []lang.Edit {
	if e, ok := lang.AmendAll(f, stmt, clauses...); ok {
		return []lang.Edit{e}
	}
	return nil
}
