// Tests of the parser: the table, the whole plan, values and places.

package lang

import (
	"os"
	"path/filepath"
	"testing"
)

func TestParseInputs(t *testing.T) {
	for _, in := range inputs {
		t.Run(in.name, func(t *testing.T) {
			f, diags := Parse("plan.pull", []byte(in.src))
			for _, d := range diags {
				t.Errorf("%v: %s: %s\n%s%s", d.Range.Start, d.Code, d.Message, Quote(d, f.Source), d.Detail)
			}
			checkPlaces(t, f)
		})
	}
}

func TestParsePlans(t *testing.T) {
	files, err := filepath.Glob("testdata/*.pull")
	if err != nil || len(files) < 2 {
		t.Fatal(files, err)
	}
	for _, name := range files {
		src, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		f, diags := Parse(name, src)
		for _, d := range diags {
			t.Errorf("%s:%v: %s\n%s", name, d.Range.Start, d.Message, Quote(d, src))
		}
		checkPlaces(t, f)
		if got := Format(src); string(got) != string(src) {
			t.Errorf("%s is not in canonical layout:\n%s", name, got)
		}
	}
}
