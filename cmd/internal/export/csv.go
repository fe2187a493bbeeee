// The focus curve as CSV (RFC 4180, but for line ends, which are line feeds).

package export

import (
	"encoding/csv"
	"io"
	"math"
	"slices"
	"strconv"

	"pullscore/interp/plan"
)

// A column is a figure of a frame; units stand in its name.
type column struct {
	name  string
	value func(s *plan.Shot, f Frame) string
}

var columns = []column{
	{"frame", func(_ *plan.Shot, f Frame) string { return strconv.FormatInt(f.Number, 10) }},
	{"timecode", func(s *plan.Shot, f Frame) string { return s.Rate.Format(f.Label) }},
	{"time_s", number(func(f Frame) float64 { return f.Time })},
	{"focus_m", number(func(f Frame) float64 { return f.Sensor })}, // as a camera records it, whatever the tape
	{"focus_from_sensor_m", number(func(f Frame) float64 { return f.Sensor })},
	{"focus_from_lens_m", number(func(f Frame) float64 { return f.Lens })},
	{"ring_deg", number(func(f Frame) float64 { return f.Ring })},
	{"hand_deg", number(func(f Frame) float64 { return f.Hand })},
	{"focal_mm", number(func(f Frame) float64 { return f.Focal * 1000 })},
	{"f_number", number(func(f Frame) float64 { return f.Stop })},
	{"t_number", number(func(f Frame) float64 { return f.T })},
	{"ring_kind", func(s *plan.Shot, _ Frame) string { return s.RingKind() }}, // what ring_deg rests on
}

// rigColumns follow where the camera turns, leaves its axis, or has a place on the floor
// of a scene: where its sensor mark is there, or from where it starts, and where it looks,
// to the right and up positive.
var rigColumns = []column{
	pose("camera_right_m", func(p plan.Pose) float64 { return p.X }),
	pose("camera_upstage_m", func(p plan.Pose) float64 { return p.Y }),
	pose("camera_high_m", func(p plan.Pose) float64 { return p.Z }),
	pose("pan_deg", func(p plan.Pose) float64 { return p.Pan }),
	pose("tilt_deg", func(p plan.Pose) float64 { return p.Tilt }),
}

// recordColumns follow where a list has the shot: where the cut shows the frame.
var recordColumns = []column{
	{"record", func(s *plan.Shot, f Frame) string {
		if f.Record < 0 {
			return ""
		}
		return s.Rate.Format(f.Record)
	}},
}

func pose(name string, of func(plan.Pose) float64) column {
	return column{name, func(s *plan.Shot, f Frame) string { return decimal(of(s.Stands(f.Time))) }}
}

func number(value func(Frame) float64) func(*plan.Shot, Frame) string {
	return func(_ *plan.Shot, f Frame) string { return decimal(value(f)) }
}

// places are the decimals that are written: a tenth of a thousandth of a
// degree or a millimetre, which no lens repeats.
const places = 6

// decimal writes a number: inf where it is infinite, nothing where it does not
// apply.
func decimal(v float64) string {
	switch {
	case math.IsNaN(v):
		return ""
	case math.IsInf(v, 0):
		return "inf"
	}
	return strconv.FormatFloat(rounded(v), 'f', -1, 64)
}

func rounded(v float64) float64 {
	scale := math.Pow(10, places)
	return math.Round(v*scale)/scale + 0 // +0: no -0
}

// CSV writes a header and a row a frame.
func CSV(w io.Writer, s *plan.Shot) error { return csvOf(w, s, Frames(s)) }

// csvInCut is CSV of what the cut shows.
func csvInCut(w io.Writer, s *plan.Shot) error { return csvOf(w, s, FramesInCut(s)) }

func csvOf(w io.Writer, s *plan.Shot, frames []Frame) error {
	out, columns := csv.NewWriter(w), columns
	if s.Optics.Rig != nil || hasPlace(s) {
		columns = slices.Concat(columns, rigColumns)
	}
	if len(s.Pieces) > 0 {
		columns = slices.Concat(columns, recordColumns)
	}
	row := make([]string, len(columns))
	for i, c := range columns {
		row[i] = c.name
	}
	out.Write(row) // its errors come with Flush
	for _, f := range frames {
		for i, c := range columns {
			row[i] = c.value(s, f)
		}
		out.Write(row)
	}
	out.Flush()
	return out.Error()
}
