// What waits to be written. A client may send much before it reads any answer; if the
// server then waited to write, both would wait for ever. So messages queue here, and a
// goroutine of its own writes them.

package lsp

import (
	"context"
	"sync"
)

type outbox struct {
	mu      sync.Mutex
	changed *sync.Cond
	queue   [][]byte
	writing bool
	closed  bool
	err     error // of the first write that failed; nothing is written after it
}

func newOutbox() *outbox {
	o := &outbox{}
	o.changed = sync.NewCond(&o.mu)
	return o
}

// put queues a message. It drops it if nobody can be told any more.
func (o *outbox) put(message []byte) {
	o.mu.Lock()
	defer o.mu.Unlock()
	if o.err == nil && !o.closed {
		o.queue = append(o.queue, message)
		o.changed.Broadcast()
	}
}

// run writes what comes until the outbox is closed and empty.
func (o *outbox) run(t Transport) {
	o.mu.Lock()
	defer o.mu.Unlock()
	for {
		for len(o.queue) == 0 {
			if o.closed {
				return
			}
			o.changed.Wait()
		}
		next := o.queue[0]
		o.queue = o.queue[1:]
		o.writing = true
		o.mu.Unlock()
		err := t.Write(next)
		o.mu.Lock()
		o.writing = false
		if err != nil && o.err == nil {
			o.err, o.queue = err, nil
		}
		o.changed.Broadcast()
	}
}

// close ends run when all is written.
func (o *outbox) close() {
	o.mu.Lock()
	defer o.mu.Unlock()
	o.closed = true
	o.changed.Broadcast()
}

// written waits until everything is written, or until ctx is done.
func (o *outbox) written(ctx context.Context) {
	stop := context.AfterFunc(ctx, func() {
		o.mu.Lock()
		defer o.mu.Unlock()
		o.changed.Broadcast()
	})
	defer stop()
	o.mu.Lock()
	defer o.mu.Unlock()
	for (len(o.queue) > 0 || o.writing) && ctx.Err() == nil {
		o.changed.Wait()
	}
}
