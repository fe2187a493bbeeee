// Package diff tells what a change of a plan is to the crew: pulls that came,
// are gone or fall at another time, marks that moved, other chances, other
// findings. It compares what plans come to, never their text: another layout,
// other names of moves or a value that moved into a kit make no difference.
//
// Times differ from half a frame on, angles from a twentieth of a degree, places on a
// floor from five millimetres; all else differs where a pull list would print it
// differently.
//
//   - diff.go: a difference as data
//   - align.go: which pulls of two states are the same pull
//   - compare.go: what is different in a plan, a shot, a pull
//   - scenes.go: what is different in a scene, which is told once
//   - staging.go: what is different in how a shot is staged
//   - floor.go: places on the floor of a scene, in words
//   - held.go: words that other set-ups of a scene hold now
//   - renamed.go: a plan that only has another name
//   - pieces.go: what is different in the subjects and the events of a shot
//   - recut.go: what is different in how the cut shows a pull
//   - rig.go: what is different in how a camera that turns sees everyone
//   - findings.go: findings that came, and that are gone
//   - fold.go: findings of which there are many, told together
//   - detail.go: what is different in a number or a word, and when a number is
//     different
//   - phrases.go: a difference in phrases, for the terminal and for drawings
//   - text.go: a difference as text for people
//   - json.go: a difference as JSON, by the promise to scripts
package diff
