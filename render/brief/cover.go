// The cover of a brief: the kit, the cautions that apply, and the shots with
// what is worst in each.

package brief

import (
	"fmt"
	"slices"
	"strings"

	"pullscore/interp/moments"
	"pullscore/interp/plan"
	"pullscore/interp/units"
	"pullscore/render/marks"
	"pullscore/render/sheet"
)

// modelWords go with every chance that is printed.
const modelWords = "Chance: how likely a hand lands in the window, by a landing model of our own on published parts. It has not been measured on a set."

// Cover returns the cover of the papers of plans. With places, it names the page of every
// shot and leads there; without, it keeps room for that.
func Cover(plans []*plan.Plan, where Places) []Passage {
	var shots []*plan.Shot
	for _, p := range plans {
		shots = append(shots, p.Shots...)
	}
	cover := []Passage{{Heading: cautions, Sentences: sheet.Cautions(shots...)}}
	for _, part := range []Passage{camerasOf(shots), lensesOf(shots), pullersOf(shots)} {
		if len(part.Rows) > 0 {
			cover = append(cover, part)
		}
	}
	words := []string{modelWords}
	if silent := moments.NotJudged(shots...); silent != "" {
		words = append(words, "What has no finding may still go wrong; "+silent+".")
	}
	return append(cover, shotTable(plans, where), Passage{Sentences: words})
}

// kitTable returns a table with a row for everything of one kind that the
// shots use, in their order, with the shots that use it in its last cell.
func kitTable(heading string, columns []Column, shots []*plan.Shot, row func(*plan.Shot) []string) Passage {
	p := Passage{Heading: heading, Columns: append(columns, Column{"shots", true})}
	users := map[string][]string{}
	var order []string
	rows := map[string][]string{}
	for _, s := range shots {
		cells := row(s)
		if cells == nil {
			continue
		}
		key := strings.Join(cells, "\x00")
		if _, seen := rows[key]; !seen {
			rows[key] = cells
			order = append(order, key)
		}
		users[key] = append(users[key], s.ID)
	}
	for _, key := range order {
		p.Rows = append(p.Rows, append(rows[key], usedBy(users[key])))
	}
	return p.said()
}

// mostNamed is how many shots are named before they are counted.
const mostNamed = 24

func usedBy(ids []string) string {
	if len(ids) > mostNamed {
		return units.Count(len(ids), "shot")
	}
	return strings.Join(ids, ", ")
}

func camerasOf(shots []*plan.Shot) Passage {
	columns := []Column{{"camera", false}, {"sensor", false}, {"support", false}}
	return kitTable("Cameras", columns, shots, func(s *plan.Shot) []string {
		if s.Camera == "" {
			return nil
		}
		sensor := fmt.Sprintf("%s × %s mm", sheet.Figures.Number(s.Optics.SensorW*1000, 2), sheet.Figures.Number(s.Optics.SensorH*1000, 2))
		if s.Sensor.Format != "" {
			sensor = s.Sensor.Format + ", " + sensor
		}
		return []string{s.Camera, sensor, s.Support}
	})
}

func lensesOf(shots []*plan.Shot) Passage {
	columns := []Column{{"lens", false}, {"focal length", false}, {"throw", false}, {"ring diameter", false}, {"marks", true}}
	imperially := !slices.ContainsFunc(shots, func(s *plan.Shot) bool { return !s.Imperial })
	return kitTable("Lenses", columns, shots, func(s *plan.Shot) []string {
		if s.Lens == "" {
			return nil
		}
		throw, diameter := "", ""
		if s.Optics.Ring != nil {
			throw = sheet.Figures.AngleTo(s.Optics.Ring.Throw(), 1)
		}
		if s.Optics.Diameter > 0 {
			diameter = sheet.Figures.Millimetres(s.Optics.Diameter)
		}
		return []string{s.Lens, focalOf(s), throw, diameter, marks.EngravedText(s, imperially)}
	})
}

// focalOf is the focal length that a shot starts at.
func focalOf(s *plan.Shot) string { return sheet.Figures.Millimetres(float64(s.FocalMM) / 1000) }

func pullersOf(shots []*plan.Shot) Passage {
	columns := []Column{{"puller", false}, {"gear", false}, {"wheel", false}}
	return kitTable("Pullers and gears", columns, shots, func(s *plan.Shot) []string {
		gear, wheel := "", ""
		if s.Gear.Known() && s.Gear != 1 {
			gear = sheet.Figures.Gear(float64(s.Gear))
		}
		if s.WheelMM.Known() {
			wheel = sheet.Figures.Millimetres(float64(s.WheelMM) / 1000)
		}
		if s.Puller == "" && gear == "" {
			return nil
		}
		return []string{s.Puller, gear, wheel}
	})
}

// shotTable lists the shots with what is worst in each, and the page on which each begins;
// where there are several plans, each is named at its first.
func shotTable(plans []*plan.Plan, where Places) Passage {
	t := Passage{Heading: "Shots", Columns: []Column{
		{"scene", true}, {"shot", false}, {"title", true}, {"lens", false}, {"stop", false}, {"lasts", false}, {"pulls", false}, {"worst moment", true}, {"worst finding", true}, {pageHead, false},
	}}
	common, titles := commonTitle(plans), Titles(plans)
	for i, p := range plans {
		scene := strings.TrimLeft(strings.TrimPrefix(titles[i], common), ",:;( ")
		if len(plans) == 1 {
			scene = ""
		}
		for _, s := range p.Shots {
			at := where[s]
			page := fmt.Sprint(at.Page)
			if where != nil && at.Page == 0 { // there are no pages
				page = ""
			}
			t.Rows = append(t.Rows, []string{
				scene, s.ID, s.Title, s.Lens, s.Stop, sheet.Figures.Time(float64(s.Duration)), sheet.CountOrBlank(len(s.Pulls)), worstMoment(s), worstFinding(s), page,
			})
			t.Links = append(t.Links, []string{"", at.ID, "", "", "", "", "", "", at.Finding, at.ID})
			t.IDs = append(t.IDs, at.Row)
			scene = ""
		}
	}
	if len(t.Rows) == 0 {
		t.Columns, t.Sentences = nil, []string{"There are no shots."}
	}
	return t.said()
}

// pageHead heads the column of the numbers of sheets. It is wider than any of them, so the cover is
// laid out alike before and after they are known.
const pageHead = "on sheet"

// worstMoment names the landing, the rest or the half second of a follow at which the
// focus is where it should be least often; empty where nothing can be judged.
func worstMoment(s *plan.Shot) string {
	m, ok := moments.Worst(s)
	if !ok {
		return ""
	}
	return m.Says(s, sheet.Style(s))
}

// severities are those of findings, the worst first.
var severities = []string{"error", "warning", "note"}

// worstFinding returns the first of the worst findings of a shot, and how many
// others there are.
func worstFinding(s *plan.Shot) string {
	f := worstFlag(s)
	if f == nil {
		return "none"
	}
	text := f.Severity + ": " + f.Text
	if more := len(s.Flags) - 1; more > 0 {
		text += fmt.Sprintf(" (and %d more)", more)
	}
	return text
}

// worstFlag returns the first of the worst findings of a shot; nil if it has none.
func worstFlag(s *plan.Shot) *plan.Flag {
	for _, severity := range severities {
		if i := slices.IndexFunc(s.Flags, func(f plan.Flag) bool { return f.Severity == severity }); i >= 0 {
			return &s.Flags[i]
		}
	}
	return nil
}
