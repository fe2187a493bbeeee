// Generated plans: scenes that nobody would shoot, to find what a thoughtful
// example leaves out.

package interp_test

import (
	"fmt"
	"strings"

	"pgregory.net/rapid"
)

// genPlan draws a plan of one shot with its kit, one statement a line.
func genPlan(t *rapid.T) string {
	var s strings.Builder
	line := func(format string, args ...any) { fmt.Fprintf(&s, format+"\n", args...) }
	between := func(lo, hi int, name string) int { return rapid.IntRange(lo, hi).Draw(t, name) }
	oneOf := func(name string, list ...string) string { return rapid.SampledFrom(list).Draw(t, name) }

	line(`plan "Generated"`)
	line("rate %s", oneOf("rate", "24", "25", "29.97", "60"))
	line("%s", oneOf("watched", "watched on 12 m screen from 18 m", "watched on 1.2 m screen from 2.5 m", "sharp to 0.025 mm", "sharp to 1 arcmin"))
	line("land %d %%", between(50, 99, "land"))
	line("quickest %d ms", between(0, 900, "quickest"))
	genKit(t, line)
	people := []string{"ANNA", "BRAM", "CLEO"}
	for _, who := range people {
		deep := ""
		if rapid.Bool().Draw(t, "deep?") {
			deep = fmt.Sprintf(", deep %d cm", between(1, 60, "deep"))
		}
		side := oneOf("side", "", ", 30 cm left", ", 25 deg right")
		line("subject %s at %d cm%s%s", who, between(60, 900, "distance"), side, deep)
	}
	line("shot 1")
	line("  with camera A, lens %q, stop %s%s, %s%s", oneOf("lens", "ring", "marks", "zoom", "T", "both"), oneOf("scale", "f/", "T"), oneOf("stop", "2", "2.8", "4", "8", "16"), genLight(t), oneOf("shoots", "", "", ", shoots 96", ", shoots 12"))
	line("  start on %s", oneOf("first", people...))
	for i := range between(1, 7, "statements") {
		genStatement(t, line, people, i)
	}
	return s.String()
}

func genLight(t *rapid.T) string {
	s := "meter " + rapid.SampledFrom([]string{"f/", "T"}).Draw(t, "meter's scale") + rapid.SampledFrom([]string{"1.4", "2.8", "5.6", "6.3", "11", "22"}).Draw(t, "meter")
	if rapid.Bool().Draw(t, "nd?") {
		s += fmt.Sprintf(", nd %.1f", 0.3*float64(rapid.IntRange(0, 5).Draw(t, "nd")))
	}
	if rapid.Bool().Draw(t, "gear?") {
		s += fmt.Sprintf(", gear %.2g, wheel %d mm", float64(rapid.IntRange(2, 12).Draw(t, "gear"))/4, rapid.IntRange(60, 110).Draw(t, "wheel"))
	}
	return s
}

func genKit(t *rapid.T, line func(string, ...any)) {
	between := func(lo, hi int, name string) int { return rapid.IntRange(lo, hi).Draw(t, name) }
	line("camera A")
	line("  sensor %d x 14 mm", between(8, 40, "sensor"))
	line("  records %d px", between(1000, 6000, "pixels"))
	line("  on %s", rapid.SampledFrom([]string{"tripod", "dolly", "shoulder", "hand"}).Draw(t, "support"))
	line("  iso 800")
	line("  shutter 180 deg")
	line("  monitor 7 in diagonal from 40 cm, 1280 px")
	line(`lens "ring"`)
	line("  focal %d mm", between(14, 100, "focal"))
	line("  stops f/1.4 to f/22")
	line("  closest 50 cm")
	line("  ring %d deg, diameter %d mm", between(60, 330, "throw"), between(50, 120, "diameter"))
	line(`lens "marks"`)
	line("  focal 75 mm")
	line("  stops f/1.8 to f/22")
	line("  closest 75 cm")
	line("  ring 310 deg, diameter 110 mm")
	line("  mark 75 cm at 0 deg")
	line("  mark 1 m at 118 deg")
	line("  mark 2 m at 240 deg")
	line("  mark 5 m at 290 deg")
	line(`lens "T"`)
	line("  focal 85 mm")
	line("  stops T1.5 to T22")
	line("  closest 80 cm")
	line("  ring 270 deg, diameter 80 mm")
	line(`lens "both"`)
	line("  focal 40 mm")
	line("  stops T2 to T22")
	line("  stops f/1.8 to f/21")
	line("  closest 40 cm")
	line("  ring 300 deg, diameter 110 mm")
	line(`lens "zoom"`)
	line("  focal 24 mm to 70 mm")
	line("  stops f/2 to f/22 at 24 mm")
	line("  stops f/4 to f/22 at 70 mm")
	line("  closest 40 cm")
	line("  ring 120 deg, diameter 80 mm")
}

func genStatement(t *rapid.T, line func(string, ...any), people []string, i int) {
	between := func(lo, hi int, name string) int { return rapid.IntRange(lo, hi).Draw(t, name) }
	who := rapid.SampledFrom(people).Draw(t, "who")
	switch between(0, 11, "kind") {
	case 0:
		line("  %s: \"Word%d by the river and over the hill.\"", who, i)
	case 1:
		line("  pause %d ms", between(0, 3000, "pause"))
	case 2:
		line("  hold %d ms", between(0, 2000, "hold"))
	case 3:
		line("  %s moves to %d cm over %d ms", who, between(60, 900, "to"), between(300, 4000, "over"))
	case 4:
		line("  dolly in %d cm over %d ms", between(1, 40, "by"), between(500, 4000, "over"))
	case 5:
		line("  cue c%d on %d ms", i, between(0, 8000, "cue"))
		line("  rack to %s, on c%d%s", who, i, genOver(t))
	case 6:
		line("  rack to %s, landing on %d ms%s", who, between(0, 9000, "landing"), genOver(t))
	case 7:
		line("  rack to %s%s", who, genOver(t))
		line("  follow %s", who)
	case 8: // someone who bolts while the focus follows
		line("  rack to %s%s", who, genOver(t))
		line("  pause 2 s")
		line("  %s moves to %d cm over %d ms", who, between(60, 900, "to"), between(300, 900, "over"))
		line("  follow %s", who)
	case 9: // two racks that get in each other's way
		at := between(0, 9000, "at")
		line("  rack to %s, on %d ms, over 2 s", who, at)
		line("  rack to %s, landing on %d ms, over 1 s", people[i%len(people)], at+between(2100, 3500, "later"))
	default:
		line("  rack to %s%s", who, genOver(t))
	}
}

func genOver(t *rapid.T) string {
	s := ""
	if rapid.Bool().Draw(t, "over?") {
		s = fmt.Sprintf(", over %d ms", rapid.IntRange(50, 3000).Draw(t, "over"))
	}
	if rapid.Bool().Draw(t, "even?") {
		s += ", even"
	}
	return s
}
