// Package scene computes the action of a scene: when everything in it happens, and where
// everyone is on its floor. It has no camera, and no focus.
//
// scene.go reads a scene, and named.go the shots that it
// names; part.go says which part of it a shot has, and when; floor.go is the floor with whom
// a shot places there itself; home.go where the
// camera of a shot stands on its floor, and where it looks; written.go writes a scene as
// the plan has it.
package scene
