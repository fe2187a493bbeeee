// Objects of a file, as far as a timeline needs them: the fields that say where
// things lie. Everything else is passed over, and so is metadata but for the reel.

package otio

import (
	"fmt"
	"math"

	"pullscore/lang/jsontext"
)

// An instant is a time as it is written: frames at a rate, both NaN where they
// are missing. The zero value is no time at all.
type instant struct {
	value, rate float64
	at          int // its object's first byte, which is never that of the file
}

func (i instant) given() bool { return i.at > 0 }

// A span is a range of time; nil where there is none.
type span struct{ start, duration instant }

// A node is an object that lies in time, or holds such objects.
type node struct {
	at       int // its first byte
	schema   string
	name     string
	kind     string // of a track
	reel     string // as its metadata has it
	disabled bool
	speed    *float64 // of its effects together; nil: none has one
	span     *span    // its source range, or else all of its media
	markers  []mark
	children []node
	line     *line // of a timeline

	length *float64 // in frames of the timeline; nil: not known yet
}

// A line is what a timeline alone has.
type line struct {
	global instant
	tracks *node
}

// A mark is a marker.
type mark struct {
	at                    int
	name, colour, comment string
	marked                *span
}

// An object is any object while it is being read.
type object struct {
	node
	value, rate               float64
	start, duration           instant
	scalar                    float64 // of an effect
	color, comment, active    string
	source, available, marked *span
	media                     *span // of the one medium
	byKey                     map[string]*span
}

// timeline returns what the object has of a timeline, to fill it in.
func (o *object) timeline() *line {
	if o.line == nil {
		o.line = &line{}
	}
	return o.line
}

// maxItems and maxDepth bound what a file may hold: more clips, gaps and markers
// than any film has, and deeper in each other.
const (
	maxItems = 600_000
	maxDepth = 200
)

// A decoder reads objects.
type decoder struct {
	jsontext.Scanner
	items   int
	effects int
	depth   int
}

// read reads an object.
func (d *decoder) read() (*object, error) {
	d.Next()
	if d.depth++; d.depth > maxDepth {
		return nil, &jsontext.Fault{At: d.At, Code: "too-deep", Message: fmt.Sprintf("the file is nested more than %d deep", maxDepth)}
	}
	defer func() { d.depth-- }()
	o := &object{value: math.NaN(), rate: math.NaN(), scalar: 1}
	o.at = d.At
	err := d.Object(func(key string) error { return d.field(o, key) })
	return o, err
}

// field reads the value of a key into the object; a value of a kind that the key
// does not have is passed over.
func (d *decoder) field(o *object, key string) error {
	switch c := d.Next(); {
	case c == '"':
		return d.text(o, key)
	case c == '{':
		return d.member(o, key)
	case c == '[' && (key == "children" || key == "markers" || key == "effects"):
		return d.Array(func() error { return d.item(o, key) })
	case c == 't' || c == 'f':
		word, err := d.Word()
		if key == "enabled" {
			o.disabled = word == "false"
		}
		return err
	case key == "value" && c != 'n' && c != '[':
		return d.figure(&o.value)
	case key == "rate" && c != 'n' && c != '[':
		return d.figure(&o.rate)
	case key == "time_scalar" && c != 'n' && c != '[':
		return d.figure(&o.scalar)
	}
	return d.Skip()
}

// text reads a text where the key has one.
func (d *decoder) text(o *object, key string) (err error) {
	to := o.textOf(key)
	if to == nil {
		return d.Skip()
	}
	*to, err = d.Str()
	return err
}

func (o *object) textOf(key string) *string {
	switch key {
	case "OTIO_SCHEMA":
		return &o.schema
	case "name":
		return &o.name
	case "kind":
		return &o.kind
	case "color":
		return &o.color
	case "comment":
		return &o.comment
	case "active_media_reference_key":
		return &o.active
	}
	return nil
}

// figure reads a number. One that is too large for a time is of no use here.
func (d *decoder) figure(to *float64) error {
	value, ok, err := d.Number()
	if ok {
		*to = value
	}
	return err
}

// member reads an object where the key has one.
func (d *decoder) member(o *object, key string) error {
	switch key {
	case "media_references":
		o.byKey = map[string]*span{}
		return d.Object(func(key string) error { return d.medium(o, key) })
	case "metadata":
		return d.Object(func(key string) error { return d.metadata(o, key) })
	case "start_time", "duration", "global_start_time", "source_range", "available_range", "marked_range",
		"media_reference", "tracks", "color":
	default:
		return d.Skip()
	}
	m, err := d.read()
	if err != nil {
		return err
	}
	switch key {
	case "start_time":
		o.start = m.instant()
	case "duration":
		o.duration = m.instant()
	case "global_start_time":
		o.timeline().global = m.instant()
	case "source_range":
		o.source = m.extent()
	case "available_range":
		o.available = m.extent()
	case "marked_range":
		o.marked = m.extent()
	case "media_reference":
		o.media = m.available
	case "tracks":
		o.timeline().tracks = new(m.reduced())
	case "color":
		o.color = m.name
	}
	return nil
}

// metadata reads what a program says of an object under its own name: the reel of a clip,
// as this one and those that turn lists into timelines keep it. All else is passed over.
func (d *decoder) metadata(o *object, program string) error {
	if program != ours && program != "cmx_3600" || d.Next() != '{' {
		return d.Skip()
	}
	return d.Object(func(key string) (err error) {
		if key != "reel" || d.Next() != '"' {
			return d.Skip()
		}
		o.reel, err = d.Str()
		return err
	})
}

// medium reads one of several media.
func (d *decoder) medium(o *object, key string) error {
	if d.Next() != '{' {
		return d.Skip()
	}
	m, err := d.read()
	if err == nil {
		o.byKey[key] = m.available
	}
	return err
}

// item reads a child, a marker or an effect; anything but an object is passed over.
func (d *decoder) item(o *object, key string) error {
	if d.Next() != '{' {
		return d.Skip()
	}
	count := &d.items
	if key == "effects" {
		count = &d.effects
	}
	if *count++; *count > maxItems {
		return &jsontext.Fault{At: d.At, Code: "too-large", Message: fmt.Sprintf("the file has more than %d clips, gaps and markers, or effects", maxItems)}
	}
	m, err := d.read()
	if err != nil {
		return err
	}
	switch key {
	case "markers":
		o.markers = append(o.markers, mark{m.at, m.name, m.color, m.comment, m.marked})
	case "effects":
		o.warp(m)
	default:
		o.children = append(o.children, m.reduced())
	}
	return nil
}

// fastest is the greatest speed that counts: a film in a second.
const fastest = 100_000

// warp takes the speed of an effect.
func (o *object) warp(effect *object) {
	speed := effect.scalar
	switch {
	case effect.disabled:
		return
	case effect.is("FreezeFrame"):
		speed = 0
	case !effect.is("LinearTimeWarp") || math.Abs(speed) > fastest:
		return
	}
	if o.speed != nil {
		speed *= *o.speed
	}
	o.speed = &speed
}

func (o *object) instant() instant { return instant{o.value, o.rate, o.at} }

func (o *object) extent() *span { return &span{o.start, o.duration} }

// reduced returns what is kept of an object, with the range that it takes.
func (o *object) reduced() node {
	n := o.node
	n.span = o.media
	if o.byKey != nil {
		key := o.active
		if key == "" {
			key = "DEFAULT_MEDIA"
		}
		n.span = o.byKey[key]
	}
	if o.source != nil {
		n.span = o.source
	}
	return n
}
