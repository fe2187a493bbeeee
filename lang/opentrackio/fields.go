// The fields of a sample, with the bounds that the schema of the form sets them.

package opentrackio

import (
	"fmt"
	"math"
	"strings"

	"pullscore/lang"
	"pullscore/lang/jsontext"
)

// A bounds is what a number may be.
type bounds struct {
	min, max float64
	whole    bool
	above    bool // more than min
}

var (
	anything   = bounds{min: math.Inf(-1), max: math.Inf(1)}
	aboveZero  = bounds{max: math.Inf(1), above: true}
	fraction   = bounds{max: 1}
	fullTurn   = bounds{max: 360}
	aCount     = bounds{max: math.MaxUint32, whole: true}
	aPositive  = bounds{min: 1, max: math.MaxUint32, whole: true}
	clockHours = bounds{max: 23, whole: true}
	sixty      = bounds{max: 59, whole: true}
	frames     = bounds{max: 119, whole: true}
)

// number returns where a field belongs, and what it may be; nil for a field that
// is not read here.
func (s *Sample) number(path string) (*Number, bounds) {
	switch path {
	case "static.camera.activeSensorPhysicalDimensions.width":
		return &s.Camera.Width, aboveZero
	case "static.camera.activeSensorPhysicalDimensions.height":
		return &s.Camera.Height, aboveZero
	case "static.camera.activeSensorResolution.width":
		return &s.Camera.PixelsWide, aPositive
	case "static.camera.activeSensorResolution.height":
		return &s.Camera.PixelsHigh, aPositive
	case "static.camera.isoSpeed":
		return &s.Camera.ISO, aPositive
	case "static.camera.shutterAngle":
		return &s.Camera.ShutterAngle, fullTurn
	case "static.lens.nominalFocalLength":
		return &s.Lens.Nominal, aboveZero
	case "lens.pinholeFocalLength":
		return &s.Lens.Pinhole, aboveZero
	case "lens.focusDistance":
		return &s.Lens.FocusDistance, aboveZero
	case "lens.fStop":
		return &s.Lens.FStop, aboveZero
	case "lens.tStop":
		return &s.Lens.TStop, aboveZero
	case "lens.entrancePupilOffset":
		return &s.Lens.PupilOffset, anything
	case "lens.encoders.focus":
		return &s.Lens.Encoder, fraction
	case "lens.rawEncoders.focus":
		return &s.Lens.RawEncoder, aCount
	}
	return s.part(path)
}

// part is number for the parts of ratios and of the timecode.
func (s *Sample) part(path string) (*Number, bounds) {
	switch path {
	case "static.camera.anamorphicSqueeze.num":
		return &s.Camera.Squeeze.Num, aPositive
	case "static.camera.anamorphicSqueeze.denom":
		return &s.Camera.Squeeze.Denom, aPositive
	case "static.camera.captureFrameRate.num":
		return &s.Camera.FrameRate.Num, aPositive
	case "static.camera.captureFrameRate.denom":
		return &s.Camera.FrameRate.Denom, aPositive
	case "timing.timecode.frameRate.num":
		return &s.Time.Rate.Num, aPositive
	case "timing.timecode.frameRate.denom":
		return &s.Time.Rate.Denom, aPositive
	case "timing.timecode.hours":
		return &s.Time.Hours, clockHours
	case "timing.timecode.minutes":
		return &s.Time.Minutes, sixty
	case "timing.timecode.seconds":
		return &s.Time.Seconds, sixty
	case "timing.timecode.frames":
		return &s.Time.Frame, frames
	}
	return nil, bounds{}
}

// text returns where a field of text belongs; nil for one that is not read here.
func (s *Sample) text(path string) *string {
	switch path {
	case "static.camera.make":
		return &s.Camera.Make
	case "static.camera.model":
		return &s.Camera.Model
	case "static.camera.label":
		return &s.Camera.Label
	case "static.camera.fdlLink":
		return &s.Camera.FDL
	case "static.lens.make":
		return &s.Lens.Make
	case "static.lens.model":
		return &s.Lens.Model
	}
	return nil
}

// holds reports whether a path is an object that holds fields read here.
func holds(path string) bool {
	switch path {
	case "static", "static.camera", "static.camera.activeSensorPhysicalDimensions", "static.camera.activeSensorResolution",
		"static.camera.anamorphicSqueeze", "static.camera.captureFrameRate", "static.lens",
		"lens", "lens.encoders", "lens.rawEncoders", "protocol", "timing", "timing.timecode", "timing.timecode.frameRate":
		return true
	}
	return false
}

const (
	versionPath = "protocol.version"
	dropPath    = "timing.timecode.dropFrame"
)

// A fielder reads the fields of one sample.
type fielder struct {
	jsontext.Scanner
	r *Reader
	s Sample

	behind   int      // a byte of the sample
	behindAt lang.Pos // and its place
}

// sample reads the sample that begins where r is. Of one that is no JSON the
// error is a *Fault.
func (r *Reader) sample(text string) (*Sample, error) {
	f := &fielder{Scanner: jsontext.Scanner{Text: text}, r: r, s: Sample{At: r.pos}, behindAt: r.pos}
	err := f.members("")
	if wrong, ok := err.(*jsontext.Fault); ok {
		return nil, r.fault(f.place(wrong.At), wrong.Code, wrong.Message)
	}
	return &f.s, err
}

// place returns the place of a byte of the sample, which is not before one that
// was asked for.
func (f *fielder) place(at int) lang.Pos {
	f.behindAt = after(f.behindAt, []byte(f.Text[f.behind:at]))
	f.behind = at
	return f.behindAt
}

// tell adds a mistake about the field whose value begins at a byte.
func (f *fielder) tell(at int, message string) *lang.Diagnostic {
	d := f.r.fault(f.place(at), "foreign-unit", message).Diagnostic
	f.s.Faults = append(f.s.Faults, d)
	return &d
}

// members reads the fields of an object; path is its own, "" for the sample.
func (f *fielder) members(path string) error {
	return f.Object(func(key string) error {
		if path != "" {
			key = path + "." + key
		}
		return f.field(key)
	})
}

// field reads the value of a field that is read here, and passes over others. A
// null is a field that is not given.
func (f *fielder) field(path string) error {
	c := f.Next()
	at := f.At
	number, may := f.s.number(path)
	text := f.s.text(path)
	switch {
	case c == 'n':
		return f.Skip()
	case number != nil:
		return f.figure(path, number, may)
	case text != nil && c == '"':
		value, err := f.Str()
		*text = strings.ToValidUTF8(value, "�")
		return err
	case holds(path) && c == '{':
		f.s.Time.Given = f.s.Time.Given || path == "timing.timecode"
		return f.members(path)
	case path == versionPath && c == '[':
		return f.version()
	case path == dropPath && (c == 't' || c == 'f'):
		word, err := f.Word()
		f.s.Time.Drop = word == "true"
		return err
	case text != nil:
		f.tell(at, fmt.Sprintf("%s is %s, and a text is expected", path, jsontext.Kind(c)))
	case holds(path):
		f.tell(at, fmt.Sprintf("%s is %s, and an object is expected", path, jsontext.Kind(c)))
	}
	return f.Skip()
}

// figure reads a number and holds it against its bounds.
func (f *fielder) figure(path string, to *Number, may bounds) error {
	at := f.At
	value, wrong, err := f.Figure()
	if err != nil {
		return err
	}
	*to = Number{Value: value, At: f.place(at)}
	switch {
	case wrong != "":
	case may.above && value <= may.min && may.min == 0:
		wrong = "is 0 or below"
	case value < may.min || value > may.max:
		wrong = fmt.Sprintf("is %v, and goes from %v to %v", value, may.min, may.max)
	case may.whole && value != math.Trunc(value):
		wrong = fmt.Sprintf("is %v, and a whole number is expected", value)
	}
	if wrong != "" {
		to.Fault = f.tell(at, path+" "+wrong)
	}
	return nil
}

// version reads the version of the protocol: a list of numbers.
func (f *fielder) version() error {
	var parts []string
	err := f.Array(func() error {
		if c := f.Next(); len(parts) == 3 || c != '-' && (c < '0' || c > '9') {
			return f.Skip()
		}
		value, _, err := f.Number()
		parts = append(parts, fmt.Sprint(value))
		return err
	})
	f.s.Version = strings.Join(parts, ".")
	return err
}
