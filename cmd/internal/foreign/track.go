// What samples say, gathered in memory that does not grow with their number.

package foreign

import (
	"errors"
	"fmt"
	"io"
	"strings"

	"pullscore/interp/units"
	"pullscore/lang"
	"pullscore/lang/lines"
	"pullscore/lang/opentrackio"
)

// most is how many positions of the ring are kept: a recording of five hours at
// 60 frames a second. Samples beyond that still count for everything else.
const most = 1 << 20

// A pair is a position of the ring and the distance that the sample has there, in
// metres.
type pair struct{ at, distance float64 }

// A sight is where the entrance pupil is at a focus distance, in metres from the
// sensor.
type sight struct{ distance, offset float64 }

// A span is the least and the most of what was seen.
type span struct {
	n           int
	least, most float64
}

func (s *span) add(n opentrackio.Number) {
	if !n.Ok() {
		return
	}
	if s.n++; s.n == 1 {
		s.least, s.most = n.Value, n.Value
	}
	s.least, s.most = min(s.least, n.Value), max(s.most, n.Value)
}

// A track is what the samples of a file come to.
type track struct {
	file    string
	samples int
	said    bool // a sample says something of a camera or a lens, be it right or wrong
	version string
	camera  opentrackio.Camera
	lens    opentrackio.Lens // make, model and nominal focal length
	rate    opentrackio.Ratio
	fStop   span
	tStop   span
	focus   span // distances
	pairs   []pair
	raw     []pair
	sights  []sight

	other  bool // the samples are of another lens now
	others int  // how many are
	faults lines.Faults
}

// gather reads the samples of a file. The error is one of the file system.
func gather(r io.Reader, file string) (*track, error) {
	t := &track{file: file}
	samples := opentrackio.NewReader(r, file)
	for {
		s, err := samples.Next()
		var broken *opentrackio.Fault
		switch {
		case err == io.EOF:
			return t, nil
		case errors.As(err, &broken):
			t.faults.Add(broken.Diagnostic)
		case err != nil:
			return nil, err
		default:
			t.add(s)
		}
	}
}

// tell adds a finding.
func (t *track) tell(severity lang.Severity, code string, at lang.Pos, message, detail string) {
	if at.Line == 0 {
		at = lang.Pos{Line: 1, Column: 1}
	}
	t.faults.Add(lang.Diagnostic{Code: code, Severity: severity, Message: message, Detail: detail, Range: lang.Range{File: t.file, Start: at, End: at}})
}

// add takes a sample in.
func (t *track) add(s *opentrackio.Sample) {
	for _, d := range s.Faults {
		d.Message = fmt.Sprintf("%s, line %d", d.Message, d.Range.Start.Line)
		d.Detail = "The value is not used."
		t.faults.Add(d)
	}
	if t.samples++; t.samples == 1 {
		t.versioned(s)
	}
	t.said = t.said || s.Camera != (opentrackio.Camera{}) || s.Lens != (opentrackio.Lens{}) || len(s.Faults) > 0
	t.still(s)
	if t.isOther(s) {
		return
	}
	l := &s.Lens
	t.fStop.add(l.FStop)
	t.tStop.add(l.TStop)
	t.focus.add(l.FocusDistance)
	if !l.FocusDistance.Ok() {
		return
	}
	d := l.FocusDistance.Value
	if l.Encoder.Ok() {
		t.pairs = keep(t.pairs, pair{l.Encoder.Value, d})
	}
	if l.RawEncoder.Ok() {
		t.raw = keep(t.raw, pair{l.RawEncoder.Value, d})
	}
	if l.PupilOffset.Ok() {
		t.sights = keep(t.sights, sight{d, l.PupilOffset.Value})
	}
}

// keep adds what is not the same as the last, up to the limit.
func keep[T comparable](list []T, one T) []T {
	if n := len(list); n == most || n > 0 && list[n-1] == one {
		return list
	}
	return append(list, one)
}

// versioned tells of samples of another version of the form.
func (t *track) versioned(s *opentrackio.Sample) {
	if t.version = clean(s.Version); t.version == "1.0.1" || t.version == "1.0.0" {
		return
	}
	says := "these samples do not say which version of OpenTrackIO they are"
	if t.version != "" {
		says = "these samples have version " + t.version
	}
	t.tell(lang.Note, "other-version", s.At, says, "They are read as version 1.0.1.")
}

// still takes in what does not change from sample to sample: the first that is
// said counts.
func (t *track) still(s *opentrackio.Sample) {
	c, from := &t.camera, &s.Camera
	for _, n := range [][2]*opentrackio.Number{
		{&c.ISO, &from.ISO}, {&c.ShutterAngle, &from.ShutterAngle},
	} {
		if !n[0].Ok() && n[1].Ok() {
			*n[0] = *n[1]
		}
	}
	if !(c.Width.Ok() && c.Height.Ok()) {
		c.Width, c.Height = from.Width, from.Height
	}
	if !c.PixelsWide.Ok() {
		c.PixelsWide, c.PixelsHigh = from.PixelsWide, from.PixelsHigh
	}
	for _, r := range [][2]*opentrackio.Ratio{{&c.Squeeze, &from.Squeeze}, {&c.FrameRate, &from.FrameRate}, {&t.rate, &s.Time.Rate}} {
		if !r[0].Ok() && r[1].Ok() {
			*r[0] = *r[1]
		}
	}
	for _, n := range [][2]*string{{&c.Make, &from.Make}, {&c.Model, &from.Model}, {&c.Label, &from.Label}} {
		if *n[0] == "" {
			*n[0] = *n[1]
		}
	}
}

// isOther reports whether a sample is of another lens than the first that was
// named. One that names none is of the last.
func (t *track) isOther(s *opentrackio.Sample) bool {
	l := &s.Lens
	if l.Model != "" || l.Make != "" || l.Nominal.Ok() {
		if t.lens.Model == "" && t.lens.Make == "" && !t.lens.Nominal.Ok() {
			t.lens.Make, t.lens.Model = l.Make, l.Model
		}
		sameName := l.Model == t.lens.Model && l.Make == t.lens.Make
		if sameName && !t.lens.Nominal.Ok() {
			t.lens.Nominal = l.Nominal
		}
		t.other = !sameName || l.Nominal.Ok() && l.Nominal.Value != t.lens.Nominal.Value
	}
	if t.other {
		if t.others++; t.others == 1 {
			t.tell(lang.Warning, "foreign-scatter", s.At, fmt.Sprintf("from line %d on the samples are of another lens, %s", s.At.Line, t.lensName(l)),
				"Only the first lens is read. Split the file to read the other.")
		}
	}
	return t.other
}

// lensName names a lens by what a sample says of it.
func (t *track) lensName(l *opentrackio.Lens) string {
	if name := clean(strings.TrimSpace(l.Make + " " + l.Model)); name != "" {
		return name
	}
	if l.Nominal.Ok() {
		return units.Decimal(l.Nominal.Value, 1)
	}
	return ""
}
