// The objects of a list, as far as framings need them.

package fdl

import (
	"fmt"
	"math"

	"pullscore/lang"
	"pullscore/lang/jsontext"
	"pullscore/lang/lines"
)

// tiny is how much larger than its canvas a framing may be, in parts of it, for
// sizes that were rounded.
const tiny = 1e-6

// maxFramings bounds what a list may hold: a film has some dozens.
const maxFramings = 10_000

// A decoder reads the objects of a list.
type decoder struct {
	jsontext.Scanner
	text   *lines.Text
	faults *lines.Faults
	list   *List

	counted int // canvases and framings
}

// A canvas is a canvas while it is read. Its fields may come in any order, so its
// framings get them at its end.
type canvas struct {
	Framing
	framings []Framing
	decided  bool // it has decisions, readable or not
}

func (d *decoder) root() error {
	versioned := false
	err := d.Object(func(key string) error {
		switch c := d.Next(); {
		case key == "version" && c == '{':
			versioned = true
			return d.versionOf()
		case key == "default_framing_intent" && c == '"':
			return d.string(&d.list.Default)
		case key == "contexts" && c == '[':
			return d.each(key, d.context)
		}
		return d.passOver(key, "contexts", "a list")
	})
	if err == nil && !versioned {
		d.tell(lang.Note, "other-version", 0, "this file does not say which version of a framing decision list it is", "It is read as version 2.0.")
	}
	return err
}

// passOver passes over the value of a key. It tells of one that should hold what
// is read here, and is of another kind.
func (d *decoder) passOver(key, wanted, kind string) error {
	if c := d.Next(); key == wanted && c != 'n' {
		d.tell(lang.Error, "foreign-unit", d.At, fmt.Sprintf("%s is %s, and %s is expected", key, jsontext.Kind(c), kind), "")
	}
	return d.Skip()
}

func (d *decoder) string(to *string) (err error) {
	*to, err = d.Str()
	return err
}

// each reads the objects of a list.
func (d *decoder) each(key string, read func() error) error {
	return d.Array(func() error {
		if c := d.Next(); c != '{' {
			d.tell(lang.Error, "foreign-unit", d.At, fmt.Sprintf("a member of %s is %s, and an object is expected", key, jsontext.Kind(c)), "")
			return d.Skip()
		}
		return read()
	})
}

func (d *decoder) versionOf() error {
	at := d.At
	err := d.Object(func(key string) error {
		to := &d.list.Major
		switch key {
		case "minor":
			to = &d.list.Minor
		case "major":
		default:
			return d.Skip()
		}
		at := d.At
		value, wrong, err := d.Figure()
		if err == nil && wrong == "" && (value < 0 || value > 1000 || value != math.Trunc(value)) {
			wrong = "is no number of a version"
		}
		if wrong != "" {
			d.tell(lang.Error, "foreign-unit", at, "version."+key+" "+wrong, "")
		} else {
			*to = int(value)
		}
		return err
	})
	if err == nil {
		d.version(at)
	}
	return err
}

func (d *decoder) context() error {
	label, from := "", len(d.list.Framings)
	err := d.Object(func(key string) error {
		switch c := d.Next(); {
		case key == "label" && c == '"':
			return d.string(&label)
		case key == "canvases" && c == '[':
			return d.each(key, d.canvas)
		}
		return d.passOver(key, "canvases", "a list")
	})
	for i := from; i < len(d.list.Framings); i++ {
		d.list.Framings[i].Context = label
	}
	return err
}

func (d *decoder) canvas() error {
	k := canvas{Framing: Framing{At: d.At, Squeeze: 1}}
	if err := d.count(); err != nil {
		return err
	}
	err := d.Object(func(key string) error {
		switch c := d.Next(); {
		case key == "label" && c == '"':
			return d.string(&k.Canvas)
		case key == "id" && c == '"':
			return d.string(&k.CanvasID)
		case key == "dimensions":
			return d.size("canvas.dimensions", &k.Recorded)
		case key == "physical_dimensions":
			return d.size("canvas.physical_dimensions", &k.Physical)
		case key == "anamorphic_squeeze":
			return d.positive("canvas.anamorphic_squeeze", &k.Squeeze)
		case key == "framing_decisions" && c == '[':
			return d.each(key, func() error { return d.framing(&k) })
		}
		return d.passOver(key, "framing_decisions", "a list")
	})
	if err == nil {
		d.finish(&k)
	}
	return err
}

// finish adds the framings of a canvas.
func (d *decoder) finish(k *canvas) {
	if !k.Recorded.Given() {
		d.tell(lang.Error, "no-size", k.At, fmt.Sprintf("canvas %q has no dimensions", k.Canvas), "Without them its framings have no size.")
		return
	}
	if len(k.framings) == 0 && !k.decided {
		whole := k.Framing
		whole.Framed = whole.Recorded
		d.list.Framings = append(d.list.Framings, whole)
	}
	for _, f := range k.framings {
		own := k.Framing
		own.Label, own.ID, own.Intent, own.Framed, own.At = f.Label, f.ID, f.Intent, f.Framed, f.At
		if f.Framed.Width > k.Recorded.Width*(1+tiny) || f.Framed.Height > k.Recorded.Height*(1+tiny) {
			d.tell(lang.Error, "no-size", f.Framed.At, fmt.Sprintf("framing %q is larger than its canvas", f.Label), "It is left out.")
			continue
		}
		d.list.Framings = append(d.list.Framings, own)
	}
}

// count counts a canvas or a framing against the limit.
func (d *decoder) count() error {
	if d.counted++; d.counted > maxFramings {
		return &jsontext.Fault{At: d.At, Code: "too-large", Message: fmt.Sprintf("the list has more than %d canvases and framings", maxFramings)}
	}
	return nil
}

// framing reads a decision and keeps it where it has a size.
func (d *decoder) framing(k *canvas) error {
	f := Framing{At: d.At}
	k.decided = true
	if err := d.count(); err != nil {
		return err
	}
	err := d.Object(func(key string) error {
		switch c := d.Next(); {
		case key == "label" && c == '"':
			return d.string(&f.Label)
		case key == "id" && c == '"':
			return d.string(&f.ID)
		case key == "framing_intent_id" && c == '"':
			return d.string(&f.Intent)
		case key == "dimensions":
			return d.size("framing_decision.dimensions", &f.Framed)
		}
		return d.Skip()
	})
	switch {
	case err != nil:
	case !f.Framed.Given():
		d.tell(lang.Error, "no-size", f.At, fmt.Sprintf("framing %q has no dimensions", f.Label), "It is left out.")
	default:
		k.framings = append(k.framings, f)
	}
	return err
}

// size reads a width and a height. One that is null is not given.
func (d *decoder) size(path string, to *Size) error {
	switch c := d.Next(); c {
	case 'n':
		return d.Skip()
	case '{':
	default:
		d.tell(lang.Error, "foreign-unit", d.At, fmt.Sprintf("%s is %s, and an object is expected", path, jsontext.Kind(c)), "")
		return d.Skip()
	}
	*to = Size{At: d.At}
	return d.Object(func(key string) error {
		switch key {
		case "width":
			return d.positive(path+".width", &to.Width)
		case "height":
			return d.positive(path+".height", &to.Height)
		}
		return d.Skip()
	})
}

// positive reads a number above 0. One that is null is not given; any other is
// told, and leaves what was there.
func (d *decoder) positive(path string, to *float64) error {
	if d.Next() == 'n' {
		return d.Skip()
	}
	at := d.At
	value, wrong, err := d.Figure()
	switch {
	case err != nil:
		return err
	case wrong == "" && value <= 0:
		wrong = "is 0 or below"
	case wrong == "" && value > most:
		wrong = "is larger than any picture"
	}
	if wrong != "" {
		d.tell(lang.Error, "foreign-unit", at, path+" "+wrong, "")
		return nil
	}
	*to = value
	return nil
}

// most bounds sizes, in pixels or millimetres: products of them stay finite.
const most = 1e9
