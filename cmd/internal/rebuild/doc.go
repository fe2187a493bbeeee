// Package rebuild keeps plans, what they come to and their drawings in step
// with files that change.
//
// It looks at files when package watch says so, reads those that changed,
// interprets the plans that use them, draws what is new and replaces drawings
// in one step. While a plan has errors its last good drawings stay. What a
// change did to the numbers is told in words.
//
//   - drafts.go: plans of texts that are not saved
//   - identical.go: whether two shots are the same to whoever draws them
//   - plans.go: which plans are watched
//   - reading.go: one reading of a plan, interpreted and drawn
//   - rebuild.go: look, read, draw, write, tell
//   - says.go: what a change did to the numbers, in words
//   - settle.go: reading plans whose files change, and waiting until they have
//     settled
//   - sheet.go: what is kept of a drawing, and drawing it again
//   - state.go: what watched plans come to, as plain data for whoever shows it
//   - texts.go: the text of files, read only when there is reason to, and the
//     same for every plan that uses them
//   - together.go: what cures come to together, where something has changed
//   - write.go: drawings on disk, each replaced in one step
package rebuild
