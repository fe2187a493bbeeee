//go:build unix

// Speed measures what a user waits: it builds the program and times it from
// start to exit, on a small plan, on the plans of a whole film and on other
// people's texts of a hundred megabytes, beside an empty Go program, which shows
// what the machine itself takes for a start.
//
//	go run ./cmd/internal/dev/speed
//	go run ./cmd/internal/dev/speed -forms
//
// With -forms it times only other people's texts, of every form that may be long.
//
// The time of the processors is told beside, since it says more on a busy machine.
// It ends with exit code 1 where one of them takes more memory than it may.
// Limits of time are told and not enforced, since machines are busy and differ: a start
// is mostly the machine's own time, from 1 ms to 10 ms for the empty program.
//
// main.go has the tasks and measures them, forms.go the long texts of every form.
package main
