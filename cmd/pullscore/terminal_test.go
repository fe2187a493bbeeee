//go:build unix

// The program on a real terminal.

package main

import (
	"io"
	"os"
	"os/exec"
	"strings"
	"testing"

	"github.com/creack/pty"
)

// onTerminal runs the program on a terminal of 60 columns and returns what it
// shows.
func onTerminal(t *testing.T, env []string, args ...string) string {
	t.Helper()
	cmd := exec.Command("pullscore", args...) // TestMain puts it on the path
	cmd.Env = append(os.Environ(), append([]string{"TERM=xterm-256color", "NO_COLOR="}, env...)...)
	terminal, err := pty.StartWithSize(cmd, &pty.Winsize{Rows: 24, Cols: 60})
	if err != nil {
		t.Skipf("no terminal can be had: %v", err)
	}
	defer terminal.Close()
	out, _ := io.ReadAll(terminal) // ends in an error where the other side closes
	cmd.Wait()
	return string(out)
}

func TestOnATerminal(t *testing.T) {
	t.Chdir(t.TempDir())
	if err := os.WriteFile("bad.pull", []byte("subject ILKA at 1,70 m\n"), 0o666); err != nil {
		t.Fatal(err)
	}
	if out := onTerminal(t, nil, "check", "bad.pull"); !strings.Contains(out, "\x1b[1;31merror\x1b[0m") {
		t.Errorf("no colour: %q", out)
	}
	for _, env := range []string{"NO_COLOR=1", "TERM=dumb"} {
		if out := onTerminal(t, []string{env}, "check", "bad.pull"); strings.Contains(out, "\x1b") {
			t.Errorf("%s: %q", env, out)
		}
	}
	for line := range strings.Lines(onTerminal(t, []string{"NO_COLOR=1"}, "list", "bad.pull")) {
		if n := len([]rune(strings.TrimRight(line, "\r\n"))); n > 60 && !strings.Contains(line, "[") {
			t.Errorf("%d columns: %q", n, line)
		}
	}
}
