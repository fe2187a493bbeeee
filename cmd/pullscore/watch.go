// pullscore watch: drawings and a live page that follow every save.

package main

import (
	"context"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"os/signal"
	"runtime"
	"syscall"

	"pullscore/cmd/internal/preview"
	"pullscore/cmd/internal/rebuild"
	"pullscore/cmd/internal/watch"
)

type watchCmd struct {
	Addr     string   `default:"127.0.0.1:0" placeholder:"HOST:PORT" help:"Where the live page is served; port 0 takes a free one. Beyond this machine the address has a token, kept for 30 days."`
	NewToken bool     `help:"Make another token; pages that are open on other devices need the new address."`
	Output   string   `offer:"places" short:"o" default:"." placeholder:"DIR" help:"The folder for drawings."`
	NoPage   bool     `help:"Serve no page, only write drawings."`
	Open     bool     `help:"Open the page in the browser."`
	Poll     bool     `help:"Look at the files twice a second, for network drives that tell of no changes."`
	Paths    []string `offer:"plans" arg:"" name:"path" sep:"none" help:"Plans, or folders of plans."`
}

// Help explains the command.
func (watchCmd) Help() string {
	return `Draws the score of every shot, and again whenever a plan or a file that it
uses is saved. Prints the address of a live page, and after each save one line
on what changed and what the save did to the numbers. Ctrl-C ends it.

With --addr other devices on the network can open the page too, by the printed
address, which has a token. On a terminal it is also printed as a code for the
camera of a phone. The token of a port and a folder is kept for 30 days, so that
open pages come back after a restart; --new-token makes another.

  pullscore watch scene-12.pull
  pullscore watch --open -o papers .      every plan of this folder, also new ones
  pullscore watch --addr 0.0.0.0:8080 .   also for phones
  pullscore watch --no-page --poll /mnt/production

Files are named as draw names them, and replaced in one step. While a plan has
errors its last good drawings stay. Drawings of shots that are gone are removed
if this watch has written them, and nobody has changed them since.

Exit code: 0 when it is ended, 2 if it could not begin.`
}

// Run watches until it is interrupted, or until nobody reads what it prints.
func (c *watchCmd) Run(s *session) error {
	r, err := rebuild.New(c.Paths, rebuild.Options{Folder: c.Output, Watch: watch.Options{Poll: c.Poll}})
	if err != nil {
		return err
	}
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	ctx, end := context.WithCancelCause(ctx)
	defer end(nil)
	show, served, err := c.page(ctx, s, end)
	if err != nil {
		return err
	}
	log := watchLog{session: s}
	err = r.Run(ctx, func(state *rebuild.State, changes []rebuild.Change) {
		show(state)
		if err := log.changes(state, changes, r.Trouble()); err != nil {
			end(err)
		}
	})
	end(nil)
	err = errors.Join(err, <-served)
	if cause := context.Cause(ctx); !errors.Is(cause, context.Canceled) {
		err = errors.Join(err, cause)
	}
	return err
}

// page serves the live page. It returns what shows a new state on it, and what
// tells the error that serving came to, once ctx is done; end is called with
// one that comes before.
func (c *watchCmd) page(ctx context.Context, s *session, end func(error)) (show func(*rebuild.State), served <-chan error, err error) {
	result := make(chan error, 1)
	if c.NoPage {
		result <- nil
		return func(*rebuild.State) {}, result, nil
	}
	folder, err := os.Getwd()
	if err != nil {
		return nil, nil, err
	}
	server, err := preview.New(preview.Options{Addr: c.Addr, Folder: folder, NewToken: c.NewToken})
	if err != nil {
		return nil, nil, err
	}
	fmt.Fprintf(s.out, "The live page: %s\n", server.URL())
	if server.Open() && s.screen.Terminal {
		if err := printCode(s.screen, server.URL()); err != nil {
			s.tell(err)
		}
	}
	if err := s.out.Flush(); err != nil {
		return nil, nil, err
	}
	if err := server.Unkept(); err != nil {
		s.tell(fmt.Errorf("the address will be another at the next start, since its token cannot be kept: %w", err))
	}
	go func() {
		err := server.Serve(ctx)
		result <- err
		if err != nil {
			end(nil)
		}
	}()
	if c.Open {
		if err := openPage(server.URL()); err != nil {
			s.tell(fmt.Errorf("the page cannot be opened from here: %w", err))
		}
	}
	return server.Show, result, nil
}

// openPage opens an address with the program that the system has for it.
func openPage(url string) error {
	name, args := "xdg-open", []string{url}
	switch runtime.GOOS {
	case "darwin":
		name = "open"
	case "windows":
		name, args = "rundll32", []string{"url.dll,FileProtocolHandler", url}
	}
	cmd := exec.Command(name, args...)
	if err := cmd.Start(); err != nil {
		return err
	}
	go cmd.Wait() // so that it does not stay behind as a zombie
	return nil
}
