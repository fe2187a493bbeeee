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
	*film
	root   *unit
	loader *loader

	revision []revision.Change
	spoken   []*spoken                    // what is said in every shot, if there is a page
	sections map[*plan.Shot]*lang.Section // that the shots come from

	// before is the plan as built without logs whose rows name its pulls; again
	// asks for it.
	before *plan.Plan
	again  bool
}

func newProgram(root *unit, l *loader) *program {
	p := &program{film: newFilm(root.file.Path, l.diags), root: root, loader: l, sections: map[*plan.Shot]*lang.Section{}}
	p.film.source, p.film.lost = l.source, l.lost
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
	p.view = p.filmViewing(set)
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
		b := run{newBuilder(p.film, sec, change{})}
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
			p.spoken = append(p.spoken, spokenIn(b.builder, ok))
		}
	}
}
