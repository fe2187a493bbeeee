// Package script turns a script page into the text of a plan to begin from: the
// speakers, a shot a scene, the lines with their words, and racks as comments
// that are woken up by taking "# " away.
//
//   - script.go: the plan, as text
//   - staged.go: the plan of a scene that is staged once, for several cameras
//   - racks.go: which racks are worth proposing
//   - anchors.go: the words that racks hang on
//   - cast.go: who can be focused on, and who is only heard
//   - json.go: what was read of a page, as data
package script
