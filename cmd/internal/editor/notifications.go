// What changes the snapshot, in one table.

package editor

import (
	"encoding/json"
	"slices"

	"pullscore/cmd/internal/lsp"
)

// Notify takes a notification. It ignores one that it does not know.
func (s *Server) Notify(method string, params json.RawMessage) {
	if s.state != ready {
		return
	}
	switch method {
	case "initialized":
		s.initialized()
	case "textDocument/didOpen":
		take1(s, params, s.didOpen)
	case "textDocument/didChange":
		take1(s, params, s.didChange)
	case "textDocument/didSave":
		take1(s, params, s.didSave)
	case "textDocument/didClose":
		take1(s, params, s.didClose)
	case "pullscore/cursor":
		take1(s, params, s.cursor)
	case "workspace/didChangeWatchedFiles":
		take1(s, params, s.didChangeWatchedFiles)
	case "workspace/didChangeWorkspaceFolders":
		take1(s, params, s.didChangeWorkspaceFolders)
	case "workspace/didChangeConfiguration":
		take1(s, params, s.didChangeConfiguration)
	}
}

// take1 calls f with parameters that can be read; others are told in the log.
func take1[P any](s *Server, params json.RawMessage, f func(*P)) {
	p := new(P)
	if err := json.Unmarshal(params, p); err != nil {
		s.log("a notification cannot be read: " + err.Error())
		return
	}
	f(p)
}

func (s *Server) didOpen(p *lsp.DidOpenParams) {
	s.look()
	now := s.newest.Load()
	s.show(now.with(now.newDocument(p.TextDocument)))
}

func (s *Server) didChange(p *lsp.DidChangeParams) {
	now := s.newest.Load()
	d := now.open[p.TextDocument.URI]
	if d == nil {
		s.log("a text was changed that is not open: " + p.TextDocument.URI)
		return
	}
	version := d.version + 1
	if p.TextDocument.Version != nil {
		version = *p.TextDocument.Version
	}
	next := d.edited(version, p.ContentChanges, now.encoding)
	if next.lost && !d.lost {
		s.conn.Notify("window/showMessage", lsp.ShowMessageParams{Type: lsp.MessageError, Message: d.path + ": " + errLost.Error()})
	}
	s.show(now.with(next))
}

func (s *Server) didSave(*lsp.DocumentParams) {
	s.look()
	s.again()
}

func (s *Server) didClose(p *lsp.DocumentParams) {
	if now := s.newest.Load(); now.open[p.TextDocument.URI] != nil {
		s.look()
		s.show(now.without(p.TextDocument.URI))
	}
}

// look has files read again where the client does not tell of those that change.
func (s *Server) look() {
	if !s.watches.Load() {
		s.shared.disk.forget()
		s.shared.workspace.forget()
	}
}

func (s *Server) didChangeWatchedFiles(p *lsp.DidChangeWatchedFilesParams) {
	var changed []string
	for _, c := range p.Changes {
		path, ok := pathOf(c.URI)
		if !ok {
			continue
		}
		changed = append(changed, s.shared.disk.realPath(path))
		if c.Type != lsp.FileChanged {
			changed = append(changed, path) // a link may have come or gone
			s.shared.workspace.forget()
		}
	}
	if len(changed) > 0 {
		s.shared.disk.forget(changed...)
		s.again()
	}
}

func (s *Server) didChangeWorkspaceFolders(p *lsp.DidChangeWorkspaceFoldersParams) {
	next := *s.newest.Load()
	settings := *next.settings
	settings.roots = slices.Clone(settings.roots)
	for _, f := range p.Event.Removed {
		if path, ok := pathOf(f.URI); ok {
			settings.roots = slices.DeleteFunc(settings.roots, func(r string) bool { return r == path })
		}
	}
	for _, f := range p.Event.Added {
		if path, ok := pathOf(f.URI); ok {
			settings.roots = append(settings.roots, path)
		}
	}
	next.settings = &settings
	s.show(&next)
}

func (s *Server) didChangeConfiguration(p *lsp.DidChangeConfigurationParams) {
	next := *s.newest.Load()
	settings := *next.settings
	settings.choices = settings.choices.chosen(p.Settings)
	next.settings = &settings
	s.show(&next)
}
