// Package preview serves the live page: a list of the watched plans and their
// shots, the score of one, and its findings, replaced in place whenever a plan
// changes.
//
// A Server is given every new State (Show) and hands it on to the browsers that
// are connected (events.go). It answers from what it was given and from files
// in the binary alone, so no request can reach another file. What may come in
// at all is settled in one place (guard.go), before any handler runs.
//
// The page is plain modules, in web; those that only compute are tested with
// node's own test runner, from webtest. Package sampled holds how figures go over the frames
// of a shot.
//
//   - access.go: the token of an address, kept for the next run
//   - append.go: a try added to the file of tries, by way of its folder alone
//   - assets.go: the files of the page, all in the binary
//   - cards.go: what the page says beside a pull or a subject
//   - events.go: the newest State for every browser, as fast as it takes it
//   - guard.go: what may come in: host, origin, token, sizes
//   - moments.go: pulls and rests in words, as the page lists them
//   - points.go: what is pointed at in an editor, and what is picked on the page
//   - results.go: how takes went on set, a tap each, in a log beside the plan
//   - routes.go: what can be asked for, in one table
//   - screens.go: scores as wide as the screens that show them
//   - score.go: the score of a shot, as the page shows it
//   - server.go: from an address to answered requests, and its end
//   - setups.go: shots that have the action of a scene
//   - stage.go: a shot in numbers, frame by frame, for the stage
//   - stage_camera.go: of it, where the camera is and whom it sees where
//   - takes.go: tries that the page keeps, in a log beside the plan
//   - view.go: a State as JSON
package preview
