package interp_test

import (
	"fmt"
	"testing"
)

// The beat that a plan names is what its shots are rehearsed by.
func TestBeat(t *testing.T) {
	for let, want := range map[string]float64{
		"":                                       0,
		"let beat = 0.8 s":                       0.8,
		"let beat = 18 fr":                       0.75,
		"let beat = 2 * half\nlet half = 300 ms": 0.6,
		"let beat = 80 cm":                       0, // some other value of that name
		"let pulse = 0.8 s":                      0,
		"subject beat at 3 m":                    0,
	} {
		text := fmt.Sprintf(`plan "P"
rate 24
%s
camera A
  sensor 24.89 x 18.66 mm
  on tripod
lens "75"
  focal 75 mm
  stops f/1.8 to f/21
  closest 75 cm
  ring 310 deg, diameter 110 mm
subject ILKA at 1.7 m
shot 1
  with camera A, lens "75", stop f/4
  start on ILKA
  pause 2 s
`, let)
		res := interpret("p.pull", text)
		if len(res.Plan.Shots) != 1 {
			t.Fatalf("%s: %v", let, res.Findings)
		}
		if got := res.Plan.Shots[0].Beat; got != want {
			t.Errorf("%q: a beat of %v s, want %v s", let, got, want)
		}
	}
}
