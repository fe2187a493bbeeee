// Looking at what cannot be computed: a shot whose camera, lens or stop is not
// known, and what no shot of the plan says. One run lists every mistake, so names,
// words, units and times are looked at all the same, with a set-up that stands in
// and tells nothing of its own.

package shot

import (
	"math"
	"slices"

	"pullscore/interp/change"
	"pullscore/interp/clock"
	"pullscore/interp/film"
	"pullscore/interp/kit"
	"pullscore/interp/names"
	"pullscore/interp/plan"
	"pullscore/interp/setup"
	"pullscore/interp/stage"
	"pullscore/lang"
)

// standIn is what a shot is looked at with whose own set-up is not known.
func standIn(focal float64) plan.Optics {
	if !(focal > 0) {
		focal = 0.05
	}
	return plan.Optics{
		SensorW: 0.024, SensorH: 0.018, Focal: plan.Still(focal), Number: 4, Pupil: 1, Criterion: 25e-6, ArcminPerBlur: 1,
		Breathes: math.NaN(), Diameter: math.NaN(), Camera: plan.Still(0),
	}
}

// look takes the clock through a shot that cannot be computed, for its mistakes
// alone.
func (b *builder) look(set *setup.Setup) {
	b.begins()
	b.lasts()
	b.Shot.Optics = standIn(set.Focal)
	var lens *kit.Lens
	if set.Lens.Ok && !b.Film.Scope.Lost["with"] && !b.lex.Here["with"] {
		lens = &set.Lens
	}
	b.Stage = stage.New(b.lex, b.Ch, &b.Shot.Optics, b.Shot.Optics.Focal.At(0), b.Film.People, b.ground())
	c := clock.New(b.with(lens, aSecond{}))
	b.readCut(c, b.Film.CutOf(b.Section))
	b.startsOn()
	c.Run()
	if slices.ContainsFunc(c.Ordered(), func(p *clock.Pull) bool { return p.ByDefault }) {
		b.leaveOut(ofLengths)
	}
}

// aSecond stands in for a lens and a hand that are not known.
type aSecond struct{}

// Shortest returns the second that a rack takes of which nothing is known.
func (aSecond) Shortest(p, before *clock.Pull, start, land float64) float64 { return 1 }

// leaveOut drops what was told under some codes.
func (b *builder) leaveOut(codes []string) {
	b.To.Diags = slices.DeleteFunc(b.To.Diags, func(d lang.Diagnostic) bool { return slices.Contains(codes, d.Code) })
}

// ofLengths are the mistakes that hang on how long a rack takes which does not say
// so itself. That is not known where the lens or the hand is not.
var ofLengths = []string{"lands-too-early", "before-the-shot"}

// ofPlaces are the mistakes that hang on where a move is used: which lines it has
// about it, and when.
var ofPlaces = []string{
	"word-not-found", "word-twice", "no-line", "which-line", "no-begins-at", "hold-too-early", "lands-too-early", "before-the-shot",
}

// Unused returns the mistakes in what no shot of a plan says: the set-up of the
// film, subjects, and moves that none uses. used holds the moves that shots use.
func Unused(f *film.Film, used map[*lang.Move]bool) []lang.Diagnostic {
	b := newDry(f, nil)
	set := &setup.Setup{}
	if with, ok := f.Scope.Settings["with"].(*lang.With); ok {
		set, _ = b.setup(*with)
	}
	b.look(set)
	told := b.To.Diags
	var whole, headless []*lang.Section
	for _, sec := range f.Sections {
		head, ok := sec.Head.(*lang.Move)
		switch meant := names.Meant(sec); {
		case ok && !used[head]:
			whole = append(whole, sec)
		case !ok && (meant == "move" || meant == ""):
			headless = append(headless, sec)
		}
	}
	return slices.Concat(told, unusedMoves(f, whole, false), unusedMoves(f, headless, true))
}

// unusedMoves returns the mistakes in moves that no shot uses: one after the other,
// as if they were one shot. Of those without a header any name may be a parameter.
func unusedMoves(f *film.Film, moves []*lang.Section, headless bool) []lang.Diagnostic {
	if len(moves) == 0 {
		return nil
	}
	b := newDry(f, f.Sections)
	all := &lang.Section{Head: b.Head}
	for _, sec := range moves {
		head, ok := sec.Head.(*lang.Move)
		if !ok {
			head = &lang.Move{}
		}
		b.Items = append(b.Items, b.lex.Alone(sec.Body, head)...)
		all.Body = append(all.Body, sec.Body...)
	}
	b.lex.Lose(all, b.Items, f.Lost)
	b.To.Lost[""] = b.To.Lost[""] || headless
	b.look(&setup.Setup{})
	b.leaveOut(ofPlaces)
	return b.To.Diags
}

// newDry returns a builder of no shot, in which the names are known that the
// shots and moves of some sections declare, as ones that nothing can be said of.
func newDry(f *film.Film, sections []*lang.Section) *builder {
	head := &lang.Shot{}
	b := newBuilder(f, &lang.Section{Head: head}, change.Change{})
	b.dry, b.Settings = true, map[string]lang.Statement{}
	b.Shot = &plan.Shot{Rate: f.Rate}
	for _, sec := range sections {
		for _, stmt := range sec.Body {
			if kind, name := names.Declared(stmt); name != nil && f.Scope.Find(names.DeclSubject, name.Text) == nil {
				b.lex.Local.Put(&names.Decl{Kind: kind, Name: name, Stmt: &lang.Bad{}})
			}
		}
	}
	b.lex.Lose(b.Section, nil, f.Lost)
	return b
}
