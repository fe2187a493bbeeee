// Package optics computes the figures of a lens in front of a sensor: the depth
// of field, the size of a blur, its size for a viewer, and the light of a stop.
// All functions are pure and take plain numbers.
//
// Lengths are in metres, times in seconds, and angles in degrees. Small angles at
// the viewer are in minutes of arc. F-numbers, densities and stops are plain
// numbers. Distances of subjects and focus count from the front principal plane of
// the lens, unless a name says "sensor". +Inf is a valid distance: the infinity of
// a focus ring. No function returns NaN within the domain that its comment gives,
// for finite lengths up to 1e100 m.
//
// The lens is a thin lens; with a pupil ratio other than 1 it is an asymmetric
// one. The formulas are those of S. F. Ray, Applied Photographic Optics, 3rd ed.,
// 2002, chapters 14, 18 and 22 (from memory). A function with another source names
// it. The tests compare the results with published figures.
package optics
