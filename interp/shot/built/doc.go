// Package built holds one shot as it comes out: where everyone is, when everything
// happens, and from these the figures of its pulls and rests. Nothing here reads a
// statement; checks ask it what they want to know.
//
//   - shot.go: the shot, and the order in which its figures are filled in
//   - pull.go: its racks and follows, tied to one another
//   - figures.go: the numbers of a pull
//   - landing.go: what a pull asks of the hand
//   - follow.go: how far a hand is behind somebody who moves
//   - band.go: how far chances hang on the hand and the window
//   - rest.go: how often somebody who sways is sharp
//   - miss.go: how far somebody may be from the mark
//   - light.go: what light is lost near the lens
//   - glass.go: what is on the lens, and between hand and ring
//   - ring.go: how well the ring is known
//   - unknown.go: what holds where nothing is known of the ring
//   - places.go: where everyone stands
//   - turns.go: how the camera turns
//   - in_cut.go: what the cut shows
//   - questions.go: where the focus is, and what its lens can do
package built
