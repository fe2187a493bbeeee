// Package mention says which name stands where in the files of a plan, for who edits it.
//
// mention.go is a mention as plain data, and says which of them belong together; find.go
// finds all of them in a film that has been read, scenes.go those in its scenes, and
// torn.go those in lines that could not be read. Names are resolved by interp/names alone: what a name means is asked there,
// and what a text in quotes means is what the clock made of it.
package mention
