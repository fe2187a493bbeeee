package plan

import "testing"

// The sentence says where each cure is written, what it leaves, and what is new.
func TestSaysTogether(t *testing.T) {
	s := &Shot{Flags: make([]Flag, 23), Together: []Tried{
		{Cure: "over 0.5 s", Cause: "c", Pulls: []int{1, 2, 3, 4, 5, 6}, Leaves: 18, Adds: 2, Mends: []string{"c", "e"}, AddsBy: [3]int{0, 2, 0}},
		{Cure: "stop f/11", Cause: "d", Leaves: 16, Adds: 3, AddsBy: [3]int{0, 0, 3}},
		{Cure: "over 2 s", Cause: "f", Pulls: []int{7}, Leaves: 15, Adds: 1, Mends: []string{"f"}, AddsBy: [3]int{1, 0, 0}},
	}}
	const want = "over 0.5 s on pulls 1 to 6 (mends c, e): 18 of 23 left, 2 new warnings; " +
		"then stop f/11: 16 left, 3 new notes; then over 2 s on pull 7: 15 left, 1 new error"
	if got := s.SaysTogether(); got != want {
		t.Errorf("%q, want %q", got, want)
	}
	if got := (&Shot{}).SaysTogether(); got != "" {
		t.Errorf("nothing helps: %q", got)
	}
	if got := pullList([]int{1, 2, 5}); got != "pulls 1, 2 and 5" {
		t.Errorf("%q", got)
	}
}
