// Where somebody writes lights on the live page, and what they pick there is where they
// write next.

package editor

import (
	"context"

	"pullscore/cmd/internal/lsp"
	"pullscore/lang"
)

// cursor lights the pull at the cursor on the live page. Clients send it as the
// notification pullscore/cursor, with the place as the protocol writes places.
func (s *Server) cursor(p *lsp.PositionParams) {
	if s.options.Point == nil {
		return
	}
	now, nth := s.newest.Load(), s.cursors.Add(1)
	s.helpers.Go(func() {
		d, err := now.document(p.TextDocument.URI)
		if err != nil || !d.plan {
			return
		}
		read, err := now.plan(s.ctx, d.uri)
		if err != nil {
			return
		}
		offset := now.offset(d, p.Position)
		shots := read.shotIn(d, offset)
		if len(shots) != 1 || s.newest.Load() != now || s.cursors.Load() != nth {
			return // above the shots, or there is something newer
		}
		number := 0
		if pull := pullOf(shots[0], statementAt(d.tree(), offset)); pull != nil {
			number = pull.Number
		}
		s.options.Point(d.path, shots[0].ID, number)
	})
}

// picked has the client show the statement of a pull that somebody has picked on the live
// page.
func (s *Server) picked(file string, line, column int) {
	now := s.newest.Load()
	if now == nil || s.ctx.Err() != nil || !now.client.Window.ShowDocument.Support {
		return
	}
	d, err := now.at(file)
	if err != nil {
		return
	}
	var one lang.Statement
	for at := range everything(d.tree()) {
		if start := at.Range().Start; start.Line == line && start.Column == column {
			one = at
		}
	}
	if one == nil {
		return
	}
	selection := now.ranged(d, one.Range().Start.Offset, one.Range().End.Offset)
	s.helpers.Go(func() {
		ctx, cancel := context.WithTimeout(s.ctx, patience)
		defer cancel()
		var shown lsp.ShowDocumentResult
		if err := s.conn.Call(ctx, "window/showDocument", lsp.ShowDocumentParams{URI: d.uri, TakeFocus: true, Selection: &selection}, &shown); err != nil && s.ctx.Err() == nil {
			s.log("the statement of a pull cannot be shown: " + err.Error())
		}
	})
}
