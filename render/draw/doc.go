// Package draw is the display list of every drawing: a page of lines, boxes, discs,
// paths and measured texts in groups. Coordinates are in millimetres from the top
// left corner, with y downwards. A back end writes a page and decides nothing. This
// package sets the place, the width and the ink of every text, so that all back ends
// agree.
//
// A drawing replaces curves by chords that stay within Chord of the true curve. Tints
// are inks of their own and hatches are lines, because some back ends have no opacity
// or patterns.
//
//   - draw.go: pages, groups and what they hold
//   - box.go: boxes and points
//   - text.go: texts that are measured and shortened
//   - measure.go: how wide a text is
//   - widths.go: the widths of glyphs; genwidths writes it
//   - fallback.go: signs that the fonts lack
//   - ink.go: the inks, in colour and grey, light and dark
//   - pen.go: the weights of lines, and what dashes mean
//   - link.go: names that lead from one part of a document to another
//   - hatch.go: hatches made of lines
package draw
