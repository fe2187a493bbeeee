// The film: what holds for all shots of a plan.

package interp

import (
	"fmt"

	"pullscore/interp/plan"
	"pullscore/interp/speech"
	"pullscore/lang"
)

// A film is what all shots of a plan have in common.
type film struct {
	evaluator
	source func(file string) []byte
	scope  *scope
	plan   *plan.Plan
	lost   bool // a used file could not be read: what it declares is missing, which has been told

	pace    float64
	view    viewing
	lets    map[*decl]*letValue
	split   map[*lang.Text][]speech.Token
	cameras map[string]*camera
	lenses  map[string]*lens
	pullers map[string]*puller

	cuts     []*cutFile                 // what the edit statements name
	shotCuts map[*lang.Section]*shotCut // what the cuts say of a shot

	kitTold bool // where a kit may come from has been told
}

// newFilm returns the film of a plan file of which nothing has been read yet.
func newFilm(path string, diags []lang.Diagnostic) *film {
	f := &film{
		lets: map[*decl]*letValue{}, split: map[*lang.Text][]speech.Token{},
		cameras: map[string]*camera{}, lenses: map[string]*lens{}, pullers: map[string]*puller{},
		shotCuts: map[*lang.Section]*shotCut{},
	}
	f.plan = &plan.Plan{File: path, Shots: []*plan.Shot{}, Defaults: []plan.Default{}}
	f.evaluator = evaluator{reporter: &reporter{diags: diags}, names: f.value}
	return f
}

// byDefault notes that a value stands in for one that no line gives.
func (f *film) byDefault(name, value, why string) {
	f.plan.Defaults = append(f.plan.Defaults, plan.Default{Name: name, Value: value, Why: why})
}

// let computes a let once; lets may stand in any order.
func (f *film) let(d *decl) (quantity, bool) {
	if v, ok := f.lets[d]; ok {
		if v.busy {
			f.fail(d.name.Range(), "circle", fmt.Sprintf("%s is made from itself", d.name.Text), "")
			v.busy = false // told once
		}
		return v.q, v.ok
	}
	v := &letValue{busy: true}
	f.lets[d] = v
	if s, ok := d.stmt.(*lang.Let); ok {
		v.q, v.ok = f.eval(s.Value)
	}
	if v.ok && v.q.on != nil {
		f.fail(d.stmt.Range(), "wrong-unit", "a let is a number, and this is a subject", "")
		v.ok = false
	}
	v.busy = false
	return v.q, v.ok
}

// beat returns the plan's `let beat` in seconds; 0 where it has none that is a
// time.
func (f *film) beat() float64 {
	if d := f.scope.find(declSubject, "beat"); d != nil && d.kind == declLet {
		if q, ok := f.let(d); ok && q.dim == dimTime {
			return q.v
		}
	}
	return 0
}

// value is the lookup of names outside shots: lets only.
func (f *film) value(x *lang.Expr) (quantity, bool) {
	d := f.scope.find(declSubject, x.Ref)
	if d == nil {
		f.unknownAt(x.Range(), x.Ref, "let", f.scope.namesOf(declLet))
		return quantity{}, false
	}
	if d.kind != declLet {
		f.fail(x.Range(), "wrong-kind", fmt.Sprintf("%s is a %s, and a value is wanted here", x.Ref, d.kind), "")
		return quantity{}, false
	}
	return f.let(d)
}

// tokens splits a text into words, once: a shot is built anew for every cure
// that is tried.
func (f *film) tokens(t *lang.Text) []speech.Token {
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
