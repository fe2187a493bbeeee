// One message, and the kinds that there are.

package lsp

import (
	"bytes"
	"encoding/json"
)

// version is the only version of JSON-RPC that LSP has.
const version = "2.0"

// An ID names a request: the JSON of a number or of a string, as it was sent.
type ID = json.RawMessage

// A Message is a request (ID and Method), a notification (Method) or the answer to a
// request (ID, and Result or Error).
type Message struct {
	JSONRPC string          `json:"jsonrpc"`
	ID      ID              `json:"id,omitempty"`
	Method  string          `json:"method,omitempty"`
	Params  json.RawMessage `json:"params,omitempty"`
	Result  json.RawMessage `json:"result,omitempty"`
	Error   *Error          `json:"error,omitempty"`
}

// null is the ID of an answer to something that has none, and the empty result.
var null = json.RawMessage("null")

// parse reads one message.
func parse(text []byte) (*Message, *Error) {
	m := &Message{}
	if err := json.Unmarshal(text, m); err != nil {
		if json.Valid(text) {
			return nil, Errorf(InvalidRequest, "this is no request: %v", err)
		}
		return nil, Errorf(ParseError, "this is no JSON: %v", err)
	}
	if m.JSONRPC != version {
		return m, Errorf(InvalidRequest, "jsonrpc is %q, not %q", m.JSONRPC, version)
	}
	if m.ID != nil && m.Method != "" && !isID(m.ID) {
		return nil, Errorf(InvalidRequest, "an id is a number or a string")
	}
	return m, nil
}

// isID reports whether a JSON value may name a request.
func isID(id ID) bool {
	return len(id) > 0 && (id[0] == '"' || id[0] == '-' || '0' <= id[0] && id[0] <= '9')
}

// encode returns a value as JSON, without the escapes that only HTML needs.
func encode(v any) (json.RawMessage, error) {
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	if err := e.Encode(v); err != nil {
		return nil, err
	}
	return bytes.TrimSuffix(b.Bytes(), []byte("\n")), nil
}
