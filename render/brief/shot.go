// The sheet of a shot in a brief: its pulls in figures, its findings, and a
// log of takes to fill in by hand.

package brief

import (
	"fmt"

	"pullscore/interp/plan"
	"pullscore/render/sheet"
)

// takeRows is how many rows a blank log has.
const takeRows = 12

func shotSheet(s *plan.Shot) []Passage {
	list := []Passage{Passage{Heading: "Pulls", Columns: pullHeads(), Rows: pullRows(s)}.said()}
	if len(s.Pulls) == 0 {
		list = []Passage{{Heading: "Pulls", Sentences: []string{"The focus stays where it is."}}}
	} else if leastChance(s) != "" {
		list[0].Sentences = []string{modelWords}
	}
	if len(s.Flags) > 0 {
		list = append(list, findingTable(s))
	}
	return append(list, Passage{Heading: "Cautions", Sentences: sheet.Cautions(s)}, takesLog())
}

func pullHeads() []Column {
	return []Column{
		{"no.", false}, {"focus", true}, {"cue", true}, {"because", true}, {"starts", false}, {"lands", false},
		{"from", false}, {"or", false}, {"to", false}, {"or", false},
		{"ring from", false}, {"ring to", false}, {"travel", false}, {"window", false}, {"chance", false},
	}
}

func pullRows(s *plan.Shot) [][]string {
	both := func(n plan.Number) (first, second string) {
		if !n.Known() {
			return "", ""
		}
		return sheet.Style(s).Both(float64(n))
	}
	deg := func(n plan.Number) string {
		if !n.Known() || n.IsInf() {
			return ""
		}
		return sheet.Figures.Angle(float64(n))
	}
	var rows [][]string
	for _, p := range s.Pulls {
		from, fromOther := both(p.FromM)
		to, toOther := both(p.ToM)
		odds := ""
		if p.Chance.Known() {
			odds = sheet.Chance(s, p.Chance)
		}
		rows = append(rows, []string{
			fmt.Sprint(p.Number), sheet.PullName(s, p), p.Anchor, p.Because, sheet.When(s, float64(p.Start)), sheet.When(s, float64(p.Land)),
			from, fromOther, to, toOther, deg(p.FromDeg), deg(p.ToDeg), deg(p.HandDeg), sheet.WindowWidth(p), odds,
		})
	}
	return rows
}

// findingTable lists the findings of a shot: the number of the flag on the
// score, how bad it is, when and of which pull, and what cures it.
func findingTable(s *plan.Shot) Passage {
	t := Passage{Heading: "Findings", Columns: []Column{
		{"flag", false}, {"kind", false}, {"at", false}, {"pull", false}, {"finding", true}, {"cure", true},
	}}
	for _, f := range s.Flags {
		t.Rows = append(t.Rows, []string{fmt.Sprint(f.Number), f.Severity, sheet.When(s, f.Time), sheet.CountOrBlank(f.Pull), f.Text, f.Cures})
	}
	return t.said()
}

// takesLog is a blank log of takes. Its heads are those of the log that is
// read again to learn of a puller.
func takesLog() Passage {
	log := Passage{Heading: "Takes", Blank: true, Sentences: []string{
		"One row a pull and take. Error: degrees at the hand, + past the mark, − short of it; where it was not read, tick landed or not.",
	}}
	for _, head := range []string{"date", "take", "pull", "puller", "landed", "error", "time", "note"} {
		log.Columns = append(log.Columns, Column{head, head == "note"})
	}
	for range takeRows {
		log.Rows = append(log.Rows, make([]string, len(log.Columns)))
	}
	return log
}
