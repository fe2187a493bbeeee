package slips

import (
	"math/rand/v2"
	"slices"
	"strings"
	"testing"
)

var sample = strings.Split(`plan "A title"
camera A
  sensor 24.89 x 18.66 mm

lens "75"
  focal 75 mm
# a comment
shot 1 "Title"
  NADIA: "You kept the ledger.", lasting 2.1 s
  rack to "MRS. DALE", on "ledger", over 1.4 s, because "so"`, "\n")

// Slips of every kind are made, each on lines that hold something, and the same
// seed makes the same.
func TestMake(t *testing.T) {
	for kind := range Kind(Kinds) {
		made := 0
		for seed := range uint64(300) {
			s, ok := Make(rand.New(rand.NewPCG(seed, 1)), kind, sample)
			again, _ := Make(rand.New(rand.NewPCG(seed, 1)), kind, sample)
			if !ok {
				continue
			}
			made++
			lines := s.Apply(sample)
			switch {
			case !slices.Equal(lines, again.Apply(sample)):
				t.Fatalf("%v: one seed, two slips: %+v, %+v", kind, s, again)
			case slices.Equal(lines, sample):
				t.Fatalf("%v: %+v changes nothing", kind, s)
			case len(lines) != len(sample)+len(s.Is)-len(s.Was):
				t.Fatalf("%v: %+v makes %d lines", kind, s, len(lines))
			}
			for i, line := range lines { // what it did not touch is as it was
				if touched := i >= s.At && i < s.At+len(s.Is); !touched && sample[s.Line(i)] != line {
					t.Fatalf("%v: %+v: line %d was %q", kind, s, i, line)
				}
			}
		}
		if made < 30 {
			t.Errorf("%v: only %d slips are made", kind, made)
		}
	}
}

func TestWords(t *testing.T) {
	s := Slip{Was: []string{`  rack to NADIA, on "ledger"`}, Is: []string{`  rack to NADYA, on "ledger"`}}
	if got := s.Words(); !slices.Equal(got, []string{"NADIA"}) {
		t.Errorf("%q", got)
	}
	s = Slip{Was: []string{`lens "30 to 90"`}, Is: []string{`lens "30 tto 90"`}} // its words alone are still there
	if got := s.Words(); !slices.Equal(got, []string{"30 to 90"}) {
		t.Errorf("%q", got)
	}
	s = Slip{Was: []string{`  OTTO: "Not now."`}}
	if got := s.Words(); !slices.Equal(got, []string{"OTTO", "Not", "now", "Not now."}) {
		t.Errorf("%q", got)
	}
}

func TestLine(t *testing.T) {
	lost := Slip{At: 2, Was: []string{"x"}}
	for line, want := range []int{0, 1, 3, 4} {
		if got := lost.Line(line); got != want {
			t.Errorf("line %d was %d, want %d", line, got, want)
		}
	}
}

func TestBreak(t *testing.T) {
	for seed := range uint64(50) {
		for _, line := range []string{"shot 1", `use "kit.pull"`, "rate 24"} {
			if got := Break(rand.New(rand.NewPCG(seed, 2)), line); got == line {
				t.Errorf("%q stays", line)
			}
		}
	}
}
