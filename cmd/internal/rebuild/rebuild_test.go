package rebuild

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
	"time"

	"pullscore/cmd/internal/testing/film"
	"pullscore/cmd/internal/testing/savestyle"
	"pullscore/cmd/internal/watch"
)

const kit = `camera A
  sensor 24.89 x 18.66 mm
  on tripod
lens "75"
  focal 75 mm
  stops f/1.8 to f/21
  closest 75 cm
  ring 310 deg, diameter 110 mm
`

// scene is a plan of one shot; its title is on the drawing.
func scene(title string) string {
	return fmt.Sprintf(`plan "Test"
rate 24
use "kit.pull"
subject MARRIT at 1.6 m
subject OSKEL at 2.9 m
shot 1 %q
  with camera A, lens "75", stop f/4
  start on MARRIT
  MARRIT: "Last boat.", lasting 2 s
  rack to OSKEL, over 1.2 s
  hold 1 s
`, title)
}

// An event is one call of onChange.
type event struct {
	state   *State
	changes []Change
}

// A rig is a rebuilder at work.
type rig struct {
	*testing.T
	dir    string
	events chan event
	stop   func()
}

// start runs a rebuilder of the arguments, relative to dir, with drawings in
// dir/out, and takes what it tells until all plans have been read.
func start(t *testing.T, dir string, args ...string) (*rig, event) {
	t.Helper()
	out := filepath.Join(dir, "out")
	if err := os.MkdirAll(out, 0o777); err != nil {
		t.Fatal(err)
	}
	return startIn(t, dir, Options{Folder: out}, args...)
}

func startIn(t *testing.T, dir string, opt Options, args ...string) (*rig, event) {
	t.Helper()
	for i := range args {
		args[i] = filepath.Join(dir, args[i])
	}
	r, err := New(args, opt)
	if err != nil {
		t.Fatal(err)
	}
	ctx, cancel := context.WithCancel(context.Background())
	g := &rig{T: t, dir: dir, events: make(chan event, 1000)}
	ended := make(chan error)
	go func() {
		ended <- r.Run(ctx, func(s *State, c []Change) { g.events <- event{s, c} })
	}()
	g.stop = func() {
		cancel()
		if err := <-ended; err != nil {
			t.Error(err)
		}
		g.stop = func() {}
	}
	t.Cleanup(func() { g.stop() })
	var first event
	for {
		e := g.next()
		first = event{e.state, append(first.changes, e.changes...)}
		if len(e.changes) == 0 {
			return g, first
		}
	}
}

// tooLong is when a test gives up on what does not come.
const tooLong = 20 * time.Second

func (g *rig) next() event {
	g.Helper()
	select {
	case e := <-g.events:
		return e
	case <-time.After(tooLong):
		g.Fatal("nothing came of it")
		panic("unreachable")
	}
}

// until takes events until one is as wanted.
func (g *rig) until(wanted func(event) bool) event {
	g.Helper()
	for {
		if e := g.next(); wanted(e) {
			return e
		}
	}
}

func (g *rig) write(name, text string) {
	g.Helper()
	write(g.T, filepath.Join(g.dir, name), text)
}

func write(t *testing.T, path, text string) {
	t.Helper()
	if err := errors.Join(os.MkdirAll(filepath.Dir(path), 0o777), os.WriteFile(path, []byte(text), 0o666)); err != nil {
		t.Fatal(err)
	}
}

func fileText(t *testing.T, path string) string {
	t.Helper()
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return string(data)
}

// titled reports whether the first plan's drawing is that of a title.
func titled(title string) func(event) bool {
	return func(e event) bool {
		return len(e.state.Plans) > 0 && e.state.Plans[0].Good != nil && !e.state.Plans[0].Stale &&
			len(e.state.Plans[0].Good.Shots) == 1 && e.state.Plans[0].Good.Shots[0].Title == title
	}
}

func TestFirstState(t *testing.T) {
	dir := t.TempDir()
	write(t, filepath.Join(dir, "a.pull"), scene("First"))
	write(t, filepath.Join(dir, "kit.pull"), kit)
	_, e := start(t, dir, ".")
	if len(e.state.Plans) != 1 || len(e.changes) != 1 {
		t.Fatalf("%d plans, %d changes; the kit is none", len(e.state.Plans), len(e.changes))
	}
	p, c := e.state.Plans[0], e.changes[0]
	sheet := p.Sheets["1"][0]
	switch {
	case p.Good == nil, p.Stale, p.Latest != p.Good, len(p.Files) != 2, e.state.Plan(p.Key) != p:
		t.Errorf("plan: %+v", p)
	case !c.First, c.Gone, len(c.Drawn) != 1, len(c.Says) > 0, c.Plan != p, c.Unwritten != nil:
		t.Errorf("change: %+v", c)
	case sheet.File != filepath.Join(dir, "out", "a-1-score.svg"), fileText(t, sheet.File) != string(sheet.SVG()):
		t.Errorf("sheet: %s", sheet.File)
	}
}

// An end in the middle of the first reading of many plans does not wait for
// them.
func TestEndWhileReading(t *testing.T) {
	dir := t.TempDir()
	if _, err := film.Write(dir, 1, 5*batch); err != nil {
		t.Fatal(err)
	}
	r, err := New([]string{dir}, Options{Folder: t.TempDir()})
	if err != nil {
		t.Fatal(err)
	}
	ctx, cancel := context.WithCancel(context.Background())
	calls := 0
	err = r.Run(ctx, func(*State, []Change) {
		calls++
		cancel()
	})
	if err != nil || calls != 1 || len(r.State().Plans) > batch {
		t.Errorf("%d calls, %d plans, %v", calls, len(r.State().Plans), err)
	}
}

func TestStylesOfSaving(t *testing.T) {
	for _, style := range append(savestyle.All, vim(t)...) {
		t.Run(style.Name, func(t *testing.T) {
			root := t.TempDir()
			dir := filepath.Join(root, "plans")
			write(t, filepath.Join(root, "kit.pull"), kit)
			if err := os.MkdirAll(dir, 0o777); err != nil {
				t.Fatal(err)
			}
			text := func(n int) string {
				return strings.Replace(scene(fmt.Sprint("Save ", n)), `"kit.pull"`, `"../kit.pull"`, 1)
			}
			if err := style.Prepare(dir, "a.pull", []byte(text(0))); err != nil {
				t.Skip(err) // a system without links
			}
			g, _ := start(t, root, "plans/a.pull")
			for n := 1; n <= 10; n++ {
				if err := style.Save(dir, "a.pull", []byte(text(n)), n); err != nil {
					t.Fatal(err)
				}
				e := g.until(titled(fmt.Sprint("Save ", n)))
				sheet := e.state.Plans[0].Sheets["1"][0]
				if got := fileText(t, sheet.File); !strings.Contains(got, fmt.Sprintf("Save %d", n)) {
					t.Fatalf("save %d is not on disk", n)
				}
			}
		})
	}
}

// vim is the style of the real program, where it is installed.
func vim(t *testing.T) []savestyle.Style {
	path, err := exec.LookPath("vim")
	if err != nil {
		t.Log("vim is not installed, so it is only imitated")
		return nil
	}
	save := func(dir, name string, data []byte, _ int) error {
		temp := filepath.Join(filepath.Dir(dir), "typed")
		if err := os.WriteFile(temp, data, 0o666); err != nil {
			return err
		}
		cmd := exec.Command(path, "-Nu", "NONE", "-es", "-c", "set backup writebackup backupcopy=no",
			"-c", "silent %d _", "-c", "silent 0r "+temp, "-c", "silent $d _", "-c", "wq", filepath.Join(dir, name))
		out, err := cmd.CombinedOutput()
		if err != nil {
			return fmt.Errorf("vim: %w: %s", err, out)
		}
		return nil
	}
	return []savestyle.Style{{Name: "vim itself", Prepare: savestyle.Plain.Prepare, Save: save}}
}

// One save is one change, in a folder that holds its own drawings.
func TestOutputsAreNoReasonToRebuild(t *testing.T) {
	dir := t.TempDir()
	write(t, filepath.Join(dir, "a.pull"), scene("Save 0"))
	write(t, filepath.Join(dir, "kit.pull"), kit)
	g, _ := startIn(t, dir, Options{Folder: dir}, ".")
	for n := 1; n <= 30; n++ {
		if err := savestyle.Rename.Save(dir, "a.pull", []byte(scene(fmt.Sprint("Save ", n))), n); err != nil {
			t.Fatal(err)
		}
		if e := g.next(); !titled(fmt.Sprint("Save ", n))(e) || len(e.changes) != 1 {
			t.Fatalf("save %d: %d changes, %q", n, len(e.changes), e.state.Plans[0].Good.Shots[0].Title)
		}
	}
}

// What leaves the text as it was is no change: new times, new permissions, the
// same text again.
// A plan is drawn anew when the cut that it follows, or its page, is saved, also
// where that was not there before.
func TestCutIsFollowed(t *testing.T) {
	dir := t.TempDir()
	write(t, filepath.Join(dir, "a.pull"), strings.Replace(scene("A"), "use ", "edit \"cut.srt\"\nscript \"page.fountain\"\nuse ", 1))
	write(t, filepath.Join(dir, "kit.pull"), kit)
	g, _ := start(t, dir, "a.pull")
	long := func(seconds float64) func(event) bool {
		return func(e event) bool {
			p := e.state.Plans[0].Latest
			return p != nil && len(p.Shots) == 1 && float64(p.Shots[0].Lines[0].End) == seconds
		}
	}
	for n := 1; n <= 3; n++ {
		g.write("cut.srt", fmt.Sprintf("1\n00:00:01,000 --> 00:00:0%d,000\nLast boat.\n", n+3))
		g.until(long(float64(n + 2)))
	}
	g.write("page.fountain", "INT. QUAY #1#\n\nMARRIT\nLast boat today.\n")
	g.until(func(e event) bool {
		return strings.Contains(fmt.Sprint(e.state.Plans[0].Findings), "line-changed")
	})
}

func TestTouchIsNoChange(t *testing.T) {
	for _, poll := range []bool{false, true} {
		dir := t.TempDir()
		write(t, filepath.Join(dir, "a.pull"), scene("A"))
		write(t, filepath.Join(dir, "b.pull"), scene("B"))
		write(t, filepath.Join(dir, "kit.pull"), kit)
		g, first := startIn(t, dir, Options{Folder: dir, Watch: watch.Options{Poll: poll}}, ".")
		now := time.Now().Add(time.Hour)
		a := filepath.Join(dir, "a.pull")
		if err := errors.Join(os.Chtimes(a, now, now), os.Chmod(a, 0o600)); err != nil {
			t.Fatal(err)
		}
		if err := savestyle.Rename.Save(dir, "a.pull", []byte(scene("A")), 1); err != nil {
			t.Fatal(err)
		}
		if err := savestyle.Rename.Save(dir, "b.pull", []byte(scene("B2")), 1); err != nil {
			t.Fatal(err)
		}
		e := g.next()
		if len(e.changes) != 1 || e.changes[0].Plan.Key != first.state.Plans[1].Key || e.state.Plans[0] != first.state.Plans[0] {
			t.Errorf("poll %v: changes: %+v", poll, e.changes)
		}
	}
}

func TestErrorsKeepTheLastGoodDrawing(t *testing.T) {
	dir := t.TempDir()
	write(t, filepath.Join(dir, "a.pull"), scene("Good"))
	write(t, filepath.Join(dir, "kit.pull"), kit)
	g, first := start(t, dir, "a.pull")
	g.write("a.pull", strings.Replace(scene("Bad"), "to OSKEL", "to OSKLE", 1))
	e := g.until(func(e event) bool { return e.state.Plans[0].Stale })
	p := e.state.Plans[0]
	if p.Good != first.state.Plans[0].Good || len(p.Findings) == 0 || p.Latest == p.Good || p.Version <= first.state.Plans[0].Version {
		t.Errorf("with errors: %+v", p)
	}
	if got := fileText(t, p.Sheets["1"][0].File); !strings.Contains(got, "Good") {
		t.Error("the drawing has gone")
	}
	g.write("a.pull", scene("Better"))
	e = g.until(titled("Better"))
	if got := fileText(t, e.state.Plans[0].Sheets["1"][0].File); !strings.Contains(got, "Better") {
		t.Error("the drawing has not come back")
	}
}

func TestKits(t *testing.T) {
	dir := t.TempDir()
	write(t, filepath.Join(dir, "a.pull"), scene("A"))
	write(t, filepath.Join(dir, "b.pull"), scene("B"))
	g, e := start(t, dir, "a.pull", "b.pull")
	if p := e.state.Plans[0]; p.Good != nil || len(p.Files) != 2 {
		t.Fatalf("without the kit: %+v", p)
	}
	g.write("kit.pull", kit)
	e = g.until(func(e event) bool { return e.state.Plans[0].Good != nil && e.state.Plans[1].Good != nil })
	g.write("kit.pull", strings.Replace(kit, "310", "290", 1))
	e = g.until(func(e event) bool { return len(e.changes) == 2 && len(e.changes[0].Drawn) > 0 })
	if c := e.changes[0]; len(c.Causes) != 1 || filepath.Base(c.Causes[0]) != "kit.pull" || len(c.Says) == 0 {
		t.Errorf("change: %+v", c)
	}
}

func TestDeletedAndRestored(t *testing.T) {
	dir := t.TempDir()
	write(t, filepath.Join(dir, "a.pull"), scene("A"))
	write(t, filepath.Join(dir, "kit.pull"), kit)
	g, first := start(t, dir, "a.pull")
	if err := os.Remove(filepath.Join(dir, "a.pull")); err != nil {
		t.Fatal(err)
	}
	e := g.until(func(e event) bool { return e.state.Plans[0].Stale })
	if p := e.state.Plans[0]; p.Findings[0].Code != "no-such-file" || p.Good != first.state.Plans[0].Good {
		t.Errorf("deleted: %+v", p)
	}
	g.write("a.pull", scene("A"))
	e = g.until(titled("A"))
	if e.state.Plans[0].Key != first.state.Plans[0].Key {
		t.Error("restored under another key")
	}
}

func TestPlansOfAFolderComeAndGo(t *testing.T) {
	dir := t.TempDir()
	write(t, filepath.Join(dir, "kit.pull"), kit)
	g, e := start(t, dir, ".")
	if len(e.state.Plans) != 0 {
		t.Fatalf("%d plans", len(e.state.Plans))
	}
	in := func(text string) string { return strings.Replace(text, `"kit.pull"`, `"../kit.pull"`, 1) }
	g.write("reel-1/a.pull", in(scene("A")))
	e = g.until(titled("A"))
	g.write("reel-2/a.pull", in(scene("A too")))
	e = g.until(func(e event) bool { return len(e.state.Plans) == 2 && e.state.Plans[1].Good != nil })
	for i, want := range []string{"a-1-score.svg", "a-1-score~2.svg"} {
		if got := filepath.Base(e.state.Plans[i].Sheets["1"][0].File); got != want {
			t.Errorf("drawing %q, want %q", got, want)
		}
	}
	if err := os.RemoveAll(filepath.Join(dir, "reel-1")); err != nil {
		t.Fatal(err)
	}
	e = g.until(func(e event) bool { return len(e.changes) > 0 && e.changes[0].Gone })
	if len(e.state.Plans) != 1 || e.state.Plan(e.changes[0].Plan.Key) != nil {
		t.Errorf("%d plans are left", len(e.state.Plans))
	}
	g.write("reel-1/a.pull", in(scene("A")))
	g.until(func(e event) bool { return len(e.state.Plans) == 2 && e.state.Plans[0].Good != nil })
}

func TestDrawingsThatCannotBeWritten(t *testing.T) {
	dir := t.TempDir()
	write(t, filepath.Join(dir, "a.pull"), scene("A"))
	write(t, filepath.Join(dir, "kit.pull"), kit)
	g, _ := start(t, dir, "a.pull")
	out := filepath.Join(dir, "out")
	if err := os.RemoveAll(out); err != nil {
		t.Fatal(err)
	}
	g.write("a.pull", scene("B"))
	e := g.until(titled("B"))
	if c := e.changes[0]; c.Unwritten == nil || len(c.Drawn) > 0 {
		t.Errorf("change: %+v", c)
	}
	if err := os.Mkdir(out, 0o777); err != nil {
		t.Fatal(err)
	}
	e = g.next() // it is tried again, and told only when it has gone well
	if c := e.changes[0]; c.Unwritten != nil || len(c.Drawn) != 1 || !strings.Contains(fileText(t, c.Drawn[0]), "B") {
		t.Errorf("change: %+v", c)
	}
}

// The device that is always full stands for a full disk.
func TestFullDisk(t *testing.T) {
	if _, err := os.Stat("/dev/full"); err != nil {
		t.Skip(err)
	}
	dir := t.TempDir()
	write(t, filepath.Join(dir, "a.pull"), scene("A"))
	write(t, filepath.Join(dir, "kit.pull"), kit)
	out := filepath.Join(dir, "out")
	write(t, filepath.Join(out, "keep"), "")
	if err := os.Symlink("/dev/full", filepath.Join(out, "a-1-score.svg")); err != nil {
		t.Skip(err)
	}
	g, e := start(t, dir, "a.pull")
	if c := e.changes[0]; c.Unwritten == nil || !strings.Contains(c.Unwritten.Error(), "no space") {
		t.Errorf("change: %+v", c)
	}
	g.write("a.pull", scene("B"))
	if e := g.until(titled("B")); e.changes[0].Unwritten == nil {
		t.Error("it is told once a change")
	}
}

func TestTwoOnOneFolder(t *testing.T) {
	dir := t.TempDir()
	write(t, filepath.Join(dir, "a.pull"), scene("Save 0"))
	write(t, filepath.Join(dir, "kit.pull"), kit)
	one, _ := start(t, dir, ".")
	two, _ := start(t, dir, ".")
	for n := 1; n <= 30; n++ {
		one.write("a.pull", scene(fmt.Sprint("Save ", n)))
	}
	a, b := one.until(titled("Save 30")), two.until(titled("Save 30"))
	one.stop()
	two.stop()
	sheet := a.state.Plans[0].Sheets["1"][0]
	if got := fileText(t, sheet.File); got != string(sheet.SVG()) || !bytes.Equal(sheet.SVG(), b.state.Plans[0].Sheets["1"][0].SVG()) {
		t.Error("the drawing is not that of the last save")
	}
	if list, _ := os.ReadDir(filepath.Join(dir, "out")); len(list) != 1 {
		t.Errorf("left over: %v", list)
	}
}

// A thousand saves leave nothing behind: neither descriptors nor memory.
func TestNoGrowth(t *testing.T) {
	dir := t.TempDir()
	write(t, filepath.Join(dir, "a.pull"), scene("Save 0"))
	write(t, filepath.Join(dir, "kit.pull"), kit)
	g, _ := start(t, dir, ".")
	saves := 1000
	if testing.Short() {
		saves = 100
	}
	save := func(n int) {
		if err := savestyle.Rename.Save(dir, "a.pull", []byte(scene(fmt.Sprint("Save ", n))), n); err != nil {
			t.Fatal(err)
		}
		g.until(titled(fmt.Sprint("Save ", n)))
	}
	for n := range 50 {
		save(n + 1)
	}
	heap, files := heapNow(), descriptors(t)
	for n := range saves {
		save(n + 51)
	}
	if after := descriptors(t); after > files {
		t.Errorf("%d descriptors, %d after %d saves", files, after, saves)
	}
	// A state with its drawing takes more than 30 kB; a thousand, 30 MB.
	if after := heapNow(); after > heap+2<<20 {
		t.Errorf("heap %d kB, %d kB after %d saves", heap>>10, after>>10, saves)
	}
}

func heapNow() uint64 {
	var m runtime.MemStats
	runtime.GC()
	runtime.GC()
	runtime.ReadMemStats(&m)
	return m.HeapAlloc
}

func descriptors(t *testing.T) int {
	t.Helper()
	list, err := os.ReadDir("/proc/self/fd")
	if err != nil {
		t.Skip(err)
	}
	return len(list)
}

func TestWhatCannotBeWatched(t *testing.T) {
	dir := t.TempDir()
	for _, args := range [][]string{{"-"}, {""}, {filepath.Join(dir, "no-plan.txt")}, {filepath.Join(dir, "no", "folder")}} {
		if _, err := New(args, Options{}); err == nil {
			t.Errorf("%q is watched", args)
		}
	}
	file, folder := filepath.Join(dir, "file"), filepath.Join(dir, "none", "yet")
	if err := os.WriteFile(file, nil, 0o666); err != nil {
		t.Fatal(err)
	}
	if _, err := New([]string{dir}, Options{Folder: file}); err == nil {
		t.Error("drawings go into a file")
	}
	if _, err := New([]string{dir}, Options{Folder: folder}); err != nil {
		t.Error(err)
	}
	if info, err := os.Stat(folder); err != nil || !info.IsDir() {
		t.Errorf("the folder for drawings is not made: %v", err)
	}
	if _, err := New([]string{filepath.Join(dir, "to-come.pull")}, Options{Folder: dir}); err != nil {
		t.Error(err)
	}
}
