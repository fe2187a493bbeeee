// Building one shot: from its statements to a plan.Shot and its findings.

package interp

import (
	"fmt"
	"slices"

	"pullscore/interp/plan"
	"pullscore/lang"
)

// A builder builds one shot.
type builder struct {
	evaluator
	p        *program
	ch       change
	head     *lang.Shot
	section  *lang.Section
	settings map[string]lang.Statement
	local    *scope // what the shot declares itself: subjects, voices, cues

	shot     *plan.Shot
	set      *setup
	items    []item
	givens   map[given]letValue // arguments that have been computed
	stage    *stage
	clock    *clock
	start    goal
	pulls    []*pull  // in the order of time
	cut      *shotCut // what the cuts say of the shot; nil where the plan follows none
	epoch    int64    // where the plan has the shot begin, as frames: its timecodes count from there
	defaults []plan.Default
	found    []finding
	probing  bool // a second build, to try a cure: no cures are looked for
	needs    bool // all the same the time that every rack needs
}

// buildShots builds every shot of the plan file itself.
func (p *program) buildShots() {
	ids := map[string]lang.Statement{}
	for _, sec := range p.root.file.Sections {
		head, ok := sec.Head.(*lang.Shot)
		if !ok {
			continue
		}
		if old, ok := ids[head.ID]; ok {
			p.report(lang.Diagnostic{
				Code: "duplicate-name", Severity: lang.Error, Range: head.Range(),
				Message: fmt.Sprintf("there is a shot %s already", head.ID),
				Related: []lang.Related{{Message: "first here", Range: old.Range()}},
			})
		} else {
			ids[head.ID] = head
		}
		b := p.shotBuilder(sec, change{})
		ok = b.build()
		b.check()
		p.diags = append(p.diags, b.diags...)
		p.plan.Defaults = append(p.plan.Defaults, b.defaults...)
		if ok {
			b.flags()
			p.plan.Shots = append(p.plan.Shots, b.shot)
			p.sections[b.shot] = sec
		}
		if p.hasPage() {
			p.spoken = append(p.spoken, b.spoken(ok))
		}
	}
}

func (p *program) shotBuilder(sec *lang.Section, ch change) *builder {
	b := &builder{p: p, ch: ch, head: sec.Head.(*lang.Shot), section: sec, local: newScope(), givens: map[given]letValue{}}
	b.evaluator = evaluator{reporter: &reporter{}, rate: p.rate, names: b.global}
	return b
}

// build computes the shot; ok is false where it cannot be drawn at all.
func (b *builder) build() (ok bool) {
	sh := &plan.Shot{
		ID: b.head.ID, File: b.head.Pos.Filename, Line: b.head.Pos.Line,
		Subjects: []*plan.Subject{}, Lines: []plan.Line{}, Cues: []plan.Cue{}, Actions: []plan.Action{},
		Pauses: []plan.Pause{}, Blocking: []plan.Blocking{}, Pulls: []*plan.Pull{},
		Rate: b.p.rate, Imperial: b.p.plan.Units == "imperial", PlanName: b.p.plan.Title,
		Beat: b.p.beat(),
	}
	if b.head.Title != nil {
		sh.Title = b.head.Title.Value
	}
	b.shot = sh
	b.settings = map[string]lang.Statement{}
	for _, s := range b.section.Body {
		if key := settingKey(s); key != "" {
			b.once(b.settings, key, s)
		}
		b.declareLocal(s)
	}
	b.items = b.ch.apply(b.expand(b.section.Body))
	film, _ := b.p.scope.settings["with"].(*lang.With)
	own, _ := b.settings["with"].(*lang.With)
	set, ok := b.setup(b.ch.with(clauses(film, own)))
	b.set = set
	if !ok {
		b.resolveNames()
		return false
	}
	b.fill(set)
	b.begins()
	b.stage = b.newStage()
	b.runClock()
	b.finish()
	return true
}

// declareLocal takes what the shot declares itself; a subject may stand
// elsewhere in one shot than in the rest of the film.
func (b *builder) declareLocal(stmt lang.Statement) {
	d := &decl{stmt: stmt}
	if d.kind, d.name = declared(stmt); d.name == nil {
		return
	}
	key := scopeKey{declSubject, fold(d.name.Text)}
	if old, ok := b.local.byFolded[key]; ok {
		b.clash(old, d)
		return
	}
	if old, ok := b.p.scope.byFolded[key]; ok {
		replaces := old.name.Text == d.name.Text && old.kind == declSubject && d.kind == declSubject
		if !replaces {
			b.clash(old, d)
			return
		}
	}
	b.local.put(d)
}

// find resolves a name of the shot: its own declarations before the file's.
func (b *builder) find(name string) *decl {
	if d := b.local.find(declSubject, name); d != nil {
		return d
	}
	return b.p.scope.find(declSubject, name)
}

// global is the lookup of names outside moves.
func (b *builder) global(x *lang.Expr) (quantity, bool) { return b.nameIn(nil, x) }

// nameIn resolves a name of an expression that stands in env.
func (b *builder) nameIn(env *env, x *lang.Expr) (quantity, bool) {
	if a, outer, ok := env.arg(x.Ref); ok {
		return b.argument(a, outer)
	}
	d := b.find(x.Ref)
	switch {
	case d == nil:
		b.unknownAt(x.Range(), x.Ref, "subject", b.names(declSubject, declLet))
		return quantity{}, false
	case d.kind == declLet:
		v := b.p.lets[d]
		return v.q, v.ok
	case d.kind == declSubject:
		return quantity{dim: dimLength, on: d.name}, true
	}
	b.fail(x.Range(), "wrong-kind", fmt.Sprintf("%s is a %s, and a subject or a value is wanted here", x.Ref, d.kind), "")
	return quantity{}, false
}

// names lists the names of some kinds that the shot knows, for near misses.
func (b *builder) names(kinds ...declKind) []string {
	var list []string
	for _, s := range []*scope{b.local, b.p.scope} {
		for _, d := range s.order {
			if slices.Contains(kinds, d.kind) && !slices.Contains(list, d.name.Text) {
				list = append(list, d.name.Text)
			}
		}
	}
	return list
}

// at returns an evaluator for expressions that stand in env.
func (b *builder) at(e *env) *evaluator {
	if e == nil {
		return &b.evaluator
	}
	return &evaluator{reporter: b.reporter, rate: b.rate, names: func(x *lang.Expr) (quantity, bool) { return b.nameIn(e, x) }}
}

func (b *builder) byDefault(name, value, why string) {
	b.defaults = append(b.defaults, plan.Default{Name: name, Value: value, Why: why, Shot: b.head.ID})
}

func (b *builder) defaultsOf(list []missing) {
	for _, m := range list {
		b.byDefault(m.name, m.value, m.why)
	}
}

// begins takes `begins at TIMECODE`.
func (b *builder) begins() {
	s, ok := b.settings["begins"].(*lang.Begins)
	if !ok {
		return
	}
	if n, ok := b.want(s.At, dimTimecode); ok {
		b.shot.Begins = int64(n)
		b.shot.BeginsAt = b.rate.Format(int64(n))
		b.epoch = int64(n)
	}
}
