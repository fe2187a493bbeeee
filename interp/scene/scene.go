// Reading a scene.

package scene

import (
	"fmt"

	"pullscore/interp/change"
	"pullscore/interp/clock"
	"pullscore/interp/names"
	"pullscore/interp/plan"
	"pullscore/interp/speech"
	"pullscore/interp/stage"
	"pullscore/lang"
	"pullscore/lang/timecode"
)

// A Film is what a scene needs of the film that it stands in.
type Film struct {
	Scope  *names.Scope
	Lets   map[*names.Decl]*names.LetValue
	Source func(file string) []byte
	Rate   timecode.Rate
	Pace   float64         // words a minute
	People map[string]bool // who speaks or moves anywhere
	Tokens func(*lang.Text) []speech.Token
}

// A Scene is the action of one scene. Nobody writes to it once it is read: all its shots
// share it.
type Scene struct {
	Section *lang.Section
	Head    *lang.Scene
	Scope   *names.Scope // what it declares
	Lex     *names.Lexicon
	Items   []names.Item // its statements, moves written out
	Clock   *clock.Clock
	Stage   *stage.Stage // its floor, with everyone on it
	Long    float64      // seconds
	Cuts    []Cut        // that it plans, in the order written
	Told    []lang.Diagnostic

	film Film
}

// Read computes a scene.
func Read(f Film, sec *lang.Section) *Scene {
	head, ok := sec.Head.(*lang.Scene)
	if !ok {
		head = &lang.Scene{Node: nodeOf(sec.Head)}
	}
	s := &Scene{Section: sec, Head: head, film: f}
	s.Lex = names.NewLexicon(&lang.Shot{Node: head.Node}, f.Scope, f.Lets, f.Source, f.Rate)
	s.Scope = s.Lex.Local
	once := map[string]lang.Statement{}
	for _, stmt := range sec.Body {
		if key := names.SettingKey(stmt); key != "" {
			s.Lex.Once(once, key, stmt, false)
		}
		s.Lex.Declare(stmt)
	}
	s.Items = s.withoutFocus(s.Lex.Expand(sec.Body))
	s.Lex.Lose(sec, s.Items, false)
	s.Clock, s.Stage = s.run(s.Lex, s.Items)
	s.Long = s.Clock.End()
	s.look()
	s.Told = s.Lex.To.Diags
	return s
}

// A Cut is a cut that a scene plans.
type Cut struct {
	Stmt  *lang.CutTo
	T     float64 // seconds
	Known bool    // its moment is found
}

// look reads what hangs on the times of the action, and the names that nothing else asks
// for.
func (s *Scene) look() {
	for k, it := range s.Items {
		in := it.In
		switch stmt := it.Stmt.(type) {
		case *lang.CutTo:
			t, ok := s.Clock.Near(k, stmt.On)
			s.Cuts = append(s.Cuts, Cut{stmt, t, ok})
		case *lang.Speech:
			if stmt.Whom != nil {
				in.Who(stmt.Whom, names.DeclSubject, names.DeclVoice)
			}
		case *lang.Line:
			s.between(stmt, in)
		case *lang.FloorMark:
			if d := s.Scope.Find(names.DeclSubject, stmt.Name.Text); d != nil {
				s.Stage.MarkAt(d)
			}
		}
	}
}

// between tells of a line of action that does not run between two people.
func (s *Scene) between(stmt *lang.Line, in names.Reader) {
	from, okFrom := in.Who(stmt.From, names.DeclSubject)
	to, okTo := in.Who(stmt.To, names.DeclSubject)
	if okFrom && okTo && from == to {
		in.Fail(stmt.Range(), "wrong-kind", "a line of action runs from one person to another", "")
	}
}

func nodeOf(s lang.Statement) lang.Node {
	if bad, ok := s.(*lang.Bad); ok {
		return bad.Node
	}
	return lang.Node{}
}

// run takes everyone through the action.
func (s *Scene) run(l *names.Lexicon, items []names.Item) (*clock.Clock, *stage.Stage) {
	with := s.with(l, items, 0)
	c := clock.New(with)
	c.Run()
	return c, with.Stage
}

// with returns what a clock of the action goes by that stands at a time at first.
func (s *Scene) with(l *names.Lexicon, items []names.Item, from float64) clock.With {
	o := plan.Optics{Camera: plan.Still(0), Focal: plan.Still(0.05)}
	st := stage.New(l, change.Change{}, &o, 0.05, s.film.People, &stage.Ground{Placed: true, Scene: true, Named: nobody})
	return clock.With{Lex: l, Items: items, Stage: st, Pace: s.film.Pace, Scene: true, From: from, Tokens: s.film.Tokens}
}

// withoutFocus tells of moves that rack, whose place is a shot, and leaves out what they
// do with the focus or the camera.
func (s *Scene) withoutFocus(items []names.Item) (kept []names.Item) {
	told := map[*lang.Call]bool{}
	for _, it := range items {
		if !ofShots(it.Stmt) || it.In.Call == nil {
			kept = append(kept, it)
			continue
		}
		if call := it.In.Call; !told[call] {
			told[call] = true
			s.Lex.Fail(call.Range(), "wrong-section", fmt.Sprintf("%s moves the focus or the camera, and a scene has none", call.Name.Text),
				"Use it in a shot, or give the scene a move of its own.")
		}
	}
	return kept
}

// ofShots reports whether a statement has a meaning in shots alone.
func ofShots(s lang.Statement) bool {
	switch s.(type) {
	case *lang.Rack, *lang.Hold, *lang.Follow, *lang.Turn, *lang.Dolly, *lang.Track, *lang.Boom, *lang.Zoom, *lang.CameraMoves:
		return true
	}
	return false
}

// Holds reports whether a place of the text stands in the scene.
func (s *Scene) Holds(at lang.Range) bool {
	for _, stmt := range s.Section.Body {
		if r := stmt.Range(); r.File == at.File && r.Start.Offset <= at.Start.Offset && at.Start.Offset <= r.End.Offset {
			return true
		}
	}
	return false
}
