// The names on a tape, and the letters where there is no room for names.

package ring

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"pullscore/render/draw"
	"pullscore/render/marks"
	"pullscore/render/ring/beside"
	"pullscore/render/ring/page"
	"pullscore/render/sheet"
)

// The type of what is read at arm's length.
var (
	fontName     = draw.Font{Size: 13, Bold: true}
	fontDistance = draw.Font{Size: 9.5}
	fontLetter   = draw.Font{Size: 14, Bold: true}
	fontScale    = draw.Font{Size: 9}
)

// A label is what stands beside the lines of a mark, or of some that share it.
type label struct {
	marks       []*stripMark
	first, last float64  // of their lines
	lines       []string // a name, or a name and a distance; none where there is no room
	isLetter    bool
	right       bool // of the last line
}

// numbers writes what starts or lands at a mark, in one: S, 1 · 5.
func numbers(m marks.Mark) string {
	var parts []string
	if m.Start {
		parts = append(parts, "S")
	}
	for _, n := range m.Pulls {
		parts = append(parts, strconv.Itoa(n))
	}
	return strings.Join(parts, " · ")
}

// fewNumbers writes the same, and of many only the first two.
func fewNumbers(m marks.Mark) string {
	if parts := strings.Split(numbers(m), " · "); len(parts) > page.SignsMost {
		return strings.Join(parts[:2], " · ") + " …"
	}
	return numbers(m)
}

// nameOf is what names a mark on what is cut out, without its numbers.
func nameOf(m marks.Mark) string {
	if m.Rough {
		return marks.RoughSign + " " + m.Who
	}
	return m.Who
}

// wordings returns what may be written beside a mark, the best first: a name with its
// distances, with fewer of them, alone.
func (st *strip) wordings(m marks.Mark) [][]string {
	name := strings.TrimSpace(fewNumbers(m) + " " + nameOf(m))
	first, second := sheet.Style(st.shot).Both(m.Tape)
	if first == m.Who { // infinity, or a distance that is its own name
		first, second = "", ""
	}
	join := func(parts ...string) string { return sheet.Joined(parts) }
	list := [][]string{{name, join(first, second, m.When)}, {name, join(first, m.When)}, {name, m.When}}
	if n := fewNumbers(m); n != "" && first != "" { // the numbers before the distance make the name shorter
		list = append(list, []string{nameOf(m), n + ": " + first}, []string{nameOf(m), n})
	}
	for i, lines := range list {
		if lines[1] == "" {
			list[i] = lines[:1]
		}
	}
	return list
}

func fontOfLine(i int, isLetter bool) draw.Font {
	switch {
	case isLetter:
		return fontLetter
	case i == 0:
		return fontName
	}
	return fontDistance
}

// widthOf is the room of lines of text one below the other.
func widthOf(lines []string, isLetter bool) (w float64) {
	for i, line := range lines {
		w = max(w, fontOfLine(i, isLetter).Room(draw.Clean(line)))
	}
	return w
}

// layLabels finds places for the labels of a piece. Marks that stand too close for a label
// each are joined until each label has its place.
func (st *strip) layLabels(p *piece, named *lettered) {
	p.labels = nil
	for i := range st.marks {
		if m := &st.marks[i]; p.holds(m.at) {
			first, last := m.ends()
			first, last = max(first, p.from), min(last, p.to)
			l := label{marks: []*stripMark{m}, first: first, last: last}
			for n := len(p.labels); n > 0 && l.first < p.labels[n-1].last; n-- { // their lines stand among each other
				o := p.labels[n-1]
				l = label{marks: append(o.marks, l.marks...), first: min(o.first, l.first), last: max(o.last, l.last)}
				p.labels = p.labels[:n-1]
			}
			p.labels = append(p.labels, l)
		}
	}
	for {
		st.seat(p, named)
		k := -1
		for i, l := range p.labels {
			if len(l.lines) == 0 {
				k = i
				break
			}
		}
		if k < 0 || len(p.labels) == 1 {
			break
		}
		if k == len(p.labels)-1 || k > 0 && p.labels[k].first-p.labels[k-1].last < p.labels[k+1].first-p.labels[k].last {
			k--
		}
		a, b := p.labels[k], p.labels[k+1]
		joined := label{marks: append(a.marks[:len(a.marks):len(a.marks)], b.marks...), first: a.first, last: b.last}
		p.labels = append(append(p.labels[:k:k], joined), p.labels[k+2:]...)
	}
}

// spelled counts the marks that have a letter in place of a name, or nothing at all.
func (st *strip) spelled() (n int) {
	for i := range st.pieces {
		for _, l := range st.pieces[i].labels {
			if l.isLetter || len(l.lines) == 0 {
				n += len(l.marks)
			}
		}
	}
	return n
}

// useLetters notes which marks have a letter on the tape.
func (st *strip) useLetters(named *lettered) {
	for i := range st.pieces {
		for _, l := range st.pieces[i].labels {
			for _, m := range l.marks {
				if l.isLetter && len(l.lines) > 0 {
					named.used[m.index] = true
				}
			}
		}
	}
}

// seat finds places for the labels of a piece as they are joined now.
func (st *strip) seat(p *piece, named *lettered) {
	var list []beside.Upright
	var texts [][][]string
	var owner []int
	stops := st.unnamedLines(p)
	for i := range p.labels {
		l := &p.labels[i]
		for len(stops) > 0 && stops[0].First < l.first {
			list, texts, owner = append(list, stops[0]), append(texts, nil), append(owner, -1)
			stops = stops[1:]
		}
		u, forms := beside.Upright{First: l.first, Last: l.last}, [][]string{}
		if len(l.marks) == 1 && !l.marks[0].crowdedOut() {
			for k, lines := range st.wordings(l.marks[0].Mark) {
				forms = append(forms, lines)
				u.Forms = append(u.Forms, beside.Form{Width: widthOf(lines, false), Cost: float64(k)})
			}
		}
		letters := []string{lettersOf(l.marks, named)}
		u.Forms, forms = append(u.Forms, beside.Form{Width: widthOf(letters, true), Cost: beside.LetterCost}), append(forms, letters)
		list, texts, owner = append(list, u), append(texts, forms), append(owner, i)
	}
	for _, u := range stops {
		list, texts, owner = append(list, u), append(texts, nil), append(owner, -1)
	}
	for k := 1; k < len(list); k++ { // a label right of a line is right of all before it
		list[k].Last = max(list[k].Last, list[k-1].Last)
		if owner[k] >= 0 {
			p.labels[owner[k]].last = list[k].Last
		}
	}
	const inside = 0.8
	for k, s := range beside.Seats(list, p.from+inside, p.to-inside) {
		if owner[k] < 0 {
			continue
		}
		l := &p.labels[owner[k]]
		l.lines, l.isLetter, l.right = nil, false, s.Right
		if s.Form >= 0 {
			l.lines, l.isLetter = texts[k][s.Form], s.Form == len(texts[k])-1
		}
	}
}

// lettersOf returns the letter of a mark, or the first and the last of several.
func lettersOf(list []*stripMark, named *lettered) string {
	lo, hi := list[0].index, list[0].index
	for _, m := range list {
		lo, hi = min(lo, m.index), max(hi, m.index)
	}
	if lo == hi {
		return named.letter(lo)
	}
	return named.letter(hi) + "–" + named.letter(lo)
}

// stopsOn returns where the stops of the ring lie on a piece, from left to right.
func (st *strip) stopsOn(p *piece) []float64 {
	var list []float64
	for _, m := range st.scale {
		if m.Stop && p.holds(m.at) && m.at > p.from && m.at < p.to {
			list = append(list, m.at)
		}
	}
	if len(list) == 2 && list[0] > list[1] {
		list[0], list[1] = list[1], list[0]
	}
	return list
}

// unnamedLines returns from left to right the lines on a piece that have no label there:
// stops of the ring, with their hatches, and lines of marks that have their label on another
// piece.
func (st *strip) unnamedLines(p *piece) []beside.Upright {
	var list []beside.Upright
	for _, m := range st.scale {
		if !m.Stop || !p.holds(m.at) || m.at < p.from || m.at > p.to {
			continue
		}
		u := beside.Upright{First: m.at - hatched, Last: m.at}
		if (m.Deg > 0) != st.mirrored() {
			u = beside.Upright{First: m.at, Last: m.at + hatched}
		}
		list = append(list, u)
	}
	for i := range st.marks {
		if m := &st.marks[i]; !p.holds(m.at) && p.shows(m) {
			for _, at := range m.sides {
				if p.holds(at) {
					list = append(list, beside.Upright{First: at, Last: at})
				}
			}
		}
	}
	slices.SortFunc(list, func(a, b beside.Upright) int { return cmp.Compare(a.First, b.First) })
	return list
}

// hatched is how far the hatches of a stop reach beside it.
const hatched = 1.0

// unnamed counts the marks that have neither name nor letter on the tape.
func (st *strip) unnamed() (n int) {
	for i := range st.pieces {
		for _, l := range st.pieces[i].labels {
			if len(l.lines) == 0 {
				n += len(l.marks)
			}
		}
	}
	return n
}
