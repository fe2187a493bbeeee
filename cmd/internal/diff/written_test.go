package diff

import (
	"slices"
	"strings"
	"testing"
)

// window is a scene of which a master has all, and a single of each person.
const window = `plan "Window"
rate 24
` + kit + `with stop f/4
scene "The window"
  mark GATE at 40 cm right, 1.3 m upstage
  subject MARRIT at 0 m right, eyes 1.5 m, deep 4 cm
  subject OSKEL at GATE, eyes 1.6 m, deep 4 cm
  MARRIT: "Last boat. There and back?", lasting 1.8 s
  pause 1.2 s
  OSKEL: "One way.", lasting 0.9 s
  pause 1.5 s
  MARRIT: "You live on this side.", lasting 1.6 s
  cut to 2, on "live"
  pause 1 s
shot 1 "Master"
  covers all
  camera at 80 cm right, 3.2 m downstage, 1.5 m high, aims at MARRIT and OSKEL
  measured MARRIT 3.3 m
  start on MARRIT
  rack to OSKEL, landing on "one", over 1.2 s
shot 2 "Single MARRIT"
  covers all
  camera at OSKEL, 60 cm right, 1.5 m high, aims at MARRIT
  start on MARRIT
shot 3 "Single OSKEL"
  covers "there" to end
  camera at MARRIT, 50 cm right, 35 cm downstage, 1.6 m high, aims at OSKEL
  start on OSKEL
`

// A change of a scene as it is written is told once: there, and of its shots what they do
// themselves.
func TestWrittenScenesAreCompared(t *testing.T) {
	const title = "scene “The window”: "
	for _, c := range []struct {
		old, new string
		told     []string // begins of phrases that there are
		not      []string // and of phrases that there are not
	}{
		{"mark GATE at 40 cm right", "mark GATE at 60 cm right",
			[]string{title + "mark GATE: moved 20 cm right", "2: camera moved 20 cm right and turned", "3: camera turned"},
			[]string{title + "OSKEL:", "1 OSKEL", "2 OSKEL", "3 OSKEL", "1 MARRIT"}},
		{"eyes 1.6 m", "eyes 1.75 m", []string{title + "OSKEL: eyes 1.6 m -> 1.75 m", "3: camera turned"}, []string{title + "OSKEL: moved", "3 OSKEL"}},
		{"pause 1.2 s", "pause 1.7 s", []string{
			title + "lasts 8 s -> 8.5 s", title + "2 lines: 12 frames (0.5 s) later", title + "cut to 2: 12 frames (0.5 s) later", "1 rack 1 to OSKEL: 12 frames (0.5 s) later",
		}, []string{"1: ", "1 OSKEL", "2", "3"}},
		{`MARRIT: "Last boat.`, `MARRIT: "The last boat.`, []string{title + "MARRIT “The last boat. There and back?”: new"}, []string{"1 MARRIT", "2", "3:"}},
		{"at GATE, eyes", "at GATE, 10 cm left, eyes", []string{title + "OSKEL: moved 10 cm left"}, []string{"1 OSKEL", "3 OSKEL"}},
		{`cut to 2, on "live"`, `cut to 2, on "side"`, []string{title + "cut to 2: "}, []string{"1", "2", "3"}},
		{`covers "there" to end`, "covers start to end", []string{"3: covers 0.72 s to 8 s -> 0 s to 8 s"}, []string{"3 MARRIT “", "3 OSKEL “", "1", "2"}},
		{"measured MARRIT 3.3 m", "measured MARRIT 3.4 m", []string{"1 MARRIT: tape reads 3.3 m -> 3.4 m"}, []string{title, "2", "3"}},
		{"camera at 80 cm right, 3.2 m", "camera at 30 cm right, 3.2 m", []string{"1: camera moved 50 cm left and turned "}, []string{"2", "3", "1 OSKEL: moved"}},
		{`scene "The window"`, `scene "The kiosk"`, []string{"scene “The kiosk”: title The window -> The kiosk"}, []string{"1", "2", "3"}},
	} {
		if !strings.Contains(window, c.old) {
			t.Fatalf("no %q", c.old)
		}
		list := Compare(state(t, window), state(t, strings.Replace(window, c.old, c.new, 1))).Lines()
		begins := func(with string) bool {
			return slices.ContainsFunc(list, func(text string) bool { return strings.HasPrefix(text, with) })
		}
		for _, want := range c.told {
			if !begins(want) {
				t.Errorf("%s: no %q in\n%s", c.new, want, strings.Join(list, "\n"))
			}
		}
		for _, not := range c.not {
			if begins(not) {
				t.Errorf("%s: %q in\n%s", c.new, not, strings.Join(list, "\n"))
			}
		}
	}
}
