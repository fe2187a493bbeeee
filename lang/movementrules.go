// The rules of camera moves, and of racks that go with one, that their tags cannot say.

package lang

import (
	"slices"

	"github.com/alecthomas/participle/v2/lexer"
)

// times is what a camera move or a rack says of when it happens. A field is nil or ""
// where it says nothing.
type times struct {
	over, speed *Expr
	on, landing *Anchor
	alongside   string
	// until and with are those of a turn that goes as a subject goes.
	until *Anchor
	with  *Name
	// free tells that it need not say how long it takes.
	free bool
}

// timesOf returns the times of a camera move or a rack, and false for any other statement.
func timesOf(tree Statement) (times, bool) {
	switch s := tree.(type) {
	case *Rack:
		return times{over: s.Over, on: s.On, landing: s.Landing, alongside: s.Alongside, free: true}, true
	case *Dolly:
		return times{over: s.Over, speed: s.Speed, on: s.On, landing: s.Landing, alongside: s.Alongside}, true
	case *Track:
		return times{over: s.Over, speed: s.Speed, on: s.On, landing: s.Landing, alongside: s.Alongside}, true
	case *Boom:
		return times{over: s.Over, speed: s.Speed, on: s.On, landing: s.Landing, alongside: s.Alongside}, true
	case *CameraMoves:
		return times{over: s.Over, speed: s.Speed, on: s.On, landing: s.Landing, alongside: s.Alongside}, true
	case *Zoom:
		return times{over: s.Over, on: s.On, landing: s.Landing, alongside: s.Alongside}, true
	case *Turn:
		return times{over: s.Over, on: s.On, landing: s.Landing, alongside: s.Alongside, until: s.Until, with: s.With}, true
	}
	return times{}, false
}

// timeRules returns the first mistake in the times of a camera move or a rack: two clauses
// that say the same, one that it has no use for, or none that says how long it takes.
// start and end are those of parser.rules.
func (p *parser) timeRules(t times, s *spec, start lexer.Checkpoint, end int) *mistake {
	both := t.on != nil && t.landing != nil
	switch {
	case t.with != nil:
		return p.unused(s, start, end, func(field string) bool { return exclude("With", field) },
			"a turn with somebody goes as they go, and has no `%s`")
	case t.until != nil:
		return p.unused(s, start, end, func(field string) bool { return field == "Until" }, "only a turn with somebody has an `%s`")
	case t.alongside != "":
		return p.unused(s, start, end, func(field string) bool { return exclude("Alongside", field) },
			"`with "+t.alongside+"` already says what `%s` says")
	case t.free:
		return nil
	case both && (t.over != nil || t.speed != nil):
		return p.unused(s, start, end, func(field string) bool { return field == "Over" || field == "Speed" },
			"its start and its landing already give its length, which `%s` gives too")
	case both:
		return nil
	}
	return p.oneOf(s, s.shape().fieldNamed("Over"), t.over, t.speed, int(start.RawCursor()), end)
}

// unused tells of the first clause of a statement whose field has no use. The message
// takes the word that begins it.
func (p *parser) unused(s *spec, start lexer.Checkpoint, end int, useless func(field string) bool, message string) *mistake {
	saved := p.endAt(end)
	defer func() { p.tokens[end] = saved }()
	w := p.walker(start)
	w.walk(s.shape().form)
	for _, at := range w.begun {
		if clause := w.alternativeAt(s.shape(), at).leaves(); useless(clause[0].field.name) {
			word := p.tokens[at].Value
			f := faultAt(&p.tokens[at], "conflicting-clauses", message, word).offers(withoutClause(&p.tokens[at]))
			return &mistake{fault: f, token: at, clause: at, word: word}
		}
	}
	return nil
}

// saidByEnds reports whether a statement that has to say how long it takes does so by
// clauses that were read: by its start and landing, by another move that it goes with,
// or by a subject with whom it goes.
func (w *walker) saidByEnds(s *spec) bool {
	said := w.fieldsSaid(s)
	return slices.Contains(said, "With") || slices.Contains(said, "Alongside") || slices.Contains(said, "On") && slices.Contains(said, "Landing")
}

// fieldsSaid returns the fields of the clauses that were read, and With of a turn with
// somebody.
func (w *walker) fieldsSaid(s *spec) (list []string) {
	if way := w.token(w.behindTurn()).Value; s.turns() && (way == "with" || wordOfWay(way) == "with") {
		list = append(list, "With")
	}
	for _, at := range w.begun {
		list = append(list, w.alternativeAt(s.shape(), at).leaves()[0].field.name)
	}
	return list
}

// behindTurn returns the number of the token behind `pan`, `tilt` or `pan and tilt`.
func (w *walker) behindTurn() int {
	at := int(w.start.RawCursor())
	for n := range 3 {
		if w.token(at + n).EOF() {
			return at + n
		}
	}
	if w.token(at+1).Value == "and" {
		return at + 3
	}
	return at + 1
}

// fieldNamed returns a field by its name, nil where there is none.
func (s *shape) fieldNamed(name string) *field {
	if i := slices.IndexFunc(s.fields, func(f *field) bool { return f.name == name }); i >= 0 {
		return s.fields[i]
	}
	return nil
}

// excludes reports whether a word cannot stand where the form has it, since a rule
// forbids it beside what was read.
func (w *walker) excludes(s *spec, f *form) bool {
	said := w.fieldsSaid(s)
	switch {
	case f.kind != formLiteral || s.shape().fieldNamed("Alongside") == nil:
		return false
	case f.field.name == "Way" && s.turns():
		return !slices.Contains(ways[s.word], f.text) || w.behindTurn() > int(w.start.RawCursor())+1
	case f.field.name == "Tilt" && s.word == "tilt":
		return true
	}
	return f.head && slices.ContainsFunc(said, func(name string) bool { return exclude(name, f.field.name) || exclude(f.field.name, name) }) ||
		f.head && f.field.name == "Until" && !slices.Contains(said, "With")
}

// exclude reports whether a field of a camera move or a rack leaves no use for another.
func exclude(field, other string) bool {
	switch field {
	case "With":
		return slices.Contains([]string{"Over", "Alongside", "Landing", "Profile"}, other)
	case "Alongside":
		return slices.Contains([]string{"Over", "Speed", "On", "Landing", "Profile"}, other)
	}
	return false
}
