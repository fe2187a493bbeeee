// From initialize to exit.

package editor

import (
	"cmp"
	"context"
	"encoding/json"
	"sync"
	"sync/atomic"

	"pullscore/cmd/internal/lsp"
	"pullscore/interp"
)

// Options of a server.
type Options struct {
	Version string            // of the program
	Log     func(line string) // what the program has to say; several goroutines call it
	// Turned, where it is set, is called whenever everything that is open has been told.
	// read gives the texts of that moment, unsaved ones included: what a live page of
	// them needs. It returns soon.
	Turned func(read func(path string) ([]byte, error))
	// Point, where it is set, lights a pull of a shot on the live page; pull 0 lights none.
	Point func(path, shot string, pull int)
	// Picked, where it is set, is given what to call when somebody picks a pull on the live
	// page, with the place of its statement.
	Picked func(call func(file string, line, column int))
	// Page, where it is set, shows a shot of a plan on a live page of the texts that read
	// gives, and returns its address. Without a shot it shows the first.
	Page func(path, shot string, read func(path string) ([]byte, error)) (address string, err error)

	// Other limits than the constants of these names, if tests want some.
	maxPlans, maxHeld int
}

// A Server answers one client.
type Server struct {
	options Options
	conn    *lsp.Conn
	shared  *shared

	state  state                    // only the reading goroutine uses it
	newest atomic.Pointer[snapshot] // only the reading goroutine sets it
	wake   chan struct{}            // there is a newer snapshot
	// overtake ends the turn of the worker that is under way.
	overtake atomic.Pointer[context.CancelFunc]
	watches  atomic.Bool     // the client tells of files that change on disk
	ctx      context.Context // of the whole session
	helpers  sync.WaitGroup
	cursors  atomic.Int64 // how many places of the cursor have come
}

// state is how far a session is.
type state int

const (
	fresh    state = iota // before initialize
	ready                 // after it
	shutDown              // after shutdown
)

// mostParsed is how many bytes of texts may have been parsed to what is kept: those of two
// cuts as large as may be.
const mostParsed = 256 << 20

// Serve answers a client until it says exit or goes away. It returns the exit code: 0
// after shutdown and exit, 1 after exit alone or if the messages end, 2 if a frame cannot
// be read; err is then why.
func Serve(ctx context.Context, t lsp.Transport, o Options) (code int, err error) {
	s := &Server{options: o, conn: lsp.NewConn(t, o.Log), wake: make(chan struct{}, 1)}
	ctx, stop := context.WithCancel(ctx)
	s.ctx = ctx
	s.shared = &shared{disk: newDisk(), plans: &plans{last: map[string]*flight{}}, workspace: &workspace{most: cmp.Or(o.maxPlans, maxPlans), tooLarge: s.tooLarge}, parsed: interp.NewCache(mostParsed)}
	if o.Page != nil {
		s.shared.page, s.shared.browse = s.page, s.browse
	}
	if o.Picked != nil {
		o.Picked(s.picked)
	}
	s.helpers.Go(func() { newWorker(s).run(ctx) })
	err = s.conn.Serve(ctx, s)
	stop()
	s.helpers.Wait()
	return lsp.Ended(err, s.state == shutDown), err
}

func (s *Server) log(line string) { s.options.Log(line) }

// show makes a snapshot the newest, and wakes the worker.
func (s *Server) show(next *snapshot) {
	s.newest.Store(next)
	if overtake := s.overtake.Load(); overtake != nil {
		(*overtake)()
	}
	select {
	case s.wake <- struct{}{}:
	default: // it looks again anyway
	}
}

// again wakes the worker after a change on disk.
func (s *Server) again() {
	next := *s.newest.Load()
	s.show(&next)
}

// turned is called after a whole turn of the worker.
func (s *Server) turned(now *snapshot) {
	if s.options.Turned == nil {
		return
	}
	s.options.Turned(now.readFile)
}

// page shows a shot on the live page. It gives the newest texts of each moment: what the
// page shows later, by turned, is never older.
func (s *Server) page(path, shot string) (address string, err error) {
	return s.options.Page(path, shot, func(path string) ([]byte, error) { return s.newest.Load().readFile(path) })
}

func (s *Server) tooLarge() {
	s.conn.Notify("window/showMessage", lsp.ShowMessageParams{
		Type:    lsp.MessageWarning,
		Message: "This workspace has more files than Pullscore follows. It reads the plans that are open and the files that they use.",
	})
}

// initialize answers the first request of a client.
func (s *Server) initialize(params json.RawMessage) (lsp.Work, error) {
	p := &lsp.InitializeParams{}
	if err := json.Unmarshal(params, p); err != nil {
		return nil, lsp.Errorf(lsp.InvalidParams, "initialize: %v", err)
	}
	now := &snapshot{settings: newSettings(p), shared: s.shared, open: map[string]*document{}, reals: map[string]*document{}}
	s.state = ready
	s.newest.Store(now)
	result := lsp.InitializeResult{
		Capabilities: now.capabilities(),
		ServerInfo:   lsp.ServerInfo{Name: source, Version: s.options.Version},
	}
	return func(context.Context) (any, error) { return result, nil }, nil
}

func (s *Server) initialized() {
	if s.newest.Load().client.Workspace.DidChangeWatchedFiles.DynamicRegistration {
		s.helpers.Go(func() { s.watch(s.ctx) })
	}
}
