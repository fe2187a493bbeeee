// Package preview serves the live page: a list of the watched plans and their
// shots, the score of one, and its findings, replaced in place whenever a plan
// changes.
//
// A Server is given every new State (Show) and hands it on to the browsers
// that are connected (events.go). It answers from what it was given and from
// files in the binary alone, so no request can reach another file. What may
// come in at all is settled in one place (guard.go), before any handler runs.
//
// The page is plain modules, in web; those that only compute are tested with
// node's own test runner, from webtest.
package preview
