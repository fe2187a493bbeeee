// The program: one plan file with all that it uses, its names and the settings
// that hold for the whole film.

package interp

import (
	"fmt"
	"math"

	"pullscore/interp/hand"
	"pullscore/interp/plan"
	"pullscore/interp/revision"
	"pullscore/interp/speech"
	"pullscore/interp/viewer"
	"pullscore/lang"
	"pullscore/lang/timecode"
)

type program struct {
	evaluator
	root   *unit
	loader *loader
	scope  *scope
	plan   *plan.Plan

	pace    float64
	film    viewing
	lets    map[*decl]*letValue
	split   map[*lang.Text][]speech.Token
	cameras map[string]*camera
	lenses  map[string]*lens
	pullers map[string]*puller

	cuts     []*cutFile                 // what the edit statements name
	shotCuts map[*lang.Section]*shotCut // what the cuts say of a shot
	revision []revision.Change

	spoken   []*spoken                    // what is said in every shot, if there is a page
	sections map[*plan.Shot]*lang.Section // that the shots come from

	kitTold bool // where a kit may come from has been told

	// before is the plan as built without logs whose rows name its pulls; again
	// asks for it.
	before *plan.Plan
	again  bool
}

func newProgram(root *unit, l *loader) *program {
	p := &program{
		root: root, loader: l, lets: map[*decl]*letValue{}, split: map[*lang.Text][]speech.Token{},
		cameras: map[string]*camera{}, lenses: map[string]*lens{}, pullers: map[string]*puller{}, sections: map[*plan.Shot]*lang.Section{},
		shotCuts: map[*lang.Section]*shotCut{},
	}
	p.plan = &plan.Plan{File: root.file.Path, Shots: []*plan.Shot{}, Defaults: []plan.Default{}}
	p.evaluator = evaluator{reporter: &reporter{diags: l.diags}, names: p.value}
	return p
}

func (p *program) build() {
	names := collector{p.reporter, map[*unit]*scope{}}
	p.scope = names.gather(p.root)
	p.readSettings()
	kit := &kitReader{evaluator: p.evaluator, source: p.source, learn: p.learn}
	for _, d := range p.scope.order {
		p.resolve(d, kit)
	}
	moveCheck{p.reporter, p.scope}.checkMoves()
	p.readCuts()
	p.buildShots()
	p.compareScript()
}

// resolve computes a let, or a piece of the kit. One whose header could not be
// read is known, and cannot be used; such a puller has a hand fitted to nobody.
func (p *program) resolve(d *decl, kit *kitReader) {
	name, unread := d.name.Text, d.unread()
	switch {
	case d.kind == declLet:
		p.let(d)
	case d.kind == declCamera && unread:
		p.cameras[name] = &camera{name: name}
	case d.kind == declCamera:
		p.cameras[name] = kit.camera(d.section)
	case d.kind == declLens && unread:
		p.lenses[name] = &lens{name: name}
	case d.kind == declLens:
		p.lenses[name] = kit.lens(d.section)
	case d.kind == declPuller && unread:
		p.pullers[name] = &puller{name: name, hand: hand.Default()}
	case d.kind == declPuller:
		p.pullers[name] = kit.puller(d.section)
	}
}

// byDefault notes that a value stands in for one that no line gives.
func (p *program) byDefault(name, value, why string) {
	p.plan.Defaults = append(p.plan.Defaults, plan.Default{Name: name, Value: value, Why: why})
}

// readSettings takes the file's settings, its own before those it uses.
func (p *program) readSettings() {
	set := p.scope.settings
	p.rate = p.readRate(set["rate"])
	p.plan.Rate = p.rate.String()

	if s, ok := set["plan"].(*lang.Plan); ok && s.Title != nil {
		p.plan.Title = s.Title.Value
	} else if p.hasShots() {
		p.report(lang.Diagnostic{
			Code: "no-title", Severity: lang.Note, Range: p.root.file.Sections[p.firstShot()].Head.Range(),
			Message: "the plan has no title", Detail: `Begin the file with: plan "TITLE".`,
		})
	}
	p.plan.Units = "metric"
	if s, ok := set["units"].(*lang.Units); ok {
		p.plan.Units = s.System
	}
	p.plan.Tape = "sensor"
	if s, ok := set["tape"].(*lang.Tape); ok {
		p.plan.Tape = s.From
	}
	p.pace = speech.DefaultPace
	if s, ok := set["pace"].(*lang.Pace); ok {
		if v, ok := p.within(s.Value, dimPace, 30, 400, "a pace lies between 30 and 400 wpm"); ok {
			p.pace = v
		}
	} else if p.hasShots() {
		p.byDefault("pace", "150 wpm", "no line says it")
	}
	p.film = p.filmViewing(set)
}

func (p *program) hasShots() bool { return p.firstShot() >= 0 }

func (p *program) firstShot() int {
	for i, sec := range p.root.file.Sections {
		if _, ok := sec.Head.(*lang.Shot); ok {
			return i
		}
	}
	return -1
}

func (p *program) readRate(stmt lang.Statement) timecode.Rate {
	s, ok := stmt.(*lang.Rate)
	if !ok {
		if p.hasShots() {
			p.byDefault("rate", "24", "no line says it")
		}
		return timecode.Rate{}
	}
	rate, err := timecode.ParseRate(s.Value)
	if err != nil {
		p.fail(s.Range(), "bad-rate", fmt.Sprintf("%s is no frame rate", s.Value), sentence(err.Error()))
	}
	return rate
}

func (p *program) filmViewing(set map[string]lang.Statement) viewing {
	v := viewing{
		width: defaultScreen, viewer: defaultViewer, criterion: math.NaN(), arcmin: viewer.Sharp,
		wanted: defaultWanted, quickest: viewer.Cut,
	}
	v = v.with(set, &p.evaluator)
	if !p.hasShots() {
		return v
	}
	if !v.watched && math.IsNaN(v.criterion) {
		p.byDefault("watched", "on 1.2 m screen from 2.5 m", "no line says what the film is watched on")
	}
	if _, ok := set["land"]; !ok {
		p.byDefault("land", "90 %", "no line says it")
	}
	if _, ok := set["quickest"]; !ok {
		p.byDefault("quickest", "0.2 s", "no line says it")
	}
	return v
}

// let computes a let once; lets may stand in any order.
func (p *program) let(d *decl) (quantity, bool) {
	if v, ok := p.lets[d]; ok {
		if v.busy {
			p.fail(d.name.Range(), "circle", fmt.Sprintf("%s is made from itself", d.name.Text), "")
			v.busy = false // told once
		}
		return v.q, v.ok
	}
	v := &letValue{busy: true}
	p.lets[d] = v
	if s, ok := d.stmt.(*lang.Let); ok {
		v.q, v.ok = p.eval(s.Value)
	}
	if v.ok && v.q.on != nil {
		p.fail(d.stmt.Range(), "wrong-unit", "a let is a number, and this is a subject", "")
		v.ok = false
	}
	v.busy = false
	return v.q, v.ok
}

// beat returns the plan's `let beat` in seconds; 0 where it has none that is a
// time.
func (p *program) beat() float64 {
	if d := p.scope.find(declSubject, "beat"); d != nil && d.kind == declLet {
		if q, ok := p.let(d); ok && q.dim == dimTime {
			return q.v
		}
	}
	return 0
}

// value is the lookup of names outside shots: lets only.
func (p *program) value(x *lang.Expr) (quantity, bool) {
	d := p.scope.find(declSubject, x.Ref)
	if d == nil {
		p.unknownAt(x.Range(), x.Ref, "let", p.scope.namesOf(declLet))
		return quantity{}, false
	}
	if d.kind != declLet {
		p.fail(x.Range(), "wrong-kind", fmt.Sprintf("%s is a %s, and a value is wanted here", x.Ref, d.kind), "")
		return quantity{}, false
	}
	return p.let(d)
}

// source is the text of a file that the plan is made of.
func (p *program) source(file string) []byte {
	if u, ok := p.loader.units[file]; ok {
		return u.file.Source
	}
	return nil
}

// tokens splits a text into words, once: a shot is built anew for every cure
// that is tried.
func (p *program) tokens(t *lang.Text) []speech.Token {
	if t == nil {
		return nil
	}
	tokens, ok := p.split[t]
	if !ok {
		tokens = speech.Split(t.Value)
		p.split[t] = tokens
	}
	return tokens
}
