// Package states finds the two states of plans that a difference lies between:
// files and folders as they are, or as a revision of a git repository has them.
//
//   - driver.go: the states that git hands to a program that tells differences
//     for it
//   - module.go: submodules of a revision, each at a commit of its own
//   - states.go: the two states that were asked for
//   - tree.go: files as a revision of a git repository has them, by asking git
package states
