// What a client can have done: the score on the live page, of unsaved text.

package editor

import (
	"context"
	"encoding/json"
	"slices"

	"pullscore/cmd/internal/lsp"
)

// pageCommand opens the live page. Its arguments are the URI of a plan and, if one is
// wanted, the ID of a shot.
const pageCommand = "pullscore.page"

func offerCommands(s *snapshot, c *lsp.ServerCapabilities) {
	if s.shared.page != nil {
		c.ExecuteCommandProvider = &lsp.ExecuteCommandOptions{Commands: []string{pageCommand}}
	}
}

// executeCommand shows a plan on the live page and answers with the address. It does not
// wait for the browser: a client may ask its user first.
func executeCommand(_ context.Context, s *snapshot, p *lsp.ExecuteCommandParams) (any, error) {
	if p.Command != pageCommand || s.shared.page == nil {
		return nil, lsp.Errorf(lsp.InvalidParams, "Pullscore has no command %.100q", p.Command)
	}
	var said [2]string // URI, shot
	if len(p.Arguments) == 0 || len(p.Arguments) > len(said) {
		return nil, lsp.Errorf(lsp.InvalidParams, "%s wants the URI of a plan, and at most a shot", pageCommand)
	}
	for i, argument := range p.Arguments {
		if err := json.Unmarshal(argument, &said[i]); err != nil {
			return nil, lsp.Errorf(lsp.InvalidParams, "%s: %v", pageCommand, err)
		}
	}
	d, err := s.document(said[0])
	if err != nil {
		return nil, err
	}
	if !d.plan {
		return nil, lsp.Errorf(lsp.InvalidParams, "%.200q is no plan", said[0])
	}
	address, err := s.shared.page(d.path, said[1])
	if err != nil {
		return nil, lsp.Errorf(lsp.RequestFailed, "%v", err)
	}
	s.shared.browse(s, address)
	return address, nil
}

// browse has the client open an address. Where it cannot, it tells its user, since most
// clients show nothing of the answer to a command.
func (s *Server) browse(now *snapshot, address string) {
	tell := func() {
		s.conn.Notify("window/showMessage", lsp.ShowMessageParams{Type: lsp.MessageInfo, Message: "The live page: " + address})
	}
	if !now.client.Window.ShowDocument.Support {
		tell()
		return
	}
	s.helpers.Go(func() {
		ctx, cancel := context.WithTimeout(s.ctx, patience)
		defer cancel()
		var shown lsp.ShowDocumentResult
		err := s.conn.Call(ctx, "window/showDocument", lsp.ShowDocumentParams{URI: address, External: true}, &shown)
		if s.ctx.Err() == nil && (err != nil || !shown.Success) {
			tell()
		}
	})
}

// runs reports whether the client says that it can have a command done from a lens.
// The standard has no word for it; clients that have one list commands so.
func runs(client lsp.ClientCapabilities, command string) bool {
	var said struct {
		Commands struct {
			Commands []string `json:"commands"`
		} `json:"commands"`
	}
	return json.Unmarshal(client.Experimental, &said) == nil && slices.Contains(said.Commands.Commands, command)
}
