// Every frame that the server sends in tests is held to types that others made of the
// standard's own model (go.lsp.dev/protocol, from metaModel.json of LSP 3.18). A frame is
// read into them and written again: what they do not know is missing then, what they ask
// for and did not get is there.

package editor

import (
	"encoding/json"
	"fmt"
	"reflect"
	"strings"
	"testing"

	"go.lsp.dev/protocol"

	"pullscore/cmd/internal/lsp"
)

// again reads a value as a T and writes it.
func again[T any](text []byte) ([]byte, error) {
	var v T
	if err := protocol.Unmarshal(text, &v); err != nil {
		return nil, err
	}
	return protocol.Marshal(v)
}

// result returns the type of the answer to a request.
func resultType(method string) func([]byte) ([]byte, error) {
	switch method {
	case "initialize":
		return again[protocol.InitializeResult]
	case "shutdown", "test/text", "test/strict":
		return func(text []byte) ([]byte, error) { return text, nil }
	case "textDocument/diagnostic":
		return again[protocol.DocumentDiagnosticReport]
	case "textDocument/hover":
		return again[*protocol.Hover]
	case "textDocument/completion":
		return again[protocol.CompletionResult]
	case "textDocument/signatureHelp":
		return again[*protocol.SignatureHelp]
	case "textDocument/codeAction":
		return again[[]protocol.CommandOrCodeAction]
	case "codeAction/resolve":
		return again[protocol.CodeAction]
	case "textDocument/definition":
		return again[protocol.DefinitionResult]
	case "textDocument/references":
		return again[[]protocol.Location]
	case "textDocument/documentHighlight":
		return again[[]protocol.DocumentHighlight]
	case "textDocument/rename":
		return again[*protocol.WorkspaceEdit]
	case "textDocument/prepareRename":
		return again[protocol.PrepareRenameResult]
	case "textDocument/documentSymbol":
		return again[protocol.DocumentSymbolResult]
	case "workspace/symbol":
		return again[protocol.WorkspaceSymbolResult]
	case "textDocument/foldingRange":
		return again[[]protocol.FoldingRange]
	case "textDocument/selectionRange":
		return again[[]protocol.SelectionRange]
	case "textDocument/formatting", "textDocument/rangeFormatting":
		return again[[]protocol.TextEdit]
	case "textDocument/semanticTokens/full", "textDocument/semanticTokens/range":
		return again[*protocol.SemanticTokens]
	case "textDocument/inlayHint":
		return again[[]protocol.InlayHint]
	case "textDocument/codeLens":
		return again[[]protocol.CodeLens]
	case "codeLens/resolve":
		return again[protocol.CodeLens]
	case "textDocument/documentLink":
		return again[[]protocol.DocumentLink]
	case "workspace/executeCommand":
		return again[protocol.LSPAny]
	}
	return nil
}

// paramsType returns the type of what the server says or asks of itself. Methods of
// Pullscore alone are not in the standard.
func paramsType(method string) func([]byte) ([]byte, error) {
	switch method {
	case "textDocument/publishDiagnostics":
		return again[protocol.PublishDiagnosticsParams]
	case "window/showMessage":
		return again[protocol.ShowMessageParams]
	case "window/showDocument":
		return again[protocol.ShowDocumentParams]
	case "workspace/applyEdit":
		return again[protocol.ApplyWorkspaceEditParams]
	case "client/registerCapability":
		return again[protocol.RegistrationParams]
	}
	return nil
}

// noParams are methods without parameters.
func noParams(method string) bool {
	switch method {
	case "workspace/diagnostic/refresh", "workspace/inlayHint/refresh", "workspace/codeLens/refresh", "workspace/semanticTokens/refresh":
		return true
	}
	return false
}

// strict returns what is wrong with a message of the server. asked is the method that an
// answer belongs to.
func strict(m *lsp.Message, asked string) error {
	switch {
	case m.JSONRPC != "2.0":
		return fmt.Errorf("jsonrpc %q", m.JSONRPC)
	case m.Error != nil && m.Result != nil:
		return fmt.Errorf("an answer with a result and an error")
	case m.Error != nil && (m.Error.Code == 0 || m.Error.Message == ""):
		return fmt.Errorf("an error without a code or a message")
	case m.Error != nil:
		return nil
	case m.Method == "" && m.Result == nil:
		return fmt.Errorf("an answer without a result")
	case noParams(m.Method) && m.Params == nil:
		return nil
	}
	text, read := m.Params, paramsType(m.Method)
	if m.Method == "" {
		text, read = m.Result, resultType(asked)
	}
	if read == nil {
		return fmt.Errorf("%s%s: no type of the standard is known for it", m.Method, asked)
	}
	written, err := read(text)
	if err != nil {
		return fmt.Errorf("%s%s: %w: %s", m.Method, asked, err, text)
	}
	var was, is any
	if err := json.Unmarshal(text, &was); err != nil {
		return err
	}
	if err := json.Unmarshal(written, &is); err != nil {
		return err
	}
	if !reflect.DeepEqual(was, is) {
		return fmt.Errorf("%s%s: the server sent\n%s\nand the standard knows\n%s", m.Method, asked, text, written)
	}
	return nil
}

// TestStrict makes sure that the standard's types find what is wrong.
func TestStrict(t *testing.T) {
	for text, right := range map[string]bool{
		`{"jsonrpc":"2.0","method":"window/showMessage","params":{"type":1,"message":"a"}}`:         true,
		`{"jsonrpc":"2.0","method":"window/showMessage","params":{"type":1}}`:                       false, // a field is missing
		`{"jsonrpc":"2.0","method":"window/showMessage","params":{"type":1,"message":"a","b":2}}`:   false, // one is unknown
		`{"jsonrpc":"2.0","method":"window/showMessage","params":{"type":"x","message":"a"}}`:       false, // one is of another type
		`{"jsonrpc":"2.0","method":"window/no","params":{}}`:                                        false,
		`{"jsonrpc":"2.0","id":1,"result":null}`:                                                    false, // of formatting
		`{"jsonrpc":"2.0","id":1,"result":[]}`:                                                      true,
		`{"jsonrpc":"2.0","id":1,"result":[{"range":{"start":{"line":0,"character":0}}}]}`:          false,
		`{"jsonrpc":"2.0","id":1}`:                                                                  false,
		`{"jsonrpc":"2.0","method":"textDocument/publishDiagnostics","params":{"uri":"file:///a"}}`: false,
	} {
		m := &lsp.Message{}
		if err := json.Unmarshal([]byte(text), m); err != nil {
			t.Fatal(err)
		}
		asked := ""
		if m.Method == "" {
			asked = "textDocument/formatting"
		}
		if err := strict(m, asked); (err == nil) != right {
			t.Errorf("%s: %v", text, err)
		}
	}
}

// TestRequestsHaveTypes makes sure that no request escapes.
func TestRequestsHaveTypes(t *testing.T) {
	for method := range requests() {
		if resultType(method) == nil && !strings.HasPrefix(method, "test/") {
			t.Errorf("%s: add its type to resultType", method)
		}
	}
}
