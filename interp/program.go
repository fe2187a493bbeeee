// The program: one plan file with all that it uses, its names and the settings
// that hold for the whole film.

package interp

import (
	"fmt"
	"maps"
	"math"

	"pullscore/interp/change"
	"pullscore/interp/checks"
	"pullscore/interp/film"
	"pullscore/interp/hand"
	"pullscore/interp/kit"
	"pullscore/interp/load"
	"pullscore/interp/names"
	"pullscore/interp/plan"
	"pullscore/interp/revision"
	"pullscore/interp/shot"
	"pullscore/interp/speech"
	"pullscore/interp/viewer"
	"pullscore/lang"
	"pullscore/lang/timecode"
)

type program struct {
	*film.Film
	root   *names.Unit
	loader *load.Loader

	revision []revision.Change
	spoken   []*spoken                    // what is said in every shot, if there is a page
	sections map[*plan.Shot]*lang.Section // that the shots come from

	// before is the plan as built without logs whose rows name its pulls; again
	// asks for it.
	before *plan.Plan
	again  bool
}

func newProgram(root *names.Unit, l *load.Loader) *program {
	p := &program{Film: film.New(root.File.Path, l.Diags), root: root, loader: l, sections: map[*plan.Shot]*lang.Section{}}
	p.Film.Source, p.Film.Lost = l.Source, l.Lost
	return p
}

func (p *program) build() {
	gathering := names.Collector{Reporter: p.Reporter, Scopes: map[*names.Unit]*names.Scope{}}
	p.Scope = gathering.Gather(p.root)
	p.readSettings()
	reader := &kit.Reader{Evaluator: p.Evaluator, Source: p.Source, Torn: p.Scope.Torn, Learn: p.learn}
	p.To.Lost = maps.Clone(p.Scope.Lost)
	if p.Film.Lost {
		p.To.Lost["use"] = true
	}
	for _, d := range p.Scope.Order {
		p.resolve(d, reader)
	}
	p.readHeadless(reader)
	names.MoveCheck{Reporter: p.Reporter, Scope: p.Scope}.CheckMoves()
	p.readCuts()
	p.buildShots()
	p.compareScript()
}

// resolve computes a let, or a piece of the kit. One whose header could not be
// read is known, and cannot be used; such a puller has a hand fitted to nobody.
func (p *program) resolve(d *names.Decl, reader *kit.Reader) {
	name, unread := d.Name.Text, d.Unread()
	switch {
	case d.Kind == names.DeclLet:
		p.Let(d)
	case d.Kind == names.DeclCamera && unread:
		p.Cameras[name] = &kit.Camera{Name: name}
	case d.Kind == names.DeclCamera:
		p.Cameras[name] = reader.Camera(d.Section)
	case d.Kind == names.DeclLens && unread:
		p.Lenses[name] = &kit.Lens{Name: name}
	case d.Kind == names.DeclLens:
		p.Lenses[name] = reader.Lens(d.Section)
	case d.Kind == names.DeclPuller && unread:
		p.Pullers[name] = &kit.Puller{Name: name, Hand: hand.Default()}
	case d.Kind == names.DeclPuller:
		p.Pullers[name] = reader.Puller(d.Section)
	}
}

// readHeadless looks at the pieces of the kit whose header could not be read, for
// the mistakes under it.
func (p *program) readHeadless(reader *kit.Reader) {
	for _, sec := range p.loader.Sections() {
		if _, bad := sec.Head.(*lang.Bad); !bad {
			continue
		}
		switch names.Meant(sec) {
		case "camera":
			reader.Camera(sec)
		case "lens":
			reader.Lens(sec)
		case "puller":
			reader.Puller(sec)
		}
	}
}

// readSettings takes the file's settings, its own before those it uses.
func (p *program) readSettings() {
	set := p.Scope.Settings
	p.Rate = p.readRate(set["rate"])
	p.Plan.Rate = p.Rate.String()

	if s, ok := set["plan"].(*lang.Plan); ok && s.Title != nil {
		p.Plan.Title = s.Title.Value
	} else if p.hasShots() {
		p.Report(lang.Diagnostic{
			Code: "no-title", Severity: lang.Note, Range: p.root.File.Sections[p.firstShot()].Head.Range(),
			Message: "the plan has no title", Detail: `Begin the file with: plan "TITLE".`,
		})
	}
	p.Plan.Units = "metric"
	if s, ok := set["units"].(*lang.Units); ok {
		p.Plan.Units = s.System
	}
	p.Plan.Tape = "sensor"
	if s, ok := set["tape"].(*lang.Tape); ok {
		p.Plan.Tape = s.From
	}
	p.Pace = speech.DefaultPace
	if s, ok := set["pace"].(*lang.Pace); ok {
		if v, ok := p.Within(s.Value, names.DimPace, 30, 400, "a pace lies between 30 and 400 wpm"); ok {
			p.Pace = v
		}
	} else if p.hasShots() {
		p.ByDefault("pace", "150 wpm", "no line says it")
	}
	p.View = p.filmViewing(set)
}

func (p *program) hasShots() bool { return p.firstShot() >= 0 }

func (p *program) firstShot() int {
	for i, sec := range p.root.File.Sections {
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
			p.ByDefault("rate", "24", "no line says it")
		}
		return timecode.Rate{}
	}
	rate, err := timecode.ParseRate(s.Value)
	if err != nil {
		p.Fail(s.Range(), "bad-rate", fmt.Sprintf("%s is no frame rate", s.Value), names.Sentence(err.Error()))
	}
	return rate
}

func (p *program) filmViewing(set map[string]lang.Statement) kit.Viewing {
	v := kit.Viewing{
		Width: kit.DefaultScreen, Viewer: kit.DefaultViewer, Criterion: math.NaN(), Arcmin: viewer.Sharp,
		Wanted: kit.DefaultWanted, Quickest: viewer.Cut,
	}
	v = v.With(set, &p.Evaluator)
	if !p.hasShots() {
		return v
	}
	if !v.Watched && math.IsNaN(v.Criterion) {
		p.ByDefault("watched", "on 1.2 m screen from 2.5 m", "no line says what the film is watched on")
	}
	if _, ok := set["land"]; !ok {
		p.ByDefault("land", "90 %", "no line says it")
	}
	if _, ok := set["quickest"]; !ok {
		p.ByDefault("quickest", "0.2 s", "no line says it")
	}
	return v
}

// buildShots builds every shot of the plan file itself, and looks at what none of
// them says.
func (p *program) buildShots() {
	ids := map[string]lang.Statement{}
	used := map[*lang.Move]bool{}
	for _, sec := range p.root.File.Sections {
		sec, read := asShot(sec)
		if sec == nil {
			continue
		}
		head := sec.Head.(*lang.Shot)
		if old, ok := ids[head.ID]; ok && read {
			p.Report(lang.Diagnostic{
				Code: "duplicate-name", Severity: lang.Error, Range: head.Range(),
				Message: fmt.Sprintf("there is a shot %s already", head.ID),
				Related: []lang.Related{{Message: "first here", Range: old.Range()}},
			})
		} else {
			ids[head.ID] = head
		}
		for _, it := range p.buildShot(sec, read) {
			used[it.In.Env.Move()] = true
		}
	}
	p.To.Diags = append(p.To.Diags, shot.Unused(p.Film, p.loader.Sections(), used)...)
}

// asShot returns a section as that of a shot; nil where it is another. One whose
// header could not be read is a shot without an ID, and read is false.
func asShot(sec *lang.Section) (as *lang.Section, read bool) {
	if _, ok := sec.Head.(*lang.Shot); ok {
		return sec, true
	}
	bad, ok := sec.Head.(*lang.Bad)
	if !ok || names.Meant(sec) != "shot" {
		return nil, false
	}
	return &lang.Section{Head: &lang.Shot{Node: bad.Node}, Body: sec.Body}, false
}

// buildShot builds one shot and takes what is told of it; the shot itself only
// where its header could be read. It returns the statements of the shot.
func (p *program) buildShot(sec *lang.Section, read bool) []names.Item {
	times := shot.Times{}
	b, ok := shot.Build(p.Film, sec, change.Change{}, shot.Options{Lines: true, Needed: true, Times: times})
	p.To.Diags = append(p.To.Diags, b.Told...)
	if ok {
		found := checks.Run(b, p.anew(sec, times))
		for _, f := range found {
			p.To.Diags = append(p.To.Diags, f.Diagnostic)
		}
		b.Plan.Flags, b.Plan.Causes = checks.Flags(found), checks.Causes(b, found)
	}
	if ok = ok && read; ok {
		p.Plan.Defaults = append(p.Plan.Defaults, b.Defaults...)
		p.Plan.Shots = append(p.Plan.Shots, b.Plan)
		p.sections[b.Plan] = sec
	}
	if p.hasPage() {
		p.spoken = append(p.spoken, spokenIn(b, ok))
	}
	return b.Items
}

// anew returns what builds a shot with a change, with the times that are known.
func (p *program) anew(sec *lang.Section, times shot.Times) checks.Again {
	return func(ch change.Change) (*shot.Built, bool) {
		return shot.Build(p.Film, sec, ch, shot.Options{Times: times})
	}
}
