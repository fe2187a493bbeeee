// Every published figure of testdata/published-optics.tsv against this package.

package optics

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"
)

// Units of the sources, in the units of the package.
const (
	foot   = 0.3048
	inch   = 0.0254
	mm     = 1e-3
	um     = 1e-6
	nm     = 1e-9
	arcsec = math.Pi / (180 * 3600)
)

// metres are the units of length in which a row prints its figure.
var metres = map[string]float64{"ft": foot, "in": inch, "mm": mm, "um": um}

// leftOut names the rows that test nothing of this package, and why.
var leftOut = map[string]string{
	"C02": "no part of the program takes the diagonal of a format",
	"C03": "no part of the program takes the diagonal of a format",
	"C04": "a ratio of two diagonals",
	"C07": "a criterion by line pairs; ours goes by the viewer's angle",
	"C08": "a criterion by the diagonal over 1500; ours goes by the viewer's angle",
	"C09": "sizes of sensors come in millimetres, never in inch formats",
	"F01": "size of a format: a plan states its own sensor",
	"F02": "size of a format: a plan states its own sensor",
	"F03": "size of a format: a plan states its own sensor",
	"F04": "size of a format: a plan states its own sensor",
	"F11": "size of a format: a plan states its own sensor",
	"F12": "size of a format: a plan states its own sensor",
	"F13": "size of a format: a plan states its own sensor",
	"E02": "luminance: the program counts stops from a meter, not light",
	"E03": "illuminance: the program counts stops from a meter, not light",
	"E04": "luminance: the program counts stops from a meter, not light",
	"E05": "illuminance: the program counts stops from a meter, not light",
	"E06": "luminance: the program counts stops from a meter, not light",
	"E07": "illuminance: the program counts stops from a meter, not light",
	"E08": "luminance: the program counts stops from a meter, not light",
	"E09": "illuminance: the program counts stops from a meter, not light",
	"E10": "luminance: the program counts stops from a meter, not light",
	"E11": "illuminance: the program counts stops from a meter, not light",
	"E12": "luminance: the program counts stops from a meter, not light",
	"E13": "illuminance: the program counts stops from a meter, not light",
	"E14": "calibration of a meter: the program counts stops from a meter",
	"E15": "calibration of a meter: the program counts stops from a meter",
	"M03": "a time multiplied by the factor of row M01",
	"V06": "the printed 33 is 3 % over the source's own formula, as its row says",
	"D01": "width at half maximum; ours is the first dark ring",
}

// published is a check for each topic of the table.
var published = map[string]func(*testing.T, row){
	"hyperfocal": func(t *testing.T, r row) {
		s := r.setting(t)
		r.agrees(t, s.Hyperfocal()-s.Focal) // the sources' form has no +f
	},
	"near_limit":            nearLimit,
	"far_limit":             farLimit,
	"near_limit_at_H":       func(t *testing.T, r row) { h := r.length(t, "H"); r.agrees(t, thin(h).Near(h)) },
	"dof_total":             depthOfField,
	"coc_print":             discOnPrint,
	"EV":                    func(t *testing.T, r row) { r.agrees(t, ExposureValue(r.in(t, "N"), r.in(t, "t_s"))) },
	"T_stop":                func(t *testing.T, r row) { r.agrees(t, TNumber(r.in(t, "N"), r.in(t, "tau"))) },
	"fstop_mark_full":       engravedMark,
	"fstop_mark_third":      engravedMark,
	"nd_transmittance":      transmittance,
	"nd_stops":              func(t *testing.T, r row) { r.agrees(t, NDStops(r.in(t, "label_density"))) },
	"shutter_angle":         func(t *testing.T, r row) { r.agrees(t, ShutterAngle(r.in(t, "fps"), r.in(t, "t_s"))) },
	"screen_distance_30deg": screenDistance,
	"viewing_distance_1arcmin": func(t *testing.T, r row) {
		oneLine(t, r, 60*180/math.Pi/3400) // the source takes an arcmin as 1/3400
	},
	"design_viewing_distance": func(t *testing.T, r row) { oneLine(t, r, 1) },
	"viewing_distance_scaled": scaledDistance,
	"picture_angle_h":         horizontalAngle,
	"design_viewing_angle":    horizontalAngle,
	"picture_angle_v":         func(t *testing.T, r row) { r.agrees(t, PictureAngle(1, r.in(t, "dist_H"))) },
	"pixels_per_degree": func(t *testing.T, r row) {
		r.agrees(t, 60/ArcminAtViewer(1/r.in(t, "lines"), 1, 1, r.in(t, "dist_H")))
	},
	"acuity_letter": func(t *testing.T, r row) {
		r.agrees(t, Criterion(1, 1, r.length(t, "dist"), r.in(t, "arcmin")))
	},
	"bellows_factor":  bellows,
	"extension":       func(t *testing.T, r row) { r.agrees(t, Extension(r.length(t, "f"), r.length(t, "u"))) },
	"image_distance":  imageDistance,
	"object_distance": objectDistance,
	"closest_focus": func(t *testing.T, r row) {
		// Conjugates can be exchanged: the image of the image plane is the subject.
		r.agrees(t, ImageDistance(r.length(t, "f"), r.length(t, "v_max")))
	},
	"airy_diameter": func(t *testing.T, r row) { r.agrees(t, Airy(r.in(t, "N"), r.length(t, "lambda"))) },
	"airy_angular_diameter": func(t *testing.T, r row) {
		const f = 1 // any lens: the angle depends on the aperture alone
		disc := Airy(f/r.length(t, "aperture"), r.length(t, "lambda"))
		r.agrees(t, disc/f/arcsec)
	},
	"entrance_pupil": func(t *testing.T, r row) {
		// At infinity focus a point's disc is the pupil, seen from the point.
		s := Setting{Focal: r.length(t, "f"), Number: r.in(t, "N"), Criterion: mm}
		const d = 100
		r.agrees(t, s.Blur(d, math.Inf(1))*d/s.Focal)
	},
}

func TestPublished(t *testing.T) {
	unused := map[string]bool{}
	for id := range leftOut {
		unused[id] = true
	}
	for _, r := range readPublished(t) {
		if _, out := leftOut[r.id]; out {
			delete(unused, r.id)
			continue
		}
		t.Run(r.id, func(t *testing.T) {
			check, ok := published[r.topic]
			if !ok {
				t.Fatalf("no check for topic %s, and the row is not left out (%s)", r.topic, r.source)
			}
			check(t, r)
		})
	}
	for id := range unused {
		t.Errorf("row %s is left out, but the table does not have it", id)
	}
}

// thin is a lens so short that its focal length vanishes beside distances, as
// in the forms H s/(H+s) and H s/(H-s), with the hyperfocal distance h.
func thin(h float64) Setting {
	const f = 1e-9
	return Setting{Focal: f, Number: 1, Criterion: f * f / h}
}

// limits gives the lens and the focus of a row, in metres or, where the row
// gives their ratio alone, in hyperfocal distances.
func limits(t *testing.T, r row) (s Setting, focus float64) {
	if ratio, ok := r.inputs["s_over_h"]; ok {
		return thin(1), number(t, ratio)
	}
	return thin(r.length(t, "H")), r.length(t, "s")
}

func nearLimit(t *testing.T, r row) {
	s, x := limits(t, r)
	r.agrees(t, r.relative(s.Near(x), x))
}

func farLimit(t *testing.T, r row) {
	s, x := limits(t, r)
	r.agrees(t, r.relative(s.Far(x), x))
}

// depthOfField takes the limits of rows H03 and H04, whose rounded figures the
// row subtracts.
func depthOfField(t *testing.T, r row) {
	s := thin(46.8 * foot)
	near := math.Floor(s.Near(15*foot)/foot*10) / 10
	far := math.Round(s.Far(15*foot) / foot)
	if near != r.in(t, "near_ft") || far != r.in(t, "far_ft") {
		t.Errorf("limits %v and %v ft, printed %v; %s", near, far, r.inputs, r.source)
	}
	r.agrees(t, (far-near)*foot)
}

// discOnPrint looks at the film's disc and at the print's from one place: both
// must stand under the same angle.
func discOnPrint(t *testing.T, r row) {
	const viewer = 0.25
	enlargement, onPrint := r.in(t, "enlargement"), r.length(t, "final_blur")
	minutes := ArcminAtViewer(onPrint, 1, 1, viewer)
	r.agrees(t, Criterion(1, enlargement, viewer, minutes))
}

func engravedMark(t *testing.T, r row) {
	mark, exact := number(t, r.expected), math.Exp2(r.in(t, "Av")/2)
	if got := ExactStop(mark); math.Abs(got/exact-1) > 1e-12 {
		t.Errorf("ExactStop(%v) = %v, want %v; %s", mark, got, exact, r.source)
	}
	if got := Mark(exact); got != r.expected {
		t.Errorf("Mark(%v) = %s, want %s; %s", exact, got, r.expected, r.source)
	}
}

// transmittance turns the printed part of the light into a density, as density
// is defined; its stops must be the row's, and the label the density to 0.1.
func transmittance(t *testing.T, r row) {
	stops := r.in(t, "stops")
	r.brackets(t, stops, func(percent float64) float64 { return NDStops(-math.Log10(percent / 100)) })
	if got, want := math.Round(NDDensity(stops)*10)/10, r.in(t, "label_density"); got != want {
		t.Errorf("NDDensity(%v) = %v, labelled %v; %s", stops, got, want, r.source)
	}
}

func screenDistance(t *testing.T, r row) {
	r.brackets(t, r.in(t, "hfov_deg"), func(d float64) float64 { return PictureAngle(DiagonalWidth(1), d) })
}

// oneLine checks that at the printed distance, in picture heights, a line of
// the picture stands under the given minutes of arc.
func oneLine(t *testing.T, r row, minutes float64) {
	line := 1 / r.in(t, "lines")
	r.brackets(t, minutes, func(d float64) float64 { return ArcminAtViewer(line, 1, 1, d) })
}

func scaledDistance(t *testing.T, r row) {
	want := ArcminAtViewer(1/r.in(t, "lines_ref"), 1, 1, r.in(t, "dist_H"))
	line := 1 / r.in(t, "lines")
	r.brackets(t, want, func(d float64) float64 { return ArcminAtViewer(line, 1, 1, d) })
}

func horizontalAngle(t *testing.T, r row) {
	width, height, _ := strings.Cut(r.inputs["aspect"], ":")
	r.agrees(t, PictureAngle(number(t, width)/number(t, height), r.in(t, "dist_H")))
}

// bellows squares what the f-number grows by: light goes with its square.
func bellows(t *testing.T, r row) {
	f, x := 1.0, 0.0
	if m, ok := r.inputs["m"]; ok {
		x = f + f/number(t, m)
	} else {
		f = r.length(t, "f")
		x = ImageDistance(f, r.length(t, "v"))
	}
	s := Setting{Focal: f, Number: 8, Criterion: mm}
	growth := s.Effective(x) / s.Number
	r.agrees(t, growth*growth)
}

func imageDistance(t *testing.T, r row) {
	f := r.length(t, "f")
	if m, ok := r.inputs["m"]; ok {
		// The image at the printed distance must have the row's size.
		r.brackets(t, number(t, m), func(v float64) float64 {
			return Magnification(f, ImageDistance(f, v*metres[r.unit]))
		})
		return
	}
	r.agrees(t, ImageDistance(f, r.length(t, "u")))
}

func objectDistance(t *testing.T, r row) {
	f := r.length(t, "f")
	r.brackets(t, r.in(t, "m"), func(x float64) float64 { return Magnification(f, x*metres[r.unit]) })
}

// A row is one line of the table of published figures.
type row struct {
	id, topic              string
	inputs                 map[string]string
	expected, unit         string
	precision              string
	variant, source, basis string
}

func readPublished(t *testing.T) []row {
	t.Helper()
	file, err := os.Open("../testdata/published-optics.tsv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	reader := csv.NewReader(file)
	reader.Comma, reader.LazyQuotes = '\t', true
	lines, err := reader.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var rows []row
	for _, c := range lines[1:] {
		inputs := map[string]string{}
		for pair := range strings.SplitSeq(c[2], ";") {
			name, value, _ := strings.Cut(pair, "=")
			inputs[name] = value
		}
		rows = append(rows, row{c[0], c[1], inputs, c[3], c[4], c[5], c[6], c[7], c[8]})
	}
	return rows
}

// in is an input by name.
func (r row) in(t *testing.T, name string) float64 {
	t.Helper()
	text, ok := r.inputs[name]
	if !ok {
		t.Fatalf("row %s has no input %s", r.id, name)
	}
	return number(t, text)
}

// length is an input whose name ends in its unit, in metres.
func (r row) length(t *testing.T, name string) float64 {
	t.Helper()
	for suffix, unit := range map[string]float64{"_ft": foot, "_in": inch, "_mm": mm, "_nm": nm} {
		if text, ok := r.inputs[name+suffix]; ok {
			return number(t, text) * unit
		}
	}
	t.Fatalf("row %s has no length %s", r.id, name)
	return 0
}

func (r row) setting(t *testing.T) Setting {
	t.Helper()
	return Setting{Focal: r.length(t, "f"), Number: r.in(t, "N"), Criterion: r.length(t, "c")}
}

// relative is a distance over the focus where that is what the row prints.
func (r row) relative(distance, focus float64) float64 {
	if _, ok := metres[r.unit]; ok {
		return distance
	}
	return distance / focus
}

// printed is the figure of the row with the interval that its digits stand for:
// rounded, or cut off where the row says so.
func (r row) printed(t *testing.T) (figure, lo, hi float64) {
	t.Helper()
	figure = number(t, r.expected)
	step := 1e-6 // an exact fraction, given in six digits
	if !strings.HasPrefix(r.precision, "exact") {
		step = number(t, r.precision)
	}
	const slack = 1e-9 // the figure itself must not fall out by its last bit
	if strings.Contains(r.variant, "TRUNCATED") {
		return figure, figure - slack*figure, figure + step
	}
	return figure, figure - step/2 - slack*figure, figure + step/2 + slack*figure
}

// agrees fails unless got, with lengths in metres, prints as the row does.
func (r row) agrees(t *testing.T, got float64) {
	t.Helper()
	if unit, ok := metres[r.unit]; ok {
		got /= unit
	}
	figure, lo, hi := r.printed(t)
	if !(got >= lo && got <= hi) {
		t.Errorf("%s: got %.7g %s, printed %v (%s); %s, %s", r.topic, got, r.unit, figure, r.variant, r.source, r.basis)
	}
}

// brackets fails unless f takes the value want within the figure's digits, for
// rows that print what our function is given.
func (r row) brackets(t *testing.T, want float64, f func(printed float64) float64) {
	t.Helper()
	figure, lo, hi := r.printed(t)
	a, b := f(lo), f(hi)
	if !(min(a, b) <= want && want <= max(a, b)) {
		t.Errorf("%s: %v %s gives %.7g to %.7g, want %.7g (%s); %s, %s", r.topic, figure, r.unit, a, b, want, r.variant, r.source, r.basis)
	}
}

// number reads a decimal or a fraction.
func number(t *testing.T, text string) float64 {
	t.Helper()
	over, under, fraction := strings.Cut(text, "/")
	v, err := strconv.ParseFloat(over, 64)
	if err == nil && fraction {
		var w float64
		w, err = strconv.ParseFloat(under, 64)
		v /= w
	}
	if err != nil {
		t.Fatalf("number %q: %v", text, err)
	}
	return v
}
