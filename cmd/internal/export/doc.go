// Package export writes plans for other people's programs: the focus of a shot
// frame by frame, markers for the cutting room, and a click track that a hand
// rehearses with.
//
//   - camera.go: the moves of the camera as markers say them
//   - click.go: a click track: its beats, the start and landing of each pull
//   - click_sounds.go: the sounds of a click track
//   - click_wav.go: a click track as WAV, with its marks
//   - csv.go: the focus as CSV, a row a frame
//   - forms.go: the table of forms, from which flag and help are made
//   - frames.go: the lens at every frame of a shot
//   - used.go: markers that say how each rack in the cut landed
//   - unplanned.go: markers of the moves of a recording without a plan
//   - markers.go: markers for the cutting room, as OTIO and EDL
//   - place.go: where shots and their pieces lie in the record
//   - opentrackio.go: the focus as OpenTrackIO, a sample a frame
//   - usda.go: the focus as a camera in USD ascii; usda_bodies.go what can be seen
//     there; usda_floor.go all that on the floor of a scene; usda_scene.go a scene with
//     all its set-ups; usda_names.go names of its prims
package export
