package draw

import (
	"math"
	"testing"
)

// contrast is the contrast ratio of W3C, Web Content Accessibility Guidelines
// 2.1 (2018), with its relative luminance.
func contrast(a, b Colour) float64 {
	hi, lo := luminance(a), luminance(b)
	return (max(hi, lo) + 0.05) / (min(hi, lo) + 0.05)
}

func luminance(c Colour) float64 {
	linear := func(v uint8) float64 {
		s := float64(v) / 255
		if s <= 0.03928 {
			return s / 12.92
		}
		return math.Pow((s+0.055)/1.055, 2.4)
	}
	return 0.2126*linear(c.R) + 0.7152*linear(c.G) + 0.0722*linear(c.B)
}

// The formula against ratios that are known: 21 for black on white by
// definition; 4.54 for #767676 on white, from memory.
func TestContrastFormula(t *testing.T) {
	white := Colour{255, 255, 255}
	for _, tc := range []struct {
		c    Colour
		want float64
	}{{Colour{}, 21}, {Colour{0x76, 0x76, 0x76}, 4.54}} {
		if got := contrast(tc.c, white); math.Abs(got-tc.want) > 0.005 {
			t.Errorf("%v on white: %.3f, want %.2f", tc.c, got, tc.want)
		}
	}
}

// The guidelines ask for 4.5:1 for text (1.4.3) and 3:1 for lines that carry
// meaning (1.4.11), also on the tint that columns are laid with.
func TestInksCanBeRead(t *testing.T) {
	for _, theme := range []struct {
		name   string
		colour func(Ink) Colour
	}{{"light", Ink.Light}, {"dark", Ink.Dark}} {
		check := func(front, back Ink, least float64) {
			t.Helper()
			if got := contrast(theme.colour(front), theme.colour(back)); got < least {
				t.Errorf("%s: %v on %v has %.2f:1, want %v", theme.name, front, back, got, least)
			}
		}
		for _, back := range []Ink{Paper, Slab} {
			for _, text := range []Ink{Black, Grey, Blue, Warning, Cure} {
				check(text, back, 4.5)
			}
			check(Soft, back, 3)
		}
		check(Paper, Black, 4.5)
		check(Paper, Warning, 4.5)
		check(Blue, Zone, 3)
		check(Black, Zone, 4.5)
		check(Black, Body, 4.5)
	}
}

// Without colour these inks are one tone, L* of CIE 1976 within 2 of each other: what they
// say has to stand in signs and words.
func TestColoursAreOneTone(t *testing.T) {
	lo, hi := 100.0, 0.0
	for _, ink := range []Ink{Blue, Warning, Cure} {
		l := 116*math.Cbrt(luminance(ink.Light())) - 16
		lo, hi = min(lo, l), max(hi, l)
	}
	if hi-lo > 2 {
		t.Errorf("L* from %.1f to %.1f", lo, hi)
	}
}

func TestEveryInkHasColoursAndAName(t *testing.T) {
	seen := map[string]bool{}
	for _, ink := range Inks() {
		if ink.String() == "" || seen[ink.String()] {
			t.Errorf("ink %d is called %q", ink, ink)
		}
		seen[ink.String()] = true
		if ink.Light() == (Colour{}) || ink.Dark() == (Colour{}) {
			t.Errorf("ink %v has no colour", ink)
		}
	}
}
