// Package shot builds one shot: from the statements of its section to a value
// that checks and drawings read, and that nobody writes to afterwards. That value is of
// package built, which fills in its figures.
//
//   - build.go: from one end to the other
//   - builder.go: what the shot says itself
//   - clips.go: which clips show it
//   - order.go: its racks and follows in the order of time
//   - turns.go: how far its camera tilts
//   - defaults.go: what it is taken to say where it does not
//   - staging.go: what it has of the scene under which it stands
//   - measured.go: the tapes that were read in it
//   - resolve.go: a shot that cannot be computed, and what no shot says
package shot
