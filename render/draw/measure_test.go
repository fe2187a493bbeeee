package draw

import (
	"math"
	"testing"

	"golang.org/x/image/font"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// The table against the fonts' own advance widths, as golang.org/x/image reads
// them.
func TestWidthsAreTheFonts(t *testing.T) {
	for _, f := range []struct {
		name string
		ttf  []byte
		font Font
	}{{"regular", goregular.TTF, Font{Size: 10}}, {"bold", gobold.TTF, Font{Size: 10, Bold: true}}} {
		parsed, err := sfnt.Parse(f.ttf)
		if err != nil {
			t.Fatal(err)
		}
		var buf sfnt.Buffer
		for r := rune(' '); r <= 0xffff; r++ {
			glyph, err := parsed.GlyphIndex(&buf, r)
			if err != nil {
				t.Fatal(err)
			}
			if Covers(string(r)) != (glyph != 0) && (r < 0xd800 || r > 0xdfff) {
				t.Errorf("%s: Covers(%q) is %v", f.name, r, Covers(string(r)))
			}
			if glyph == 0 {
				continue
			}
			advance, err := parsed.GlyphAdvance(&buf, glyph, fixed.I(unitsPerEm), font.HintingNone)
			if err != nil {
				t.Fatal(err)
			}
			want := float64(advance) / 64 / unitsPerEm * 10 * 25.4 / 72
			if got := f.font.Width(string(r)); math.Abs(got-want) > 1e-9 {
				t.Errorf("%s: %q is %.4f mm wide, the font says %.4f", f.name, r, got, want)
			}
		}
	}
}

func TestWidthOfWhatTheFontsLack(t *testing.T) {
	f := Font{Size: 10}
	em := 10 * MM
	for _, tc := range []struct {
		name, text string
		least, max float64 // ems
	}{
		// An ideograph is one em wide: the practice of all CJK fonts.
		{"two ideographs", "花子", 2, 2.2},
		{"hebrew", "שרה", 1.5, 3.3},
		{"a combining mark", "e\u0301", 0.5, 0.6},
		{"a mark of another script", "\u05b0", 0, 0},
		{"a joiner", "\u200d", 0, 0},
	} {
		if w := f.Width(tc.text) / em; w < tc.least || w > tc.max {
			t.Errorf("%s: %.2f em, want %v to %v", tc.name, w, tc.least, tc.max)
		}
	}
}
