// A shot in words: its pulls in figures, its findings, and what no drawing shows.

package brief

import (
	"cmp"
	"fmt"

	"pullscore/interp/moments"
	"pullscore/interp/plan"
	"pullscore/render/sheet"
)

// cautions heads what can hurt somebody.
const cautions = "Cautions"

func shotSheet(s *plan.Shot) []Passage {
	pulls := Passage{Heading: "Pulls", Columns: pullHeads(), Rows: pullRows(s)}.said()
	if len(s.Pulls) == 0 {
		pulls = Passage{Heading: "Pulls", Sentences: []string{"The focus stays where it is."}}
	} else if worstMoment(s) != "" {
		pulls.Sentences = []string{modelWords}
	}
	if text := moments.Provenance(s); text != "" && len(s.Pulls) > 0 {
		pulls.Sentences = append(pulls.Sentences, text+".")
	}
	marks := markTable(s)
	pulls.Drawn, marks.Drawn = true, true
	var list []Passage
	if len(s.Notes) > 0 {
		list = append(list, Passage{Heading: "Notes", Sentences: s.Notes})
	}
	list = append(list, pulls)
	for _, part := range []Passage{reasonTable(s), cameraTable(s), pictureTable(s), holdTable(s), marks, restTable(s)} {
		if len(part.Rows) > 0 {
			list = append(list, part)
		}
	}
	if len(s.Flags) > 0 {
		list = append(list, findingTable(s))
	} else if silent := moments.NotJudged(s); silent != "" {
		list = append(list, Passage{Heading: "Findings", Sentences: []string{"No findings; " + silent + "."}, Drawn: true})
	}
	return append(list, Passage{Heading: cautions, Sentences: sheet.Cautions(s)})
}

// reasonTable lists why the focus moves, and how often it is sharp while it follows: what
// the table of pulls on the score has no room for.
func reasonTable(s *plan.Shot) Passage {
	t := Passage{Heading: "Reasons and follows", Paper: true, Columns: []Column{
		{"no.", false}, {"focus", true}, {"because", true}, {"sharp", false}, {"at worst", false},
	}}
	for i, row := range pullRows(s) {
		if p := s.Pulls[i]; p.Because != "" || p.SharpShare.Known() || p.WorstShare.Known() {
			n := len(row)
			t.Rows = append(t.Rows, []string{row[0], row[1], row[3], row[n-2], row[n-1]})
		}
	}
	return t.said()
}

func pullHeads() []Column {
	return []Column{
		{"no.", false}, {"focus", true}, {"cue", true}, {"because", true}, {"starts", false}, {"lands", false},
		{"from", false}, {"or", false}, {"to", false}, {"or", false},
		{"ring from", false}, {"ring to", false}, {"travel", false}, {"window", false}, {"chance", false}, {"sharp", false}, {"at worst", false},
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
		worst := ""
		if p.WorstShare.Known() {
			worst = sheet.Chance(s, p.WorstShare) + " " + sheet.When(s, float64(p.WorstAt))
		}
		rows = append(rows, []string{
			fmt.Sprint(p.Number), sheet.PullName(s, p), p.Anchor, p.Because, sheet.When(s, float64(p.Start)), sheet.When(s, float64(p.Land)),
			from, fromOther, to, toOther, deg(p.FromDeg), deg(p.ToDeg), deg(p.HandDeg), sheet.WindowWidth(p),
			moments.Lands(s, p, sheet.Style(s)), sheet.Chance(s, p.SharpShare), worst,
		})
	}
	return rows
}

// holdTable lists where the hand takes hold in each pull.
func holdTable(s *plan.Shot) Passage {
	t := Passage{Heading: "Where to take hold", Columns: []Column{{"no.", false}, {"thumb, as on a clock face", true}}}
	for _, p := range s.Pulls {
		if p.Hold != nil {
			t.Rows = append(t.Rows, []string{fmt.Sprint(p.Number), p.HoldSays})
		}
	}
	return t
}

// markTable lists how far somebody may miss each mark, of the start and of every pull
// onto somebody, and how far the ring turns for ten centimetres.
func markTable(s *plan.Shot) Passage {
	in := sheet.Style(s)
	step := in.Gap(moments.RingStep)
	t := Passage{Heading: "How far somebody may miss the mark", Columns: []Column{
		{"no.", false}, {"on", true}, {"still sharp", false}, {"before it shows", false}, {step + " nearer", false}, {step + " farther", false},
		{"leaves the picture, left", false}, {"right", false},
	}}
	add := func(number, on string, m *plan.Miss) {
		if m == nil {
			return
		}
		t.Rows = append(t.Rows, []string{
			number, on, in.Miss(float64(m.SoftForward), float64(m.SoftBack)), in.Miss(float64(m.SeenForward), float64(m.SeenBack)),
			turn(m.RingNear), turn(m.RingFar), in.Gap(float64(m.Left)), in.Gap(float64(m.Right)),
		})
	}
	add("start", sheet.TargetName(s, s.Start.To, s.Start.Target), s.Start.Miss)
	for _, p := range s.Pulls {
		add(fmt.Sprint(p.Number), sheet.TargetName(s, p.To, p.Target), p.Miss)
	}
	return t.said()
}

// turn writes by how far the ring turns, and which way; nothing for what no ring is
// turned by.
func turn(n plan.Number) string {
	if !n.Known() {
		return ""
	}
	text := sheet.Figures.Angle(float64(n))
	if n > 0 {
		return "+" + text
	}
	return text
}

// restTable lists how often somebody is sharp while the focus rests on them.
func restTable(s *plan.Shot) Passage {
	t := Passage{Heading: "Rests", Columns: []Column{
		{"on", true}, {"begins", false}, {"ends", false}, {"sharp", false}, {"all through", false}, {"sways", false}, {"zone", false},
	}}
	in := sheet.Style(s)
	for _, r := range s.Rests {
		sways, zone := "", ""
		if r.Sway > 0 {
			sways, zone = in.Gap(float64(r.Sway)), in.Miss(float64(r.Zone[0]), float64(r.Zone[1]))
		}
		t.Rows = append(t.Rows, []string{
			r.Subject, sheet.When(s, float64(r.Start)), sheet.When(s, float64(r.End)), sheet.Chance(s, r.Share), sheet.Figures.Chance(float64(r.Stays), 0), sways, zone,
		})
	}
	return t.said()
}

// findingTable lists the findings of a shot: the letter of the flag on the
// score, how bad it is, when and of which pull, and what cures it.
func findingTable(s *plan.Shot) Passage {
	t := Passage{Heading: "Findings", Drawn: true, Columns: []Column{
		{"flag", false}, {"kind", false}, {"at", false}, {"pull", false}, {"finding", true}, {"cure", true},
	}}
	for _, f := range s.Flags {
		t.Rows = append(t.Rows, []string{cmp.Or(f.Cause, fmt.Sprint(f.Number)), f.Severity, sheet.When(s, f.Time), sheet.CountOrBlank(f.Pull), f.Text, f.Cures})
	}
	return t.said()
}
