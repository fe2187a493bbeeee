// Package interp turns a plan file into numbers and findings.
//
// It goes one way, through the packages below: load reads the files, names says
// what names and expressions mean, kit reads cameras, lenses and hands, film is
// what holds for all shots, cut finds them in an edit. Then each shot is built
// by itself: stage says where everyone is, clock when everything happens, shot
// puts numbers to it, and checks tells what is wrong and what would cure it.
// What comes out is a plan.Plan, plain data.
//
// Here are the ends of that way: interp.go is what others call, program.go takes
// the steps for a whole plan, script.go, spoken.go and script_findings.go compare the
// plan with a page, retake.go takes a shot anew with a change, mentions.go says which name
// stands where, together.go tries the cures of a shot together, scenes.go says what shots
// make of their scenes, setups.go flags what set-ups have against each other, lenses.go
// says what is known of lenses, and alias.go keeps the names by which files are read.
//
// Inside, lengths are metres, times seconds, angles degrees.
package interp
