// Package timecode counts frames under SMPTE ST 12-1 labels. It computes in
// integers over exact rates; seconds are always frames over the exact rate,
// never the hours, minutes and seconds that a label shows.
package timecode

import (
	"fmt"
	"math"
	"strings"
)

// A Rate is one of the frame rates of Rates. Rates compare with ==; the zero
// Rate is 24.
type Rate struct {
	index uint8 // into table
}

// row describes a rate.
type row struct {
	name     string
	num, den int64 // frames a second, exactly
	base     int64 // frames that a label's second counts to
	dropped  int64 // labels skipped at the start of a minute; 0: not drop-frame
}

// table holds the rates. The first is the zero Rate. Drop-frame numbering
// exists at 30000/1001 and 60000/1001 alone (SMPTE ST 12-1).
var table = [...]row{
	{"24", 24, 1, 24, 0},
	{"23.976", 24000, 1001, 24, 0},
	{"25", 25, 1, 25, 0},
	{"29.97", 30000, 1001, 30, 0},
	{"29.97df", 30000, 1001, 30, 2},
	{"30", 30, 1, 30, 0},
	{"47.952", 48000, 1001, 48, 0},
	{"48", 48, 1, 48, 0},
	{"50", 50, 1, 50, 0},
	{"59.94", 60000, 1001, 60, 0},
	{"59.94df", 60000, 1001, 60, 4},
	{"60", 60, 1, 60, 0},
}

// ascending lists the indices of table from the slowest rate to the fastest.
var ascending = [...]uint8{1, 0, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11}

// Rates returns every rate, from the slowest to the fastest.
func Rates() []Rate {
	all := make([]Rate, len(ascending))
	for i, k := range ascending {
		all[i] = Rate{k}
	}
	return all
}

// ParseRate reads a rate as a plan writes it: 24, 23.976, 29.97df. Without df a
// rate is not drop-frame. 23.98, as cameras often write it, is 23.976. The error
// lists the rates that there are.
func ParseRate(s string) (Rate, error) {
	if s == "23.98" {
		s = "23.976"
	}
	for i := range table {
		if table[i].name == s {
			return Rate{uint8(i)}, nil
		}
	}
	names := make([]string, len(ascending))
	for i, r := range Rates() {
		names[i] = r.String()
	}
	return Rate{}, fmt.Errorf("unknown frame rate %q: it is one of %s", s, strings.Join(names, ", "))
}

func (r Rate) row() *row { return &table[r.index] }

// String returns the rate as ParseRate reads it.
func (r Rate) String() string { return r.row().name }

// Exact returns the frames a second as a fraction in lowest terms.
func (r Rate) Exact() (num, den int64) { return r.row().num, r.row().den }

// Base returns the number of frame labels in a full second: 30 at 29.97.
func (r Rate) Base() int64 { return r.row().base }

// Drop reports whether the rate's labels are drop-frame.
func (r Rate) Drop() bool { return r.row().dropped > 0 }

// Day returns the number of labels, and so of frames, from 00:00:00:00 to the
// end of 23:59:59.
func (r Rate) Day() int64 { return 24 * 6 * r.tenMinutes() }

// tenMinutes returns the frames in ten minutes of labels: the shortest stretch
// after which drop-frame numbering repeats.
func (r Rate) tenMinutes() int64 {
	return 600*r.row().base - 9*r.row().dropped
}

// Seconds returns the time that so many frames last.
func (r Rate) Seconds(frames int64) float64 {
	num, den := r.Exact()
	return float64(frames) * float64(den) / float64(num)
}

// limit bounds what Frames returns: beyond 2^53 a float64 no longer tells one
// frame from the next.
const limit = 1 << 53

// Frames returns the frame nearest to a time in seconds; a time half-way
// between two goes to the one farther from zero. Times beyond 2^53 frames,
// infinite ones included, give 2^53 with their sign; NaN gives 0.
func (r Rate) Frames(seconds float64) int64 {
	num, den := r.Exact()
	f := math.Round(seconds * float64(num) / float64(den))
	switch {
	case math.IsNaN(f):
		return 0
	case f >= limit:
		return limit
	case f <= -limit:
		return -limit
	}
	return int64(f)
}
