package editor

import (
	"context"
	"encoding/json"
	"fmt"
	"strings"
	"testing"

	"pullscore/cmd/internal/lsp"
)

// Requests that only tests have: they wait, panic or answer with the text of a snapshot.
func init() {
	requests()["test/panic"] = request{answer: func(context.Context, *snapshot, json.RawMessage) (any, error) { panic("as wanted") }}
	requests()["test/wait"] = request{answer: func(ctx context.Context, _ *snapshot, _ json.RawMessage) (any, error) {
		<-ctx.Done()
		return nil, ctx.Err()
	}}
	requests()["test/text"] = request{answer: on(heldText)}
	requests()["test/strict"] = request{answer: on(heldText), strict: true}
}

// release lets a request of tests go on that names a document: a value for each.
var release = make(chan struct{}, 100)

func heldText(ctx context.Context, s *snapshot, p *lsp.DocumentParams) (any, error) {
	select {
	case <-release:
	case <-ctx.Done():
		return nil, ctx.Err()
	}
	d, err := s.document(p.TextDocument.URI)
	if err != nil {
		return nil, err
	}
	return string(d.data), nil
}

func about(uri string) lsp.DocumentParams {
	return lsp.DocumentParams{TextDocument: lsp.TextDocument{URI: uri}}
}

// fails checks that a request is answered with an error.
func (c *client) fails(method string, params any, code lsp.Code) {
	c.t.Helper()
	if m := c.answer(method, params); m.Error == nil || m.Error.Code != code {
		c.t.Errorf("%s: %+v, not the error %d", method, m.Error, code)
	}
}

func (c *client) ends(code int) {
	c.t.Helper()
	got := <-c.end
	c.end <- got
	if got != code {
		c.t.Errorf("exit code %d, not %d", got, code)
	}
}

const nowhere = "file:///nowhere/a.pull"

func TestBeginningAndEnd(t *testing.T) {
	c := newClient(t)
	c.fails("textDocument/formatting", about(nowhere), lsp.ServerNotInitialized)
	c.fails("shutdown", nil, lsp.ServerNotInitialized)
	c.open(nowhere, "rate 24\n") // before initialize: nothing
	c.fails("initialize", []int{1}, lsp.InvalidParams)
	c.ask("initialize", map[string]any{"capabilities": struct{}{}}, nil)
	c.fails("initialize", map[string]any{"capabilities": struct{}{}}, lsp.InvalidRequest)
	c.fails("no/such", nil, lsp.MethodNotFound)
	c.tell("no/such", nil)
	c.tell("textDocument/didOpen", 3)
	c.fails("textDocument/formatting", about(nowhere), lsp.RequestFailed) // there is no such file
	c.fails("textDocument/formatting", about("untitled:a"), lsp.InvalidParams)
	c.fails("textDocument/formatting", []int{1}, lsp.InvalidParams)
	c.ask("shutdown", nil, nil)
	c.fails("textDocument/formatting", about(nowhere), lsp.InvalidRequest)
	c.tell("exit", nil)
	c.ends(0)
}

func TestEnds(t *testing.T) {
	t.Run("exit alone", func(t *testing.T) {
		c := start(t, `{}`)
		c.tell("exit", nil)
		c.ends(1)
	})
	t.Run("input ends", func(t *testing.T) {
		c := start(t, `{}`)
		c.quit()
		c.ends(1)
	})
	t.Run("no frame", func(t *testing.T) {
		c := start(t, `{}`)
		c.rawly("hello\r\n\r\n")
		c.ends(2)
	})
}

// A message that is no JSON, or no request, is answered, and the server lives on.
func TestNoRequest(t *testing.T) {
	c := start(t, `{}`)
	for _, text := range []string{`{`, `[]`, `3`, `{"jsonrpc":"1.0","id":1,"method":"a"}`, `{"jsonrpc":"2.0","id":{},"method":"a"}`, `{"jsonrpc":"2.0","id":"none","result":3}`} {
		c.rawly(fmt.Sprintf("Content-Length: %d\r\n\r\n%s", len(text), text))
	}
	c.fails("no/such", nil, lsp.MethodNotFound)
}

func TestPanic(t *testing.T) {
	c := start(t, `{}`)
	c.fails("test/panic", nil, lsp.InternalError)
	c.mu.Lock()
	if len(c.log) != 1 || !strings.Contains(c.log[0], "as wanted") || strings.Contains(c.log[0], "\n") {
		t.Errorf("the log is %q", c.log)
	}
	c.mu.Unlock()
	c.fails("no/such", nil, lsp.MethodNotFound)
}

func TestCancel(t *testing.T) {
	c := start(t, `{}`)
	var ids []string
	var answers []<-chan *lsp.Message
	for range 40 { // more than may run
		id, answer := c.begin("test/wait", nil)
		ids, answers = append(ids, id), append(answers, answer)
	}
	c.tell("$/cancelRequest", map[string]any{"id": 12345})
	for i := range ids { // also those that have not begun
		at := len(ids) - 1 - i
		c.tell("$/cancelRequest", map[string]any{"id": json.RawMessage(ids[at])})
		if m := c.wait("test/wait", answers[at]); m.Error == nil || m.Error.Code != lsp.RequestCancelled {
			t.Fatalf("%+v", m)
		}
	}
}

// A request is answered from the texts that stood when it was read.
func TestRequestsHaveTheirSnapshot(t *testing.T) {
	c := start(t, `{}`)
	c.open(nowhere, "one\n")
	_, first := c.begin("test/text", about(nowhere))
	c.change(nowhere, 2, "two\n")
	_, second := c.begin("test/text", about(nowhere))
	_, third := c.begin("test/strict", about(nowhere))
	c.change(nowhere, 3, "three\n")
	c.fails("no/such", nil, lsp.MethodNotFound) // so that all of this is read
	for range 3 {
		release <- struct{}{}
	}
	if m := c.wait("the first", first); string(m.Result) != `"one\n"` {
		t.Errorf("%s", m.Result)
	}
	if m := c.wait("the second", second); string(m.Result) != `"two\n"` {
		t.Errorf("%s", m.Result)
	}
	if m := c.wait("the third", third); m.Error == nil || m.Error.Code != lsp.ContentModified {
		t.Errorf("%s, %+v", m.Result, m.Error)
	}
	release <- struct{}{}
	if m := c.answer("test/strict", about(nowhere)); string(m.Result) != `"three\n"` {
		t.Errorf("%s, %+v", m.Result, m.Error)
	}
}

func TestManyChangesEndInTheLast(t *testing.T) {
	path, src := example(t, "ticket-window.pull")
	uri := uriOf(path)
	c := start(t, `{}`)
	c.open(uri, src)
	text := src
	for v := range int32(200) {
		at := lsp.Position{Line: uint32(v) % 20}
		c.edit(uri, v+2, lsp.ContentChange{Range: &lsp.Range{Start: at, End: at}, Text: "#"})
		lines := strings.SplitAfter(text, "\n")
		lines[at.Line] = "#" + lines[at.Line]
		text = strings.Join(lines, "")
	}
	c.list(uri, version(201))
	release <- struct{}{}
	var got string
	if c.ask("test/text", about(uri), &got); got != text {
		t.Errorf("the text is %q", got)
	}
}

// An edit outside of the text: the server never guesses.
func TestLost(t *testing.T) {
	c := start(t, `{}`)
	c.open(nowhere, "rate  24\n")
	far := lsp.Position{Line: 7}
	c.edit(nowhere, 2, lsp.ContentChange{Range: &lsp.Range{Start: far, End: far}, Text: "a"})
	c.fails("textDocument/formatting", about(nowhere), lsp.RequestFailed)
	c.change(nowhere, 3, "rate  25\n")
	c.fails("textDocument/formatting", about(nowhere), lsp.RequestFailed)
	c.tell("textDocument/didClose", about(nowhere))
	c.open(nowhere, "rate  24\n")
	var edits []lsp.TextEdit
	if c.ask("textDocument/formatting", about(nowhere), &edits); len(edits) != 1 {
		t.Errorf("%+v", edits)
	}
	c.mu.Lock()
	defer c.mu.Unlock()
	if len(c.shown) != 1 {
		t.Errorf("it is told so: %q", c.shown)
	}
}
