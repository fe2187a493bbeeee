// Package cputime gives tests a clock that stands still while other programs
// have the processor. A limit of time on it holds on a busy machine too, where
// one on the clock of the wall fails although nothing is wrong.
package cputime

import "time"

// Of returns how long the processors worked for this process, all of its
// goroutines and the collector of garbage, while work ran. It is no measure
// beside tests that run in parallel.
func Of(work func()) time.Duration {
	begin := used()
	work()
	return used() - begin
}
