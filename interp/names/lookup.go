// What the names of a shot mean: those of the film, its own, and the
// parameters of the moves that it uses.

package names

import (
	"maps"
	"slices"

	"pullscore/lang"
	"pullscore/lang/timecode"
)

// A Lexicon is what the names in one shot mean.
type Lexicon struct {
	Evaluator
	Head   *lang.Shot
	Film   *Scope
	Staged *Scope // what the scene declares whose action the shot has; nil: none
	Local  *Scope // what the shot declares itself: subjects, voices, cues
	Lets   map[*Decl]*LetValue
	givens map[given]LetValue                // arguments that have been computed
	copies map[lang.Statement]lang.Statement // what statements with texts filled in are copies of
	Here   Losses                            // what could not be read of the shot and the moves that it uses
	Source func(file string) []byte

	near     map[[2]string]guess // what was probably meant, by the name and what it should be
	compared int                 // names, to find that

	recounted map[*Decl]LetValue // lets of the film as a camera counts that runs at another speed
}

// NewLexicon returns the lexicon of a shot over the names of the film.
func NewLexicon(head *lang.Shot, film *Scope, lets map[*Decl]*LetValue, source func(string) []byte, rate timecode.Rate) *Lexicon {
	l := &Lexicon{Head: head, Film: film, Local: newScope(), Lets: lets, givens: map[given]LetValue{}, copies: map[lang.Statement]lang.Statement{}, Source: source, near: map[[2]string]guess{}}
	l.Evaluator = Evaluator{Reporter: Reporter{To: &Report{}}, Speed: timecode.Speed{Rate: rate}}
	l.Names = l.Outside().Names
	film.Record.built(l)
	return l
}

// TornAt reports whether a clause of a statement was lost, or of what it is a copy of.
func (l *Lexicon) TornAt(s lang.Statement) bool {
	if of, ok := l.copies[s]; ok {
		s = of
	}
	return l.Film.Torn.Lost(s)
}

// Lose notes what of a shot could not be read, so that it is not missed: of its
// own lines, of the moves that it uses, and of the film, of which a whole file may
// be lost.
func (l *Lexicon) Lose(sec *lang.Section, items []Item, file bool) {
	l.Here = LostIn(sec)
	for _, it := range items {
		l.Here.note(it.Stmt)
	}
	l.To.Lost = maps.Clone(l.Film.Lost)
	maps.Copy(l.To.Lost, l.Here)
	if file {
		l.To.Lost["use"] = true
	}
}

// Find resolves a name of the shot: its own declarations before the file's. A let
// that stands for somebody is that one.
func (l *Lexicon) Find(name string) *Decl {
	d := l.find(name)
	if d != nil && d.Kind == DeclLet {
		if v := l.Lets[d]; v != nil && v.Alias != "" {
			return l.find(v.Alias)
		}
	}
	return d
}

func (l *Lexicon) find(name string) *Decl {
	if d := l.Local.Find(DeclSubject, name); d != nil {
		return d
	}
	if l.Staged != nil {
		if d := l.Staged.Find(DeclSubject, name); d != nil {
			return d
		}
	}
	return l.Film.Find(DeclSubject, name)
}

// Scopes returns where names are declared, from the widest: the film, the scene and the
// shot.
func (l *Lexicon) Scopes() []*Scope {
	if l.Staged == nil {
		return []*Scope{l.Film, l.Local}
	}
	return []*Scope{l.Film, l.Staged, l.Local}
}

// valueOf returns the value of a let of the film. Frames in it are frames of the shot:
// if the camera runs at another speed than the film's rate they are counted again.
func (l *Lexicon) valueOf(d *Decl) (Quantity, bool) {
	v, ok := l.Lets[d]
	if !ok {
		return Quantity{}, false // it stands in a shot, which has been told
	}
	s, ok := d.Stmt.(*lang.Let)
	if !l.Speed.Off() || !ok || !v.Ok || v.Alias != "" || v.Group != nil || v.Q.On != nil {
		return v.Q, v.Ok
	}
	again, ok := l.recounted[d]
	if !ok {
		r := l.Outside().Quietly()
		again.Q, again.Ok = r.Eval(s.Value)
		if l.recounted == nil {
			l.recounted = map[*Decl]LetValue{}
		}
		l.recounted[d] = again
	}
	return again.Q, again.Ok
}

// Beat returns the time of a film's `let beat`, in seconds, as the shot counts it; 0
// where there is none that is a time.
func (l *Lexicon) Beat() float64 {
	if d := l.Film.Find(DeclSubject, "beat"); d != nil && d.Kind == DeclLet {
		if q, ok := l.valueOf(d); ok && q.Dim == DimTime {
			return q.V
		}
	}
	return 0
}

// GroupOf returns the members of a let that is a group; nil for anything else.
func (l *Lexicon) GroupOf(d *Decl) []*lang.Name {
	if v := l.Lets[d]; v != nil {
		return v.Group
	}
	return nil
}

// WordFor says what a declaration is, as messages do.
func (l *Lexicon) WordFor(d *Decl) string { return WordFor(d, l.Lets[d]) }

// WordFor says what a declaration is, as messages do. v is what it stands for as a
// let, nil where that is not known.
func WordFor(d *Decl, v *LetValue) string {
	switch {
	case v == nil || d.Kind != DeclLet:
	case v.Group != nil:
		return "group"
	case v.Alias != "" && !v.Ok:
		return DeclVoice.String()
	case v.Alias != "":
		return "name for somebody"
	case v.Q.On != nil:
		return "place"
	}
	return d.Kind.String()
}

// worthComparing is how many names are compared with those of one shot that
// nothing declares: where hundreds are wrong the last ones are told without a
// guess at what was meant.
const worthComparing = 100_000

// names lists the names of some kinds that the shot knows.
func (l *Lexicon) names(kinds []DeclKind) []string {
	var list []string
	listed := map[string]bool{}
	for _, s := range slices.Backward(l.Scopes()) {
		for _, d := range s.Order {
			if slices.Contains(kinds, d.Kind) && !listed[d.Name.Text] {
				listed[d.Name.Text] = true
				list = append(list, d.Name.Text)
			}
		}
	}
	return list
}
