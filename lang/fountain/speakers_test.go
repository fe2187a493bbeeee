package fountain

import (
	"slices"
	"testing"
)

func TestSpeakers(t *testing.T) {
	for cue, want := range map[string][]string{
		"PAUL":               {"PAUL"},
		"PAUL & MARTA":       {"PAUL", "MARTA"},
		"PAUL/MARTA":         {"PAUL", "MARTA"},
		"PAUL AND MARTA":     {"PAUL", "MARTA"},
		"Paul and Marta":     {"Paul", "Marta"},
		"PAUL, MARTA & ORLA": {"PAUL", "MARTA", "ORLA"},
		"DALE, THE COOK":     {"DALE, THE COOK"},
		"ANDERS":             {"ANDERS"},
		"FERDINAND":          {"FERDINAND"},
		"PAUL &":             {"PAUL &"},
		"&":                  {"&"},
		"":                   {""},
	} {
		if got := Speakers(cue); !slices.Equal(got, want) {
			t.Errorf("%q: %q, want %q", cue, got, want)
		}
	}
}
