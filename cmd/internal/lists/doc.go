// Package lists writes tables: the pull list, the window of stops and what a
// log of takes says of a hand. A table is text for people; the pull list is
// also CSV for spreadsheets and JSON, by the promise to scripts.
//
//   - pulls.go: the pull list as text
//   - pulls_csv.go: the pull list as CSV (RFC 4180), safe to open in a
//     spreadsheet
//   - rig.go: what the pull list tells of a camera that turns or leaves its axis; package
//     scenes what it tells of scenes
//   - pieces.go: what the pull list tells of the pieces of a cut
//   - pulls_json.go: the pull list as JSON
//   - coverage.go: what each set-up has of each word, as text
//   - coverage_csv.go: the same as CSV
//   - stops.go: the window of stops as text
//   - lenses.go: a shot through every lens of the kit, as text
//   - rings.go: what is known of the lenses of a kit, as text
//   - story.go: who holds the focus in a film, as text
//   - takes.go: a log of takes as text
//   - predicted.go: what was said of takes against what landed, as text
//   - takes_recorded.go: the score of a recording as text; takes_unplanned.go the moves of one without a plan
//   - takes_used.go: which takes a cut uses, as text and as CSV
//   - units.go: numbers as people on a set read them
package lists
