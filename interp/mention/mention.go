// Mentions: a name of a plan at one place of its text.

package mention

import (
	"cmp"
	"slices"
	"strings"

	"pullscore/lang"
)

// A Kind says what a name is the name of.
type Kind uint8

// The kinds. A group is a let that stands for several subjects; a Word is a text that
// leads to words of a line, or to what an action says.
const (
	Subject Kind = iota
	Voice
	Cue
	Let
	Move
	Camera
	Lens
	Puller
	Group
	Parameter
	Shot
	Mark
	Word
)

// String returns the kind as a word.
func (k Kind) String() string {
	return [...]string{"subject", "voice", "cue", "let", "move", "camera", "lens", "puller", "group", "parameter", "shot", "mark", "word"}[k]
}

// A Form is how a mention is written.
type Form uint8

// The forms. A name as a moment may need to stand without quotes, which would make words
// of it. In braces, within a text, names have no quotes at all.
const (
	Plain Form = iota
	Moment
	Braces
	Text // words in quotes
)

// A Mention is one place at which a name stands. Range is the place, with the quotes that
// the name may have; Of is that of the name in its declaration, which for the
// declaration itself is the same. Where a line of a move means one name in one shot and
// another in the next, there is a mention for each.
type Mention struct {
	Name     string
	Kind     Kind
	Form     Form
	Range    lang.Range
	Declares bool
	Of       lang.Range
}

// Leads reports whether it is a text that leads to words, and no name.
func (m Mention) Leads() bool { return m.Kind == Word }

// Write returns another name as it has to be written in place of this mention. ok is
// false where it cannot stand there.
func (m Mention) Write(name string) (text string, ok bool) {
	switch m.Form {
	case Text:
		return "", false
	case Braces:
		return strings.NewReplacer(`\`, `\\`, `"`, `\"`).Replace(name), !strings.ContainsAny(name, "{}\n\r")
	case Moment:
		text = lang.WriteName(name)
		return text, text[0] != '"'
	}
	return lang.WriteName(name), true
}

// sorted returns mentions in the order of the text, each once.
func sorted(list []Mention) []Mention {
	slices.SortFunc(list, func(a, b Mention) int {
		return cmp.Or(
			cmp.Compare(a.Range.File, b.Range.File), cmp.Compare(a.Range.Start.Offset, b.Range.Start.Offset),
			cmp.Compare(a.Range.End.Offset, b.Range.End.Offset),
			cmp.Compare(a.Of.File, b.Of.File), cmp.Compare(a.Of.Start.Offset, b.Of.Start.Offset),
			cmp.Compare(a.Of.End.Offset, b.Of.End.Offset), cmp.Compare(a.Form, b.Form),
		)
	})
	return slices.CompactFunc(list, func(a, b Mention) bool { return a.Range == b.Range && a.Of == b.Of })
}

// Family returns all mentions of the name that one of them mentions: those that would
// have to change together. A subject or voice that several shots declare for themselves
// is one person, and a name that stands in a move for one thing here and another there
// ties both.
func Family(all []Mention, of Mention) []Mention {
	if of.Kind == Word {
		return nil
	}
	at, called := map[lang.Range][]Mention{}, map[string][]Mention{}
	under := map[lang.Range][]Mention{}
	for _, m := range all {
		if m.Kind == Word {
			continue
		}
		at[m.Range], under[m.Of] = append(at[m.Range], m), append(under[m.Of], m)
		if m.Declares {
			called[m.Name] = append(called[m.Name], m)
		}
	}
	decls := map[lang.Range]bool{of.Of: true}
	for next := []lang.Range{of.Of}; len(next) > 0; next = next[1:] {
		tie := func(of lang.Range) {
			if !decls[of] {
				decls[of] = true
				next = append(next, of)
			}
		}
		for _, m := range under[next[0]] {
			for _, other := range at[m.Range] {
				tie(other.Of)
			}
			for _, other := range called[m.Name] {
				if m.Declares && oneThing(m.Kind, other.Kind) {
					tie(other.Of)
				}
			}
		}
	}
	list := slices.DeleteFunc(slices.Clone(all), func(m Mention) bool { return m.Kind == Word || !decls[m.Of] })
	return slices.CompactFunc(list, func(a, b Mention) bool { return a.Range == b.Range })
}

// oneThing reports whether two declarations of one name mean one thing: a cue, a mark or a
// parameter belongs to its shot, scene or move.
func oneThing(a, b Kind) bool {
	person := func(k Kind) bool { return k == Subject || k == Voice }
	return person(a) && person(b) || a == b && a != Cue && a != Parameter && a != Shot && a != Mark
}
