// Package house holds the order of the house: which package may import which,
// how large it may be, what its doc.go has to explain, and what may lie at the
// top level. Its tests read the source and fail on whatever the tables do not
// have.
//
//   - house.go: the rooms from leaf to root, and how a row is read
//   - papers.go: the rows of papers and of the command
package house
