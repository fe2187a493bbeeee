// Package gutter writes the names before the bands of a score. All lengths are in
// millimetres.
//
//   - labels.go: names kept apart, with leader lines to what they name
package gutter
