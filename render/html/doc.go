// Package html writes a brief as one HTML file without any outside reference:
// it opens from a phone's storage without a network, reads well on a narrow
// screen, light or dark, and prints in its true size.
//
//   - html.go: the file and its parts
//   - sheets.go: pages of drawings alone, as one file
//   - log.go: the log of takes as a form; log.js beside it keeps the takes and
//     makes a CSV file
//   - style.go: its looks, on a screen and on paper
package html
