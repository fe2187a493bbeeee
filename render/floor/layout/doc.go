// Package layout says what stands on a floor, as plain data: places, ways, and cameras
// with their states. Of makes it of a shot. Nothing here knows the page.
//
//   - data.go: a floor as data
//   - shot.go: the floor of a shot, with its places and ways
//   - states.go: where the camera of a shot is, and what it sees then
//   - zones.go: what each landing keeps sharp
package layout
