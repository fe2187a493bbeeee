// Package score draws one shot against time: who speaks, how far everyone is,
// what is sharp, what the hand does.
//
//   - score.go: the pages of a score, from the bands of render/score/bands
//   - screen.go: the same on sheets for a screen
//   - sharp.go: the band of sharpness
//   - others.go: one row for all who stay soft
//   - chance.go: the height of its bars
//   - legend.go: what the legend says besides its signs
//   - camera.go: the band of the camera, and what it adds to the others
//   - notes.go: the notes of the plan
//   - findings.go: the findings in words
//   - pulls.go: the table of pulls
//   - told.go: what that table says, for those who show it otherwise
package score
