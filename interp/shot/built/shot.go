// A shot, and the way from its times to its figures.

package built

import (
	"pullscore/interp/clock"
	"pullscore/interp/cut"
	"pullscore/interp/hand"
	"pullscore/interp/holds"
	"pullscore/interp/names"
	"pullscore/interp/plan"
	"pullscore/interp/setup"
	"pullscore/interp/stage"
	"pullscore/lang"
)

// A Shot is one shot as it comes out. Nobody writes to it once it is built.
type Shot struct {
	Plan     *plan.Shot
	Head     *lang.Shot
	Body     []lang.Statement
	Items    []names.Item // the statements, moves written out
	Settings map[string]lang.Statement
	Lost     names.Losses // what could not be read of it
	Setup    setup.Setup
	Stage    *stage.Stage
	Start    stage.Goal // where the focus is as the shot begins
	Cut      *cut.Shot  // what the cuts say of the shot; nil where the plan follows none
	Epoch    int64      // where the plan has the shot begin, as frames
	Clock    *clock.Clock
	Pulls    []*Pull // in the order of time
	Rests    []Rest  // of the focus on somebody, likewise

	Times Times // that are known already; nil: none are kept

	Subtitles string // a name for the subtitles that the film has; "" for none
	Defaults  []plan.Default
	Told      []lang.Diagnostic // mistakes that have been come upon
}

// Times are the times that pulls need to land with the wanted chance, in seconds.
// They are of one hand, and of one goroutine.
type Times map[Asked]Needed

// An Asked is a pull and the chance with which it is to land.
type Asked struct {
	pull   hand.Pull
	wanted float64
}

// A Needed is the time that a pull needs; OK is false where no time will do.
type Needed struct {
	Seconds float64
	OK      bool
}

// Fill computes the figures of a shot whose stage is laid, whose clock has run and whose
// duration is known. Its racks and follows are in the order of time. lines asks also for
// what the drawings show of lines, cues, blocking and what hangs on what, needed for the
// time that every rack needs.
func (b *Shot) Fill(racks []*clock.Pull, lines, needed bool) {
	b.Pulls = pullsOf(racks)
	if lines { // before the figures: what hangs on a line is drawn with it
		b.Clock.Finish(b.Plan)
		b.fillBlocking()
	}
	for _, p := range b.Pulls {
		b.figures(p, needed)
		b.Plan.Pulls = append(b.Plan.Pulls, p.Plan)
	}
	b.fillInCut()
	if lines {
		b.hang()
		b.fillMisses()
		b.fillTurns()
	}
	b.Plan.Optics.Light.Loss = b.nearLoss()
	b.fillSubjects(lines)
	if lines {
		b.Plan.FillSeen()
	}
	for _, p := range b.Pulls {
		if p.Rack.Follow {
			b.followFigures(p) // along the drawn curve, so after all else
		}
	}
	if lines {
		b.fillBands()
		holds.Fill(b.Plan)
	}
	b.Rests = b.rests()
	for _, r := range b.Rests {
		b.Plan.Rests = append(b.Plan.Rests, r.Plan)
	}
}
