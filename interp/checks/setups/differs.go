// does-not-match: a set-up that differs from the one that it is to be cut against.
//
// Two singles match where the audience cannot tell which way round they were shot: the
// same size, the same lens at the same height to the eyes, and looks past the lens by the
// same angle, the one to the left and the other to the right.

package setups

import (
	"fmt"
	"math"
	"strings"

	"pullscore/interp/plan"
	"pullscore/interp/staging"
	"pullscore/interp/units"
	"pullscore/lang"
	"pullscore/optics"
)

// How far two set-ups may differ and still match. Common practice, no source.
const (
	sameDistance = 0.05 // of the shorter one
	sameFocal    = 0.01 // likewise
	sameStop     = 0.4  // stops: a third, and what a rounded mark may be off
	sameHeight   = 0.1  // metres, of the lens over the eyes
	sameLook     = 5.0  // degrees, of the eye-line
)

func differs(sc *scene) (told []lang.Diagnostic) {
	for _, s := range sc.shots {
		other := sc.byID(s.Staging.Matches)
		if s.Staging.Matches == "" || other == nil || other == s {
			continue
		}
		d := compare(sc, s, other)
		if len(d.parts) == 0 {
			continue
		}
		told = append(told, lang.Diagnostic{
			Code: "does-not-match", Shot: s.ID, Range: sc.line(s, s.Staging.Matcher),
			Message: fmt.Sprintf("%s differs from %s: %s", s.ID, other.ID, strings.Join(d.parts, ", ")),
			Figures: d.figures,
			Related: []lang.Related{{Message: "where the camera of " + other.ID + " stands", Range: sc.placed(other)}},
		})
		if d.elsewhere {
			told[len(told)-1].Cures = sc.cures(s, other)
		}
	}
	return told
}

// A difference is what a set-up has otherwise than its counterpart.
type difference struct {
	parts   []string // each: what it has, to what the other has
	figures []lang.Figure

	elsewhere bool // it may match from another place
}

// add adds one part: what a figure is here and there, in words and as a number.
func (d *difference) add(name, mine, theirs string, v, other float64) {
	d.parts = append(d.parts, mine+" to "+theirs)
	d.figures = append(d.figures, figure(name, v), figure("other_"+name, other))
}

// compare returns in what a set-up differs from its counterpart.
func compare(sc *scene, s, other *plan.Shot) (d difference) {
	u := style(s)
	who, whom := s.Subject(s.Start.To), other.Subject(other.Start.To)
	if who != nil && whom != nil {
		v, o := s.DistanceAt(who, 0), other.DistanceAt(whom, 0)
		if apart(v, o) > sameDistance {
			d.add("distance_m", u.Tape(v), u.Tape(o), v, o)
		}
	}
	d.compareLens(u, s, other)
	if who == nil || whom == nil || !s.Staging.Placed || !other.Staging.Placed {
		return d
	}
	v, o := over(s, who), over(other, whom)
	if sc.hasHeight(who.Name) && sc.hasHeight(whom.Name) && math.Abs(v-o) > sameHeight+1e-9 {
		d.add("over_eyes_m", "the lens "+height(u, v), height(u, o), v, o)
	}
	if look, back, ok := looks(s, other); ok && math.Abs(plan.Wrapped(look+back)) > sameLook {
		d.add("eye_line_deg", "eye-line "+past(u, look), past(u, back), look, back)
	}
	d.elsewhere = true
	return d
}

// compareLens compares lens and stop.
func (d *difference) compareLens(u units.Style, s, other *plan.Shot) {
	v, o := s.Focal(0), other.Focal(0)
	wide, theirs := s.Optics.PictureW(), other.Optics.PictureW()
	if apart(v/wide, o/theirs) > sameFocal {
		mine, its := u.Millimetres(v), u.Millimetres(o)
		if apart(wide, theirs) > sameFocal {
			mine, its = mine+" on "+u.Millimetres(wide), its+" on "+u.Millimetres(theirs)
		}
		d.add("focal_mm", mine, its, v*1000, o*1000)
	}
	f, g := optics.ExactStop(float64(s.FNumber)), optics.ExactStop(float64(other.FNumber))
	if math.Abs(optics.StopsBetween(f, g)) > sameStop {
		d.add("f_number", s.Stop, other.Stop, float64(s.FNumber), float64(other.FNumber))
	}
}

// apart is how far two lengths are apart, as a share of the shorter.
func apart(v, o float64) float64 { return max(v, o)/min(v, o) - 1 }

// over is how far the lens is over the focus point of somebody as a shot starts, metres.
func over(s *plan.Shot, who *plan.Subject) float64 {
	_, _, z := s.OnFloor(who, 0)
	return s.Stands(0).Z - z
}

// height says how far the lens is over the eyes.
func height(u units.Style, v float64) string {
	if math.Abs(v) < 0.005 {
		return "level with the eyes"
	}
	return u.Gap(math.Abs(v)) + word(v, " under", " over") + " the eyes"
}

// past says to which side of the lens somebody looks.
func past(u units.Style, look float64) string {
	switch {
	case math.Abs(look) < 0.05:
		return "into the lens"
	case math.Abs(look) > 179.5:
		return "away from the lens"
	}
	return u.Angle(math.Abs(look)) + word(look, " left", " right")
}

// hasHeight reports whether the plan says how high a subject of the scene is.
func (sc *scene) hasHeight(name string) bool {
	for i := range sc.Subjects {
		if sc.Subjects[i].Name == name {
			return !sc.Subjects[i].Unknown
		}
	}
	return true
}

// looks returns the eye-lines of two people who look at each other, each in the set-up
// whose focus is on them; ok is false where both set-ups have the same person.
func looks(s, other *plan.Shot) (look, back float64, ok bool) {
	v, here := staging.At(s, s.Start.To, other.Start.To, 0)
	o, there := staging.At(other, other.Start.To, s.Start.To, 0)
	return float64(v.EyeLine), float64(o.EyeLine), here && there
}

// cures returns the statement that places the camera of a set-up where it matches its
// counterpart, as far as it has been tried that nothing differs from there.
func (sc *scene) cures(s, other *plan.Shot) []lang.Cure {
	u := style(s)
	x, y, z, ok := mirror(s, other)
	if !ok || s.Staging.Placer == 0 || z < 0 {
		return nil
	}
	x, y, z = written(u, x), written(u, y), written(u, z)
	if d := compare(sc, moved(s, x, y, z), other); len(d.parts) > 0 {
		return nil
	}
	text := fmt.Sprintf("camera at %s, %s high, aims at %s", ways(u, x, y), length(u, z), lang.WriteName(s.Start.To))
	whole := text
	if s.Staging.Because != "" {
		whole += ", because " + lang.WriteText(s.Staging.Because)
	}
	return []lang.Cure{{Text: text, Edits: []lang.Edit{{Range: sc.placed(s), Text: whole}}}}
}

// The inch in metres is exact (international yard and pound agreement, 1959).
const inch = 0.0254

// written returns a length, in metres, as it is once it has been written: as a tape reads
// it, or to the centimetre where that is finer.
func written(u units.Style, v float64) float64 {
	step := 0.01
	switch far := math.Abs(v); {
	case u.System == units.Imperial && far < 120*inch:
		step = inch / 4
	case u.System == units.Imperial && far < 1200*inch:
		step = inch
	case u.System == units.Imperial:
		step = 12 * inch
	case far < 1:
		step = 0.001
	}
	return math.Round(v/step) * step
}

// length writes such a length.
func length(u units.Style, v float64) string {
	if u.System == units.Imperial || v < 0.9995 {
		return u.Tape(v)
	}
	return units.Decimal(v, 2) + " m"
}

// moved returns a shot as it starts with its camera elsewhere on the floor of the scene,
// aimed at whom it starts on.
func moved(s *plan.Shot, x, y, z float64) *plan.Shot {
	other, at := *s, *s.Staging
	other.Staging, other.Subjects = &at, nil
	wx, wy, wz := s.OnFloor(s.Subject(s.Start.To), 0)
	at.Home = plan.Pose{X: x, Y: y, Z: z}
	at.Home.Pan, at.Home.Tilt = at.Home.Bearing(wx, wy, wz)
	other.Optics.Rig, other.Optics.Camera = &plan.Rig{Tilt: at.Home.Tilt}, plan.Still(0)
	for _, u := range s.Subjects {
		v := *u
		x, y, z := at.FromFloor(s.OnFloor(u, 0))
		v.Across, v.Along, v.Up = plan.Still(x), plan.Still(y), plan.Still(z)
		other.Subjects = append(other.Subjects, &v)
	}
	return &other
}

// mirror returns the place on the floor of the scene that is to whom a set-up starts on, and
// to whom they look at, as the place of the other camera is to these two.
func mirror(s, other *plan.Shot) (x, y, z float64, ok bool) {
	_, back, ok := looks(s, other)
	if !ok {
		return 0, 0, 0, false
	}
	who, partner := s.Subject(s.Start.To), s.Subject(other.Start.To)
	whom := other.Subject(other.Start.To)
	wx, wy, wz := s.OnFloor(who, 0)
	px, py, _ := s.OnFloor(partner, 0)
	ox, oy, oz := other.OnFloor(whom, 0)
	camera := other.Stands(0)
	far := math.Hypot(camera.X-ox, camera.Y-oy)
	sin, cos := math.Sincos(math.Atan2(px-wx, py-wy) - back*math.Pi/180)
	return wx + far*sin, wy + far*cos, wz + camera.Z - oz, true
}

// ways writes a place on the floor as a plan does.
func ways(u units.Style, x, y float64) string {
	var list []string
	for _, w := range []struct {
		v           float64
		below, over string
	}{{x, "left", "right"}, {y, "downstage", "upstage"}} {
		if w.v != 0 {
			list = append(list, length(u, math.Abs(w.v))+" "+word(w.v, w.below, w.over))
		}
	}
	if len(list) == 0 {
		return u.Tape(0) + " right"
	}
	return strings.Join(list, ", ")
}
