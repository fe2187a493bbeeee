// Inks: the few colours of all drawings, each with its value on white paper
// and on a dark screen.

package draw

import "fmt"

// An Ink is the colour of a line, a fill or a text. A drawing shows its meaning by
// weight, dash, height and label; colour only helps.
type Ink uint8

// The inks. On paper, inks for text have a contrast of at least 4.5:1, and inks for
// lines with a meaning at least 3:1. Pale inks only lie under others.
const (
	None      Ink = iota // not drawn
	Black                // text and lines that matter most
	Grey                 // less important text
	Mid                  // thin lines that matter
	Pale                 // bands
	Faint                // grids and tints
	Blue                 // the focus
	BluePale             // the sharp zone
	Vermilion            // lines of the cue of a move
	Rust                 // text and fills for problems
	Green                // lines for good results
	Leaf                 // text for good results
	Paper                // the page itself, and text on black
	inks
)

// The names that the inks go by on all papers.
const (
	Zone    = BluePale // the sharp zone
	Warning = Rust     // problems
	Cure    = Leaf     // what mends them
	Body    = Pale     // subjects, and what is covered
	Slab    = Faint    // the time of a rack
	Soft    = Mid      // what is faintly soft
	Guide   = Pale     // guides
)

// A Colour is a colour in sRGB.
type Colour struct{ R, G, B uint8 }

// String returns the colour as #rrggbb.
func (c Colour) String() string { return fmt.Sprintf("#%02x%02x%02x", c.R, c.G, c.B) }

var palette = [inks]struct {
	name        string
	light, dark Colour
}{
	Black:     {"black", Colour{0x11, 0x11, 0x11}, Colour{0xf2, 0xf2, 0xf2}},
	Grey:      {"grey", Colour{0x5c, 0x5c, 0x5c}, Colour{0xb4, 0xb4, 0xb4}},
	Mid:       {"mid", Colour{0x8a, 0x8a, 0x8a}, Colour{0x80, 0x80, 0x80}},
	Pale:      {"pale", Colour{0xd0, 0xd0, 0xd0}, Colour{0x45, 0x45, 0x45}},
	Faint:     {"faint", Colour{0xf4, 0xf4, 0xf4}, Colour{0x20, 0x20, 0x20}},
	Blue:      {"blue", Colour{0x00, 0x72, 0xb2}, Colour{0x5c, 0xb8, 0xec}},
	BluePale:  {"blue-pale", Colour{0xd5, 0xe8, 0xf3}, Colour{0x17, 0x3a, 0x50}},
	Vermilion: {"vermilion", Colour{0xd5, 0x5e, 0x00}, Colour{0xf0, 0x86, 0x3c}},
	Rust:      {"rust", Colour{0xb3, 0x47, 0x00}, Colour{0xf4, 0x95, 0x55}},
	Green:     {"green", Colour{0x00, 0x9e, 0x73}, Colour{0x2c, 0xc3, 0x97}},
	Leaf:      {"leaf", Colour{0x00, 0x7a, 0x59}, Colour{0x45, 0xcf, 0xa6}},
	Paper:     {"paper", Colour{0xff, 0xff, 0xff}, Colour{0x14, 0x14, 0x14}},
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
