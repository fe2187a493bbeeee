// Asks the client to tell of files that change on disk.

package editor

import (
	"context"
	"time"

	"pullscore/cmd/internal/lsp"
)

// watched is which files a plan may be made of.
const watched = "**/*.{pull,edl,srt,vtt,otio,ale,fountain,fdx,csv}"

// patience is how long a client may take to answer what it is asked at the start.
const patience = time.Minute

// watch asks the client to tell of files that change. Where it cannot, files are looked
// at on every didOpen and didSave.
func (s *Server) watch(ctx context.Context) {
	ctx, cancel := context.WithTimeout(ctx, patience)
	defer cancel()
	err := s.conn.Call(ctx, "client/registerCapability", lsp.RegistrationParams{Registrations: []lsp.Registration{{
		ID: "files", Method: "workspace/didChangeWatchedFiles",
		RegisterOptions: lsp.WatchedFilesOptions{Watchers: []lsp.FileSystemWatcher{{GlobPattern: watched}}},
	}}}, nil)
	if err != nil && ctx.Err() == nil {
		s.log("the editor does not watch files: " + err.Error())
	}
	s.watches.Store(err == nil)
}

// call asks the client for something that has no answer worth waiting for.
func (s *Server) call(method string) {
	s.helpers.Go(func() {
		ctx, cancel := context.WithTimeout(s.ctx, patience)
		defer cancel()
		if err := s.conn.Call(ctx, method, nil, nil); err != nil && ctx.Err() == nil {
			s.log(method + ": " + err.Error())
		}
	})
}
