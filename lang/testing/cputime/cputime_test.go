package cputime

import (
	"runtime"
	"testing"
	"time"
)

func TestWorkCountsAndWaitingDoesNot(t *testing.T) {
	if runtime.GOOS == "windows" || runtime.GOOS == "plan9" || runtime.GOARCH == "wasm" {
		t.Skip("the clock of the wall stands for that of the processors here")
	}
	if took := Of(func() { time.Sleep(300 * time.Millisecond) }); took > 150*time.Millisecond {
		t.Errorf("waiting took %v", took)
	}
	begin := time.Now()
	took := Of(func() {
		for n := uint64(1); n != 0 && time.Since(begin) < 100*time.Millisecond; n += 2 {
		}
	})
	if took <= 0 {
		t.Errorf("work took %v", took)
	}
}
