// Package pdf writes pages of a display list as one PDF file: vector drawings,
// text that can be selected and searched in embedded fonts, an outline. Paper
// is white, so the inks are always the light ones.
//
//   - pdf.go: the file: pages, fonts, outline
//   - canvas.go: the display list as operators of PDF
package pdf
