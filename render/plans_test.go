// Real plans: those of the examples, and those that are wrong on purpose. What
// the interpreter hands over is drawn without faults, whatever it is.

package render_test

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"pullscore/interp"
	"pullscore/interp/plan"
	"pullscore/lang/chunk"
	"pullscore/render"
	"pullscore/render/draw"
	"pullscore/render/draw/drawtest"
	"pullscore/render/svg"
)

// drawings are those that are made of every shot.
var drawings = []struct {
	name string
	draw func(*plan.Shot, render.Options) []*draw.Page
}{
	{"score", render.Score}, {"overhead", render.Overhead}, {"strip", render.Strip}, {"dial", render.Dial},
}

// checkDrawn fails for every fault of a page, and for figures that are none.
func checkDrawn(t *testing.T, name string, page *draw.Page) {
	t.Helper()
	for _, f := range drawtest.Faults(page) {
		t.Errorf("%s: %s", name, f)
	}
	var out bytes.Buffer
	if err := svg.Write(&out, page); err != nil {
		t.Fatal(err)
	}
	for _, bad := range []string{"NaN", "Inf"} {
		if strings.Contains(out.String(), bad) {
			t.Errorf("%s holds %s", name, bad)
		}
	}
	if page.Title == "" || page.Desc == "" {
		t.Errorf("%s has no words for those who cannot see it", name)
	}
}

func TestPlansAreDrawnWithoutFaults(t *testing.T) {
	shots := 0
	for name, src := range plans(t) {
		res := interp.Interpret(name, src, interp.Options{})
		for _, s := range res.Plan.Shots {
			for _, paper := range []render.Paper{render.A4, render.Letter} {
				for _, d := range drawings {
					for i, page := range d.draw(s, render.Options{Paper: paper}) {
						shots++
						checkDrawn(t, fmt.Sprintf("%s, shot %s, %s, page %d", name, s.ID, d.name, i+1), page)
					}
				}
			}
		}
	}
	if shots < 160 {
		t.Errorf("only %d pages were drawn", shots)
	}
}

func plans(t *testing.T) map[string][]byte {
	t.Helper()
	all := map[string][]byte{}
	examples, _ := filepath.Glob("../examples/*.pull")
	for _, name := range examples {
		src, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		all[name] = src
	}
	findings, _ := filepath.Glob("../interp/testdata/findings/*.pull")
	for _, name := range findings {
		chunks, err := chunk.Read(name)
		if err != nil {
			t.Fatal(err)
		}
		for _, c := range chunks {
			all["../examples/"+filepath.Base(c.Name)] = c.Source // beside a kit
		}
	}
	return all
}
