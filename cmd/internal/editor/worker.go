// Interprets the newest snapshot and publishes what it comes to. There is no timer: what
// comes while a plan is interpreted is one next turn, so a slow machine tells less often
// and never later than it must.

package editor

import (
	"context"
	"encoding/json"

	"pullscore/cmd/internal/lsp"
)

// A worker knows what the client has been told. Only its own goroutine uses it.
type worker struct {
	server *Server
	told   map[string]*reading // by path: what the lists of now were made of
	in     map[string]paths    // by real path: the plans of told that have findings in a file
	sent   map[string]sent     // by real path
	dirty  map[string]bool     // real paths of files whose lists may have changed
	stale  bool                // a client that asks has an old list
}

// Paths is a set.
type paths map[string]bool

// A sent is the list of one file as it was published.
type sent struct {
	uri     string
	version *int32
	list    string // as JSON
}

func newWorker(s *Server) *worker {
	return &worker{server: s, told: map[string]*reading{}, in: map[string]paths{}, sent: map[string]sent{}, dirty: map[string]bool{}}
}

// run works until ctx is done.
func (w *worker) run(ctx context.Context) {
	for {
		select {
		case <-ctx.Done():
			return
		case <-w.server.wake:
		}
		w.server.conn.Written(ctx)
		turn, overtake := context.WithCancel(ctx)
		w.server.overtake.Store(&overtake) // before the newest is taken, so that none is missed
		w.safely("a turn", func() { w.turn(turn, w.server.newest.Load()) })
		overtake()
	}
}

// safely calls f; a panic becomes one line in the log, and work goes on with the next
// change.
func (w *worker) safely(doing string, f func()) {
	defer func() {
		if r := recover(); r != nil {
			w.server.log(lsp.Panicked(doing, r))
		}
	}()
	f()
}

// read interprets a plan, if it is not interpreted yet, and notes whose lists may change.
func (w *worker) read(ctx context.Context, s *snapshot, path string) {
	d, err := s.at(path)
	if err != nil { // lost, or gone
		w.drop(path)
		return
	}
	old := w.told[path]
	if old != nil && old.holds(s) {
		return
	}
	var r *reading
	w.safely(path, func() { r, _ = s.shared.plans.get(ctx, s, d.path) })
	if r == nil || r == old {
		return
	}
	w.drop(path)
	w.told[path] = r
	for real := range r.findings {
		w.dirty[real] = true
		if w.in[real] == nil {
			w.in[real] = paths{}
		}
		w.in[real][path] = true
	}
	w.dirty[d.real] = true
}

// drop forgets what a plan came to, and notes the files that it has findings in.
func (w *worker) drop(path string) {
	r := w.told[path]
	if r == nil {
		return
	}
	delete(w.told, path)
	for real := range r.findings {
		w.dirty[real] = true
		if delete(w.in[real], path); len(w.in[real]) == 0 {
			delete(w.in, real)
		}
	}
}

// publish sends the list of a file, by its real path, if it is not what was sent last.
func (w *worker) publish(s *snapshot, real string) {
	delete(w.dirty, real)
	d, before := s.reals[real], w.sent[real]
	if d != nil && d.lost {
		return
	}
	now := sent{uri: uriOf(real)}
	if before.uri != "" {
		now.uri = before.uri
	}
	if d != nil {
		now.uri, now.version = d.uri, &d.version
	}
	readings := w.readings(s, real)
	if d == nil && len(readings) > 0 {
		now.uri = uriOf(readings[0].pathOf(real))
	}
	list := s.diagnostics(real, readings)
	text, err := json.Marshal(list)
	if err != nil {
		w.server.log(err.Error())
		return
	}
	now.list = string(text)
	if before.uri != "" && before.uri != now.uri && before.list != "[]" {
		w.send(before.uri, nil, []lsp.Diagnostic{}) // it has another name now
		before = sent{}
	}
	same := now.list == before.list || before.uri == "" && len(list) == 0
	switch {
	case same && (now.version == nil || before.version != nil && *now.version == *before.version):
	case d != nil && s.pulls: // it asks
		w.stale = w.stale || now.list != before.list && d.uri != s.edited
	default:
		w.send(now.uri, now.version, list)
	}
	if w.sent[real] = now; d == nil && len(list) == 0 {
		delete(w.sent, real)
	}
}

func (w *worker) send(uri string, version *int32, list []lsp.Diagnostic) {
	w.server.conn.Notify("textDocument/publishDiagnostics", lsp.PublishDiagnosticsParams{URI: uri, Version: version, Diagnostics: list})
}

// readings returns what has findings in a file: its own reading first.
func (w *worker) readings(s *snapshot, real string) (list []*reading) {
	for path := range w.in[real] {
		list = append(list, w.told[path])
	}
	sortStable(list, func(a, b *reading) int { return compareReadings(a, b, real) })
	return list
}
