// Package story draws who holds the focus in a film, how long, and where it goes next:
// one band a scene, all to one scale of time.
//
//   - story.go: the pages, filled from top to bottom
//   - band.go: the band of a scene: stays and racks between stations
//   - figures.go: the figures of a scene at the right of its band
//   - film.go: the figures of the whole film
package story
