// What the tests of all drawings do with pages.

package plans

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"pullscore/render/draw"
	"pullscore/render/svg"
	"pullscore/render/testing/drawtest"
)

// tester is what *testing.T and *rapid.T share.
type tester interface {
	Helper()
	Errorf(string, ...any)
	Fatalf(string, ...any)
}

// CheckPage fails for every fault of a page.
func CheckPage(t tester, name string, p *draw.Page) {
	t.Helper()
	for _, fault := range drawtest.Faults(p) {
		t.Errorf("%s: %s", name, fault)
	}
}

// CheckPaper fails for every fault of the pages of a paper in any viewer, and for what
// breaks the grammar of all papers. subjects are their names in the order of all papers.
func CheckPaper(t tester, name string, subjects []string, pages []*draw.Page) {
	t.Helper()
	for i, p := range pages {
		for _, check := range []func(*draw.Page) []string{drawtest.Strict, drawtest.Signs, drawtest.Units} {
			for _, fault := range check(p) {
				t.Errorf("%s, page %d: %s", name, i+1, fault)
			}
		}
	}
	for _, fault := range drawtest.Order(pages, subjects) {
		t.Errorf("%s: %s", name, fault)
	}
}

// SVGOf returns a page as an SVG file.
func SVGOf(t tester, p *draw.Page) string {
	t.Helper()
	var b bytes.Buffer
	if err := svg.Write(&b, p); err != nil {
		t.Fatalf("%v", err)
	}
	return b.String()
}

// TextOf is all that is written on pages, in the order drawn.
func TextOf(pages []*draw.Page) string {
	var words []string
	for _, p := range pages {
		for it := range p.Root.All() {
			if text, ok := it.(draw.Text); ok {
				words = append(words, text.String)
			}
		}
	}
	return strings.Join(words, " ")
}

// CheckGolden compares pages with their files.
func CheckGolden(t *testing.T, name string, pages []*draw.Page) {
	t.Helper()
	for i, p := range pages {
		file := filepath.Join(top(t), "testdata", "golden", name+suffix(i)+".svg")
		got := SVGOf(t, p)
		if os.Getenv("PULLSCORE_UPDATE") == "1" {
			if err := os.MkdirAll(filepath.Dir(file), 0o755); err != nil {
				t.Fatal(err)
			}
			if err := os.WriteFile(file, []byte(got), 0o644); err != nil {
				t.Fatal(err)
			}
		}
		want, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		if line, ok := firstDifference(got, string(want)); ok {
			t.Errorf("%s differs from line %d on", file, line)
		}
	}
}

// top returns the way up to the top level.
func top(t *testing.T) string {
	t.Helper()
	for up := "."; len(up) < 30; up = filepath.Join(up, "..") {
		if _, err := os.Stat(filepath.Join(up, "go.mod")); err == nil {
			return up
		}
	}
	t.Fatal("no top level above")
	return ""
}

// suffix tells the pages after the first.
func suffix(i int) string {
	if i == 0 {
		return ""
	}
	return "-" + string(rune('1'+i))
}

func firstDifference(a, b string) (line int, differs bool) {
	if a == b {
		return 0, false
	}
	as, bs := strings.Split(a, "\n"), strings.Split(b, "\n")
	for i := range min(len(as), len(bs)) {
		if as[i] != bs[i] {
			return i + 1, true
		}
	}
	return min(len(as), len(bs)) + 1, true
}
