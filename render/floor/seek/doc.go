// Package seek finds places on a floor for names, words and lettered discs.
//
//   - shapes.go: lines and outlines that are cut, and hatches
//   - labels.go: the search for the places of names and words
//   - pins.go: the search for the places of discs
package seek
