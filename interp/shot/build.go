// Building one shot: from its statements to a value that checks and drawings
// read.

package shot

import (
	"pullscore/interp/change"
	"pullscore/interp/cut"
	"pullscore/interp/film"
	"pullscore/interp/names"
	"pullscore/interp/plan"
	"pullscore/interp/shot/built"
	"pullscore/interp/stage"
	"pullscore/lang"
)

// Options say what a build is for. What nobody asks for is left out: a shot is
// built once for every cure that is tried.
type Options struct {
	Lines  bool // also what the drawings show of lines, cues, blocking and what hangs on what
	Needed bool // also the time that every rack needs

	// asPlanned builds no more than the clock, with what the cut does not have where the
	// plan's own clock has it.
	asPlanned bool
	cut       *cut.Shot       // followed in place of what the cuts say, for no more than the clock
	shifts    map[int]float64 // of runs of lines that the cut does not have

	// Times are needed times that are known already; nil: none are kept. Most of
	// the racks of a shot ask the same of the hand whatever else is tried.
	Times Times
}

// What a build comes to is of package built.
type (
	// Built is one shot as it comes out.
	Built = built.Shot
	// Pull is a rack or a follow of it.
	Pull = built.Pull
	// Rest is a time in which the focus stands on somebody.
	Rest = built.Rest
	// Keys holds when subjects, the camera or the zoom start or stop.
	Keys = built.Keys
	// Times are needed times that are known already.
	Times = built.Times
)

// Build computes the shot of a section with one change. Where ok is false it
// cannot be computed at all: then only what is written in it is known.
func Build(f *film.Film, sec *lang.Section, ch change.Change, opt Options) (out *Built, ok bool) {
	b := newBuilder(f, sec, ch)
	sh := b.plan()
	out = &Built{Plan: sh, Head: b.Head, Body: sec.Body, Subtitles: f.Subtitles(), Times: opt.Times}
	b.Shot = sh
	b.Settings = map[string]lang.Statement{}
	b.staged = b.staging()
	if b.staged != nil {
		b.lex.Staged = b.staged.scene.Scope
	}
	twice := false // where the header between two shots is lost, the first that is said twice tells it
	for _, s := range sec.Body {
		if key := names.SettingKey(s); key != "" {
			twice = !b.Once(b.Settings, key, s, twice) || twice
		}
		b.lex.Declare(s)
		switch s := s.(type) {
		case *lang.Remark:
			sh.Notes = append(sh.Notes, s.Text.Value)
		case *lang.Clip:
			b.checkClip(s)
		}
	}
	out.Settings = b.Settings
	film, _ := f.Scope.Settings["with"].(*lang.With)
	own, _ := b.Settings["with"].(*lang.With)
	with := ch.With(names.Clauses(film, own))
	if with.Operator != nil {
		sh.Operator = with.Operator.Text
	}
	b.runs(f.Speed(with, b.lex))
	b.Items = b.lex.Place(ch.Apply(b.expand()))
	b.lex.Lose(sec, b.Items, f.Lost)
	if b.unstaged {
		b.To.Lost[names.DeclSubject.String()] = true
	}
	out.Items, out.Lost = b.Items, b.lex.Here
	set, ok := b.setup(with)
	if ok = ok && (b.staged == nil || !b.staged.lost); ok {
		out.Setup = *set
		set.Fill(b.Shot, b.Film.Tape == "lens")
		b.compute(out, opt)
	} else {
		b.look(set)
	}
	out.Defaults, out.Told = b.Defaults, b.To.Diags
	return out, ok
}

// compute fills in what needs a set-up: places, times and figures.
func (b *builder) compute(out *Built, opt Options) {
	b.begins()
	b.fillStaging()
	b.Stage = stage.New(b.lex, b.Ch, &out.Plan.Optics, out.Setup.Focal, b.Film.People, b.ground())
	out.Stage = b.Stage
	readings := b.measure()
	if out.Clock = b.runClock(out, opt); opt.asPlanned || opt.cut != nil {
		return
	}
	out.Start, out.Cut, out.Epoch = b.Start, b.Cut, b.Epoch
	racks := b.inOrder(out)
	out.Plan.Duration = plan.Number(b.duration(out, racks))
	endFollows(racks, float64(out.Plan.Duration))
	b.Stage.EndTurns(float64(out.Plan.Duration))
	b.limitTurns(out)
	b.fillReadings(readings)
	out.Fill(racks, opt.Lines, opt.Needed)
	b.tellClips()
	if opt.Lines {
		b.untimed(out.Pulls)
		b.sayRig(out)
		b.sayFloor()
	}
	b.sayNearLoss(out.Plan.Optics.Light)
}
