// The scale of stops that a shot speaks.

package plan

// Spoken returns the scale of stops that the shot speaks.
func (s *Shot) Spoken() Spoken { return s.Optics.Light.Spoken }

// BothStops returns the stop as written, and behind it in brackets the same on the
// lens's other scale, if it has one: "T2.8 (f/2.7)".
func (s *Shot) BothStops() string {
	if s.StopBehind == "" {
		return s.Stop
	}
	return s.Stop + " (" + s.StopBehind + ")"
}

// Widest returns the widest f-number of a zoom at a focal length in metres. It returns
// 0 for a prime, whose stop does not depend on the focal length.
func (o *Optics) Widest(focal float64) float64 {
	widest, _ := o.Scale.At(focal)
	return widest
}
