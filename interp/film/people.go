// People: who speaks or moves anywhere in the film, and so never stands quite still.

package film

import (
	"slices"

	"pullscore/interp/names"
	"pullscore/lang"
)

// People are the names of those who speak or move anywhere in the film. A thing
// does neither.
type People map[string]bool

// findPeople looks through all shots and moves. A parameter that speaks or moves in
// a move makes people of whatever stands for it.
func (r *reader) findPeople() {
	r.People = People{}
	acts := map[*lang.Move][]bool{} // by parameter
	for changed := true; changed; { // a move may use moves that stand below it
		changed = false
		for _, sec := range r.Sections {
			move, _ := sec.Head.(*lang.Move)
			for _, s := range sec.Body {
				for _, who := range r.acting(s, acts) {
					changed = r.acted(who, move, acts) || changed
				}
			}
		}
	}
}

// acting returns the names that speak or move in a statement, by what is known of
// the moves so far.
func (r *reader) acting(s lang.Statement, acts map[*lang.Move][]bool) (list []string) {
	switch s := s.(type) {
	case *lang.Speech:
		if s.Who != nil {
			list = append(list, s.Who.Text)
		}
	case *lang.Moves:
		if s.Who != nil {
			list = append(list, s.Who.Text)
		}
	case *lang.Call:
		d := r.Scope.Find(names.DeclSubject, s.Name.Text)
		if d == nil {
			return nil
		}
		move, _ := d.Stmt.(*lang.Move)
		for i, a := range s.Args {
			if n := names.Called(a); n != nil && i < len(acts[move]) && acts[move][i] {
				list = append(list, n.Text)
			}
		}
	}
	return list
}

// acted notes that a name speaks or moves, in a move where that is not nil. It is
// true where that is news.
func (r *reader) acted(who string, move *lang.Move, acts map[*lang.Move][]bool) bool {
	if move != nil {
		if i := slices.IndexFunc(move.Params, func(p *lang.Name) bool { return p.Text == who }); i >= 0 {
			if acts[move] == nil {
				acts[move] = make([]bool, len(move.Params))
			}
			news := !acts[move][i]
			acts[move][i] = true
			return news
		}
	}
	if d := r.Scope.Find(names.DeclSubject, who); d != nil && d.Kind == names.DeclLet {
		if v := r.Lets[d]; v != nil && v.Alias != "" {
			who = v.Alias
		}
	}
	news := !r.People[who]
	r.People[who] = true
	return news
}
