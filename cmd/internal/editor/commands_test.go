package editor

import (
	"encoding/json"
	"io"
	"net/http"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"pullscore/cmd/internal/live"
	"pullscore/cmd/internal/lsp"
)

// withPage starts a server with a live page, for plans in a folder.
func withPage(t *testing.T, capabilities, folder string) *client {
	page := &live.Page{Log: func(line string) { t.Error(line) }}
	t.Cleanup(page.Close)
	c := newClientWith(t, Options{Turned: page.Turned, Page: page.Open})
	c.hello(capabilities, folder)
	return c
}

// copied copies examples to a folder, and returns the path and the text of the first.
func copied(t *testing.T, names ...string) (path, src string) {
	folder := t.TempDir()
	for _, name := range names {
		_, text := example(t, name)
		at := filepath.Join(folder, name)
		if err := os.WriteFile(at, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
		if path == "" {
			path, src = at, text
		}
	}
	return path, src
}

// run has a command done and returns the address that it answers with.
func (c *client) run(arguments ...any) (address string) {
	c.t.Helper()
	c.ask("workspace/executeCommand", map[string]any{"command": pageCommand, "arguments": arguments}, &address)
	return address
}

// fetched returns what the page of an address shows, as JSON.
func fetched(t *testing.T, address string) string {
	t.Helper()
	base, _, _ := strings.Cut(address, "#")
	response, err := http.Get(base + "api/state")
	if err != nil {
		t.Fatal(err)
	}
	defer response.Body.Close()
	text, err := io.ReadAll(response.Body)
	if err != nil || response.StatusCode != http.StatusOK {
		t.Fatalf("%s %v: %s", response.Status, err, text)
	}
	return string(text)
}

// showing waits until the page of an address shows some words.
func showing(t *testing.T, address, words string) {
	t.Helper()
	for late := time.Now().Add(longest); !strings.Contains(fetched(t, address), words); time.Sleep(5 * time.Millisecond) {
		if time.Now().After(late) {
			t.Fatalf("the page never shows %q", words)
		}
	}
}

// entitled returns a text whose first shot has another title.
func entitled(src, title string) string {
	begin := strings.Index(src, "\nshot ")
	line, rest, _ := strings.Cut(src[begin+1:], "\n")
	id := strings.Fields(line)[1]
	return src[:begin+1] + "shot " + id + " \"" + title + "\"\n" + rest
}

// TestPageShowsUnsavedText follows a text that is never saved, and a kit under it.
func TestPageShowsUnsavedText(t *testing.T) {
	path, src := copied(t, "ticket-window.pull", "kit.pull")
	c := withPage(t, `{"window":{"showDocument":{"support":true}}}`, filepath.Dir(path))
	uri := uriOf(path)
	c.open(uri, entitled(src, "Quillon at dusk"))
	address := c.run(uri)
	if !strings.Contains(fetched(t, address), "Quillon at dusk") {
		t.Error("the page that was just opened does not show the text as it stands")
	}
	c.change(uri, 2, entitled(src, "Quillon at dawn"))
	showing(t, address, "Quillon at dawn")
	c.change(uri, 3, entitled(src, "Quillon at dawn")+"\nrack nowhere at all\n")
	showing(t, address, `"stale":true`)
	c.tell("textDocument/didClose", lsp.DocumentParams{TextDocument: lsp.TextDocument{URI: uri}})
	showing(t, address, `"stale":false`)
	if text := fetched(t, address); strings.Contains(text, "Quillon") {
		t.Error("the page shows a text that was thrown away")
	}
	if disk, err := os.ReadFile(path); err != nil || string(disk) != src {
		t.Errorf("the plan on disk has changed: %v", err)
	}
	if found, err := os.ReadDir(filepath.Dir(path)); err != nil || len(found) != 2 {
		t.Errorf("something was written beside the plan: %v %v", found, err)
	}
}

// TestPageIsOpened looks at what the client is asked to open.
func TestPageIsOpened(t *testing.T) {
	path, src := copied(t, "ticket-window.pull", "kit.pull")
	uri := uriOf(path)
	c := withPage(t, `{"window":{"showDocument":{"support":true}}}`, filepath.Dir(path))
	c.open(uri, src)
	address := c.run(uri)
	want := `{"uri":"` + address + `","external":true}`
	c.until("the client is asked to open the page, and declines", func() bool {
		return slices.Contains(c.opened, want) && len(c.shown) == 1 // the client of these tests answers null
	})
	again := c.run(uri)
	if again != address {
		t.Errorf("a second page at %s, not %s", again, address)
	}

	c = withPage(t, `{}`, filepath.Dir(path))
	address = c.run(uri) // from disk
	c.until("the address is told", func() bool {
		return len(c.shown) == 1 && strings.Contains(c.shown[0], address) && len(c.opened) == 0
	})
}

// TestPageRefuses sends what is no plan and no command.
func TestPageRefuses(t *testing.T) {
	path, _ := copied(t, "ticket-window.pull", "kit.pull")
	uri := uriOf(path)
	c := withPage(t, `{}`, filepath.Dir(path))
	for _, p := range []string{
		`{"command":"pullscore.other","arguments":["` + uri + `"]}`,
		`{"command":"pullscore.page"}`,
		`{"command":"pullscore.page","arguments":[1]}`,
		`{"command":"pullscore.page","arguments":["` + uri + `","1","2"]}`,
		`{"command":"pullscore.page","arguments":["` + uri + `.none.pull"]}`,
		`{"command":"pullscore.page","arguments":["untitled:x"]}`,
	} {
		if m := c.answer("workspace/executeCommand", json.RawMessage(p)); m.Error == nil || m.Error.Code == lsp.InternalError {
			t.Errorf("%s: %s %v", p, m.Result, m.Error)
		}
	}
}

// TestLensOpensTheScore: only a client that can run the command has the lens, and the
// lens opens its shot.
func TestLensOpensTheScore(t *testing.T) {
	path, src := copied(t, "ticket-window.pull", "kit.pull")
	uri := uriOf(path)
	for capabilities, wanted := range map[string]bool{
		`{}`:                   false,
		`{"experimental":[1]}`: false,
		`{"experimental":{"commands":{"commands":["other.page"]}}}`:     false,
		`{"experimental":{"commands":{"commands":["pullscore.page"]}}}`: true,
	} {
		c := withPage(t, capabilities, filepath.Dir(path))
		c.open(uri, src)
		var list []lsp.CodeLens
		c.ask("textDocument/codeLens", lsp.DocumentParams{TextDocument: lsp.TextDocument{URI: uri}}, &list)
		var opening []*lsp.Command
		for _, lens := range list {
			if lens.Command.Command != "" {
				opening = append(opening, lens.Command)
			}
		}
		if wanted != (len(opening) > 0) || wanted && len(opening) != len(list)/2 {
			t.Errorf("%s: %d lenses of %d open the score", capabilities, len(opening), len(list))
		}
		if wanted {
			last := opening[len(opening)-1]
			address := c.run(last.Arguments...)
			if !strings.HasSuffix(address, "%2F"+last.Arguments[1].(string)) {
				t.Errorf("the lens of %q opens %s", last.Arguments, address)
			}
		}
	}
}
