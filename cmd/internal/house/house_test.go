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
	ImportPath    string
	Imports, Deps []string
}

func packages(t *testing.T) []listed {
	t.Helper()
	cmd := exec.Command("go", "list", "-json=ImportPath,Imports,Deps", module+"/...")
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
		r, ok := roomOf(p.ImportPath)
		if !ok {
			t.Errorf("%s lies in no room", p.ImportPath)
			continue
		}
		for _, imported := range p.Imports {
			if !r.allows(imported) {
				t.Errorf("%s imports %s, and %s may not", p.ImportPath, imported, r.path)
			}
		}
		for from, to := range never {
			if within(p.ImportPath, module+"/"+from) && slices.Contains(p.Deps, module+"/"+to) {
				t.Errorf("%s reaches %s by way of others", p.ImportPath, to)
			}
		}
	}
}

func TestTheTableForbids(t *testing.T) {
	for from, imported := range map[string]string{
		"pullscore/optics":        "pullscore/lang",
		"pullscore/lang":          "pullscore/interp",
		"pullscore/lang/timecode": "pullscore/lang",
		"pullscore/interp/plan":   "pullscore/interp",
		"pullscore/interp":        "pullscore/render",
		"pullscore/render/svg":    "pullscore/lang",
		"pullscore/render":        "pullscore/interp",
		"pullscore/lang/format":   "github.com/alecthomas/kong",
		"pullscore/interp/stops":  "pullscore/cmd/internal/paths",
		"pullscore/optics/ring":   "golang.org/x/text/cases",
	} {
		r, ok := roomOf(from)
		if !ok || r.allows(imported) {
			t.Errorf("%s may import %s", from, imported)
		}
	}
	if _, ok := roomOf("pullscore/util"); ok {
		t.Error("a room that the table does not have")
	}
}

func TestTopLevel(t *testing.T) {
	root := filepath.Join("..", "..", "..")
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
