// Lists of clips: the takes that there are.

package edit

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"pullscore/lang"
	"pullscore/lang/ale"
	"pullscore/lang/lines"
	"pullscore/lang/timecode"
)

// A Log is a list of clips, as the editing room logged them.
type Log struct {
	Name string // the path, as in ranges
	Rows []ale.Row
}

// mostRows is how many rows of a list are kept: more than a film has clips.
const mostRows = 200_000

// ReadLog reads a list of clips. What is wrong in it is told at its place, and the rest
// is read. The rate is that of the plan, at which the clips count where the list does
// not say.
func ReadLog(t *lines.Text, rate timecode.Rate) (*Log, []lang.Diagnostic) {
	log := &Log{Name: t.Name}
	var faults lines.Faults
	for row := range ale.Rows(t, rate, &faults) {
		if len(log.Rows) == mostRows {
			faults.Add(lang.Diagnostic{
				Code: "too-large", Severity: lang.Error, Range: row.Range,
				Message: fmt.Sprintf("the list has more than %d clips", mostRows), Detail: "The rest is left out.",
			})
			break
		}
		log.Rows = append(log.Rows, row)
	}
	return log, faults.List()
}

// tapeSigns is how many signs of a longer tape some lists of a cut have.
const tapeSigns = 8

// Logged reports whether a row of a list of clips has a clip of a list: its reel or name,
// and its source. It returns the source of the row in frames of a rate: the first, and
// the first that is no longer there.
func (c *Clip) Logged(row *ale.Row, rate timecode.Rate) (from, to int64, ok bool) {
	at, start, end := rate.Seconds(c.SourceIn), row.Rate.Seconds(row.Start), row.Rate.Seconds(row.End)
	if at < start || at >= end {
		return 0, 0, false
	}
	reel := Fold(c.Reel)
	for _, name := range []string{row.Tape, row.Filename, row.Clip, row.Name} {
		folded := Fold(name)
		if folded == "" {
			continue
		}
		short := name == row.Tape && utf8.RuneCountInString(reel) == tapeSigns && strings.HasPrefix(folded, reel)
		if short || folded == reel || folded == Fold(c.Name) {
			return rate.Frames(start), rate.Frames(end), true
		}
	}
	return 0, 0, false
}
