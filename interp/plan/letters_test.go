package plan

import (
	"slices"
	"testing"
)

// Findings share a letter where code, severity and cures are the same, whatever their
// pull; letters go by time, then by row from the top down.
func TestLetters(t *testing.T) {
	s := &Shot{Flags: []Flag{
		{Number: 1, Code: "hard-to-land", Severity: "warning", CureTexts: []string{"over 2 s", "stop f/4"}, Time: 5, Row: "hand", Pull: 3},
		{Number: 2, Code: "light", Severity: "warning", Time: 0},
		{Number: 3, Code: "hard-to-land", Severity: "warning", CureTexts: []string{"stop f/4", "over 2 s"}, Time: 2, Row: "hand", Pull: 1},
		{Number: 4, Code: "goes-soft", Severity: "warning", Time: 2, Row: "sharp"},
		{Number: 5, Code: "hard-to-land", Severity: "warning", CureTexts: []string{"stop f/4"}, Time: 3, Row: "hand", Pull: 2},
		{Number: 6, Code: "hard-to-land", Severity: "error", CureTexts: []string{"stop f/4"}, Time: 3, Row: "hand", Pull: 2},
		{Number: 7, Code: "cuts-into-line", Severity: "warning", Time: 2, Row: "lines"},
	}}
	s.Letter()
	var got []string
	for _, f := range s.Flags {
		got = append(got, f.Cause)
	}
	if want := []string{"d", "a", "d", "c", "e", "f", "b"}; !slices.Equal(got, want) {
		t.Errorf("letters %q, want %q", got, want)
	}
	list := s.Lettered()
	if len(list) != 6 || !slices.Equal(list[3].Flags, []int{3, 1}) || list[3].Letter != "d" || list[3].Code != "hard-to-land" {
		t.Errorf("lettered: %+v", list)
	}
}

func TestLetterOf(t *testing.T) {
	for i, want := range map[int]string{0: "a", 25: "z", 26: "aa", 27: "ab", 51: "az", 52: "ba", 701: "zz", 702: "aaa"} {
		if got := LetterOf(i); got != want {
			t.Errorf("the letter of %d is %q, want %q", i, got, want)
		}
	}
}
