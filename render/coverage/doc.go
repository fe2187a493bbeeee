// Package coverage draws what each set-up has of each word of a scene.
//
//   - coverage.go: the pages, filled from top to bottom
//   - lay.go: which words stand where: lines in rows as wide as the page
//   - block.go: a row of words, with a bar below it for each set-up
//   - below.go: what no set-up holds, the counts, and the set-ups
//   - staged.go: of a scene that is staged, the flags of what nobody holds, and how each
//     camera stands
package coverage
