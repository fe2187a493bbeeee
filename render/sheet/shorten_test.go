package sheet

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"pullscore/render/draw"
)

// Cut in front, a text has its width and begins with a letter, not with a mark
// that has lost its own.
func TestShortenedFront(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := draw.NewText(0, 0, rapid.StringOfN(rapid.RuneFrom([]rune("aW é\u0301\u200f花/.")), 0, 60, -1).Draw(t, "text"), FontStrong, draw.Black)
		w := rapid.Float64Range(4, 80).Draw(t, "width")
		short := ShortenedFront(text, w)
		if short.Room().W > w+1e-8 || math.Abs(short.Width-FontStrong.Width(short.String)) > 1e-9 {
			t.Fatalf("%q takes %v mm, has %v", short.String, short.Room().W, w)
		}
		tail, cut := strings.CutPrefix(short.String, "…")
		if cut && text.Room().W > w && (!strings.HasSuffix(text.String, tail) || short.Full != text.String || strings.HasPrefix(tail, "\u0301")) {
			t.Fatalf("%q became %q", text.String, short.String)
		}
	})
}

func TestPhrasesAreKeptWhole(t *testing.T) {
	text := draw.NewText(0, 0, "lands 6 frames later, mark 3.2° farther, chance 71 % → 94 %", FontSmall, draw.Black)
	for _, tc := range []struct {
		want string
		room float64
	}{
		{text.String, text.Room().W},
		{"lands 6 frames later, mark 3.2° farther, …", text.Room().W - 0.1},
		{"lands 6 frames later, …", 30},
	} {
		if got := ShortenedPhrases(text, tc.room); got.String != tc.want || got.Room().W > tc.room+1e-8 {
			t.Errorf("in %v mm: %q of %v mm, want %q", tc.room, got.String, got.Width, tc.want)
		}
	}
	if got := ShortenedPhrases(text, 12); got.Room().W > 12+1e-8 || got.Full != text.String || !strings.HasPrefix(got.String, "lands") {
		t.Errorf("in 12 mm: %q", got.String)
	}
}
