// The coverage as CSV (RFC 4180), safe to open in a spreadsheet.

package lists

import (
	"encoding/csv"
	"io"
	"strconv"
	"strings"

	"pullscore/interp/coverage"
)

// coverageColumns are the columns in their order; new ones go to the end.
var coverageColumns = []string{
	"plan", "line", "word", "words", "who", "text", "shot", "start_s", "end_s", "frame", "focus", "blur_arcmin", "held", "chance", "others_sharp", "blocked_by", "in_cut",
}

// WriteCoverageCSV writes a row for every run of words in every set-up that has it.
func WriteCoverageCSV(out io.Writer, scenes ...*coverage.Scene) error {
	w := csv.NewWriter(out)
	w.UseCRLF = true
	if err := w.Write(coverageColumns); err != nil {
		return err
	}
	for _, sc := range scenes {
		for i := range sc.Coverage {
			r := &sc.Coverage[i]
			for k := range r.Cells {
				c := &r.Cells[k]
				row := []string{
					guarded(sc.Title), strconv.Itoa(r.Line), strconv.Itoa(r.First), strconv.Itoa(r.Count), guarded(r.Who), guarded(r.Text), guarded(c.Shot),
					cell(c.Start), cell(c.End), c.Frame, c.Focus, cell(c.Blur), yes(c.Held), cell(c.Chance), guarded(strings.Join(c.Others, "; ")), guarded(c.By), c.InCut,
				}
				if err := w.Write(row); err != nil {
					return err
				}
			}
		}
	}
	w.Flush()
	return w.Error()
}
