// Package drawtest checks pages: what every drawing has to keep, whatever it
// shows.
//
//   - drawtest.go: texts that overlap, are too small, or leave the page, in any viewer
//   - strict.go: texts on lines that limit something, and leaders
//   - grammar.go: signs, pens, inks, units, the order of subjects, links
//   - scale.go: time, windows, zones and curves against the plan
package drawtest
