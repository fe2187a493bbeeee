package states

import (
	"errors"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"testing"
)

// repository makes a repository with two commits in a folder of its own, and
// goes there; it lies beside a file that is not in it.
func repository(t *testing.T) {
	t.Helper()
	if _, err := exec.LookPath("git"); err != nil {
		t.Skip("there is no git")
	}
	dir := t.TempDir()
	t.Setenv("GIT_CONFIG_GLOBAL", os.DevNull)
	t.Setenv("GIT_CONFIG_SYSTEM", os.DevNull)
	for _, who := range []string{"AUTHOR", "COMMITTER"} {
		t.Setenv("GIT_"+who+"_NAME", "Crew")
		t.Setenv("GIT_"+who+"_EMAIL", "crew@example.org")
	}
	write(t, filepath.Join(dir, "outside.pull"), "outside")
	root := filepath.Join(dir, "the film ’27")
	write(t, filepath.Join(root, "kit.pull"), "old kit")
	write(t, filepath.Join(root, "scenes", "öl\tand \"water\".pull"), "odd")
	write(t, filepath.Join(root, "scenes", ".hidden", "x.pull"), "hidden")
	link(t, "../kit.pull", filepath.Join(root, "scenes", "kit.pull"))
	link(t, "../../outside.pull", filepath.Join(root, "scenes", "out.pull"))
	link(t, "round.pull", filepath.Join(root, "scenes", "round.pull"))
	link(t, "scenes", filepath.Join(root, "linked"))
	t.Chdir(root)
	for _, args := range [][]string{{"init", "-q"}, {"add", "."}, {"commit", "-q", "-m", "one"}} {
		if out, err := exec.Command("git", args...).CombinedOutput(); err != nil {
			t.Fatalf("git %q: %v\n%s", args, err, out)
		}
	}
	write(t, filepath.Join(root, "kit.pull"), "new kit")
}

func write(t *testing.T, path, text string) {
	t.Helper()
	if err := os.MkdirAll(filepath.Dir(path), 0o777); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(path, []byte(text), 0o666); err != nil {
		t.Fatal(err)
	}
}

func link(t *testing.T, to, path string) {
	t.Helper()
	if err := os.Symlink(to, path); err != nil {
		t.Skipf("there are no links here: %v", err)
	}
}

func TestReadFile(t *testing.T) {
	repository(t)
	tree, err := Open("HEAD")
	if err != nil {
		t.Fatal(err)
	}
	here, err := os.Getwd()
	if err != nil {
		t.Fatal(err)
	}
	for path, want := range map[string]string{
		"kit.pull":                      "old kit",
		"./scenes/../kit.pull":          "old kit",
		filepath.Join(here, "kit.pull"): "old kit",
		"scenes/öl\tand \"water\".pull": "odd",
		"scenes/kit.pull":               "old kit", // by a link
		"linked/kit.pull":               "old kit", // by a link to its folder, and then another
		"../outside.pull":               "outside", // not in the repository: as it is
	} {
		if got, err := tree.ReadFile(filepath.FromSlash(path)); err != nil || string(got) != want {
			t.Errorf("%s: %q, %v, want %q", path, got, err, want)
		}
	}
	if _, err := tree.ReadFile("scenes/none.pull"); !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("a file that is not there: %v", err)
	}
	for _, path := range []string{"linked/none.pull", "scenes/kit.pull/none.pull", "kit.pull/none.pull", "linked"} {
		if got, err := tree.ReadFile(path); !errors.Is(err, fs.ErrNotExist) {
			t.Errorf("%s, which is not there: %q, %v", path, got, err)
		}
	}
	for _, path := range []string{"scenes/out.pull", "scenes/round.pull"} {
		if got, err := tree.ReadFile(path); err == nil {
			t.Errorf("%s leads to %q", path, got)
		}
	}
}

func TestPathAndBelow(t *testing.T) {
	repository(t)
	t.Chdir("scenes")
	tree, err := Open("HEAD")
	if err != nil {
		t.Fatal(err)
	}
	for name, want := range map[string]string{
		"kit.pull": "../kit.pull", "scenes/kit.pull": "kit.pull", "./kit.pull": "kit.pull", "../kit.pull": "../kit.pull", "": "..", "./": ".", ".": ".",
	} {
		if got := filepath.ToSlash(tree.Path(name)); got != want {
			t.Errorf("Path(%q) = %q, want %q", name, got, want)
		}
	}
	here, err := os.Getwd()
	if err != nil {
		t.Fatal(err)
	}
	if got := tree.Path(filepath.Join(here, "kit.pull")); got != "kit.pull" {
		t.Errorf("from the root of the system: %q", got)
	}
	beside := filepath.Join(t.TempDir(), "beside")
	link(t, here, beside)
	if got := tree.Path(filepath.Join(beside, "kit.pull")); got != "kit.pull" {
		t.Errorf("by a link from elsewhere: %q", got)
	}
	got := tree.Below(tree.Path("./"))
	slices.Sort(got)
	if want := []string{"kit.pull", "out.pull", "round.pull", "öl\tand \"water\".pull"}; !slices.Equal(got, want) {
		t.Errorf("below: %q, want %q", got, want)
	}
	if !tree.IsFolder("..") || tree.IsFolder("kit.pull") || tree.IsFolder("../..") || !tree.Has("../kit.pull") || tree.Has("none") || tree.Has("..") {
		t.Error("a folder is taken for none, or something else for one")
	}
	tracked, err := Tracked("*.pull")
	if err != nil || !slices.Contains(tracked, "../kit.pull") || !slices.Contains(tracked, "öl\tand \"water\".pull") {
		t.Errorf("tracked: %q, %v", tracked, err)
	}
}

func TestOpenWhatIsNotThere(t *testing.T) {
	repository(t)
	for _, revision := range []string{"", "NONE", "--all", "HEAD~7", "HEAD:kit.pull"} {
		if _, err := Open(revision); err == nil {
			t.Errorf("revision %q is opened", revision)
		}
	}
	t.Chdir(t.TempDir())
	if _, err := Open("HEAD"); err == nil {
		t.Error("a folder without a repository is opened")
	}
}

func TestSplit(t *testing.T) {
	t.Chdir(t.TempDir())
	write(t, "HEAD:x", "a file of that name")
	for _, test := range []struct {
		arg, revision, name string
		ok                  bool
	}{
		{"HEAD:a.pull", "HEAD", "a.pull", true}, {"v1.2:", "v1.2", "", true}, {":a", "", "a", true}, {"a.pull", "", "", false},
		{"HEAD:x", "", "", false}, {"HEAD~2:a:b", "HEAD~2", "a:b", true},
		{"HEAD@{10:00}:a.pull", "HEAD@{10:00}", "a.pull", true}, {"HEAD@{10:00}", "", "", false}, {"v1}:a{b", "v1}", "a{b", true},
	} {
		revision, name, ok := Split(test.arg)
		if ok != test.ok || ok && (revision != test.revision || name != test.name) {
			t.Errorf("Split(%q) = %q, %q, %v", test.arg, revision, name, ok)
		}
	}
}
