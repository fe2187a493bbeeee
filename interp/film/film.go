// The film: what holds for all shots of a plan.

package film

import (
	"fmt"

	"pullscore/interp/cut"
	"pullscore/interp/kit"
	"pullscore/interp/names"
	"pullscore/interp/plan"
	"pullscore/interp/speech"
	"pullscore/lang"
)

// A Film is what all shots of a plan have in common.
type Film struct {
	names.Evaluator
	Source func(file string) []byte
	Scope  *names.Scope
	Plan   *plan.Plan
	Lost   bool // a used file could not be read: what it declares is missing, which has been told

	Pace    float64
	View    kit.Viewing
	Lets    map[*names.Decl]*names.LetValue
	split   map[*lang.Text][]speech.Token
	Cameras map[string]*kit.Camera
	Lenses  map[string]*kit.Lens
	Pullers map[string]*kit.Puller

	Cuts     []*cut.File                 // what the edit statements name
	ShotCuts map[*lang.Section]*cut.Shot // what the cuts say of a shot

	KitTold bool // where a kit may come from has been told
}

// New returns the film of a plan file of which nothing has been read yet.
func New(path string, diags []lang.Diagnostic) *Film {
	f := &Film{
		Lets: map[*names.Decl]*names.LetValue{}, split: map[*lang.Text][]speech.Token{},
		Cameras: map[string]*kit.Camera{}, Lenses: map[string]*kit.Lens{}, Pullers: map[string]*kit.Puller{},
		ShotCuts: map[*lang.Section]*cut.Shot{},
	}
	f.Plan = &plan.Plan{File: path, Shots: []*plan.Shot{}, Defaults: []plan.Default{}}
	f.Evaluator = names.Evaluator{Reporter: names.Reporter{To: &names.Report{Diags: diags}}, Names: f.value}
	return f
}

// ByDefault notes that a value stands in for one that no line gives.
func (f *Film) ByDefault(name, value, why string) {
	f.Plan.Defaults = append(f.Plan.Defaults, plan.Default{Name: name, Value: value, Why: why})
}

// Let computes a let once; lets may stand in any order.
func (f *Film) Let(d *names.Decl) (names.Quantity, bool) {
	if v, ok := f.Lets[d]; ok {
		if v.Busy {
			f.Fail(d.Name.Range(), "circle", fmt.Sprintf("%s is made from itself", d.Name.Text), "")
			v.Busy = false // told once
		}
		return v.Q, v.Ok
	}
	v := &names.LetValue{Busy: true}
	f.Lets[d] = v
	if s, ok := d.Stmt.(*lang.Let); ok {
		v.Q, v.Ok = f.Eval(s.Value)
	}
	if v.Ok && v.Q.On != nil {
		f.Fail(d.Stmt.Range(), "wrong-unit", "a let is a number, and this is a subject", "")
		v.Ok = false
	}
	v.Busy = false
	return v.Q, v.Ok
}

// Beat returns the plan's `let beat` in seconds; 0 where it has none that is a
// time.
func (f *Film) Beat() float64 {
	if d := f.Scope.Find(names.DeclSubject, "beat"); d != nil && d.Kind == names.DeclLet {
		if q, ok := f.Let(d); ok && q.Dim == names.DimTime {
			return q.V
		}
	}
	return 0
}

// value is the lookup of names outside shots: lets only.
func (f *Film) value(x *lang.Expr) (names.Quantity, bool) {
	d := f.Scope.Find(names.DeclSubject, x.Ref)
	if d == nil {
		f.UnknownAt(x.Range(), x.Ref, "let", names.DeclLet, f.Scope.NamesOf(names.DeclLet))
		return names.Quantity{}, false
	}
	if d.Kind != names.DeclLet {
		f.Fail(x.Range(), "wrong-kind", fmt.Sprintf("%s is a %s, and a value is wanted here", x.Ref, d.Kind), "")
		return names.Quantity{}, false
	}
	return f.Let(d)
}

// Subtitles returns a name for the subtitles that the film has, those of its
// first such file; "" for none.
func (f *Film) Subtitles() string {
	for _, c := range f.Cuts {
		if !c.IsList {
			return c.Base()
		}
	}
	return ""
}

// Tokens splits a text into words, once: a shot is built anew for every cure
// that is tried.
func (f *Film) Tokens(t *lang.Text) []speech.Token {
	if t == nil {
		return nil
	}
	tokens, ok := f.split[t]
	if !ok {
		tokens = speech.Split(t.Value)
		f.split[t] = tokens
	}
	return tokens
}
