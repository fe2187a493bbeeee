// Package times divides time for a score: its scale, the windows of a long shot, and the
// steps of its rulers.
//
//   - times.go: all of it
package times
