// Package fonts reads font files that are embedded into drawings, for characters that the
// fonts of the program lack.
//
//   - fonts.go: reading a file, and what a font must be like
//   - shaping.go: scripts whose letters cannot be set one beside the other
package fonts
