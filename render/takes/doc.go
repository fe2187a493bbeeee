// Package takes draws a log of takes: where a hand landed, against time and
// travel, with the spread of the fit.
//
//   - takes.go: the page and its words
//   - plot.go: one plot of errors
//   - histogram.go: errors counted in bins, where all travels are much alike
//   - window.go: the window that takes have to land in
//   - calibration.go: what was said of takes against how many landed
package takes
