// Package glass holds the checks about lens and ring. Each file is one check, or those
// that tell of one thing, and opens with the codes that it tells: breathes, closest,
// diffraction, marks, oval, play, reach, ring, slips, speed and zoom.
package glass
