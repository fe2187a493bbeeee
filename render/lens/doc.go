// Package lens draws the sheet with which somebody maps the focus ring of a lens: a tape
// to wrap round the ring, a table to fill in, and a target with a ruler to focus on.
//
// A Lens, plain data, becomes pages of the display list of package draw. All lengths on
// the pages are in millimetres and hold where the sheet is printed at 100 %.
//
//   - sheet.go: the lens, and the two pages
//   - tape.go: the tape, in strips to glue together
//   - table.go: the table, and the blanks beside it
//   - words.go: the steps, the form to type in and the cautions
//   - target.go: the star and the two strips of its ruler
package lens
