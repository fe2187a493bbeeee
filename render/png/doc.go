// Package png writes a page of a display list as one PNG picture, antialiased,
// at a resolution that the file names, so that it prints in its true size.
// Paper is white, so the inks are always the light ones.
//
//   - png.go: the picture and its resolution
//   - canvas.go: the display list as shapes
//   - outline.go: the outlines of lines and curves
//   - dash.go: dashes
//   - glyphs.go: texts
//   - chunks.go: resolution, title and description, which the standard library does
//     not write
package png
