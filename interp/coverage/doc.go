// Package coverage says what each shot of a plan has of each word: whether the speaker
// is sharp as the word sounds, and who else is.
//
// Shots of one plan that have the same lines are set-ups of one scene. The package joins
// their lines to the lines of that scene, and looks at every word in every set-up. A scene
// that is staged has its lines itself, and one clock holds in it.
//
//   - coverage.go: the data, and Of, which computes it
//   - staged.go: the same of a scene that is staged: its lines are its own
//   - script.go: the lines of the scene, joined from those of the shots
//   - match.go: which line of a shot is which line of the scene
//   - spoken.go: what a speaker says in the scene, and what may be found in it
//   - align.go: which word of a line is which word of the other
//   - look.go: one word in one set-up
//   - runs.go: the same as runs of words that look alike, as lists write it
//   - shown.go: which set-up the cut shows
//   - missing.go: words that no set-up holds, and how many each speaker has
package coverage
