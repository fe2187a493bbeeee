// Cutting a file into samples.
//
// A sample is an object, and where it ends is known from its brackets and quotes
// alone. A broken one may have no end: a recorder that loses power leaves half a
// line, and the next recording begins behind it. So two more things end a sample:
// a bracket that closes none that is open, and an opening one where JSON can have
// no value. Reading then goes on at the next line that begins like this sample,
// and the mistake costs no more than that. Whether the rest of the sample is
// well formed is seen when it is read (fields.go).

package opentrackio

import (
	"fmt"
	"io"

	"pullscore/lang"
)

// deepest is how deep the values of a sample may be nested. The form itself needs
// a handful.
const deepest = 100

// A cutter follows the brackets of a sample.
type cutter struct {
	open    []byte // the brackets that close those that are open
	last    byte   // the last sign that is no blank
	lastAt  int
	inText  bool
	escaped bool
}

// cut returns how many bytes the sample has that begins here. The mistake is one
// that leaves it without an end, the error one of the file system.
func (r *Reader) cut() (length int, mistake *Fault, err error) {
	var k cutter
	for n := 0; ; n++ {
		c, err := r.at(n)
		switch {
		case err == io.EOF:
			return n, r.fault(r.place(n), "bad-json", "the file ends in the middle"), nil
		case tooFar(err) || err == nil && n >= MaxSample:
			return n, r.fault(r.pos, "too-large", fmt.Sprintf("this sample has more than %d MB", MaxSample>>20)), nil
		case err != nil:
			return n, nil, err
		}
		wrong, over := k.take(c)
		switch {
		case wrong == halfway: // the next one begins where this one is not over
			return n, r.fault(r.place(k.lastAt), "bad-json", wrong), nil
		case wrong == tooDeep:
			return n, r.fault(r.place(n), "too-deep", wrong), nil
		case wrong != "":
			return n, r.fault(r.place(n), "bad-json", wrong), nil
		case over:
			return n + 1, nil, nil
		case c != ' ' && c != '\t' && c != '\r' && c != '\n':
			k.last, k.lastAt = c, n
		}
	}
}

// place returns the place n bytes ahead, which must have been seen.
func (r *Reader) place(n int) lang.Pos { return after(r.pos, r.seen[:n]) }

// What ends a sample before its end.
const (
	halfway = "this sample ends in the middle"
	tooDeep = "this sample is nested more than 100 deep"
)

// take takes a sign. over tells that the sample ends with it, wrong why it cannot
// go on.
func (k *cutter) take(c byte) (wrong string, over bool) {
	switch {
	case k.escaped:
		k.escaped = false
	case k.inText && c == '\\':
		k.escaped = true
	case c == '"':
		k.inText = !k.inText
	case k.inText && c < ' ':
		return "this is no JSON: a text in quotes holds no line end and no other control character", false
	case k.inText:
	case c == '{' || c == '[':
		return k.enter(c + 2), false // both are two signs behind in ASCII
	case c == '}' || c == ']':
		if end := k.open[len(k.open)-1]; c != end {
			return fmt.Sprintf("this is no JSON: %q is expected, and not %q", rune(end), rune(c)), false
		}
		k.open = k.open[:len(k.open)-1]
		return "", len(k.open) == 0
	}
	return "", false
}

// enter opens a bracket.
func (k *cutter) enter(end byte) (wrong string) {
	if n := len(k.open); n > 0 && k.last != ':' && (k.open[n-1] != ']' || k.last != '[' && k.last != ',') {
		return halfway
	}
	if len(k.open) == deepest {
		return tooDeep
	}
	k.open = append(k.open, end)
	return ""
}
