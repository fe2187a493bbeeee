//go:build unix

package main

import (
	"bufio"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"syscall"
	"time"

	"pullscore/cmd/internal/testing/film"
)

// A task is a command that is timed.
type task struct {
	name   string
	args   []string
	runs   int
	limit  time.Duration // 0: none
	memory int64         // limit in bytes, 0: none
}

func main() {
	forms := flag.Bool("forms", false, "time only other people's texts, of every form")
	flag.Parse()
	if err := measure(*forms); err != nil {
		fmt.Fprintln(os.Stderr, "speed:", err)
		os.Exit(1)
	}
}

func measure(forms bool) error {
	dir, err := os.MkdirTemp("", "speed")
	if err != nil {
		return err
	}
	defer os.RemoveAll(dir)
	list, err := prepare(dir, forms)
	if err != nil {
		return err
	}
	fmt.Printf("%s/%s, %d processors\n\n", runtime.GOOS, runtime.GOARCH, runtime.NumCPU())
	fmt.Printf("%-34s %9s %9s %9s %9s %9s %9s\n", "", "best", "median", "limit", "processor", "memory", "limit")
	var failed []error
	for _, t := range list {
		if err := t.measure(); err != nil {
			failed = append(failed, err)
		}
	}
	return errors.Join(failed...)
}

// small is the plan of the short runs, beside the kit that it uses.
var small = []string{"scene.pull", "kit.pull"}

// prepare builds the programs and writes the plans.
func prepare(dir string, forms bool) ([]task, error) {
	root, err := output("go", "list", "-m", "-f", "{{.Dir}}")
	if err != nil {
		return nil, err
	}
	program, empty := filepath.Join(dir, "pullscore"), filepath.Join(dir, "empty")
	source := filepath.Join(dir, "empty.go")
	if err := os.WriteFile(source, []byte("package main\n\nfunc main() {}\n"), 0o666); err != nil {
		return nil, err
	}
	if _, err := output("go", "build", "-o", empty, source); err != nil {
		return nil, err
	}
	if _, err := output("env", "CGO_ENABLED=0", "go", "build", "-C", root, "-o", program, "./cmd/pullscore"); err != nil {
		return nil, err
	}
	for _, name := range small {
		text, err := os.ReadFile(filepath.Join(root, "lang", "testdata", name))
		if err != nil {
			return nil, err
		}
		if err := os.WriteFile(filepath.Join(dir, name), text, 0o666); err != nil {
			return nil, err
		}
	}
	if forms {
		return formTasks(program, dir)
	}
	feature := filepath.Join(dir, "film")
	if err := os.Mkdir(feature, 0o777); err != nil {
		return nil, err
	}
	if _, err := film.Write(feature, 1, film.Scenes); err != nil {
		return nil, err
	}
	scenes := filepath.Join(dir, "scenes")
	if err := os.Mkdir(scenes, 0o777); err != nil {
		return nil, err
	}
	if _, err := film.Write(scenes, 1, briefShots/film.ShotsPerScene); err != nil {
		return nil, err
	}
	plan := filepath.Join(dir, small[0])
	list := []task{
		{name: "an empty Go program", args: []string{empty}, runs: 60},
		{name: "check a plan", args: []string{program, "check", plan}, runs: 60, limit: 10 * time.Millisecond},
		{name: "draw a plan", args: []string{program, "draw", "-o", dir, plan}, runs: 60, limit: 12 * time.Millisecond},
		{
			name: fmt.Sprintf("check a film of %d lines", film.Scenes*film.LinesPerScene),
			args: []string{program, "check", feature}, runs: 7,
			limit: 800 * time.Millisecond, memory: 300 << 20,
		},
		briefOf(program, scenes, dir, "pdf"),
		briefOf(program, scenes, dir, "html"),
	}
	long, err := longTexts(program, dir)
	return append(list, long...), err
}

// briefShots is how many shots the brief has that is timed.
const briefShots = 120

// briefOf is the task of putting the papers of a folder of scenes into a file.
func briefOf(program, scenes, dir, form string) task {
	return task{
		name: fmt.Sprintf("brief of %d shots as %s", briefShots, form),
		args: []string{program, "brief", "--as", form, "-o", filepath.Join(dir, "brief."+form), scenes},
		runs: 3, limit: 5 * time.Second, memory: 300 << 20,
	}
}

// longText is the size of a long text in bytes, longMemory what the reading
// of one may take, and cutMemory that of subtitles.
const (
	longText   = 100 << 20
	longMemory = 500 << 20
	cutMemory  = 400 << 20
)

// longTexts are the tasks of reading other people's texts that have no measure:
// a script page and the subtitles of a cut.
func longTexts(program, dir string) ([]task, error) {
	page, cut, plan := filepath.Join(dir, "long.fountain"), filepath.Join(dir, "long.srt"), filepath.Join(dir, "long.pull")
	lines, err := os.ReadFile(filepath.Join(dir, small[0]))
	scene := strings.Repeat("The rope lies on the wet deck, and nobody is there.\n\nHALDIS\n(low)\nYou rowed out to the wreck alone.\n\n", 20)
	err = errors.Join(err,
		repeat(page, shape{piece: func(w io.Writer, n int) (int, error) { return fmt.Fprintf(w, "INT. DECK #%d#\n\n%s", n, scene) }}),
		repeat(cut, shape{piece: func(w io.Writer, n int) (int, error) {
			at := fmt.Sprintf("%02d:%02d:%02d", n/1800, n/30%60, n%30*2)
			return fmt.Fprintf(w, "%d\n%s,000 --> %[2]s,900\nYou rowed out to the wreck alone,\nand nobody was there %[1]d.\n\n", n, at)
		}}),
		os.WriteFile(plan, append([]byte("edit \"long.srt\" from 00:00:00:00\n"), lines...), 0o666),
	)
	return []task{
		{name: "page of 100 MB as JSON", args: []string{program, "page", "--as", "json", page}, runs: 1, memory: longMemory},
		{name: "check a plan with 100 MB of cut", args: []string{program, "check", plan}, runs: 1, limit: 4 * time.Second, memory: cutMemory},
	}, err
}

// repeat writes a long text.
func repeat(path string, s shape) error {
	f, err := os.Create(path)
	if err != nil {
		return err
	}
	w := bufio.NewWriter(f)
	io.WriteString(w, s.first)
	for n, size := 1, 0; size < longText && err == nil; n++ {
		var more int
		more, err = s.piece(w, n)
		size += more
	}
	io.WriteString(w, s.last)
	return errors.Join(err, w.Flush(), f.Close())
}

func output(name string, args ...string) (string, error) {
	out, err := exec.Command(name, args...).CombinedOutput()
	if err != nil {
		return "", fmt.Errorf("%s %s: %w\n%s", name, strings.Join(args, " "), err, out)
	}
	return strings.TrimSpace(string(out)), nil
}

// measure runs the task and prints its times. The best run is the one that
// other programs disturbed the least.
func (t task) measure() error {
	times := make([]time.Duration, t.runs)
	var peak int64
	var busy time.Duration // the least that the processors worked
	for i := range times {
		cmd := exec.Command(t.args[0], t.args[1:]...)
		start := time.Now()
		err := cmd.Run()
		times[i] = time.Since(start)
		if code := cmd.ProcessState.ExitCode(); code != 0 {
			return fmt.Errorf("%s: exit code %d: %w", t.name, code, err)
		}
		peak = max(peak, residentPeak(cmd.ProcessState))
		if worked := cmd.ProcessState.UserTime() + cmd.ProcessState.SystemTime(); i == 0 || worked < busy {
			busy = worked
		}
	}
	slices.Sort(times)
	limit, memory := "", ""
	if t.limit > 0 {
		limit = milliseconds(t.limit)
	}
	if t.memory > 0 {
		memory = megabytes(t.memory)
	}
	fmt.Printf("%-34s %9s %9s %9s %9s %9s %9s\n", t.name, milliseconds(times[0]), milliseconds(times[len(times)/2]), limit, milliseconds(busy), megabytes(peak), memory)
	if t.memory > 0 && peak > t.memory {
		return fmt.Errorf("%s: took %s, and %s is the limit", t.name, megabytes(peak), megabytes(t.memory))
	}
	return nil
}

// residentPeak returns the most memory that a process had, in bytes. The
// system counts in kilobytes, but for one.
func residentPeak(p *os.ProcessState) int64 {
	usage, ok := p.SysUsage().(*syscall.Rusage)
	if !ok {
		return 0
	}
	if runtime.GOOS == "darwin" {
		return int64(usage.Maxrss)
	}
	return int64(usage.Maxrss) << 10
}

func milliseconds(d time.Duration) string {
	return fmt.Sprintf("%.1f ms", float64(d)/float64(time.Millisecond))
}

func megabytes(n int64) string { return fmt.Sprintf("%d MB", n>>20) }
