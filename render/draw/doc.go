// Package draw is the display list that every drawing is made as: a page of
// lines, boxes, discs, paths and measured texts in groups, in millimetres from
// the top left corner, y downwards. Back ends write one page each and decide
// nothing: where a text stands, how wide it is and what it is drawn with is
// settled here, so that they all agree.
//
// Curves are chords of the true curve; a drawing keeps them within Chord of it.
// Tints are inks of their own, never opacity, and a hatch is lines, since not
// every back end has opacity or patterns.
//
//   - draw.go: pages, groups and what they hold
//   - box.go: boxes and points
//   - text.go: texts that are measured and shortened
//   - measure.go: how wide a text is
//   - widths.go: the widths of glyphs; genwidths writes it
//   - fallback.go: signs that the fonts lack
//   - ink.go: the inks, in colour and grey, light and dark
//   - hatch.go: hatches made of lines
package draw
