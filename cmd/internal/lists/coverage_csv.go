// The coverage as CSV (RFC 4180), safe to open in a spreadsheet.

package lists

import (
	"encoding/csv"
	"io"
	"slices"
	"strconv"
	"strings"

	"pullscore/interp/coverage"
	"pullscore/interp/plan"
)

// coverageColumns are the columns in their order; new ones go to the end.
var coverageColumns = []string{
	"plan", "line", "word", "words", "who", "text", "shot", "start_s", "end_s", "frame", "focus", "blur_arcmin", "held", "chance", "others_sharp", "blocked_by", "in_cut",
}

// stagedColumns follow where a scene is staged: its title, whether a line is only heard,
// and from when to when the words sound in the time of the scene.
var stagedColumns = []string{"scene", "off", "scene_start_s", "scene_end_s"}

// WriteCoverageCSV writes a row for every run of words in every set-up that has it. Words
// of a staged scene that no set-up has are a row without a set-up.
func WriteCoverageCSV(out io.Writer, scenes ...*coverage.Scene) error {
	w := csv.NewWriter(out)
	w.UseCRLF = true
	staged := slices.ContainsFunc(scenes, func(sc *coverage.Scene) bool { return sc.Staged != nil })
	columns := coverageColumns
	if staged {
		columns = slices.Concat(coverageColumns, stagedColumns)
	}
	rows := [][]string{columns}
	for _, sc := range scenes {
		for i := range sc.Coverage {
			r := &sc.Coverage[i]
			list := r.Cells
			if sc.Staged != nil && len(list) == 0 {
				list = []coverage.Cell{{Start: plan.None(), End: plan.None(), Blur: plan.None(), Chance: plan.None()}}
			}
			for k := range list {
				row := coverageRow(sc, r, &list[k])
				if staged {
					row = append(row, stagedCells(sc, r)...)
				}
				rows = append(rows, row)
			}
		}
	}
	return w.WriteAll(rows)
}

// coverageRow returns the row of a run of words in a set-up. Its times are those of the
// set-up, also where the scene is staged.
func coverageRow(sc *coverage.Scene, r *coverage.Run, c *coverage.Cell) []string {
	start, end := c.Start, c.End
	if sc.Staged != nil && c.Shot != "" {
		begins := sc.Shots[c.Setup].Covers[0]
		start, end = r.Start-begins, r.End-begins
	}
	return []string{
		guarded(sc.Plan), strconv.Itoa(r.Line), strconv.Itoa(r.First), strconv.Itoa(r.Count), guarded(r.Who), guarded(r.Text), guarded(c.Shot),
		cell(start), cell(end), c.Frame, c.Focus, cell(c.Blur), yes(c.Held), cell(c.Chance), guarded(strings.Join(c.Others, "; ")), guarded(c.By), c.InCut,
	}
}

// stagedCells returns what follows in a row where a scene is staged.
func stagedCells(sc *coverage.Scene, r *coverage.Run) []string {
	title := ""
	if sc.Staged != nil {
		title = sc.Staged.Title
	}
	return []string{guarded(title), yes(r.Off), cell(r.Start), cell(r.End)}
}
