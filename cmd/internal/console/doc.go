// Package console knows what the program writes to: a terminal of some width
// that shows colours, or a file or pipe that gets plain text.
//
//   - console.go: a screen with its width and its colours
//   - lines.go: text that is put together line by line, and written once it is
//     whole
//   - progress.go: a bar for work that takes long
//   - text.go: text clean, measured and wrapped
package console
