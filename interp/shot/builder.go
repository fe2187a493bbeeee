// Building one shot: from its statements to a plan.Shot and its findings.

package shot

import (
	"fmt"
	"slices"

	"pullscore/interp/change"
	"pullscore/interp/clock"
	"pullscore/interp/cut"
	"pullscore/interp/film"
	"pullscore/interp/inwords"
	"pullscore/interp/kit"
	"pullscore/interp/names"
	"pullscore/interp/plan"
	"pullscore/interp/stage"
	"pullscore/lang"
)

// A Builder builds one shot.
type Builder struct {
	*clock.Base
	Film    *film.Film
	Section *lang.Section

	Set     *setup
	Clock   *clock.Clock
	Pulls   []*clock.Pull // in the order of time
	Found   []Finding
	Probing bool // a second build, to try a cure: no cures are looked for
	Needs   bool // all the same the time that every rack needs
}

// NewBuilder returns what builds the shot of a section, with one change.
func NewBuilder(f *film.Film, sec *lang.Section, ch change.Change) *Builder {
	l := names.NewLexicon(sec.Head.(*lang.Shot), f.Scope, f.Lets, f.Source, f.Rate)
	return &Builder{Base: &clock.Base{Lexicon: l, Ch: ch, Pace: f.Pace, Tokens: f.Tokens}, Film: f, Section: sec}
}

// Build computes the shot; ok is false where it cannot be drawn at all.
func (b *Builder) Build() (ok bool) {
	sh := &plan.Shot{
		ID: b.Head.ID, File: b.Head.Pos.Filename, Line: b.Head.Pos.Line,
		Subjects: []*plan.Subject{}, Lines: []plan.Line{}, Cues: []plan.Cue{}, Actions: []plan.Action{},
		Pauses: []plan.Pause{}, Blocking: []plan.Blocking{}, Pulls: []*plan.Pull{},
		Rate: b.Film.Rate, Imperial: b.Film.Plan.Units == "imperial", PlanName: b.Film.Plan.Title,
		Beat: b.Film.Beat(),
	}
	if b.Head.Title != nil {
		sh.Title = b.Head.Title.Value
	}
	b.Shot = sh
	b.Settings = map[string]lang.Statement{}
	for _, s := range b.Section.Body {
		if key := names.SettingKey(s); key != "" {
			b.Once(b.Settings, key, s)
		}
		b.declareLocal(s)
	}
	b.Items = b.Ch.Apply(b.Expand(b.Section.Body))
	film, _ := b.Film.Scope.Settings["with"].(*lang.With)
	own, _ := b.Settings["with"].(*lang.With)
	set, ok := b.setup(b.Ch.With(names.Clauses(film, own)))
	b.Set = set
	if !ok {
		b.resolveNames()
		return false
	}
	b.fill(set)
	b.begins()
	b.Lens = set.Lens
	b.Stage = stage.New(b.Lexicon, &b.Ch, &sh.Optics, set.Focal)
	b.runClock()
	b.finish()
	return true
}

// declareLocal takes what the shot declares itself; a subject may stand
// elsewhere in one shot than in the rest of the film.
func (b *Builder) declareLocal(stmt lang.Statement) {
	d := &names.Decl{Stmt: stmt}
	if d.Kind, d.Name = names.Declared(stmt); d.Name == nil {
		return
	}
	key := names.ScopeKey{Space: names.DeclSubject, Name: names.Fold(d.Name.Text)}
	if old, ok := b.Local.ByFolded[key]; ok {
		b.Clash(old, d)
		return
	}
	if old, ok := b.Film.Scope.ByFolded[key]; ok {
		replaces := old.Name.Text == d.Name.Text && old.Kind == names.DeclSubject && d.Kind == names.DeclSubject
		if !replaces {
			b.Clash(old, d)
			return
		}
	}
	b.Local.Put(d)
}

func (b *Builder) defaultsOf(list []kit.Missing) {
	for _, m := range list {
		b.ByDefault(m.Name, m.Value, m.Why)
	}
}

// begins takes `begins at TIMECODE`.
func (b *Builder) begins() {
	s, ok := b.Settings["begins"].(*lang.Begins)
	if !ok {
		return
	}
	if n, ok := b.Want(s.At, names.DimTimecode); ok {
		b.Shot.Begins = int64(n)
		b.Shot.BeginsAt = b.Rate.Format(int64(n))
		b.Epoch = int64(n)
	}
}

// runClock works through the shot.
func (b *Builder) runClock() {
	c := clock.New(b.Base)
	c.Needed, c.Idle = b.shortest, b.idleHold
	b.Clock = c
	c.ReadLines()
	b.readCut()
	c.ReadPulls()
	c.ReadStart()
	c.Run()
}

// readCut finds the shot in the cuts, once for all that is tried on it, and
// takes its place from them.
func (b *Builder) readCut() {
	if len(b.Film.Cuts) == 0 {
		return
	}
	found, ok := b.Film.ShotCuts[b.Section]
	if !ok {
		found = cut.FindShot(&cut.Asked{
			ID: b.Head.ID, Rate: b.Rate, Begun: b.Shot.BeginsAt != "", Begins: b.Shot.Begins,
			Lines: b.Clock.Said(), Cuts: b.Film.Cuts,
		})
		b.Film.ShotCuts[b.Section] = found
	}
	b.Cut = found
	if found.List != nil {
		if b.Shot.BeginsAt == "" {
			b.Epoch = found.Begin
		}
		b.Shot.Begins, b.Shot.BeginsAt = found.Begin, b.Rate.Format(found.Begin)
	}
	for i, key := range cut.KeysOf(b.Clock.Said()) {
		b.Clock.InOrder[i].Heard = found.Lines[key]
	}
	b.sayCut()
}

// sayCut lists where times come from.
func (b *Builder) sayCut() {
	if c := b.Cut; c.List != nil && (b.Settings["begins"] == nil || b.Epoch != c.Begin) {
		b.ByDefault("begins at", b.Shot.BeginsAt, fmt.Sprintf("clip %s of %s", b.Head.ID, c.List.Base()))
	}
	if c := b.Cut; c.Subtitles != nil {
		why := fmt.Sprintf("it has %d of %s", len(c.Lines), inwords.Count(len(b.Clock.InOrder), "line"))
		if !c.Placed {
			why += "; the first of them is where the plan has it"
		}
		b.ByDefault("line times", "from "+c.Subtitles.Base(), why)
	}
}

// hang tells the lines which pulls hang on them.
func (b *Builder) hang() {
	for _, p := range b.Pulls {
		for _, l := range p.HangsOnLines {
			if !l.Timed || !b.Clock.At[l.Item].Known {
				continue
			}
			if to := &b.Shot.Lines[l.Listed]; !slices.Contains(to.Pulls, p.Number) {
				to.Pulls = append(to.Pulls, p.Number)
			}
		}
	}
}
