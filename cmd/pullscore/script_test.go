// The commands as scripts see them: testdata/script.

package main

import (
	"errors"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/rogpeppe/go-internal/testscript"

	"pullscore/render/testing/fonttest"
)

func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){"pullscore": main})
}

func TestScripts(t *testing.T) {
	examples, err := filepath.Abs(filepath.Join("..", "..", "examples"))
	if err != nil {
		t.Fatal(err)
	}
	testscript.Run(t, testscript.Params{
		Dir:                 filepath.Join("testdata", "script"),
		RequireExplicitExec: true,
		UpdateScripts:       os.Getenv("PULLSCORE_UPDATE") == "1",
		Setup: func(env *testscript.Env) error {
			env.Setenv("EXAMPLES", examples)
			return nil
		},
		Cmds: map[string]func(*testscript.TestScript, bool, []string){
			"exits":  exits,
			"crlf":   crlf,
			"holds":  holds,
			"awaits": awaits,
			"font":   makeFont,
		},
		Condition: func(name string) (bool, error) {
			switch name {
			case "user": // one whom permissions stop
				return os.Getuid() > 0, nil
			case "unix":
				return runtime.GOOS != "windows", nil
			}
			return false, errors.New("unknown condition " + name)
		},
	})
}

// exits runs a command and requires its exit code: exits CODE COMMAND ARG...
func exits(ts *testscript.TestScript, neg bool, args []string) {
	want, err := strconv.Atoi(args[0])
	if err != nil || neg || len(args) < 2 {
		ts.Fatalf("usage: exits CODE COMMAND ARG...")
	}
	got := 0
	if err := ts.Exec(args[1], args[2:]...); err != nil {
		var exit *exec.ExitError
		if !errors.As(err, &exit) {
			ts.Fatalf("%v", err)
		}
		got = exit.ExitCode()
	}
	if got != want {
		ts.Fatalf("exit code %d, want %d", got, want)
	}
}

// crlf gives files the line ends of other systems.
func crlf(ts *testscript.TestScript, _ bool, args []string) {
	for _, name := range args {
		var out []byte
		for _, b := range []byte(ts.ReadFile(name)) {
			if b == '\n' {
				out = append(out, '\r')
			}
			out = append(out, b)
		}
		ts.Check(os.WriteFile(ts.MkAbs(name), out, 0o666))
	}
}

// holds makes a file of so many copies of a text: holds FILE TEXT COUNT. The
// text is a Go string without its quotes.
func holds(ts *testscript.TestScript, _ bool, args []string) {
	text, err := strconv.Unquote(`"` + args[1] + `"`)
	ts.Check(err)
	count, err := strconv.Atoi(args[2])
	ts.Check(err)
	out := make([]byte, 0, len(text)*count)
	for range count {
		out = append(out, text...)
	}
	ts.Check(os.WriteFile(ts.MkAbs(args[0]), out, 0o666))
}

// makeFont makes a font of squares with those letters: font FILE LETTERS LICENCE-BITS.
func makeFont(ts *testscript.TestScript, _ bool, args []string) {
	bits, err := strconv.Atoi(args[2])
	ts.Check(err)
	f := fonttest.Font{Runes: []rune(args[1]), FsType: uint16(bits)}
	ts.Check(os.WriteFile(ts.MkAbs(args[0]), f.Bytes(), 0o666))
}

// awaits waits until a file holds a text: awaits FILE TEXT. It gives up after
// half a minute, which no machine is too busy for.
func awaits(ts *testscript.TestScript, _ bool, args []string) {
	for end := time.Now().Add(30 * time.Second); time.Now().Before(end); time.Sleep(5 * time.Millisecond) {
		if data, err := os.ReadFile(ts.MkAbs(args[0])); err == nil && strings.Contains(string(data), args[1]) {
			return
		}
	}
	ts.Fatalf("%s does not come to hold %q", args[0], args[1])
}
