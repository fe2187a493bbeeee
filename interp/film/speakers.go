// speaker-differs: subtitles whose labels name other speakers than the plan.

package film

import (
	"fmt"
	"strings"

	"pullscore/interp/cut"
	"pullscore/interp/names"
	"pullscore/lang"
)

// A labelled is a line of the plan that subtitles have under a label.
type labelled struct {
	line  *lang.Speech
	who   string // whose it is in the plan
	label string // whom of the plan the label names; empty: somebody else
}

// labelsOf returns the lines of a shot that its subtitles have under a label.
func labelsOf(found *cut.Shot, lines []cut.Said) (list []labelled) {
	for i, key := range cut.KeysOf(lines) {
		if h := found.Lines[key]; h != nil && h.Labelled && lines[i].Who != "" {
			list = append(list, labelled{lines[i].Stmt, lines[i].Who, h.Label})
		}
	}
	return list
}

// fewestLabels is how many lines have to differ: one alone may be another's line of
// the same words.
const fewestLabels = 2

// compareSpeakers tells of each file of subtitles in which no label is that of the
// plan's speaker.
func (r *reader) compareSpeakers(heard map[*cut.File][]labelled) {
	for _, c := range r.Cuts {
		list := heard[c]
		if len(list) < fewestLabels || anyAgrees(list) {
			continue
		}
		first, other := list[0], list[0].label
		if other == "" {
			other = "somebody whom the plan does not name"
		}
		r.Report(lang.Diagnostic{
			Code: "speaker-differs", Severity: lang.Note, Range: c.Stmt.File.Range(),
			Message: fmt.Sprintf("%s has another speaker than the plan for each of %d lines", c.Base(), len(list)),
			Detail:  fmt.Sprintf("It gives “%s” to %s, and the plan to %s. Lines are found by their words alone.", names.ValueOf(first.line.Words), other, first.who),
			Related: []lang.Related{{Message: "this line", Range: first.line.Range()}},
		})
	}
}

func anyAgrees(list []labelled) bool {
	for _, l := range list {
		if strings.EqualFold(l.who, l.label) {
			return true
		}
	}
	return false
}

// whose returns whose a line is, which a move may leave to its use; empty where
// nobody knows.
func whose(in names.Reader, who *lang.Name) string {
	for who != nil {
		arg, outer, ok := in.Arg(who.Text)
		switch {
		case !ok:
			return who.Text
		case arg == nil:
			return ""
		}
		who, in = names.Called(arg), outer
	}
	return ""
}
