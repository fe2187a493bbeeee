package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"runtime/debug"
	"syscall"

	"github.com/alecthomas/kong"

	"pullscore/cmd/internal/console"
	"pullscore/cmd/internal/files"
)

// The exit codes.
const (
	exitFine     = 0
	exitFindings = 1
	exitFailed   = 2
)

// commands is the command line. A command marked all speaks about the others.
type commands struct {
	Check      checkCmd      `cmd:"" help:"Read plans and say what is likely to fail on the day."`
	List       listCmd       `cmd:"" help:"Print the pull list: every number of every move of the focus."`
	Draw       drawCmd       `cmd:"" help:"Draw shots."`
	Brief      briefCmd      `cmd:"" help:"Put the crew papers of scenes into one file to print."`
	Watch      watchCmd      `cmd:"" help:"Redraw on every save, and serve a live page."`
	Stops      stopsCmd      `cmd:"" help:"Find the stops at which every rack lands and is seen."`
	Coverage   coverageCmd   `cmd:"" help:"Say what each set-up has of each word."`
	Story      storyCmd      `cmd:"" help:"Say who holds the focus in a film, and for how long."`
	Lens       lensCmd       `cmd:"" help:"Say what is known of a lens, and print a sheet to map its ring."`
	Takes      takesCmd      `cmd:"" help:"Fit a hand to a log of takes, or score a recorded pull."`
	Click      clickCmd      `cmd:"" help:"Make a click track to rehearse a shot with."`
	Export     exportCmd     `cmd:"" help:"Write markers for the cutting room, or focus curves."`
	New        newCmd        `cmd:"" help:"Write a kit and a scene to begin with."`
	Page       pageCmd       `cmd:"" help:"Start a plan from a script page."`
	Diff       diffCmd       `cmd:"" help:"Explain to the crew what changed between two plans."`
	Fmt        fmtCmd        `cmd:"" help:"Format plans."`
	Lsp        lspCmd        `cmd:"" help:"Serve an editor: findings while you write."`
	Help       helpCmd       `cmd:"" all:"" help:"Explain the language, a topic, a finding or a command."`
	Completion completionCmd `cmd:"" all:"" help:"Print a script that completes commands in a shell."`
	Version    versionCmd    `cmd:"" help:"Print the version."`
	Words      wordsCmd      `cmd:"" all:"" hidden:"" help:"Print what can be written next, for completion."`

	flags
}

// garbage is how much the heap may grow between collections, in percent. The
// program lives for moments and a whole film takes it 35 MB, so it saves time
// where the usual 100 would save memory.
const garbage = 400

// roomy is how much memory that may take, in bytes. Beside a cut or a page of a
// hundred megabytes the heap grows no further than it must.
const roomy = 384 << 20

func main() {
	if os.Getenv("GOGC") == "" {
		debug.SetGCPercent(garbage)
	}
	if os.Getenv("GOMEMLIMIT") == "" {
		debug.SetMemoryLimit(roomy)
	}
	deepen(0)
	os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr))
}

// deepen has the stack grow to what the program needs while there is little on
// it to move: it doubles four times otherwise, with parsers deep in their work.
// The room is never used for 0, so nothing clears it.
//
//go:noinline
func deepen(n int) byte {
	if n == 0 {
		return 0
	}
	var room [40 << 10]byte
	room[n] = 1
	return room[n/2] + deepen(n/2)
}

// run runs a command line and returns the exit code.
func run(args []string, in io.Reader, out, errs io.Writer) int {
	switch {
	case len(args) == 0:
		args = []string{"--help"}
	case args[0] == "--version":
		args = []string{"version"}
	}
	var cli commands
	s := newSession(in, out, errs)
	parser, err := newParser(&cli, s, args)
	if err != nil {
		return s.fail(err)
	}
	context, err := parser.Parse(args)
	switch {
	case s.helped:
		err = nil
	case err != nil:
		err = usage(err, args)
	default:
		s.colour(cli.Colour)
		err = context.Run(s, parser)
	}
	return s.end(err)
}

// usage says how to go on after a command line that was not understood.
func usage(err error, args []string) error {
	if filepath.Ext(args[0]) == files.Ext {
		return fmt.Errorf("name a command before %s\nTry: pullscore check %s", args[0], args[0])
	}
	var parse *kong.ParseError
	if errors.As(err, &parse) {
		if node := parse.Context.Selected(); node != nil {
			return fmt.Errorf("%w\nTry: pullscore help %s", err, node.Name)
		}
	}
	return fmt.Errorf("%w\nTry: pullscore help", err)
}

// errFindings ends a command that has done its work and found something wrong
// with the plans.
var errFindings = errors.New("findings")

// end flushes what was printed and turns what a command came to into an exit
// code. A reader that has gone, as head does, is no fault.
func (s *session) end(err error) int {
	s.bar.Clear()
	found := errors.Is(err, errFindings)
	if found {
		err = nil
	}
	if flushed := s.out.Flush(); err == nil {
		err = flushed
	}
	if err != nil && !errors.Is(err, syscall.EPIPE) {
		s.fail(err)
	}
	switch {
	case s.failed:
		return exitFailed
	case found:
		return exitFindings
	}
	return exitFine
}

// fail reports an error; the exit code then is 2.
func (s *session) fail(err error) int {
	s.failed = true
	s.bar.Clear()
	s.out.Flush() // what was printed before stands above
	screen := s.errScreen
	for _, e := range unjoin(err) {
		fmt.Fprintf(screen.W, "%s %s\n", screen.Paint(console.Red, "pullscore:"), cleanLines(e.Error()))
	}
	return exitFailed
}
