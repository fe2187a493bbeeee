// The server: from an address to answered requests, and its end.

package preview

import (
	"context"
	"crypto/rand"
	"errors"
	"fmt"
	"log"
	"net"
	"net/http"
	"net/netip"
	"sync/atomic"
	"time"

	"pullscore/cmd/internal/rebuild"
)

// Options are what the user of a Server chooses.
type Options struct {
	// Addr is where to listen, host:port; port 0 takes a free one. Empty:
	// a free port of 127.0.0.1.
	Addr string
	// Folder is the folder that the program works in. With a port that was
	// chosen, it names the token of the address from run to run.
	Folder string
	// NewToken makes another token, and keeps that.
	NewToken bool
	// Tokens is where tokens are kept; empty: with the user's caches.
	Tokens string
	// Picked, where it is set, is told of the pull that somebody picks on the page: where
	// its statement stands, line and column from 1. Several goroutines call it.
	Picked func(file string, line, column int)
}

// A Server serves the live page. New listens, Serve answers.
type Server struct {
	listener net.Listener
	http     *http.Server
	hosts    hosts
	access   string // the token in the address; empty on loopback
	unkept   error  // why the token will be another at the next start; nil: it will not
	run      string // names this run of the program to the page
	token    string // what a request that writes must bring
	assets   *assets
	shown    atomic.Pointer[view]
	streams  *streams
	screens  screens
	results  results
	picked   func(file string, line, column int)
}

// Time limits. Nothing but the event stream stays open for long, and that
// renews its limit with each message.
const (
	headerTime   = 5 * time.Second
	requestTime  = 10 * time.Second
	idleTime     = time.Minute
	shutdownTime = 500 * time.Millisecond
	headerBytes  = 16 << 10
)

// New listens at the address. Nothing is answered before Serve is called.
func New(opt Options) (*Server, error) {
	if opt.Addr == "" {
		opt.Addr = "127.0.0.1:0"
	}
	host, _, err := net.SplitHostPort(opt.Addr)
	if err != nil {
		return nil, fmt.Errorf("address %q: want host:port", opt.Addr)
	}
	listener, err := net.Listen("tcp", opt.Addr)
	if err != nil {
		return nil, fmt.Errorf("the live page: %w", err)
	}
	s := &Server{
		listener: listener,
		run:      rand.Text(),
		token:    rand.Text(),
		streams:  newStreams(),
		picked:   opt.Picked,
	}
	at := netip.MustParseAddrPort(listener.Addr().String())
	s.hosts = hosts{named: host, port: fmt.Sprint(at.Port()), open: !at.Addr().Unmap().IsLoopback()}
	if s.hosts.open {
		s.access, s.unkept = rand.Text(), nil
		if _, port, _ := net.SplitHostPort(opt.Addr); port != "0" { // else the address is another anyway
			s.access, s.unkept = accessToken(opt.Tokens, s.hosts.port, opt.Folder, opt.NewToken, time.Now())
		}
	}
	s.assets = loadAssets()
	s.shown.Store(newView(s, &rebuild.State{}, nil))
	s.http = &http.Server{
		Handler:           s.guard(s.mux()),
		ReadHeaderTimeout: headerTime,
		ReadTimeout:       requestTime,
		WriteTimeout:      requestTime,
		IdleTimeout:       idleTime,
		MaxHeaderBytes:    headerBytes,
		ErrorLog:          log.New(discard{}, "", 0),
	}
	return s, nil
}

// discard drops what net/http says of connections that clients broke off.
type discard struct{}

func (discard) Write(b []byte) (int, error) { return len(b), nil }

// URL returns the address to open in a browser, with the token where one is
// needed.
func (s *Server) URL() string {
	url := "http://" + s.hosts.authority() + "/"
	if s.access != "" {
		url += "?" + accessParam + "=" + s.access
	}
	return url
}

// Open reports whether others than this machine can reach the address.
func (s *Server) Open() bool { return s.hosts.open }

// Unkept returns why the address will be another at the next start, or nil.
func (s *Server) Unkept() error { return s.unkept }

// Show hands a new state to every browser that is connected. It never waits
// for one. States come one after the other, and are not changed afterwards.
func (s *Server) Show(state *rebuild.State) {
	v := newView(s, state, s.shown.Load())
	s.shown.Store(v)
	s.streams.send(v)
}

// Serve answers requests until the context ends; then it closes all
// connections, within a second, and returns nil.
func (s *Server) Serve(ctx context.Context) error {
	failed := make(chan error, 1)
	go func() { failed <- s.http.Serve(s.listener) }()
	select {
	case err := <-failed:
		s.streams.close()
		return fmt.Errorf("the live page: %w", err)
	case <-ctx.Done():
	}
	s.streams.close()
	ending, cancel := context.WithTimeout(context.Background(), shutdownTime)
	defer cancel()
	if err := s.http.Shutdown(ending); errors.Is(err, context.DeadlineExceeded) {
		return s.http.Close()
	} else if err != nil {
		return fmt.Errorf("closing the live page: %w", err)
	}
	return nil
}
