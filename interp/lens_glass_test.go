// Rules of testdata/lens-cases.tsv about real glass: what a lens loses near, close-up
// lenses and tubes, squeeze, play, principal planes and breathing.

package interp_test

import (
	"math"
	"strings"

	"pullscore/interp/hand"
	"pullscore/optics"
	"pullscore/optics/ring"
)

// hallCriterion is that of a picture of a width in millimetres that is shown 12 m wide and
// seen from 18 m.
func hallCriterion(mm float64) float64 { return optics.Criterion(mm/1000, 12, 18, 2) }

// lensAt is a lens in millimetres with the tape at a distance in metres.
func lensAt(mm, tape float64) (f, x float64) {
	x, _ = optics.FromSensor(tape, mm/1000)
	return mm / 1000, x
}

// lost is the light that a lens loses at a tape distance.
func lost(mm, tape, pupil float64) float64 {
	f, x := lensAt(mm, tape)
	return optics.Setting{Focal: f, Number: 2, Criterion: 1e-5, Pupil: pupil}.NearLoss(x)
}

var nearRules = []lensRule{
	{`(\d+) mm at ([\d.]+) m: magnification`, func(a lensArgs) float64 { return optics.Magnification(lensAt(a.n[0], a.n[1])) }},
	{`(\d+) mm at ([\d.]+) m: magnification // light lost`, func(a lensArgs) float64 { return lost(a.n[0], a.n[1], 1) }},
	{`(\d+) mm at ([\d.]+) m, pupil ([\d.]+): light lost`, func(a lensArgs) float64 { return lost(a.n[0], a.n[1], a.n[2]) }},
	{`1:(\d): light lost`, func(a lensArgs) float64 { return optics.LightLost(1/a.n[0], 1) }},
	{`(\d+) mm, closest (\d+) cm at 1:(\d): focal length at ` + lensMetre, func(a lensArgs) float64 {
		return 1000 * optics.MacroFocalAt(a.n[3], a.n[0]/1000, a.n[1]/100, 1/a.n[2])
	}},
	{`(\d+) mm, closest (\d+) cm at 1:(\d): focal length at closest`, func(a lensArgs) float64 {
		return 1000 * optics.MacroFocalAt(a.n[1]/100, a.n[0]/1000, a.n[1]/100, 1/a.n[2])
	}},
	{`(\d+) mm, darkens f/2.8 to f/5.6 at (\d+) cm: light lost at ` + lensMetre, func(a lensArgs) float64 {
		loss := optics.StopsBetween(optics.ExactStop(5.6), optics.ExactStop(2.8))
		known := a.n[1] / 100
		return loss * optics.Nearness(a.n[2], known, optics.Origin(a.n[0]/1000, known))
	}},
	{`100 mm macro f/5.6 at 0.4 m: window from`, func(lensArgs) float64 { near, _ := macroWindow(); return near }},
	{`100 mm macro f/5.6 at 0.4 m: window from // to`, func(lensArgs) float64 { _, far := macroWindow(); return far }},
}

// macroWindow is the window of a macro lens of 100 mm at f/5.6 on 40 cm, as tapes.
func macroWindow() (near, far float64) {
	f := optics.MacroFocalAt(0.4, 0.1, 0.3, 1)
	f, x := lensAt(f*1000, 0.4)
	lo, hi := optics.Setting{Focal: f, Number: 5.6, Criterion: hallCriterion(24.89)}.Window(x)
	return optics.ToSensor(lo, f), optics.ToSensor(hi, f)
}

const lensDiopter = ` m behind diopter ([\d.]+): `

var closeupRules = []lensRule{
	{`lens set to ([\d.]+|inf)` + lensDiopter + `sharp at`, func(a lensArgs) float64 { return optics.Closeup(a.n[0], a.n[1]) }},
	{`subject at ([\d.]+)` + lensDiopter + `lens set to`, func(a lensArgs) float64 { return optics.CloseupSetting(a.n[0], a.n[1]) }},
	{`50 mm f/2.8, diopter 1: focal length of both`, func(lensArgs) float64 { return 1000 * behindOne().Focal }},
	{`50 mm f/2.8, diopter 1: .* // f-number of both`, func(lensArgs) float64 { return behindOne().Number }},
	{`50 mm f/2.8, diopter 1: .* // subject 0.8 m, 24.89 mm on 12 m from 18 m: window from`, func(lensArgs) float64 {
		near, _ := behindOne().Window(0.8)
		return near
	}},
	{`50 mm f/2.8, diopter 1: .* // to`, func(lensArgs) float64 { _, far := behindOne().Window(0.8); return far }},
	{`(\d+) mm, closest ([\d.]+) m, tube (\d+) mm: nearest tape`, func(a lensArgs) float64 {
		near, _ := optics.TubeRange(a.n[0]/1000, a.n[1], a.n[2]/1000)
		return near
	}},
	{`(\d+) mm, closest ([\d.]+) m, tube (\d+) mm: nearest tape // farthest tape`, func(a lensArgs) float64 {
		_, far := optics.TubeRange(a.n[0]/1000, a.n[1], a.n[2]/1000)
		return far
	}},
	{`(\d+) mm, tube (\d+) mm, subject at ` + lensMetre + `: ring at`, func(a lensArgs) float64 {
		return optics.TubeSetting(a.n[2], a.n[0]/1000, a.n[1]/1000)
	}},
	{`(\d+) mm, tube (\d+) mm, lens at infinity: magnification`, func(a lensArgs) float64 { return tubeAtInfinity(a.n[0], a.n[1]) }},
	{`(\d+) mm, tube (\d+) mm, lens at infinity: magnification // light lost`, func(a lensArgs) float64 {
		return optics.LightLost(tubeAtInfinity(a.n[0], a.n[1]), 1)
	}},
}

func behindOne() optics.Setting {
	return optics.Setting{Focal: 0.05, Number: 2.8, Criterion: hallCriterion(24.89)}.Behind(1)
}

// tubeAtInfinity is the magnification with a lens at infinity on a tube, in millimetres.
func tubeAtInfinity(mm, tube float64) float64 {
	_, far := optics.TubeRange(mm/1000, 1, tube/1000)
	return optics.Magnification(lensAt(mm, far))
}

const lensSensor = `sensor ([\d.]+) x ([\d.]+) mm, squeeze ([\d.]+): screen shape`

var squeezeRules = []lensRule{
	{lensSensor, func(a lensArgs) float64 { return optics.ShapeOnScreen(a.n[0], a.n[1], a.n[2]) }},
	{lensSensor + ` // criterion, 12 m from 18 m`, func(a lensArgs) float64 { return 1000 * hallCriterion(a.n[0]*a.n[2]) }},
	{lensSensor + ` // 75 mm at infinity: width of view`, func(a lensArgs) float64 {
		return optics.SqueezedView(a.n[0]/1000, 0.075, math.Inf(1), a.n[2])
	}},
	{`21.95 mm, squeeze 2, 75 mm f/2.8: nearest focus that holds ` + lensMetre + ` \(tape\)`, func(a lensArgs) float64 {
		near, _ := squeezedWindow(a.n[0])
		return near
	}},
	{`21.95 mm, squeeze 2, 75 mm f/2.8: nearest focus that holds ` + lensMetre + ` .* // farthest`, func(a lensArgs) float64 {
		_, far := squeezedWindow(a.n[0])
		return far
	}},
	{`75 mm f/2.8, squeeze 2 in front, focus 1.5 m, point at 3 m: disc on the sensor, high`, func(lensArgs) float64 { return squeezedBlur() }},
	{`75 mm f/2.8, squeeze 2 in front, .* // (?:squeeze at the (rear): )?wide on the (sensor|unsqueezed picture)`, func(a lensArgs) float64 {
		onSensor, onPicture := optics.SqueezedDisc(squeezedBlur(), 2, a.text[0] == "rear")
		if a.text[1] == "sensor" {
			return onSensor
		}
		return onPicture
	}},
	{`sensor ([\d.]+) x ([\d.]+), crop ([\d.]+), squeeze (\d): width`, func(a lensArgs) float64 { w, _ := cropped(a); return w }},
	{`sensor ([\d.]+) x ([\d.]+), crop ([\d.]+), squeeze (\d): width // height`, func(a lensArgs) float64 { _, h := cropped(a); return h }},
}

// squeezedWindow is the window of a lens of 75 mm at f/2.8 with squeeze 2, as tapes.
func squeezedWindow(tape float64) (near, far float64) {
	f, x := lensAt(75, tape)
	lo, hi := optics.Setting{Focal: f, Number: 2.8, Criterion: hallCriterion(21.95 * 2)}.Window(x)
	return optics.ToSensor(lo, f), optics.ToSensor(hi, f)
}

// squeezedBlur is the height of the disc of a point at 3 m with the focus at 1.5 m, in
// millimetres.
func squeezedBlur() float64 {
	f, x := lensAt(75, 1.5)
	_, d := lensAt(75, 3)
	return 1000 * optics.Setting{Focal: f, Number: 2.8, Criterion: 1e-5}.Blur(d, x)
}

// cropped is the part of a sensor of a row; the row rounds 16/9 to 1.78.
func cropped(a lensArgs) (w, h float64) {
	shape := a.n[2]
	if shape == 1.78 {
		shape = 16.0 / 9
	}
	return optics.Crop(a.n[0], a.n[1], shape, a.n[3])
}

var lensWays = map[string]ring.Way{"not said": ring.WayUnknown, "inf": ring.ToInf, "near": ring.ToClosest, "both": ring.BothWays}

const lensPlay = `play (\d) deg, pull towards (inf|near), marked (.*): short by`

var playRules = []lensRule{
	{lensPlay, short},
	{lensPlay + ` // gear 1, window (.*)\.\.(.*) deg, spread ([\d.]+), bias 0: chance`, func(a lensArgs) float64 {
		return hand.Within(a.n[3], a.n[4], a.n[5], -short(a))
	}},
	{`play (\d) deg, gear (\d): extra travel of the hand where the direction turns`, func(a lensArgs) float64 { return ring.PlayTravel(a.n[0], a.n[1]) }},
}

func short(a lensArgs) float64 {
	return ring.PlayShift(a.n[0], a.text[1] == "inf", lensWays[a.text[2]])
}

var planesRules = []lensRule{
	{`(\d+) mm, unit focusing, ([\d.]+) m against inf: image larger by`, func(a lensArgs) float64 {
		f, x := lensAt(a.n[0], a.n[1])
		return optics.Breathing(f, x, math.Inf(1))
	}},
	{`(\d+) mm, tape ([\d.]+) (c?m), planes (-?\d+) mm apart: x`, func(a lensArgs) float64 { _, x := apart(a); return x }},
	{`(\d+) mm, tape ([\d.]+) (c?m), planes (-?\d+) mm apart: x // magnification`, func(a lensArgs) float64 { return optics.Magnification(apart(a)) }},
	{`breathing 3 % at 75 cm and 1 % at 2 m, squeeze ([\d.]+) at 75 cm and (\d) at inf, 75 mm: squeeze at ` + lensMetre, func(a lensArgs) float64 {
		values := []ring.Value{{Distance: 0.75, Value: a.n[0]}, {Distance: math.Inf(1), Value: a.n[1]}}
		return ring.Straight(values, optics.Origin(0.075, 0.75)).At(a.n[2])
	}},
	{`(?:wheel )?travel (\d+) deg over (?:a )?ring (?:(\d+) to|of) (\d+) deg: gear`, func(a lensArgs) float64 {
		if math.IsNaN(a.n[1]) {
			a.n[1] = 0
		}
		return ring.Gear(a.n[0], a.n[1], a.n[2])
	}},
	{`wheel travel (\d+) deg from 2' to 8' on the 50 mm above: gear`, func(a lensArgs) float64 {
		return ring.Gear(a.n[0], law50().Angle(2*foot), law50().Angle(8*foot))
	}},
	{`breathing 3 % at 75 cm, marks of c = ([\d.]+) m, evenly in q: at ` + lensMetre, func(a lensArgs) float64 {
		return ring.Smooth([]ring.Value{{Distance: 0.75, Value: 3}, {Distance: math.Inf(1)}}, a.n[0]).At(a.n[1])
	}},
}

// apart is a lens with space between its principal planes.
func apart(a lensArgs) (f, x float64) {
	tape := a.n[1]
	if strings.HasPrefix(a.text[2], "c") {
		tape /= 100
	}
	x, _ = optics.FromSensorApart(tape, a.n[0]/1000, a.n[3]/1000)
	return a.n[0] / 1000, x
}
