// The set-up of a shot: its own `with` over the film's, clause by clause, the
// camera and lens named or the only ones, and the optics that follow.

package interp

import (
	"fmt"
	"maps"
	"math"
	"slices"

	"pullscore/interp/hand"
	"pullscore/interp/plan"
	"pullscore/interp/viewer"
	"pullscore/lang"
	"pullscore/optics"
)

// A setup is what a shot is taken with.
type setup struct {
	camera *camera
	lens   *lens
	hand   hand.Hand
	puller string
	log    string // of the puller's takes

	stop        quantity // as written
	stopText    string
	stopAt      lang.Range
	focal       float64
	number      float64 // the f-number
	perT        float64 // T-number over f-number; NaN where the lens has one scale
	meter       float64 // NaN where not said
	meterAt     lang.Range
	nd          float64 // density
	gear, wheel float64
	geared      bool
	view        viewing
	criterion   float64
	perBlur     float64 // arc minutes at the viewer per metre of blur on the sensor
}

// clauses returns the shot's with-statement laid over the film's.
func clauses(film, shot *lang.With) lang.With {
	var w lang.With
	if film != nil {
		w = *film
	}
	if shot == nil {
		return w
	}
	w.Node = shot.Node
	over(&w.Camera, shot.Camera)
	over(&w.Lens, shot.Lens)
	over(&w.Puller, shot.Puller)
	over(&w.Stop, shot.Stop)
	over(&w.Meter, shot.Meter)
	over(&w.Focal, shot.Focal)
	over(&w.ND, shot.ND)
	over(&w.Gear, shot.Gear)
	over(&w.Wheel, shot.Wheel)
	return w
}

func over[T any](to **T, from *T) {
	if from != nil {
		*to = from
	}
}

// setup resolves the shot's set-up; ok is false where the shot cannot be
// computed, which has been reported.
func (b *builder) setup(w lang.With) (s *setup, ok bool) {
	s = &setup{gear: 1, wheel: hand.Wheel, hand: hand.Default(), meter: math.NaN(), perT: math.NaN()}
	s.view = b.film.view.with(b.settings, &b.evaluator)
	b.handOf(s, w.Puller)
	s.camera = choose(b, w.Camera, declCamera, b.film.cameras)
	s.lens = choose(b, w.Lens, declLens, b.film.lenses)
	b.numbers(s, w)
	if s.camera == nil || s.lens == nil || !s.camera.ok || !s.lens.ok {
		return s, false
	}
	s.take(&b.ch)
	if !s.lens.ok {
		return s, false
	}
	b.defaultsOf(s.camera.defaults)
	b.defaultsOf(s.lens.defaults)
	if !b.focal(s, w) || !b.stop(s, w) {
		return s, false
	}
	b.sharpness(s)
	return s, true
}

// take makes the camera and the lens what a change has them be.
func (s *setup) take(ch *change) {
	if ch.SensorBy > 0 {
		c := *s.camera
		c.sensorW, c.height = c.sensorW*ch.SensorBy, c.height*ch.SensorBy
		s.camera = &c
	}
	if ch.FocalBy > 0 {
		s.lens = s.lens.scaled(ch.FocalBy)
	}
}

// choose resolves the camera or lens that is named, or the only one.
func choose[T any](b *builder, name *lang.Name, kind declKind, among map[string]*T) *T {
	if name != nil {
		if v, ok := among[name.Text]; ok {
			return v
		}
		b.notInKit(name, kind, sortedKeys(among))
		return nil
	}
	if v, ok := only(among); ok {
		return v
	}
	if has[*lang.Bad](b.section) || b.film.lost { // what could not be read may name it
		return nil
	}
	code, message := "no-"+kind.String(), fmt.Sprintf("there is no %s", kind)
	detail := fmt.Sprintf("Declare one, or use a kit file that does: use %q.", "kit.pull")
	if len(among) > 1 {
		message = fmt.Sprintf("there are several, and the shot names no %s", kind)
		detail = fmt.Sprintf("As in: with %s %q.", kind, sortedKeys(among)[0])
	}
	b.fail(b.head.Range(), code, message, detail)
	return nil
}

// notInKit reports a name of the kit that nothing declares. It may stand in a
// file that could not be read. A plan without any kit is told once where one may
// come from.
func (b *builder) notInKit(name *lang.Name, kind declKind, among []string) {
	if b.film.lost {
		return
	}
	if len(among) > 0 || b.film.kitTold {
		b.unknown(name, kind.String(), among)
		return
	}
	b.film.kitTold = true
	b.fail(name.Range(), "unknown-name", fmt.Sprintf("%s is no %s", name.Text, kind),
		fmt.Sprintf("Nothing declares any: write a %s, or take a file that has cameras and lenses, as in use %q.", kind, "kit.pull"))
}

// only returns what a map holds where that is one thing.
func only[T any](m map[string]T) (v T, ok bool) {
	if len(m) == 1 {
		for _, v = range m {
		}
	}
	return v, len(m) == 1
}

func sortedKeys[T any](m map[string]T) []string { return slices.Sorted(maps.Keys(m)) }

func (b *builder) handOf(s *setup, name *lang.Name) {
	if name != nil {
		if u, ok := b.film.pullers[name.Text]; ok {
			s.hand, s.puller, s.log = u.hand, u.name, u.log
			b.defaultsOf(u.defaults)
			return
		}
		b.notInKit(name, declPuller, sortedKeys(b.film.pullers))
		return
	}
	if u, ok := only(b.film.pullers); ok {
		s.hand, s.puller, s.log = u.hand, u.name, u.log
		b.defaultsOf(u.defaults)
		return
	}
	b.byDefault("puller", "4.1 bit/s, 0.5 mm at the rim", "no puller is named: a hand as published, fitted to nobody")
}

// numbers takes the clauses that are plain numbers.
func (b *builder) numbers(s *setup, w lang.With) {
	if w.Gear != nil {
		if v, ok := b.within(w.Gear, dimFactor, 0.05, 20, "a gear lies between 0.05 and 20"); ok {
			s.gear, s.geared = v, true
		}
	}
	if w.Wheel != nil {
		if v, ok := b.within(w.Wheel, dimLength, 0.01, 1, "a wheel is 1 cm to 1 m across"); ok {
			s.wheel, s.geared = v, true
		}
	}
	if w.ND != nil {
		if v, ok := b.within(w.ND, dimFactor, 0, 6, "an nd is a density from 0 to 6, 0.3 a stop"); ok {
			s.nd = v
		}
	}
	if w.Meter != nil {
		if q, ok := b.eval(w.Meter); ok {
			if q.dim != dimStop && q.dim != dimTStop {
				b.fail(w.Meter.Range(), "wrong-unit", "the meter shows a stop", "As in: meter f/8.")
			} else {
				s.meter, s.meterAt = q.v, w.Meter.Range()
			}
		}
	}
	if b.ch.Gear > 0 {
		s.gear, s.geared = b.ch.Gear, true
	}
	if b.ch.Wheel > 0 {
		s.wheel, s.geared = b.ch.Wheel, true
	}
	if b.ch.Meter > 0 {
		s.meter = b.ch.Meter
	}
	if b.ch.ND != nil {
		s.nd = *b.ch.ND
	}
	if s.geared && w.Wheel == nil && b.ch.Wheel == 0 {
		b.byDefault("wheel", "80 mm", "the set-up has a gear and does not say its hand wheel")
	}
}

func (b *builder) focal(s *setup, w lang.With) bool {
	l := s.lens
	s.focal = l.focal
	if w.Focal == nil {
		if l.zoom() {
			b.byDefault("focal", fmt.Sprintf("%s mm", plan.Decimal(l.focal*1000, 1)), "a zoom stands at its short end")
		}
		return true
	}
	v, ok := b.positive(w.Focal, dimLength)
	if !ok {
		return false
	}
	v *= b.ch.focalBy()
	if v < l.focal*(1-1e-9) || v > l.longest*(1+1e-9) {
		b.fail(w.Focal.Range(), "focal-not-on-lens",
			fmt.Sprintf("lens %q has no %s mm", l.name, plan.Decimal(v*1000, 1)), "It has "+l.focalText()+".")
		return false
	}
	s.focal = v
	return true
}

func (l *lens) focalText() string {
	if !l.zoom() {
		return plan.Decimal(l.focal*1000, 1) + " mm"
	}
	return fmt.Sprintf("%s to %s mm", plan.Decimal(l.focal*1000, 1), plan.Decimal(l.longest*1000, 1))
}

// stop takes the stop, as f-number and as T-number, and checks that the lens
// has it.
func (b *builder) stop(s *setup, w lang.With) bool {
	if w.Stop == nil {
		if has[*lang.Bad](b.section) {
			return false
		}
		b.fail(b.head.Range(), "no-stop", "the shot has no stop", "As in: with stop f/2.8.")
		return false
	}
	q, ok := b.eval(w.Stop)
	if !ok {
		return false
	}
	if q.dim != dimStop && q.dim != dimTStop {
		b.fail(w.Stop.Range(), "wrong-unit", fmt.Sprintf("a stop is wanted here, and this is %s", q.what()), "As in: stop f/2.8, or T2.9.")
		return false
	}
	s.stopAt = w.Stop.Range()
	if b.ch.Stop > 0 {
		q = quantity{v: b.ch.Stop, dim: dimStop}
	}
	s.stop, s.stopText = q, stopText(q)
	s.perT = s.lens.transmission()
	s.number = q.v
	if q.dim == dimTStop {
		if math.IsNaN(s.perT) {
			b.byDefault("f-number", "f/"+plan.Decimal(q.v, 2), "the lens has one scale of stops, so the f-number is taken as the T-number")
		} else {
			s.number = q.v / s.perT
		}
	}
	return b.onLens(s)
}

func stopText(q quantity) string {
	if q.dim == dimTStop {
		return "T" + plan.Decimal(q.v, 2)
	}
	return "f/" + plan.Decimal(q.v, 2)
}

// transmission is the T-number over the f-number, from the widest of both
// scales; NaN where the lens has one scale alone.
func (l *lens) transmission() float64 {
	f, t := math.NaN(), math.NaN()
	for _, r := range l.stops {
		if r.t && math.IsNaN(t) {
			t = r.widest
		} else if !r.t && math.IsNaN(f) {
			f = r.widest
		}
	}
	return t / f
}

// stopsAt returns the widest and the smallest f-number at a focal length,
// linear in stops between the focal lengths that the lens gives.
func (l *lens) stopsAt(focal float64) (widest, smallest float64) { return l.scaleAt(focal, false) }

// scaleAt is stopsAt on the scale of T-numbers, or on that of f-numbers; a lens
// with one scale has it for both.
func (l *lens) scaleAt(focal float64, t bool) (widest, smallest float64) {
	var list []stopRange
	for _, r := range l.stops {
		if r.t == t {
			list = append(list, r)
		}
	}
	if list == nil {
		list = l.stops
	}
	last := list[0]
	for _, r := range list {
		at := r.at
		if math.IsNaN(at) { // said without a focal length: at the short end
			at = l.focal
		}
		if at >= focal {
			from := last.at
			if math.IsNaN(from) {
				from = l.focal
			}
			if at <= from {
				return r.widest, r.smallest
			}
			u := (focal - from) / (at - from)
			mix := func(a, b float64) float64 { return a * math.Pow(b/a, u) }
			return mix(last.widest, r.widest), mix(last.smallest, r.smallest)
		}
		last = r
	}
	return last.widest, last.smallest
}

// onLens reports a stop that the lens does not have.
func (b *builder) onLens(s *setup) bool {
	widest, smallest := s.lens.stopsAt(s.focal)
	const slack = 1.03 // a twelfth of a stop: marks are rounded
	if s.number*slack >= widest && s.number <= smallest*slack {
		return true
	}
	b.tellStops(s, s.number > smallest)
	return false
}

// tellStops tells which stops the lens has, on the scale that the stop is
// written on, or on the one that the lens has; the stop is too small for it, or
// too wide.
func (b *builder) tellStops(s *setup, small bool) {
	l, dim, unit := s.lens, dimStop, "f"
	if t := s.stop.dim == dimTStop; t && l.hasScale(true) || !t && !l.hasScale(false) {
		dim, unit = dimTStop, "T"
	}
	widest, smallest := l.scaleAt(s.focal, dim == dimTStop)
	near := widest
	if small {
		near = smallest
	}
	write := func(n float64) string { return stopText(quantity{v: n, dim: dim}) }
	b.report(lang.Diagnostic{
		Code: "stop-not-on-lens", Severity: lang.Error, Range: s.stopAt,
		Message: fmt.Sprintf("lens %q does not have %s: it goes from %s to %s", l.name, s.stopText, write(widest), write(smallest)),
		Figures: []lang.Figure{{Name: "widest", Value: widest}, {Name: "smallest", Value: smallest}},
		Cures:   []lang.Cure{{Text: "stop " + write(near), Value: near, Unit: unit}},
	})
}

// hasScale tells whether a lens has T-numbers, or f-numbers.
func (l *lens) hasScale(t bool) bool {
	return slices.ContainsFunc(l.stops, func(r stopRange) bool { return r.t == t })
}

// sharpness computes the criterion on the sensor, and what a blur on the
// sensor is at the viewer's eye.
func (b *builder) sharpness(s *setup) {
	v, c := s.view, s.camera
	if !math.IsNaN(v.criterion) {
		s.criterion = v.criterion
		s.perBlur = viewer.Sharp / v.criterion
		return
	}
	s.criterion = optics.Criterion(c.sensorW, v.width, v.viewer, v.arcmin)
	s.perBlur = optics.ArcminAtViewer(1e-6, c.sensorW, v.width, v.viewer) / 1e-6
	if c.pixels > 0 {
		s.criterion = max(s.criterion, c.sensorW/c.pixels)
	}
}

// underHand is the diameter that the hand turns, metres.
func (s *setup) underHand() float64 {
	if s.geared {
		return s.wheel
	}
	return s.lens.diameter
}

func (b *builder) fill(s *setup) {
	sh := b.shot
	sh.Camera, sh.Lens, sh.Support, sh.Puller = s.camera.name, s.lens.name, s.camera.support, s.puller
	sh.Gear, sh.WheelMM = plan.Number(s.gear), plan.None()
	if s.geared {
		sh.WheelMM = plan.Number(s.wheel * 1000)
	}
	sh.Wanted, sh.Quickest = plan.Number(s.view.wanted), plan.Number(s.view.quickest)
	if math.IsNaN(s.view.criterion) {
		sh.Screen = &plan.Screen{Width: plan.Number(s.view.width), Viewer: plan.Number(s.view.viewer)}
	}
	sh.Hand, sh.Log = s.hand, s.log
	sh.Stop, sh.FNumber, sh.TNumber = s.stopText, plan.Number(s.number), plan.None()
	switch {
	case !math.IsNaN(s.perT):
		sh.TNumber = plan.Number(s.number * s.perT)
	case s.stop.dim == dimTStop:
		sh.TNumber = plan.Number(s.stop.v)
	}
	sh.FocalMM, sh.CriterionMM = plan.Number(s.focal*1000), plan.Number(s.criterion*1000)
	o := &sh.Optics
	*o = plan.Optics{
		SensorW: s.camera.sensorW, SensorH: s.camera.height,
		Focal: plan.Still(s.focal), Number: s.number, Pupil: s.lens.pupil,
		Criterion: s.criterion, ArcminPerBlur: s.perBlur, FromLens: b.film.plan.Tape == "lens",
		Ring: s.lens.law, Marked: s.lens.marked, Engraved: s.lens.engraved, Diameter: s.lens.ringDiameter(), TurnsTo: s.lens.turns,
		Breathes: s.lens.breathing, Camera: plan.Still(0),
	}
	o.Stops[0], o.Stops[1] = s.lens.stopsAt(s.focal)
	o.TOnly = !s.lens.hasScale(false)
	o.Light = plan.Light{Meter: s.meter, ND: s.nd, PerT: s.perT, ISO: s.camera.iso, Shutter: s.camera.shutter}
	if s.lens.zoom() {
		o.Widest = func(f float64) float64 { w, _ := s.lens.stopsAt(f); return w }
	}
	sh.Hyperfocal = plan.Number(sh.Setting(0).Hyperfocal())
}
