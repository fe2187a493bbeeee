// Lists of clips: the takes that there are.

package edit

import (
	"fmt"

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
