// Package fit fits a hand to takes: whose throughput, spread and bias would land
// them so.
//
//   - log.go: takes as the fit knows them, and the fits of them
//   - cells.go: takes summed up in cells
//   - likelihood.go: how likely takes are, with the gradient
//   - student.go: the distribution that the robust fit goes by
//   - fit.go: what is known beforehand, and the search for the best hand
//   - least.go: one search, some parameters held
//   - interval.go: the ranges
//   - slips.go: takes that are left out
//
// Angles are degrees at the hand, times seconds.
package fit
