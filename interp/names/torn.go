// Torn statements: what is left of a line that could not be read whole.

package names

import (
	"slices"

	"pullscore/lang"
)

// Torn are the statements that stand in place of lines that could not be read
// whole, each with the words of the clauses that were lost.
type Torn map[lang.Statement][]string

// Lost reports whether a clause of a statement, or one of several, was lost: what it
// says is not known. The words of clauses that change no time and no place do not
// count where none is asked for.
func (t Torn) Lost(s lang.Statement, clauses ...string) bool {
	return slices.ContainsFunc(t[s], func(word string) bool {
		if len(clauses) > 0 {
			return word == "" || slices.Contains(clauses, word)
		}
		return !slices.Contains([]string{"because", "smooth", "even", "deep", "sways"}, word)
	})
}

// Heal returns a file with what is left of its lines in the place of those that
// could not be read whole: what a part of a line says holds, whatever is wrong with
// the rest of it.
func Heal(f *lang.File) (*lang.File, Torn) {
	torn := Torn{}
	healed := &lang.File{Path: f.Path, Source: f.Source, Body: torn.heal(f.Body)}
	for _, sec := range f.Sections {
		head := torn.heal([]lang.Statement{sec.Head})[0]
		healed.Sections = append(healed.Sections, &lang.Section{Head: head, Body: torn.heal(sec.Body)})
	}
	return healed, torn
}

func (t Torn) heal(body []lang.Statement) []lang.Statement {
	var healed []lang.Statement
	for i, s := range body {
		bad, ok := s.(*lang.Bad)
		if !ok || bad.Partial == nil || len(bad.Lost) > 0 && !standsTorn(bad.Partial) {
			continue
		}
		if healed == nil {
			healed = slices.Clone(body)
		}
		healed[i] = bad.Partial
		if len(bad.Lost) > 0 {
			t[bad.Partial] = bad.Lost
		}
	}
	if healed == nil {
		return body
	}
	return healed
}

// standsTorn reports whether something can be made of a statement that lacks a
// clause.
func standsTorn(s lang.Statement) bool {
	switch s.(type) {
	case *lang.CutFile, *lang.Script, *lang.Clips:
		return false
	}
	return true
}
