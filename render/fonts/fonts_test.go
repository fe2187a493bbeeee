package fonts

import (
	"math"
	"strings"
	"testing"

	"golang.org/x/image/font/gofont/goregular"
	"pgregory.net/rapid"

	"pullscore/render/testing/fonttest"
)

func TestRead(t *testing.T) {
	f, err := Read(fonttest.Font{Runes: []rune("A\u0561花")}.Bytes())
	if err != nil {
		t.Fatal(err)
	}
	for _, tc := range []struct {
		r  rune
		ok bool
	}{{'花', true}, {'\u0561', true}, {'子', false}, {'\u05d0', false}, {0x20BB7, false}} {
		em, ok := f.Advance(tc.r)
		if ok != tc.ok || ok && math.Abs(em-fonttest.Advance/1000.0) > 0.001 {
			t.Errorf("%c: %v em, %v", tc.r, em, ok)
		}
	}
	if _, err := Read(goregular.TTF); err != nil {
		t.Error("Go Regular: ", err)
	}
}

func TestRefused(t *testing.T) {
	runes := []rune{'花'}
	for name, tc := range map[string]struct {
		data []byte
		want string
	}{
		"nothing":        {nil, "not a font"},
		"a plan":         {[]byte("camera A: sensor 36 x 24 mm\n"), "not a font"},
		"other outlines": {fonttest.Font{Runes: runes, Kind: "OTTO"}.Bytes(), "no TrueType outlines"},
		"no outlines":    {fonttest.Font{Runes: runes, Drop: "glyf"}.Bytes(), "no TrueType outlines"},
		"a collection":   {fonttest.Font{Runes: runes, Kind: "ttcf"}.Bytes(), "collection"},
		"restricted":     {fonttest.Font{Runes: runes, FsType: 2}.Bytes(), "forbids to embed it"},
		"whole only":     {fonttest.Font{Runes: runes, FsType: 0x104}.Bytes(), "forbids to embed a part"},
		"bitmaps only":   {fonttest.Font{Runes: runes, FsType: 0x200}.Bytes(), "forbids to embed its outlines"},
		"no map":         {fonttest.Font{Runes: runes, Drop: "cmap"}.Bytes(), `no table "cmap"`},
		"cut off":        {fonttest.Font{Runes: runes}.Bytes()[:300], "not a font"},
	} {
		if _, err := Read(tc.data); err == nil || !strings.Contains(err.Error(), tc.want) {
			t.Errorf("%s: %v, want %q", name, err, tc.want)
		}
	}
	for _, bits := range []uint16{0, 4, 8} { // installable, preview and print, editable
		if _, err := Read(fonttest.Font{Runes: runes, FsType: bits}.Bytes()); err != nil {
			t.Errorf("fsType %d: %v", bits, err)
		}
	}
}

// A file that is damaged anywhere is read or refused, and never more.
func TestDamagedFiles(t *testing.T) {
	whole := fonttest.Font{Runes: []rune("A花")}.Bytes()
	rapid.Check(t, func(t *rapid.T) {
		data := append([]byte(nil), whole...)
		for range rapid.IntRange(1, 8).Draw(t, "bytes") {
			data[rapid.IntRange(0, len(data)-1).Draw(t, "at")] = rapid.Byte().Draw(t, "byte")
		}
		if f, err := Read(data[:rapid.IntRange(0, len(data)).Draw(t, "length")]); err == nil {
			f.Advance('花')
		}
	})
}

func TestNeedsShaping(t *testing.T) {
	for _, r := range "שנןاקहกខമሀ" {
		if want := r != 'ሀ'; NeedsShaping(r) != want {
			t.Errorf("%c: %v", r, !want)
		}
	}
	for _, r := range "aЖΩ花한かԱა→°½" {
		if NeedsShaping(r) {
			t.Errorf("%c", r)
		}
	}
}
