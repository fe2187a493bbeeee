package editors

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"unicode/utf8"

	"pullscore/lang"
)

// eachVim runs a test with every editor of the family that is installed.
func eachVim(t *testing.T, test func(t *testing.T, editor string)) {
	for _, name := range []string{"vim", "nvim"} {
		t.Run(name, func(t *testing.T) {
			editor, err := exec.LookPath(name)
			if err != nil {
				t.Skipf("skipped: %s is not installed", name)
			}
			test(t, editor)
		})
	}
}

// runVim runs a script in an editor that has no settings but our files. The script
// finds values in its environment, and ends the editor.
func runVim(t *testing.T, editor, script string, environment ...string) {
	t.Helper()
	files, err := filepath.Abs("vim")
	if err != nil {
		t.Fatal(err)
	}
	cmd := exec.Command(editor, "-es", "-u", "NONE", "-i", "NONE", "-N", "-n",
		"--cmd", "set encoding=utf-8 runtimepath^="+files, "-c", "filetype plugin indent on", "-S", script)
	cmd.Env = append(append(os.Environ(), "HOME="+t.TempDir(), "LC_ALL=C.UTF-8"), environment...)
	if out, err := cmd.CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
}

// vimKinds gives the kind of token that a group of the syntax stands for.
func vimKind(group string) string {
	switch group {
	case "pullComment":
		return "comment"
	case "pullText":
		return "text"
	case "pullNumber":
		return "number"
	case "pullStatement", "pullClause", "pullUnit", "pullTimes":
		return "keyword"
	}
	if strings.HasSuffix(group, "Soft") {
		return "keyword"
	}
	return ""
}

// TestVimColours checks that Vim colours the first and last character of every token of
// the plans as the scanner reads it.
func TestVimColours(t *testing.T) {
	var places strings.Builder
	type place struct {
		path   string
		offset int
	}
	at := map[place]int{}
	add := func(path string, src []byte, offset int) {
		if _, ok := at[place{path, offset}]; !ok {
			at[place{path, offset}] = len(at)
			before := string(src[:offset])
			fmt.Fprintf(&places, "%s\t%d\t%d\n", path, 1+strings.Count(before, "\n"), offset-strings.LastIndexByte(before, '\n'))
		}
	}
	last := func(src []byte, token lang.Token) int {
		_, size := utf8.DecodeLastRune(src[:token.End])
		return token.End - size
	}
	files := plans(t)
	for _, path := range files {
		src := read(t, path)
		for _, token := range lang.Tokens(src) {
			add(path, src, token.Start)
			add(path, src, last(src, token))
		}
	}
	eachVim(t, func(t *testing.T, editor string) {
		in, out := filepath.Join(t.TempDir(), "places"), filepath.Join(t.TempDir(), "colours")
		if err := os.WriteFile(in, []byte(places.String()), 0o644); err != nil {
			t.Fatal(err)
		}
		runVim(t, editor, "testdata/colours.vim", "PLACES="+in, "COLOURS="+out)
		groups := strings.Split(strings.TrimSuffix(string(read(t, out)), "\n"), "\n")
		if len(groups) != len(at) {
			t.Fatalf("%d colours for %d places", len(groups), len(at))
		}
		for _, path := range files {
			src := read(t, path)
			compareColours(t, path, src, func(from, to int) []string {
				end := last(src, lang.Token{Start: from, End: to})
				return []string{vimKind(groups[at[place{path, from}]]), vimKind(groups[at[place{path, end}]])}
			})
		}
	})
}

// TestVimMake checks that :make puts the findings into the list of errors, each at its
// place.
func TestVimMake(t *testing.T) {
	eachVim(t, func(t *testing.T, editor string) {
		plan, out := faultyPlan(t), filepath.Join(t.TempDir(), "list")
		program := pullscore(t)
		runVim(t, editor, "testdata/make.vim", "PLAN="+plan, "LIST="+out, "PATH="+filepath.Dir(program)+string(os.PathListSeparator)+os.Getenv("PATH"))
		const want = "pull\n" +
			"kettle plan.pull 14:43 e a decimal is written with a point [bad-number]\n" +
			"kettle plan.pull 13:3 w HALDIS to KETTLE lands 84 % of the time; you asked for 90 %: it needs 1 s [hard-to-land]\n"
		if got := string(read(t, out)); got != want {
			t.Errorf("got\n%swant\n%s", got, want)
		}
	})
}

// TestNeovimSession runs a session with the server in Neovim.
func TestNeovimSession(t *testing.T) {
	editor, err := exec.LookPath("nvim")
	if err != nil {
		t.Skip("skipped: nvim is not installed")
	}
	plan, out := faultyPlan(t), filepath.Join(t.TempDir(), "seen")
	runVim(t, editor, "testdata/session.lua", "PLAN="+plan, "SEEN="+out, "PROGRAM="+pullscore(t))
	const want = `file type pull
findings 13:3 2 hard-to-land, 14:43 1 bad-number
keys v:lua.vim.lsp.omnifunc v:lua.vim.lsp.tagfunc
root true
cursor 2 true
line 4 subject HALDIS   at 1.7 m
laid out subject HALDIS at 1.7 m
findings 13:3 2 hard-to-land
cured   rack to KETTLE, landing on "kettle", over 1 s | 
hover markdown true
declared in line 5
mentioned 2
offered true false
usage rack to TARGET
renamed subject POT at 1.1 m |   rack to POT, landing on "kettle", over 1 s
messages 
stopped true
`
	if got := string(read(t, out)); got != want {
		t.Errorf("got\n%swant\n%s", got, want)
	}
}
