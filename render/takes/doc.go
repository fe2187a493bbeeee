// Package takes draws a log of takes: where a hand landed, against time and
// travel, with the spread of the fit.
//
//   - takes.go: the page and its words
//   - plot.go: one plot of errors
package takes
