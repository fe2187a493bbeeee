// Package kit reads cameras, lenses and pullers from their sections.
//
// kit.go has cameras and pullers, and walks a section; sensor.go has the size of a
// sensor and the part that the picture uses; lens.go has lenses and their scales of
// stops, ring.go their rings, marks.go the marks on those, and glass.go what the glass does
// beside that, such as squeeze and breathing; viewing.go says what the
// film is watched on, and what sharp and sure mean for it. Lengths are metres, angles
// degrees.
package kit
