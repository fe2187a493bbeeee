// Package checks tells what is wrong with a shot that has been built, and what
// may cure it.
//
// all.go lists the checks in their order, shot.go is a shot as they see it and
// what several of them ask or offer alike. Each other file is one check, or those
// that tell of one thing, and opens with the codes that it tells: closest,
// diffraction, drifts, edit, eye, follow,
// goes_soft, hand, hold_both, idle, light, line, monitor, on_subject,
// out_of_frame, overlap, pace, ring, runs_into, seen, slant, too_deep, trimmed
// and zoom. speech.go finds who speaks when.
package checks
