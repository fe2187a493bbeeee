// Setting words on a row: each where it falls, as long as there is room; else
// on two lanes, shortened or thinned out, but those that moves hang on stay.

package score

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
	said  int
	lane  int
	x     float64
	words []string
	full  string
	hangs bool
	cut   bool // words are left out after it
	from  float64
	till  float64 // the bar of its utterance
	size  float64
}

const (
	drift  = 3.5 // how far a word may stand from where it falls, on one lane
	drift2 = 7.0 // and within a run on two
	onTime = 1.5 // and at the start of a run
	runGap = 2.0 // between two runs on a lane
	pastIt = 0.5 // how far words may run past their bar unseen
)

func (s setWord) font() draw.Font { return draw.Font{Size: s.size, Bold: s.hangs} }

func (s setWord) width() float64 { return s.font().Width(s.text) }

var space = sheet.FontBody.Width(" ")

// set finds a place for every word of the row: on one lane, in small type if
// that helps, else on two.
func (r *row) set(w *window) {
	limit := w.paper.W - sheet.Margin
	r.runs, r.lanes = nil, 1
	for _, past := range []float64{pastIt, math.Inf(1)} { // over their bars only where it must be
		for _, r.size = range []float64{sheet.FontBody.Size, sheet.FontSmall.Size} {
			words := r.words(w)
			if at, ok := oneLane(words, w.left, limit, past); ok {
				for i, s := range words {
					r.runs = append(r.runs, s.run(0, at[i]))
				}
				return
			}
		}
	}
	set := setter{limit: limit, left: w.left, ends: [2]float64{w.left - runGap, w.left - runGap}}
	for _, s := range r.words(w) {
		set.place(s)
	}
	set.drawIn()
	r.runs = set.runs
	for _, run := range r.runs {
		r.lanes = max(r.lanes, run.lane+1)
	}
}

// run returns the word as a run of its own.
func (s setWord) run(lane int, x float64) wordRun {
	return wordRun{said: s.said, lane: lane, x: x, words: []string{s.text}, full: s.full, hangs: s.hangs, from: s.from, till: s.till, size: s.size}
}

// words returns the words that start in the window, and texts of one piece that
// go on in it.
func (r *row) words(w *window) []setWord {
	var words []setWord
	for i, u := range r.said {
		lead, from, till := 0.0, w.x(u.start), math.Inf(1)
		if u.cue {
			lead = cueLead
		}
		if len(u.words) > 1 {
			till = w.x(u.end)
		}
		for k, word := range u.words {
			if !w.holds(word.Start) && len(u.words) > 1 {
				continue
			}
			s := setWord{text: draw.Clean(word.Text), said: i, at: w.x(word.Start) + lead, hangs: word.Hangs, first: k == 0, from: from, till: till, size: r.size}
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
func (r *row) room(w *window, said int, x float64) float64 {
	room := w.paper.W - sheet.Margin - x
	if len(r.said[said].words) == 1 && said+2 < len(r.said) {
		room = min(room, w.x(r.said[said+2].start)-x-2*space)
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
		x := min(max(s.at, st.ends[lane]+runGap), st.limit-s.width())
		d := math.Abs(x - s.at)
		if x >= st.ends[lane]+runGap-1e-9 && d < off && (!s.hangs || d < 1e-6) {
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
	x := min(max(s.at, st.ends[best]+runGap), st.limit-s.width())
	st.start(s, best, x)
}

// goOn sets a word after the last run, on its lane.
func (st *setter) goOn(s setWord) bool {
	last := &st.runs[len(st.runs)-1]
	x := st.ends[last.lane] + space
	if last.said != s.said || last.cut || math.Abs(x-s.at) > drift2 || x+s.width() > st.limit {
		return false
	}
	if last.hangs {
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
	ends := [2]float64{st.left - runGap, st.left - runGap}
	for i := range st.runs {
		run := &st.runs[i]
		if past := run.end() - run.till - pastIt; past > 0 && !run.hangs {
			run.x -= max(0, min(past, drift2, run.x-ends[run.lane]-runGap, run.x-run.from))
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
		if trial.trim(lane, s.at-runGap) {
			st.runs = trial.runs
			st.ends[lane] = s.at - runGap
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
		if run.hangs {
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

func (r *wordRun) font() draw.Font { return draw.Font{Size: r.size, Bold: r.hangs} }

func (r *wordRun) string() string {
	s := strings.Join(r.words, " ")
	if r.cut {
		s += "…"
	}
	return s
}

func (r *wordRun) end() float64 { return r.x + r.font().Width(r.string()) }

// text returns the run as a text, with the first lane's baseline at base.
func (r *wordRun) text(base float64) draw.Text {
	t := draw.NewText(r.x, base+float64(r.lane)*lanePitch, r.string(), r.font(), draw.Black)
	t.Full = r.full
	return t
}
