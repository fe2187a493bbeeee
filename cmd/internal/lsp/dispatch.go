// The way of a message. One goroutine reads. It hands notifications to the handler one
// by one, in the order of the wire. It hands over requests in the same order, and the
// handler returns the work that answers one: so a request sees exactly what came before
// it. The work itself runs beside that of other requests, at most one for each processor.
// An answer may therefore overtake another, which the protocol allows.

package lsp

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"runtime"
	"runtime/debug"
	"strconv"
	"sync"
	"time"
)

// A Work answers one request. It ends early, with the error of ctx, if the client
// cancels the request.
type Work func(ctx context.Context) (any, error)

// A Handler answers a client. Only one of its methods runs at a time, and each returns
// soon.
type Handler interface {
	// Notify takes a notification. It ignores one that it does not know.
	Notify(method string, params json.RawMessage)
	// Request returns the work that answers a request, or an error as the answer.
	Request(method string, params json.RawMessage) (Work, error)
}

// patience is how long a client may take to read the last answers.
const patience = 2 * time.Second

// A Conn is the server's side of a connection to one client.
type Conn struct {
	t   Transport
	log func(line string)
	out *outbox

	slots chan struct{} // one for each request that may run
	works sync.WaitGroup

	mu      sync.Mutex
	running map[string]context.CancelCauseFunc // by ID
	asked   map[string]chan *Message           // what the client was asked, by ID
	calls   int
}

// NewConn returns a connection. log is given one line at a time; several goroutines call
// it.
func NewConn(t Transport, log func(line string)) *Conn {
	return &Conn{
		t: t, log: log, out: newOutbox(), slots: make(chan struct{}, runtime.GOMAXPROCS(0)),
		running: map[string]context.CancelCauseFunc{}, asked: map[string]chan *Message{},
	}
}

// errCancelled is why a request ends early.
var errCancelled = Errorf(RequestCancelled, "the request was cancelled")

// Serve answers the client until it says exit, or until its messages end. ended is nil
// after exit, io.EOF if the messages end without it, and else the error of reading, such
// as a *FrameError.
func (c *Conn) Serve(ctx context.Context, h Handler) (ended error) {
	ctx, stop := context.WithCancel(ctx)
	wrote := make(chan struct{})
	go func() {
		c.out.run(c.t)
		close(wrote)
	}()
	ended = c.read(ctx, h)
	if ended == nil {
		stop() // nobody waits for what still runs; where the messages just end, somebody may
	}
	c.works.Wait()
	stop()
	c.out.close()
	select {
	case <-wrote:
	case <-time.After(patience): // a client that has stopped reading
	}
	return ended
}

// read takes messages until there are no more.
func (c *Conn) read(ctx context.Context, h Handler) error {
	for {
		text, err := c.t.Read()
		if err != nil {
			return err
		}
		m, fault := parse(text)
		switch {
		case fault != nil:
			c.refuse(m, fault)
		case m.Method == "exit":
			return nil
		case m.Method == "$/cancelRequest":
			c.cancel(m.Params)
		case m.Method == "":
			c.answered(m)
		case m.ID == nil:
			c.safely(m.Method, func() error { h.Notify(m.Method, m.Params); return nil })
		default:
			c.request(ctx, h, m)
		}
	}
}

// refuse answers what is no message. A notification has no answer.
func (c *Conn) refuse(m *Message, fault *Error) {
	id := null
	if m != nil {
		if m.ID == nil && m.Method != "" {
			return
		}
		if isID(m.ID) {
			id = m.ID
		}
	}
	c.send(&Message{ID: id, Error: fault})
}

// request runs the work of a request.
func (c *Conn) request(ctx context.Context, h Handler, m *Message) {
	var work Work
	err := c.safely(m.Method, func() (err error) {
		work, err = h.Request(m.Method, m.Params)
		return err
	})
	if err != nil {
		c.reply(m.ID, nil, err)
		return
	}
	ctx, cancel := context.WithCancelCause(ctx)
	key := string(m.ID)
	c.mu.Lock()
	c.running[key] = cancel
	c.mu.Unlock()
	c.works.Go(func() {
		defer cancel(nil)
		result, err := c.work(ctx, m.Method, work)
		c.mu.Lock()
		delete(c.running, key)
		c.mu.Unlock()
		c.reply(m.ID, result, err)
	})
}

// work waits for a free processor and does the work.
func (c *Conn) work(ctx context.Context, method string, work Work) (result any, err error) {
	select {
	case c.slots <- struct{}{}:
		defer func() { <-c.slots }()
	case <-ctx.Done():
		return nil, errCancelled
	}
	err = c.safely(method, func() (err error) {
		result, err = work(ctx)
		return err
	})
	if err != nil && ctx.Err() != nil && errors.Is(err, context.Canceled) {
		err = errCancelled
	}
	return result, err
}

// safely calls f. A panic becomes an InternalError and one line in the log.
func (c *Conn) safely(method string, f func() error) (err error) {
	defer func() {
		if r := recover(); r != nil {
			c.log(Panicked(method, r))
			err = Errorf(InternalError, "Pullscore failed at %s: %v", method, r)
		}
	}()
	return f()
}

// Panicked returns one line on a panic: what was done, the value, and where it was.
func Panicked(doing string, value any) string {
	return fmt.Sprintf("panic in %s: %v; %q", doing, value, debug.Stack())
}

// reply sends the answer to a request.
func (c *Conn) reply(id ID, result any, err error) {
	m := &Message{ID: id}
	if err == nil {
		m.Result, err = encode(result)
		if err != nil {
			err = Errorf(InternalError, "the answer is no JSON: %v", err)
		}
	}
	if err != nil {
		m.Result, m.Error = nil, asError(err)
	}
	c.send(m)
}

func (c *Conn) send(m *Message) {
	m.JSONRPC = version
	text, err := encode(m)
	if err != nil {
		c.log(fmt.Sprintf("a message is no JSON: %v", err))
		return
	}
	c.out.put(text)
}

// cancel ends a request that still runs.
func (c *Conn) cancel(params json.RawMessage) {
	var p struct{ ID ID }
	if json.Unmarshal(params, &p) != nil {
		return
	}
	c.mu.Lock()
	defer c.mu.Unlock()
	if cancel := c.running[string(p.ID)]; cancel != nil {
		cancel(errCancelled)
	}
}

// Notify tells the client something.
func (c *Conn) Notify(method string, params any) {
	text, err := encode(params)
	if err != nil {
		c.log(fmt.Sprintf("%s: %v", method, err))
		return
	}
	c.send(&Message{Method: method, Params: text})
}

// Call asks the client and waits for its answer. result may be nil. Never call it from a
// method of the Handler, which would keep the answer from being read.
func (c *Conn) Call(ctx context.Context, method string, params, result any) error {
	text, err := encode(params)
	if err != nil {
		return err
	}
	answer := make(chan *Message, 1)
	c.mu.Lock()
	c.calls++
	id := strconv.Itoa(c.calls)
	c.asked[id] = answer
	c.mu.Unlock()
	defer func() {
		c.mu.Lock()
		delete(c.asked, id)
		c.mu.Unlock()
	}()
	c.send(&Message{ID: ID(id), Method: method, Params: text})
	select {
	case m := <-answer:
		if m.Error != nil {
			return m.Error
		}
		if result == nil {
			return nil
		}
		return json.Unmarshal(m.Result, result)
	case <-ctx.Done():
		return ctx.Err()
	}
}

// answered takes the client's answer to a Call.
func (c *Conn) answered(m *Message) {
	c.mu.Lock()
	defer c.mu.Unlock()
	if answer := c.asked[string(m.ID)]; answer != nil {
		delete(c.asked, string(m.ID))
		answer <- m
	}
}

// Written waits until the client has been sent everything, or until ctx is done. What
// tells much waits here, so that it does not run ahead of a slow client.
func (c *Conn) Written(ctx context.Context) { c.out.written(ctx) }

// Ended says how a connection ended, as an exit code: 0 after shutdown and exit, 1 after
// exit alone or if the messages just ended, 2 after a frame that cannot be read.
func Ended(err error, shutDown bool) int {
	var frame *FrameError
	switch {
	case errors.As(err, &frame):
		return 2
	case err == nil && shutDown:
		return 0
	case err == nil || errors.Is(err, io.EOF):
		return 1
	}
	return 2
}
