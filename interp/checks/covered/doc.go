// Package covered tells what the set-ups of a scene that is staged have not got of its
// words, and what its cuts make of them.
//
// covered.go tells all of one scene. held.go has words that no set-up holds or covers
// (not-held, not-covered), screen.go words that the cut shows in a set-up that does not
// hold them (not-on-screen), jumps.go cuts at which the focus jumps (focus-jumps), and
// cutting.go says which set-up the cut shows when.
package covered
