// Sheets filled in by known laws, and read back as kits.
//
// Ten lenses of our own, each with another law of its ring: three that focus as a unit or
// nearly, and seven that do not. A test reads the tape as a person would, with 0.5 mm of
// error at every reading (one standard deviation, common practice) and with play, writes
// the kit that follows, and asks the program. What it says is held against the law.

package interp_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"pullscore/interp/lenses"
	"pullscore/optics"
)

// A mapped lens is one whose law is known. The law is the share of the throw that the
// ring has turned, by the share e of its extension that the lens is still moved out: 1 at
// the closest stop, 0 at infinity.
type mappedLens struct {
	name           string
	focal, closest float64 // metres
	number         float64
	throw          float64 // degrees
	diameter       float64 // metres
	play           float64 // degrees
	law            func(e float64) float64
}

var mappedLenses = []mappedLens{
	{"unit 50", 0.05, 0.45, 2.8, 300, 0.08, 1.2, func(e float64) float64 { return 1 - e }},
	{"unit, short throw", 0.085, 0.85, 2.8, 120, 0.07, 2, func(e float64) float64 { return 1 - e }},
	{"wave", 0.025, 0.25, 2.8, 200, 0.08, 1, func(e float64) float64 { return 1 - e + 0.02*math.Sin(2*math.Pi*(1-e)) }},
	{"cam, slow near", 0.035, 0.35, 2.8, 270, 0.11, 0, cam(0.8)},
	{"cam, slow far", 0.075, 0.75, 1.8, 310, 0.11, 0.8, cam(1.5)},
	{"logarithm 3", 0.1, 1, 4, 220, 0.1, 1, logarithm(3)},
	{"logarithm 8", 0.05, 0.6, 2, 180, 0.09, 1.5, logarithm(8)},
	{"two groups 0.8", 0.05, 0.45, 4, 200, 0.065, 2, groups(0.8)},
	{"two groups -0.3", 0.135, 1.2, 2.8, 320, 0.14, 0.6, groups(-0.3)},
	{"two groups 0.4", 0.065, 0.7, 2.8, 330, 0.12, 0.5, groups(0.4)},
}

// cam is a ring that turns a cam whose slope is a power of the way that is left.
func cam(power float64) func(float64) float64 {
	return func(e float64) float64 {
		return 1 - (math.Pow(e+0.15, power)-math.Pow(0.15, power))/(math.Pow(1.15, power)-math.Pow(0.15, power))
	}
}

// logarithm is a ring whose marks are nearly even in the logarithm of the distance.
func logarithm(k float64) func(float64) float64 {
	return func(e float64) float64 { return 1 - math.Log(1+k*e)/math.Log(1+k) }
}

// groups is a lens in which a second group moves against the first.
func groups(b float64) func(float64) float64 {
	return func(e float64) float64 { return 1 - e*(1+b)/(1+b*e) }
}

// deg returns the true angle of a distance from the sensor, in degrees.
func (m mappedLens) deg(distance float64) float64 {
	out := func(d float64) float64 {
		x, _ := optics.FromSensor(d, m.focal)
		return optics.Extension(m.focal, x)
	}
	return m.throw * m.law(out(distance)/out(m.closest))
}

// kit returns the kit without marks.
func (m mappedLens) kit() string {
	return fmt.Sprintf("watched on 12 m screen from 18 m\n\ncamera A\n  sensor 24.89 x 18.66 mm\n\nlens \"found\"\n  focal %g mm\n  stops f/%g to f/22\n  closest %g m\n",
		m.focal*1000, m.number, m.closest)
}

// fill returns the kit with the marks of a sheet, as read.
func (m mappedLens) fill(sheet *lenses.Lens, random *rand.Rand) string {
	const first, error = 12.0, 0.5 // mm: where the closest stop lies on the tape, and a reading's error
	girth := math.Pi * m.diameter * 1000
	read := func(deg float64) float64 { return first + girth*deg/360 + error*random.NormFloat64() }
	var b strings.Builder
	b.WriteString(m.kit())
	fmt.Fprintf(&b, "  ring girth %.1f mm\n  marks measured\n  mark closest at %.1f mm\n", girth, read(0))
	for _, d := range sheet.Sheet[1:] {
		name := fmt.Sprintf("%.3f m", float64(d))
		if math.IsInf(float64(d), 1) {
			name = "inf"
		}
		fmt.Fprintf(&b, "  mark %s at %.1f mm and %.1f mm\n", name, read(m.deg(float64(d))+m.play/2), read(m.deg(float64(d))-m.play/2))
	}
	return b.String()
}

// A mapTally counts distances and what holds at them.
type mapTally struct{ all, edges, widths, marks float64 }

func (a *mapTally) add(b mapTally) {
	a.all, a.edges, a.widths, a.marks = a.all+b.all, a.edges+b.edges, a.widths+b.widths, a.marks+b.marks
}

func (a mapTally) String() string {
	return fmt.Sprintf("edges of windows within ± %.3f, marks within ± %.3f, widths of windows within their factors %.3f",
		a.edges/a.all, a.marks/a.all, a.widths/a.all)
}

// hold compares the ring as read back with the law, at distances even in 1/(D-c).
func (m mappedLens) hold(l *lenses.Lens) (n mapTally) {
	const distances = 60
	law := l.Law
	set := optics.Setting{Focal: m.focal, Number: m.number, Criterion: l.Criterion}
	within := func(d float64) bool { return math.Abs(law.Angle(d)-m.deg(d)) <= 2*law.Sigma(d) }
	for i := 1; i < distances; i++ {
		d := law.Origin() + (m.closest-law.Origin())*distances/float64(i)
		x, _ := optics.FromSensor(d, m.focal)
		near, far := set.Window(x)
		lo, hi := max(optics.ToSensor(near, m.focal), m.closest), optics.ToSensor(far, m.focal)
		least, most := law.Factors(d)
		wide, truly := law.Angle(hi)-law.Angle(lo), m.deg(hi)-m.deg(lo)
		n.all++
		n.edges += one(within(lo) && within(hi))
		n.marks += one(within(d))
		n.widths += one(truly >= least*wide && truly <= most*wide)
	}
	return n
}

func one(yes bool) float64 {
	if yes {
		return 1
	}
	return 0
}

// A window as the kit says lies, with both of its edges, within the printed ± of where it
// truly lies, at nine distances of ten or more. At as many it is as wide as its factors
// say. (The factors leave out how well marks are read, so where marks stand close, as on
// a short throw, they hold less often.)
func TestMappedSheetsAreReadBack(t *testing.T) {
	const fills = 40 // of each sheet, by as many people
	random := rand.New(rand.NewPCG(7, 11))
	var total mapTally
	for _, m := range mappedLenses {
		var n mapTally
		sheet := lensesOf(t, m.kit(), lenses.Stop{})["found"]
		for range fills {
			l := lensesOf(t, m.fill(sheet, random), lenses.Stop{})["found"]
			if l == nil || l.Law == nil || len(l.Ring.Marks) != len(sheet.Sheet) {
				t.Fatalf("%s: the kit has %+v", m.name, l)
			}
			n.add(m.hold(l))
		}
		t.Logf("%-18s %2d marks: %v", m.name, len(sheet.Sheet), n)
		total.add(n)
	}
	t.Logf("all: %v", total)
	if total.edges < 0.9*total.all || total.widths < 0.9*total.all {
		t.Errorf("of %v windows %v lie within the printed ±, and %v are as wide as was said", total.all, total.edges, total.widths)
	}
}
