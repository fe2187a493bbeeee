// Editspeed measures what somebody who writes waits for: it builds the program, starts
// its language server and types, as an editor does.
//
//	go run ./cmd/internal/dev/editspeed [-before PROGRAM]
//
// It prints the time from a change to its findings, of a plan and of a kit that 120 plans
// use, and what 200 changes at once come to. Beside them stands the floor: a question that
// needs no work, there and back, and `check` of the same plans. With -before it also
// compares the size of the program and the start of `check` with those of another build,
// in turn. Limits of time are told and not enforced, since machines are busy and differ;
// it ends with exit code 1 if the last of many changes is not told.
//
//   - client.go: a client that waits for the list of a version
//   - main.go: what is measured, and the table
//   - start.go: size and start of two builds, side by side
package main
