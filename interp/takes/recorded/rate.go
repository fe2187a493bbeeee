// How many frames a second a recording counts, where it says so itself.
//
// OpenTrackIO samples name the rate of their timecode. A table may name it above its
// header, as in "Frame Rate: 24", or in a column. How fast the sensor runs is another
// thing, and so is how fast the film was shot; neither is taken.

package recorded

import (
	"bytes"
	"math"
	"slices"
	"strconv"
	"strings"

	"pullscore/interp/takes"
	"pullscore/lang/lines"
	"pullscore/lang/opentrackio"
	"pullscore/lang/timecode"
)

// RateIn returns the rate that a recording names in its first bytes; ok is false where it
// names none.
func RateIn(head []byte, file string) (rate timecode.Rate, ok bool) {
	text, err := lines.NewReader(bytes.NewReader(head))
	if err != nil {
		return rate, false
	}
	var plain bytes.Buffer
	if _, err := plain.ReadFrom(text); err != nil && plain.Len() == 0 { // the last letter may be cut off
		return rate, false
	}
	head = plain.Bytes()
	if first := bytes.TrimLeft(head, " \t\r\n"); len(first) > 0 && (first[0] == '{' || first[0] == '[') {
		return rateOfSample(head, file)
	}
	name := rateAbove(head)
	if name == "" {
		name = rateBelow(head, file)
	}
	if name == "" {
		return rate, false
	}
	return RateOf(name, dropFrame().Match(head))
}

// dropFrame is a timecode of a drop-frame count.
var dropFrame = lines.Pattern(`\b\d\d:\d\d:\d\d;\d\d\b`)

// Counted returns a rate as the first bytes of a recording count it: drop-frame, if their
// timecodes are so written.
func Counted(rate timecode.Rate, head []byte) timecode.Rate {
	if r, ok := RateOf(rate.String(), true); ok && dropFrame().Match(head) {
		return r
	}
	return rate
}

// rateOfSample returns the rate of the first OpenTrackIO sample.
func rateOfSample(head []byte, file string) (rate timecode.Rate, ok bool) {
	sample, err := opentrackio.NewReader(bytes.NewReader(head), file).Next()
	if err != nil || !sample.Time.Rate.Ok() {
		return rate, false
	}
	r := sample.Time.Rate
	return rateNear(r.Num.Value/r.Denom.Value, sample.Time.Drop)
}

var (
	rateNamed = lines.Pattern(`(?i)^(?:project |timecode |tc )?(?:fps|frame ?rate|time ?base|rate)$`)
	rateLine  = lines.Pattern(`(?i)^[#"' ]*((?:project |timecode |tc )?(?:fps|frame ?rate|time ?base|rate))["' ]*[:=,;\t][:=,;\t"' ]*([0-9]+(?:[.,][0-9]+)?[^\r\n]*)`)
)

// rateAbove returns the rate that a line above the header of a table names.
func rateAbove(head []byte) string {
	for i, line := range bytes.SplitN(head, []byte("\n"), preamble+2) {
		if m := rateLine().FindSubmatch(line); m != nil && i < preamble {
			return string(m[2])
		}
	}
	return ""
}

// rateBelow returns the rate that a column of a table names in its first row.
func rateBelow(head []byte, file string) string {
	h, _ := findHeader(head, file, Options{})
	if h == nil {
		return ""
	}
	at := slices.IndexFunc(h.row, func(f takes.Field) bool { return rateNamed().MatchString(strings.TrimSpace(f.Text)) })
	if at < 0 {
		return ""
	}
	rows := takes.NewTable(bytes.NewReader(head[h.offset:]), file, h.by, h.line)
	for range 3 { // the header, maybe a row of units, and a frame
		row, err := rows.Next()
		if err != nil || at >= len(row) {
			return ""
		}
		if strings.ContainsAny(row[at].Text, "0123456789") {
			return row[at].Text
		}
	}
	return ""
}

// RateOf returns the rate that a text names, as in "23,98 fps" or "29.97 DF"; drop says
// that its timecode is that of drop-frame, where the text does not say it.
func RateOf(text string, drop bool) (rate timecode.Rate, ok bool) {
	text = strings.ToLower(strings.Trim(text, " \t\r\"'"))
	digits := strings.IndexFunc(text+" ", func(r rune) bool { return !strings.ContainsRune("0123456789.,", r) })
	rest := strings.Trim(text[digits:], " \t\r\"',;)(")
	v, err := strconv.ParseFloat(strings.Replace(strings.TrimRight(text[:digits], ".,"), ",", ".", 1), 64)
	if err != nil {
		return rate, false
	}
	switch rest {
	case "", "fps", "p", "hz":
	case "df", "fps df", "drop", "drop frame", "drop-frame":
		drop = true
	case "ndf", "fps ndf", "non drop", "non-drop", "non drop frame", "non-drop-frame":
		drop = false
	default:
		return rate, false
	}
	return rateNear(v, drop)
}

// rateNear returns the rate of so many frames a second. Files write 24000/1001 as 23.976,
// 23.98 and more.
func rateNear(perSecond float64, drop bool) (rate timecode.Rate, ok bool) {
	const near = 0.005
	for _, r := range timecode.Rates() {
		num, den := r.Exact()
		if math.Abs(float64(num)/float64(den)-perSecond) < near && r.Drop() == drop {
			return r, true
		}
	}
	return rate, false
}
