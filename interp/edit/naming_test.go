package edit

import (
	"math/rand"
	"regexp"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// How lists name the takes of a shot. The forms are those met in the named events of
// seven real lists, of which 991 of 1004 split so; the names are made up.
func TestShotsOf(t *testing.T) {
	shots := NewShots([]string{"27", "27A", "27AB", "469C", "469C-4", "V1A", "57B", "40E", "93A", "19A", "3/1", "ÄB", "9.MOV", "A 1"})
	for name, want := range map[string][3]string{
		"27A":             {"27A"},
		" *27a ":          {"27A"},
		"27A-3":           {"27A", "3"},
		"27A TK 2":        {"27A", "2"},
		"27a take_12":     {"27A", "12"},
		"27AT3":           {"27A", "3"},
		"27A T#3":         {"27A", "3"},
		"27A.MOV":         {"27A"},
		"27A-3.mxf":       {"27A", "3"},
		"27A_3_A":         {"27A", "3", "A"},
		"27A/4":           {"27A", "4"},
		"27A - 4":         {"27A", "4"},
		"27A 4":           {"27A", "4"},
		"27A#4":           {"27A", "4"},
		"27A-PU":          {"27A", "PU"},
		"27A-PU2 B2":      {"27A", "PU2", "B2"},
		"V1A-6A":          {"V1A", "6A"},
		"40E-4 MOS*":      {"40E", "4"},
		"57B-3-A*":        {"57B", "3", "A"},
		"93A-4* PU":       {"93A", "4"},
		"19A-1xa":         {"19A", "1XA"},
		"27AB-1":          {"27AB", "1"},
		"469C-4":          {"469C-4"},
		"469C-4-1":        {"469C-4", "1"},
		"469C-5":          {"469C", "5"},
		"3/1":             {"3/1"},
		"3/1-2":           {"3/1", "2"},
		"a\u0308b-2":      {"ÄB", "2"},
		"9.mov":           {"9.MOV"},
		"A 1 2":           {"A 1", "2"},
		"27AC-1":          {},
		"27A-3-4":         {},
		"27A-1234":        {},
		"27A-3B-take":     {},
		"270-1":           {},
		"leader":          {},
		"":                {},
		"*":               {},
		"27Á-1":           {},
		"xx27A-1":         {},
		"27A-3 mos again": {"27A", "3"},
	} {
		id, tail, ok := shots.Of(name)
		if got := [3]string{id, tail.Take, tail.Camera}; got != want || ok != (want[0] != "") {
			t.Errorf("%q: %v %v, want %v", name, got, ok, want)
		}
	}
}

// Whatever a shot is called, its own name is of it, and so is every form of a take of it
// unless another shot is called so.
func TestShotsOfAnyID(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		ids := rapid.SliceOfN(rapid.StringMatching(`[0-9]{1,3}[A-Za-z]{0,2}|[A-Z][0-9]{1,2}[A-Z]?`), 1, 6).Draw(t, "ids")
		shots := NewShots(ids)
		id := ids[0]
		if got, tail, ok := shots.Of(id); !ok || Fold(got) != Fold(id) || tail != (Tail{}) {
			t.Fatalf("%q is of %q %v", id, got, tail)
		}
		form := rapid.SampledFrom([]string{"-", "_", "/", "#", " ", " TK ", "_T", " take-"}).Draw(t, "form")
		if got, tail, ok := shots.Of(id + form + "3.mov"); !ok || Fold(got) != Fold(id) || tail.Take != "3" {
			t.Fatalf("%q is of %q %v", id+form+"3", got, tail)
		}
	})
}

// The ending of a file is what this expression says.
func TestFileEndings(t *testing.T) {
	ending := regexp.MustCompile(`\.[A-Z][A-Z0-9]{1,4}$`)
	r := rand.New(rand.NewSource(1))
	cut := 0
	for range 20_000 {
		s := ""
		for range 1 + r.Intn(7) {
			s += []string{"A", "MOV", ".", "3", " ", "*", "É", "27C"}[r.Intn(8)]
		}
		want := s
		if at := ending.FindStringIndex(s); at != nil {
			want = strings.TrimRight(s[:at[0]], "* \t")
			cut++
		}
		if got := bare(s); got != want {
			t.Fatalf("%q: %q, want %q", s, got, want)
		}
	}
	if cut < 300 {
		t.Errorf("only %d names have an ending", cut)
	}
}
