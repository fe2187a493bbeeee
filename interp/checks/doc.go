// Package checks tells what is wrong with a shot that has been built, and what
// would cure it.
//
// all.go lists the checks in their order. run.go runs them and holds what
// several checks offer alike; cures.go builds the shot anew for every change
// that may cure a finding, and keeps the cures that hold. Each other file is one
// check, or those that tell of one thing, and opens with the codes that it
// tells: before, breathes, closest, diffraction, edit, eye, follow, goes_soft,
// hand, hold_both, jarring, light, line, monitor,
// on_subject, out_of_frame, overlap, regrip, ring, runs_into, seen, slant, too_deep,
// unmotivated and zoom.
package checks
