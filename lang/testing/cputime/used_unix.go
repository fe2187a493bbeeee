//go:build unix

package cputime

import (
	"syscall"
	"time"
)

// used returns what this process has taken of the processors so far.
func used() time.Duration {
	var u syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &u); err != nil {
		panic(err) // it knows of no error but a wrong argument
	}
	return time.Duration(u.Utime.Nano() + u.Stime.Nano())
}
