// Sheets that are taken again beside those that are drawn anew.

package rebuild

import (
	"bytes"
	"context"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"pullscore/cmd/internal/testing/film"
	"pullscore/interp"
	"pullscore/interp/plan"
	"pullscore/lang/testing/cases"
	"pullscore/render/sheet"
	"pullscore/render/testing/plans"
)

// zooming is a shot on a zoom whose stop closes on the way.
const zooming = `
lens "28-76"
  focal 28 mm to 76 mm
  stops f/2.8 to f/22 at 28 mm
  stops f/4 to f/22 at 76 mm
  closest 60 cm
  ring 280 deg, diameter 110 mm
shot 99Z "The zoom"
  with camera A, lens "28-76", stop f/2.8, focal 28 mm
  start on ILKA
  zoom to 76 mm over 4 s
  rack to OSK, over 1.5 s, because "the light goes"
  hold 1 s
`

// edits change lines of a plan as somebody who writes it does; most plans stay
// free of errors.
var edits = map[string]func(t *rapid.T, line string) string{
	"same":    func(_ *rapid.T, line string) string { return line },
	"above":   func(_ *rapid.T, line string) string { return "# a word to the script supervisor\n" + line },
	"blank":   func(_ *rapid.T, line string) string { return "\n" + line },
	"remove":  func(*rapid.T, string) string { return "" },
	"twice":   func(_ *rapid.T, line string) string { return line + "\n" + line },
	"comment": func(_ *rapid.T, line string) string { return line + "  # as agreed" },
	"number": func(t *rapid.T, line string) string {
		return strings.Replace(line, rapid.SampledFrom([]string{"1", "2", "4", "5", "8"}).Draw(t, "digit"), rapid.SampledFrom([]string{"3", "6", "12"}).Draw(t, "now"), 1)
	},
	"word": func(t *rapid.T, line string) string {
		return strings.Replace(line, rapid.SampledFrom([]string{"the", "you", "she", "ILKA", "TICKET", "A", "75"}).Draw(t, "word"), rapid.SampledFrom([]string{"their", "OSK", "LANTERN", "50"}).Draw(t, "now"), 1)
	},
}

// edited edits some lines of a text.
func edited(t *rapid.T, text string) string {
	lines := strings.Split(text, "\n")
	for range rapid.IntRange(1, 3).Draw(t, "edits") {
		kind := rapid.SampledFrom([]string{"same", "above", "blank", "remove", "twice", "comment", "number", "number", "number", "word", "word"}).Draw(t, "edit")
		i := rapid.IntRange(0, len(lines)-1).Draw(t, "line")
		lines[i] = edits[kind](t, lines[i])
	}
	return strings.Join(lines, "\n")
}

// drawings reads a plan of two files and draws it after the sheets before.
func drawings(t interface{ Fatal(...any) }, scene, kit string, before map[string][]*Sheet) (*interp.Result, map[string][]*Sheet) {
	res, err := interp.Read("scene.pull", interp.Options{ReadFile: readFrom(scene, kit)})
	if err != nil {
		t.Fatal(err)
	}
	return res, redraw(context.Background(), res, usedBy(scene, kit), before, sheet.Paper{})
}

// readFrom reads the files of a plan of two.
func readFrom(scene, kit string) func(path string) ([]byte, error) {
	used := usedBy(scene, kit)
	return func(path string) ([]byte, error) {
		if text := used[filepath.Base(path)]; text != nil {
			return text.data, nil
		}
		return nil, os.ErrNotExist
	}
}

// usedBy returns the texts of a plan of two files.
func usedBy(scene, kit string) map[string]*text {
	return map[string]*text{"scene.pull": {data: []byte(scene)}, "kit.pull": {data: []byte(kit)}}
}

// A save that changes one shot has the cures of that one tried together; one of the kit
// or of the lines above all shots, those of all.
func TestCuresAreTriedWhereSomethingHasChanged(t *testing.T) {
	dir := t.TempDir()
	if _, err := film.Write(dir, 1, 1); err != nil {
		t.Fatal(err)
	}
	kit, scene := fileText(t, filepath.Join(dir, "kit.pull")), film.Scene(1, 1)
	first, before := drawings(t, scene, kit, nil)
	shots := len(first.Plan.Shots)
	last := strings.LastIndex(scene, "\nshot ")
	in := strings.Index(scene[last:], ", over ") + last
	for name, tc := range map[string]struct {
		scene, kit string
		tried      int
	}{
		"nothing":               {scene, kit, 0},
		"a line of the last":    {scene[:in] + ", over 9 s" + scene[in+strings.Index(scene[in:], "\n"):], kit, 1},
		"a blank line above it": {scene[:last] + "\n" + scene[last:], kit, shots},
		"the kit":               {scene, kit + "# as agreed\n", shots},
	} {
		res, err := interp.Read("scene.pull", interp.Options{ReadFile: readFrom(tc.scene, tc.kit)})
		if err != nil {
			t.Fatal(err)
		}
		if got := tryTogether(res, bases(res, usedBy(tc.scene, tc.kit)), before); got != tc.tried {
			t.Errorf("%s: the cures of %d shots were tried, not of %d", name, got, tc.tried)
		}
	}
}

// A zoom holds the stops of its lens as data, so a shot on one that nobody has
// edited is known again; another scale of stops makes it another shot.
func TestAZoomReadTwiceIsIdentical(t *testing.T) {
	dir := t.TempDir()
	if _, err := film.Write(dir, 1, 1); err != nil {
		t.Fatal(err)
	}
	kit := fileText(t, filepath.Join(dir, "kit.pull"))
	read := func(zooming string) *plan.Shot {
		res := interp.Interpret("scene.pull", []byte(film.Scene(1, 1)+zooming), interp.Options{
			ReadFile: func(string) ([]byte, error) { return []byte(kit), nil },
		})
		last := res.Plan.Shots[len(res.Plan.Shots)-1]
		if last.ID != "99Z" || len(last.Optics.Scale) != 2 {
			t.Fatalf("the last shot is %s, with the stops %v", last.ID, last.Optics.Scale)
		}
		return last
	}
	if !identical(read(zooming), read(zooming)) {
		t.Error("a zoom read twice is not the same")
	}
	if identical(read(zooming), read(strings.Replace(zooming, "f/4 to f/22", "f/3.6 to f/22", 1))) {
		t.Error("another scale of stops is taken for the same")
	}
}

// editsTried is how many edits are tried: after each a scene is interpreted, and the most
// of it drawn again. After a change of what is taken again try more, -rapid.checks=1000.
const editsTried = 25

// Whatever somebody edits, what is drawn after it is what is drawn afresh; and
// shots that the edit leaves alone are not drawn again.
func TestWhatIsTakenAgainIsWhatWouldBeDrawn(t *testing.T) {
	dir := t.TempDir()
	if _, err := film.Write(dir, 1, 1); err != nil {
		t.Fatal(err)
	}
	kit := fileText(t, filepath.Join(dir, "kit.pull"))
	const seeds = 3
	var texts [seeds]string
	var drawn [seeds]map[string][]*Sheet
	taken, total := 0, 0
	cases.Check(t, editsTried, func(t *rapid.T) {
		seed := rapid.IntRange(0, seeds-1).Draw(t, "seed")
		if drawn[seed] == nil {
			texts[seed] = film.Scene(uint64(seed), 1) + zooming
			_, drawn[seed] = drawings(t, texts[seed], kit, nil)
		}
		text, kit, before := texts[seed], kit, drawn[seed]
		if rapid.IntRange(0, 4).Draw(t, "kit") == 0 {
			kit = edited(t, kit)
		} else {
			text = edited(t, text)
		}
		now, after := drawings(t, text, kit, before)
		for _, shot := range now.Plan.Shots {
			total++
			told := shot.Together
			if now.TryTogether([]*plan.Shot{shot}); !reflect.DeepEqual(told, shot.Together) {
				t.Fatalf("%s: cures come to %v together, and tried anew to %v", shot.ID, told, shot.Together)
			}
			if old := before[shot.ID]; len(old) == 0 || after[shot.ID][0].shot != old[0].shot {
				continue // it is drawn afresh
			}
			taken++
			fresh := Score(shot, nil, sheet.Paper{})
			if len(fresh) != len(after[shot.ID]) {
				t.Fatalf("%s has %d sheets, and %d afresh", shot.ID, len(after[shot.ID]), len(fresh))
			}
			for i, sheet := range after[shot.ID] {
				if sheet.Tag != fresh[i].Tag || !bytes.Equal(sheet.SVG(), fresh[i].SVG()) {
					t.Fatalf("%s, sheet %d: the drawing is not what it is afresh", shot.ID, i+1)
				}
			}
		}
	})
	t.Logf("TAKEN %d of %d", taken, total)
	if total == 0 || float64(taken)/float64(total) < 0.3 {
		t.Errorf("%d shots of %d were taken again", taken, total)
	}
}

// A change of any figure is seen, wherever it lies.
func TestIdenticalSeesEveryFigure(t *testing.T) {
	dir := t.TempDir()
	write(t, filepath.Join(dir, "kit.pull"), kit)
	one, two := unplaced(shotOf(t, dir, "A")), unplaced(shotOf(t, dir, "A"))
	if !identical(one, two) {
		t.Fatal("two readings of one text are not alike")
	}
	seen := 0
	var change func(v reflect.Value, path string)
	change = func(v reflect.Value, path string) {
		switch v.Kind() {
		case reflect.Pointer, reflect.Interface:
			if !v.IsNil() {
				change(v.Elem(), path)
			}
		case reflect.Struct:
			for i := range v.NumField() {
				change(v.Field(i), path+"."+v.Type().Field(i).Name)
			}
		case reflect.Slice, reflect.Array:
			for i := range v.Len() {
				change(v.Index(i), fmt.Sprintf("%s[%d]", path, i))
			}
		case reflect.Float64:
			try(t, one, two, v, path, func() { v.SetFloat(math.Nextafter(v.Float(), 1e9)) })
			seen++
		case reflect.String:
			try(t, one, two, v, path, func() { v.SetString(v.String() + "x") })
			seen++
		case reflect.Int, reflect.Int64:
			try(t, one, two, v, path, func() { v.SetInt(v.Int() + 1) })
			seen++
		case reflect.Bool:
			try(t, one, two, v, path, func() { v.SetBool(!v.Bool()) })
			seen++
		}
	}
	change(reflect.ValueOf(two), "shot")
	if seen < 100 {
		t.Errorf("only %d figures were changed", seen)
	}
}

// try makes a change of two, of which identical must tell, and takes it back.
func try(t *testing.T, one, two *plan.Shot, v reflect.Value, path string, set func()) {
	t.Helper()
	if !v.CanSet() {
		return // within another package: the shots of a film try those
	}
	was := reflect.New(v.Type()).Elem()
	was.Set(v)
	if math.IsNaN(asFloat(v)) {
		v.SetFloat(1)
	} else {
		set()
	}
	if identical(one, two) {
		t.Errorf("%s: a change of it is not seen", path)
	}
	v.Set(was)
	if !identical(one, two) {
		t.Fatalf("%s: taken back, it is not the same", path)
	}
}

func asFloat(v reflect.Value) float64 {
	if v.Kind() == reflect.Float64 {
		return v.Float()
	}
	return 0
}

func BenchmarkIdentical(b *testing.B) {
	dir := b.TempDir()
	if _, err := film.Write(dir, 1, 1); err != nil {
		b.Fatal(err)
	}
	path := filepath.Join(dir, "reel-01", "scene-001.pull")
	read := func() *plan.Shot {
		res, err := interp.Read(path, interp.Options{})
		if err != nil || len(res.Plan.Shots) == 0 {
			b.Fatal(err)
		}
		return res.Plan.Shots[0]
	}
	one, two := read(), read()
	b.Run("drawn", func(b *testing.B) {
		for b.Loop() {
			Score(two, nil, sheet.Paper{})
		}
	})
	old := Score(one, nil, sheet.Paper{})
	b.Run("taken again", func(b *testing.B) {
		for b.Loop() {
			if Score(two, old, sheet.Paper{})[0].shot != old[0].shot {
				b.Fatal("it was drawn")
			}
		}
	})
}

// A shot of a scene is another once anything of its staging is, but not where only the
// lines of the plan are others, as where something is written above.
func TestStagingIsCompared(t *testing.T) {
	make := func() *plan.Shot {
		s := plans.Scene().Shots[0]
		s.Readings = []plan.Reading{{Who: "PEVIN", Tape: 6.2, Floor: 6.21, Line: 20}}
		return s
	}
	for name, edit := range map[string]func(*plan.Shot){
		"lines":     func(s *plan.Shot) { s.Placer, s.Runner, s.Matcher, s.Readings[0].Line = 7, 8, 9, 21 },
		"home":      func(s *plan.Shot) { s.Home.Pan++ },
		"covers":    func(s *plan.Shot) { s.Covers[0]++ },
		"scene":     func(s *plan.Shot) { s.Staging.Scene = "The hall" },
		"tilt":      func(s *plan.Shot) { s.Optics.Rig.Tilt++ },
		"height":    func(s *plan.Shot) { s.Subject("PEVIN").Up.Steps[0].To.Offset++ },
		"blocked":   func(s *plan.Shot) { s.Subject("PEVIN").Blocked = []plan.Interval{{1, 2}} },
		"tape":      func(s *plan.Shot) { s.Readings[0].Tape++ },
		"eye-lines": func(s *plan.Shot) { s.Views = []plan.SightLine{{A: "PEVIN", B: "YSOLT"}} },
		"way":       func(s *plan.Shot) { s.Optics.Rig.Slides[0].Z++ },
		"no scene":  func(s *plan.Shot) { s.Staging = nil },
	} {
		before, after := make(), make()
		edit(after)
		if got := identical(unplaced(before), unplaced(after)); got != (name == "lines") {
			t.Errorf("%s: the same: %v", name, got)
		}
	}
}
