// Package recorded reads focus curves that a camera has recorded by the frame
// and scores the pulls in them against a plan.
//
// A curve is a table of frames (table.go) with a time and a focus distance, or
// OpenTrackIO samples (lang/opentrackio). Its distances are
// from the sensor, as cameras and lenses report them, also where the plan's
// tape measures from the lens.
package recorded

import (
	"cmp"
	"errors"
	"fmt"
	"io"
	"math"
	"slices"

	"pullscore/interp/plan"
	"pullscore/interp/takes"
	"pullscore/interp/units"
	"pullscore/lang/timecode"
)

// A Frame is one frame of a curve.
type Frame struct {
	Number int64   // by its timecode
	Time   float64 // of the shot, seconds
	Ring   float64 // the angle of the ring, degrees
	lasts  float64 // seconds of the shot
	read   float64 // what the file has: metres, or degrees where it has none
}

// ends returns when the frame after this one begins, in seconds of the shot.
func (f Frame) ends() float64 { return f.Time + f.lasts }

// A Gap is a run of frames that the recording lacks.
type Gap struct {
	After int64 // the number of the frame before it
	Lost  int64 // how many
}

// A Curve is a recorded focus curve of one shot.
type Curve struct {
	Shot   *plan.Shot
	By     string  // the clock of its timecode
	Frames []Frame // in the order of the shot, each later than the one before
	Unseen int     // frames by record that show something else than the shot
	Gaps   []Gap
	Faults takes.Faults

	clock *clock
}

// maxFrames bounds the length of a recording: over two hours at 60 frames a
// second.
const maxFrames = 500_000

// Read reads the curve of a shot. The form of the file is seen from its first
// character. The shot's lens must have a ring to pull by angle. The error says why
// there is no curve at all; what is wrong with single frames is among the curve's
// Faults. The rate is that of the shot.
func Read(r io.Reader, file string, shot *plan.Shot, opt Options) (*Curve, error) {
	if shot.Optics.Ring == nil {
		return nil, fmt.Errorf("shot %s: lens %s has no ring to pull by angle", shot.ID, shot.Lens)
	}
	k := &clock{shot: shot}
	if shot.BeginsAt == "" && len(shot.Pieces) == 0 && opt.Clock == ByRecord {
		return nil, k.nowhere()
	}
	opt.Rate = shot.Rate
	src, err := open(r, file, opt, shot.Optics.Ring.Throw())
	if err != nil {
		return nil, err
	}
	raw, err := readFrames(src, file, shot.Rate)
	if err != nil {
		return nil, err
	}
	c := &Curve{Shot: shot, Gaps: raw.gaps, Faults: raw.faults}
	frames := raw.frames
	if c.clock, err = setClock(shot, frames[0].number, frames[len(frames)-1].number, opt.Clock); err != nil {
		return nil, err
	}
	c.By = c.clock.by
	for _, f := range frames {
		if fault := c.add(f, src); fault != nil {
			c.Faults.Add(fault)
		}
	}
	c.order()
	if len(c.Frames) == 0 && c.Unseen == 0 {
		return nil, c.Faults.List[0]
	}
	return c, nil
}

// raw is a recording as it stands in its file.
type raw struct {
	frames []frame // each later than the one before; at least one
	gaps   []Gap
	faults takes.Faults
}

// readFrames reads a recording to its end.
func readFrames(src source, file string, rate timecode.Rate) (*raw, error) {
	all := &raw{}
	for {
		f, err := src.next()
		var fault *takes.Fault
		switch {
		case errors.Is(err, io.EOF):
			return all, all.complete(file)
		case errors.As(err, &fault):
			all.faults.Add(fault)
			continue
		case err != nil:
			return nil, err
		}
		if fault := all.add(f, src, rate); fault != nil {
			all.faults.Add(fault)
		}
	}
}

// complete tells whether there is anything to score.
func (r *raw) complete(file string) error {
	if len(r.frames) > 0 {
		return nil
	}
	if len(r.faults.List) > 0 {
		return r.faults.List[0]
	}
	return fmt.Errorf("%s: has no frames", file)
}

// add appends a frame; one that is not later than the last is at fault.
func (r *raw) add(f frame, src source, rate timecode.Rate) *takes.Fault {
	n := len(r.frames)
	if n >= maxFrames {
		return src.fault(f, "a recording has at most %d frames", maxFrames)
	}
	if n > 0 {
		last := r.frames[n-1]
		switch lost := f.number - last.number - 1; {
		case lost == -1:
			return src.fault(f, "timecode %s is here twice; the first is on line %d", rate.Format(f.number), last.line)
		case lost < 0:
			return src.fault(f, "timecode goes back from %s to %s", rate.Format(last.number), rate.Format(f.number))
		case lost > 0:
			r.gaps = append(r.gaps, Gap{last.number, lost})
		}
	}
	r.frames = append(r.frames, f)
	return nil
}

// A Sample is a frame of a recording that no plan belongs to.
type Sample struct {
	Number int64 // by its timecode
	Metres float64
}

// Samples are a recording that no plan belongs to.
type Samples struct {
	Samples []Sample // each later than the one before; at least one
	Faults  takes.Faults
}

// ReadSamples reads a recording that no plan belongs to. Errors are as those of Read.
func ReadSamples(r io.Reader, file string, opt Options) (*Samples, error) {
	src, err := open(r, file, opt, math.NaN())
	if err != nil {
		return nil, err
	}
	raw, err := readFrames(src, file, opt.Rate)
	if err != nil {
		return nil, err
	}
	list := &Samples{Faults: raw.faults}
	for _, f := range raw.frames {
		list.Samples = append(list.Samples, Sample{f.number, f.metres})
	}
	return list, nil
}

// add appends a frame, unless it shows something else than the shot.
func (c *Curve) add(f frame, src source) *takes.Fault {
	t, ok := c.clock.time(f.number)
	if !ok {
		c.Unseen++
		return nil
	}
	ring, read := f.ring, f.ring
	if math.IsNaN(ring) {
		var err error
		read = f.metres
		if ring, err = ringAt(c.Shot, f.metres, t); err != nil {
			return src.fault(f, "%v", err)
		}
	}
	c.Frames = append(c.Frames, Frame{f.number, t, ring, c.clock.lasts(f.number), read})
	return nil
}

// order puts the frames into the order of the shot. Of those that show the same time
// the first of the recording stays.
func (c *Curve) order() {
	slices.SortStableFunc(c.Frames, func(a, b Frame) int { return cmp.Compare(a.Time, b.Time) })
	const same = 1e-6 // seconds: times of frames come from fractions
	c.Frames = slices.CompactFunc(c.Frames, func(a, b Frame) bool { return math.Abs(b.Time-a.Time) < same })
}

// ringAt returns the angle of the ring, in degrees, that focuses at a distance
// from the sensor in metres, which may be infinite, at a time of the shot.
func ringAt(s *plan.Shot, sensor, t float64) (float64, error) {
	if _, ok := s.FromSensor(sensor, t); !ok && !math.IsInf(sensor, 1) {
		return 0, fmt.Errorf("the lens forms no image of what is %s away", units.Style{}.Gap(sensor))
	}
	deg := s.Optics.Ring.Angle(sensor)
	if math.IsNaN(deg) {
		return 0, fmt.Errorf("nothing says where %s lies on the ring", units.Style{}.Gap(sensor))
	}
	return deg, nil
}

// label is the timecode of a frame.
func (c *Curve) label(frame int64) string { return c.Shot.Rate.Format(frame) }

// slice returns the frames between two times of the shot, in seconds.
func (c *Curve) slice(from, to float64) []Frame {
	i, _ := slices.BinarySearchFunc(c.Frames, from, func(f Frame, t float64) int {
		if f.Time < t {
			return -1
		}
		return 1
	})
	j := i
	for j < len(c.Frames) && c.Frames[j].Time <= to {
		j++
	}
	return c.Frames[i:j]
}
