// Package plans holds what the tests of all papers share: shots to draw, and
// what is asked of every page.
//
//   - shots.go: shots made by hand, and generated ones
//   - rig.go: those of a camera that turns, and leaves its axis
//   - scene.go: scenes that are staged, with their set-ups
//   - staged.go: a scene that is staged, and two cameras on it
//   - recut.go: those that a cut shows in pieces
//   - real.go: the examples, and plans that are wrong on purpose
//   - pages.go: faults of pages, goldens, the text of pages
package plans
