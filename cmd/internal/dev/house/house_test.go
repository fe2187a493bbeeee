package house

import (
	"bytes"
	"encoding/json"
	"errors"
	"io"
	"os"
	"os/exec"
	"path"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// A listed is what go list says of a package.
type listed struct {
	ImportPath, Dir        string
	GoFiles, Imports, Deps []string
}

func packages(t *testing.T) []listed {
	t.Helper()
	cmd := exec.Command("go", "list", "-json=ImportPath,Dir,GoFiles,Imports,Deps", module+"/...")
	cmd.Stderr = os.Stderr
	out, err := cmd.Output()
	if err != nil {
		t.Fatal(err)
	}
	var list []listed
	for dec := json.NewDecoder(bytes.NewReader(out)); ; {
		var p listed
		if err := dec.Decode(&p); errors.Is(err, io.EOF) {
			break
		} else if err != nil {
			t.Fatal(err)
		}
		list = append(list, p)
	}
	return list
}

func TestImportsGoOneWay(t *testing.T) {
	list := packages(t)
	if len(list) < len(rooms) {
		t.Fatalf("only %d packages are listed", len(list))
	}
	for _, p := range list {
		number, ok := roomOf(p.ImportPath)
		if !ok {
			t.Errorf("%s lies in no room", p.ImportPath)
			continue
		}
		for _, imported := range p.Imports {
			if !rooms[number].allows(imported) {
				t.Errorf("%s imports %s, and %s may not", p.ImportPath, imported, rooms[number].path)
			}
			if n, ours := roomOf(imported); ours && n > number {
				t.Errorf("%s imports %s, whose row stands below its own", p.ImportPath, imported)
			}
		}
		for from, to := range never {
			if within(p.ImportPath, module+"/"+from) && slices.Contains(p.Deps, module+"/"+to) {
				t.Errorf("%s reaches %s by way of others", p.ImportPath, to)
			}
		}
	}
}

// A row says what is imported, not what might be.
func TestNoRowAllowsMoreThanIsUsed(t *testing.T) {
	imports := make([][]string, len(rooms))
	for _, p := range packages(t) {
		if number, ok := roomOf(p.ImportPath); ok {
			imports[number] = append(imports[number], p.Imports...)
		}
	}
	for i, r := range rooms {
		for _, may := range r.may {
			if !slices.ContainsFunc(imports[i], func(pkg string) bool { return covers(may, pkg) }) {
				t.Errorf("%s may import %s, and does not", r.path, may)
			}
		}
	}
}

func TestTheTableForbids(t *testing.T) {
	for from, imported := range map[string]string{
		"pullscore/optics":              "pullscore/lang",
		"pullscore/lang":                "pullscore/interp",
		"pullscore/lang/timecode":       "pullscore/lang",
		"pullscore/lang/testing/chunk":  "pullscore/lang/timecode",
		"pullscore/interp/plan":         "pullscore/interp",
		"pullscore/interp/names":        "pullscore/interp/kit",
		"pullscore/interp/stage":        "pullscore/interp/clock",
		"pullscore/interp/clock":        "pullscore/interp/shot",
		"pullscore/interp/shot":         "pullscore/interp/checks",
		"pullscore/interp/checks":       "pullscore/interp",
		"pullscore/interp":              "pullscore/render",
		"pullscore/render/svg":          "pullscore/lang",
		"pullscore/render/sheet":        "pullscore/interp",
		"pullscore/render/score":        "pullscore/render/floor",
		"pullscore/render/floor":        "pullscore/interp/stops",
		"pullscore/cmd/internal/files":  "pullscore/interp/plan",
		"pullscore/cmd/internal/export": "pullscore/render/sheet",
		"pullscore/lang/format":         "github.com/alecthomas/kong",
		"pullscore/interp/stops":        "pullscore/cmd/internal/files",
		"pullscore/optics/ring":         "golang.org/x/text/cases",
	} {
		number, ok := roomOf(from)
		if !ok || rooms[number].allows(imported) {
			t.Errorf("%s may import %s", from, imported)
		}
	}
	if _, ok := roomOf("pullscore/util"); ok {
		t.Error("a room that the table does not have")
	}
}

// source reads a file of a package.
func source(t *testing.T, p listed, name string) []byte {
	t.Helper()
	text, err := os.ReadFile(filepath.Join(p.Dir, name))
	if err != nil {
		t.Fatal(err)
	}
	return text
}

func TestTopLevel(t *testing.T) {
	entries, err := os.ReadDir(root)
	if err != nil {
		t.Fatal(err)
	}
	ignored, err := os.ReadFile(filepath.Join(root, ".gitignore"))
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range entries {
		name := e.Name()
		if !strings.HasPrefix(name, ".") && !slices.Contains(topLevel, name) && !matches(string(ignored), name) {
			t.Errorf("%s lies at the top level, where it does not belong", name)
		}
	}
	if !slices.ContainsFunc(entries, func(e os.DirEntry) bool { return e.Name() == "go.mod" }) {
		t.Error("this is not the top level")
	}
}

// matches reports whether git ignores a name at the top level.
func matches(patterns, name string) bool {
	for _, p := range strings.Fields(patterns) {
		if ok, err := path.Match(strings.Trim(p, "/"), name); ok && err == nil {
			return true
		}
	}
	return false
}
