// Movements by a speed and from where somebody stands, worked out by hand.

package interp_test

import (
	"fmt"
	"strings"
	"testing"
)

// NORA stands at 1.7 m on the axis, GATE at 5.2 m and 80 cm right.
func TestMovements(t *testing.T) {
	for _, test := range []struct {
		name, body string
		want       []string // from start to end, and the distances before and after
	}{
		{"nearer", "NORA moves 15 cm nearer over 1 s", []string{"0 to 1: 1.7 to 1.55"}},
		{"farther", "NORA moves 30 cm farther over 1 s, at 2 s", []string{"2 to 3: 1.7 to 2"}},
		{"from where somebody stands then", "NORA moves to 3 m over 1 s\nNORA moves 50 cm nearer over 1 s, at 2 s", []string{"0 to 1: 1.7 to 3", "2 to 3: 3 to 2.5"}},
		{"written in another order", "NORA moves 50 cm nearer over 1 s, at 2 s\nNORA moves to 3 m over 1 s", []string{"2 to 3: 3 to 2.5", "0 to 1: 1.7 to 3"}},
		{"the side stays", "GATE moves 1 m nearer over 1 s", []string{"0 to 1: 5.2 to 4.2"}},
		{"nearer while the camera draws in", "dolly in 20 cm over 1 s\nNORA moves 50 cm nearer over 1 s", []string{"0 to 1: 0 to 0.2", "0 to 1: 1.7 to 1"}},
		{"beside somebody", "LAMP moves to NORA - 20 cm over 1 s\nNORA moves to 3 m over 1 s, at 2 s\nLAMP moves 30 cm farther over 1 s, at 4 s",
			[]string{"0 to 1: 0.95 to 1.5", "2 to 3: 1.7 to 3", "4 to 5: 2.8 to 3.1"}},
		{"a speed", "NORA moves to 2.9 m at 0.6 m/s", []string{"0 to 2: 1.7 to 2.9"}},
		{"in feet", "NORA moves 2 ft farther at 0.5 ft/s", []string{"0 to 4: 1.7 to 2.3096"}},
		{"across too", "NORA moves to 2.6 m, 1.2 m left at 1.5 m/s", []string{"0 to 1: 1.7 to 2.6"}},
		{"to somebody at the side", "NORA moves to GATE - 2.9 m at 0.5 m/s", []string{"0 to 2: 1.7 to 2.3"}},
		{"from where the line above leads", "NORA moves to 3 m over 1 s\nNORA moves to 2 m at 0.5 m/s, at 2 s", []string{"0 to 1: 1.7 to 3", "2 to 4: 3 to 2"}},
		{"the camera", "dolly in 30 cm at 0.15 m/s", []string{"0 to 2: 0 to 0.3"}},
		// The camera goes on at 0.1 m/s: NORA has 0.9 m to go and 0.1 m more a second.
		{"while the camera draws in", "dolly in 80 cm over 8 s, even\nNORA moves to 2.6 m at 0.55 m/s", []string{"0 to 8: 0 to 0.8", "0 to 2: 1.7 to 2.6"}},
	} {
		t.Run(test.name, func(t *testing.T) {
			s := theShot(t, test.body+"\nlasts 20 s")
			for i, want := range test.want {
				b := s.Blocking[i]
				got := fmt.Sprintf("%.6g to %.6g: %.6g to %.6g", float64(b.Start), float64(b.End), float64(b.From), float64(b.To))
				if got != want {
					t.Errorf("%s, want %s", got, want)
				}
			}
		})
	}
}

func TestMovementMistakes(t *testing.T) {
	for body, want := range map[string]string{
		"NORA moves to 1.7 m at 1 m/s":           "NORA stands there already, and a speed gives no time",
		"NORA moves 1 s nearer over 1 s":         "expected a length, found a time",
		"NORA moves 0 m nearer over 1 s":         "somebody goes 0.1 mm to 1000 km",
		"NORA moves to 2 m at 0 m/s":             "expected a speed above zero",
		"dolly in 2000000 m over 1 s":            "a camera goes 0.1 mm to 1000 km",
		"NORA moves 5 m nearer over 1 s":         "the camera and NORA would meet",
		"OTTO moves 5 m nearer over 1 s":         "OTTO is a voice; expected a subject",
		"NORA moves to 3 m over 1 s at 20 deg/s": "expected a time, found a turning speed",
	} {
		found := false
		var all []string
		for _, f := range interpret("plan.pull", scene(body)).Findings {
			all = append(all, f.Message)
			found = found || strings.Contains(f.Message, want)
		}
		if !found {
			t.Errorf("%s: %q lack %q", body, all, want)
		}
	}
}
