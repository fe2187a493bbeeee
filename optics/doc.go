// Package optics holds the figures of a lens in front of a sensor: what is
// sharp, how large a blur is, how it looks to a viewer, how much light a stop
// carries. They are pure functions on plain numbers.
//
// Lengths are metres, angles degrees (small ones at the viewer minutes of arc),
// times seconds; f-numbers, densities and stops are plain numbers. Distances of
// subjects and focus are measured from the front principal plane of the lens
// unless a name says "sensor". +Inf is a distance like any other: it is the
// infinity of a focus ring. No function returns NaN within the domain that its
// comment gives and for finite lengths up to 1e100 m.
//
// The lens is a thin lens, or with a pupil ratio other than 1 an asymmetric
// one. The forms are those of S. F. Ray, Applied Photographic Optics, 3rd ed.,
// 2002, chapters 14, 18 and 22 (from memory), and where a function has another
// source it names it. The tests compare with published figures.
package optics
