package interp_test

import (
	"strings"
	"testing"

	"pullscore/interp"
)

// Where a floor says how high everybody is, nobody is taken to be level with the lens.
func TestKnownHeightsAreNoDefault(t *testing.T) {
	const text = `plan "Office"
camera A
  sensor 24.89 x 18.66 mm
lens "35"
  focal 35 mm
  stops f/2 to f/22
  closest 35 cm
  ring 300 deg, diameter 110 mm
with stop f/4
scene "The office"
  subject PEVIN at 0 m right, eyes 1.7 m
  subject LETTER at 20 cm right, 15 cm upstage, 78 cm high
  PEVIN: "So was the letter.", lasting 3 s
shot 18A
  covers all
  camera at 1.6 m downstage, 1.4 m high, aims at PEVIN
  start on PEVIN
  tilt to LETTER, over 1 s, on 1 s
`
	heights := func(text string) int {
		res := interp.Interpret("office.pull", []byte(text), interp.Options{})
		if len(res.Plan.Shots) != 1 {
			t.Fatalf("%+v", res.Findings)
		}
		n := 0
		for _, d := range res.Plan.Defaults {
			if d.Name == "height" {
				n++
			}
		}
		return n
	}
	if n := heights(text); n != 0 {
		t.Errorf("%d heights are assumed, and all are known", n)
	}
	if n := heights(strings.Replace(text, ", 78 cm high", "", 1)); n != 1 {
		t.Errorf("%d heights are assumed of a letter", n)
	}
}
