// The forms of a recording, as a stream of frames.

package recorded

import (
	"bufio"
	"bytes"
	"errors"
	"io"

	"pullscore/interp/takes"
	"pullscore/lang/lines"
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

// A source gives frames. A *takes.Fault costs one frame; io.EOF ends; any other
// error ends too, and says why there is no recording at all.
type source interface {
	next() (frame, error)
	fault(f frame, format string, args ...any) *takes.Fault
}

// Options say what a recording does not say itself.
type Options struct {
	Rate   timecode.Rate // in which its timecode counts
	At     string        // the timecode of the first row of a table that counts frames
	Unit   string        // of focus distances that have none: mm, cm, m, in or ft
	Column string        // the name of the column of focus distances
	Clock  string        // BySource, ByRecord or ByShot; "": by where the recording lies
}

// A refusal says why a recording cannot be read, and what to do.
type refusal struct {
	fault  *takes.Fault
	detail string // whole sentences, "" where there is nothing to add
}

func (r refusal) Error() string {
	if r.detail == "" {
		return r.fault.Error()
	}
	return r.fault.Error() + "\n" + r.detail
}

// headSize is how much of a file is looked at to tell its form, in bytes.
const headSize = 64 << 10

// open tells the forms apart: JSON begins with a brace or a bracket. The throw of
// the ring, in degrees, is NaN where it is not known.
func open(r io.Reader, file string, opt Options, throw float64) (source, error) {
	text, err := lines.NewReader(r)
	if err != nil {
		return nil, err
	}
	br := bufio.NewReaderSize(text, headSize)
	head, err := br.Peek(headSize)
	if err != nil && !errors.Is(err, io.EOF) {
		return nil, err
	}
	if first := bytes.TrimLeft(head, " \t\r\n"); len(first) > 0 && (first[0] == '{' || first[0] == '[') {
		return &trackSource{r: opentrackio.NewReader(br, file), file: file, rate: opt.Rate, throw: throw}, nil
	}
	return newTable(br, head, file, opt)
}
