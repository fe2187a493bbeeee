// The header of a table of frames: where it is, and what its columns are.
//
// Cameras and their tools write tables in many ways. Some write lines about the
// clip above the header, some divide columns with a tab or a semicolon, and a
// comma may be the decimal point. So the header is looked for: it is the first
// line that names a column of time and one of focus. The sign between columns is
// the one that gives the most of them there.

package recorded

import (
	"bytes"
	"fmt"
	"slices"
	"strings"
	"unicode"

	"pullscore/interp/takes"
)

// preamble is the most lines that may stand above the header.
const preamble = 20

// A header is the line that names the columns, read with one sign between them.
type header struct {
	by     byte // between columns
	row    []takes.Field
	offset int // of its line in the file, bytes
	line   int // from 1

	time, focus int    // columns; -1 where there is none
	counts      bool   // the column of time counts frames
	unit        string // of the focus, "" where the header has none
	plain       bool   // the column of focus does not say that it is from the sensor
	clash       int    // a second column of focus distances; -1 where there is none
}

// complete reports whether the header has a time and a focus.
func (h *header) complete() bool { return h.time >= 0 && h.focus >= 0 }

// findHeader returns the header of a table whose first bytes are given.
func findHeader(head []byte, file string, opt Options) (*header, error) {
	var near *header // the first line with a time or a focus
	offset := 0
	for line := 1; line <= preamble+1 && offset < len(head); line++ {
		text, _, _ := bytes.Cut(head[offset:], []byte("\n"))
		var best *header
		for _, by := range []byte("\t;,") {
			if bytes.IndexByte(text, by) < 0 && by != ',' {
				continue
			}
			row, err := takes.NewTable(bytes.NewReader(head[offset:]), file, by, line).Next()
			if err != nil || row[0].Line != line {
				continue // the line is blank, or no row
			}
			h := readHeader(row, opt)
			h.by, h.offset, h.line = by, offset, line
			if h.complete() && (best == nil || len(h.row) > len(best.row)) {
				best = h
			}
			if near == nil && (h.time >= 0 || h.focus >= 0) {
				near = h
			}
		}
		if best != nil {
			return best, best.ready(file, opt)
		}
		offset += len(text) + 1
	}
	return nil, noHeader(head, file, near, opt)
}

// readHeader returns what the columns of a row are, if it is a header.
func readHeader(row []takes.Field, opt Options) *header {
	h := &header{row: slices.Clone(row), time: -1, focus: -1, clash: -1}
	count, exact := -1, false
	for i, f := range row {
		switch named, code := timeColumn(f.Text); {
		case code && (h.time < 0 || named && !exact):
			h.time, exact = i, named
		case count < 0 && isCount(f.Text):
			count = i
		}
		h.focusAt(i, f.Text, opt.Column)
	}
	if count >= 0 && (h.time < 0 || opt.At != "") {
		h.time, h.counts = count, true
	}
	return h
}

// focusAt takes a column of focus distances in. A name that is asked for is the
// only one; one that says "from sensor" goes before one that does not.
func (h *header) focusAt(i int, name, asked string) {
	unit, fromSensor, ok := focusColumn(name)
	if asked != "" {
		ok, fromSensor = strings.EqualFold(name, strings.TrimSpace(asked)), false
		if words := nameWords(name); ok && len(words) > 0 {
			if _, isUnit := takes.Metres(words[len(words)-1]); isUnit {
				unit = words[len(words)-1]
			}
		}
	}
	switch {
	case !ok:
	case h.focus >= 0 && h.plain == !fromSensor:
		if h.clash < 0 {
			h.clash = i
		}
	case h.focus < 0 || fromSensor:
		h.focus, h.unit, h.plain, h.clash = i, unit, !fromSensor, -1
	}
}

// ready returns why a complete header cannot be used.
func (h *header) ready(file string, opt Options) error {
	refuse := func(i int, format string, args ...any) error {
		f := h.row[i]
		return refusal{fault: &takes.Fault{File: file, Line: f.Line, Column: f.Column, Message: fmt.Sprintf(format, args...)}}
	}
	switch {
	case h.clash >= 0:
		return refuse(h.clash, "a second column of focus distances: say with --column which is meant, %q or %q", h.row[h.focus].Text, h.row[h.clash].Text)
	case h.counts && opt.At == "":
		return refuse(h.time, "the table counts frames: say with --at 14:20:10:00 at which timecode it begins")
	case opt.At != "" && !h.counts:
		return refuse(h.time, "--at is for a table that counts frames, and this one has the column %q", h.row[h.time].Text)
	}
	return nil
}

// noHeader says what the line lacks that is most like a header.
func noHeader(head []byte, file string, near *header, opt Options) error {
	at := &takes.Fault{File: file, Line: 1, Column: 1}
	switch {
	case len(bytes.TrimSpace(head)) == 0:
		at.Message = "the recording is empty: its first row names the columns"
	case near == nil && opt.Column != "":
		at.Message = fmt.Sprintf("none of the first %d lines names a column of time, as timecode, and one %q", preamble+1, opt.Column)
	case near == nil:
		at.Message = fmt.Sprintf("none of the first %d lines names a column of time, as timecode, and one of focus, as focus_m", preamble+1)
	default:
		at.Line, at.Column = near.row[0].Line, near.row[0].Column
		at.Message = "the recording has no column timecode"
		if near.time >= 0 {
			at.Message = "the recording has no column of focus distances, as in focus_m or focus (ft)"
			if opt.Column != "" {
				at.Message = fmt.Sprintf("the recording has no column %q", opt.Column)
			}
		}
	}
	return refusal{fault: at}
}

// nameWords returns the words of the name of a column in small letters.
func nameWords(name string) []string {
	return strings.FieldsFunc(strings.ToLower(name), func(r rune) bool { return strings.ContainsRune(" _-()[]/.:", r) })
}

// timeColumn tells whether a column holds timecode, as Master TC does, and
// whether its name says no more than that.
func timeColumn(name string) (exact, ok bool) {
	words := nameWords(name)
	if len(words) == 0 {
		return false, false
	}
	last := words[len(words)-1]
	switch joined := strings.Join(words, ""); {
	case joined == "timecode" || joined == "tc":
		return true, true
	case strings.HasSuffix(joined, "timecode") || last == "tc":
		return false, true
	}
	// MasterTC is two words, etc is one.
	before, found := strings.CutSuffix(strings.TrimSpace(name), "TC")
	return false, found && strings.IndexFunc(before, unicode.IsLower) >= 0
}

// isCount tells whether a column counts frames.
func isCount(name string) bool {
	switch strings.Join(nameWords(name), "") {
	case "frame", "frameno", "framenumber", "#":
		return true
	}
	return false
}

// focusColumn tells whether a column holds focus distances, and their unit
// where its name ends in one: focus_m, focus (ft), Lens Focus Distance [mm]. It
// also tells whether the name says that they are from the sensor, as in
// focus_from_sensor_m. Focus from the lens is a column of its own, and not meant.
func focusColumn(name string) (unit string, fromSensor, ok bool) {
	words := nameWords(name)
	distance := slices.IndexFunc(words, func(w string) bool { return w == "distance" })
	switch {
	case distance > 0 && words[distance-1] == "focus":
		words = words[distance+1:]
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
