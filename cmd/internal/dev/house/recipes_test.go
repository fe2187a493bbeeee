package house

import (
	"encoding/json"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

// built follows a recipe of DEVELOPERS.md and returns the program that comes of
// it: files are added, and rows are put into tables behind the text that is
// named. The repository is not written to.
func built(t *testing.T, added map[string]string, rows map[string][2]string) string {
	t.Helper()
	dir := t.TempDir()
	replace := map[string]string{}
	put := func(name, text string) {
		target, err := filepath.Abs(filepath.Join(root, name))
		if err != nil {
			t.Fatal(err)
		}
		file := filepath.Join(dir, strings.ReplaceAll(name, "/", "_"))
		if err := os.WriteFile(file, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
		replace[target] = file
	}
	for name, text := range added {
		put(name, text)
	}
	for name, row := range rows {
		text, err := os.ReadFile(filepath.Join(root, name))
		if err != nil {
			t.Fatal(err)
		}
		with := string(text)
		for behind, line := range map[string]string{row[0]: row[1], "import (\n": importOf(added)} {
			if !strings.Contains(with, behind) {
				t.Fatalf("%s has no %q", name, behind)
			}
			with = strings.Replace(with, behind, behind+line, 1)
		}
		put(name, with)
	}
	overlay, err := json.Marshal(map[string]any{"Replace": replace})
	if err != nil {
		t.Fatal(err)
	}
	list := filepath.Join(dir, "overlay.json")
	if err := os.WriteFile(list, overlay, 0o600); err != nil {
		t.Fatal(err)
	}
	program := filepath.Join(dir, "pullscore.exe")
	build := exec.Command("go", "build", "-overlay", list, "-o", program, module+"/cmd/pullscore")
	if out, err := build.CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	return program
}

// importOf returns the import of a paper that was added; nothing for a file of
// a package that is there.
func importOf(added map[string]string) string {
	for name := range added {
		if dir := filepath.ToSlash(filepath.Dir(name)); strings.HasPrefix(dir, "render/") {
			return "\t\"" + module + "/" + dir + "\"\n"
		}
	}
	return ""
}

// printed runs a program and returns what it prints.
func printed(t *testing.T, program string, args ...string) string {
	t.Helper()
	out, err := exec.Command(program, args...).CombinedOutput()
	if err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	return string(out)
}

// A drawing is one function and one row: then the flag takes it, the help names
// it, and every back end writes it.
func TestRecipeOfADrawing(t *testing.T) {
	if testing.Short() {
		t.Skip("builds the program")
	}
	program := built(t, map[string]string{"render/slate/slate.go": `// Package slate draws the name of a shot.
package slate

import (
	"pullscore/interp/plan"
	"pullscore/render/draw"
	"pullscore/render/sheet"
)

// Slate draws the name of a shot over a sheet.
func Slate(s *plan.Shot, opt sheet.Options) []*draw.Page {
	h := sheet.NewHandout(s, opt, "slate", "The name of the shot.")
	h.Say("Shot "+s.ID, sheet.FontTitle, draw.Black)
	return h.Pages()
}
`}, map[string][2]string{"cmd/pullscore/drawings.go": {"drawStops, \"the window of stops: what lands and is seen at which\"},\n", "\t{\"slate\", fromShot(slate.Slate), \"the name of the shot\"},\n"}})
	example := filepath.Join(root, "examples", "zoom.pull")
	help := printed(t, program, "draw", "--help")
	if words := strings.Join(strings.Fields(help), " "); !strings.Contains(words, " slate the name of the shot ") || !strings.Contains(words, "stops, slate, ") {
		t.Errorf("the help does not name it:\n%s", help)
	}
	dir := t.TempDir()
	for _, form := range []string{"svg", "pdf", "png"} {
		if name := printed(t, program, "draw", "--drawing", "slate", "--as", form, "-o", dir, example); !strings.Contains(name, "-slate."+form) {
			t.Errorf("as %s: %q", form, name)
		}
	}
}

// An exporter is one function and one row.
func TestRecipeOfAnExporter(t *testing.T) {
	if testing.Short() {
		t.Skip("builds the program")
	}
	program := built(t, map[string]string{"cmd/internal/export/names.go": `package export

import (
	"fmt"
	"io"

	"pullscore/interp/plan"
)

// Names writes the names of the shots.
func Names(w io.Writer, p *plan.Plan) error {
	for _, s := range p.Shots {
		if _, err := fmt.Fprintln(w, "shot", s.ID); err != nil {
			return err
		}
	}
	return nil
}
`}, map[string][2]string{"cmd/internal/export/forms.go": {"return []Form{\n", "\t\t{Name: \"names\", Ending: \"txt\", Plan: Names, Help: \"the names of the shots\"},\n"}})
	if help := printed(t, program, "export", "--help"); !strings.Contains(help, "  names         the names of the shots\n") || !strings.Contains(help, "--as=names|otio") {
		t.Errorf("the help does not name it:\n%s", help)
	}
	if out := printed(t, program, "export", "--as", "names", "-o", "-", filepath.Join(root, "examples", "zoom.pull")); !strings.HasPrefix(out, "shot ") {
		t.Errorf("it writes %q", out)
	}
}
