package files

import (
	"errors"
	"fmt"
	"math/rand/v2"
	"runtime"
	"strings"
	"sync/atomic"
	"testing"
	"time"
)

func numbers(n int) []int {
	list := make([]int, n)
	for i := range list {
		list[i] = i
	}
	return list
}

func TestEachKeepsTheOrder(t *testing.T) {
	for _, n := range []int{0, 1, 2, 100} {
		var got []int
		err := InOrder(numbers(n), func(i int) int {
			time.Sleep(rand.N(time.Millisecond))
			return i * i
		}, func(sq int) error {
			got = append(got, sq)
			return nil
		})
		if err != nil || len(got) != n {
			t.Fatalf("%d items: %d results, error %v", n, len(got), err)
		}
		for i, sq := range got {
			if sq != i*i {
				t.Fatalf("%d items: result %d is %d", n, i, sq)
			}
		}
	}
}

func TestEachEndsAtAnError(t *testing.T) {
	full := errors.New("disk full")
	var running, begun atomic.Int64
	emitted := 0
	err := InOrder(numbers(1000), func(i int) int {
		running.Add(1)
		defer running.Add(-1)
		begun.Add(1)
		return i
	}, func(i int) error {
		emitted++
		if i == 3 {
			return full
		}
		return nil
	})
	if !errors.Is(err, full) || emitted != 4 {
		t.Errorf("error %v after %d results, want %v after 4", err, emitted, full)
	}
	if n := running.Load(); n != 0 {
		t.Errorf("%d still run", n)
	}
	if most := int64(4 + (ahead+2)*runtime.GOMAXPROCS(0) + 2); begun.Load() > most {
		t.Errorf("%d were begun, want %d at most", begun.Load(), most)
	}
}

func TestEachHoldsFewResults(t *testing.T) {
	var made, used atomic.Int64
	most := int64((ahead+2)*runtime.GOMAXPROCS(0) + 2)
	InOrder(numbers(500), func(i int) int {
		if waiting := made.Add(1) - used.Load(); waiting > most {
			t.Errorf("%d results wait, want %d at most", waiting, most)
		}
		return i
	}, func(int) error {
		time.Sleep(50 * time.Microsecond)
		used.Add(1)
		return nil
	})
}

func TestAPanicReachesTheCaller(t *testing.T) {
	for _, n := range []int{1, 40} {
		var running atomic.Int64
		func() {
			defer func() {
				if r := recover(); !strings.Contains(fmt.Sprint(r), "of an item") {
					t.Errorf("of %d: %v", n, r)
				}
			}()
			InOrder(numbers(n), func(i int) int {
				running.Add(1)
				defer running.Add(-1)
				if i == n/2 {
					panic("of an item")
				}
				return i
			}, func(int) error { return nil })
			t.Errorf("of %d: no panic", n)
		}()
		if running.Load() != 0 {
			t.Errorf("of %d: %d still run", n, running.Load())
		}
	}
}
