// The kit: cameras, lenses and pullers as their sections say.

package kit

import (
	"fmt"
	"math"
	"slices"

	"pullscore/interp/format"
	"pullscore/interp/hand"
	"pullscore/interp/names"
	"pullscore/lang"
	"pullscore/lang/timecode"
	"pullscore/optics"
)

// The spread of the distance itself by what the camera is on, metres: from
// memory of studies of quiet standing on force plates (the centre of pressure
// wanders by 4 to 6 mm).
var SupportSway = map[string]float64{"hand": 0.006, "shoulder": 0.004}

// A Missing is what a section leaves out, told once a shot uses it.
type Missing struct{ Name, Value, Why string }

// A Camera is what the section of a camera says.
type Camera struct {
	Name            string
	at              lang.Range
	SensorW, Height float64 // m; the sensor's, until Picture takes a part
	Crop            float64 // the shape of the picture, width over height; 0 where not said
	Format          format.Format
	Pixels          float64 // recorded across; 0 where not said
	Support         string
	ISO, Shutter    float64 // shutter in degrees; 0 where not said
	ISOTo           float64 // how far they may go, likewise
	ShutterTo       float64
	ShutterTime     float64 // where it was written as a time, seconds
	ShutterToTime   float64
	Shoots          float64 // frames a second; 0 where not said
	Monitor         *monitor
	Ok              bool
	Defaults        []Missing
}

// MostFrames is how many frames a second a camera may take at most, and ShootsWithin
// says so.
const (
	MostFrames   = 10_000
	ShootsWithin = "a camera shoots 1 to 10 000 frames a second"
)

// A monitor is what the operator judges focus on.
type monitor struct{ Width, Viewer, Pixels float64 }

// A Puller is what the section of a puller and the log that it names say.
type Puller struct {
	Name     string
	Log      string // the path of the log of takes that it names; may be empty
	Hand     hand.Hand
	Defaults []Missing
}

// A Reader reads the sections of the kit.
type Reader struct {
	names.Evaluator
	Source func(file string) []byte
	Torn   names.Torn
	Crop   float64 // the shape of the picture where a camera says none; 0 where the plan says none either
	// learn fits a puller's hand to the log of takes that a section names.
	Learn func(u *Puller, said *lang.Takes, sec *lang.Section)
	twice bool // the section has been told of something that it says twice
}

// section walks the statements of a section: each kind once, but for marks, stops, and
// what may be said at several distances.
func (k *Reader) section(sec *lang.Section, each func(lang.Statement)) {
	seen := map[string]lang.Statement{}
	k.twice = false
	for _, s := range sec.Body {
		switch s.(type) {
		case *lang.Mark, *lang.Stops, *lang.Bad:
		default:
			key := fmt.Sprintf("%T%s", s, atWhich(s))
			if old, ok := seen[key]; ok {
				k.saidTwice(s, "this is said twice here", "", old)
				continue
			}
			seen[key] = s
		}
		each(s)
	}
}

// atWhich returns the distance that a statement holds at, as written, where there may be
// one for each distance.
func atWhich(s lang.Statement) string {
	at := (*lang.Expr)(nil)
	switch s := s.(type) {
	case *lang.Breathing:
		at = s.At
	case *lang.Squeeze:
		at = s.At
	}
	if at == nil {
		return ""
	}
	return " at " + lang.Write(at)
}

// saidTwice reports a statement that a section says for a second time. Only the
// first is told: where the header between two sections is lost, each line of the
// second would be another.
func (k *Reader) saidTwice(s lang.Statement, message, detail string, old lang.Statement) {
	if k.twice {
		return
	}
	k.twice = true
	d := lang.Diagnostic{Code: "said-twice", Severity: lang.Error, Range: s.Range(), Message: message, Detail: detail}
	if old != nil {
		d.Related = []lang.Related{{Message: "first here", Range: old.Range()}}
	}
	k.Report(d)
}

// nameOf returns the name that a header declares; none where it could not be
// read.
func nameOf(head lang.Statement) string {
	if _, bad := head.(*lang.Bad); bad {
		return ""
	}
	_, n := names.Declared(head)
	return n.Text
}

// lostIn returns what could not be read of a section: anything, where that is its
// header.
func lostIn(sec *lang.Section) names.Losses {
	lost := names.LostIn(sec)
	if _, bad := sec.Head.(*lang.Bad); bad {
		lost[""] = true
	}
	return lost
}

// whole reports whether all lines of a section could be read whole.
func (k *Reader) whole(sec *lang.Section) bool {
	return !slices.ContainsFunc(sec.Body, func(s lang.Statement) bool { return k.Torn.Lost(s) })
}

// Camera reads the section of a camera. One whose header could not be read has
// its mistakes told too, and is not ok.
func (k *Reader) Camera(sec *lang.Section) Camera {
	c := &Camera{at: sec.Head.Range(), Name: nameOf(sec.Head)}
	for _, s := range sec.Body { // before the shutter, which may be a time
		if s, ok := s.(*lang.Shoots); ok && c.Shoots == 0 {
			c.Shoots, _ = k.Within(s.Frames, names.DimFactor, 1, MostFrames, ShootsWithin)
		}
	}
	at := timecode.SpeedOf(k.Speed.Rate, c.Shoots)
	k.section(sec, func(s lang.Statement) {
		switch s := s.(type) {
		case *lang.Sensor:
			c.Ok = k.sensor(c, s)
		case *lang.Records:
			c.Pixels, _ = k.Within(s.Pixels, names.DimPixels, 16, 1e6, "a recording is 16 to 1 000 000 px wide")
		case *lang.Support:
			c.Support = s.Kind
		case *lang.ISO:
			const why = "an iso lies between 1 and 10 000 000"
			c.ISO, _ = k.Within(s.Value, names.DimFactor, 1, 1e7, why)
			if s.To != nil {
				c.ISOTo, _ = k.Within(s.To, names.DimFactor, 1, 1e7, why)
			}
		case *lang.Shutter:
			c.Shutter, c.ShutterTime = k.shutter(s.Value, at)
			if s.To != nil {
				c.ShutterTo, c.ShutterToTime = k.shutter(s.To, at)
			}
		case *lang.Monitor:
			w, okW := k.Size(s.Width)
			v, okV := k.Positive(s.From, names.DimLength)
			px, okP := k.Within(s.Pixels, names.DimPixels, 16, 1e6, "a monitor is 16 to 1 000 000 px wide")
			if okW && okV && okP {
				c.Monitor = &monitor{w, v, px}
			}
		}
	})
	if !names.Has[*lang.Sensor](sec) && !lostIn(sec).Any("sensor") {
		k.Fail(c.at, "no-sensor", fmt.Sprintf("camera %s has no sensor", c.Name), "As in: sensor 24.89 x 18.66 mm.")
	}
	if c.Support == "" {
		c.Support = "tripod"
		c.Defaults = append(c.Defaults, Missing{"camera " + c.Name, "on tripod", "the camera does not say what it is on"})
	}
	c.Ok = c.Ok && c.Name != "" && k.whole(sec)
	return *c
}

// shutter returns an angle in degrees, and in seconds the time that it was written as;
// 0 where it was not, or is none.
func (k *Reader) shutter(x *lang.Expr, at timecode.Speed) (angle, time float64) {
	q, ok := k.Eval(x)
	if !ok {
		return 0, 0
	}
	switch {
	case q.Dim == names.DimAngle && q.V > 0 && q.V <= 360:
		return q.V, 0
	case q.Dim == names.DimTime && q.V > 0 && q.V <= at.Seconds(1):
		return optics.ShutterAngle(at.PerSecond(), q.V), q.V
	}
	k.Fail(x.Range(), "wrong-unit", "a shutter is an angle up to 360 deg or a time no longer than a frame",
		fmt.Sprintf("As in 180 deg, or 1/%d s.", max(50, int(math.Ceil(2*at.PerSecond())))))
	return 0, 0
}

// Puller reads the section of a puller.
func (k *Reader) Puller(sec *lang.Section) Puller {
	u := &Puller{Name: nameOf(sec.Head), Hand: hand.Default()}
	var log *lang.Takes
	k.section(sec, func(s lang.Statement) {
		switch s := s.(type) {
		case *lang.Takes:
			log = s
		case *lang.Hand:
			k.set(&u.Hand.Throughput, s.Throughput, names.DimBits, 0.2, 20, "a throughput lies between 0.2 and 20 bit/s")
		case *lang.Limit:
			k.set(&u.Hand.Limit, s.Speed, names.DimSpeed, 10, 1e4, "a limit lies between 10 and 10 000 deg/s")
		case *lang.Grip:
			k.set(&u.Hand.Grip, s.Angle, names.DimAngle, 10, 720, "a grip lies between 10 and 720 deg")
		case *lang.Spread:
			u.Hand.RimFrom, u.Hand.RimTo = 0, 0
			k.set(&u.Hand.RimSpread, s.Rim, names.DimLength, 1e-5, 0.02, "a spread at the rim lies between 0.01 and 20 mm")
		case *lang.Bias:
			k.set(&u.Hand.Bias, s.Angle, names.DimAngle, -30, 30, "a bias lies between -30 and 30 deg")
		}
	})
	if log != nil {
		k.Learn(u, log, sec)
	}
	return *u
}

func (k *Reader) set(to *float64, x *lang.Expr, dim names.Dimension, lo, hi float64, what string) {
	if v, ok := k.Within(x, dim, lo, hi, what); ok {
		*to = v
	}
}
