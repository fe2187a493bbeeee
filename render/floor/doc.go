// Package floor draws the floor of a shot from above, to scale: who stands
// where, and what each landing keeps sharp.
//
//   - overhead.go: the pages, and how much floor each shows
//   - floor.go: one floor: its scale, its axis and the camera
//   - rig.go: a camera that turns, or leaves its axis
//   - people.go: where everyone stands, and their ways
//   - sharp.go: the depth of field of each landing
//   - tape.go: the tape along the axis
//   - key.go: the words beside the floor, the signs and the cautions
package floor
