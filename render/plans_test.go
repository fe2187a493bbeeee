// Real plans: those of the examples, and those that are wrong on purpose. What
// the interpreter hands over is drawn without faults, whatever it is.

package render_test

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"pullscore/interp"
	"pullscore/lang/chunk"
	"pullscore/render"
	"pullscore/render/draw/drawtest"
	"pullscore/render/svg"
)

func TestPlansAreDrawnWithoutFaults(t *testing.T) {
	shots := 0
	for name, src := range plans(t) {
		res := interp.Interpret(name, src, interp.Options{})
		for _, s := range res.Plan.Shots {
			for _, paper := range []render.Paper{render.A4, render.Letter} {
				for i, page := range render.Score(s, render.Options{Paper: paper}) {
					shots++
					for _, f := range drawtest.Faults(page) {
						t.Errorf("%s, shot %s, page %d: %s", name, s.ID, i+1, f)
					}
					var out bytes.Buffer
					if err := svg.Write(&out, page); err != nil {
						t.Fatal(err)
					}
					for _, bad := range []string{"NaN", "Inf"} {
						if strings.Contains(out.String(), bad) {
							t.Errorf("%s, shot %s, page %d holds %s", name, s.ID, i+1, bad)
						}
					}
				}
			}
		}
	}
	if shots < 40 {
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
