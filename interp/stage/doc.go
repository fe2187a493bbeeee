// Package stage says where everyone and everything in a shot is at any time.
//
// stage.go places the subjects, takes the moves of people, camera and zoom, and
// lays the tracks; goal.go is where the focus is wanted, and how far that is; way.go is how
// that distance goes in time.
// Lengths are metres, times seconds.
package stage
