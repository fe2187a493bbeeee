// Package rig has the checks about a camera that turns or leaves its axis.
//
// leaves.go tells who goes out of the picture while the focus is on them, hands.go what
// a turn and a pull at once ask of hands, fast.go which turn is too fast for the screen,
// off_axis.go where a tape and the focus differ, meets.go whom the camera would run into,
// soft.go what of a loss of focus is the camera's, outside.go who is out of the picture
// by how much, eye.go how far the eye goes while the picture moves. Of staged shots alone
// blocked.go tells who stands in the way, placed.go of tapes and of a tripod that the plan
// does not agree with. moves.go has the moves of the camera that they look at. None tells
// anything of a camera that only goes along its axis.
package rig
