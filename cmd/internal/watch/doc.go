// Package watch tells when to look at files again.
//
// It watches folders, never files: a file that is replaced is another file
// under the same name, and a watch on the old one hears nothing more. Every
// folder on the way to a file is watched, and every one that links on the way
// lead through, since a change of any of them can put another file in place.
//
// What it tells is never that a file has changed, only that it is worth a look:
// events come twice, too early or, when there are too many, not at all. So any
// fault of the system's events means to look at everything, and so does a slow
// clock, whatever happens.
//
//   - index.go: which folders are watched, and which names in them matter
//   - places.go: every name on the way to a file that could lead elsewhere
//   - watch.go: events of folders, as looks at files
package watch
