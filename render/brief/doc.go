// Package brief makes the crew papers of one plan or of many. Their words and
// tables are passages, which pages show on paper and render/html on a phone, so
// that both say the same.
//
//   - brief.go: passages, the papers of a shot, the title
//   - cover.go: the cover: kit, cautions, shots
//   - shot.go: the sheet of a shot: pulls, findings, a log to fill in
//   - scene.go: the papers of a scene that is staged, before those of its shots
//   - camera.go: what the camera does, and who is in the picture
//   - pages.go: passages laid on pages
package brief
