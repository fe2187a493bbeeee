// Package motion says where things are over time: people, camera and zoom on their
// tracks, and points of the floor as the lens sees them from a pose of the camera.
// Lengths are in metres, angles in degrees, times in seconds.
//
//   - track.go: a value over time
//   - pose.go: where the camera is and looks, and what its lens sees where
package motion
