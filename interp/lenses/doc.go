// Package lenses says what is known of each lens of a kit: where its ring sets which
// distance, how well that is known, and which distances to measure.
//
//   - lenses.go: a lens, and what it is judged by
//   - steps.go: where the ring sets which distance
//   - measure.go: the distances to measure, and for which stop they are enough
package lenses
