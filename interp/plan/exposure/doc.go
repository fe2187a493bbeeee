// Package exposure holds the stops of a lens and the light that they let through.
//
//   - scale.go: the stops that a lens has, over its focal lengths
//   - spoken.go: the scale of stops that a shot speaks
//   - light.go: the light of a shot, and what of it is lost near the lens
package exposure
