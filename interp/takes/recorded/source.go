// The two forms of a recording, as a stream of frames.

package recorded

import (
	"bufio"
	"bytes"
	"errors"
	"fmt"
	"io"
	"math"
	"strings"

	"pullscore/interp/plan"
	"pullscore/interp/takes"
	"pullscore/lang"
	"pullscore/lang/opentrackio"
	"pullscore/lang/timecode"
)

// A frame is one frame as it was read: a distance in metres, or an angle of
// the ring in degrees where metres is NaN.
type frame struct {
	number       int64
	metres, ring float64
	line, column int
}

// A source gives frames. A *takes.Fault costs one frame; io.EOF ends.
type source interface {
	next() (frame, error)
	fault(f frame, format string, args ...any) *takes.Fault
}

// headSize is how much of a file is looked at to tell its form.
const headSize = 256

// open tells the forms apart: JSON begins with a brace or a bracket.
func open(r io.Reader, file string, shot *plan.Shot) (source, error) {
	br := bufio.NewReaderSize(r, headSize)
	head, err := br.Peek(headSize)
	if err != nil && !errors.Is(err, io.EOF) {
		return nil, err
	}
	head = bytes.TrimLeft(bytes.TrimPrefix(head, []byte("\uFEFF")), " \t\r\n")
	if len(head) > 0 && (head[0] == '{' || head[0] == '[') {
		return &trackSource{r: opentrackio.NewReader(br, file), file: file, shot: shot}, nil
	}
	return newCSVSource(br, file, shot)
}

// csvSource reads CSV.
type csvSource struct {
	rows        *takes.Rows
	rate        timecode.Rate
	code, focus int    // columns
	unit        string // of focus, "" where every value has its own
}

func newCSVSource(r io.Reader, file string, shot *plan.Shot) (*csvSource, error) {
	s := &csvSource{rows: takes.NewRows(r, file), rate: shot.Rate, code: -1, focus: -1}
	head, err := s.rows.Next()
	if errors.Is(err, io.EOF) {
		return nil, s.rows.Fault(1, 1, "the recording is empty: its first row names the columns")
	}
	if err != nil {
		return nil, err
	}
	plain := true // the column of focus does not say from where
	for i, f := range head {
		switch unit, fromSensor, isFocus := focusColumn(f.Text); {
		case isCode(f.Text) && s.code < 0:
			s.code = i
		case !isFocus:
		case s.focus >= 0 && plain == !fromSensor:
			return nil, s.rows.Fault(f.Line, f.Column, "a second column of focus distances: keep one of %q and %q", head[s.focus].Text, f.Text)
		case s.focus < 0 || fromSensor:
			s.focus, s.unit, plain = i, unit, !fromSensor
		}
	}
	switch {
	case s.code < 0:
		return nil, s.rows.Fault(head[0].Line, head[0].Column, "the recording has no column timecode")
	case s.focus < 0:
		return nil, s.rows.Fault(head[0].Line, head[0].Column, "the recording has no column of focus distances, as in focus_m or focus (ft)")
	}
	return s, nil
}

// isCode tells whether a column holds timecode.
func isCode(name string) bool {
	switch strings.ToLower(strings.NewReplacer(" ", "", "_", "").Replace(name)) {
	case "timecode", "tc":
		return true
	}
	return false
}

// focusColumn tells whether a column holds focus distances, and their unit
// where its name ends in one: focus_m, focus (ft), Focus distance [mm]. It also
// tells whether the name says that they are from the sensor, as in
// focus_from_sensor_m. Focus from the lens is a column of its own, and not meant.
func focusColumn(name string) (unit string, fromSensor, ok bool) {
	words := strings.FieldsFunc(strings.ToLower(name), func(r rune) bool { return strings.ContainsRune(" _-()[]/.:", r) })
	switch {
	case len(words) > 1 && words[0] == "focus" && words[1] == "distance":
		words = words[2:]
	case len(words) > 0 && (words[0] == "focus" || words[0] == "focusdistance"):
		words = words[1:]
	default:
		return "", false, false
	}
	if len(words) > 1 && words[0] == "from" && words[1] == "sensor" {
		words, fromSensor = words[2:], true
	}
	if len(words) == 0 {
		return "", fromSensor, true
	}
	_, ok = takes.Metres(words[0])
	return words[0], fromSensor, ok && len(words) == 1
}

func (s *csvSource) next() (frame, error) {
	row, err := s.rows.Next()
	if err != nil {
		return frame{}, err
	}
	f := frame{line: row[0].Line, column: row[0].Column, ring: math.NaN()}
	for _, k := range []int{s.code, s.focus} {
		if k >= len(row) || row[k].Text == "" {
			last := row[min(k, len(row)-1)]
			s.rows.Reject()
			return f, s.rows.Fault(last.Line, last.Column, "a frame has a timecode and a distance, and one is missing here")
		}
	}
	code, focus := row[s.code], row[s.focus]
	f.line, f.column = code.Line, code.Column
	if f.number, err = s.rate.Parse(code.Text); err != nil {
		return f, s.rows.Fault(code.Line, code.Column, "%v", err)
	}
	if f.metres, err = takes.ParseLength(focus.Text, s.unit); err != nil {
		hint := ""
		if s.unit == "" {
			hint = "; name the unit in the header, as in focus_m"
		}
		return f, s.rows.Fault(focus.Line, focus.Column, "%v%s", err, hint)
	}
	return f, nil
}

func (s *csvSource) fault(f frame, format string, args ...any) *takes.Fault {
	return s.rows.Fault(f.line, f.column, format, args...)
}

// trackSource reads OpenTrackIO samples.
type trackSource struct {
	r    *opentrackio.Reader
	file string
	shot *plan.Shot
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
	tc, rate := m.Time, s.shot.Rate
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
	case e.Given():
		f.ring = (1 - e.Value) * s.shot.Optics.Ring.Throw()
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
