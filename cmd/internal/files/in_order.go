package files

import (
	"fmt"
	"runtime"
	"runtime/debug"
)

// ahead is how many results for each processor may wait for their turn: enough
// that one slow item does not stop the others, few enough to hold in memory.
const ahead = 4

// InOrder calls work for every item, as many at a time as there are processors,
// and emit with each result in the order of the items, from the calling
// goroutine. The first error of emit ends it and is returned; work that has
// begun is then waited for, so that none of it outlives the call. A panic of work is one of
// the calling goroutine, which may want to go on.
func InOrder[In, Out any](items []In, work func(In) Out, emit func(Out) error) error {
	if len(items) == 1 {
		return emit(work(items[0]))
	}
	processors := runtime.GOMAXPROCS(0)
	free := make(chan struct{}, processors)
	results := make(chan chan done[Out], ahead*processors)
	stop := make(chan struct{})
	go func() {
		defer close(results)
		for _, item := range items {
			select {
			case <-stop:
				return
			case free <- struct{}{}:
			}
			result := make(chan done[Out], 1)
			go func() {
				result <- doing(work, item)
				<-free
			}()
			results <- result
		}
	}()

	var failed error
	var panicked any
	for result := range results {
		r := <-result
		if failed != nil || panicked != nil {
			continue
		}
		if panicked = r.panicked; panicked == nil {
			failed = emit(r.out)
		}
		if failed != nil || panicked != nil {
			close(stop)
		}
	}
	if panicked != nil {
		panic(panicked)
	}
	return failed
}

// A done is the result of one item, or the panic that it came to.
type done[Out any] struct {
	out      Out
	panicked any
}

func doing[In, Out any](work func(In) Out, item In) (d done[Out]) {
	defer func() {
		if r := recover(); r != nil {
			d.panicked = fmt.Sprintf("%v\n%s", r, debug.Stack())
		}
	}()
	d.out = work(item)
	return d
}
