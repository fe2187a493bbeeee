// Package bands holds the bands that show a shot against time, and the sheets that they
// are stacked on. The score of one shot and the difference of two are made of them.
//
//   - chart.go: a shot cut into windows of time, one a sheet, on common scales
//   - screen.go: the same for a screen, in systems as wide as that
//   - leaf.go: sections stacked on a page, with the free room shared out
//   - curves.go: what the bands draw, sampled once for all of them
//   - head.go: title, ruler of time, columns of the pulls
//   - record.go: what the cut shows of a shot, under the ruler
//   - distance.go: the band of distances
//   - zone.go: the sharp zone in that band, and where it goes on beyond it
//   - turn.go: the scale of the band of the hand, which package hand draws
//   - plumbs.go: lines from words and cues down through all bands
//   - flags.go: numbers of pulls and flags of findings above the bands
//   - gutter.go: what the bands have in common
package bands
