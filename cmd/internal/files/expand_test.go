package files

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

func touch(t *testing.T, path string) {
	t.Helper()
	if err := os.MkdirAll(filepath.Dir(path), 0o777); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(path, []byte("x"), 0o666); err != nil {
		t.Fatal(err)
	}
}

func names(files []File) []string {
	var list []string
	for _, f := range files {
		list = append(list, filepath.ToSlash(f.Path))
	}
	return list
}

func TestExpand(t *testing.T) {
	t.Chdir(t.TempDir())
	for _, p := range []string{"b.pull", "a.pull", "notes.txt", "sub/c.pull", "sub/deep/d.pull", ".hid/e.pull", ".f.pull", "g.pull/h.pull"} {
		touch(t, p)
	}
	os.Symlink("..", "sub/up")                  // a circle
	os.Symlink("self", "self")                  // a link to itself
	os.Symlink("../a.pull", "sub/link.pull")    // a link to a file
	os.Symlink("nowhere.pull", "sub/gone.pull") // a link to nothing
	os.Symlink("sub", "other")                  // a folder elsewhere
	whole := []string{"a.pull", "b.pull", "g.pull/h.pull", "sub/c.pull", "sub/deep/d.pull", "sub/gone.pull", "sub/link.pull"}
	tests := []struct {
		args, want []string
		fault      string
	}{
		{[]string{"."}, whole, ""},
		{[]string{"./"}, whole, ""},
		{[]string{"b.pull", "./b.pull", "."}, append([]string{"b.pull", "a.pull"}, whole[2:]...), ""},
		{[]string{"-", "-"}, []string{"-"}, ""},
		{[]string{"notes.txt"}, []string{"notes.txt"}, ""},
		{[]string{"other"}, []string{"other/c.pull", "other/deep/d.pull", "other/gone.pull", "other/link.pull"}, ""},
		{[]string{"none.pull", "a.pull"}, []string{"a.pull"}, "none.pull: no such file"},
		{[]string{".hid", "."}, append([]string{".hid/e.pull"}, whole...), ""},
		{[]string{""}, nil, "an empty name"},
		{[]string{"self"}, nil, "self: "},
	}
	for _, test := range tests {
		files, err := Expand(test.args)
		if got := names(files); !slices.Equal(got, test.want) {
			t.Errorf("Expand(%q) = %q, want %q", test.args, got, test.want)
		}
		if (err == nil) != (test.fault == "") || err != nil && !strings.Contains(err.Error(), test.fault) {
			t.Errorf("Expand(%q): error %v, want %q", test.args, err, test.fault)
		}
	}
}

func TestExpandOfAnEmptyFolder(t *testing.T) {
	t.Chdir(t.TempDir())
	touch(t, "empty/notes.txt")
	if _, err := Expand([]string{"empty"}); err == nil || !strings.Contains(err.Error(), "no .pull file") {
		t.Errorf("error %v", err)
	}
}

func TestWriteKeepsModeAndLink(t *testing.T) {
	t.Chdir(t.TempDir())
	touch(t, "real.pull")
	os.Chmod("real.pull", 0o640)
	os.Symlink("real.pull", "link.pull")
	if err := Write("link.pull", []byte("new")); err != nil {
		t.Fatal(err)
	}
	if data, _ := os.ReadFile("real.pull"); string(data) != "new" {
		t.Errorf("the file holds %q", data)
	}
	if info, _ := os.Lstat("link.pull"); info.Mode()&os.ModeSymlink == 0 {
		t.Error("the link became a file")
	}
	if info, _ := os.Stat("real.pull"); info.Mode().Perm() != 0o640 {
		t.Errorf("mode %v", info.Mode())
	}
	if list, _ := os.ReadDir("."); len(list) != 2 {
		t.Errorf("left behind: %v", list)
	}
}

func TestWriteRefuses(t *testing.T) {
	t.Chdir(t.TempDir())
	touch(t, "read-only.pull")
	os.Chmod("read-only.pull", 0o444)
	os.Mkdir("folder", 0o777)
	for path, want := range map[string]string{
		"read-only.pull":    "is read-only",
		"folder":            "is a folder",
		"missing/score.svg": "there is no folder missing",
		"read-only.pull/x":  "read-only.pull/x: ",
	} {
		if err := Write(path, []byte("new")); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("Write(%q): error %v, want %q", path, err, want)
		}
	}
	if data, _ := os.ReadFile("read-only.pull"); string(data) != "x" {
		t.Errorf("the read-only file holds %q", data)
	}
}

func TestWriteToADevice(t *testing.T) {
	info, err := os.Stat(os.DevNull)
	if err != nil {
		t.Skip("no null device here")
	}
	if err := Write(os.DevNull, []byte("new")); err != nil {
		t.Fatal(err)
	}
	after, err := os.Stat(os.DevNull)
	if err != nil || after.Mode() != info.Mode() {
		t.Errorf("the device became %v, error %v", after, err)
	}
}
