package house

import (
	"bytes"
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"path"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"unicode"
)

// A paper or a part of the command has a row of its own: its imports are
// exact, and stand for no package beside it.
func TestEveryPaperHasItsRow(t *testing.T) {
	for _, p := range packages(t) {
		own := strings.TrimPrefix(p.ImportPath, module+"/")
		if !strings.HasPrefix(own, "render/") && !strings.HasPrefix(own, "cmd/") {
			continue
		}
		if !slices.ContainsFunc(paperRooms, func(r room) bool { return r.path == own }) {
			t.Errorf("%s has no row of its own", own)
		}
	}
}

// A paper is drawn from a plan. Of the language it knows what needs no tree.
func TestPapersDoNotReachTheLanguage(t *testing.T) {
	leaves := []string{module + "/lang/timecode", module + "/lang/rule"}
	seen := 0
	for _, p := range packages(t) {
		if !within(p.ImportPath, module+"/render") || isTestTool(p.ImportPath) {
			continue
		}
		seen++
		for _, dep := range p.Deps {
			if within(dep, module+"/lang") && !slices.Contains(leaves, dep) {
				t.Errorf("%s reaches %s", p.ImportPath, dep)
			}
		}
	}
	if seen < 12 {
		t.Errorf("only %d packages of render were looked at", seen)
	}
}

// isTestTool reports whether a package serves tests alone.
func isTestTool(pkg string) bool {
	return strings.Contains(pkg+"/", "/testing/") && within(pkg, module)
}

// What serves tests is not in the program. Tools that are not shipped may use
// it to measure with.
func TestTestToolsServeTests(t *testing.T) {
	tools := 0
	for _, p := range packages(t) {
		if isTestTool(p.ImportPath) {
			tools++
			continue
		}
		if within(p.ImportPath, module+"/cmd/internal/dev") {
			continue
		}
		for _, imported := range p.Imports {
			if isTestTool(imported) {
				t.Errorf("%s imports %s outside of its tests", p.ImportPath, imported)
			}
		}
	}
	if tools < 6 {
		t.Errorf("only %d packages of test tools were found", tools)
	}
}

// mostFiles and mostLines are what a room may hold without its tests.
const mostFiles, mostLines = 30, 2500

// A room of interp or render is small enough to be read in an afternoon.
func TestRoomsAreSmall(t *testing.T) {
	for _, p := range packages(t) {
		if !within(p.ImportPath, module+"/render") && !within(p.ImportPath, module+"/interp") {
			continue
		}
		lines := 0
		for _, name := range p.GoFiles {
			lines += bytes.Count(source(t, p, name), []byte("\n"))
		}
		if len(p.GoFiles) > mostFiles || lines > mostLines {
			t.Errorf("%s has %d files and %d lines, most are %d and %d", p.ImportPath, len(p.GoFiles), lines, mostFiles, mostLines)
		}
	}
}

// unexplained are the rooms whose packages need not explain their files yet.
var unexplained = []string{"optics", "lang", "interp/edit", "interp/hand", "interp/plan", "interp/revision", "interp/speech", "interp/stops", "interp/takes", "interp/testing", "interp/units", "interp/viewer", "interp/wording"}

// A package of several files has a doc.go that says what each of them holds.
func TestEveryFileIsExplained(t *testing.T) {
	explained := 0
	for _, p := range packages(t) {
		own := strings.TrimPrefix(p.ImportPath, module+"/")
		if slices.ContainsFunc(unexplained, func(room string) bool { return within(own, room) }) || len(p.GoFiles) < 2 {
			continue
		}
		if !slices.Contains(p.GoFiles, "doc.go") {
			t.Errorf("%s has no doc.go", own)
			continue
		}
		doc := string(source(t, p, "doc.go"))
		words := strings.FieldsFunc(doc, func(r rune) bool { return r != '_' && !unicode.IsLetter(r) && !unicode.IsDigit(r) })
		for _, name := range p.GoFiles {
			if name != "doc.go" && !slices.Contains(words, strings.TrimSuffix(name, ".go")) {
				t.Errorf("%s/doc.go does not say what %s holds", own, name)
			}
		}
		for _, m := range regexp.MustCompile(`(?m)^//   - (\S+\.go): `).FindAllStringSubmatch(doc, -1) {
			if _, err := os.Stat(filepath.Join(p.Dir, m[1])); err != nil {
				t.Errorf("%s/doc.go explains %s, which is not there", own, m[1])
			}
		}
		explained++
	}
	if explained < 20 {
		t.Errorf("only %d packages were looked at", explained)
	}
}

// longest is how many lines a function may have.
const longest = 60

// A function has no more lines than one sees at once.
func TestNoFunctionIsLong(t *testing.T) {
	seen := 0
	for _, p := range packages(t) {
		for _, name := range p.GoFiles {
			set := token.NewFileSet()
			file, err := parser.ParseFile(set, filepath.Join(p.Dir, name), nil, parser.SkipObjectResolution)
			if err != nil {
				t.Fatal(err)
			}
			for _, d := range file.Decls {
				f, ok := d.(*ast.FuncDecl)
				if !ok {
					continue
				}
				seen++
				if lines := set.Position(f.End()).Line - set.Position(f.Pos()).Line + 1; lines > longest {
					t.Errorf("%s/%s: %s has %d lines", p.ImportPath, name, f.Name.Name, lines)
				}
			}
		}
	}
	if seen < 1000 {
		t.Errorf("only %d functions were looked at", seen)
	}
}

// root is the top of the repository.
var root = filepath.Join("..", "..", "..", "..")

// A path in DEVELOPERS.md leads somewhere: whoever follows a recipe finds what
// it names. NAME stands for whatever is added.
func TestPathsInTheGuideExist(t *testing.T) {
	guide, err := os.ReadFile(filepath.Join(root, "DEVELOPERS.md"))
	if err != nil {
		t.Fatal(err)
	}
	paths := 0
	for _, m := range regexp.MustCompile("`([^`\n]+)`").FindAllStringSubmatch(string(guide), -1) {
		for _, word := range strings.Fields(m[1]) {
			named := strings.TrimSuffix(strings.TrimPrefix(word, "./"), "/")
			first, _, _ := strings.Cut(named, "/")
			if !strings.Contains(word, "/") || !slices.Contains(topLevel, first) && first != ".ci" {
				continue
			}
			paths++
			if !leadsSomewhere(named) {
				t.Errorf("DEVELOPERS.md names %s, which is not there", word)
			}
		}
	}
	if paths < 40 {
		t.Errorf("only %d paths were found", paths)
	}
}

// leadsSomewhere reports whether a path exists; where it holds NAME, whether
// anything exists that it may stand for.
func leadsSomewhere(named string) bool {
	found, err := filepath.Glob(filepath.Join(root, strings.ReplaceAll(path.Clean(named), "NAME", "*")))
	return err == nil && len(found) > 0
}
