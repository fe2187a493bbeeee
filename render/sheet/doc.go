// Package sheet is the page that all papers share: its size and type, the head
// and the foot, keys, labels that keep apart, tables, cautions, and the words
// for pulls and numbers.
//
// A paper turns a shot, as plain data, into pages of the display list of package
// draw. A back end such as render/svg writes the pages. A paper does not know files
// or formats, and the same shot always gives the same pages. All lengths are in
// millimetres on the page. No type is smaller than 7 points.
//
//   - paper.go: sizes of paper, the options of a drawing, type and lines
//   - head.go: the head of every page: the shot and its set-up
//   - folio.go: the head of the sheets of a shot, with paper and page
//   - order.go: the one order of the subjects of a shot
//   - legend.go: the legend at the foot, made from the signs of the page
//   - key.go: signs and hatches that several papers use, and the entries of a
//     key
//   - labels.go: labels that keep apart along a line, or find a free place in
//     a plot
//   - seek.go: the search for the place of a label
//   - simplify.go: curves as few chords, and regions between curves
//   - shorten.go: texts cut where a reader misses least
//   - stack.go: pages filled from top to bottom
//   - handout.go: sheets filled from top to bottom, with a bar to check the
//     printer
//   - table.go: tables on such sheets
//   - cautions.go: what can hurt somebody, on every paper that shows it
//   - pulls.go: the names of pulls and targets
//   - units.go: lengths, angles, times and chances in the words of papers
package sheet
