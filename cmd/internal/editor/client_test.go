// A client for tests: it speaks with a server over pipes, as an editor does.

package editor

import (
	"encoding/json"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strconv"
	"sync"
	"testing"
	"time"

	"pullscore/cmd/internal/lsp"
)

// longest is how long a test waits for what must come.
const longest = 20 * time.Second

// A client is the other side of a server.
type client struct {
	t    testing.TB
	wire *lsp.Stream
	end  chan int // the exit code
	quit func()
	pipe io.Writer

	sending sync.Mutex
	mu      sync.Mutex
	ids     int
	answers map[string]chan *lsp.Message
	asked   map[string]string                       // methods, by ID
	lists   map[string]lsp.PublishDiagnosticsParams // the last by URI
	told    int                                     // how many lists came
	shown   []string                                // by window/showMessage
	opened  []string                                // by window/showDocument
	log     []string
	came    chan struct{} // something did
}

// newClient starts a server without initialize.
func newClient(t testing.TB) *client { return newClientWith(t, Options{}) }

func newClientWith(t testing.TB, o Options) *client {
	toServer, fromClient := io.Pipe()
	toClient, fromServer := io.Pipe()
	c := &client{
		t: t, wire: lsp.NewStream(toClient, fromClient), end: make(chan int, 1), quit: func() { fromClient.Close() }, pipe: fromClient,
		answers: map[string]chan *lsp.Message{}, asked: map[string]string{}, lists: map[string]lsp.PublishDiagnosticsParams{}, came: make(chan struct{}, 1),
	}
	o.Log = c.logged
	go func() {
		code, _ := Serve(t.Context(), lsp.NewStream(toServer, fromServer), o)
		fromServer.Close()
		c.end <- code
	}()
	go c.listen()
	t.Cleanup(func() {
		c.quit()
		select {
		case <-c.end:
		case <-time.After(longest):
			t.Error("the server does not end")
		}
	})
	return c
}

// start starts a server and initializes it with the folders of a workspace.
func start(t testing.TB, capabilities string, folders ...string) *client {
	c := newClient(t)
	c.hello(capabilities, folders...)
	return c
}

// hello initializes a server.
func (c *client) hello(capabilities string, folders ...string) {
	p := map[string]any{"processId": nil, "rootUri": nil, "capabilities": json.RawMessage(capabilities)}
	if len(folders) > 0 {
		var list []lsp.WorkspaceFolder
		for _, f := range folders {
			list = append(list, lsp.WorkspaceFolder{URI: uriOf(f), Name: filepath.Base(f)})
		}
		p["workspaceFolders"] = list
	}
	c.ask("initialize", p, nil)
	c.tell("initialized", struct{}{})
}

func (c *client) logged(line string) {
	c.mu.Lock()
	defer c.mu.Unlock()
	c.log = append(c.log, line)
}

// listen takes what the server sends.
func (c *client) listen() {
	for {
		text, err := c.wire.Read()
		if err != nil {
			return
		}
		m := &lsp.Message{}
		if err := json.Unmarshal(text, m); err != nil {
			c.t.Errorf("%v: %s", err, text)
			return
		}
		c.take(m)
		select {
		case c.came <- struct{}{}:
		default:
		}
	}
}

func (c *client) take(m *lsp.Message) {
	c.mu.Lock()
	defer c.mu.Unlock()
	if err := strict(m, c.asked[string(m.ID)]); err != nil && (m.Method != "" || c.answers[string(m.ID)] != nil) {
		c.t.Error(err)
	}
	switch {
	case m.Method == "":
		if answer := c.answers[string(m.ID)]; answer != nil {
			answer <- m
		}
	case m.ID != nil: // a question of the server; it answers nothing
		if m.Method == "window/showDocument" {
			c.opened = append(c.opened, string(m.Params))
		}
		go c.send(lsp.Message{ID: m.ID, Result: json.RawMessage("null")})
	case m.Method == "textDocument/publishDiagnostics":
		var p lsp.PublishDiagnosticsParams
		if err := json.Unmarshal(m.Params, &p); err != nil {
			c.t.Error(err)
		}
		c.lists[p.URI] = p
		c.told++
	case m.Method == "window/showMessage":
		c.shown = append(c.shown, string(m.Params))
	}
}

func (c *client) send(m lsp.Message) {
	m.JSONRPC = "2.0"
	text, err := json.Marshal(m)
	if err != nil {
		c.t.Error(err)
		return
	}
	c.sending.Lock()
	defer c.sending.Unlock()
	c.wire.Write(text) // a server that has ended reads nothing
}

func raw(v any) json.RawMessage {
	if v == nil {
		return nil
	}
	text, err := json.Marshal(v)
	if err != nil {
		panic(err)
	}
	return text
}

// rawly sends bytes as they are.
func (c *client) rawly(text string) {
	c.sending.Lock()
	defer c.sending.Unlock()
	io.WriteString(c.pipe, text)
}

// tell sends a notification.
func (c *client) tell(method string, params any) {
	c.send(lsp.Message{Method: method, Params: raw(params)})
}

// begin sends a request, and returns its ID and the channel of its answer.
func (c *client) begin(method string, params any) (string, <-chan *lsp.Message) {
	c.mu.Lock()
	c.ids++
	id, answer := strconv.Itoa(c.ids), make(chan *lsp.Message, 1)
	c.answers[id], c.asked[id] = answer, method
	c.mu.Unlock()
	c.send(lsp.Message{ID: lsp.ID(id), Method: method, Params: raw(params)})
	return id, answer
}

// answer asks, and returns the answer, which may be an error.
func (c *client) answer(method string, params any) *lsp.Message {
	c.t.Helper()
	_, answer := c.begin(method, params)
	return c.wait(method, answer)
}

func (c *client) wait(method string, answer <-chan *lsp.Message) *lsp.Message {
	c.t.Helper()
	select {
	case m := <-answer:
		return m
	case <-time.After(longest):
		c.t.Fatalf("no answer to %s", method)
		return nil
	}
}

// ask asks, and reads the answer into result unless that is nil.
func (c *client) ask(method string, params, result any) {
	c.t.Helper()
	m := c.answer(method, params)
	if m.Error != nil {
		c.t.Fatalf("%s: %d %v", method, m.Error.Code, m.Error)
	}
	if result != nil {
		if err := json.Unmarshal(m.Result, result); err != nil {
			c.t.Fatalf("%s: %v: %s", method, err, m.Result)
		}
	}
}

// open opens a text under a URI.
func (c *client) open(uri, text string) {
	c.tell("textDocument/didOpen", lsp.DidOpenParams{TextDocument: lsp.TextDocumentItem{URI: uri, LanguageID: "pull", Version: 1, Text: text}})
}

// change replaces all of a text.
func (c *client) change(uri string, version int32, text string) {
	c.edit(uri, version, lsp.ContentChange{Text: text})
}

// edit changes a text.
func (c *client) edit(uri string, version int32, changes ...lsp.ContentChange) {
	c.tell("textDocument/didChange", lsp.DidChangeParams{TextDocument: lsp.VersionedTextDocument{URI: uri, Version: &version}, ContentChanges: changes})
}

// list waits until the list of a URI is as wanted, and returns it.
func (c *client) list(uri string, wanted func(lsp.PublishDiagnosticsParams) bool) lsp.PublishDiagnosticsParams {
	c.t.Helper()
	late := time.After(longest)
	for {
		c.mu.Lock()
		p, ok := c.lists[uri]
		c.mu.Unlock()
		if ok && wanted(p) {
			return p
		}
		select {
		case <-c.came:
		case <-late:
			c.t.Fatalf("no such list of %s; the last is %+v", uri, p)
		}
	}
}

// until waits until something is so.
func (c *client) until(what string, so func() bool) {
	c.t.Helper()
	late := time.After(longest)
	for {
		c.mu.Lock()
		ok := so()
		c.mu.Unlock()
		if ok {
			return
		}
		select {
		case <-c.came:
		case <-late:
			c.t.Fatalf("never: %s", what)
		}
	}
}

// version returns what waits for the list of a version.
func version(v int32) func(lsp.PublishDiagnosticsParams) bool {
	return func(p lsp.PublishDiagnosticsParams) bool { return p.Version != nil && *p.Version == v }
}

// codes returns the codes of a list.
func codes(list []lsp.Diagnostic) (codes []string) {
	for _, d := range list {
		codes = append(codes, fmt.Sprintf("%d:%s", d.Range.Start.Line+1, d.Code))
	}
	return codes
}

// example returns the path and the text of a plan of examples.
func example(t testing.TB, name string) (path, text string) {
	t.Helper()
	path, err := filepath.Abs(filepath.Join("..", "..", "..", "examples", name))
	if err != nil {
		t.Fatal(err)
	}
	src, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return path, string(src)
}
