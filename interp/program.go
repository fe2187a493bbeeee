// The program: one plan file with all that it uses, and its shots.

package interp

import (
	"fmt"
	"slices"
	"strings"
	"sync"

	"pullscore/interp/change"
	"pullscore/interp/checks"
	"pullscore/interp/cures"
	"pullscore/interp/film"
	"pullscore/interp/load"
	"pullscore/interp/mention"
	"pullscore/interp/moments"
	"pullscore/interp/names"
	"pullscore/interp/plan"
	"pullscore/interp/revision"
	"pullscore/interp/rewrite"
	"pullscore/interp/setup"
	"pullscore/interp/shot"
	"pullscore/lang"
)

type program struct {
	names.Reporter
	film   *film.Film
	plan   *plan.Plan
	loader *load.Loader

	revision []revision.Change
	spoken   []*spoken                    // what is said in every shot, if there is a page
	sections map[*plan.Shot]*lang.Section // that the shots come from
	together map[*plan.Shot]*cures.Together
	flagged  map[*plan.Shot][]int // where in the list of findings those of the flags of a shot are
	names    func() []mention.Mention
}

// build reads the film and builds its shots. A log may name pulls of the plan: where
// again is true all is to be built once more, with the plan as built without it,
// before.
func build(root *names.Unit, l *load.Loader, before *plan.Plan) (p *program, again bool) {
	p = &program{Reporter: names.Reporter{To: &names.Report{Diags: slices.Clone(l.Diags)}}, loader: l, sections: map[*plan.Shot]*lang.Section{}, flagged: map[*plan.Shot][]int{}, together: map[*plan.Shot]*cures.Together{}}
	p.film, again = film.Read(root, l, before, p.To)
	p.names = sync.OnceValue(func() []mention.Mention { return mention.In(p.film, l.Units) })
	f := p.film
	p.plan = &plan.Plan{
		File: root.File.Path, Title: f.Title, Units: f.Units, Tape: f.Tape, Rate: f.Rate.String(),
		Shots: []*plan.Shot{}, Defaults: append([]plan.Default{}, f.Defaults...),
	}
	for _, s := range f.Scenes {
		p.plan.Scenes = append(p.plan.Scenes, s.Plan())
	}
	p.buildShots()
	p.finishScenes()
	p.plan.Defaults = append(p.plan.Defaults, moments.Assumed(p.plan.Shots)...)
	p.compareScript()
	p.letter()
	return p, again
}

// letter gives the findings of every shot their letters, once all of them are known.
func (p *program) letter() {
	for s, at := range p.flagged {
		s.Letter()
		for i, f := range s.Flags {
			p.To.Diags[at[i]].Cause = f.Cause
		}
	}
}

// buildShots builds every shot of the plan file itself, and looks at what none of
// them says.
func (p *program) buildShots() {
	ids := map[string]lang.Statement{}
	used := map[*lang.Move]bool{}
	for _, s := range p.film.Shots {
		head := s.Section.Head.(*lang.Shot)
		if old, ok := ids[head.ID]; ok && s.Read {
			p.Report(lang.Diagnostic{
				Code: "duplicate-name", Severity: lang.Error, Range: head.Range(),
				Message: fmt.Sprintf("there is a shot %s already", head.ID),
				Related: []lang.Related{{Message: "first here", Range: old.Range()}},
			})
		} else {
			ids[head.ID] = head
		}
		for _, it := range p.buildShot(s) {
			used[it.In.Env.Move()] = true
		}
	}
	p.To.Diags = append(p.To.Diags, shot.Unused(p.film, used)...)
	adviseOnce(p.To.Diags, setup.NoKit)
}

// adviseOnce leaves an advice to the first that has it.
func adviseOnce(told []lang.Diagnostic, advice string) {
	given := false
	for i := range told {
		if !strings.HasPrefix(told[i].Detail, advice) {
			continue
		}
		if given {
			told[i].Detail = ""
		}
		given = true
	}
}

// buildShot builds one shot and takes what is told of it; the shot itself only
// where its header could be read. It returns the statements of the shot.
func (p *program) buildShot(s film.Shot) []names.Item {
	sec, times := s.Section, shot.Times{}
	b, ok := shot.Build(p.film, sec, change.Change{}, shot.Options{Lines: true, Needed: true, Times: times})
	p.To.Diags = append(p.To.Diags, b.Told...)
	if ok {
		found := cures.Run(b, p.anew(sec, times), p.written(b))
		if slices.ContainsFunc(found, func(f checks.Finding) bool { return f.Held != nil }) {
			p.together[b.Plan] = cures.Try(b, found, p.anew(sec, times))
		}
		for _, f := range found {
			p.flagged[b.Plan] = append(p.flagged[b.Plan], p.tellOnce(s, f.Diagnostic))
		}
		b.Plan.Flags, b.Plan.Causes = cures.Flags(b, found), cures.Causes(b, found)
	}
	if ok = ok && s.Read; ok {
		for _, d := range b.Defaults {
			if d.Shot != "" || !slices.Contains(p.plan.Defaults, d) { // of all shots: told once
				p.plan.Defaults = append(p.plan.Defaults, d)
			}
		}
		p.plan.Shots = append(p.plan.Shots, b.Plan)
		p.sections[b.Plan] = sec
	}
	if p.hasPage() {
		p.spoken = append(p.spoken, spokenIn(b, ok))
	}
	return b.Items
}

// tellOnce tells a finding of a shot, and returns where in the list it is. What is found
// in the lines of a scene is the same for all of its shots.
func (p *program) tellOnce(s film.Shot, d lang.Diagnostic) (at int) {
	if s.Scene != nil && s.Scene.Holds(d.Range) {
		for i := range p.To.Diags {
			if old := &p.To.Diags[i]; old.Code == d.Code && old.Range == d.Range && old.Message == d.Message {
				return i
			}
		}
	}
	p.To.Diags = append(p.To.Diags, d)
	return len(p.To.Diags) - 1
}

// anew returns what builds a shot with a change, with the times that are known.
func (p *program) anew(sec *lang.Section, times shot.Times) cures.Again {
	return func(ch change.Change) (*shot.Built, bool) {
		return shot.Build(p.film, sec, ch, shot.Options{Times: times})
	}
}

// written returns what writes changes of a shot into the plan.
func (p *program) written(b *shot.Built) cures.Written {
	return rewrite.Shot{
		Film: p.film, Head: b.Head, Body: b.Body, Settings: b.Settings, Items: b.Items, Camera: b.Setup.Camera.Name, Lens: b.Setup.Lens.Name,
	}.Edits
}
