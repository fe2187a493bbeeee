package plan

import "testing"

func TestTick(t *testing.T) {
	for beat, want := range map[float64]float64{0: UsualBeat, 0.1: 0.1, 0.75: 0.75, 4: 4, 0.09: UsualBeat, 4.1: UsualBeat, -1: UsualBeat} {
		if got := (&Shot{Beat: beat}).Tick(); got != want {
			t.Errorf("a beat of %v s ticks every %v s, want %v s", beat, got, want)
		}
	}
}
