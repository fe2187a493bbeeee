// Package edits makes a talk, the ways in which subtitles write it, and the edits in
// which a cut shows it, so that tests of several rooms speak of the same ones. All of
// it is made without a random source: it is the same in every run.
//
//   - talk.go: the talk, its captions as SubRip, and a plan of it
//   - variants.go: the ways in which subtitles write a talk
//   - edits.go: the edits, each with its list and the captions that it leaves
package edits
