// Package rebuild keeps plans, what they come to and their drawings in step
// with files that change.
//
// It looks at files when package watch says so, reads those that changed, interprets
// the plans that use them, draws what is new and replaces drawings in one step.
// While a plan has errors its last good drawings stay. What a change did to the
// numbers is told in words.
package rebuild
