package lines

import (
	"reflect"
	"runtime"
	"slices"
	"strings"
	"testing"

	"pullscore/lang"
)

// Results come in their order, however long each takes, and a state is of one goroutine.
func TestInOrder(t *testing.T) {
	type counter struct{ calls int }
	for _, processors := range []int{1, 2, 5} {
		before := runtime.GOMAXPROCS(processors)
		for _, n := range []int{0, 1, 2, 7, 500} {
			for _, stop := range []int{1, 3, n + 1} { // after so many, or not at all
				var got, want []int
				for i := range InOrder(n, func() *counter { return &counter{} }, func(c *counter, i int) int {
					c.calls++
					for range (i * 7919) % 13 {
						runtime.Gosched()
					}
					return i
				}) {
					if got = append(got, i); len(got) == stop {
						break
					}
				}
				for i := range min(n, stop) {
					want = append(want, i)
				}
				if !slices.Equal(got, want) {
					t.Fatalf("%d processors, %d of %d: %v", processors, stop, n, got)
				}
			}
		}
		runtime.GOMAXPROCS(before)
	}
}

// What the work panics with comes to the loop, and nothing runs on.
func TestInOrderPanics(t *testing.T) {
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(3))
	defer func() {
		if p, ok := recover().(string); !ok || !strings.Contains(p, "at the seventh") {
			t.Errorf("it panicked with %v", p)
		}
	}()
	for range InOrder(100, func() int { return 0 }, func(_, i int) int {
		if i == 6 {
			panic("at the seventh")
		}
		return i
	}) {
	}
	t.Error("it did not panic")
}

// Faults of parts are those of the whole.
func TestFaultsOfParts(t *testing.T) {
	for _, total := range []int{0, 5, MaxFaults, MaxFaults + 1, 3*MaxFaults + 7} {
		for _, part := range []int{1, 3, 400, MaxFaults, MaxFaults + 300, 5 * MaxFaults} {
			var whole, parts, one Faults
			for i := range total {
				d := lang.Diagnostic{Code: "x", Severity: lang.Severity(i / 900 % 3), Range: lang.Range{Start: lang.Pos{Offset: i, Line: i + 1}}}
				whole.Add(d)
				if one.Add(d); (i+1)%part == 0 {
					parts.AddAll(&one)
					one = Faults{}
				}
			}
			parts.AddAll(&one)
			if got, want := parts.List(), whole.List(); !reflect.DeepEqual(got, want) {
				t.Fatalf("%d faults in parts of %d differ", total, part)
			}
		}
	}
}
