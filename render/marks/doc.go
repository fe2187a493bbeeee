// Package marks finds the marks of a shot on the ring, one source for tape,
// disc and cover.
//
//   - marks.go: the settings of the ring that pulls land on, with their
//     windows
//   - engraved.go: the lens's own marks, as the kit writes them
package marks
