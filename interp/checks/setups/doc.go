// Package setups has the checks that compare the set-ups of one scene with each other.
//
// setups.go runs them, crosses.go tells of a camera on the other side of the line of
// action, differs.go of one that does not match its counterpart, sees.go of one that is in
// the picture of another, pulls.go of one puller who has two pulls at once.
package setups
