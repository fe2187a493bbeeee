// Package story says who holds the focus in a film, for how long, and where it goes next.
//
//   - story.go: the data, and Of, which computes it for one plan
//   - shot.go: a shot as stays and racks, from its start to its end
//   - lines.go: how much of the lines has its speaker sharp
//   - film.go: all plans together
//   - says.go: the figures in words
package story
