// The set-up of a shot: its own `with` over the film's, clause by clause, the
// camera and lens named or the only ones, and the optics that follow.

package setup

import (
	"fmt"
	"maps"
	"math"
	"slices"

	"pullscore/interp/change"
	"pullscore/interp/film"
	"pullscore/interp/hand"
	"pullscore/interp/kit"
	"pullscore/interp/names"
	"pullscore/interp/plan"
	"pullscore/interp/rewrite"
	"pullscore/interp/units"
	"pullscore/interp/viewer"
	"pullscore/lang"
	"pullscore/optics"
	"pullscore/optics/ring"
)

// A Reader reads the set-up of one shot.
type Reader struct {
	names.Evaluator // of what stands in no move
	Film            *film.Film
	Head            *lang.Shot
	Settings        map[string]lang.Statement
	Here            names.Losses // what could not be read of the shot
	Ch              change.Change
	Dry             bool // it is no shot, but what no shot says: nothing is missed
	defaults        []plan.Default
}

// byDefault notes that a value stands in for one that the shot does not give.
func (b *Reader) byDefault(name, value, why string) {
	b.defaults = append(b.defaults, plan.Default{Name: name, Value: value, Why: why, Shot: b.Head.ID})
}

func (b *Reader) defaultsOf(list []kit.Missing) {
	for _, m := range list {
		b.byDefault(m.Name, m.Value, m.Why)
	}
}

// A Setup is what a shot is taken with.
type Setup struct {
	Camera kit.Camera // not ok where it is not known
	Lens   kit.Lens
	Hand   hand.Hand
	Puller string
	Log    string // of the puller's takes

	Operator string // who turns the camera; "" where not said

	Stop        names.Quantity // as written
	StopText    string
	StopAt      lang.Range
	Focal       float64
	Number      float64 // the f-number
	Spoken      plan.Spoken
	Meter       float64 // NaN where not said
	MeterT      bool    // it is written as a T-number
	MeterAt     lang.Range
	ND          float64 // density
	Gear, Wheel float64
	Geared      bool
	View        kit.Viewing
	Criterion   float64
	Diopter     float64 // 1/m
	Tube        float64 // metres
	Travel      Travel
	perBlur     float64 // arc minutes at the viewer per metre of blur on the sensor
}

// Read resolves the shot's set-up, and returns what stands in for what nothing says. ok
// is false where the shot cannot be computed, which has been reported. All of the set-up
// is looked at, whatever is wrong with a part of it.
func (b *Reader) Read(w lang.With) (s *Setup, defaults []plan.Default, ok bool) {
	s, ok = b.read(w)
	return s, b.defaults, ok
}

func (b *Reader) read(w lang.With) (s *Setup, ok bool) {
	s = &Setup{Gear: 1, Wheel: hand.Wheel, Hand: hand.Default(), Meter: math.NaN()}
	s.View = b.Film.View.With(b.Settings, &b.Evaluator)
	b.handOf(s, w.Puller)
	if w.Operator != nil { // a crew has them as it has actors: nothing declares them
		s.Operator = w.Operator.Text
	}
	s.Camera = choose(b, w.Camera, names.DeclCamera, b.Film.Cameras)
	s.Lens = choose(b, w.Lens, names.DeclLens, b.Film.Lenses)
	b.numbers(s, w)
	b.shutter(s, w)
	known := s.Camera.Ok && s.Lens.Ok
	if known {
		s.Camera = s.Camera.Picture(s.Lens.SqueezeFar())
		s.take(b.Ch)
		known = s.Lens.Ok
	}
	if known {
		b.defaultsOf(s.Camera.Defaults)
		b.defaultsOf(s.Lens.Defaults)
	}
	known = b.focal(s, w) && known
	if known = b.stop(s, w) && known; !known || b.lostWith() {
		return s, false
	}
	b.sharpness(s)
	b.glassed(s, w)
	return s, true
}

// lostWith reports whether a set-up could not be read, of the shot or of the film,
// or a clause of it: nothing can be computed without knowing what it says.
func (b *Reader) lostWith() bool {
	return b.Film.Scope.Lost["with"] || b.Here["with"] || b.lostClause("")
}

// lostClause reports whether a clause of the set-up could not be read, "" for any.
func (b *Reader) lostClause(word string) bool {
	for _, s := range []lang.Statement{b.Film.Scope.Settings["with"], b.Settings["with"]} {
		if lost := b.Film.Scope.Torn[s]; b.Film.Scope.Torn.Lost(s, word) || word == "" && len(lost) > 0 {
			return true
		}
	}
	return false
}

// mayBeLost reports whether a clause that the set-up does not say may stand in a
// line that could not be read.
func (b *Reader) mayBeLost(word string) bool {
	return b.Dry || b.Film.Scope.Lost.Any("with") || b.Here.Any("with") || b.lostClause(word)
}

// take makes the camera and the lens what a change has them be.
func (s *Setup) take(ch change.Change) {
	if ch.SensorBy > 0 {
		s.Camera = s.Camera.Scaled(ch.SensorBy)
	}
	if ch.Support != "" {
		s.Camera.Support = ch.Support
	}
	if ch.BothWays {
		s.Lens.Glass.Marked = ring.BothWays
	}
	if ch.FocalBy > 0 {
		s.Lens = s.Lens.Scaled(ch.FocalBy)
	}
}

// choose resolves the camera or lens that is named, or the only one; none is not
// ok.
func choose[T any](b *Reader, name *lang.Name, kind names.DeclKind, among map[string]T) (none T) {
	if name != nil {
		if v, ok := among[name.Text]; ok && !b.lostClause(kind.String()) {
			return v
		} else if ok {
			return none // another may be meant
		}
		b.notInKit(name, kind, slices.Sorted(maps.Keys(among)))
		return none
	}
	if v, ok := only(among); ok {
		return v
	}
	if b.mayBeLost(kind.String()) || b.Film.Lost || b.Film.Scope.Lost.Any(kind.String()) {
		return none
	}
	code, message := "no-"+kind.String(), fmt.Sprintf("there is no %s", kind)
	detail := fmt.Sprintf("Declare one, or use a kit file that does: use %q.", "kit.pull")
	if len(among) > 1 {
		message = fmt.Sprintf("there are several, and the shot names no %s", kind)
		detail = fmt.Sprintf("As in: with %s %q.", kind, slices.Sorted(maps.Keys(among))[0])
	}
	b.Fail(b.Head.Range(), code, message, detail)
	return none
}

// notInKit reports a name of the kit that nothing declares. It may stand in a
// file that could not be read.
func (b *Reader) notInKit(name *lang.Name, kind names.DeclKind, among []string) {
	lost := b.Film.Lost || b.Film.Scope.Lost.Any(kind.String())
	if len(among) > 0 || lost {
		b.Unknown(name, kind, among)
		return
	}
	b.Fail(name.Range(), "unknown-name", fmt.Sprintf("%s is no %s", name.Text, kind),
		fmt.Sprintf("%s: write a %s, or take a file that has cameras and lenses, as in use %q.", NoKit, kind, "kit.pull"))
}

// NoKit begins the advice of where a kit may come from, which need be given once.
const NoKit = "Nothing declares any"

// only returns what a map holds where that is one thing.
func only[T any](m map[string]T) (v T, ok bool) {
	if len(m) == 1 {
		for _, v = range m {
		}
	}
	return v, len(m) == 1
}

func (b *Reader) handOf(s *Setup, name *lang.Name) {
	if name != nil {
		if u, ok := b.Film.Pullers[name.Text]; ok {
			s.Hand, s.Puller, s.Log = u.Hand, u.Name, u.Log
			b.defaultsOf(u.Defaults)
			return
		}
		b.notInKit(name, names.DeclPuller, slices.Sorted(maps.Keys(b.Film.Pullers)))
		return
	}
	if u, ok := only(b.Film.Pullers); ok {
		s.Hand, s.Puller, s.Log = u.Hand, u.Name, u.Log
		b.defaultsOf(u.Defaults)
		return
	}
	b.byDefault("puller", "4.1 bit/s, 0.5 mm at the rim", "no puller is named: a hand with published throughput, 0.5 mm assumed at the rim")
}

// numbers takes the clauses that are plain numbers.
func (b *Reader) numbers(s *Setup, w lang.With) {
	if w.Gear != nil {
		if v, ok := b.Within(w.Gear, names.DimFactor, 0.05, 20, "a gear lies between 0.05 and 20"); ok {
			s.Gear, s.Geared = v, true
		}
	}
	if w.Wheel != nil {
		if v, ok := b.Within(w.Wheel, names.DimLength, 0.01, 1, "a wheel is 1 cm to 1 m across"); ok {
			s.Wheel, s.Geared = v, true
		}
	}
	if w.ND != nil {
		if v, ok := b.Within(w.ND, names.DimFactor, 0, 6, "an nd is a density from 0 to 6, 0.3 a stop"); ok {
			s.ND = v
		}
	}
	if w.Meter != nil {
		if q, ok := b.Eval(w.Meter); ok {
			if q.Dim != names.DimStop && q.Dim != names.DimTStop {
				b.Fail(w.Meter.Range(), "wrong-unit", "the meter shows a stop", "As in: meter f/8.")
			} else {
				s.Meter, s.MeterT, s.MeterAt = q.V, q.Dim == names.DimTStop, w.Meter.Range()
			}
		}
	}
	if b.Ch.Gear > 0 {
		s.Gear, s.Geared = b.Ch.Gear, true
	}
	if b.Ch.Wheel > 0 {
		s.Wheel, s.Geared = b.Ch.Wheel, true
	}
	if b.Ch.Meter > 0 {
		s.Meter = b.Ch.Meter
	}
	if b.Ch.ND != nil {
		s.ND = *b.Ch.ND
	}
	if s.Geared && w.Wheel == nil && b.Ch.Wheel == 0 {
		b.byDefault("wheel", "80 mm", "the set-up has a gear but no hand wheel")
	}
}

// shutter turns a shutter that the kit gives as a time into the angle that it has at the
// speed of the shot.
func (b *Reader) shutter(s *Setup, w lang.With) {
	c := &s.Camera
	for _, of := range []struct{ angle, time *float64 }{{&c.Shutter, &c.ShutterTime}, {&c.ShutterTo, &c.ShutterToTime}} {
		if w.Shoots == nil || *of.time == 0 {
			continue
		}
		if *of.angle = optics.ShutterAngle(b.Speed.PerSecond(), *of.time); *of.angle > 360*(1+1e-9) {
			b.Fail(w.Shoots.Range(), "out-of-range", fmt.Sprintf("at %s frames a second a frame is shorter than the shutter of camera %s is open",
				units.Decimal(b.Speed.PerSecond(), 3), c.Name), "Give the camera its shutter as an angle, or shoot more slowly.")
		}
	}
}

func (b *Reader) focal(s *Setup, w lang.With) bool {
	l := s.Lens
	known := l.Ok
	if known {
		s.Focal = l.Focal
	}
	if w.Focal == nil {
		if known && l.Zoom() {
			b.byDefault("focal", units.Style{}.Millimetres(l.Focal), "a zoom stands at its short end")
		}
		return true
	}
	v, ok := b.Positive(w.Focal, names.DimLength)
	if !ok {
		return false
	}
	v *= b.Ch.FocalFactor()
	if !known {
		return false
	}
	if v < l.Focal*(1-1e-9) || v > l.Longest*(1+1e-9) {
		b.Fail(w.Focal.Range(), "focal-not-on-lens",
			fmt.Sprintf("lens %q has no %s", l.Name, units.Style{}.Millimetres(v)), "It has "+l.FocalText()+".")
		return false
	}
	s.Focal = v
	return true
}

// stop takes the stop, as f-number and as T-number, and checks that the lens
// has it.
func (b *Reader) stop(s *Setup, w lang.With) bool {
	if w.Stop == nil {
		if b.mayBeLost("stop") {
			return false
		}
		b.Fail(b.Head.Range(), "no-stop", "the shot has no stop", "As in: with stop f/2.8.")
		return false
	}
	q, ok := b.Eval(w.Stop)
	if !ok {
		return false
	}
	if q.Dim != names.DimStop && q.Dim != names.DimTStop {
		b.Fail(w.Stop.Range(), "wrong-unit", fmt.Sprintf("expected a stop, found %s", q.What()), "As in: stop f/2.8, or T2.9.")
		return false
	}
	s.StopAt = w.Stop.Range()
	if b.Ch.Stop > 0 {
		q = names.Quantity{V: b.Ch.Stop, Dim: names.DimStop}
	}
	if b.Ch.TStop > 0 {
		q = names.Quantity{V: b.Ch.TStop, Dim: names.DimTStop}
	}
	if !s.Lens.Ok {
		s.Stop, s.StopText = q, stopText(q)
		return false
	}
	s.Spoken = s.Lens.Spoken(s.Focal, q.Dim == names.DimTStop)
	if b.Ch.Number > 0 {
		q.V = s.Spoken.Mark(b.Ch.Number)
	}
	s.Stop, s.StopText, s.Number = q, stopText(q), s.Spoken.Number(q.V)
	if s.Spoken.T && !s.Spoken.Both() {
		b.byDefault("f-number", units.Style{}.Stop(q.V, false, units.Exact), "the lens has one scale of stops, so the f-number is taken as the T-number")
	}
	return b.onLens(s)
}

func stopText(q names.Quantity) string {
	return units.Style{}.Stop(q.V, q.Dim == names.DimTStop, units.Exact)
}

// onLens reports a stop that the lens does not have.
func (b *Reader) onLens(s *Setup) bool {
	const slack = 1.03 // a twelfth of a stop: marks are rounded
	if s.Stop.V*slack >= s.Spoken.Widest && s.Stop.V <= s.Spoken.Smallest*slack {
		return true
	}
	b.tellStops(s, s.Stop.V > s.Spoken.Smallest)
	return false
}

// tellStops tells which stops the lens has, on the scale that the stop is
// written on, or on the one that the lens has; the stop is too small for it, or
// too wide. The cure is a stop that the shot could say.
func (b *Reader) tellStops(s *Setup, small bool) {
	l, t, unit := s.Lens, s.Spoken.T, "f"
	widest, smallest := s.Spoken.Widest, s.Spoken.Smallest
	near := widest
	if small {
		near = smallest
	}
	if t {
		unit = "T"
	}
	write := func(n float64) string { return units.Style{}.Stop(n, t == l.HasScale(t), units.Exact) }
	cure := lang.Cure{Text: "stop " + units.Style{}.Stop(near, t, units.Exact), Value: near, Unit: unit}
	if !b.Here["with"] {
		w := rewrite.Shot{Film: b.Film, Head: b.Head, Settings: b.Settings}
		cure.Edits = w.SetUp(lang.Clause{Word: "stop", Text: cure.Text})
	}
	b.Report(lang.Diagnostic{
		Code: "stop-not-on-lens", Severity: lang.Error, Range: s.StopAt,
		Message: fmt.Sprintf("lens %q does not have %s: it goes from %s to %s", l.Name, s.StopText, write(widest), write(smallest)),
		Figures: []lang.Figure{{Name: "widest", Value: widest}, {Name: "smallest", Value: smallest}},
		Cures:   []lang.Cure{cure},
	})
}

// sharpness computes the criterion on the sensor, and what a blur on the
// sensor is at the viewer's eye.
func (b *Reader) sharpness(s *Setup) {
	v, wide := s.View, s.Camera.SensorW*s.Lens.SqueezeFar() // as if without a squeeze
	s.Criterion = v.CriterionOn(wide, s.Camera.Pixels)
	if !math.IsNaN(v.Criterion) {
		s.perBlur = viewer.Sharp / v.Criterion
		return
	}
	s.perBlur = optics.ArcminAtViewer(1e-6, wide, v.Width, v.Viewer) / 1e-6
}

// UnderHand is the diameter that the hand turns, metres.
func (s *Setup) UnderHand() float64 {
	if s.Geared {
		return s.Wheel
	}
	return s.Lens.Diameter
}

// Fill writes the set-up into a shot; fromLens tells that the tape is from the lens.
func (s *Setup) Fill(sh *plan.Shot, fromLens bool) {
	sh.Camera, sh.Lens, sh.Support, sh.Puller = s.Camera.Name, s.Lens.Name, s.Camera.Support, s.Puller
	sh.Operator = s.Operator
	sh.Gear, sh.WheelMM = plan.Number(s.Gear), plan.None()
	if s.Geared {
		sh.WheelMM = plan.Number(s.Wheel * 1000)
	}
	sh.Wanted, sh.Quickest = plan.Number(s.View.Wanted), plan.Number(s.View.Quickest)
	if math.IsNaN(s.View.Criterion) {
		sh.ScreenAssumed = !s.View.Watched
		sh.Screen = &plan.Screen{Width: plan.Number(s.View.Width), Viewer: plan.Number(s.View.Viewer)}
	}
	sh.Hand, sh.Log = s.Hand, s.Log
	sh.Stop, sh.FNumber, sh.TNumber = s.StopText, plan.Number(s.Number), plan.None()
	switch {
	case s.Spoken.Both():
		sh.TNumber = plan.Number(s.Number * s.Spoken.PerT)
		sh.StopBehind = units.Style{}.Stop(s.Spoken.Other(s.Number), !s.Spoken.T, units.Near)
	case s.Stop.Dim == names.DimTStop:
		sh.TNumber = plan.Number(s.Stop.V)
	}
	sh.FocalMM, sh.CriterionMM = plan.Number(s.Focal*1000), plan.Number(s.Criterion*1000)
	sh.Ring = s.Lens.RingKnown()
	s.fillGlass(sh)
	sh.Sensor = plan.Sensor{
		WidthMM: plan.Number(s.Camera.SensorW * 1000), HeightMM: plan.Number(s.Camera.Height * 1000),
		Format: s.Camera.Format.Name, Source: s.Camera.Format.Source, Cropped: s.Camera.Crop > 0,
	}
	o := &sh.Optics
	*o = plan.Optics{
		SensorW: s.Camera.SensorW, SensorH: s.Camera.Height,
		Focal: plan.Still(s.Focal), Number: s.Number, Pupil: s.Lens.Pupil,
		Criterion: s.Criterion, ArcminPerBlur: s.perBlur, FromLens: fromLens,
		Ring: s.Lens.Law, Marked: s.Lens.Marked, Engraved: s.Lens.Engraved, Diameter: s.Lens.RingDiameter(), TurnsTo: s.Lens.Turns,
		Breathes: s.Lens.Breathing, Camera: plan.Still(0), Glass: s.glass(),
	}
	o.Light = plan.Light{Meter: s.Meter, ND: s.ND, Spoken: s.Spoken, ISO: s.Camera.ISO, Shutter: s.Camera.Shutter, ISOTo: s.Camera.ISOTo, ShutterTo: s.Camera.ShutterTo}
	if s.Lens.Zoom() {
		o.Scale = s.Lens.Scale(false)
	}
	sh.Hyperfocal = plan.Number(sh.Judged(math.Inf(1), 0).Hyperfocal())
}
