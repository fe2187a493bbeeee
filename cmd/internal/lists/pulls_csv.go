// The pull list as CSV (RFC 4180), safe to open in a spreadsheet.

package lists

import (
	"encoding/csv"
	"io"
	"strconv"
	"strings"

	"pullscore/interp/plan"
)

// A column is one figure of a pull; its name is that of the JSON.
type column struct {
	name  string
	value func(p *plan.Plan, s *plan.Shot, u *plan.Pull) string
}

// pullColumn makes a column of text, which is guarded; figure, number and
// integer make columns of figures.
func pullColumn(name string, value func(*plan.Pull) string) column {
	return column{name, func(_ *plan.Plan, _ *plan.Shot, u *plan.Pull) string { return guarded(value(u)) }}
}

// guarded returns a text with an apostrophe before it where a spreadsheet would
// take it for a formula, which a plan from elsewhere must not slip in (OWASP,
// CSV Injection).
func guarded(text string) string {
	if text != "" && strings.ContainsRune("=+-@\t\r\n", rune(text[0])) {
		return "'" + text
	}
	return text
}

func figure(name string, value func(*plan.Pull) string) column {
	return column{name, func(_ *plan.Plan, _ *plan.Shot, u *plan.Pull) string { return value(u) }}
}

func number(name string, value func(*plan.Pull) plan.Number) column {
	return figure(name, func(u *plan.Pull) string { return cell(value(u)) })
}

func integer(name string, value func(*plan.Pull) int64) column {
	return figure(name, func(u *plan.Pull) string { return strconv.FormatInt(value(u), 10) })
}

// columns are the columns in their order; new ones go to the end.
var columns = []column{
	{"plan", func(p *plan.Plan, _ *plan.Shot, _ *plan.Pull) string { return guarded(p.Title) }},
	{"shot", func(_ *plan.Plan, s *plan.Shot, _ *plan.Pull) string { return guarded(s.ID) }},
	integer("number", func(u *plan.Pull) int64 { return int64(u.Number) }),
	pullColumn("kind", func(u *plan.Pull) string { return u.Kind }),
	pullColumn("from", func(u *plan.Pull) string { return u.From }),
	pullColumn("to", func(u *plan.Pull) string { return u.To }),
	pullColumn("target", func(u *plan.Pull) string { return u.Target }),
	pullColumn("profile", func(u *plan.Pull) string { return u.Profile }),
	pullColumn("anchor", func(u *plan.Pull) string { return u.Anchor }),
	number("start_s", func(u *plan.Pull) plan.Number { return u.Start }),
	number("land_s", func(u *plan.Pull) plan.Number { return u.Land }),
	{"start_timecode", func(_ *plan.Plan, s *plan.Shot, u *plan.Pull) string { return s.Timecode(float64(u.Start)) }},
	{"land_timecode", func(_ *plan.Plan, s *plan.Shot, u *plan.Pull) string { return s.Timecode(float64(u.Land)) }},
	integer("start_frame", func(u *plan.Pull) int64 { return u.StartFrame }),
	integer("land_frame", func(u *plan.Pull) int64 { return u.LandFrame }),
	number("from_m", func(u *plan.Pull) plan.Number { return u.FromM }),
	number("to_m", func(u *plan.Pull) plan.Number { return u.ToM }),
	number("from_deg", func(u *plan.Pull) plan.Number { return u.FromDeg }),
	number("to_deg", func(u *plan.Pull) plan.Number { return u.ToDeg }),
	number("hand_deg", func(u *plan.Pull) plan.Number { return u.HandDeg }),
	number("window_hand_from_deg", func(u *plan.Pull) plan.Number { return u.WindowHand[0] }),
	number("window_hand_to_deg", func(u *plan.Pull) plan.Number { return u.WindowHand[1] }),
	number("peak_deg_s", func(u *plan.Pull) plan.Number { return u.Peak }),
	integer("regrips", func(u *plan.Pull) int64 { return int64(u.Regrips) }),
	number("needed_s", func(u *plan.Pull) plan.Number { return u.Needed }),
	number("spread_deg", func(u *plan.Pull) plan.Number { return u.Spread }),
	number("probability", func(u *plan.Pull) plan.Number { return u.Chance }),
	number("ceiling", func(u *plan.Pull) plan.Number { return u.Ceiling }),
	number("lag_m", func(u *plan.Pull) plan.Number { return u.Lag }),
	number("near_m", func(u *plan.Pull) plan.Number { return u.Near }),
	number("far_m", func(u *plan.Pull) plan.Number { return u.Far }),
	number("left_blur_arcmin", func(u *plan.Pull) plan.Number { return u.LeftBlur }),
	number("reached_blur_arcmin", func(u *plan.Pull) plan.Number { return u.ReachedBlur }),
	number("breathing_percent", func(u *plan.Pull) plan.Number { return u.Breathing }),
	pullColumn("because", func(u *plan.Pull) string { return u.Because }),
	pullColumn("file", func(u *plan.Pull) string { return u.File }),
	integer("line", func(u *plan.Pull) int64 { return int64(u.Line) }),
	integer("column", func(u *plan.Pull) int64 { return int64(u.Column) }),
	number("probability_from", func(u *plan.Pull) plan.Number { return u.ChanceBand[0] }),
	number("probability_to", func(u *plan.Pull) plan.Number { return u.ChanceBand[1] }),
	number("ceiling_from", func(u *plan.Pull) plan.Number { return u.CeilingBand[0] }),
	number("ceiling_to", func(u *plan.Pull) plan.Number { return u.CeilingBand[1] }),
	number("sharp_share", func(u *plan.Pull) plan.Number { return u.SharpShare }),
	number("worst_share", func(u *plan.Pull) plan.Number { return u.WorstShare }),
	number("worst_s", func(u *plan.Pull) plan.Number { return u.WorstAt }),
	number("lag_deg", func(u *plan.Pull) plan.Number { return u.LagDeg }),
	number("subject_speed_m_s", func(u *plan.Pull) plan.Number { return u.SubjectSpeed }),
	number("diffraction_mm", func(u *plan.Pull) plan.Number { return u.DiffractionMM }),
	number("near_loss_stops", func(u *plan.Pull) plan.Number { return u.NearLoss }),
	missed("soft_forward_m", func(m *plan.Miss) plan.Number { return m.SoftForward }),
	missed("soft_back_m", func(m *plan.Miss) plan.Number { return m.SoftBack }),
	missed("seen_forward_m", func(m *plan.Miss) plan.Number { return m.SeenForward }),
	missed("seen_back_m", func(m *plan.Miss) plan.Number { return m.SeenBack }),
	missed("left_m", func(m *plan.Miss) plan.Number { return m.Left }),
	missed("right_m", func(m *plan.Miss) plan.Number { return m.Right }),
	missed("ring_deg_10cm_near", func(m *plan.Miss) plan.Number { return m.RingNear }),
	missed("ring_deg_10cm_far", func(m *plan.Miss) plan.Number { return m.RingFar }),
	pullColumn("hold", hold),
	pullColumn("hold_on", func(u *plan.Pull) string { return held(u).HoldOn }),
	number("hold_from_clock", func(u *plan.Pull) plan.Number { return held(u).HoldFrom }),
	number("hold_to_clock", func(u *plan.Pull) plan.Number { return held(u).HoldTo }),
	number("regrip_clock", func(u *plan.Pull) plan.Number { return held(u).Regrip }),
	number("regrip_to_clock", func(u *plan.Pull) plan.Number { return held(u).RegripTo }),
	{"ring_kind", func(_ *plan.Plan, s *plan.Shot, _ *plan.Pull) string { return s.RingKind() }},
}

// held returns where the hand takes hold in a pull, or a hold that says nothing.
func held(u *plan.Pull) plan.Hold {
	if u.Hold == nil {
		none := plan.None()
		return plan.Hold{HoldFrom: none, HoldTo: none, Regrip: none, RegripTo: none}
	}
	return *u.Hold
}

// missed makes a column of how far somebody may miss the mark, empty where a pull goes
// to nobody.
func missed(name string, value func(*plan.Miss) plan.Number) column {
	return number(name, func(u *plan.Pull) plan.Number {
		if u.Miss == nil {
			return plan.None()
		}
		return value(u.Miss)
	})
}

// cell writes a number as the JSON does: inf where it is infinite, nothing
// where it does not apply.
func cell(n plan.Number) string {
	if !n.Known() {
		return ""
	}
	if n.IsInf() {
		return "inf"
	}
	text, err := n.MarshalJSON()
	if err != nil {
		return ""
	}
	return string(text)
}

// WriteCSV writes a header and then a row for every pull of the plans. Only where a camera
// turns or leaves its axis there are columns for that.
func WriteCSV(w io.Writer, plans ...*plan.Plan) error {
	out := csv.NewWriter(w)
	out.UseCRLF = true // as RFC 4180, 2.1, has it
	columns := columnsFor(plans)
	row := make([]string, len(columns))
	for i, c := range columns {
		row[i] = c.name
	}
	out.Write(row) // its errors come with Flush
	for _, p := range plans {
		for _, s := range p.Shots {
			for _, u := range s.Pulls {
				for i, c := range columns {
					row[i] = c.value(p, s, u)
				}
				out.Write(row)
			}
		}
	}
	out.Flush()
	return out.Error()
}
