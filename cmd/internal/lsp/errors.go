// The errors of the protocol, by their numbers.

package lsp

import (
	"errors"
	"fmt"
)

// A Code is the number of an error.
type Code int

// The codes of JSON-RPC and of LSP.
const (
	ParseError           Code = -32700 // the message is no JSON
	InvalidRequest       Code = -32600 // it is no request, or comes after shutdown
	MethodNotFound       Code = -32601
	InvalidParams        Code = -32602
	InternalError        Code = -32603 // a fault of the server
	ServerNotInitialized Code = -32002 // it comes before initialize
	RequestFailed        Code = -32803 // the request is sound, but there is no answer
	ContentModified      Code = -32801 // the text has changed since
	RequestCancelled     Code = -32800
)

// An Error is the answer to a request that failed.
type Error struct {
	Code    Code   `json:"code"`
	Message string `json:"message"`
}

func (e *Error) Error() string { return e.Message }

// Errorf returns an Error with a message for people.
func Errorf(code Code, format string, args ...any) *Error {
	return &Error{Code: code, Message: fmt.Sprintf(format, args...)}
}

// asError returns the Error that an error is, or a RequestFailed that says it.
func asError(err error) *Error {
	var e *Error
	if errors.As(err, &e) {
		return e
	}
	return Errorf(RequestFailed, "%v", err)
}
