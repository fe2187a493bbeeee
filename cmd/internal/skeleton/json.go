// What was read of a page, as data.

package skeleton

import "pullscore/lang/fountain"

// A Reading is what a page says, as `page --as json` prints it.
type Reading struct {
	Scenes []Scene `json:"scenes"`
}

// A Scene is a heading with the speeches below it. Both number and heading may
// be empty.
type Scene struct {
	Number  string   `json:"number"`
	Heading string   `json:"heading"`
	Lines   []Speech `json:"lines"`
}

// A Speech is a character cue with its dialogue, without emphasis.
type Speech struct {
	Who  string `json:"who"`
	Text string `json:"text"`
	Line int    `json:"line"` // of the cue, from 1
}

// Read returns the speeches of scenes. A scene without a heading in which
// nobody speaks is left out: it is only what stands above the first heading.
func Read(scenes []fountain.Scene) Reading {
	r := Reading{Scenes: []Scene{}}
	for _, scene := range scenes {
		s := Scene{Number: scene.Number, Heading: scene.Heading, Lines: []Speech{}}
		for _, b := range scene.Beats {
			if b.Who != "" {
				s.Lines = append(s.Lines, Speech{Who: b.Who, Text: b.Text(), Line: b.Line})
			}
		}
		if s.Heading != "" || len(s.Lines) > 0 {
			r.Scenes = append(r.Scenes, s)
		}
	}
	return r
}
