// The event stream: every browser gets the newest state as soon as it can take
// it, and none can hold anything up.

package preview

import (
	"fmt"
	"net/http"
	"slices"
	"sync"
	"time"
)

const (
	maxStreams = 64               // browsers at a time
	beat       = 15 * time.Second // between signs of life
	writeTime  = 10 * time.Second // that a browser may take for a message
	retryTime  = 500 * time.Millisecond
)

// streams are the connected browsers.
type streams struct {
	mu     sync.Mutex
	open   map[chan *view]chan string // with what is pointed at, as an event
	last   pointed                    // what was pointed at last; N is 0 before the first
	ended  chan struct{}              // closed at the end
	closed bool
}

func newStreams() *streams {
	return &streams{open: map[chan *view]chan string{}, ended: make(chan struct{})}
}

// join returns a channel that always holds the newest view not yet taken, and one that holds
// the last event of what is pointed at; ok is false where there are too many browsers, or
// the end has come.
func (s *streams) join() (views chan *view, points chan string, ok bool) {
	s.mu.Lock()
	defer s.mu.Unlock()
	if s.closed || len(s.open) >= maxStreams {
		return nil, nil, false
	}
	views, points = make(chan *view, 1), make(chan string, 1)
	if s.last.N > 0 {
		old := s.last
		old.Old = true
		points <- old.event()
	}
	s.open[views] = points
	return views, points, true
}

func (s *streams) leave(views chan *view) {
	s.mu.Lock()
	defer s.mu.Unlock()
	delete(s.open, views)
}

// send puts a view in every channel, in the place of one not yet taken.
func (s *streams) send(v *view) {
	s.mu.Lock()
	defer s.mu.Unlock()
	for views := range s.open {
		select {
		case <-views:
		default:
		}
		views <- v // empty now, and only send fills it
	}
}

// point puts what is pointed at in every channel, in the place of what was not yet taken.
func (s *streams) point(at toldPoint) {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.last = pointed{toldPoint: at, N: s.last.N + 1}
	event := s.last.event()
	for _, points := range s.open {
		select {
		case <-points:
		default:
		}
		points <- event // empty now, and only point fills it
	}
}

// close ends all streams.
func (s *streams) close() {
	s.mu.Lock()
	defer s.mu.Unlock()
	if !s.closed {
		s.closed = true
		close(s.ended)
	}
}

// getEvents streams the states, from the first that was shown on. A browser that comes back says which it had
// last, and gets the newest only if that is another.
func (s *Server) getEvents(w http.ResponseWriter, r *http.Request) {
	views, points, ok := s.streams.join()
	if !ok {
		w.Header().Set("Retry-After", "5")
		http.Error(w, "Too many pages are open.", http.StatusServiceUnavailable)
		return
	}
	defer s.streams.leave(views)
	h := w.Header()
	h.Set("Content-Type", "text/event-stream")
	h.Set("Cache-Control", "no-store")
	st := stream{w: w, control: http.NewResponseController(w), server: s, at: spotOf(r)}
	hello := fmt.Sprintf("retry: %d\n\n", retryTime.Milliseconds())
	if v := s.shown.Load(); v.state.Version > 0 && v.id != r.Header.Get("Last-Event-ID") {
		hello += st.events(v)
	}
	if st.write(hello) != nil {
		return
	}
	ticker := time.NewTicker(beat)
	defer ticker.Stop()
	for {
		text := ": \n\n"
		select {
		case <-s.streams.ended:
			return
		case <-r.Context().Done():
			return
		case v := <-views:
			text = st.events(v)
		case text = <-points:
		case <-ticker.C:
		}
		if st.write(text) != nil {
			return
		}
	}
}

// A stream is the way to one browser.
type stream struct {
	w       http.ResponseWriter
	control *http.ResponseController
	server  *Server
	at      spot     // that the browser has in sight
	tags    []string // of the score there, as last sent
}

// events returns a view as events, the page in sight first if any page of its score is another
// than before: to ask for it would take a browser longer than all else.
func (st *stream) events(v *view) string {
	told, ok, err := st.server.sheet(v, st.at)
	if err != nil || !ok || slices.Equal(told.Tags, st.tags) {
		return v.event() // of an error the browser is told when it asks
	}
	st.tags = told.Tags
	return fmt.Sprintf("event: sheet\ndata: %s\n\n%s", mustJSON(told), v.event())
}

// write sends a text at once, or fails when the browser does not take it.
func (st *stream) write(text string) error {
	if err := st.control.SetWriteDeadline(time.Now().Add(writeTime)); err != nil {
		return err
	}
	if _, err := st.w.Write([]byte(text)); err != nil {
		return err
	}
	return st.control.Flush()
}
