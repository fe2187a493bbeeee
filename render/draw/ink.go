// Inks: the few colours of all drawings, each with its value on white paper
// and on a dark screen.

package draw

import "fmt"

// An Ink is the colour of a line, a fill or a text. A drawing shows its meaning by
// weight, dash, height and label; colour only helps.
type Ink uint8

// The inks. On paper, inks for text have a contrast of at least 4.5:1, and inks for
// lines with a meaning at least 3:1. Grey, Blue, Warning and Cure are one tone without
// colour, so signs and words tell them apart. Tints only lie under others. Blue, Warning
// and Cure are of the palette of Okabe and Ito, Color Universal Design (2002, revised
// 2008), or a darker kin of it.
const (
	None    Ink = iota // not drawn
	Black              // what matters most; the focus and the hand
	Grey               // less important text
	Blue               // what is sharp
	Zone               // the tint of what is sharp
	Warning            // problems
	Cure               // what mends them
	Soft               // what is faintly soft
	Guide              // guides
	Body               // subjects
	Slab               // the time of a rack
	Paper              // the page itself, and text on black
	inks
)

// Names that papers use until each says what it means.
const (
	Mid       = Soft
	Pale      = Body
	Faint     = Slab
	BluePale  = Zone
	Vermilion = Warning
	Rust      = Warning
	Green     = Cure
	Leaf      = Cure
)

// A Colour is a colour in sRGB.
type Colour struct{ R, G, B uint8 }

// String returns the colour as #rrggbb.
func (c Colour) String() string { return fmt.Sprintf("#%02x%02x%02x", c.R, c.G, c.B) }

var palette = [inks]struct {
	name        string
	light, dark Colour
}{
	Black:   {"black", Colour{0x11, 0x11, 0x11}, Colour{0xf2, 0xf2, 0xf2}},
	Grey:    {"grey", Colour{0x59, 0x59, 0x59}, Colour{0xb4, 0xb8, 0xbc}},
	Blue:    {"blue", Colour{0x00, 0x72, 0xb2}, Colour{0x6c, 0xb8, 0xea}},
	Zone:    {"zone", Colour{0xd4, 0xe6, 0xf3}, Colour{0x1b, 0x3a, 0x50}},
	Warning: {"warning", Colour{0xb3, 0x47, 0x00}, Colour{0xff, 0x9b, 0x5e}},
	Cure:    {"cure", Colour{0x00, 0x7a, 0x59}, Colour{0x52, 0xc9, 0xa4}},
	Soft:    {"soft", Colour{0x8a, 0x8a, 0x8a}, Colour{0x88, 0x8d, 0x92}},
	Guide:   {"guide", Colour{0xb8, 0xb8, 0xb8}, Colour{0x5c, 0x62, 0x68}},
	Body:    {"body", Colour{0xcf, 0xcf, 0xcf}, Colour{0x4b, 0x51, 0x57}},
	Slab:    {"slab", Colour{0xf0, 0xf0, 0xf0}, Colour{0x1e, 0x23, 0x28}},
	Paper:   {"paper", Colour{0xff, 0xff, 0xff}, Colour{0x14, 0x17, 0x1a}},
}

// Inks returns every ink except None.
func Inks() []Ink {
	all := make([]Ink, 0, inks-1)
	for i := None + 1; i < inks; i++ {
		all = append(all, i)
	}
	return all
}

// String returns the ink's name, lower case with hyphens.
func (i Ink) String() string { return palette[i].name }

// Light returns the ink's colour on paper.
func (i Ink) Light() Colour { return palette[i].light }

// Dark returns the ink's colour on a dark screen.
func (i Ink) Dark() Colour { return palette[i].dark }
