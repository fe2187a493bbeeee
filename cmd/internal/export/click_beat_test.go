package export

import "testing"

// Without a beat that was asked for, the ticks are the plan's.
func TestBeatOfThePlan(t *testing.T) {
	s := aShot([2]float64{0.2, 1})
	s.Beat = 0.75
	for asked, want := range map[float64]float64{0: 0.75, 0.4: 0.4} {
		track, err := NewClick(s, ClickOptions{Beat: asked})
		if err != nil {
			t.Fatal(err)
		}
		if got := float64(track.Cues[1].Position) / SampleRate / 4; got != want { // the shot starts after four beats
			t.Errorf("a beat of %v s, want %v s", got, want)
		}
	}
}
