// Package floor draws a floor from above, to scale: where cameras and people stand, where
// they go, how long the tapes are, and what each landing keeps sharp.
//
// The floor comes as plain data from render/floor/layout, and render/floor/seek finds
// places for names and discs. All that draws it takes any number of cameras.
//
//   - pages.go: how a floor is shared out among sheets
//   - ground.go: the scale of a sheet, and what lies where on it
//   - sights.go: fields of view, axes, and slabs that are sharp
//   - cameras.go: cameras, their tracks, ways and turns
//   - places.go: lettered places, and the ways of people
//   - ruler.go: the ruler under the floor
//   - rows.go: under it the tape to each focus, and what is sharp
//   - table.go: the table of all tapes
package floor
