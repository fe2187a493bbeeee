// Package fdl reads ASC Framing Decision Lists (versions 1.0, 1.1 and 2.0, JSON;
// American Society of Cinematographers): which part of a camera's picture is
// framed.
//
// A list holds contexts, such as a camera; a context holds canvases, the pictures
// as they are recorded; a canvas holds framing decisions, each a part of it. Sizes
// are in pixels, and where the canvas says how large it is on the sensor, in
// millimetres too.
package fdl

import (
	"fmt"
	"slices"

	"pullscore/lang"
	"pullscore/lang/jsontext"
	"pullscore/lang/lines"
)

// A Size is a width and a height; the zero value is one that is not given.
type Size struct {
	Width, Height float64
	At            int // the byte of the file that it begins at; see lines.Text.Place
}

// Given reports whether the list says the size.
func (s Size) Given() bool { return s.Width > 0 && s.Height > 0 }

// A Framing is a framing decision with its canvas. A canvas without any is framed
// as a whole: its Framing has neither label nor ID.
type Framing struct {
	Context           string
	Canvas, CanvasID  string // label and identifier
	Label, ID, Intent string // of the decision
	Recorded          Size   // the canvas, in pixels
	Physical          Size   // the canvas on the sensor, in millimetres; not always given
	Framed            Size   // the decision, in pixels of the canvas
	Squeeze           float64
	At                int // the byte of the file that it begins at
}

// Sensor returns the part of the sensor that is framed, in millimetres. ok is
// false where the list does not say how large the canvas is there.
func (f Framing) Sensor() (width, height float64, ok bool) {
	if !f.Physical.Given() {
		return 0, 0, false
	}
	return f.Physical.Width * f.Framed.Width / f.Recorded.Width, f.Physical.Height * f.Framed.Height / f.Recorded.Height, true
}

// Shape returns the width of the framed picture over its height, as it is shown.
func (f Framing) Shape() float64 { return f.Framed.Width * f.Squeeze / f.Framed.Height }

// A List is what a file says.
type List struct {
	Major, Minor int
	Default      string // the framing intent that is meant where none is named
	Framings     []Framing
}

// Read reads a list. What it does not know is passed over. A mistake in a field
// is an error at its place, and costs the framings that need the field.
func Read(t *lines.Text) (*List, []lang.Diagnostic) {
	var faults lines.Faults
	d := &decoder{Scanner: jsontext.Scanner{Text: t.Content, Progress: t.Progress}, text: t, faults: &faults, list: &List{}}
	err := d.root()
	if err == nil && d.Next() != 0 {
		err = &jsontext.Fault{At: d.At, Code: "bad-json", Message: "there is more text after the end"}
	}
	if wrong, ok := err.(*jsontext.Fault); ok {
		d.tell(lang.Error, wrong.Code, wrong.At, wrong.Message, "")
	}
	return d.list, faults.List()
}

// known are the versions that are read as what they are.
var known = []string{"1.0", "1.1", "2.0"}

// version tells of a version that is not known here.
func (d *decoder) version(at int) {
	name := fmt.Sprintf("%d.%d", d.list.Major, d.list.Minor)
	if !slices.Contains(known, name) {
		d.tell(lang.Note, "other-version", at, fmt.Sprintf("this list has version %s", name),
			"Versions 1.0, 1.1 and 2.0 are known. It is read as one of them.")
	}
}

// tell adds what is to be told of a byte of the file.
func (d *decoder) tell(severity lang.Severity, code string, at int, message, detail string) {
	d.faults.Add(lang.Diagnostic{Code: code, Severity: severity, Message: message, Detail: detail, Range: d.text.Place(at)})
}
