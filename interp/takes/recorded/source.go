// The two forms of a recording, as a stream of frames.

package recorded

import (
	"bufio"
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"math"
	"strings"
	"unicode/utf8"

	"pullscore/interp/plan"
	"pullscore/interp/takes"
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

// open tells the forms apart: JSON begins with a brace.
func open(r io.Reader, file string, shot *plan.Shot) (source, error) {
	br := bufio.NewReaderSize(r, maxSample)
	head, err := br.Peek(headSize)
	if err != nil && !errors.Is(err, io.EOF) {
		return nil, err
	}
	head = bytes.TrimLeft(bytes.TrimPrefix(head, []byte("\uFEFF")), " \t\r\n")
	if bytes.HasPrefix(head, []byte("{")) {
		return &trackSource{r: br, file: file, shot: shot}, nil
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

// maxSample is the most bytes that a sample of a JSON line may have.
const maxSample = 1 << 20

// trackSource reads OpenTrackIO samples (version 1.0.1), one a line.
type trackSource struct {
	r    *bufio.Reader
	file string
	shot *plan.Shot
	line int
}

// A sample is what an OpenTrackIO sample says of the focus. Distances are
// metres; the encoder is 0 at infinity and 1 at the closest focus.
type sample struct {
	Lens struct {
		FocusDistance *float64 `json:"focusDistance"`
		Encoders      struct {
			Focus *float64 `json:"focus"`
		} `json:"encoders"`
	} `json:"lens"`
	Timing struct {
		Timecode *struct {
			Hours     int `json:"hours"`
			Minutes   int `json:"minutes"`
			Seconds   int `json:"seconds"`
			Frames    int `json:"frames"`
			FrameRate struct {
				Num   int64 `json:"num"`
				Denom int64 `json:"denom"`
			} `json:"frameRate"`
			DropFrame bool `json:"dropFrame"`
		} `json:"timecode"`
	} `json:"timing"`
}

func (s *trackSource) next() (frame, error) {
	for {
		text, err := s.r.ReadSlice('\n')
		s.line++
		if s.line == 1 {
			text = bytes.TrimPrefix(text, []byte("\uFEFF")) // it is no character of the first line
		}
		f := frame{line: s.line, column: 1, metres: math.NaN(), ring: math.NaN()}
		switch {
		case errors.Is(err, bufio.ErrBufferFull):
			for errors.Is(err, bufio.ErrBufferFull) {
				_, err = s.r.ReadSlice('\n')
			}
			return f, s.fault(f, "this line has more than %d MB", maxSample>>20)
		case err != nil && !errors.Is(err, io.EOF):
			return f, err
		case len(bytes.TrimSpace(text)) > 0:
			return s.frame(f, text)
		case err != nil:
			return f, io.EOF
		}
	}
}

// frame reads one sample.
func (s *trackSource) frame(f frame, text []byte) (frame, error) {
	var m sample
	if err := json.Unmarshal(text, &m); err != nil {
		return f, s.broken(f, text, err)
	}
	tc := m.Timing.Timecode
	if tc == nil {
		return f, s.fault(f, "the sample has no timing.timecode")
	}
	rate := s.shot.Rate
	num, den := rate.Exact()
	if r := tc.FrameRate; r.Num != 0 && (r.Num*den != num*r.Denom || tc.DropFrame != rate.Drop()) {
		drop := ""
		if tc.DropFrame {
			drop = " drop-frame"
		}
		return f, s.fault(f, "the sample counts %d/%d frames a second%s, and the plan %s", r.Num, r.Denom, drop, rate)
	}
	mark := ":"
	if rate.Drop() {
		mark = ";"
	}
	number, err := rate.Parse(fmt.Sprintf("%02d:%02d:%02d%s%02d", tc.Hours, tc.Minutes, tc.Seconds, mark, tc.Frames))
	if err != nil {
		return f, s.fault(f, "%v", err)
	}
	f.number = number
	switch d, e := m.Lens.FocusDistance, m.Lens.Encoders.Focus; {
	case d != nil && *d > 0:
		f.metres = *d
	case d != nil:
		return f, s.fault(f, "lens.focusDistance is %v, and a distance is more than 0", *d)
	case e != nil && *e >= 0 && *e <= 1: // infinity has no number there: the encoder has it
		f.ring = (1 - *e) * s.shot.Optics.Ring.Throw()
	case e != nil:
		return f, s.fault(f, "lens.encoders.focus is %v, and goes from 0 to 1", *e)
	default:
		return f, s.fault(f, "the sample has no lens.focusDistance and no lens.encoders.focus")
	}
	return f, nil
}

// broken tells what is wrong with a line that is not such a sample.
func (s *trackSource) broken(f frame, text []byte, err error) *takes.Fault {
	at := func(offset int64) int {
		return utf8.RuneCount(text[:min(max(offset-1, 0), int64(len(text)))]) + 1
	}
	var syntax *json.SyntaxError
	var kind *json.UnmarshalTypeError
	switch {
	case errors.As(err, &syntax):
		f.column = at(syntax.Offset)
		return s.fault(f, "this line is no JSON: %v", err)
	case errors.As(err, &kind):
		f.column = at(kind.Offset)
		return s.fault(f, "%s is a %s, and a number or an object is wanted", kind.Field, kind.Value)
	}
	return s.fault(f, "%v", err)
}

func (s *trackSource) fault(f frame, format string, args ...any) *takes.Fault {
	return &takes.Fault{File: s.file, Line: f.line, Column: f.column, Message: fmt.Sprintf(format, args...)}
}
