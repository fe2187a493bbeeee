// Package film holds what is true for all shots of a plan.
//
// film.go has its settings, its kit, its lets and its cuts, and computes a let
// when it is first asked for.
package film
