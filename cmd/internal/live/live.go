// Package live serves the live page of plans that somebody is writing in an editor: of
// the texts as they stand there, saved or not.
package live

import (
	"context"
	"errors"
	"fmt"
	"net/url"
	"runtime/debug"
	"sync"

	"pullscore/cmd/internal/preview"
	"pullscore/cmd/internal/rebuild"
)

// Read returns the text of a file.
type Read = func(path string) ([]byte, error)

// A Page is served on a free port of this machine from the first Open until Close.
// Several goroutines may use it.
type Page struct {
	Log func(line string) // what goes wrong; several goroutines call it
	// Picked, where it is set before the first Open, is told where the statement of a pull
	// stands that somebody picks on the page.
	Picked func(file string, line, column int)

	drawing sync.Mutex // whoever holds it uses drafts and server
	drafts  *rebuild.Drafts
	server  *preview.Server

	mu     sync.Mutex
	latest Read          // of the texts that are not shown yet; nil: all are
	wake   chan struct{} // there are such; nil: the page is not served
	closed bool
	ctx    context.Context
	stop   context.CancelFunc
	works  sync.WaitGroup
}

// Open adds a plan to the page, with the texts of now, and returns the address that shows
// the shot of it; without a shot, the first.
func (p *Page) Open(path, shot string, read Read) (address string, err error) {
	p.drawing.Lock()
	defer p.drawing.Unlock()
	if err := p.serve(); err != nil {
		return "", err
	}
	key := p.drafts.Add(path)
	state := p.drafts.Read(p.ctx, read)
	if p.ctx.Err() != nil {
		return "", errClosed
	}
	p.server.Show(state)
	if plan := state.Plan(key); shot == "" && len(plan.Latest.Shots) > 0 {
		shot = plan.Latest.Shots[0].ID
	}
	// Some programs write a slash behind the # so on the way to the browser; here it comes so.
	return p.server.URL() + "#" + key + "%2F" + url.PathEscape(shot), nil
}

var errClosed = errors.New("the live page is closed")

// serve begins to serve, if nobody has yet.
func (p *Page) serve() error {
	p.mu.Lock()
	defer p.mu.Unlock()
	if p.closed {
		return errClosed
	}
	if p.server != nil {
		return nil
	}
	server, err := preview.New(preview.Options{Picked: p.Picked})
	if err != nil {
		return err
	}
	p.server, p.drafts, p.wake = server, rebuild.NewDrafts(), make(chan struct{}, 1)
	p.ctx, p.stop = context.WithCancel(context.Background())
	p.works.Go(func() {
		if err := server.Serve(p.ctx); err != nil {
			p.Log(err.Error())
		}
	})
	p.works.Go(p.follow)
	return nil
}

// Turned has the page show other texts, as soon as those before are drawn. It returns at
// once. Before the first Open it does nothing.
func (p *Page) Turned(read Read) {
	p.mu.Lock()
	defer p.mu.Unlock()
	if p.wake == nil {
		return
	}
	p.latest = read
	select {
	case p.wake <- struct{}{}:
	default: // it looks anyway
	}
}

// follow shows what comes. Texts that are overtaken while others are drawn are left out.
func (p *Page) follow() {
	for {
		select {
		case <-p.ctx.Done():
			return
		case <-p.wake:
		}
		p.draw()
	}
}

func (p *Page) draw() {
	p.drawing.Lock()
	defer p.drawing.Unlock()
	p.mu.Lock()
	read := p.latest
	p.latest = nil
	p.mu.Unlock()
	if read == nil {
		return
	}
	defer func() { // a text that cannot be drawn leaves the page as it is, until the next
		if r := recover(); r != nil {
			p.Log(fmt.Sprintf("panic in drawing: %v; %q", r, debug.Stack()))
		}
	}()
	if state := p.drafts.Read(p.ctx, read); p.ctx.Err() == nil {
		p.server.Show(state)
	}
}

// Point has the page light a pull of a shot, if the plan is on it; pull 0 lights none.
func (p *Page) Point(path, shot string, pull int) {
	p.drawing.Lock()
	defer p.drawing.Unlock()
	if p.server == nil || p.ctx.Err() != nil {
		return
	}
	if key, ok := p.drafts.Key(path); ok {
		p.server.Point(key, shot, pull)
	}
}

// Close ends the page, within a second. Nothing opens it again.
func (p *Page) Close() {
	p.mu.Lock()
	p.closed = true
	stop := p.stop
	p.mu.Unlock()
	if stop != nil {
		stop()
		p.works.Wait()
	}
}
