// Package stage says where everyone and everything in a shot is at any time.
//
// stage.go places the subjects, takes the moves of people, camera and zoom, and
// lays the tracks; rig.go lays the turns of the camera and its moves off its axis;
// goal.go is where the focus is wanted, and how far that is; way.go is how that distance
// goes in time, and rigway.go what it does where the camera turns or leaves its axis.
// floor.go resolves places on the floor of a scene, actors.go says how high people are there
// and where they walk, camera.go where a camera stands and looks, and readings.go corrects
// distances by tapes that were read. Lengths are metres, times seconds.
package stage
