// pullscore lsp: help for whoever writes plans in an editor.

package main

import (
	"context"
	"fmt"
	"io"
	"os"
	"sync"

	"pullscore/cmd/internal/console"
	"pullscore/cmd/internal/editor"
	"pullscore/cmd/internal/live"
	"pullscore/cmd/internal/lsp"
)

type lspCmd struct {
	Log string `offer:"files" placeholder:"FILE" help:"Where the program writes what it has to say; without it, standard error."`
}

// Help explains the command.
func (lspCmd) Help() string {
	return `Serves an editor by the Language Server Protocol 3.18, over standard input and
output. An editor starts it; there is nothing to type. It shows findings while
you write, also in the plans that use the kit you change, and lays plans out.
It reads unsaved text, and writes no file but the log. Its command pullscore.page
opens the live page, which draws unsaved text too; what you tap there is kept
beside the plan.

  pullscore lsp
  pullscore lsp --log /tmp/pullscore.log

Exit code: 0 when the editor has ended it, 1 if the editor went away, 2 if a
message could not be read.`
}

// Run serves an editor until it ends.
func (c *lspCmd) Run(s *session) error {
	to := s.errs
	if c.Log != "" {
		f, err := os.OpenFile(c.Log, os.O_CREATE|os.O_WRONLY|os.O_APPEND, 0o666)
		if err != nil {
			return err
		}
		defer f.Close()
		to = f
	}
	log := lineLog(to)
	page := &live.Page{Log: log}
	defer page.Close()
	code, err := editor.Serve(context.Background(), lsp.NewStream(s.in, s.stdout), editor.Options{
		Version: builtVersion(), Log: log, Turned: page.Turned, Page: page.Open, Point: page.Point,
		Picked: func(call func(file string, line, column int)) { page.Picked = call },
	})
	switch code {
	case exitFine:
		return nil
	case exitFindings:
		return errFindings
	}
	return err
}

// lineLog returns what writes one line at a time, from any goroutine.
func lineLog(to io.Writer) func(string) {
	var mu sync.Mutex
	return func(line string) {
		mu.Lock()
		defer mu.Unlock()
		fmt.Fprintln(to, console.Clean(line)) // where it cannot be written, there is nobody to tell
	}
}
