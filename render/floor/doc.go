// Package floor draws a floor from above, to scale: where cameras and people stand, where
// they go, how long the tapes are, and what each landing keeps sharp.
//
// A Floor is plain data: places, ways, and cameras with their states. Of makes one of a
// shot; all that draws it takes any number of cameras.
//
//   - data.go: a floor as data
//   - shot.go: the floor of a shot, with its places and ways
//   - states.go: where the camera of a shot is, and what it sees then
//   - zones.go: what each landing keeps sharp
//   - pages.go: how a floor is shared out among sheets
//   - ground.go: the scale of a sheet, and what lies where on it
//   - shapes.go: lines and outlines that are cut, and hatches
//   - sights.go: fields of view, axes, and slabs that are sharp
//   - cameras.go: cameras, their tracks, ways and turns
//   - places.go: lettered places, and the ways of people
//   - labels.go: the search for the places of names and words
//   - ruler.go: the ruler under the floor
//   - rows.go: under it the tape to each focus, and what is sharp
//   - table.go: the table of all tapes
package floor
