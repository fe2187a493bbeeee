// Package setup reads what a shot is taken with: its own clauses over the film's, the
// camera and the lens named or the only ones, and the optics that follow.
//
// setup.go has all that every shot says, glass.go what is on the lens and between hand
// and ring. Lengths are metres, angles degrees.
package setup
