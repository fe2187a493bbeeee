// Package editor is the language server: it answers what an editor asks about plans that
// are being written. cmd/internal/lsp carries the messages.
//
// A notification makes a new snapshot; nothing changes in an old one. A request is
// answered from the snapshot that stood when it was read. One worker takes the newest
// snapshot, interprets its plans and publishes what they come to.
//
//   - actions.go: what can be done about a part of a document
//   - commands.go: what a client can have done: the score on the live page
//   - completion.go: what can be written at a place, best first
//   - cursor.go: where somebody writes lights on the live page, and the other way round
//   - diagnostics.go: findings as the protocol has them, and the requests for them
//   - document.go: an open text and its edits
//   - findings.go: the findings of many plans, gathered by the file that they are in
//   - folding.go: the parts of a plan that can be folded away
//   - formatting.go: the layout as the least edits by lines
//   - graph.go: which plans use which files
//   - habits.go: what a plan writes at such a place
//   - hints.go: times and chances behind statements
//   - hover.go: what a word of a plan comes to
//   - hover_names.go: what a name or a number stands for
//   - hover_scene.go: what stands on the floor of a scene, and what a shot has of it
//   - hover_words.go: what a word of the language means where it stands
//   - lens.go: what stands above a shot, and above what a kit declares
//   - lines.go: byte offsets to positions and back, in UTF-8 or UTF-16
//   - links.go: the files that a plan names, as links
//   - naming.go: the names of a document and of the plans that use it
//   - notifications.go: what changes the snapshot, in one table
//   - offers.go: what a plan has of each kind of thing that the grammar expects
//   - offers_start.go: what a line can begin with
//   - offers_stops.go: the stops of the lens, each with what it does to the racks
//   - offers_words.go: what can stand in quotes
//   - places.go: where a name is declared, and where else it stands
//   - planned.go: one plan as it was interpreted, and of which texts
//   - rename.go: another name for something, in all plans
//   - requests.go: what a client can ask, in one table
//   - says.go: what parts of a shot come to, with the figures of the list
//   - selection.go: what to select around a place
//   - server.go: from initialize to exit
//   - settings.go: what the client can do and wants
//   - signature.go: how the statement is written that somebody writes
//   - snapshot.go: all texts at one moment, and what they come to
//   - symbols.go: what a document is made of, and where something of the workspace is
//   - sorting.go: sorting with one code for all types
//   - texts.go: texts on disk, each read once until it changes
//   - tokens.go: what every word of a plan is
//   - turn.go: one round of the worker: which plans, in which order
//   - uri.go: URIs to paths and back
//   - watching.go: asks the client to tell of files that change on disk
//   - worker.go: interprets the newest snapshot and publishes, without timers
//   - workspace.go: the plans in the folders of the workspace
package editor
