// Package moments puts the moments of a shot into words: how far somebody may miss a
// mark, how often they are sharp while the focus rests on them or follows them, and
// which moment of a shot is its worst. Lists, papers and the page take them from here,
// so that all say the same.
//
// says.go has the words, hold.go those of where the hand takes hold, rig.go those of a camera
// that turns, scene.go those of a scene and a camera in it, provenance.go where the angles of
// a ring come from, assumed.go what figures take for granted, silence.go what a
// lack of findings says nothing of, worst.go the
// worst moment.
package moments
