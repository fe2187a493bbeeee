//go:build !unix

package cputime

import "time"

var start = time.Now()

// used takes the clock of the wall for that of the processors: it counts too
// much where the machine is busy.
func used() time.Duration { return time.Since(start) }
