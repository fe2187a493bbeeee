package files

import "runtime"

// ahead is how many results for each processor may wait for their turn: enough
// that one slow item does not stop the others, few enough to hold in memory.
const ahead = 4

// InOrder calls work for every item, as many at a time as there are processors,
// and emit with each result in the order of the items, from the calling
// goroutine. The first error of emit ends it and is returned; work that has
// begun is then waited for, so that none of it outlives the call.
func InOrder[In, Out any](items []In, work func(In) Out, emit func(Out) error) error {
	if len(items) == 1 {
		return emit(work(items[0]))
	}
	processors := runtime.GOMAXPROCS(0)
	free := make(chan struct{}, processors)
	results := make(chan chan Out, ahead*processors)
	stop := make(chan struct{})
	go func() {
		defer close(results)
		for _, item := range items {
			select {
			case <-stop:
				return
			case free <- struct{}{}:
			}
			result := make(chan Out, 1)
			go func() {
				result <- work(item)
				<-free
			}()
			results <- result
		}
	}()

	var failed error
	for result := range results {
		out := <-result
		if failed != nil {
			continue
		}
		if failed = emit(out); failed != nil {
			close(stop)
		}
	}
	return failed
}
