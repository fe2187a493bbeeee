// Package shot builds one shot: its set-up, its stage, its clock, and every
// number of it.
//
// builder.go goes through the steps; setup.go settles camera, lens, hand and
// stop; figures.go computes the racks, follow.go the follows; resolve.go looks at
// the names of a shot that cannot be computed; told.go has findings, and what
// several checks ask of a shot. Lengths are metres, times seconds, angles
// degrees.
package shot
