package main

import (
	"errors"
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"runtime"
	"slices"
	"strings"
	"time"

	"github.com/fsnotify/fsnotify"

	"pullscore/cmd/internal/testing/savestyle"
	"pullscore/interp"
	"pullscore/render/score"
	"pullscore/render/sheet"
)

const (
	saves       = 100
	pulls       = 10 // about a thousand items
	medianLimit = 15 * time.Millisecond
	p99Limit    = 40 * time.Millisecond
	tooLong     = time.Minute // for a drawing that does not come, on a busy machine
)

func main() {
	if err := measure(); err != nil {
		fmt.Fprintln(os.Stderr, "savespeed:", err)
		os.Exit(1)
	}
}

func measure() error {
	dir, err := os.MkdirTemp("", "savespeed")
	if err != nil {
		return err
	}
	defer os.RemoveAll(dir)
	program := filepath.Join(dir, "pullscore")
	build := exec.Command("go", "build", "-o", program, "pullscore/cmd/pullscore")
	build.Env = append(os.Environ(), "CGO_ENABLED=0")
	if out, err := build.CombinedOutput(); err != nil {
		return fmt.Errorf("build: %w\n%s", err, out)
	}
	items, sheets := size()
	fmt.Printf("%s/%s, %d processors; a plan of %d items on %d sheets; %d saves in each style; milliseconds\n\n",
		runtime.GOOS, runtime.GOARCH, runtime.NumCPU(), items, sheets, saves)
	fmt.Printf("%-28s %17s    %s\n", "", "first event", "new drawing on disk")
	fmt.Printf("%-28s %8s %8s    %8s %8s %8s\n", "", "median", "99 %", "best", "median", "99 %")
	for i, style := range styles {
		b := bench{style: style, program: program, dir: filepath.Join(dir, fmt.Sprint(i)), sheets: sheets}
		if err := b.run(); err != nil {
			return fmt.Errorf("%s: %w", style.Name, err)
		}
		b.print()
	}
	fmt.Printf("%-28s %17s    %8s %8s %8s\n", "limit", "", "", ms(medianLimit), ms(p99Limit))
	return measurePage(program, dir)
}

// styles are the ways of saving that most editors use.
var styles = []savestyle.Style{savestyle.Plain, savestyle.Rename, savestyle.Backup}

// text is the plan; no two n give the same drawing on any sheet.
func text(n int) []byte {
	var b strings.Builder
	fmt.Fprintf(&b, "plan \"The Last Boat, save %d\"\nrate 24\n", n)
	b.WriteString(`camera A
  sensor 24.89 x 18.66 mm
  on tripod
lens "75"
  focal 75 mm
  stops f/1.8 to f/21
  closest 75 cm
  ring 310 deg, diameter 110 mm
subject MARRIT at 1.6 m, deep 4 cm
subject TICKET at 1.9 m
subject OSKEL at 2.9 m
`)
	fmt.Fprintf(&b, "shot 1A \"Save %d\"\n  with camera A, lens \"75\", stop f/4\n  start on MARRIT\n", n)
	who := []string{"MARRIT", "TICKET", "OSKEL"}
	for i := range pulls {
		fmt.Fprintf(&b, "  %s: \"One way, then the harbour again.\", lasting 2 s\n", who[i%2*2])
		fmt.Fprintf(&b, "  rack to %s, over 1.%d s, because \"it is save %d\"\n  pause 1.2 s\n", who[(i+1)%3], (n+i)%3, n)
	}
	return []byte(b.String())
}

// size counts what is drawn for the plan.
func size() (items, sheets int) {
	for _, page := range score.Score(interp.Interpret("", text(0), interp.Options{}).Plan.Shots[0], sheet.Options{}) {
		sheets++
		for range page.Root.All() {
			items++
		}
	}
	return items, sheets
}

// A bench measures one style.
type bench struct {
	style   savestyle.Style
	program string
	dir     string
	sheets  int

	listener *fsnotify.Watcher
	floor    []time.Duration
	times    []time.Duration
}

const planFile = "scene.pull"

func (b *bench) plans() string    { return filepath.Join(b.dir, "plans") }
func (b *bench) drawings() string { return filepath.Join(b.dir, "drawings") }

// folders makes the folders and the plan.
func (b *bench) folders() error {
	for _, dir := range []string{b.plans(), b.drawings()} {
		if err := os.MkdirAll(dir, 0o777); err != nil {
			return err
		}
	}
	return b.style.Prepare(b.plans(), planFile, text(0))
}

// run starts the program, saves, and ends it.
func (b *bench) run() (err error) {
	if err := b.folders(); err != nil {
		return err
	}
	if b.listener, err = fsnotify.NewWatcher(); err != nil {
		return err
	}
	defer b.listener.Close()
	for _, dir := range []string{b.plans(), b.drawings()} {
		if err := b.listener.Add(dir); err != nil {
			return err
		}
	}
	program := exec.Command(b.program, "watch", "--no-page", "-o", b.drawings(), filepath.Join(b.plans(), planFile))
	program.Stderr = os.Stderr
	if err := program.Start(); err != nil {
		return err
	}
	defer func() { err = errors.Join(err, program.Process.Signal(os.Interrupt), program.Wait()) }()
	if _, _, err := b.await(time.Now()); err != nil {
		return err
	}
	for n := 1; n <= saves; n++ {
		time.Sleep(20*time.Millisecond + rand.N(20*time.Millisecond)) // in no step with any clock
		data := text(n)
		start := time.Now()
		if err := b.style.Save(b.plans(), planFile, data, n); err != nil {
			return err
		}
		first, last, err := b.await(start)
		if err == nil {
			err = b.verify(n)
		}
		if err != nil {
			return fmt.Errorf("save %d: %w", n, err)
		}
		b.floor, b.times = append(b.floor, first), append(b.times, last)
	}
	return nil
}

// await waits for every sheet to be replaced, and returns when the first event
// of the plan came and when the last sheet did.
func (b *bench) await(start time.Time) (first, last time.Duration, err error) {
	done := map[string]bool{}
	clock := time.NewTimer(tooLong)
	defer clock.Stop()
	for len(done) < b.sheets {
		select {
		case ev := <-b.listener.Events:
			base := filepath.Base(ev.Name)
			switch {
			case base == planFile && first == 0:
				first = time.Since(start)
			case filepath.Ext(base) == ".svg" && ev.Has(fsnotify.Create):
				done[base] = true
				last = time.Since(start)
			}
		case err := <-b.listener.Errors:
			return 0, 0, err
		case <-clock.C:
			return 0, 0, fmt.Errorf("%d of %d sheets after %v", len(done), b.sheets, tooLong)
		}
	}
	return first, last, nil
}

// verify looks whether every sheet is that of the save.
func (b *bench) verify(n int) error {
	list, err := filepath.Glob(filepath.Join(b.drawings(), "*.svg"))
	if err != nil {
		return err
	}
	title := regexp.MustCompile(fmt.Sprintf(`Save %d\b`, n))
	for _, path := range list {
		data, err := os.ReadFile(path)
		if err != nil {
			return err
		}
		if !title.Match(data) {
			return fmt.Errorf("%s is not of this save", filepath.Base(path))
		}
	}
	return nil
}

func (b *bench) print() {
	slices.Sort(b.floor)
	slices.Sort(b.times)
	fmt.Printf("%-28s %8s %8s    %8s %8s %8s\n", b.style.Name, ms(part(b.floor, 50)), ms(part(b.floor, 99)),
		ms(b.times[0]), ms(part(b.times, 50)), ms(part(b.times, 99)))
}

// part returns the time that so many percent of the sorted times do not
// exceed.
func part(times []time.Duration, percent int) time.Duration {
	return times[(len(times)*percent+99)/100-1]
}

func ms(d time.Duration) string { return fmt.Sprintf("%.2f", float64(d)/float64(time.Millisecond)) }
