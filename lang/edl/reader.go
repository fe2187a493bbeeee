// The lines of a list: what each is, and what it says.

package edl

import (
	"fmt"
	"strconv"
	"strings"

	"pullscore/lang"
	"pullscore/lang/lines"
	"pullscore/lang/timecode"
)

// A reader reads the events of a list.
type reader struct {
	text   *lines.Text
	rates  pair
	mode   mode
	title  string
	faults *lines.Faults
	told   map[string]bool // what is said once a file

	// group are the last events of one number, of which the lines below may
	// still say something, and last the one before that takes any time.
	group   []Event
	last    place
	words   []field // of the line that is being read; kept for their memory
	yield   func(Event) bool
	stopped bool // no more is wanted
}

func newReader(t *lines.Text, rate timecode.Rate, faults *lines.Faults) *reader {
	return &reader{text: t, rates: ratesOf(rate), faults: faults, told: map[string]bool{}}
}

// longestLine is how many bytes a line is read of, and together how many events
// have one number: a dissolve is two.
const (
	longestLine = 64 << 10
	together    = 16
)

// events yields the events.
func (r *reader) events(yield func(Event) bool) {
	r.yield = yield
	for l := range r.text.All() {
		l.Text = strings.TrimRight(l.Text, " \t\x1A") // older systems fill the last block
		if len(l.Text) > longestLine {
			r.tell(lang.Warning, "unknown-line", l, 0, len(l.Text), fmt.Sprintf("this line has %d kB", len(l.Text)>>10), "Pullscore skips it.")
			continue
		}
		if r.line(l); r.stopped {
			return
		}
	}
	r.flush(0)
}

// flush yields events until so many are left.
func (r *reader) flush(left int) {
	for len(r.group) > left && !r.stopped {
		e := r.group[0]
		r.group = append(r.group[:0], r.group[1:]...)
		r.compare(&e)
		r.stopped = !r.yield(e)
	}
}

// A mode is what the last FCM line says of the labels.
type mode int

const (
	unsaid mode = iota
	nonDrop
	drop
)

// tell adds what is to be told of the bytes from and up to to of a line.
func (r *reader) tell(severity lang.Severity, code string, l lines.Line, from, to int, message, detail string) {
	r.faults.Add(lang.Diagnostic{
		Code: code, Severity: severity, Message: message, Detail: detail, Range: r.text.At(l, from, to),
	})
}

// once tells of a whole line, the first time only.
func (r *reader) once(code string, l lines.Line, message, detail string) {
	if r.told[code] {
		return
	}
	r.told[code] = true
	r.tell(lang.Warning, code, l, 0, len(l.Text), message, detail)
}

// passed are lines that say nothing about the times of the picture.
var passed = []string{
	"REM", "SPLIT:", "AUD", "EFFECTS NAME IS", "FINAL CUT PRO REEL:", "FINAL CUT PRO REEL ", ">>>", "BLK", "REEL", "GPI",
	"DLEDL:", "LAY", "VLAY",
}

// line reads one line.
func (r *reader) line(l lines.Line) {
	s := strings.TrimSpace(l.Text)
	switch {
	case s == "":
	case s[0] == '*':
		r.comment(l, strings.TrimLeft(s[1:], " \t*"))
	case strings.IndexByte(s, '|') < 0 && isDigit(s[0]): // as most of the others
		r.event(l)
	default:
		r.other(l, s, strings.ToUpper(s))
	}
}

// other reads a line that may be anything but a comment with a star.
func (r *reader) other(l lines.Line, s, upper string) {
	switch {
	case strings.HasPrefix(upper, "TITLE:"):
		r.title = strings.TrimSpace(s[len("TITLE:"):])
	case strings.HasPrefix(upper, "FCM:"):
		r.fcm(l, strings.TrimSpace(upper[len("FCM:"):]))
	case strings.HasPrefix(upper, "FROM CLIP NAME:"):
		r.comment(l, s)
	case barred().MatchString(s):
		r.bars(l)
	case strings.HasPrefix(upper, "M2 ") || strings.HasPrefix(upper, "M2\t"):
		r.speed(l)
	case isDigit(s[0]):
		r.event(l)
	default:
		for _, p := range passed {
			if strings.HasPrefix(upper, p) {
				return
			}
		}
		r.tell(lang.Warning, "unknown-line", l, 0, len(l.Text), "this line does not belong to an edit decision list", "Pullscore skips it.")
	}
}

// fcm reads how the labels of the events below are counted.
func (r *reader) fcm(l lines.Line, says string) {
	switch {
	case strings.HasPrefix(says, "DROP"):
		r.mode = drop
		if !r.rates.hasDrop {
			r.tell(lang.Error, "drop-frame", l, 0, len(l.Text),
				fmt.Sprintf("the list is drop-frame, and %s has no such labels", r.rates.plain),
				"Drop-frame labels exist at 29.97 and 59.94 only. Say the rate of the list in the plan.")
		}
	case strings.HasPrefix(says, "NON"):
		r.mode = nonDrop
	default:
		r.tell(lang.Warning, "unknown-line", l, 0, len(l.Text), "FCM says neither DROP FRAME nor NON-DROP FRAME", "The line is passed over.")
	}
}

// label reads a timecode that stands on the bytes of a field.
func (r *reader) label(l lines.Line, f field) (frames int64, ok bool) {
	return r.read(l, f, false)
}

// read is label for one that counts as drop-frame also where it has no semicolon and
// no FCM line says so.
func (r *reader) read(l lines.Line, f field, likeDrop bool) (frames int64, ok bool) {
	label, dropped := f.text, strings.IndexByte(f.text, ';') >= 0
	if dropped && r.mode == nonDrop {
		r.once("drop-differs", l, "the labels have semicolons, and FCM says NON-DROP FRAME", "FCM is followed.")
		label = strings.ReplaceAll(label, ";", ":")
	}
	rate := r.rate(dropped || likeDrop)
	frames, err := rate.Parse(label)
	if err != nil {
		detail := "The list's labels are read at " + rate.String() + ", which the plan says. A list does not name its rate."
		r.tell(lang.Error, "bad-timecode", l, f.from, f.to, err.Error(), detail)
	}
	return frames, err == nil
}

// rate returns the rate at which a label counts.
func (r *reader) rate(semicolon bool) timecode.Rate {
	if r.rates.hasDrop && (r.mode == drop || r.mode == unsaid && semicolon) {
		return r.rates.drop
	}
	return r.rates.plain
}

// comment reads what a comment says of the event above it.
func (r *reader) comment(l lines.Line, s string) {
	key, value, ok := strings.Cut(s, ":")
	if !ok || len(r.group) == 0 {
		return
	}
	e := &r.group[len(r.group)-1]
	e.Bare = false
	value = strings.TrimSpace(value)
	switch strings.ToUpper(strings.TrimSpace(key)) {
	case "FROM CLIP NAME":
		r.from(e, value)
	case "TO CLIP NAME":
		e.ToClip = value
	case "KEY CLIP NAME":
		e.KeyClip = value
	case "SOURCE FILE":
		e.SourceFile = value
	case "LOC":
		r.marker(l, e)
	}
}

// from takes the name of a clip. Of two lines of one number the first is the picture
// that goes out, so the name is its own too.
func (r *reader) from(e *Event, name string) {
	e.Clip = name
	if last := len(r.group) - 1; last > 0 && e.Transition != cut {
		if out := &r.group[last-1]; out.Number == e.Number && out.Channels == e.Channels && out.Transition == cut {
			out.Out = name
		}
	}
}

// speed reads an M2 line: reel, frames a second, source time.
func (r *reader) speed(l lines.Line) {
	words := fields(nil, l.Text, 0)
	if len(words) < 4 {
		r.tell(lang.Error, "bad-speed", l, 0, len(l.Text), "the speed line is not whole", "It is M2, a reel, frames a second and a timecode.")
		return
	}
	at, rate := words[len(words)-1], words[len(words)-2]
	fps, err := strconv.ParseFloat(rate.text, 64)
	if err != nil || !number().MatchString(rate.text) {
		r.tell(lang.Error, "bad-speed", l, rate.from, rate.to, quoted(rate.text)+" is no number of frames a second", "")
		return
	}
	source, ok := r.label(l, at)
	if !ok {
		return
	}
	reel := l.Text[words[1].from:words[len(words)-3].to]
	e := r.ofReel(reel)
	if e == nil {
		r.tell(lang.Warning, "unknown-line", l, words[1].from, words[len(words)-3].to, "no event above this speed line has reel "+quoted(reel), "")
		return
	}
	e.Speed = &Speed{Reel: reel, FPS: fps, Source: source}
	e.Bare = false
}

var number = lines.Pattern(`^[+-]?\d{1,6}(\.\d{1,6})?$`)

// ofReel returns the line of the last event that a speed line belongs to.
func (r *reader) ofReel(reel string) *Event {
	for i := len(r.group) - 1; i >= 0; i-- {
		if strings.EqualFold(r.group[i].Reel, reel) {
			return &r.group[i]
		}
	}
	return nil
}

// quoted quotes a text for a message.
func quoted(s string) string { return "“" + s + "”" }

// A field is a word of a line and the bytes that it stands on.
type field struct {
	text     string
	from, to int
}

// fields appends the words of a text, which blanks part; start is where the text begins on
// its line.
func fields(list []field, s string, start int) []field {
	blank := func(c byte) bool { return c == ' ' || c == '\t' }
	for at := 0; at < len(s); at++ {
		from := at
		for at < len(s) && !blank(s[at]) {
			at++
		}
		if at > from {
			list = append(list, field{s[from:at], start + from, start + at})
		}
	}
	return list
}
