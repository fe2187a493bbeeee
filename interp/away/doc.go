// Package away says where what a cut has taken away lies among what it shows.
//
//   - away.go: moves, so that those that are shown start where the others have left the
//     focus, and pieces whose place the cut does not say
//   - runs.go: lines that the cut does not have, for which it leaves too little time
package away
