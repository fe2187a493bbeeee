// What a client can ask, in one table. A feature adds one line here, and a file with its
// function.

package editor

import (
	"context"
	"encoding/json"
	"sync"

	"pullscore/cmd/internal/lsp"
)

// A request is one line of the table.
type request struct {
	answer func(ctx context.Context, s *snapshot, params json.RawMessage) (any, error)
	// offer says in the answer to initialize that the server can do it.
	offer func(s *snapshot, c *lsp.ServerCapabilities)
	// strict requests fail with ContentModified if the text has changed since: their edits
	// would go to the wrong places.
	strict bool
}

// requests returns the table, by method.
var requests = sync.OnceValue(func() map[string]request {
	return map[string]request{
		"textDocument/diagnostic": {answer: on(documentDiagnostic), offer: func(s *snapshot, c *lsp.ServerCapabilities) {
			if s.pulls {
				c.DiagnosticProvider = &lsp.DiagnosticOptions{Identifier: source, InterFileDependencies: true}
			}
		}},
		"textDocument/completion": {answer: on(completion), offer: func(_ *snapshot, c *lsp.ServerCapabilities) {
			c.CompletionProvider = &lsp.CompletionOptions{TriggerCharacters: completionTriggers}
		}},
		"textDocument/documentLink":      {answer: on(links), offer: func(_ *snapshot, c *lsp.ServerCapabilities) { c.DocumentLinkProvider = &lsp.ResolveOptions{} }},
		"textDocument/foldingRange":      {answer: on(folding), offer: func(_ *snapshot, c *lsp.ServerCapabilities) { c.FoldingRangeProvider = true }},
		"textDocument/formatting":        {answer: on(formatting), offer: func(_ *snapshot, c *lsp.ServerCapabilities) { c.DocumentFormatting = true }},
		"textDocument/selectionRange":    {answer: on(selection), offer: func(_ *snapshot, c *lsp.ServerCapabilities) { c.SelectionRangeProvider = true }},
		"textDocument/definition":        {answer: on(definition), offer: func(_ *snapshot, c *lsp.ServerCapabilities) { c.DefinitionProvider = true }},
		"textDocument/references":        {answer: on(references), offer: func(_ *snapshot, c *lsp.ServerCapabilities) { c.ReferencesProvider = true }},
		"textDocument/documentHighlight": {answer: on(highlights), offer: func(_ *snapshot, c *lsp.ServerCapabilities) { c.DocumentHighlightProvider = true }},
		"textDocument/documentSymbol":    {answer: on(documentSymbols), offer: func(_ *snapshot, c *lsp.ServerCapabilities) { c.DocumentSymbolProvider = true }},
		"workspace/executeCommand":       {answer: on(executeCommand), offer: offerCommands},
		"workspace/symbol":               {answer: on(workspaceSymbols), offer: func(_ *snapshot, c *lsp.ServerCapabilities) { c.WorkspaceSymbolProvider = true }},
		"textDocument/prepareRename":     {answer: on(prepareRename)},
		"textDocument/rename": {answer: on(rename), strict: true, offer: func(s *snapshot, c *lsp.ServerCapabilities) {
			c.RenameProvider = &lsp.RenameOptions{PrepareProvider: s.client.TextDocument.Rename.PrepareSupport}
		}},
		"textDocument/hover":                {answer: on(hover), offer: func(_ *snapshot, c *lsp.ServerCapabilities) { c.HoverProvider = true }},
		"textDocument/inlayHint":            {answer: on(inlayHints), offer: func(_ *snapshot, c *lsp.ServerCapabilities) { c.InlayHintProvider = true }},
		"textDocument/semanticTokens/full":  {answer: on(semanticTokens), offer: offerTokens},
		"textDocument/semanticTokens/range": {answer: on(semanticTokensOf)},
		"textDocument/codeAction":           {answer: on(codeActions), strict: true, offer: offerActions},
		"textDocument/codeLens":             {answer: on(codeLens), offer: func(_ *snapshot, c *lsp.ServerCapabilities) { c.CodeLensProvider = &lsp.ResolveOptions{} }},
		"textDocument/signatureHelp": {answer: on(signatureHelp), offer: func(_ *snapshot, c *lsp.ServerCapabilities) {
			c.SignatureHelpProvider = &lsp.SignatureHelpOptions{TriggerCharacters: []string{" ", ",", "("}}
		}},
	}
})

// on returns what reads the parameters of a request and answers it with f.
func on[P any](f func(ctx context.Context, s *snapshot, p *P) (any, error)) func(context.Context, *snapshot, json.RawMessage) (any, error) {
	return func(ctx context.Context, s *snapshot, params json.RawMessage) (any, error) {
		p := new(P)
		if err := json.Unmarshal(params, p); err != nil {
			return nil, lsp.Errorf(lsp.InvalidParams, "%v", err)
		}
		return f(ctx, s, p)
	}
}

// Request returns the work that answers a request.
func (s *Server) Request(method string, params json.RawMessage) (lsp.Work, error) {
	switch {
	case s.state == shutDown:
		return nil, lsp.Errorf(lsp.InvalidRequest, "%s comes after shutdown", method)
	case method == "initialize" && s.state != fresh:
		return nil, lsp.Errorf(lsp.InvalidRequest, "initialize comes twice")
	case method == "initialize":
		return s.initialize(params)
	case s.state == fresh:
		return nil, lsp.Errorf(lsp.ServerNotInitialized, "%s comes before initialize", method)
	case method == "shutdown":
		s.state = shutDown
		return func(context.Context) (any, error) { return nil, nil }, nil
	}
	r, ok := requests()[method]
	if !ok {
		return nil, lsp.Errorf(lsp.MethodNotFound, "Pullscore does not answer %.100q", method)
	}
	now := s.newest.Load()
	return func(ctx context.Context) (any, error) { return s.answer(ctx, r, now, params) }, nil
}

// answer answers a request on a snapshot.
func (s *Server) answer(ctx context.Context, r request, now *snapshot, params json.RawMessage) (any, error) {
	var about lsp.DocumentParams // of most requests
	if err := json.Unmarshal(params, &about); err != nil {
		about = lsp.DocumentParams{}
	}
	d := now.open[about.TextDocument.URI]
	if d != nil && d.lost {
		return nil, lsp.Errorf(lsp.RequestFailed, "%v", errLost)
	}
	result, err := r.answer(ctx, now, params)
	if r.strict && err == nil && s.newest.Load().open[about.TextDocument.URI] != d {
		return nil, lsp.Errorf(lsp.ContentModified, "the text has changed since")
	}
	return result, err
}

// capabilities returns what the server can do: what the table offers, and how it follows
// texts.
func (s *snapshot) capabilities() lsp.ServerCapabilities {
	c := lsp.ServerCapabilities{
		PositionEncoding: map[encoding]string{utf16: "utf-16", utf8s: "utf-8"}[s.encoding],
		TextDocumentSync: lsp.TextDocumentSync{OpenClose: true, Change: lsp.SyncIncremental},
	}
	c.Workspace.WorkspaceFolders.Supported, c.Workspace.WorkspaceFolders.ChangeNotifications = true, true
	for _, r := range requests() {
		if r.offer != nil {
			r.offer(s, &c)
		}
	}
	return c
}
