// Package change says what is done differently in a shot that is taken anew: to
// see whether that cures a finding, or what another stop would come to.
//
// change.go has the change itself, how it rewrites the statements of the shot,
// and the small rewritings of one rack.
package change
