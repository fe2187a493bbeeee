// Parts of a long text, read side by side.

package lines

import (
	"fmt"
	"iter"
	"runtime"
	"runtime/debug"
	"sync"
	"sync/atomic"
)

// perProcessor is how many results for each processor may wait for their turn.
const perProcessor = 2

// InOrder calls work for 0 up to n, as many at a time as there are processors, and
// yields the results in that order. Each goroutine has a state of its own, which is made
// by state. All of them have ended when the loop ends, and what one panics with the
// loop panics with.
func InOrder[S, T any](n int, state func() S, work func(S, int) T) iter.Seq[T] {
	return func(yield func(T) bool) {
		workers := min(n, runtime.GOMAXPROCS(0))
		if workers < 2 {
			alone(n, state(), work, yield)
			return
		}
		q := queue[S, T]{n: n, work: work, results: make([]chan result[T], workers*perProcessor), stop: make(chan struct{})}
		for i := range q.results {
			q.results[i] = make(chan result[T], 1)
		}
		q.free = make(chan struct{}, len(q.results))
		var running sync.WaitGroup
		defer running.Wait()
		defer close(q.stop)
		for range workers {
			running.Go(func() { q.run(state) })
		}
		q.each(yield)
	}
}

func alone[S, T any](n int, s S, work func(S, int) T, yield func(T) bool) {
	for i := range n {
		if !yield(work(s, i)) {
			return
		}
	}
}

// A queue is work that is shared out.
type queue[S, T any] struct {
	n       int
	work    func(S, int) T
	next    atomic.Int64
	free    chan struct{}    // full where all results wait for their turn
	results []chan result[T] // each for every so many
	stop    chan struct{}
}

// A result is one of them, or what its work panicked with.
type result[T any] struct {
	value  T
	failed string
}

// run takes work until there is none.
func (q *queue[S, T]) run(state func() S) {
	s := state()
	for {
		select {
		case <-q.stop:
			return
		case q.free <- struct{}{}:
		}
		i := int(q.next.Add(1)) - 1
		if i >= q.n {
			return
		}
		q.results[i%len(q.results)] <- q.one(s, i)
	}
}

func (q *queue[S, T]) one(s S, i int) (r result[T]) {
	defer func() {
		if p := recover(); p != nil {
			r.failed = fmt.Sprintf("%v\n%s", p, debug.Stack())
		}
	}()
	r.value = q.work(s, i)
	return r
}

// each yields the results.
func (q *queue[S, T]) each(yield func(T) bool) {
	for i := range q.n {
		r := <-q.results[i%len(q.results)]
		<-q.free
		if r.failed != "" {
			panic(r.failed)
		}
		if !yield(r.value) {
			return
		}
	}
}
