// Setting words on a row: each where it falls, as long as there is room; else
// on two lanes, shortened or thinned out, but those that moves hang on stay.

package bands

import (
	"math"
	"slices"
	"strings"

	"pullscore/render/draw"
	"pullscore/render/sheet"
)

// A setWord is a word on its way to its place.
type setWord struct {
	text, full string
	said       int     // the utterance that it is of
	at         float64 // where it falls, millimetres
	hangs      bool
	first      bool    // of its utterance
	from, till float64 // the bar of its utterance; a text of one piece may be longer
	size       float64
}

// A wordRun is words set as one text.
type wordRun struct {
	Said  int
	lane  int
	X     float64
	words []string
	Full  string
	Hangs bool
	cut   bool // words are left out after it
	from  float64
	till  float64 // the bar of its utterance
	size  float64
}

const (
	drift  = 3.5 // how far a word may stand from where it falls, on one lane
	drift2 = 7.0 // and within a run on two
	onTime = 1.5 // and at the start of a run
	RunGap = 2.0 // between two runs on a lane
	pastIt = 0.5 // how far words may run past their bar unseen
)

func (s setWord) font() draw.Font { return draw.Font{Size: s.size, Bold: s.hangs} }

func (s setWord) width() float64 { return s.font().Width(s.text) }

var space = sheet.FontBody.Width(" ")

// Set finds a place for every word of the row: on one lane, in small type if
// that helps, else on two.
func (r *Row) Set(w *Window) {
	limit := w.Paper.W - sheet.Margin
	r.Runs, r.Lanes = nil, 1
	for _, past := range []float64{pastIt, math.Inf(1)} { // over their bars only where it must be
		for _, r.size = range []float64{sheet.FontBody.Size, sheet.FontSmall.Size} {
			words := r.words(w)
			if at, ok := oneLane(words, w.Left, limit, past); ok {
				for i, s := range words {
					r.Runs = append(r.Runs, s.run(0, at[i]))
				}
				return
			}
		}
	}
	set := setter{limit: limit, left: w.Left, ends: [2]float64{w.Left - RunGap, w.Left - RunGap}}
	for _, s := range r.words(w) {
		set.place(s)
	}
	set.drawIn()
	r.Runs = set.runs
	for _, run := range r.Runs {
		r.Lanes = max(r.Lanes, run.lane+1)
	}
}

// run returns the word as a run of its own.
func (s setWord) run(lane int, x float64) wordRun {
	return wordRun{Said: s.said, lane: lane, X: x, words: []string{s.text}, Full: s.full, Hangs: s.hangs, from: s.from, till: s.till, size: s.size}
}

// words returns the words that start in the window, and texts of one piece that
// go on in it.
func (r *Row) words(w *Window) []setWord {
	var words []setWord
	for i, u := range r.Said {
		lead, from, till := 0.0, w.X(u.Start), math.Inf(1)
		if u.Cue {
			lead = cueLead
		}
		if len(u.Words) > 1 {
			till = w.X(u.End)
		}
		for k, word := range u.Words {
			if !w.Holds(word.Start) && len(u.Words) > 1 {
				continue
			}
			s := setWord{text: draw.Clean(word.Text), said: i, at: w.X(word.Start) + lead, hangs: word.Hangs, first: k == 0, from: from, till: till, size: r.size}
			if s.text != "" {
				words = append(words, s.within(r.room(w, i, s.at)))
			}
		}
	}
	return words
}

// leastRoom is what a word is given where hardly any is left, in millimetres.
const leastRoom = 6.0

// room returns how much room a word of an utterance has from x on: to the edge
// of the page, and for a text of one piece to the start of the one after the
// next, since there are two lanes.
func (r *Row) room(w *Window, said int, x float64) float64 {
	room := w.Paper.W - sheet.Margin - x
	if len(r.Said[said].Words) == 1 && said+2 < len(r.Said) {
		room = min(room, w.X(r.Said[said+2].Start)-x-2*space)
	}
	return max(room, leastRoom)
}

// within returns the word shortened to the room.
func (s setWord) within(room float64) setWord {
	if short := s.font().Shorten(s.text, room); short != s.text {
		s.text, s.full = short, s.text
	}
	return s
}

// oneLane places all words on one lane, as near to where they fall as their
// neighbours let them and no farther past their bars than past, and reports
// whether that is near enough.
func oneLane(words []setWord, left, limit, past float64) (at []float64, ok bool) {
	at = make([]float64, len(words))
	end := left - space
	for i, s := range words {
		at[i] = max(s.at, end+space)
		if s.hangs {
			at[i] = s.at
		}
		end = at[i] + s.width()
	}
	next := limit + space
	for i := len(words) - 1; i >= 0; i-- {
		s := words[i]
		at[i] = min(at[i], next-space-s.width())
		if !s.hangs {
			at[i] = min(at[i], s.till+past-s.width())
		}
		off := math.Abs(at[i] - s.at)
		if off > drift || s.hangs && off > 1e-6 || at[i] < left-1e-6 {
			return nil, false
		}
		next = at[i]
	}
	return at, true
}

// A setter places words one after the other on two lanes.
type setter struct {
	left, limit float64
	ends        [2]float64
	runs        []wordRun
}

// place puts a word right after the run before it while that is near enough to
// where it falls, else on the lane where it comes nearest; a word that has no
// room is left out, and the run before it ends in an ellipsis.
func (st *setter) place(s setWord) {
	if !s.first && !s.hangs && len(st.runs) > 0 && st.goOn(s) {
		return
	}
	best, off := -1, onTime
	for _, lane := range s.lanes() {
		x := min(max(s.at, st.ends[lane]+RunGap), st.limit-s.width())
		d := math.Abs(x - s.at)
		if x >= st.ends[lane]+RunGap-1e-9 && d < off && (!s.hangs || d < 1e-6) {
			best, off = lane, d
		}
	}
	if best < 0 && s.hangs {
		best = st.clear(s)
	}
	if best < 0 {
		st.leaveOut()
		return
	}
	x := min(max(s.at, st.ends[best]+RunGap), st.limit-s.width())
	st.start(s, best, x)
}

// goOn sets a word after the last run, on its lane.
func (st *setter) goOn(s setWord) bool {
	last := &st.runs[len(st.runs)-1]
	x := st.ends[last.lane] + space
	if last.Said != s.said || last.cut || math.Abs(x-s.at) > drift2 || x+s.width() > st.limit {
		return false
	}
	if last.Hangs {
		st.start(s, last.lane, x)
		return true
	}
	last.words = append(last.words, s.text)
	st.ends[last.lane] = last.end()
	return true
}

// drawIn moves runs that reach past their bars back towards them, as far as
// there is room and they still stand near where they fall.
func (st *setter) drawIn() {
	ends := [2]float64{st.left - RunGap, st.left - RunGap}
	for i := range st.runs {
		run := &st.runs[i]
		if past := run.end() - run.till - pastIt; past > 0 && !run.Hangs {
			run.X -= max(0, min(past, drift2, run.X-ends[run.lane]-RunGap, run.X-run.from))
		}
		ends[run.lane] = run.end()
	}
}

func (st *setter) start(s setWord, lane int, x float64) {
	st.runs = append(st.runs, s.run(lane, x))
	st.ends[lane] = x + s.width()
}

// lanes returns the lanes in the order in which they suit the word: one that a
// move hangs on stands below others, so that its plumb line falls free.
func (s setWord) lanes() []int {
	if s.hangs {
		return []int{1, 0}
	}
	return []int{0, 1}
}

// clear makes room for a word that a move hangs on by leaving out others before
// it; it returns the lane, or -1 where only words as weighty are in the way.
func (st *setter) clear(s setWord) int {
	if s.at+s.width() > st.limit {
		return -1
	}
	for _, lane := range s.lanes() {
		trial := setter{runs: slices.Clone(st.runs)}
		if trial.trim(lane, s.at-RunGap) {
			st.runs = trial.runs
			st.ends[lane] = s.at - RunGap
			return lane
		}
	}
	return -1
}

// trim leaves out words at the end of a lane until it ends before x.
func (st *setter) trim(lane int, x float64) bool {
	for k := len(st.runs) - 1; k >= 0; k-- {
		run := &st.runs[k]
		if run.lane != lane {
			continue
		}
		if run.end() <= x {
			return true
		}
		if run.Hangs {
			return false
		}
		run.cut = true
		for n := len(run.words); n > 0 && run.end() > x; n-- {
			run.words = run.words[:n-1]
		}
		if len(run.words) > 0 {
			return true
		}
		st.runs = slices.Delete(st.runs, k, k+1)
	}
	return true
}

// leaveOut marks that words are missing after the last run.
func (st *setter) leaveOut() {
	if len(st.runs) == 0 {
		return
	}
	last := &st.runs[len(st.runs)-1]
	last.cut = true
	last.cut = last.end() <= st.limit // if the ellipsis has room
	st.ends[last.lane] = max(st.ends[last.lane], last.end())
}

func (r *wordRun) font() draw.Font { return draw.Font{Size: r.size, Bold: r.Hangs} }

// String returns the words as they are drawn.
func (r *wordRun) String() string {
	s := strings.Join(r.words, " ")
	if r.cut {
		s += "…"
	}
	return s
}

func (r *wordRun) end() float64 { return r.X + r.font().Width(r.String()) }

// text returns the run as a text, with the first lane's baseline at base.
func (r *wordRun) text(base float64) draw.Text {
	t := draw.NewText(r.X, base+float64(r.lane)*lanePitch, r.String(), r.font(), draw.Black)
	t.Full = r.Full
	return t
}
