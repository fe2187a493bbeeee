// Package film reads what is true for all shots of a plan. Once it is read nobody
// writes to it.
//
// film.go is a film as plain data; read.go reads its settings and its kit, lets.go
// its lets, people.go who speaks or moves in it, log.go the logs of takes that its pullers name, clips.go
// the lists of clips, and cuts.go the cuts that it follows, with what they say of every
// shot; scenes.go has its scenes; speakers.go compares who speaks there, and speed.go says how fast a shot's
// camera runs.
package film
