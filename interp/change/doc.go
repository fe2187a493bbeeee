// Package change says what is done differently in a shot that is taken anew: to
// see whether that cures a finding, or what another stop would come to.
//
// A Change is plain data: it holds no function and no statement, so that two of
// them can be compared, and it says itself in words. change.go has the change
// and what it makes of the set-up, edits.go how it rewrites the statements of a
// shot, words.go what a plan would write for it.
package change
