// Package words sets the words of a score on a line: a sentence is running text on one
// baseline. A word that a move hangs on stands exactly at its time, bold; what comes before
// it ends at it, what comes after follows. Text goes round plumb lines that fall through
// the row. Where there is too little room the type gets smaller, then words in the middle
// give way. All lengths are in millimetres from the left of the page.
//
//   - words.go: what is set, and the words that hang
//   - flow.go: text round plumb lines, and text cut in its middle
package words
