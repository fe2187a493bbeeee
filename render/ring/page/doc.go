// Package page makes the pages of what is cut out: heads, running text, tables, feet with a
// bar that checks the printer.
//
//   - book.go: pages from top to bottom, their heads and feet
//   - table.go: the table of marks
package page
