// What a shot says besides its set-up: its names, its place in the film, its times.

package shot

import (
	"fmt"
	"math"

	"pullscore/interp/away"
	"pullscore/interp/change"
	"pullscore/interp/clock"
	"pullscore/interp/cut"
	"pullscore/interp/film"
	"pullscore/interp/kit"
	"pullscore/interp/names"
	"pullscore/interp/plan"
	"pullscore/interp/rewrite"
	"pullscore/interp/setup"
	"pullscore/interp/stage"
	"pullscore/interp/units"
	"pullscore/lang"
	"pullscore/lang/timecode"
)

// A builder builds one shot.
type builder struct {
	names.Evaluator // of what stands in no move
	stage.Sight
	lex      *names.Lexicon
	Film     *film.Film
	Section  *lang.Section
	Head     *lang.Shot
	Ch       change.Change
	Settings map[string]lang.Statement
	Items    []names.Item
	Stage    *stage.Stage
	Start    stage.Goal // of the focus, as the shot begins
	Cut      *cut.Shot  // what the cuts say of the shot; nil where the plan follows none
	Epoch    int64      // where the plan has the shot begin, as frames
	Defaults []plan.Default
	staged   *staging // what the shot has of a scene; nil: nothing of any
	unstaged bool     // no scene stands above it, which has been told: what that declares is not missed
	dry      bool     // it is no shot, but what no shot says: nothing is missed
}

// newBuilder returns what builds the shot of a section, with one change.
func newBuilder(f *film.Film, sec *lang.Section, ch change.Change) *builder {
	l := names.NewLexicon(sec.Head.(*lang.Shot), f.Scope, f.Lets, f.Source, f.Rate)
	return &builder{Evaluator: l.Evaluator, lex: l, Film: f, Section: sec, Head: l.Head, Ch: ch}
}

// byDefault notes that a value stands in for one that the shot does not give.
func (b *builder) byDefault(name, value, why string) {
	b.Defaults = append(b.Defaults, plan.Default{Name: name, Value: value, Why: why, Shot: b.Head.ID})
}

// plan returns a shot that holds nothing yet but what its head says.
func (b *builder) plan() *plan.Shot {
	sh := &plan.Shot{
		ID: b.Head.ID, File: b.Head.Pos.Filename, Line: b.Head.Pos.Line,
		Subjects: []*plan.Subject{}, Lines: []plan.Line{}, Cues: []plan.Cue{}, Actions: []plan.Action{},
		Pauses: []plan.Pause{}, Blocking: []plan.Blocking{}, Pulls: []*plan.Pull{}, Rests: []plan.Rest{},
		Rate: b.Film.Rate, Imperial: b.Film.Units == "imperial", PlanName: b.Film.Title,
	}
	if b.Head.Title != nil {
		sh.Title = b.Head.Title.Value
	}
	return sh
}

// runs takes the speed of the camera, by which all frames of the shot count. Nothing of
// the shot may have been computed before.
func (b *builder) runs(at timecode.Speed) {
	b.lex.Speed, b.Evaluator.Speed = at, at
	b.Shot.Beat = b.lex.Beat()
	b.Shot.Shoots, b.Shot.SlowFactor = plan.None(), plan.None()
	if at.Off() {
		b.Shot.Shoots, b.Shot.SlowFactor = plan.Number(at.Shoots), plan.Number(at.Factor())
	}
}

// setup resolves what the shot is taken with; ok is false where it cannot be computed.
func (b *builder) setup(w lang.With) (s *setup.Setup, ok bool) {
	r := setup.Reader{Evaluator: b.Evaluator, Film: b.Film, Head: b.Head, Settings: b.Settings, Here: b.lex.Here, Ch: b.Ch, Dry: b.dry}
	s, defaults, ok := r.Read(w)
	b.Defaults = append(b.Defaults, defaults...)
	return s, ok
}

// begins takes `begins at TIMECODE`.
func (b *builder) begins() {
	s, ok := b.Settings["begins"].(*lang.Begins)
	if !ok {
		return
	}
	if n, ok := b.Want(s.At, names.DimTimecode); ok {
		b.Shot.Begins = int64(n)
		b.Shot.BeginsAt = b.Speed.Rate.Format(int64(n))
		b.Epoch = int64(n)
	}
}

// lasts returns the length that the shot is said to have, in seconds; NaN where it
// is not said.
func (b *builder) lasts() float64 {
	if s, ok := b.Settings["lasts"].(*lang.Lasts); ok {
		if t, ok := b.Positive(s.Time, names.DimTime); ok {
			return t
		}
	}
	return math.NaN()
}

// runClock works out when everything in the shot happens.
func (b *builder) runClock(out *Built, opt Options) *clock.Clock {
	found := b.cutOf(opt)
	b.hearScene(found)
	c := clock.New(b.with(&out.Setup.Lens, out))
	b.readCut(c, found)
	b.startsOn()
	if !opt.asPlanned && len(b.given()) == 0 && c.LacksLines() {
		opt.shifts = away.Shifts(func(by map[int]float64) *clock.Clock {
			planned, _ := Build(b.Film, b.Section, b.Ch, Options{Times: opt.Times, asPlanned: true, cut: b.Cut, shifts: by})
			return planned.Clock
		})
	}
	c.Shift(opt.shifts)
	c.Run()
	return c
}

// with returns what the clock of the shot goes by.
func (b *builder) with(lens *kit.Lens, l clock.Landing) clock.With {
	return clock.With{
		Lex: b.lex, Items: b.Items, Stage: b.Stage, Change: b.Ch, Lens: lens, Pace: b.Film.Pace, Alone: b.dry,
		Begun: b.Shot.BeginsAt != "", Epoch: b.Epoch, Landing: l, Tokens: b.Film.Tokens,
		Given: b.given(),
	}
}

// given returns when the scene has its items; nil for a shot without its action.
func (b *builder) given() []clock.Given {
	if b.staged == nil {
		return nil
	}
	return b.staged.given
}

// startsOn resolves where the focus is when the shot starts.
func (b *builder) startsOn() {
	s, ok := b.Settings["start"].(*lang.Start)
	g := stage.Goal{At: b.Head.Range(), Ok: true}
	switch {
	case ok:
		g = b.Stage.Goal(s.Target, b.lex.Outside())
	case len(b.Stage.Order) > 0:
		u := b.Stage.Order[0]
		g.Text, g.Subject = u.Name, u
		b.byDefault("start", "on "+u.Name, "the shot does not say where the focus starts")
	default:
		g.Text, g.Distance = "inf", math.Inf(1)
		b.byDefault("start", "on inf", "the shot does not say where the focus starts, and has no subject")
	}
	b.Start = g
	b.Shot.Optics.Start = b.Target(&g, 0)
}

// cutOf returns what the cuts say of the shot. Pieces whose place they do not say stand
// where the plan's clock has their lines.
func (b *builder) cutOf(opt Options) *cut.Shot {
	found := b.Film.CutOf(b.Section)
	if opt.cut != nil || found == nil {
		return opt.cut
	}
	if rest := found.Anchored(); rest != nil {
		if built, ok := Build(b.Film, b.Section, b.Ch, Options{Times: opt.Times, cut: rest}); ok {
			return away.Settle(found, built.Clock)
		}
	}
	return found
}

// readCut takes the place and the times of the shot from the cuts.
func (b *builder) readCut(c *clock.Clock, found *cut.Shot) {
	if found == nil {
		return
	}
	b.Cut, b.Shot.Pieces = found, found.Pieces
	b.Epoch = b.epochIn(found)
	if found.List != nil {
		b.Shot.Begins, b.Shot.BeginsAt = found.Begin, b.Speed.Rate.Format(found.Begin)
	}
	c.Hear(found, b.Epoch)
	b.sayCut(len(c.InOrder))
}

// epochIn returns where the shot begins as frames, by the plan or else by a cut.
func (b *builder) epochIn(found *cut.Shot) int64 {
	if found.List != nil && b.Shot.BeginsAt == "" {
		return found.Begin
	}
	return b.Epoch
}

// sayCut lists where times come from.
func (b *builder) sayCut(lines int) {
	if c := b.Cut; c.List != nil && (b.Settings["begins"] == nil || b.Epoch != c.Begin) {
		b.byDefault("begins at", b.Shot.BeginsAt, fmt.Sprintf("clip %s of %s", b.Head.ID, c.List.Base()))
	}
	if c := b.Cut; c.Subtitles != nil {
		why := fmt.Sprintf("it has %d of %s", len(c.Lines), units.Count(lines, "line"))
		if !c.Placed {
			why += "; the first of them is where the plan has it"
		}
		b.byDefault("line times", "from "+c.Subtitles.Base(), why)
	}
}

// duration returns when the shot ends, in seconds: with the last thing in it, or
// where `lasts` says.
func (b *builder) duration(out *Built, racks []*clock.Pull) float64 {
	end := out.Clock.End()
	for _, p := range racks {
		if !math.IsInf(p.LandS, 0) {
			end = max(end, p.LandS)
		}
		end = max(end, p.StartS)
	}
	if b.Cut != nil && b.Cut.List != nil {
		for i := range b.Cut.Pieces {
			end = max(end, float64(b.Cut.Pieces[i].To))
		}
	}
	t := b.lasts()
	if math.IsNaN(t) {
		if b.staged != nil && b.staged.part.Action {
			end = max(end, b.staged.part.To-b.staged.part.From)
		}
		return end
	}
	if end > t+1e-6 {
		cure := lang.Cure{Text: "lasts " + units.Style{}.Time(units.Up(end, 100)), Value: units.Up(end, 100), Unit: "s"}
		said := b.Settings["lasts"]
		if e, ok := lang.Amend(rewrite.File(b.Film, said), said, "lasts", cure.Text); ok {
			cure.Edits = []lang.Edit{e}
		}
		b.Report(lang.Diagnostic{
			Code: "after-the-shot", Severity: lang.Error, Range: b.Settings["lasts"].Range(),
			Message: fmt.Sprintf("the shot lasts %s, and what is in it takes %s", units.Style{}.Time(t), units.Style{}.Time(end)),
			Figures: []lang.Figure{{Name: "lasts_s", Value: t}, {Name: "needed_s", Value: end}},
			Cures:   []lang.Cure{cure},
		})
	}
	return t
}
