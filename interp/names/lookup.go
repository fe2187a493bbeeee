// What the names of a shot mean: those of the film, its own, and the
// parameters of the moves that it uses.

package names

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"pullscore/lang"
	"pullscore/lang/timecode"
)

// A Lexicon is what the names in one shot mean.
type Lexicon struct {
	Evaluator
	Head   *lang.Shot
	Film   *Scope
	Local  *Scope // what the shot declares itself: subjects, voices, cues
	Lets   map[*Decl]*LetValue
	givens map[given]LetValue // arguments that have been computed
	Items  []Item             // the shot's statements, moves written out
	Here   Losses             // what could not be read of the shot and the moves that it uses
	Source func(file string) []byte

	near     map[[2]string]guess // what was probably meant, by the name and what it should be
	compared int                 // names, to find that
}

// NewLexicon returns the lexicon of a shot over the names of the film.
func NewLexicon(head *lang.Shot, film *Scope, lets map[*Decl]*LetValue, source func(string) []byte, rate timecode.Rate) *Lexicon {
	l := &Lexicon{Head: head, Film: film, Local: newScope(), Lets: lets, givens: map[given]LetValue{}, Source: source, near: map[[2]string]guess{}}
	l.Evaluator = Evaluator{Reporter: &Reporter{}, Rate: rate, Names: l.global}
	return l
}

// Lose notes what of a shot could not be read, so that it is not missed: of its
// own lines, of the moves that it uses, and of the film, of which a whole file may
// be lost.
func (l *Lexicon) Lose(sec *lang.Section, file bool) {
	l.Here = LostIn(sec)
	for _, it := range l.Items {
		l.Here.note(it.Stmt)
	}
	l.Reporter.Lost = maps.Clone(l.Film.Lost)
	maps.Copy(l.Reporter.Lost, l.Here)
	if file {
		l.Reporter.Lost["use"] = true
	}
}

// Find resolves a name of the shot: its own declarations before the file's.
func (l *Lexicon) Find(name string) *Decl {
	if d := l.Local.Find(DeclSubject, name); d != nil {
		return d
	}
	return l.Film.Find(DeclSubject, name)
}

// global is the lookup of names outside moves.
func (l *Lexicon) global(x *lang.Expr) (Quantity, bool) { return l.nameIn(nil, x) }

// nameIn resolves a name of an expression that stands in env.
func (l *Lexicon) nameIn(env *Env, x *lang.Expr) (Quantity, bool) {
	if a, outer, ok := env.Arg(x.Ref); ok {
		if a == nil {
			return Quantity{}, false
		}
		return l.argument(a, outer)
	}
	d := l.Find(x.Ref)
	switch {
	case d == nil:
		l.Undeclared(x.Range(), x.Ref, "subject", DeclSubject, DeclLet)
		return Quantity{}, false
	case d.Kind == DeclLet:
		if v, ok := l.Lets[d]; ok {
			return v.Q, v.Ok
		}
		return Quantity{}, false // it stands in a shot, which has been told
	case d.Kind == DeclSubject:
		return Quantity{Dim: DimLength, On: d.Name}, true
	}
	l.Fail(x.Range(), "wrong-kind", fmt.Sprintf("%s is a %s, and a subject or a value is wanted here", x.Ref, d.Kind), "")
	return Quantity{}, false
}

// Undeclared reports a name, in a shot, that nothing of these kinds declares.
func (l *Lexicon) Undeclared(at lang.Range, name, what string, kinds ...DeclKind) {
	key := [2]string{name, what}
	meant, ok := l.near[key]
	if !ok && l.compared < worthComparing {
		among := l.names(kinds)
		l.compared += len(among)
		meant = didYouMean(name, among)
		l.near[key] = meant
	}
	l.unknown(at, name, what, kinds[0], meant)
}

// worthComparing is how many names are compared with those of one shot that
// nothing declares: where hundreds are wrong the last ones are told without a
// guess at what was meant.
const worthComparing = 100_000

// names lists the names of some kinds that the shot knows.
func (l *Lexicon) names(kinds []DeclKind) []string {
	var list []string
	listed := map[string]bool{}
	for _, s := range []*Scope{l.Local, l.Film} {
		for _, d := range s.Order {
			if slices.Contains(kinds, d.Kind) && !listed[d.Name.Text] {
				listed[d.Name.Text] = true
				list = append(list, d.Name.Text)
			}
		}
	}
	return list
}

// At returns an evaluator for expressions that stand in env.
func (l *Lexicon) At(e *Env) *Evaluator {
	if e == nil {
		return &l.Evaluator
	}
	return &Evaluator{Reporter: l.Reporter, Rate: l.Rate, Names: func(x *lang.Expr) (Quantity, bool) { return l.nameIn(e, x) }}
}

// Written is an anchor as the plan writes it, a parameter as its argument.
func (l *Lexicon) Written(a *lang.Anchor, e *Env) string {
	if a.Kind == lang.AnchorName {
		if arg, outer, ok := e.Arg(a.Name.Text); ok && arg != nil {
			rest := a.Range()
			rest.Start = a.Name.Range().End
			return strings.TrimSpace(l.Written(arg, outer) + " " + SourceText(l.Source(rest.File), rest))
		}
	}
	return SourceText(l.Source(a.Range().File), a.Range())
}

// AnchorText writes what a rack hangs on, as the plan does.
func (l *Lexicon) AnchorText(on, landing *lang.Anchor, e *Env) string {
	s := ""
	if on != nil {
		s = "on " + l.Written(on, e)
	}
	if landing != nil {
		if s != "" {
			s += ", "
		}
		s += "landing on " + l.Written(landing, e)
	}
	return s
}
