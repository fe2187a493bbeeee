// The language in a minute.

package main

import (
	"strings"

	"pullscore/lang"
)

// example is a whole plan, which a test checks.
const example = `plan "Night ferry"
rate 24
watched on 12 m screen from 18 m

camera A
  sensor 24.89 x 18.66 mm
  on tripod

lens "75"
  focal 75 mm
  stops f/1.8 to f/21
  closest 75 cm
  ring 310 deg, diameter 110 mm

subject ILKA at 1.7 m, deep 4 cm
subject TICKET at 1.2 m
voice PURSER

shot 3A "The wrong ticket"
  with stop f/4
  start on ILKA
  PURSER: "This one is for yesterday."
  rack to TICKET, landing on "yesterday", over 1 s, because "she sees the date"
  hold 1 s
  rack to ILKA, over 1.4 s, because "she decides"
`

// A part is a group of statements by the words that mark them.
type part struct {
	title    string
	keywords string
}

var parts = []part{
	{"The file", "plan rate units pace use edit script let watched sharp land quickest tape"},
	{"Under camera NAME", "sensor records on iso shutter monitor"},
	{`Under lens "NAME"`, "focal stops closest ring turns mark breathing keeps loses pupil"},
	{"Under puller NAME", "takes hand limit grip spread bias"},
	{"Who is there, in the file or a shot", "subject voice"},
	{"A shot", "shot with start begins lasts"},
	{"In a shot, from top to bottom as it happens", ": pause action cue rack hold follow moves dolly zoom"},
	{"A move with a name of its own", "move ("},
}

const (
	primerHead = `The language in a minute

One file is one scene. A line is a statement; a line that ends in a comma goes
on in the next; what stands behind # is for people. Every number has a unit:
1.7 m, 5'6", 35 mm, 1.2 s, 12 fr, 90 deg, f/2.8, T2.1, 95 %.

`
	primerTail = `
PLACE is a distance by tape (1.7 m, 20 cm left) or one from somebody else
(ILKA - 35 cm). TARGET is a subject, a distance, inf, or two subjects that
shall both be sharp (ILKA and TICKET). MOMENT is a word that is spoken
("yesterday"), a speaker, a cue, or a time (3 s), and may be moved: "yesterday"
+ 0.2 s.

The clock of a shot goes on with lines, pauses, actions and holds. A rack
starts where the clock stands or at its MOMENT, or is landing on it; over says
how long it takes. What is left out has a default, which list shows. A file
without shots is a kit: cameras and lenses that plans use.
`
)

// primer returns the text.
func primer() string {
	var b strings.Builder
	b.WriteString(primerHead)
	for line := range strings.Lines(example) {
		b.WriteString("  " + line)
	}
	for _, p := range parts {
		b.WriteString("\n" + p.title + "\n")
		for _, k := range strings.Fields(p.keywords) {
			b.WriteString("  " + lang.Usage(k) + "\n")
		}
	}
	b.WriteString(primerTail)
	return b.String()
}
