// Package lsp carries the messages of the Language Server Protocol 3.18
// (microsoft.github.io/language-server-protocol), which is JSON-RPC 2.0. It knows
// nothing of plans.
//
//   - dispatch.go: takes messages in the order of the wire, and runs the requests
//   - errors.go: the errors of the protocol, by their numbers
//   - frame.go: whole messages on a stream of bytes, each behind its length
//   - message.go: one message, and the kinds that there are
//   - outbox.go: what waits to be written, so that reading never waits for a reader
//   - types.go: places, texts and edits, as many requests share them
//   - types_ask.go: what a client asks about a place, and what it is given
//   - types_show.go: what a client shows over a whole file
//   - types_start.go: what both sides say of themselves at the start
package lsp
