// Package signs holds the signs of all papers: one table, in one order, with the words of
// the legend and a drawing of each. A sign means the same on every paper.
//
// On a page a sign is a draw.Group that has the name of the sign. So the legend is made
// from the page itself: On finds the signs that are there, and nobody keeps a list.
//
//   - table.go: the names, the table, and the signs of a page
//   - focus.go: focus, subjects, sharpness
//   - cover.go: what a set-up has of a word
//   - hand.go: the hand and the ring
//   - time.go: words, cues, lines with dashes
//   - flag.go: the flags of findings
//   - floor.go: places, ways, tracks, tapes
//   - stage.go: people, marks and cameras on the floor of a scene
//   - result.go: takes, and the state before a change
//   - shape.go: the shapes that several signs share
package signs
