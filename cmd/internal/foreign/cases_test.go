// Figures of a model of its own, which works them out from the published fields of
// the forms: testdata/lens-cases.tsv, topic import.

package foreign

import (
	"encoding/csv"
	"fmt"
	"math"
	"os"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"pullscore/lang/fdl"
	"pullscore/lang/lines"
	"pullscore/optics"
	"pullscore/optics/ring"
)

// leftOut are the cases that no function here computes, with the reason.
var leftOut = map[string]string{
	"lensfun cropfactor 1.5, aspect 3:2: sensor width (diagonal 43.2666 mm / crop)": "lensfun files are not read: they have no ring, no closest focus and no T-stops",
}

// A caseReader computes cases. One that begins with "same" speaks of the sensor of
// the case above it.
type caseReader struct {
	t       *testing.T
	sensor  [2]float64 // millimetres, of the framing
	squeeze float64
	left    bool
}

var number = regexp.MustCompile(`[0-9.]+`)

// numbers returns the numbers of a case.
func numbers(text string) (list []float64) {
	for _, n := range number.FindAllString(text, -1) {
		if v, err := strconv.ParseFloat(strings.TrimRight(n, "."), 64); err == nil {
			list = append(list, v)
		}
	}
	return list
}

func TestCases(t *testing.T) {
	f, err := os.Open("../../../testdata/lens-cases.tsv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows := csv.NewReader(f)
	rows.Comma, rows.LazyQuotes = '\t', true
	all, err := rows.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	r := &caseReader{t: t}
	tested, out := 0, 0
	for _, row := range all {
		if row[0] != "import" {
			continue
		}
		want, _ := strconv.ParseFloat(row[2], 64)
		tolerance, _ := strconv.ParseFloat(row[4], 64)
		got, ok := r.value(row[1])
		if !ok {
			out++
			continue
		}
		tested++
		if !(math.Abs(got-want) <= tolerance*max(math.Abs(want), 1e-9)) {
			t.Errorf("%s: %.9g, want %.9g %s", row[1], got, want, row[3])
		}
	}
	if tested != 24 || out != 2 {
		t.Errorf("%d cases are tested and %d left out, of 26", tested, out)
	}
}

// value computes a case; ok is false for one that is left out.
func (r *caseReader) value(text string) (v float64, ok bool) {
	n := numbers(text)
	same, isSame := strings.CutPrefix(text, "same: ")
	if !isSame {
		r.left = leftOut[text] != ""
	}
	switch {
	case r.left:
		return 0, false
	case strings.HasPrefix(text, "rawEncoders.focus"):
		return r.degrees(fmt.Sprintf(`"rawEncoders":{"focus":%v}`, n[0]), n[1], n[2]), true
	case strings.HasPrefix(text, "opentrackio encoders.focus"):
		return r.degrees(fmt.Sprintf(`"encoders":{"focus":%v}`, n[0]), 1, n[1]), true
	case strings.Contains(text, "entrancePupilOffset"):
		return optics.PupilRatio(n[2], n[1], n[0]/1000), true
	case strings.Contains(text, "transmittance"):
		return transmittance(n[0], n[1]), true
	case strings.HasPrefix(text, "fdl canvas"):
		r.framing([4]float64{n[2], n[3], n[4], n[5]}, [2]float64{n[0], n[1]}, 1)
		return r.sensor[0], true
	case strings.Contains(text, "Scenario-9"):
		r.framing([4]float64{n[3], n[4], n[5], n[6]}, [2]float64{n[1], n[2]}, 1.3)
		return r.sensor[0], true
	case same == "height":
		return r.sensor[1], true
	case same == "squeeze":
		return r.squeeze, true
	case same == "screen shape":
		return r.sensor[0] * r.squeeze / r.sensor[1], true
	case strings.HasPrefix(same, "criterion"):
		return 1000 * optics.Criterion(r.sensor[0]/1000*r.squeeze, n[0], n[1], 2), true
	}
	r.t.Errorf("%q is not known", text)
	return 0, false
}

// transmittance is found by TNumber, which has it as an argument.
func transmittance(f, t float64) float64 {
	low, high := 0.0, 1.0
	for range 60 {
		if mid := (low + high) / 2; optics.TNumber(f, mid) > t {
			low = mid
		} else {
			high = mid
		}
	}
	return (low + high) / 2
}

// framing reads a list with one framing and keeps its sensor.
func (r *caseReader) framing(px [4]float64, mm [2]float64, squeeze float64) {
	text, _ := lines.Decode("f.fdl", fmt.Appendf(nil, `{"version":{"major":2,"minor":0},"contexts":[{"canvases":[{"dimensions":{"width":%v,"height":%v},
		"physical_dimensions":{"width":%v,"height":%v},"anamorphic_squeeze":%v,"framing_decisions":[{"dimensions":{"width":%v,"height":%v}}]}]}]}`,
		px[0], px[1], mm[0], mm[1], squeeze, px[2], px[3]))
	list, diags := fdl.Read(text)
	if len(diags) > 0 {
		r.t.Fatalf("%+v", diags)
	}
	w, h, _ := list.Framings[0].Sensor()
	r.sensor, r.squeeze = [2]float64{w, h}, list.Framings[0].Squeeze
}

// degrees puts an encoder's value into a sample, and reads back the mark that comes
// of it, as the ring reads marks: beside infinity, where 0 is.
func (r *caseReader) degrees(field string, of, throw float64) float64 {
	t, err := gather(strings.NewReader(`{"lens":{"focusDistance":2,`+field+`}}`), "f")
	if err != nil || len(t.pairs)+len(t.raw) != 1 {
		r.t.Fatalf("%s: %+v %v", field, t, err)
	}
	at := append(t.pairs, t.raw...)[0].at
	part := func(v float64) ring.Position { return ring.Position{Form: ring.Part, Value: v, Of: of} }
	distance := 2.0
	marks := []ring.Written{{Distance: distance, At: part(at)}, {Distance: 50, At: part(at / 2)}}
	if at == 0 { // that is infinity
		distance = math.Inf(1)
		marks = []ring.Written{{Distance: distance, At: part(at)}, {Distance: 2, At: part(of / 2)}}
	}
	nan := math.NaN()
	read, err := ring.Complete(marks, ring.Said{Focal: 0.05, Closest: nan, Throw: throw, Girth: nan, Diameter: nan, Within: nan})
	if err != nil {
		r.t.Fatalf("%s: %v", field, err)
	}
	for _, m := range read.Marks {
		if m.Distance == distance {
			return m.Angle
		}
	}
	return nan
}
