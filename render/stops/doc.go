// Package stops draws the window of stops of a shot: the chance of every rack
// and the blur that shows it, against the stop.
//
//   - stops.go: the page and its scale of stops
//   - curves.go: the plots of chances and blurs
//   - needs.go: depth and light against the stop, and the answer in words
package stops
