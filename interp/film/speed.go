// The speed of a camera.

package film

import (
	"pullscore/interp/kit"
	"pullscore/interp/names"
	"pullscore/lang"
	"pullscore/lang/timecode"
)

// withOf returns the set-up that a shot says itself; nil for none.
func withOf(sec *lang.Section) *lang.With {
	for _, s := range sec.Body {
		if w, ok := s.(*lang.With); ok {
			return w
		}
	}
	return nil
}

// Speed returns the speed of the camera that a set-up names, or of the only one. What
// the set-up says of it rules over the camera. A mistake in it is reported to the
// lexicon's report.
func (f *Film) Speed(w lang.With, l *names.Lexicon) timecode.Speed {
	if w.Shoots != nil {
		v, _ := l.Within(w.Shoots, names.DimFactor, 1, kit.MostFrames, kit.ShootsWithin)
		return timecode.SpeedOf(f.Rate, v)
	}
	var c kit.Camera
	if w.Camera != nil {
		c = f.Cameras[w.Camera.Text]
	} else if len(f.Cameras) == 1 {
		for _, c = range f.Cameras {
		}
	}
	return timecode.SpeedOf(f.Rate, c.Shoots)
}
