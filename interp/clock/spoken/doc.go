// Package spoken finds a line, or words, in all that is said in a shot. The clock gives
// the lines their times.
//
//   - line.go: one line
//   - talk.go: all lines, and which of them a name stands for
//   - said.go: where a phrase stands in them
//   - wide.go: words that are looked for in all lines
//   - words.go: the words that an anchor means, and what is told where it means none
package spoken
