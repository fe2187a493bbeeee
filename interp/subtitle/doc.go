// Package subtitle says what is said in a subtitle, and by whom: without tags,
// sounds, music signs and the names of speakers, which subtitles for the hard of
// hearing have (common practice, no source).
//
// subtitle.go takes the text apart, label.go knows the names of speakers,
// voices.go the tags that name them, and brackets.go takes out what stands in brackets.
package subtitle
