// Labels: hours, minutes, seconds and frames, read and written.

package timecode

import (
	"errors"
	"fmt"
)

// form is what a label looks like, for messages.
const form = "two digits each of hours, minutes, seconds and frames, as in 01:00:10:12"

// Parse returns the frames from 00:00:00:00 to a label, which has two digits in
// each field. A drop-frame rate takes colons or semicolons between them, since
// many writers set the semicolon before the frames, some everywhere and some
// nowhere; at any other rate a semicolon is an error. So are fields out of
// range, a sign, and the labels that drop-frame skips.
func (r Rate) Parse(label string) (frames int64, err error) {
	f, semicolon, err := fields(label)
	if err != nil {
		return 0, fmt.Errorf("timecode %q: %w", label, err)
	}
	if semicolon && !r.Drop() {
		return 0, fmt.Errorf("timecode %q: a semicolon marks drop-frame, which does not exist at %s", label, r.noDrop())
	}
	if err := r.check(f); err != nil {
		return 0, fmt.Errorf("timecode %q: %w", label, err)
	}
	minutes := 60*f[0] + f[1]
	skipped := r.row().dropped * (minutes - minutes/10)
	return (60*minutes+f[2])*r.row().base + f[3] - skipped, nil
}

// noDrop names the rate in the message about a semicolon, with the cure where
// there is one.
func (r Rate) noDrop() string {
	for _, other := range Rates() {
		if other.Drop() && other.row().num == r.row().num {
			return fmt.Sprintf("%s: write rate %s, or a colon", r, other)
		}
	}
	return fmt.Sprintf("%s: write a colon", r)
}

// fields splits a label into its four numbers and tells whether a semicolon
// stood in it.
func fields(label string) (f [4]int64, semicolon bool, err error) {
	if label != "" && label[0] == '-' {
		return f, false, errors.New("a label is never negative")
	}
	if len(label) != len("00:00:00:00") {
		return f, false, errors.New("a label has " + form)
	}
	for i := range len(label) {
		c := label[i]
		switch {
		case i%3 == 2 && (c == ':' || c == ';'):
			semicolon = semicolon || c == ';'
		case i%3 != 2 && '0' <= c && c <= '9':
			f[i/3] = 10*f[i/3] + int64(c-'0')
		default:
			return f, false, errors.New("a label has " + form)
		}
	}
	return f, semicolon, nil
}

// check refuses fields out of range and labels that drop-frame skips.
func (r Rate) check(f [4]int64) error {
	base, dropped := r.row().base, r.row().dropped
	switch {
	case f[0] > 23:
		return fmt.Errorf("hours go from 00 to 23, not to %d: labels begin again after a day", f[0])
	case f[1] > 59:
		return fmt.Errorf("minutes go from 00 to 59, not to %d", f[1])
	case f[2] > 59:
		return fmt.Errorf("seconds go from 00 to 59, not to %d", f[2])
	case f[3] >= base:
		return fmt.Errorf("frames go from 00 to %02d at %s, not to %d", base-1, r, f[3])
	case f[3] < dropped && f[2] == 0 && f[1]%10 != 0:
		return fmt.Errorf("drop-frame skips the labels ;00 to ;%02d at the start of this minute: %s is followed by %s",
			dropped-1, write([4]int64{f[0], f[1] - 1, 59, base - 1}, ';'), write([4]int64{f[0], f[1], 0, dropped}, ';'))
	}
	return nil
}

// Format returns the label of the frame that many after 00:00:00:00. Labels
// wrap at a day in both directions, as a counter's do: one frame before zero is
// 23:59:59:23 at 24. Drop-frame labels have a semicolon before the frames.
func (r Rate) Format(frames int64) string {
	n := frames % r.Day()
	if n < 0 {
		n += r.Day()
	}
	base, mark := r.row().base, byte(':')
	if r.Drop() {
		n += r.skippedBefore(n)
		mark = ';'
	}
	s := n / base
	return write([4]int64{s / 3600, s / 60 % 60, s % 60, n % base}, mark)
}

// skippedBefore returns how many labels drop-frame has skipped when frame n of
// a day is shown.
func (r Rate) skippedBefore(n int64) int64 {
	base, dropped := r.row().base, r.row().dropped
	tens, rest := n/r.tenMinutes(), n%r.tenMinutes()
	skipped := 9 * dropped * tens
	// The first minute of ten is whole; the nine after it lack some labels.
	if first := 60 * base; rest >= first {
		skipped += dropped * (1 + (rest-first)/(first-dropped))
	}
	return skipped
}

// write sets a label, with mark before the frames.
func write(f [4]int64, mark byte) string {
	var b [len("00:00:00:00")]byte
	for i, n := range f {
		b[3*i], b[3*i+1] = byte('0'+n/10), byte('0'+n%10)
		if i < 3 {
			b[3*i+2] = ':'
		}
	}
	b[8] = mark
	return string(b[:])
}
