package house

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// unitAlone is a text that a number is joined to, or a form with a number and
// its unit.
var unitAlone = regexp.MustCompile(`^( cm| deg| %|°|′|″)([^a-z]|$)|%[-+.0-9]*[sdvfg]( cm\b| deg\b| %%|°|′|″)`)

// ownUnits are the files that may have units of their own, and why.
var ownUnits = map[string]string{
	"optics/":                              "lies below interp/units; its errors are put into words by their readers",
	"interp/takes/":                        "reads what logs write",
	"render/marks/engraved.go":             "sets the marks of a lens as the kit writes them",
	"cmd/pullscore/watch_log.go":           "looks for a chance in a text",
	"cmd/internal/lists/takes.go":          "errors of takes, in columns with a sign and two decimals",
	"cmd/internal/lists/takes_recorded.go": "the same",
	"cmd/internal/lists/takes_used.go":     "the same",
	"render/takes/":                        "the scales of these errors",
	"cmd/internal/testing/film/":           "writes plans",
}

// Numbers are put into words by interp/units alone.
func TestUnitsAreWrittenOnce(t *testing.T) {
	root := filepath.Join("..", "..", "..", "..")
	seen, used := 0, map[string]bool{}
	err := filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
			return err
		}
		rel, err := filepath.Rel(root, path)
		if err != nil {
			return err
		}
		rel = filepath.ToSlash(rel)
		if strings.HasPrefix(rel, "interp/units/") || strings.HasPrefix(rel, "lang/") {
			return nil
		}
		seen++
		set := token.NewFileSet()
		file, err := parser.ParseFile(set, path, nil, 0)
		if err != nil {
			return err
		}
		ast.Inspect(file, func(n ast.Node) bool {
			lit, ok := n.(*ast.BasicLit)
			if !ok || lit.Kind != token.STRING {
				return true
			}
			text, err := strconv.Unquote(lit.Value)
			if err != nil || !unitAlone.MatchString(text) {
				return true
			}
			for own := range ownUnits {
				if strings.HasPrefix(rel, own) {
					used[own] = true
					return true
				}
			}
			t.Errorf("%s: %s writes a unit: interp/units does", set.Position(lit.Pos()), lit.Value)
			return true
		})
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	if seen < 200 {
		t.Errorf("only %d files were looked at", seen)
	}
	for own := range ownUnits {
		if !used[own] {
			t.Errorf("%s has no unit of its own any more: strike it from the list", own)
		}
	}
}
