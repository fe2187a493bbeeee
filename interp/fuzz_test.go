// Whatever stands in a file, interpreting it ends, with findings at places that
// exist and a plan that can be written as JSON.

package interp_test

import (
	"encoding/json"
	"os"
	"path/filepath"
	"testing"

	"pgregory.net/rapid"

	"pullscore/interp"
	"pullscore/lang/testing/chunk"
)

func FuzzInterpret(f *testing.F) {
	files, _ := filepath.Glob("testdata/findings/*.pull")
	examples, _ := filepath.Glob("../examples/*.pull")
	for _, name := range files {
		chunks, err := chunk.Read(name)
		if err != nil {
			f.Fatal(err)
		}
		for _, c := range chunks {
			f.Add(string(c.Source))
		}
	}
	for _, name := range examples {
		src, err := os.ReadFile(name)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(string(src))
	}
	f.Add(unreadable)
	f.Fuzz(func(t *testing.T, src string) { checkSane(t, interpret("plan.pull", src)) })
}

func TestGeneratedPlansAreSane(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) { checkSane(t, interpret("plan.pull", genPlan(t))) })
}

// sanityTest is what *testing.T and *rapid.T have in common here.
type sanityTest interface {
	Fatalf(format string, args ...any)
}

func checkSane(t sanityTest, res *interp.Result) {
	for _, d := range res.Findings {
		src, ok := res.Sources[d.Range.File]
		if !ok || d.Range.Start.Offset > d.Range.End.Offset || d.Range.End.Offset > len(src) || d.Range.Start.Line < 1 {
			t.Fatalf("%s at %+v", d.Code, d.Range)
		}
		if d.Message == "" || misprint(d.Message+" "+d.Detail, res.Sources) != "" {
			t.Fatalf("%s says %q %q", d.Code, d.Message, d.Detail)
		}
	}
	if _, err := json.Marshal(res.Plan); err != nil {
		t.Fatalf("%v", err)
	}
	for _, s := range res.Plan.Shots {
		for _, p := range s.Pulls {
			if p.Chance.Known() && (p.Chance < 0 || p.Chance > 1 || p.Chance > p.Ceiling+1e-9) && p.Ceiling > 0.5 {
				t.Fatalf("shot %s, pull %d: chance %v, ceiling %v", s.ID, p.Number, p.Chance, p.Ceiling)
			}
			if p.Land < p.Start {
				t.Fatalf("shot %s, pull %d lands before it starts", s.ID, p.Number)
			}
		}
	}
}
