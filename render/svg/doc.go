// Package svg writes a page of a display list as one SVG file: for a screen,
// light or dark as its viewer likes it, and for a printer, always light.
//
//   - svg.go: the file and its style
//   - canvas.go: the display list as elements
package svg
