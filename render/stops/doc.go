// Package stops draws the window of stops of a shot: the chance of every rack
// and the blur that shows it, against the stop.
//
//   - stops.go: the page, and the window that is shaded
//   - scale.go: the scale of stops, and the words over the plots
//   - curves.go: the curves of racks, and which of them share a line
//   - plot.go: the plots of chances and blurs
//   - badge.go: the numbers of racks that share a line
//   - needs.go: depth and light against the stop, and the answer in words
package stops
