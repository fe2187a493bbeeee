// Package checks tells what is wrong with a shot that has been built, and what
// may cure it.
//
// all.go lists the checks in their order, also those of packages glass and rig; shot.go is a
// shot as they see it. Each other file is one check, or those that tell of one thing,
// and opens with the codes that it tells: any_ring, drifts, edit, eye, follow, goes_soft, hand,
// hold_both, idle, light, line, monitor, on_subject, out_of_frame, overlap, pace,
// removed, runs_into, seen, slant, takes, too_deep and trimmed. speech.go finds who speaks when.
// Package check has what they share with those of glass and rig.
package checks
