package editor

import (
	"fmt"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"pullscore/cmd/internal/lsp"
)

// The pull at the cursor lights on the page; none lights where the cursor is in a shot but
// on no pull, and nothing is told above the shots.
func TestCursorLightsItsPull(t *testing.T) {
	path, src := copied(t, "ticket-window.pull", "kit.pull")
	lit := make(chan string, 8)
	c := newClientWith(t, Options{Point: func(path, shot string, pull int) {
		lit <- fmt.Sprint(filepath.Base(path), " ", shot, " ", pull)
	}})
	c.hello(`{}`, filepath.Dir(path))
	uri := uriOf(path)
	c.open(uri, src)
	c.list(uri, version(1))
	x := newLineIndex([]byte(src))
	for _, test := range []struct{ at, want string }{
		{`rack to MARRIT, landing on "live"`, "ticket-window.pull 12A 2"},
		{"subject TICKET", ""},
		{"pause 1.5 s", "ticket-window.pull 12A 0"},
		{"rack to TICKET", "ticket-window.pull 12B 1"},
	} {
		c.tell("pullscore/cursor", lsp.PositionParams{
			TextDocument: lsp.TextDocument{URI: uri}, Position: x.position(strings.Index(src, test.at)+2, utf16),
		})
		if test.want == "" {
			continue // the next row would show it
		}
		select {
		case got := <-lit:
			if got != test.want {
				t.Errorf("%s: %q, not %q", test.at, got, test.want)
			}
		case <-time.After(longest):
			t.Fatalf("%s: nothing is lit", test.at)
		}
	}
}

// What is picked on the page is shown by the client, its statement selected.
func TestPickedIsShown(t *testing.T) {
	path, src := copied(t, "ticket-window.pull", "kit.pull")
	var pick func(file string, line, column int)
	c := newClientWith(t, Options{Picked: func(call func(file string, line, column int)) { pick = call }})
	c.hello(`{"window":{"showDocument":{"support":true}}}`, filepath.Dir(path))
	uri := uriOf(path)
	c.open(uri, "# é\n"+src) // a line more than on disk
	c.list(uri, version(1))
	statement := `rack to MARRIT, landing on "live", over 1.2 s`
	at := strings.Index("# é\n"+src, statement)
	line := strings.Count(("# é\n" + src)[:at], "\n")
	pick(path, line+1, 3)
	want := fmt.Sprintf(`{"uri":%q,"takeFocus":true,"selection":{"start":{"line":%d,"character":2},"end":{"line":%d,"character":%d}}}`, uri, line, line, 2+len(statement))
	c.until("the statement is shown", func() bool { return len(c.opened) == 1 })
	if c.opened[0] != want {
		t.Errorf("%s, not %s", c.opened[0], want)
	}
	pick(path, 9999, 1)
	pick(filepath.Join(t.TempDir(), "none.pull"), 1, 1)
}
