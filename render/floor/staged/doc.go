// Package staged draws the floor of a scene from above, to scale: its marks, everybody's
// places and ways, and all cameras that shoot it, with their tapes.
//
// The front is at the foot of the page, and what is right on the floor is right on the page.
//
//   - data.go: the floor of a scene as plain data
//   - setups.go: where its cameras stand, what they see, and their tapes
//   - words.go: places, heights and turns in words
//   - pages.go: how a floor is shared out among sheets
//   - ground.go: the scale of a sheet, and what lies where on it
//   - layer.go: the layers of a sheet, from the grid to the names
//   - people.go: marks, places, ways and lines of action
//   - cameras.go: cameras, their ways and pans
//   - sights.go: fields of view
//   - foot.go: the bars of a metre and of three feet
//   - table.go: the table of tapes
//   - card.go: the card of all tapes, with boxes for readings
package staged
