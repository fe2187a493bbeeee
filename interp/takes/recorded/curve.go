// Package recorded reads focus curves that a camera has recorded by the frame
// and scores the pulls in them against a plan.
//
// A curve is a table of frames (table.go) with a time and a focus distance, or
// OpenTrackIO samples (lang/opentrackio). Its distances are
// from the sensor, as cameras and lenses report them, also where the plan's
// tape measures from the lens.
package recorded

import (
	"errors"
	"fmt"
	"io"
	"math"
	"slices"

	"pullscore/interp/plan"
	"pullscore/interp/takes"
	"pullscore/interp/units"
)

// A Frame is one frame of a curve.
type Frame struct {
	Number int64   // by its timecode
	Ring   float64 // the angle of the ring, degrees
	read   float64 // what the file has: metres, or degrees where it has none
	line   int     // of the file
}

// A Gap is a run of frames that the recording lacks.
type Gap struct {
	After int64 // the number of the frame before it
	Lost  int64 // how many
}

// A Curve is a recorded focus curve of one shot.
type Curve struct {
	Shot   *plan.Shot
	Frames []Frame // in order, each later than the one before
	Gaps   []Gap
	Faults takes.Faults
}

// maxFrames bounds the length of a recording: over two hours at 60 frames a
// second.
const maxFrames = 500_000

// Read reads the curve of a shot. The form of the file is seen from its first
// character. The shot must say at which timecode it begins, and its lens must
// have a ring to pull by angle. The error says why there is no curve at all;
// what is wrong with single frames is among the curve's Faults. The rate is that
// of the shot.
func Read(r io.Reader, file string, shot *plan.Shot, opt Options) (*Curve, error) {
	switch {
	case shot.BeginsAt == "":
		return nil, fmt.Errorf("shot %s does not say when it begins: write `begins at` and the timecode of its first frame", shot.ID)
	case shot.Optics.Ring == nil:
		return nil, fmt.Errorf("shot %s: lens %s has no ring to pull by angle", shot.ID, shot.Lens)
	}
	c := &Curve{Shot: shot}
	opt.Rate = shot.Rate
	src, err := open(r, file, opt, shot.Optics.Ring.Throw())
	if err != nil {
		return nil, err
	}
	for {
		f, err := src.next()
		var fault *takes.Fault
		switch {
		case errors.Is(err, io.EOF):
			return c, c.complete(file)
		case errors.As(err, &fault):
			c.Faults.Add(fault)
			continue
		case err != nil:
			return nil, err
		}
		if fault := c.add(f, src); fault != nil {
			c.Faults.Add(fault)
		}
	}
}

// complete tells whether there is anything to score.
func (c *Curve) complete(file string) error {
	if len(c.Frames) > 0 {
		return nil
	}
	if len(c.Faults.List) > 0 {
		return c.Faults.List[0]
	}
	return fmt.Errorf("%s: has no frames", file)
}

// add appends a frame; one that is not later than the last is at fault.
func (c *Curve) add(f frame, src source) *takes.Fault {
	n := len(c.Frames)
	switch {
	case n >= maxFrames:
		return src.fault(f, "a recording has at most %d frames", maxFrames)
	case n > 0 && f.number == c.Frames[n-1].Number:
		return src.fault(f, "timecode %s is here twice; the first is on line %d", c.label(f.number), c.Frames[n-1].line)
	case n > 0 && f.number < c.Frames[n-1].Number:
		return src.fault(f, "timecode goes back from %s to %s", c.label(c.Frames[n-1].Number), c.label(f.number))
	}
	ring, read := f.ring, f.ring
	if math.IsNaN(ring) {
		var err error
		read = f.metres
		if ring, err = ringAt(c.Shot, f.metres, c.time(f.number)); err != nil {
			return src.fault(f, "%v", err)
		}
	}
	if n > 0 {
		if lost := f.number - c.Frames[n-1].Number - 1; lost > 0 {
			c.Gaps = append(c.Gaps, Gap{c.Frames[n-1].Number, lost})
		}
	}
	c.Frames = append(c.Frames, Frame{f.number, ring, read, f.line})
	return nil
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

// time is when a frame is shown, in seconds from the start of the shot.
func (c *Curve) time(frame int64) float64 {
	return c.Shot.Speed().Of(float64(frame - c.Shot.Begins))
}

// slice returns the frames between two times of the shot, in seconds.
func (c *Curve) slice(from, to float64) []Frame {
	i, _ := slices.BinarySearchFunc(c.Frames, from, func(f Frame, t float64) int {
		if c.time(f.Number) < t {
			return -1
		}
		return 1
	})
	j := i
	for j < len(c.Frames) && c.time(c.Frames[j].Number) <= to {
		j++
	}
	return c.Frames[i:j]
}
