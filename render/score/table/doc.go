// Package table holds what the tables below the bands of a score share.
//
//   - cells.go: distances between cells, and their wrapped texts
package table
