package editors

import (
	"archive/zip"
	"bytes"
	"encoding/json"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"sync"
	"testing"

	"pullscore/lang"
)

// readJSON reads a file of the extension.
func readJSON(t *testing.T, name string, into any) {
	t.Helper()
	if err := json.Unmarshal(read(t, filepath.Join("vscode", filepath.FromSlash(name))), into); err != nil {
		t.Fatalf("%s: %v", name, err)
	}
}

// program builds pullscore, once for all tests.
var program = sync.OnceValues(func() (string, error) {
	folder, err := os.MkdirTemp("", "pullscore-editors")
	if err != nil {
		return "", err
	}
	path := filepath.Join(folder, "pullscore")
	built = folder
	cmd := exec.Command("go", "build", "-o", path, "pullscore/cmd/pullscore")
	cmd.Stderr = os.Stderr
	return path, cmd.Run()
})

// built is the folder that the program was built into.
var built string

func TestMain(m *testing.M) {
	code := m.Run()
	if built != "" {
		os.RemoveAll(built)
	}
	os.Exit(code)
}

func pullscore(t *testing.T) string {
	t.Helper()
	path, err := program()
	if err != nil {
		t.Fatal(err)
	}
	return path
}

// faulty is a plan with a warning and a mistake, and a line that is not laid out.
const faulty = `plan "The kettle"
use "kit.pull"
rate 24
subject HALDIS   at 1.7 m
subject KETTLE at 1.1 m
voice PEVIN

shot 9A "The kettle"
  with camera A, lens "75", stop f/2.8
  start on HALDIS
  HALDIS: "We leave with the tide."
  PEVIN: "Then who put the kettle on?"
  rack to KETTLE, landing on "kettle", over 0.9 s
  rack to HALDIS, because "he asks", over 1,2 s
`

// faultyPlan writes the faulty plan and its kit into a folder of their own.
func faultyPlan(t *testing.T) (path string) {
	t.Helper()
	folder, err := filepath.EvalSymlinks(t.TempDir())
	if err != nil {
		t.Fatal(err)
	}
	path = filepath.Join(folder, "kettle plan.pull")
	for name, text := range map[string][]byte{path: []byte(faulty), filepath.Join(folder, "kit.pull"): read(t, filepath.Join("..", "..", "examples", "kit.pull"))} {
		if err := os.WriteFile(name, text, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	return path
}

// TestProblemMatcher checks that the pattern of the extension reads the findings as
// check prints them.
func TestProblemMatcher(t *testing.T) {
	var manifest struct {
		Contributes struct {
			ProblemPatterns []struct{ Regexp string }
		}
	}
	readJSON(t, "package.json", &manifest)
	pattern := regexp.MustCompile(manifest.Contributes.ProblemPatterns[0].Regexp)
	plan := faultyPlan(t)
	out, _ := exec.Command(pullscore(t), "check", plan).Output() // it fails: there are findings
	var got []string
	for line := range strings.Lines(string(out)) {
		if m := pattern.FindStringSubmatch(strings.TrimSuffix(line, "\n")); m != nil {
			if m[1] != plan {
				t.Errorf("the file is %q", m[1])
			}
			got = append(got, strings.Join([]string{m[2], m[3], m[4], m[6]}, " "))
		}
	}
	if want := []string{"14 43 error bad-number", "13 3 warning hard-to-land"}; !slices.Equal(got, want) {
		t.Errorf("findings %q, want %q, from\n%s", got, want, out)
	}
}

// TestManifest checks that the extension names files that are there, and that the lock
// file fits it and names no server.
func TestManifest(t *testing.T) {
	text := string(read(t, filepath.Join("vscode", "package.json")))
	paths := regexp.MustCompile(`"\./([^"]+)"`).FindAllStringSubmatch(text, -1)
	if len(paths) < 4 {
		t.Errorf("only %d files are named", len(paths))
	}
	for _, m := range paths {
		if _, err := os.Stat(filepath.Join("vscode", filepath.FromSlash(m[1]))); err != nil && m[1] != "dist/extension.js" {
			t.Errorf("package.json names %s: %v", m[1], err)
		}
	}
	type names map[string]string
	var manifest struct{ DevDependencies names }
	readJSON(t, "package.json", &manifest)
	var lock struct {
		Packages map[string]struct {
			Resolved, Integrity string
			DevDependencies     names
		}
	}
	readJSON(t, "package-lock.json", &lock)
	for name, version := range manifest.DevDependencies {
		if lock.Packages[""].DevDependencies[name] != version {
			t.Errorf("the lock file has %s %s, package.json %s", name, lock.Packages[""].DevDependencies[name], version)
		}
		if !regexp.MustCompile(`^\d+\.\d+\.\d+$`).MatchString(version) {
			t.Errorf("%s has no exact version: %s", name, version)
		}
	}
	for name, p := range lock.Packages {
		if p.Resolved != "" || name != "" && p.Integrity == "" {
			t.Errorf("the lock file says of %s resolved %q, integrity %q", name, p.Resolved, p.Integrity)
		}
	}
	var configuration any
	readJSON(t, "language-configuration.json", &configuration)
}

// TestSnippets checks that what the snippets write can be read, and is laid out.
func TestSnippets(t *testing.T) {
	var snippets map[string]struct{ Body []string }
	readJSON(t, "snippets/pull.json", &snippets)
	choice := regexp.MustCompile(`\$\{\d+\|([^,|]+)[^}]*\}`)
	place := regexp.MustCompile(`\$\{\d+:([^}]*)\}|\$\d`)
	for _, name := range []string{"rack", "shot", "lens", "scene"} {
		body := snippets[name].Body
		text := place.ReplaceAllString(choice.ReplaceAllString(strings.Join(body, "\n"), "$1"), "$1")
		text = strings.TrimRight(text, "\n") + "\n"
		if name == "rack" {
			text = "shot 1\n  " + text
		}
		if _, diagnostics := lang.Parse(name, []byte(text)); len(body) == 0 || len(diagnostics) > 0 {
			t.Errorf("%s: %d lines, %v in\n%s", name, len(body), diagnostics, text)
		}
		if laidOut := string(lang.Format([]byte(text))); laidOut != text {
			t.Errorf("%s is laid out as\n%s", name, laidOut)
		}
	}
}

// TestExtension packages the extension without a network, and runs it in a stand-in for
// its host: with the program, and without it.
func TestExtension(t *testing.T) {
	packages := os.Getenv("PULLSCORE_VSCODE")
	if packages == "" {
		t.Skip("skipped: set PULLSCORE_VSCODE to a folder with the npm packages of cmd/editors/vscode")
	}
	folder := t.TempDir()
	if err := os.CopyFS(folder, os.DirFS("vscode")); err != nil {
		t.Fatal(err)
	}
	os.RemoveAll(filepath.Join(folder, "node_modules")) // those of somebody who works on it
	modules, err := filepath.Abs(filepath.Join(packages, "node_modules"))
	if err != nil {
		t.Fatal(err)
	}
	if err := os.Symlink(modules, filepath.Join(folder, "node_modules")); err != nil {
		t.Fatal(err)
	}
	npm := exec.Command("npm", "run", "package")
	npm.Dir = folder
	npm.Env = append(os.Environ(), "npm_config_offline=true")
	if out, err := npm.CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	checkPackage(t, filepath.Join(folder, "pullscore.vsix"))

	plan := faultyPlan(t)
	const tasks = `"tasks":[["Check all plans","check","$pullscore"]]`
	for _, c := range []struct{ program, want string }{
		{pullscore(t), `"edits":[[4,"subject HALDIS at 1.7 m\n"]],"messages":[],"terminals":[],"pages":["127.0.0.1"],` + tasks},
		{"no-such-program", `"findings":[],"edits":[],"messages":["Pullscore: the program ` + "`no-such-program`" + ` did not start. In a copy of its repository, run: go install ./cmd/pullscore. Or set pullscore.path."],"terminals":[["watch","--open"]],"pages":[],` + tasks},
	} {
		cmd := exec.Command("node", "testdata/host.cjs", filepath.Join(folder, "dist", "extension.js"), c.program, plan)
		cmd.Stderr = os.Stderr
		out, err := cmd.Output()
		if err != nil {
			t.Fatal(err)
		}
		if !bytes.Contains(out, []byte(c.want)) {
			t.Errorf("with %s: %swithout %s", c.program, out, c.want)
		}
		for _, finding := range []string{`[13,1,"hard-to-land"`, `[14,0,"bad-number"`} {
			if bytes.Contains(out, []byte(finding)) != (c.program != "no-such-program") {
				t.Errorf("with %s: %s, looking for %s", c.program, out, finding)
			}
		}
	}
}

// checkPackage checks what is in a .vsix.
func checkPackage(t *testing.T, path string) {
	t.Helper()
	r, err := zip.OpenReader(path)
	if err != nil {
		t.Fatal(err)
	}
	defer r.Close()
	var names []string
	for _, f := range r.File {
		names = append(names, strings.TrimPrefix(f.Name, "extension/"))
	}
	slices.Sort(names)
	want := []string{"[Content_Types].xml", "dist/extension.js", "extension.vsixmanifest", "language-configuration.json", "package.json", "readme.md", "snippets/pull.json", "syntaxes/pull.tmLanguage.json"}
	if !slices.Equal(names, want) {
		t.Errorf("the package holds %q, want %q", names, want)
	}
}
