package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"pullscore/lang"
)

// The topics that tell how to measure a lens print their text word for word.
func TestTopicsWordForWord(t *testing.T) {
	texts, err := filepath.Glob("testdata/help/*.txt")
	if err != nil || len(texts) != 3 {
		t.Fatal(texts, err)
	}
	for _, path := range texts {
		want, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		name := strings.TrimSuffix(filepath.Base(path), ".txt")
		var out, errs bytes.Buffer
		if code := run([]string{"help", name}, strings.NewReader(""), &out, &errs); code != exitFine || errs.Len() > 0 {
			t.Errorf("help %s ends with %d: %s", name, code, &errs)
		}
		rest, ok := strings.CutPrefix(out.String(), string(want))
		if !ok || rest != "" && rest[0] != '\n' {
			t.Errorf("help %s prints\n%s\nwant\n%s", name, &out, want)
		}
	}
}

// What new writes is laid out, and its comments that hold statements can be uncommented.
func TestStarters(t *testing.T) {
	for _, f := range starters() {
		if got := string(lang.Format([]byte(f.text))); got != f.text {
			t.Errorf("fmt makes of %s\n%s", f.name, got)
		}
		text := f.text
		for _, statement := range []string{"ring", "turns", "mark"} {
			text = strings.ReplaceAll(text, "\n  # "+statement+" ", "\n  "+statement+" ")
		}
		if f.name == "kit.pull" && strings.Count(text, "#") != strings.Count(f.text, "#")-4 {
			t.Errorf("%s should hold four lines to uncomment", f.name)
		}
		if _, diags := lang.Parse(f.name, []byte(text)); len(diags) > 0 {
			t.Errorf("%s: %s", f.name, diags[0].Message)
		}
	}
}

func TestNew(t *testing.T) {
	t.Chdir(t.TempDir())
	call := func(want int, args ...string) (out, errs string) {
		t.Helper()
		var o, e bytes.Buffer
		if code := run(args, strings.NewReader(""), &o, &e); code != want {
			t.Errorf("%v ends with %d: %s%s", args, code, &o, &e)
		}
		return o.String(), e.String()
	}
	read := func(path string) string {
		text, _ := os.ReadFile(path)
		return string(text)
	}
	const said = "kit.pull, scene-1.pull written. Next: pullscore check scene-1.pull, then put your lens into kit.pull: pullscore help throw\n"
	if out, _ := call(exitFine, "new"); out != said {
		t.Errorf("new says %q", out)
	}
	if read("kit.pull") != starterKit || read("scene-1.pull") != starterScene {
		t.Error("the files are not the starters")
	}
	if out, errs := call(exitFine, "check", "."); strings.Contains(out, "error") || errs != "" {
		t.Errorf("check says\n%s%s", out, errs)
	}
	if _, errs := call(exitFindings, "new"); errs != "kit.pull is there already\n" {
		t.Errorf("a second time it says %q", errs)
	}
	call(exitFine, "new", filepath.Join("galley", "fore"))
	call(exitFine, "check", "galley")
	// A file that is there is not touched, and nothing is written beside it.
	if err := os.Mkdir("aft", 0o777); err != nil {
		t.Fatal(err)
	}
	mine := filepath.Join("aft", "scene-1.pull")
	if err := os.WriteFile(mine, []byte("mine"), 0o666); err != nil {
		t.Fatal(err)
	}
	call(exitFindings, "new", "aft")
	if read(mine) != "mine" || read(filepath.Join("aft", "kit.pull")) != "" {
		t.Error("new touched a folder that has a scene")
	}
	call(exitFailed, "new", filepath.Join("kit.pull", "below"))
}
