// OpenTrackIO samples as frames.

package recorded

import (
	"errors"
	"fmt"
	"math"

	"pullscore/interp/takes"
	"pullscore/lang"
	"pullscore/lang/opentrackio"
	"pullscore/lang/timecode"
)

// trackSource reads OpenTrackIO samples.
type trackSource struct {
	r    *opentrackio.Reader
	file string

	rate  timecode.Rate
	throw float64 // of the ring, degrees; NaN where it is not known
}

func (s *trackSource) next() (frame, error) {
	m, err := s.r.Next()
	f := frame{metres: math.NaN(), ring: math.NaN()}
	var broken *opentrackio.Fault
	switch {
	case errors.As(err, &broken):
		return f, s.told(broken.Diagnostic)
	case err != nil:
		return f, err
	}
	f.line, f.column = m.At.Line, m.At.Column
	if f.number, err = s.number(f, m); err != nil {
		return f, err
	}
	return s.focus(f, m)
}

// number returns the number of a frame by its timecode.
func (s *trackSource) number(f frame, m *opentrackio.Sample) (int64, error) {
	tc, rate := m.Time, s.rate
	for _, n := range []opentrackio.Number{tc.Hours, tc.Minutes, tc.Seconds, tc.Frame, tc.Rate.Num, tc.Rate.Denom} {
		if n.Fault != nil {
			return 0, s.told(*n.Fault)
		}
	}
	if !tc.Given {
		return 0, s.lacks(f, m, "timing.timecode")
	}
	num, den := rate.Exact()
	if r := tc.Rate; r.Ok() && (r.Num.Value*float64(den) != float64(num)*r.Denom.Value || tc.Drop != rate.Drop()) {
		drop := ""
		if tc.Drop {
			drop = " drop-frame"
		}
		return 0, s.fault(f, "the sample counts %v/%v frames a second%s, and the plan %s", r.Num.Value, r.Denom.Value, drop, rate)
	}
	mark := ":"
	if rate.Drop() {
		mark = ";"
	}
	number, err := rate.Parse(fmt.Sprintf("%02v:%02v:%02v%s%02v", tc.Hours.Value, tc.Minutes.Value, tc.Seconds.Value, mark, tc.Frame.Value))
	if err != nil {
		return 0, s.fault(f, "%v", err)
	}
	return number, nil
}

// focus fills in where the focus is: by its distance, or by the encoder, which
// has infinity too.
func (s *trackSource) focus(f frame, m *opentrackio.Sample) (frame, error) {
	switch d, e := m.Lens.FocusDistance, m.Lens.Encoder; {
	case d.Fault != nil:
		return f, s.told(*d.Fault)
	case d.Given():
		f.metres = d.Value
	case e.Fault != nil:
		return f, s.told(*e.Fault)
	case e.Given() && !math.IsNaN(s.throw):
		f.ring = (1 - e.Value) * s.throw
	case e.Given():
		return f, s.fault(f, "the sample has lens.encoders.focus and no lens.focusDistance: without a plan nothing says where on the ring a distance lies")
	default:
		return f, s.lacks(f, m, "lens.focusDistance and no lens.encoders.focus")
	}
	return f, nil
}

// lacks tells what a sample lacks, or the mistake that may be why.
func (s *trackSource) lacks(f frame, m *opentrackio.Sample, what string) *takes.Fault {
	if len(m.Faults) > 0 {
		return s.told(m.Faults[0])
	}
	return s.fault(f, "the sample has no %s", what)
}

// told returns a mistake that the reader of samples has found.
func (s *trackSource) told(d lang.Diagnostic) *takes.Fault {
	return s.fault(frame{line: d.Range.Start.Line, column: d.Range.Start.Column}, "%s", d.Message)
}

func (s *trackSource) fault(f frame, format string, args ...any) *takes.Fault {
	return &takes.Fault{File: s.file, Line: f.line, Column: f.column, Message: fmt.Sprintf(format, args...)}
}
