package completion

import (
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/alecthomas/kong"
)

// grammar stands for a command line like that of the program.
type grammar struct {
	Check struct {
		As     string   `enum:"text,json" default:"text" help:"How: it's [so]."`
		Strict bool     `help:"Strict."`
		Output string   `short:"o" offer:"places" help:"Where."`
		Shot   string   `offer:"shots" help:"Which."`
		Log    string   `offer:"files" help:"A log."`
		Rate   string   `help:"Anything."`
		Paths  []string `arg:"" name:"path" offer:"plans"`
	} `cmd:"" help:"Check."`
	Help struct {
		Topic string `arg:"" optional:"" offer:"topics"`
	} `cmd:"" help:"Explain."`
	Words struct{} `cmd:"" hidden:"" help:"Secret."`
	Shell struct {
		Name string `arg:"" enum:"bash,zsh"`
	} `cmd:"" help:"Shells."`
}

func parser(t *testing.T) *kong.Kong {
	t.Helper()
	var g grammar
	k, err := kong.New(&g, kong.Name("pullscore"))
	if err != nil {
		t.Fatal(err)
	}
	return k
}

// complete runs a shell over a script that prints, one a line, what completes
// the words, of which the last is being typed.
func complete(t *testing.T, script string, words ...string) []string {
	t.Helper()
	bash, err := exec.LookPath("bash")
	if err != nil {
		t.Skip("no bash here")
	}
	quoted := ""
	for _, w := range append([]string{"pullscore"}, words...) {
		quoted += " " + strconv.Quote(w)
	}
	cmd := exec.Command(bash, "--norc", "-c", script+"\nCOMP_WORDS=("+quoted+"); COMP_CWORD="+
		strconv.Itoa(len(words))+"\n_pullscore\nprintf '%s\\n' \"${COMPREPLY[@]}\"")
	out, err := cmd.CombinedOutput()
	if err != nil {
		t.Fatalf("%v: %s", err, out)
	}
	list := strings.FieldsFunc(string(out), func(r rune) bool { return r == '\n' })
	slices.Sort(list)
	return list
}

func TestBashCompletes(t *testing.T) {
	script := program + Bash(parser(t))
	t.Chdir(t.TempDir())
	for _, name := range []string{"a scene.pull", "notes.txt"} {
		if err := os.WriteFile(name, nil, 0o666); err != nil {
			t.Fatal(err)
		}
	}
	os.Mkdir("folder", 0o777)
	tests := []struct{ words, want []string }{
		{[]string{""}, []string{"check", "help", "shell"}},
		{[]string{"ch"}, []string{"check"}},
		{[]string{"check", ""}, []string{"a scene.pull", "folder"}},
		{[]string{"check", "a.pull", "a"}, []string{"a scene.pull"}},
		{[]string{"check", "--"}, []string{"--as", "--help", "--log", "--output", "--rate", "--shot", "--strict"}},
		{[]string{"check", "--as", ""}, []string{"json", "text"}},
		{[]string{"check", "--as", "j"}, []string{"json"}},
		{[]string{"check", "-o", ""}, []string{"folder"}},
		{[]string{"check", "--rate", ""}, nil},
		{[]string{"check", "--log", ""}, []string{"a scene.pull", "folder", "notes.txt"}},
		{[]string{"check", "--shot", ""}, []string{"3A", "3B", `\$\(touch\ oops\)`, "check", "the\\ quay"}},
		{[]string{"check", "--shot", "3"}, []string{"3A", "3B"}},
		{[]string{"check", "--shot", "the"}, []string{"the\\ quay"}},
		{[]string{"help", "r"}, []string{"rack", "rate"}},
		{[]string{"help", "--"}, []string{"--help"}},
		{[]string{"check", "--strict", "f"}, []string{"folder"}},
		{[]string{"shell", "b"}, []string{"bash"}},
		{[]string{"nothing", ""}, nil},
	}
	defer func() {
		if _, err := os.Stat("oops"); err == nil {
			t.Error("the name of a shot was run")
		}
	}()
	for _, test := range tests {
		if got := complete(t, script, test.words...); !slices.Equal(got, test.want) {
			t.Errorf("%q: %q, want %q", test.words, got, test.want)
		}
	}
}

// program stands for the program, which is asked for shots and topics. It tells
// a word of the line too, so that the line is seen to come through.
const program = `pullscore() {
	[ "$1 $3" = "words --" ] || return
	case "$2" in
	shots) printf '%s\n' 3B '$(touch oops)' 'the quay' 3A "$4" ;;
	topics) printf '%s\n' rack rate stop ;;
	esac
}
`

// Scripts for the other shells are checked by these where they are installed,
// and for their quotes everywhere.
func TestOtherShells(t *testing.T) {
	for shell, script := range map[string]string{"zsh": Zsh(parser(t)), "fish": Fish(parser(t))} {
		for _, word := range []string{"check", "strict", "shot", "text json", ".pull", "How, its (so)", "pullscore words", "shots", "topics"} {
			if !strings.Contains(script, word) {
				t.Errorf("%s: %q is missing in\n%s", shell, word, script)
			}
		}
		if strings.Count(script, "'")%2 != 0 {
			t.Errorf("%s: a quote is open in\n%s", shell, script)
		}
		program, err := exec.LookPath(shell)
		if err != nil {
			continue
		}
		path := filepath.Join(t.TempDir(), "script")
		if err := os.WriteFile(path, []byte(script), 0o666); err != nil {
			t.Fatal(err)
		}
		if out, err := exec.Command(program, "-n", path).CombinedOutput(); err != nil {
			t.Errorf("%s: %v: %s", shell, err, out)
		}
	}
}
