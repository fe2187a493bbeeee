// Where the camera looks, against an independent model: testdata/model-floor.tsv at the
// top holds what a program of its own, in another language, computes from vectors. It
// shares no code with this one, and agrees with a second derivation of its own: views by
// quaternions, bearings by the law of cosines, half widths by halving the thin-lens
// equation, turns the short way by arc tangents.

package plan

import (
	"math"
	"os"
	"strconv"
	"strings"
	"testing"
)

// A floorRow is a row of the table: inputs by name, as text and as numbers.
type floorRow struct {
	id, kind     string
	text         map[string]string
	in           map[string]float64
	want, within float64
}

func floorRows(t *testing.T) (rows []floorRow) {
	t.Helper()
	data, err := os.ReadFile("../../testdata/model-floor.tsv")
	if err != nil {
		t.Fatal(err)
	}
	for _, line := range strings.Split(strings.TrimSpace(string(data)), "\n")[1:] {
		c := strings.Split(line, "\t")
		r := floorRow{id: c[0], kind: c[1], text: map[string]string{}, in: map[string]float64{}}
		for pair := range strings.SplitSeq(c[2], ";") {
			name, value, _ := strings.Cut(pair, "=")
			r.text[name] = value
			if v, err := strconv.ParseFloat(value, 64); err == nil {
				r.in[name] = v
			}
		}
		if r.want, err = strconv.ParseFloat(c[3], 64); err == nil {
			r.within, err = strconv.ParseFloat(c[5], 64)
		}
		if err != nil {
			t.Fatalf("%s: %v", r.id, err)
		}
		rows = append(rows, r)
	}
	return rows
}

// pose is the camera of a row.
func (r floorRow) pose() Pose {
	return Pose{X: r.in["x"], Y: r.in["y"], Z: r.in["z"], Pan: r.in["pan"], Tilt: r.in["tilt"]}
}

func (r floorRow) view() View { return r.pose().View(r.in["px"], r.in["py"], r.in["pz"]) }

// unit is where the camera of a row sees the end of a unit vector of the floor from its
// own place: one number each of its forward, right and up.
func (r floorRow) unit() View {
	end := map[string][3]float64{"x": {1, 0, 0}, "y": {0, 1, 0}, "z": {0, 0, 1}}[r.text["part"]]
	return r.pose().View(end[0], end[1], end[2])
}

// shot is a shot with the lens of a row and a picture of that size, in millimetres.
func (r floorRow) shot(width, height float64) *Shot {
	return &Shot{Optics: Optics{SensorW: width / 1000, SensorH: height / 1000, Focal: Still(r.in["focal_mm"] / 1000), Camera: Still(0)}}
}

// turned is how far a camera that looks where a pan starts, and makes it, has turned.
func turned(s Sweep, t float64) float64 {
	o := Optics{Camera: Still(0), Rig: &Rig{Pans: []Sweep{{Start: s.Start - 2, End: s.Start - 1, To: s.From}, s}}}
	return o.Pose(t).Pan
}

// floorOf says what the program has for a kind of row.
var floorOf = map[string]func(r floorRow) float64{
	"along":   func(r floorRow) float64 { return r.view().Along },
	"across":  func(r floorRow) float64 { return r.view().Across },
	"above":   func(r floorRow) float64 { return r.view().Above },
	"forward": func(r floorRow) float64 { return r.unit().Along },
	"right":   func(r floorRow) float64 { return r.unit().Across },
	"up":      func(r floorRow) float64 { return r.unit().Above },
	"pan": func(r floorRow) float64 {
		pan, _ := r.pose().Bearing(r.in["px"], r.in["py"], r.in["pz"])
		return pan
	},
	"tilt": func(r floorRow) float64 {
		_, tilt := r.pose().Bearing(r.in["px"], r.in["py"], r.in["pz"])
		return tilt
	},
	"half": func(r floorRow) float64 {
		s := r.shot(r.in["size_mm"], r.in["size_mm"])
		side, _ := s.Reach(s.FromTape(r.in["along_m"], 0), s.FromTape(r.in["focus_m"], 0), 0)
		return side
	},
	"frame": func(r floorRow) float64 {
		s := r.shot(r.in["width_mm"], r.in["height_mm"])
		v := View{Along: r.in["along_m"], Across: r.in["across_m"], Above: r.in["above_m"]}
		return float64(s.Place(v, s.FromTape(r.in["focus_m"], 0), 0))
	},
	"turn": func(r floorRow) float64 {
		return turned(Sweep{Start: r.in["start_s"], End: r.in["end_s"], From: r.in["start_deg"], To: r.in["end_deg"],
			Smooth: r.text["profile"] == "smooth"}, r.in["t_s"])
	},
	"wrapped": func(r floorRow) float64 { return Wrapped(r.in["deg"]) },
	"shortest": func(r floorRow) float64 {
		from := r.in["start_deg"]
		return turned(Sweep{End: 1, From: from, To: from + Wrapped(r.in["end_deg"]-from), Smooth: true}, 0.5)
	},
}

// floorKinds are how many rows each kind has.
var floorKinds = map[string]int{
	"along": 32, "across": 32, "above": 31, "forward": 15, "right": 15, "up": 15,
	"pan": 27, "tilt": 27, "half": 8, "frame": 28, "turn": 18, "wrapped": 13, "shortest": 6,
}

func TestFloorOfTheModel(t *testing.T) {
	counts := map[string]int{}
	for _, r := range floorRows(t) {
		counts[r.kind]++
		if floorOf[r.kind] == nil {
			t.Errorf("%s: no rule for %s", r.id, r.kind)
			continue
		}
		if got := floorOf[r.kind](r); !(math.Abs(got-r.want) <= r.within) {
			t.Errorf("%s: %.12g, the model has %.12g", r.id, got, r.want)
		}
	}
	for kind, want := range floorKinds {
		if counts[kind] != want {
			t.Errorf("%s: %d rows, not %d", kind, counts[kind], want)
		}
	}
}
