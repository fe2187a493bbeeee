// Clips that a shot names itself.

package edit

import (
	"slices"
	"strings"
	"unicode"

	"golang.org/x/text/unicode/norm"
)

// An Ask is what a clip statement says. What it does not say is empty.
type Ask struct {
	Shot       string // its ID
	Name, Reel string // * is any run of signs, ? one sign
	Take       string
	From, To   int64 // of the source, frames; the clip has to begin there
	Within     bool  // From and To count
}

// A wanting finds the shots that clips are of: by the statements of a shot, else by the
// names.
type wanting struct {
	shots Shots
	asked []foldedAsk
}

// newWanting returns what finds what a plan looks for. A list may have as many clips as a
// film, so what statements say is folded once.
func newWanting(want Wanted) wanting {
	w := wanting{shots: NewShots(want.Shots)}
	for _, a := range want.Asked {
		w.asked = append(w.asked, a.folded())
	}
	return w
}

// A foldedAsk is one whose patterns are folded.
type foldedAsk struct {
	*Ask
	name, reel []rune
}

func (a *Ask) folded() foldedAsk {
	return foldedAsk{a, foldPattern(a.Name), foldPattern(a.Reel)}
}

// A foldedClip is a clip whose name and reel are folded.
type foldedClip struct {
	*Clip
	name, reel form
}

// A form is a folded name, with the ending of a file and without.
type form struct{ whole, bare []rune }

func formOf(name string) form {
	whole := Fold(name)
	short := bare(whole)
	f := form{whole: []rune(whole)}
	if f.bare = f.whole; short != whole {
		f.bare = []rune(short)
	}
	return f
}

func (c *Clip) folded() foldedClip { return foldedClip{c, formOf(c.Name), formOf(c.Reel)} }

// of returns the shots that a clip is of.
func (w *wanting) of(c *Clip) (list []Match) {
	var folded foldedClip
	if len(w.asked) > 0 {
		folded = c.folded()
	}
	for i := range w.asked {
		a := &w.asked[i]
		if known := func(m Match) bool { return m.Shot == a.Shot }; a.fits(&folded) && !slices.ContainsFunc(list, known) {
			list = append(list, a.match(c))
		}
	}
	named, t, ok := w.shots.Of(c.Name)
	if ok {
		list = append(list, Match{named, t.Take, t.Camera, Fold(c.Name) == Fold(named), false})
	}
	if id, t, ok := w.shots.Of(c.Reel); ok && id != named {
		list = append(list, Match{id, t.Take, t.Camera, false, true})
	}
	return list
}

// Has reports whether a statement names a clip of the list.
func (c *Cut) Has(a Ask) bool {
	f := a.folded()
	for i := range c.Clips {
		if clip := c.Clips[i].folded(); f.fits(&clip) {
			return true
		}
	}
	return false
}

// Near returns the names in the list that resemble the ID of a shot and are of no shot of
// the plan: they begin with it, or differ from it by one sign. At most four, in their order.
func (c *Cut) Near(shot string) (list []string) {
	id := Fold(shot)
	for _, name := range c.Others {
		if folded := bare(Fold(name)); strings.HasPrefix(folded, id) || nearTo(folded, id) {
			if list = append(list, name); len(list) == mostNear {
				break
			}
		}
	}
	return list
}

// mostNear is how many names that resemble a shot are told.
const mostNear = 4

// nearTo reports whether a name is an ID, or a take of it, where one sign of the ID is
// another, lacks, or is one too many.
func nearTo(name, id string) bool {
	n, d := []rune(name), []rune(id)
	for from := range min(len(n), len(d)) + 1 {
		if from > 0 && n[from-1] != d[from-1] {
			break
		}
		for _, skip := range [][2]int{{1, 1}, {1, 0}, {0, 1}} {
			if from+skip[0] > len(n) || from+skip[1] > len(d) {
				continue
			}
			rest, ok := strings.CutPrefix(string(n[from+skip[0]:]), string(d[from+skip[1]:]))
			if ok && (rest == "" || tail().MatchString(rest)) {
				return true
			}
		}
	}
	return false
}

// fits reports whether a statement names a clip.
func (a *foldedAsk) fits(c *foldedClip) bool {
	return c.name.like(a.name) && (a.Reel == "" || c.reel.like(a.reel)) && (!a.Within || c.SourceIn >= a.From && c.SourceIn < a.To) && a.takeFits(c.Clip)
}

// takeFits reports whether the take of a clip is the one that the statement names. Where
// the name of the clip says none, the statement tells which it is.
func (a *Ask) takeFits(c *Clip) bool {
	said := a.tail(c).Take
	return a.Take == "" || said == "" || Fold(said) == Fold(a.Take)
}

// tail reads what the name of a clip says behind the ID of the shot.
func (a *Ask) tail(c *Clip) Tail {
	t, _ := TailOf(bare(Fold(c.Name)), Fold(a.Shot))
	return t
}

func (a *Ask) match(c *Clip) Match {
	t := a.tail(c)
	m := Match{Shot: a.Shot, Take: t.Take, Camera: t.Camera, Named: Fold(c.Name) == Fold(a.Shot)}
	if a.Take != "" {
		m.Take = a.Take
	}
	return m
}

// like reports whether a name is as a folded pattern says. Case, the ending of a file and
// stars at the end of the name do not count. It takes time by the product of both lengths
// at most.
func (f *form) like(pattern []rune) bool {
	return matches(pattern, f.whole) || len(f.bare) < len(f.whole) && matches(pattern, f.bare)
}

// foldPattern folds a pattern as names are folded, and keeps its stars.
func foldPattern(pattern string) []rune {
	pattern = strings.ToUpper(norm.NFC.String(strings.TrimSpace(pattern)))
	return []rune(strings.TrimLeftFunc(pattern, func(r rune) bool {
		return r != '*' && r != '?' && !unicode.IsLetter(r) && !unicode.IsDigit(r)
	}))
}

// matches goes through both at once, and where it fails lets the last star take one more.
func matches(p, name []rune) bool {
	at, star, from := 0, -1, 0
	for i := 0; i < len(name); {
		switch {
		case at < len(p) && p[at] == '*':
			star, from = at, i
			at++
		case at < len(p) && (p[at] == '?' || p[at] == name[i]):
			at++
			i++
		case star >= 0:
			from++
			at, i = star+1, from
		default:
			return false
		}
	}
	for at < len(p) && p[at] == '*' {
		at++
	}
	return at == len(p)
}
