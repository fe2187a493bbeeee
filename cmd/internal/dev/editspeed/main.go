package main

import (
	"errors"
	"flag"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"time"

	"pullscore/cmd/internal/testing/film"
)

// How much is typed.
const (
	letters = 300
	atOnce  = 200
	kitEdit = 11
)

func main() {
	before := flag.String("before", "", "another build of the program, to compare size and start with")
	flag.Parse()
	if err := measure(*before); err != nil {
		fmt.Fprintln(os.Stderr, "editspeed:", err)
		os.Exit(1)
	}
}

func measure(before string) error {
	dir, err := os.MkdirTemp("", "editspeed")
	if err != nil {
		return err
	}
	defer os.RemoveAll(dir)
	if dir, err = filepath.EvalSymlinks(dir); err != nil {
		return err
	}
	root, err := output("go", "list", "-m", "-f", "{{.Dir}}")
	if err != nil {
		return err
	}
	program := filepath.Join(dir, "pullscore")
	if _, err := output("env", "CGO_ENABLED=0", "go", "build", "-C", root, "-o", program, "./cmd/pullscore"); err != nil {
		return err
	}
	examples := filepath.Join(root, "examples")
	fmt.Printf("%s/%s, %d processors\n\n%-44s %9s %9s %9s %9s\n", runtime.GOOS, runtime.GOARCH, runtime.NumCPU(), "", "median", "p95", "most", "limit p95")
	err = errors.Join(
		typing(program, examples),
		kit(program, filepath.Join(dir, "film")),
	)
	if err == nil && before != "" {
		err = compare(before, program, filepath.Join(examples, "ticket-window.pull"))
	}
	return err
}

// typing types letters into a plan one by one, then many at once.
func typing(program, examples string) error {
	began := time.Now()
	c, err := start(program, examples)
	if err != nil {
		return err
	}
	path := filepath.Join(examples, "ticket-window.pull")
	src, err := os.ReadFile(path)
	if err != nil {
		return err
	}
	plan := uri(path)
	c.open(plan, string(src))
	first, _, err := c.told(plan, 1)
	if err != nil {
		return err
	}
	row("start of the server to the first findings", []time.Duration{first.Sub(began)}, 0)
	var floor, times []time.Duration
	version := int32(1)
	for i := range letters {
		asked := time.Now()
		c.send("no/such", true, nil)
		floor = append(floor, (<-c.answers).Sub(asked))
		version++
		typed := time.Now()
		c.insert(plan, version, uint32(i%20), 0, uint32(i/20%2), strings.Repeat("#", 1-i/20%2)) // comments a line out, and in again
		at, _, err := c.told(plan, version)
		if err != nil {
			return err
		}
		times = append(times, at.Sub(typed))
	}
	row("a question that needs no work", floor, 0)
	row("a change to its findings, ticket-window", times, 5*time.Millisecond)
	typed, first1 := time.Now(), version
	for range atOnce {
		version++
		c.insert(plan, version, 3, 0, 0, "#")
	}
	at, told, err := c.told(plan, version)
	if err != nil {
		return fmt.Errorf("of %d changes at once the last is not told: %w", atOnce, err)
	}
	row(fmt.Sprintf("%d changes at once, to the last (%d of %d), %d lists", atOnce, version-first1, atOnce, told), []time.Duration{at.Sub(typed)}, 0)
	return c.end()
}

// kit types into the kit of a whole film, with a slip that its plans tell too.
func kit(program, folder string) error {
	if err := os.Mkdir(folder, 0o777); err != nil {
		return err
	}
	if _, err := film.Write(folder, 1, film.Scenes); err != nil {
		return err
	}
	began := time.Now()
	if _, err := output(program, "check", folder); err != nil {
		return err
	}
	row("check of the same plans, from start to exit", []time.Duration{time.Since(began)}, 0)
	c, err := start(program, folder)
	if err != nil {
		return err
	}
	path := filepath.Join(folder, "kit.pull")
	src, err := os.ReadFile(path)
	if err != nil {
		return err
	}
	kit := uri(path)
	began = time.Now()
	c.open(kit, string(src))
	if err := c.all(kit, 1); err != nil {
		return err
	}
	row(fmt.Sprintf("kit of %d plans opened, all read", film.Scenes), []time.Duration{time.Since(began)}, 0)
	var own, all []time.Duration
	line := uint32(slices.Index(strings.Split(string(src), "\n"), "puller NEVO"))
	for i := range int32(kitEdit) {
		typed := time.Now()
		c.insert(kit, i+2, line, 0, uint32(i%2), strings.Repeat("#", 1-int(i%2))) // without a puller, and with
		at, _, err := c.told(kit, i+2)
		if err != nil {
			return err
		}
		own = append(own, at.Sub(typed))
		if err := c.all(kit, i+2); err != nil {
			return err
		}
		all = append(all, time.Since(typed))
	}
	row("a change to a kit, to the kit's own findings", own, 20*time.Millisecond)
	row("a change to a kit, to those of all its plans", all, 1500*time.Millisecond)
	return c.end()
}

// all waits until every plan that uses the kit is told: a question whose answer needs all
// of them is answered when they are.
func (c *client) all(kit string, version int32) error {
	c.send("textDocument/diagnostic", true, map[string]any{"textDocument": map[string]any{"uri": kit}})
	select {
	case <-c.answers:
		return nil
	case <-time.After(time.Minute):
		return fmt.Errorf("version %d of the kit is not told after a minute", version)
	}
}

// row prints the times of one thing. A limit of 0 is none.
func row(name string, times []time.Duration, limit time.Duration) {
	said := ""
	if limit > 0 {
		said = ms(limit)
	}
	fmt.Printf("%-44s %9s %9s %9s %9s\n", name, ms(quantile(times, 0.5)), ms(quantile(times, 0.95)), ms(quantile(times, 1)), said)
}

// quantile returns the time that a share of all times is within.
func quantile(times []time.Duration, share float64) time.Duration {
	sorted := slices.Sorted(slices.Values(times))
	return sorted[int(share*float64(len(sorted)-1)+0.5)]
}

func ms(d time.Duration) string {
	return fmt.Sprintf("%.1f ms", float64(d)/float64(time.Millisecond))
}

func output(name string, args ...string) (string, error) {
	out, err := exec.Command(name, args...).CombinedOutput()
	if err != nil {
		return "", fmt.Errorf("%s %s: %w\n%s", name, strings.Join(args, " "), err, out)
	}
	return strings.TrimSpace(string(out)), nil
}
