// Package checks tells what is wrong with a shot that has been built, and what
// may cure it.
//
// all.go lists the checks in their order, also those of packages edited, glass and rig; shot.go is a
// shot as they see it. Each other file is one check, or those that tell of one thing,
// and opens with the codes that it tells: any_ring, drifts, eye, follow, goes_soft, hand,
// hold_both, idle, light, line, monitor, on_subject, out_of_frame, overlap, pace,
// runs_into, seen, slant and too_deep. speech.go finds who speaks when.
// Package check has what they share with theirs.
package checks
