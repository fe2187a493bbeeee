// What the names of a shot mean: those of the film, its own, and the
// parameters of the moves that it uses.

package interp

import (
	"fmt"
	"slices"
	"strings"

	"pullscore/lang"
	"pullscore/lang/timecode"
)

// A lexicon is what the names in one shot mean.
type lexicon struct {
	evaluator
	head   *lang.Shot
	film   *scope
	local  *scope // what the shot declares itself: subjects, voices, cues
	lets   map[*decl]*letValue
	givens map[given]letValue // arguments that have been computed
	items  []item             // the shot's statements, moves written out
	source func(file string) []byte
}

func newLexicon(head *lang.Shot, film *scope, lets map[*decl]*letValue, source func(string) []byte, rate timecode.Rate) *lexicon {
	l := &lexicon{head: head, film: film, local: newScope(), lets: lets, givens: map[given]letValue{}, source: source}
	l.evaluator = evaluator{reporter: &reporter{}, rate: rate, names: l.global}
	return l
}

// find resolves a name of the shot: its own declarations before the file's.
func (l *lexicon) find(name string) *decl {
	if d := l.local.find(declSubject, name); d != nil {
		return d
	}
	return l.film.find(declSubject, name)
}

// global is the lookup of names outside moves.
func (l *lexicon) global(x *lang.Expr) (quantity, bool) { return l.nameIn(nil, x) }

// nameIn resolves a name of an expression that stands in env.
func (l *lexicon) nameIn(env *env, x *lang.Expr) (quantity, bool) {
	if a, outer, ok := env.arg(x.Ref); ok {
		return l.argument(a, outer)
	}
	d := l.find(x.Ref)
	switch {
	case d == nil:
		l.unknownAt(x.Range(), x.Ref, "subject", l.names(declSubject, declLet))
		return quantity{}, false
	case d.kind == declLet:
		v := l.lets[d]
		return v.q, v.ok
	case d.kind == declSubject:
		return quantity{dim: dimLength, on: d.name}, true
	}
	l.fail(x.Range(), "wrong-kind", fmt.Sprintf("%s is a %s, and a subject or a value is wanted here", x.Ref, d.kind), "")
	return quantity{}, false
}

// names lists the names of some kinds that the shot knows, for near misses.
func (l *lexicon) names(kinds ...declKind) []string {
	var list []string
	for _, s := range []*scope{l.local, l.film} {
		for _, d := range s.order {
			if slices.Contains(kinds, d.kind) && !slices.Contains(list, d.name.Text) {
				list = append(list, d.name.Text)
			}
		}
	}
	return list
}

// at returns an evaluator for expressions that stand in env.
func (l *lexicon) at(e *env) *evaluator {
	if e == nil {
		return &l.evaluator
	}
	return &evaluator{reporter: l.reporter, rate: l.rate, names: func(x *lang.Expr) (quantity, bool) { return l.nameIn(e, x) }}
}

// written is an anchor as the plan writes it, a parameter as its argument.
func (l *lexicon) written(a *lang.Anchor, e *env) string {
	if a.Kind == lang.AnchorName {
		if arg, outer, ok := e.arg(a.Name.Text); ok {
			rest := a.Range()
			rest.Start = a.Name.Range().End
			return strings.TrimSpace(l.written(arg, outer) + " " + sourceText(l.source(rest.File), rest))
		}
	}
	return sourceText(l.source(a.Range().File), a.Range())
}

// anchorText writes what a rack hangs on, as the plan does.
func (l *lexicon) anchorText(on, landing *lang.Anchor, e *env) string {
	s := ""
	if on != nil {
		s = "on " + l.written(on, e)
	}
	if landing != nil {
		if s != "" {
			s += ", "
		}
		s += "landing on " + l.written(landing, e)
	}
	return s
}
