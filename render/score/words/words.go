// What is set, and the words that hang.

package words

import (
	"slices"
	"strings"

	"pullscore/render/draw"
	"pullscore/render/sheet"
)

// A Word is a word with the place of its time.
type Word struct {
	Text   string
	At     float64
	Hangs  bool
	Joined bool // no blank stands before it
}

// Said is an utterance as far as it shows.
type Said struct {
	Words    []Word
	From, To float64 // the line under it
	Cue      bool    // its one word stands right of a sign
	Full     string  // all of its words
}

// A Space is where words may stand.
type Space struct {
	Left, Limit float64
	Plumbs      []float64 // plumb lines that fall through it
}

// A Run is words set as one text.
type Run struct {
	Hangs bool
	text  draw.Text
}

// At returns the run with its baseline at base.
func (r Run) At(base float64) draw.Text {
	t := r.text
	t.At.Y = base
	return t
}

// String returns the words as they are drawn.
func (r Run) String() string { return r.text.String }

// X returns where the run starts.
func (r Run) X() float64 { return r.text.Box().X }

// Full returns the words in full if they are shortened, else "".
func (r Run) Full() string { return r.text.Full }

const (
	Gap      = 1.6 // between two texts of one line
	plumbGap = 0.7 // between a text and a plumb line
	cueLead  = 1.9 // a cue's name stands after its sign
)

// sizes are the types in which words are set, the largest first.
var sizes = []float64{sheet.FontBody.Size, sheet.FontSmall.Size}

// A setter sets the words of one utterance.
type setter struct {
	Space
	runs []Run
}

// Set sets an utterance, and returns what it takes with the line under it.
func Set(u Said, space Space) (runs []Run, from, to float64) {
	st := setter{Space: space}
	from, to = u.From, u.To
	if u.Cue {
		from -= cueLead
		st.cue(u)
	} else {
		st.sentence(u)
	}
	for _, run := range st.runs {
		room := run.text.Room()
		from, to = min(from, room.X), max(to, room.Right())
	}
	return st.runs, from, to
}

// sentence sets running text.
func (st *setter) sentence(u Said) {
	at, left := u.From, u.Words
	for len(left) > 0 {
		k := hanging(left)
		if k < 0 {
			st.after(texts(left), at, st.Limit, u.Full, len(st.runs) > 0)
			return
		}
		x := min(left[k].At, st.Limit-2)
		if len(st.runs) == 0 {
			st.before(texts(left[:k]), x-Gap, u.Full)
		} else {
			st.after(texts(left[:k]), at, x-Gap, u.Full, true)
		}
		next := st.Limit
		if n := hanging(left[k+1:]); n >= 0 {
			next = min(next, left[k+1+n].At-Gap/2)
		}
		at = st.heavy(left[k].Text, x, next)
		left = left[k+1:]
	}
}

// hanging returns the index of the first word that hangs, or -1.
func hanging(list []Word) int {
	return slices.IndexFunc(list, func(w Word) bool { return w.Hangs })
}

// texts returns the words as they are set: what has no blank between is one text.
func texts(list []Word) []string {
	all := make([]string, 0, len(list))
	for i, w := range list {
		if i > 0 && w.Joined {
			all[len(all)-1] += w.Text
		} else {
			all = append(all, w.Text)
		}
	}
	return all
}

// cue sets the name of a cue right of its sign.
func (st *setter) cue(u Said) {
	x := u.From + cueLead
	if len(u.Words) == 0 || x-cueLead < st.Left-2 {
		return // another cue is there
	}
	t := draw.NewText(x, 0, u.Words[0].Text, sheet.FontStrong, draw.Black).Shortened(st.Limit - x)
	st.runs = append(st.runs, Run{Hangs: u.Words[0].Hangs, text: t})
}

// heavy sets a word that a move hangs on, at x, and returns where the next may start.
func (st *setter) heavy(word string, x, next float64) float64 {
	if x < st.Left-1e-6 {
		return st.Left // another word is there
	}
	t := draw.NewText(x, 0, word, sheet.FontStrong, draw.Black)
	if x+t.Room().W > next {
		t = draw.NewText(x, 0, word, sheet.FontNumber, draw.Black).Shortened(max(0.5, next-x))
	}
	if x+t.Width > next+Gap/2 {
		return x // not even dots have room
	}
	st.runs = append(st.runs, Run{Hangs: true, text: t})
	return max(t.Room().Right()+0.3, t.Box().Right()+Gap)
}

// after sets words from x on, up to a limit. What is bound to the word before it stays
// there; else it may start earlier where it has no room.
func (st *setter) after(words []string, x, limit float64, full string, bound bool) {
	if len(words) == 0 {
		return
	}
	x = max(x, st.Left)
	for _, size := range sizes {
		f := draw.Font{Size: size}
		if st.forward(words, f, x, limit) {
			return
		}
		if early := limit - f.Room(strings.Join(words, " ")) - 0.01; !bound && early >= st.Left && st.forward(words, f, early, limit) {
			return
		}
	}
	st.cut(words, x, limit, full, draw.Start)
}

// before sets words so that they end at x.
func (st *setter) before(words []string, x float64, full string) {
	if len(words) == 0 {
		return
	}
	for _, size := range sizes {
		if st.backward(words, draw.Font{Size: size}, x) {
			return
		}
	}
	st.cut(words, st.Left, x, full, draw.End)
}
