// JSON, as far as a timeline needs it: one node an object, with the fields that
// say where things lie. Everything else, metadata above all, is passed over
// without being kept.

package otio

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"strings"
)

// A node is an object of the file.
type node struct {
	at     int64 // the byte behind its opening brace
	schema string

	name, kind, activeKey, comment string
	color                          string // a name, or a Color's name
	value, rate                    *float64
	start, duration                *node
	children, markers              []*node
	tracks, global, source         *node
	media, available, marked       *node
	mediaByKey                     map[string]*node
	disabled                       bool
}

// maxNodes and maxDepth bound what a file may hold.
const (
	maxNodes = 1_000_000
	maxDepth = 200
)

// A decoder reads nodes from a stream of tokens.
type decoder struct {
	src    []byte
	tokens *json.Decoder
	nodes  int
	depth  int

	progress func(done int64)
	told     int64
}

// A placed error lies at a byte of the file.
type placed struct {
	at      int64
	code    string
	message string
}

func (p *placed) Error() string { return p.message }

// fail returns an error at the place where the decoder is.
func (d *decoder) fail(code, format string, args ...any) error {
	return &placed{d.tokens.InputOffset(), code, fmt.Sprintf(format, args...)}
}

// plain turns Inf, Infinity and NaN, which the library of the form writes and
// JSON does not have, into empty strings: where a time is wanted they are then
// as good as missing. The length stays, so that places do.
func plain(src []byte) []byte {
	text := src
	inString := false
	for i := 0; i < len(src); i++ {
		switch c := src[i]; {
		case inString && c == '\\':
			i++
		case c == '"':
			inString = !inString
		case !inString && (c == 'I' || c == 'N'):
			n := noNumber(src[i:])
			if n == 0 {
				continue
			}
			if &text[0] == &src[0] {
				text = bytes.Clone(src)
			}
			from := i
			if i > 0 && src[i-1] == '-' {
				from--
			}
			i += n - 1
			copy(text[from:], `""`+strings.Repeat(" ", i-from-1))
		}
	}
	return text
}

// noNumber returns the length of the word that stands for no number at the
// start of a text.
func noNumber(s []byte) int {
	for _, word := range []string{"Infinity", "Inf", "NaN"} {
		if bytes.HasPrefix(s, []byte(word)) {
			return len(word)
		}
	}
	return 0
}

// token returns the next token; the end of the file is an error.
func (d *decoder) token() (json.Token, error) {
	t, err := d.tokens.Token()
	if d.progress != nil && d.tokens.InputOffset()-d.told >= 1<<20 {
		d.told = d.tokens.InputOffset()
		d.progress(d.told)
	}
	var syntax *json.SyntaxError
	switch {
	case errors.Is(err, io.EOF) || errors.Is(err, io.ErrUnexpectedEOF):
		return nil, d.fail("bad-json", "the file ends in the middle")
	case errors.As(err, &syntax):
		return nil, &placed{d.next(syntax), "bad-json", "this is no JSON: " + syntax.Error()}
	case err != nil:
		return nil, d.fail("bad-json", "this is no JSON: %v", err)
	}
	return t, nil
}

// next returns where the token begins that could not be read; the library's
// own offset counts from its buffer.
func (d *decoder) next(err *json.SyntaxError) int64 {
	at := d.tokens.InputOffset()
	between := " \t\r\n:,"
	if strings.Contains(err.Error(), "','") {
		between = " \t\r\n:"
	}
	for at < int64(len(d.src)) && strings.IndexByte(between, d.src[at]) >= 0 {
		at++
	}
	return at
}

// skip passes over a value whose first token has been read.
func (d *decoder) skip(t json.Token) (err error) {
	for depth := 0; ; {
		switch t {
		case json.Delim('{'), json.Delim('['):
			depth++
		case json.Delim('}'), json.Delim(']'):
			depth--
		}
		if depth == 0 {
			return nil
		}
		if t, err = d.token(); err != nil {
			return err
		}
	}
}

// object reads an object whose brace has been read.
func (d *decoder) object() (*node, error) {
	if d.nodes++; d.nodes > maxNodes {
		return nil, d.fail("too-large", "the file has more than %d objects", maxNodes)
	}
	if d.depth++; d.depth > maxDepth {
		return nil, d.fail("too-deep", "the file is nested more than %d deep", maxDepth)
	}
	defer func() { d.depth-- }()
	n := &node{at: d.tokens.InputOffset()}
	for d.tokens.More() {
		key, err := d.token()
		if err != nil {
			return nil, err
		}
		if err := d.field(n, key.(string)); err != nil { // keys are strings
			return nil, err
		}
	}
	_, err := d.token() // the closing brace
	return n, err
}

// field reads the value of a key into the node.
func (d *decoder) field(n *node, key string) error {
	t, err := d.token()
	if err != nil {
		return err
	}
	switch v := t.(type) {
	case json.Delim:
		switch list, one := n.list(key), n.object(key); {
		case v == '[' && list != nil:
			*list, err = d.list()
			return err
		case v == '{' && one != nil:
			*one, err = d.object()
			return err
		case v == '{' && key == "color":
			color, err := d.object()
			if err == nil {
				n.color = color.name
			}
			return err
		case v == '{' && key == "media_references":
			n.mediaByKey, err = d.byKey()
			return err
		}
		return d.skip(t)
	case string:
		if text := n.text(key); text != nil {
			*text = v
		}
	case json.Number:
		number, err := v.Float64()
		if err != nil {
			return nil // too large for a time, and of no use here
		}
		switch key {
		case "value":
			n.value = &number
		case "rate":
			n.rate = &number
		}
	case bool:
		if key == "enabled" {
			n.disabled = !v
		}
	}
	return nil
}

// text returns where a text field goes.
func (n *node) text(key string) *string {
	switch key {
	case "OTIO_SCHEMA":
		return &n.schema
	case "name":
		return &n.name
	case "kind":
		return &n.kind
	case "color":
		return &n.color
	case "comment":
		return &n.comment
	case "active_media_reference_key":
		return &n.activeKey
	}
	return nil
}

// object returns where an object goes.
func (n *node) object(key string) **node {
	switch key {
	case "start_time":
		return &n.start
	case "duration":
		return &n.duration
	case "tracks":
		return &n.tracks
	case "global_start_time":
		return &n.global
	case "source_range":
		return &n.source
	case "media_reference":
		return &n.media
	case "available_range":
		return &n.available
	case "marked_range":
		return &n.marked
	}
	return nil
}

// list returns where a list goes.
func (n *node) list(key string) *[]*node {
	switch key {
	case "children":
		return &n.children
	case "markers":
		return &n.markers
	}
	return nil
}

// maybe reads a value if it is an object, and passes over any other.
func (d *decoder) maybe() (*node, error) {
	t, err := d.token()
	if err != nil {
		return nil, err
	}
	if t != json.Delim('{') {
		return nil, d.skip(t)
	}
	return d.object()
}

// list reads the objects of an array; anything else in it is passed over.
func (d *decoder) list() (list []*node, err error) {
	for d.tokens.More() {
		n, err := d.maybe()
		if err != nil {
			return nil, err
		}
		if n != nil {
			list = append(list, n)
		}
	}
	_, err = d.token()
	return list, err
}

// byKey reads an object of objects.
func (d *decoder) byKey() (map[string]*node, error) {
	byKey := map[string]*node{}
	for d.tokens.More() {
		key, err := d.token()
		if err != nil {
			return nil, err
		}
		n, err := d.maybe()
		if err != nil {
			return nil, err
		}
		if n != nil {
			byKey[key.(string)] = n
		}
	}
	_, err := d.token()
	return byKey, err
}
