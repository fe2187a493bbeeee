// Size and start of two builds, side by side.

package main

import (
	"fmt"
	"os"
	"os/exec"
	"time"
)

// starts is how often each build is started.
const starts = 120

// compare prints the size of two builds, and how long `check` of a small plan takes in
// each. They run in turn, so that what else the machine does falls on both.
func compare(before, now, plan string) error {
	var sizes [2]int64
	var times [2][]time.Duration
	for i, program := range []string{before, now} {
		info, err := os.Stat(program)
		if err != nil {
			return err
		}
		sizes[i] = info.Size()
	}
	for range starts {
		for i, program := range []string{before, now} {
			began := time.Now()
			if err := exec.Command(program, "check", plan).Run(); err != nil {
				return fmt.Errorf("%s check: %w", program, err)
			}
			times[i] = append(times[i], time.Since(began))
		}
	}
	fmt.Printf("\n%-44s %9s %9s %9s\n", "", "before", "now", "more")
	mega := func(n int64) string { return fmt.Sprintf("%.2f MB", float64(n)/1e6) }
	fmt.Printf("%-44s %9s %9s %9s\n", "size of the program", mega(sizes[0]), mega(sizes[1]), mega(sizes[1]-sizes[0]))
	for _, q := range []struct {
		name string
		at   float64
	}{{"best", 0}, {"lower quartile", 0.25}, {"median", 0.5}} {
		a, b := quantile(times[0], q.at), quantile(times[1], q.at)
		fmt.Printf("%-44s %9s %9s %9s\n", fmt.Sprintf("start of check, %s of %d", q.name, starts), ms(a), ms(b), ms(b-a))
	}
	return nil
}
