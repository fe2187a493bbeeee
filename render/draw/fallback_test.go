package draw

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

func TestSetKeepsWhatIsCovered(t *testing.T) {
	text := NewText(50, 10, "NADIA 5′7″", Font{Size: 8, Bold: true}, Rust).Aligned(End)
	items := text.Set()
	if len(items) != 1 {
		t.Fatalf("%d items", len(items))
	}
	got := items[0].(Text)
	if got.Align != Start || math.Abs(got.At.X-(50-text.Width)) > 1e-9 || got.String != text.String {
		t.Errorf("set as %+v", got)
	}
}

func TestSetShowsWhatIsLacking(t *testing.T) {
	items := NewText(10, 10, "a 花b", Font{Size: 8}, Black).Set()
	var texts []string
	boxes := 0
	for _, it := range items {
		switch it := it.(type) {
		case Text:
			texts = append(texts, it.String)
		case Rect:
			boxes++
		}
	}
	if want := []string{"a ", "82", "B1", "b"}; boxes != 1 || !slices.Equal(texts, want) {
		t.Errorf("%d boxes and %q, want 1 and %q", boxes, texts, want)
	}
}

// Whatever a text holds, what is set stays in its box and has only characters
// that the fonts cover.
func TestSetStaysInTheBox(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		align := Align(rapid.IntRange(0, 2).Draw(t, "align"))
		text := NewText(100, 100, rapid.String().Draw(t, "text"), Font{Size: 9}, Black).Aligned(align)
		room := text.Box().Grow(0.3)
		end := text.Box().X
		for _, it := range text.Set() {
			switch it := it.(type) {
			case Rect:
				if !room.Holds(it.Box) || it.Box.X < end-1e-9 {
					t.Fatalf("box %v leaves %v or stands on what was before, to %v", it.Box, room, end)
				}
				end = it.Box.X
			case Text:
				if !Covers(it.String) || it.Box().X < end-1e-9 || it.Box().Right() > room.Right() {
					t.Fatalf("%q at %v after %v in %v", it.String, it.Box(), end, room)
				}
				if it.Font == text.Font {
					end = it.Box().Right()
				}
			}
		}
	})
}

// Digits of the widest letters are no wider than their box: U+17DCA is a
// character whose lower row, DCA, would stand out of it at full size.
func TestSetShrinksWideDigits(t *testing.T) {
	items := NewText(10, 10, "\U00017DCA", Font{Size: 9}, Black).Set()
	frame := items[0].(Rect).Box
	for _, it := range items[1:] {
		if digits := it.(Text); !frame.Holds(digits.Box()) {
			t.Errorf("%q at %v leaves its box %v", digits.String, digits.Box(), frame)
		}
	}
}

func TestLacking(t *testing.T) {
	p := &Page{}
	p.Root.Group("in").Add(NewText(0, 0, "花 a 子\u200f", Font{Size: 8}, Black), NewText(0, 0, "子", Font{Size: 8}, Black))
	if got, want := Lacking(p), []rune{'子', '花'}; !slices.Equal(got, want) {
		t.Errorf("%q, want %q", got, want)
	}
}
