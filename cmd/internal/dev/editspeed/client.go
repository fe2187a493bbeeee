// A client that waits for the list of a version.

package main

import (
	"encoding/json"
	"fmt"
	"io"
	"net/url"
	"os/exec"
	"path/filepath"
	"strings"
	"time"

	"pullscore/cmd/internal/lsp"
)

// A list is what was published for a document, and when it came.
type list struct {
	lsp.PublishDiagnosticsParams
	at time.Time
}

// A client speaks with one server.
type client struct {
	wire    *lsp.Stream
	in      io.Closer
	cmd     *exec.Cmd
	lists   chan list
	answers chan time.Time
	asked   int
}

// start starts a server whose workspace is a folder.
func start(program, folder string) (*client, error) {
	cmd := exec.Command(program, "lsp")
	in, err := cmd.StdinPipe()
	if err != nil {
		return nil, err
	}
	out, err := cmd.StdoutPipe()
	if err != nil {
		return nil, err
	}
	if err := cmd.Start(); err != nil {
		return nil, err
	}
	c := &client{wire: lsp.NewStream(out, in), in: in, cmd: cmd, lists: make(chan list, 10000), answers: make(chan time.Time, 10)}
	go c.listen()
	c.send("initialize", true, map[string]any{
		"capabilities": struct{}{}, "workspaceFolders": []lsp.WorkspaceFolder{{URI: uri(folder), Name: "measured"}},
	})
	<-c.answers
	c.send("initialized", false, struct{}{})
	return c, nil
}

// listen hands on what comes, with its time.
func (c *client) listen() {
	for {
		text, err := c.wire.Read()
		if err != nil {
			close(c.lists)
			return
		}
		now := time.Now()
		var m lsp.Message
		if json.Unmarshal(text, &m) != nil {
			continue
		}
		if m.Method == "" {
			c.answers <- now
		}
		l := list{at: now}
		if m.Method == "textDocument/publishDiagnostics" && json.Unmarshal(m.Params, &l.PublishDiagnosticsParams) == nil {
			c.lists <- l
		}
	}
}

func (c *client) send(method string, asks bool, params any) {
	m := lsp.Message{JSONRPC: "2.0", Method: method}
	if asks {
		c.asked++
		m.ID = lsp.ID(fmt.Sprint(c.asked))
	}
	m.Params, _ = json.Marshal(params) // plain values
	text, _ := json.Marshal(m)
	c.wire.Write(text) // a server that is gone closes the lists
}

// open opens a text.
func (c *client) open(uri, text string) {
	c.send("textDocument/didOpen", false, lsp.DidOpenParams{TextDocument: lsp.TextDocumentItem{URI: uri, LanguageID: "pull", Version: 1, Text: text}})
}

// insert writes into a line, at its start.
func (c *client) insert(uri string, version int32, line uint32, from, to uint32, text string) {
	c.send("textDocument/didChange", false, lsp.DidChangeParams{
		TextDocument: lsp.VersionedTextDocument{URI: uri, Version: &version},
		ContentChanges: []lsp.ContentChange{{
			Range: &lsp.Range{Start: lsp.Position{Line: line, Character: from}, End: lsp.Position{Line: line, Character: to}}, Text: text,
		}},
	})
}

// until returns the first list that is wanted, and how many lists came up to it.
func (c *client) until(wanted func(list) bool) (list, int, error) {
	late := time.After(time.Minute)
	for n := 1; ; n++ {
		select {
		case l, ok := <-c.lists:
			if !ok {
				return list{}, n, fmt.Errorf("the server has ended")
			}
			if wanted(l) {
				return l, n, nil
			}
		case <-late:
			return list{}, n, fmt.Errorf("a list is missing after a minute")
		}
	}
}

// told waits for the list of a version.
func (c *client) told(uri string, version int32) (time.Time, int, error) {
	l, n, err := c.until(func(l list) bool { return l.URI == uri && l.Version != nil && *l.Version == version })
	return l.at, n, err
}

// end ends the server.
func (c *client) end() error {
	c.send("shutdown", true, nil)
	c.send("exit", false, nil)
	c.in.Close()
	return c.cmd.Wait()
}

// uri returns the URI of a path.
func uri(path string) string {
	path = filepath.ToSlash(path)
	if !strings.HasPrefix(path, "/") {
		path = "/" + path
	}
	return (&url.URL{Scheme: "file", Path: path}).String()
}
