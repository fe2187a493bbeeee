// Package cures runs the checks on a shot that has been built, and finds what cures
// their findings.
//
// run.go runs them. trial.go builds the shot anew with a change and sees what is told
// of it then. cures.go does so for every change that may cure a finding, and keeps
// the cures that hold. causes.go puts findings of one cause together.
// together.go tries the cures of a shot together.
package cures
