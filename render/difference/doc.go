// Package difference draws a shot in two states of a plan, over one another: two scores
// on the same times and scales, from the same bands.
//
//   - difference.go: the pages of a difference
//   - head.go: its title and what the two states are called
//   - changes.go: its band of changes
//   - lines.go: its band of lines
//   - distance.go: its band of distances
//   - camera.go: its band of the camera
//   - hand.go: its band of the hand
//   - curves.go: where a curve is not what it was
//   - signs.go: the signs for what was and what is
//   - table.go: its notes and its table of pulls
//   - key.go: its legend
package difference
