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
	*base
	film    *film
	section *lang.Section

	set     *setup
	clock   *clock
	pulls   []*pull // in the order of time
	found   []finding
	probing bool // a second build, to try a cure: no cures are looked for
	needs   bool // all the same the time that every rack needs
}

func newBuilder(f *film, sec *lang.Section, ch change) *builder {
	l := newLexicon(sec.Head.(*lang.Shot), f.scope, f.lets, f.source, f.rate)
	return &builder{base: &base{lexicon: l, ch: ch, pace: f.pace, tokens: f.tokens}, film: f, section: sec}
}

// build computes the shot; ok is false where it cannot be drawn at all.
func (b *builder) build() (ok bool) {
	sh := &plan.Shot{
		ID: b.head.ID, File: b.head.Pos.Filename, Line: b.head.Pos.Line,
		Subjects: []*plan.Subject{}, Lines: []plan.Line{}, Cues: []plan.Cue{}, Actions: []plan.Action{},
		Pauses: []plan.Pause{}, Blocking: []plan.Blocking{}, Pulls: []*plan.Pull{},
		Rate: b.film.rate, Imperial: b.film.plan.Units == "imperial", PlanName: b.film.plan.Title,
		Beat: b.film.beat(),
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
	film, _ := b.film.scope.settings["with"].(*lang.With)
	own, _ := b.settings["with"].(*lang.With)
	set, ok := b.setup(b.ch.with(clauses(film, own)))
	b.set = set
	if !ok {
		b.resolveNames()
		return false
	}
	b.fill(set)
	b.begins()
	b.lens = set.lens
	b.stage = newStage(b.lexicon, &b.ch, &sh.Optics, set.focal)
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
	if old, ok := b.film.scope.byFolded[key]; ok {
		replaces := old.name.Text == d.name.Text && old.kind == declSubject && d.kind == declSubject
		if !replaces {
			b.clash(old, d)
			return
		}
	}
	b.local.put(d)
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

// runClock works through the shot.
func (b *builder) runClock() {
	c := newClock(b.base)
	c.needed, c.idle = b.shortest, b.idleHold
	b.clock = c
	c.readLines()
	b.readCut()
	c.readPulls()
	c.readStart()
	c.run()
}

// readCut finds the shot in the cuts, once for all that is tried on it, and
// takes its place from them.
func (b *builder) readCut() {
	if len(b.film.cuts) == 0 {
		return
	}
	cut, ok := b.film.shotCuts[b.section]
	if !ok {
		cut = findShot(&asked{
			id: b.head.ID, rate: b.rate, begun: b.shot.BeginsAt != "", begins: b.shot.Begins,
			lines: b.clock.said(), cuts: b.film.cuts,
		})
		b.film.shotCuts[b.section] = cut
	}
	b.cut = cut
	if cut.list != nil {
		if b.shot.BeginsAt == "" {
			b.epoch = cut.begin
		}
		b.shot.Begins, b.shot.BeginsAt = cut.begin, b.rate.Format(cut.begin)
	}
	for i, key := range keysOf(b.clock.said()) {
		b.clock.inOrder[i].heard = cut.lines[key]
	}
	b.sayCut()
}

// sayCut lists where times come from.
func (b *builder) sayCut() {
	if c := b.cut; c.list != nil && (b.settings["begins"] == nil || b.epoch != c.begin) {
		b.byDefault("begins at", b.shot.BeginsAt, fmt.Sprintf("clip %s of %s", b.head.ID, c.list.base()))
	}
	if c := b.cut; c.subtitles != nil {
		why := fmt.Sprintf("it has %d of %s", len(c.lines), count(len(b.clock.inOrder), "line"))
		if !c.placed {
			why += "; the first of them is where the plan has it"
		}
		b.byDefault("line times", "from "+c.subtitles.base(), why)
	}
}

// hang tells the lines which pulls hang on them.
func (b *builder) hang() {
	for _, p := range b.pulls {
		for _, l := range p.hangs {
			if !l.timed || !b.clock.at[l.item].known {
				continue
			}
			if to := &b.shot.Lines[l.listed]; !slices.Contains(to.Pulls, p.Number) {
				to.Pulls = append(to.Pulls, p.Number)
			}
		}
	}
}
