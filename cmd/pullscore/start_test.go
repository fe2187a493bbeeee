// What the program does before main: a user waits for it at every start,
// whatever the command.

package main

import (
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"testing"
)

// A package of ours may build tables of two pages of memory when the program
// starts. A larger one is a switch, or is built when it is first used.
const mostAtStart = 8 << 10

func TestPackagesStartWithLittle(t *testing.T) {
	program := filepath.Join(t.TempDir(), "pullscore") // not this one: it has the tables of the tests too
	if out, err := exec.Command("go", "build", "-o", program, ".").CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	cmd := exec.Command(program, "version")
	cmd.Env = append(os.Environ(), "GODEBUG=inittrace=1") // documented in package runtime
	out, err := cmd.CombinedOutput()
	if err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	started := regexp.MustCompile(`(?m)^init (pullscore/\S+) @.*, (\d+) bytes, \d+ allocs$`).FindAllStringSubmatch(string(out), -1)
	seen := map[string]bool{}
	for _, m := range started {
		seen[m[1]] = true
		if bytes, _ := strconv.Atoi(m[2]); bytes > mostAtStart {
			t.Errorf("%s takes %d bytes before main, %d at most are wanted", m[1], bytes, mostAtStart)
		}
	}
	if !seen["pullscore/lang"] {
		t.Errorf("no start of pullscore/lang in:\n%s", out)
	}
}
