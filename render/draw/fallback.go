// Characters that the embedded fonts lack, for back ends that have no other fonts. Each
// becomes a box with its code point, so that readers see that a character is missing.

package draw

import (
	"fmt"
	"slices"
	"unicode"
)

// The box of a lacking character, as shares of the em. Its rows of digits keep
// clear of its sides: they shrink where they are wider than the box.
const (
	boxSide   = 0.06 // between the box and its neighbours
	boxTop    = 0.76 // above the baseline
	boxFoot   = 0.14 // below it
	boxLine   = 0.04
	digitSide = 0.03 // between the box's line and the digits
	digitSize = 0.45
	digitRise = 0.30 // of the upper row's baseline over the lower's
	digitFoot = 0.05 // of the lower row's over the box's foot
)

// A Face is a font besides the embedded ones.
type Face interface {
	// Advance returns how far the next letter stands from that of r, as a share of the em.
	// ok is false if the font cannot set r.
	Advance(r rune) (em float64, ok bool)
}

// Faces are fonts that are tried in order for what the embedded fonts lack.
type Faces []Face

// of returns the first of the faces that can set r, from 1, and the advance of r in
// millimetres in a font; 0 if none can.
func (fs Faces) of(r rune, f Font) (face int, advance float64) {
	for i, other := range fs {
		if em, ok := other.Advance(r); ok {
			return i + 1, em * f.Size * MM
		}
	}
	return 0, f.advance(r)
}

// width returns the width of s in millimetres, as these faces set it.
func (fs Faces) width(s string, f Font) float64 {
	w := 0.0
	for _, r := range s {
		if Covers(string(r)) {
			w += f.advance(r)
		} else {
			_, advance := fs.of(r, f)
			w += advance
		}
	}
	return w
}

// Set returns the items that draw a text with the embedded fonts and these faces only:
// texts of one font, each aligned at its start, and boxes with code points for what all
// fonts lack. Together they are as wide as the text comes out in these fonts. It omits
// marks and invisible characters that the fonts lack, because they have no width; see
// Lacking. Texts among them are turned as t is, each round its own start.
func (t Text) Set(faces ...Face) []Item {
	level := t
	level.Turn = 0
	items := level.set(faces)
	if t.Turn == 0 {
		return items
	}
	for i, it := range items {
		switch it := it.(type) {
		case Text:
			it.At, it.Turn = t.turned(it.At.X, it.At.Y), t.Turn
			items[i] = it
		case Rect:
			b := it.Box
			items[i] = Path{Closed: true, Fill: it.Fill, Stroke: it.Stroke, Runs: [][]Point{{
				t.turned(b.X, b.Y), t.turned(b.Right(), b.Y), t.turned(b.Right(), b.Bottom()), t.turned(b.X, b.Bottom()),
			}}}
		}
	}
	return items
}

// set does the work of Set for a level text.
func (t Text) set(faces Faces) []Item {
	whole := Covers(t.String)
	if !whole && len(faces) > 0 {
		t.Width = faces.width(t.String, t.Font)
	}
	t.At.X, t.Align = t.Box().X, Start
	if whole {
		return []Item{t}
	}
	var items []Item
	x, run, width, face := t.At.X, []rune(nil), 0.0, 0
	end := func() {
		if len(run) > 0 {
			piece := Text{At: Point{x, t.At.Y}, Font: t.Font, Ink: t.Ink, String: string(run), Width: width, Face: face}
			items = append(items, piece)
			x, run, width = x+width, nil, 0
		}
	}
	add := func(r rune, of int, advance float64) {
		if of != face {
			end()
			face = of
		}
		run, width = append(run, r), width+advance
	}
	for _, r := range t.String {
		if Covers(string(r)) {
			add(r, 0, t.Font.advance(r))
			continue
		}
		switch of, advance := faces.of(r, t.Font); {
		case of > 0:
			add(r, of, advance)
		case advance > 0:
			end()
			items = append(items, t.codeBox(r, x)...)
			x += advance
		}
	}
	end()
	return items
}

// codeBox returns the box of a lacking character whose room starts at x.
func (t Text) codeBox(r rune, x float64) []Item {
	em := t.Font.Size * MM
	side := boxSide * em
	frame := Rect{
		Box:    Box{x + side, t.At.Y - boxTop*em, t.Font.advance(r) - 2*side, (boxTop + boxFoot) * em},
		Stroke: Stroke{Ink: t.Ink, Width: boxLine * em},
	}
	code := fmt.Sprintf("%04X", r)
	if len(code) == 5 {
		code = "0" + code
	}
	rows := []string{code[:len(code)/2], code[len(code)/2:]}
	font := Font{Size: digitSize * t.Font.Size, Bold: t.Font.Bold}
	room := frame.Box.W - (boxLine+2*digitSide)*em
	font.Size *= min(1, room/max(font.Width(rows[0]), font.Width(rows[1])))
	middle, foot := frame.Box.X+frame.Box.W/2, t.At.Y+(boxFoot-boxLine-digitFoot)*em
	items := []Item{frame}
	for i, row := range rows {
		digits := NewText(middle, foot-float64(1-i)*(digitRise+boxLine)*em, row, font, t.Ink).Aligned(Middle)
		digits.At.X, digits.Align = digits.Box().X, Start
		items = append(items, digits)
	}
	return items
}

// Lacking returns the characters on the pages that the embedded fonts lack, in order.
// It does not include invisible characters.
func Lacking(pages ...*Page) []rune { return Faces(nil).Lacking(pages...) }

// Lacking returns the characters on the pages that the embedded fonts and these faces
// lack, in order. It does not include invisible characters.
func (fs Faces) Lacking(pages ...*Page) []rune {
	seen := map[rune]bool{}
	for _, p := range pages {
		for it := range p.Root.All() {
			if t, ok := it.(Text); ok && !Covers(t.String) {
				for _, r := range t.String {
					if Covers(string(r)) || unicode.Is(unicode.Cf, r) {
						continue
					}
					if face, _ := fs.of(r, t.Font); face == 0 {
						seen[r] = true
					}
				}
			}
		}
	}
	var list []rune
	for r := range seen {
		list = append(list, r)
	}
	slices.Sort(list)
	return list
}
