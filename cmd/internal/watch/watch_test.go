package watch

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"testing"
	"time"

	"pullscore/cmd/internal/testing/savestyle"
)

// tooLong is when a test gives up on a look that does not come.
const tooLong = 20 * time.Second

// listen returns a watcher that only events can wake: its net is out of reach.
func listen(t *testing.T, files, folders []string) *Watcher {
	t.Helper()
	w := New(Options{})
	t.Cleanup(func() { w.Close() })
	if w.events == nil {
		t.Fatal(w.Trouble())
	}
	w.net = time.Hour
	w.Watch(files, folders)
	if look := next(t, w); !look.All {
		t.Fatalf("the look after Watch: %+v", look)
	}
	return w
}

func next(t *testing.T, w *Watcher) Look {
	t.Helper()
	ctx, cancel := context.WithTimeout(context.Background(), tooLong)
	defer cancel()
	look, err := w.Next(ctx)
	if err != nil {
		t.Fatal("no look came")
	}
	return look
}

// holding takes looks until the file holds the data, and one of them was about
// it.
func holding(t *testing.T, w *Watcher, file string, data []byte) {
	t.Helper()
	for {
		look := next(t, w)
		if !look.All && !slices.Contains(look.Files, file) {
			continue
		}
		if got, _ := os.ReadFile(file); bytes.Equal(got, data) {
			return
		}
	}
}

func write(t *testing.T, path, data string) {
	t.Helper()
	if err := os.MkdirAll(filepath.Dir(path), 0o777); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(path, []byte(data), 0o666); err != nil {
		t.Fatal(err)
	}
}

func TestStylesOfSaving(t *testing.T) {
	for _, style := range savestyle.All {
		t.Run(style.Name, func(t *testing.T) {
			dir := filepath.Join(t.TempDir(), "plans")
			if err := os.Mkdir(dir, 0o777); err != nil {
				t.Fatal(err)
			}
			if err := style.Prepare(dir, "a.pull", []byte("0")); err != nil {
				t.Skip(err) // a system without links
			}
			file := filepath.Join(dir, "a.pull")
			w := listen(t, []string{file}, nil)
			for n := 1; n <= 20; n++ {
				data := []byte(strings.Repeat(fmt.Sprintf("%d ", n), 1000))
				if err := style.Save(dir, "a.pull", data, n); err != nil {
					t.Fatal(err)
				}
				holding(t, w, file, data)
			}
		})
	}
}

// What is saved beside the file is no reason to look, however much it is, nor
// are changed times and permissions of the file itself.
func TestWhatIsNoReasonToLook(t *testing.T) {
	dir := t.TempDir()
	file, other := filepath.Join(dir, "a.pull"), filepath.Join(dir, "b.pull")
	write(t, file, "a")
	write(t, other, "b")
	w := listen(t, []string{file, other}, nil)
	for n := range 3000 {
		write(t, filepath.Join(dir, fmt.Sprintf("%d.svg", n)), "x")
	}
	now := time.Now()
	if err := errors.Join(os.Chtimes(file, now, now), os.Chmod(file, 0o600)); err != nil {
		t.Fatal(err)
	}
	write(t, other, "c")
	if look := next(t, w); look.All || !slices.Equal(look.Files, []string{other}) {
		t.Errorf("look: %+v", look)
	}
}

// More events than the system keeps mean a look at everything.
func TestLostEvents(t *testing.T) {
	if runtime.GOOS != "linux" {
		t.Skip("the size of the system's queue is known on Linux only")
	}
	size := 0
	text, err := os.ReadFile("/proc/sys/fs/inotify/max_queued_events")
	if err == nil {
		_, err = fmt.Sscan(string(text), &size)
	}
	if err != nil || size > 1<<16 {
		t.Skip("the system's queue cannot be filled: ", size, err)
	}
	dir := t.TempDir()
	file := filepath.Join(dir, "a.pull")
	write(t, file, "a")
	w := listen(t, []string{file}, nil)
	var pair [2]*os.File // by turns, since the same event twice counts once
	for i := range pair {
		if pair[i], err = os.Create(filepath.Join(dir, fmt.Sprint(i))); err != nil {
			t.Fatal(err)
		}
		defer pair[i].Close()
	}
	for i := range 2*size + 4096 { // some are taken out meanwhile
		if _, err := pair[i%2].WriteAt([]byte("x"), 0); err != nil {
			t.Fatal(err)
		}
	}
	for !next(t, w).All {
	}
}

func TestFilesToCome(t *testing.T) {
	root := t.TempDir()
	file := filepath.Join(root, "a", "b", "c.pull")
	w := listen(t, []string{file}, nil)
	write(t, file, "1")
	holding(t, w, file, []byte("1"))
	write(t, file, "2")
	holding(t, w, file, []byte("2"))
	if err := os.RemoveAll(filepath.Join(root, "a")); err != nil {
		t.Fatal(err)
	}
	for {
		next(t, w)
		if _, err := os.Stat(file); errors.Is(err, fs.ErrNotExist) {
			break
		}
	}
	write(t, file, "3")
	holding(t, w, file, []byte("3"))
}

func TestPlansToCome(t *testing.T) {
	root := t.TempDir()
	w := listen(t, nil, []string{root})
	write(t, filepath.Join(root, "reel", "drawing.svg"), "x")
	if look := next(t, w); !look.Folders { // of the new folder
		t.Errorf("look: %+v", look)
	}
	write(t, filepath.Join(root, "reel", ".hidden.pull"), "x")
	write(t, filepath.Join(root, "reel", "other.svg"), "x")
	write(t, filepath.Join(root, "reel", "scene.pull"), "x")
	if look := next(t, w); !look.Folders || look.All {
		t.Errorf("look: %+v", look)
	}
}

func TestHostileNames(t *testing.T) {
	root := t.TempDir()
	for _, name := range []string{
		"two\nlines.pull", " .pull", "a b.pull", "\u202Egnp.pull", "焦点.pull", "*?[x].pull", "-o.pull", "...pull",
		strings.Repeat("n", 240) + ".pull", "\xff\xfe.pull", `back\slash.pull`, "a:b.pull", "%2e%2e.pull",
	} {
		file := filepath.Join(root, name)
		if err := os.WriteFile(file, []byte("1"), 0o666); err != nil {
			t.Logf("%q is no name here: %v", name, err)
			continue
		}
		w := listen(t, []string{file}, []string{root})
		write(t, file, "2")
		holding(t, w, file, []byte("2"))
		w.Close()
	}
}

func TestPolling(t *testing.T) {
	w := New(Options{Poll: true})
	w.Watch([]string{filepath.Join(t.TempDir(), "a.pull")}, nil)
	for range 2 { // the first is that of Watch
		if look := next(t, w); !look.All || !look.Folders {
			t.Errorf("look: %+v", look)
		}
	}
	if w.Trouble() != nil {
		t.Error("polling on demand is no trouble:", w.Trouble())
	}
}

func TestNextEnds(t *testing.T) {
	w := listen(t, nil, []string{t.TempDir()})
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	if _, err := w.Next(ctx); !errors.Is(err, context.Canceled) {
		t.Errorf("error %v", err)
	}
}

// Watches on folders that were taken away are let go of.
func TestNoWatchIsLeft(t *testing.T) {
	if runtime.GOOS != "linux" {
		t.Skip("watches can be counted on Linux only")
	}
	style := savestyle.Folder
	dir := filepath.Join(t.TempDir(), "plans")
	if err := os.Mkdir(dir, 0o777); err != nil {
		t.Fatal(err)
	}
	file := filepath.Join(dir, "a.pull")
	write(t, file, "0")
	w := listen(t, []string{file}, []string{dir})
	before := watches(t)
	for n := 1; n <= 300; n++ {
		data := fmt.Append(nil, n)
		if err := style.Save(dir, "a.pull", data, n); err != nil {
			t.Fatal(err)
		}
		holding(t, w, file, data)
	}
	w.reindex()
	if after := watches(t); after > before+1 { // one may be on its way out
		t.Errorf("%d watches at first, %d after", before, after)
	}
}

// watches counts the watches of this process, as proc(5) tells them.
func watches(t *testing.T) int {
	t.Helper()
	list, err := filepath.Glob("/proc/self/fdinfo/*")
	if err != nil || len(list) == 0 {
		t.Skip("no /proc")
	}
	n := 0
	for _, path := range list {
		text, _ := os.ReadFile(path)
		n += bytes.Count(text, []byte("inotify wd:"))
	}
	return n
}
