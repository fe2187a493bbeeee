// Package overview draws a long shot on one sheet, before the sheets that show it to scale:
// who holds the focus and when it goes to whom, as a graph of trains. Such graphs are old:
// Marey, La méthode graphique, Paris, 1885, pp. 21-22, shows the timetables of Ibry.
//
//   - overview.go: the sheet, from the top down
//   - stations.go: who holds the focus when, and where they stand on the sheet
package overview
