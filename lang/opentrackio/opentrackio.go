// Package opentrackio reads OpenTrackIO samples (version 1.0.1, SMPTE RIS on-set
// virtual production, JSON): what they say of the camera, the lens and the time.
//
// A file is one sample, a list of samples, or samples one after another, such as
// one a line. A Reader returns them one by one and holds only one in memory, so a
// recording may be of any length. A mistake costs only its own sample or field.
package opentrackio

import (
	"fmt"
	"io"
	"unicode/utf8"

	"pullscore/lang"
)

// MaxSample is the most bytes that a sample may have.
const MaxSample = 1 << 20

// A Number is a field of a sample. The zero value is a field that the sample does
// not have.
type Number struct {
	Value float64
	At    lang.Pos         // where the value is
	Fault *lang.Diagnostic // what is wrong with it; nil for a value within its bounds
}

// Given reports whether the sample has the field, right or wrong.
func (n Number) Given() bool { return n.At.Line > 0 }

// Ok reports whether the sample has the field, with a value within its bounds.
func (n Number) Ok() bool { return n.Given() && n.Fault == nil }

// A Ratio is a field written as two whole numbers.
type Ratio struct{ Num, Denom Number }

// Ok reports whether the sample has both numbers, within their bounds.
func (r Ratio) Ok() bool { return r.Num.Ok() && r.Denom.Ok() }

// Value returns the numerator divided by the denominator.
func (r Ratio) Value() float64 { return r.Num.Value / r.Denom.Value }

// A Sample is what one sample says.
type Sample struct {
	At      lang.Pos // where it begins
	Version string   // of the protocol, as in 1.0.1; empty where it is not said
	Camera  Camera
	Lens    Lens
	Time    Timecode

	// Faults are the mistakes in the fields that are read here, in order. The
	// fields of the sample that have none can be used.
	Faults []lang.Diagnostic
}

// A Camera is what static.camera says.
type Camera struct {
	Width, Height           Number // of the active sensor, in millimetres
	PixelsWide, PixelsHigh  Number // of the active sensor
	Squeeze                 Ratio  // of the image that the lens gives
	FrameRate               Ratio  // frames that the camera takes in a second
	ISO                     Number
	ShutterAngle            Number // degrees
	Make, Model, Label, FDL string
}

// A Lens is what static.lens and lens say.
type Lens struct {
	Make, Model   string
	Nominal       Number // focal length in millimetres, of a prime
	Pinhole       Number // focal length of the pinhole camera, in millimetres
	FocusDistance Number // metres
	FStop, TStop  Number
	PupilOffset   Number // metres from the image plane towards the subject
	Encoder       Number // of the focus: 0 at infinity, 1 at the closest focus
	RawEncoder    Number // of the focus, before any homing
}

// A Timecode is what timing.timecode says. Numbers that are not given are 0.
type Timecode struct {
	Given                          bool
	Hours, Minutes, Seconds, Frame Number
	Rate                           Ratio // frames counted in a second
	Drop                           bool
}

// A Fault is a mistake that costs a sample.
type Fault struct{ lang.Diagnostic }

// Error returns the place and the message.
func (f *Fault) Error() string {
	return fmt.Sprintf("%s:%d:%d: %s", f.Range.File, f.Range.Start.Line, f.Range.Start.Column, f.Message)
}

// A Reader reads samples.
type Reader struct {
	window
	file string
	form form
}

// A form is how the samples of a file follow each other, and how far it is read.
type form struct {
	begun bool // the first sign is read
	list  bool // the samples are members of a list
	comma bool // a member is read, so a comma comes before the next one
	over  bool // nothing more is read
}

// NewReader returns a reader of a file; its name is for messages.
func NewReader(r io.Reader, file string) *Reader {
	return &Reader{window: newWindow(r), file: file}
}

// Next returns the next sample. A *Fault is a sample that cannot be read, and the
// one behind it can be asked for. io.EOF is the end; any other error is one of
// the file system, and also the end.
func (r *Reader) Next() (*Sample, error) {
	if r.form.over {
		return nil, io.EOF
	}
	c, err := r.sign()
	if err != nil {
		return nil, err
	}
	r.form.comma = false
	at := r.pos
	if c != '{' {
		return nil, r.resume(r.unexpected("'{'"), at.Column)
	}
	length, mistake, err := r.cut()
	switch {
	case err != nil:
		return nil, err
	case mistake != nil:
		return nil, r.resume(mistake, at.Column)
	}
	s, err := r.sample(string(r.ahead(length)))
	r.form.comma = true
	r.pass(length)
	return s, err
}

// sign goes to the sign that begins the next sample and returns it.
func (r *Reader) sign() (byte, error) {
	if !r.form.begun {
		r.form.begun = true
		r.passMark()
		if c, err := r.blanks(); err == nil && c == '[' {
			r.form.list = true
			r.pass(1)
		}
	}
	c, err := r.blanks()
	switch {
	case err == io.EOF && r.form.list:
		r.form.over = true
		return 0, r.fault(r.pos, "bad-json", "the file ends in the middle")
	case err != nil || !r.form.list:
		return c, err
	case c == ']':
		return 0, r.end()
	case !r.form.comma:
		return c, nil
	}
	r.form.comma = false
	if c != ',' {
		return 0, r.unexpected("','")
	}
	r.pass(1)
	return r.blanks()
}

// end passes the end of a list: nothing comes behind it.
func (r *Reader) end() error {
	r.form.over = true
	r.pass(1)
	if _, err := r.blanks(); err != nil {
		return err
	}
	return r.fault(r.pos, "bad-json", "there is more text after the end")
}

// resume goes to where reading goes on behind a broken sample that began in a
// column: the next line that begins with a brace in that column or before it.
// What the sample holds itself lies farther in. It returns the mistake, or an
// error of the file system.
func (r *Reader) resume(mistake *Fault, column int) error {
	for {
		if err := r.passLine(); err == io.EOF {
			return mistake // the next call meets the end again
		} else if err != nil {
			return err
		}
		if n, ok := r.indent(); ok && n < column {
			r.pass(n)
			return mistake
		}
	}
}

// fault returns a mistake at a place.
func (r *Reader) fault(at lang.Pos, code, message string) *Fault {
	end := at
	end.Offset++
	end.Column++
	return &Fault{lang.Diagnostic{Code: code, Severity: lang.Error, Message: message, Range: lang.Range{File: r.file, Start: at, End: end}}}
}

// unexpected returns the mistake that something else is where r is.
func (r *Reader) unexpected(what string) *Fault {
	c, _ := utf8.DecodeRune(r.ahead(utf8.UTFMax))
	return r.fault(r.pos, "bad-json", fmt.Sprintf("this is no JSON: %s is expected, and not %q", what, c))
}
