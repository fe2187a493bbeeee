// Package drawtest checks pages: what every drawing has to keep, whatever it
// shows.
//
//   - drawtest.go: texts that overlap, are too small, or leave the page
//   - strict.go: the same in a viewer that sets texts wider; leaders and limits
//   - grammar.go: signs, pens, inks, units, the order of subjects, links
package drawtest
