package export

import (
	"math"

	"pullscore/interp/plan"
	"pullscore/lang/timecode"
)

// A Frame is the lens at the time at which a frame of a shot begins. What does
// not apply is NaN.
type Frame struct {
	Number int64   // from 0 within the shot
	Label  int64   // of its timecode, frames from 00:00:00:00
	Record int64   // where the cut shows it, frames; -1: nowhere
	Time   float64 // set time, seconds from the shot's start

	Sensor float64 // the focus from the sensor, metres
	Lens   float64 // from the lens's front principal plane, metres
	Ring   float64 // degrees from the near end
	Hand   float64 // degrees at the hand

	Focal float64 // metres
	Stop  float64 // the f-number
	T     float64 // the T-number
}

// Frames returns every frame of a shot. The timecode of one that the cut shows in
// pieces is that of its source. A shot that does not begin at a timecode counts from
// 00:00:00:00.
func Frames(s *plan.Shot) []Frame {
	const slack = 1e-6 // of a frame: a shot of 2 s has 48 frames and not 49
	count := int64(math.Ceil(s.Speed().PerSecond()*float64(s.Duration) - slack))
	frames := make([]Frame, max(0, count))
	for i := range frames {
		frames[i] = at(s, int64(i), s.Speed().Seconds(int64(i)))
	}
	return frames
}

// FramesInCut returns the frames of a shot as the cut shows them, in the order of the
// record; all of them of a shot that no list has.
func FramesInCut(s *plan.Shot) (frames []Frame) {
	if len(s.Pieces) == 0 {
		return Frames(s)
	}
	for i := range s.Pieces {
		p := &s.Pieces[i]
		for record := p.In; record < p.Out; record++ {
			t := p.ShotTime(float64(record), s.Speed())
			f := at(s, s.Speed().Frames(t), t)
			f.Record = record
			frames = append(frames, f)
		}
	}
	return frames
}

// at returns the frame of that number, which begins at t.
func at(s *plan.Shot, n int64, t float64) Frame {
	set := s.Setting(t)
	x := s.FocusAt(t)
	f := Frame{
		Number: n, Label: n, Record: -1, Time: t,
		Sensor: s.SensorTape(x, t), Lens: x,
		Ring: math.NaN(), Hand: s.HandAt(t),
		Focal: set.Focal, Stop: set.Number, T: math.NaN(),
	}
	if s.BeginsAt != "" {
		f.Label += s.Begins
	}
	if source, ok := s.SourceAt(t); ok && byPieces(s) {
		f.Label = source
	}
	for i := range s.Pieces { // a frame, and not a moment: the end of a piece is no longer shown
		if p := &s.Pieces[i]; p.Covers(t) {
			f.Record = p.RecordOf(t, s.Speed())
			break
		}
	}
	if deg := s.RingDeg(x, t); s.Optics.Ring != nil {
		f.Ring = deg
	}
	if s.TNumber.Known() {
		// The glass loses the same part of the light at every stop.
		f.T = float64(s.TNumber) * set.Number / float64(s.FNumber)
	}
	return f
}

// rate returns a rate as a fraction, for forms that have none of their own.
func rate(r timecode.Rate) map[string]int64 {
	num, den := r.Exact()
	return map[string]int64{"num": num, "denom": den}
}
