// Clips that somebody names, without a plan.

package edit

import (
	"path/filepath"
	"slices"
	"strings"
	"unicode/utf8"

	"pullscore/lang"
	"pullscore/lang/lines"
	"pullscore/lang/otio"
	"pullscore/lang/timecode"
)

// Find reads a list and returns its clips that a name means, as the ID of a shot does in
// a plan: 27A is each of its takes, and 27A-3.mov also the clip 27A TK 3. The name may
// also be a pattern, as in a clip statement. The cut is nil where nobody can tell what
// the file is; where no clip is meant, its Near says which resemble the name.
func Find(t *lines.Text, rate timecode.Rate, name string) (c *Cut, found []Piece, diags []lang.Diagnostic) {
	id := Bare(name)
	c, diags = Read(t, rate, Wanted{Shots: []string{id}})
	if c == nil {
		return nil, nil, diags
	}
	if found = c.Pieces(id); len(found) > 0 {
		return c, found, diags
	}
	asked := Ask{Shot: name, Name: name}
	if other, _ := Read(t, rate, Wanted{Asked: []Ask{asked}}); len(other.Pieces(name)) > 0 {
		return other, other.Pieces(name), diags
	}
	for _, part := range takesOf(id) {
		other, _ := Read(t, rate, Wanted{Shots: []string{part.id}})
		found = slices.DeleteFunc(other.Pieces(part.id), func(p Piece) bool {
			return Fold(p.Take) != part.Take || part.Camera != "" && p.Camera != "" && Fold(p.Camera) != part.Camera
		})
		if len(found) > 0 {
			return other, found, diags
		}
	}
	return c, nil, diags
}

// A part is a name taken apart.
type part struct {
	id string
	Tail
}

// takesOf returns the ways in which a folded name may be a take of a shot, the longest ID
// first.
func takesOf(name string) (list []part) {
	for n := len(name) - 1; n > 0; n-- {
		if !utf8.RuneStart(name[n]) {
			continue
		}
		if t, ok := TailOf(name, name[:n]); ok && t.Take != "" {
			list = append(list, part{name[:n], t})
		}
	}
	return list
}

// RateOf returns the rate at which a file counts its times; ok is false where it does not
// say it, as an edit decision list never does.
func RateOf(t *lines.Text) (rate timecode.Rate, ok bool) {
	if strings.EqualFold(filepath.Ext(t.Name), ".ale") {
		return rateOfLog(t)
	}
	if kindOf(t) != ".otio" {
		return rate, false
	}
	line, _ := otio.Read(t)
	return line.Rate, len(line.Tracks) > 0
}

// rateOfLog returns the rate of the first clip of a list of clips. Where the list does
// not say it, that is the rate it was read with.
func rateOfLog(t *lines.Text) (rate timecode.Rate, ok bool) {
	for i, other := range []string{"24", "25"} {
		with, err := timecode.ParseRate(other)
		if err != nil {
			return rate, false
		}
		log, _ := ReadLog(t, with)
		if len(log.Rows) == 0 || i > 0 && log.Rows[0].Rate != rate {
			return rate, false
		}
		rate = log.Rows[0].Rate
	}
	return rate, true
}
