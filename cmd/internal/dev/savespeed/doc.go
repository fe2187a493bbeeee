// Savespeed measures what lies between a save and the new drawing on disk: it
// builds the program, lets it watch a plan of about a thousand drawn items, and
// saves that a hundred times in each of the three styles that most editors use.
//
//	go run ./cmd/internal/dev/savespeed
//
// Each time begins when the saver does and ends when the last sheet of the
// score has been renamed into place and this program has heard of it. Beside it
// stands the floor of the same saves: when the system's first event of the plan
// reached a program that only listens. A second table has the times until the
// live page shows the drawing, in a browser without a screen, and how long that
// browser takes to paint anything at all. Limits are told and not enforced,
// since machines are busy and differ.
//
//   - main.go: from a save to the drawing on disk
//   - painted.go: from a save to the new score painted on the live page, in a
//     browser without a screen
package main
