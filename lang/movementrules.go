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
		return p.unused(s, start, end, []string{"Over", "Alongside", "Landing", "Profile"},
			"a turn with somebody goes as they go, and has no `%s`")
	case t.until != nil:
		return p.unused(s, start, end, []string{"Until"}, "only a turn with somebody has an `%s`")
	case t.alongside != "":
		return p.unused(s, start, end, []string{"Over", "Speed", "On", "Landing", "Profile"},
			"`with "+t.alongside+"` already says what `%s` says")
	case t.free:
		return nil
	case both && (t.over != nil || t.speed != nil):
		return p.unused(s, start, end, []string{"Over", "Speed"},
			"its start and its landing already give its length, which `%s` gives too")
	case both:
		return nil
	}
	return p.oneOf(s, s.shape().fieldNamed("Over"), t.over, t.speed, int(start.RawCursor()), end)
}

// unused tells of the first clause of a statement that belongs to one of the fields. The
// message takes the word that begins it.
func (p *parser) unused(s *spec, start lexer.Checkpoint, end int, fields []string, message string) *mistake {
	saved := p.endAt(end)
	defer func() { p.tokens[end] = saved }()
	w := p.walker(start)
	w.walk(s.shape().form)
	for _, at := range w.begun {
		if clause := w.alternativeAt(s.shape(), at).leaves(); slices.Contains(fields, clause[0].field.name) {
			word := p.tokens[at].Value
			return &mistake{fault: faultAt(&p.tokens[at], "conflicting-clauses", message, word), token: at, clause: at, word: word}
		}
	}
	return nil
}

// saidByEnds reports whether a statement that has to say how long it takes does so by
// clauses that were read: by its start and landing, by another move that it goes with,
// or by a subject that it keeps in its place.
func (w *walker) saidByEnds(s *shape) bool {
	at := int(w.start.RawCursor())
	if s.fieldNamed("Until") != nil && w.token(at).Value != "follow" {
		for behind := at + 1; !w.token(behind).EOF() && behind <= at+3; behind += 2 {
			if w.token(behind).Value == "with" {
				return true
			}
		}
	}
	said := map[string]bool{}
	for _, at := range w.begun {
		said[w.alternativeAt(s, at).leaves()[0].field.name] = true
	}
	return said["Alongside"] || said["On"] && said["Landing"]
}

// fieldNamed returns a field by its name, nil where there is none.
func (s *shape) fieldNamed(name string) *field {
	if i := slices.IndexFunc(s.fields, func(f *field) bool { return f.name == name }); i >= 0 {
		return s.fields[i]
	}
	return nil
}
