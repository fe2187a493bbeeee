// What is kept of sheets, and what is drawn again.

package rebuild

import (
	"bytes"
	"os"
	"path/filepath"
	"runtime"
	"testing"

	"pullscore/interp"
	"pullscore/interp/plan"
	"pullscore/render/sheet"
)

// shotOf reads the first shot of a scene.
func shotOf(t *testing.T, dir, title string) *plan.Shot {
	t.Helper()
	path := filepath.Join(dir, "a.pull")
	write(t, path, scene(title))
	res, err := interp.Read(path, interp.Options{ReadFile: os.ReadFile})
	if err != nil || len(res.Plan.Shots) == 0 {
		t.Fatalf("no shot: %v", err)
	}
	return res.Plan.Shots[0]
}

func TestSheetsAreDrawnWhenTheyAreNeeded(t *testing.T) {
	dir := t.TempDir()
	write(t, filepath.Join(dir, "kit.pull"), kit)
	first := Score(shotOf(t, dir, "First"), nil, sheet.Paper{})[0]
	want := first.SVG()

	same := Score(shotOf(t, dir, "First"), []*Sheet{first}, sheet.Paper{})[0]
	if same == first || same.Tag != first.Tag {
		t.Error("a shot that did not change has another drawing, or the very same sheet")
	}
	first.fresh = nil
	runtime.GC()
	if !bytes.Equal(first.SVG(), want) || tag(first.SVG()) != first.Tag {
		t.Error("drawn again, the page is another")
	}
	if other := Score(shotOf(t, dir, "Other"), []*Sheet{first}, sheet.Paper{})[0]; other.Tag == first.Tag {
		t.Error("a shot that changed kept its drawing")
	}
}
