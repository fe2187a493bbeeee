// Package format holds the sizes of film and sensor formats by name, with the
// standard or table that each comes from. format.go finds one by its name, and
// table.go has the sizes.
//
// Digital cameras are not in the table: their sizes differ from body to body, so a
// plan gives them in millimetres.
package format
