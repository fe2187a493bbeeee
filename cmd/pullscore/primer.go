// The language in a minute, and its words by task.

package main

import (
	"fmt"
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

// A part is a group of statements by the words that mark them: of those with one word,
// those under a header where one is given, else the usual one.
type part struct {
	title    string
	keywords string
	header   string
}

// usages returns the usage lines of a word.
func (p *part) usages(keyword string) []string {
	if p.header == "" {
		return []string{lang.Usage(keyword)}
	}
	return lang.UsagesUnder(keyword, p.header)
}

// firstWords are what the first five minutes need, each with what it says.
// "because" is a clause.
var firstWords = [][2]string{
	{"subject", "who or what can be sharp, and where"},
	{"voice", "who is only heard"},
	{"shot", "begins a shot"},
	{"with", "the camera, the lens and the stop"},
	{"start", "where the focus is at first"},
	{":", "who says what"},
	{"rack", "where the focus goes, when, and how long it takes"},
	{"because", "why a rack happens, at its end"},
	{"hold", "how long the focus stays"},
	{"follow", "the focus goes with somebody who moves"},
	{"moves", "somebody walks"},
	{"cue", "a moment with a name, such as a knock at the door"},
}

// tasks are the statements of the language by what one wants to do.
var tasks = []part{
	{title: "Set the film up, at the top of a file", keywords: "plan rate units pace use let tape crop"},
	{title: "Say what counts as sharp, how sure a landing must be, and how fast a rack may be", keywords: "watched sharp land quickest"},
	{title: "Say who is there, in the file or in a shot", keywords: "subject voice"},
	{title: "Begin a shot", keywords: "shot with start begins lasts note"},
	{title: "Say what happens, from top to bottom", keywords: ": pause action cue"},
	{title: "Move the focus", keywords: "rack hold follow"},
	{title: "Move people, the camera and the zoom", keywords: "moves pan tilt dolly push pull track boom zoom"},
	{title: "Begin what is shot from several set-ups (pullscore help staging)", keywords: "scene"},
	{title: "Say where the floor has its places, and what is done there, under scene", keywords: "origin mark subject moves line cut", header: "scene"},
	{title: "Shoot a scene, under shot", keywords: "covers runs places matches camera measured", header: "shot"},
	{title: "Follow a cut or a script page", keywords: "edit clips clip script"},
	{title: "Give a series of moves a name, and use it", keywords: "move ("},
	{title: "Describe a camera, under camera NAME", keywords: "camera sensor records on iso shutter monitor shoots"},
	{title: `Describe a lens, under lens "NAME"`, keywords: "lens focal stops closest ring turns mark marks ends play squeeze ratio darkens breathing planes keeps loses pupil"},
	{title: "Describe a hand, under puller NAME", keywords: "puller takes hand limit grip spread bias"},
}

const (
	primerHead = `The language in a minute

One file is one scene. Each line is one statement. A line that ends in a comma
continues on the next one. Text after # is a comment. Every number has a unit:
1.7 m, 5'6", 35 mm, 1.2 s, 12 fr, 90 deg, f/2.8, T2.1, 95 %.

`
	primerTail = `
PLACE is a distance by tape (1.7 m, 20 cm left) or one from somebody else
(ILKA - 35 cm). TARGET is a subject, a distance, inf, or two subjects that
must both be sharp (ILKA and TICKET). MOMENT is a spoken word ("yesterday"), a
speaker, a cue or a time (3 s), with or without a shift: "yesterday" + 0.2 s.
KIND is pan, tilt, boom, dolly, track or zoom: what goes with pan starts and
lands with the last pan above.

Lines, pauses, actions and holds advance the clock of a shot. A rack starts
where the clock stands, starts on its MOMENT, or lands on it; over says how
long it takes. pullscore list shows the default used for whatever you leave
out. A file without shots is a kit: cameras and lenses for other plans.

Once you shoot one action from several set-ups, write it once, under a scene:
people stand on a FLOOR, and each shot says where its camera stands. A FLOOR is
a mark, somebody or nothing (the zero point), with ways behind it: 1.2 m right,
3 m upstage. AIM is somebody the lens looks at. See pullscore help staging.
`
)

// primer returns the text.
func primer() string {
	var b strings.Builder
	b.WriteString(primerHead)
	for line := range strings.Lines(example) {
		b.WriteString("  " + line)
	}
	byTask(&b)
	b.WriteString(primerTail)
	return b.String()
}

// byTask writes how every statement is written, by task.
func byTask(b *strings.Builder) {
	for _, p := range tasks {
		b.WriteString("\n" + p.title + "\n")
		for _, k := range strings.Fields(p.keywords) {
			for _, usage := range p.usages(k) {
				b.WriteString("  " + usage + "\n")
			}
		}
	}
}

// wordList returns the words of the language: those to begin with, and all by
// task.
func wordList() string {
	var b strings.Builder
	b.WriteString("The words to begin with\n\n")
	for _, w := range firstWords {
		name := w[0]
		if name == ":" {
			name = `NAME: "WORDS"`
		}
		fmt.Fprintf(&b, "  %-16s%s\n", name, w[1])
	}
	b.WriteString("\nAll statements, by task (pullscore help WORD explains one)\n")
	byTask(&b)
	return b.String()
}
