package editor

import (
	"slices"
	"strings"
	"testing"
)

func TestSession(t *testing.T) {
	path, src := example(t, "ticket-window.pull")
	uri := uriOf(path)
	c := start(t, `{"textDocument":{"publishDiagnostics":{"relatedInformation":true}}}`)
	c.open(uri, src)
	c.list(uri, version(1))
	c.change(uri, 2, strings.Replace(src, "subject", "sbject", 1))
	p := c.list(uri, version(2))
	if !slices.ContainsFunc(codes(p.Diagnostics), func(s string) bool { return strings.HasSuffix(s, ":unknown-word") }) {
		t.Errorf("the slip is not told: %+v", p)
	}
	c.change(uri, 3, src)
	c.list(uri, version(3))
	c.ask("shutdown", nil, nil)
	c.tell("exit", nil)
	if code := <-c.end; code != 0 {
		t.Errorf("exit code %d", code)
	}
	c.end <- 0
}
