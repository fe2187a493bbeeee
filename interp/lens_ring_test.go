// Rules of testdata/lens-cases.tsv about marks and chances.

package interp_test

import (
	"math"
	"regexp"
	"strconv"
	"strings"

	"pullscore/interp/hand"
	"pullscore/optics"
	"pullscore/optics/ring"
)

const (
	lensMetre = `([\d.]+|inf) m`
	foot      = 0.3048
)

// of75 begins the rows of a lens of 75 mm with five marks.
const of75 = `75 mm, marks [^/]*: angle of .* m // `

var marksRules = []lensRule{
	{`75 mm, marks ([^/]*): angle of ` + lensMetre, func(a lensArgs) float64 { return marked(0.075, a.text[0]).Angle(a.n[1]) }},
	{of75 + `E at ` + lensMetre, func(a lensArgs) float64 { return law75().Bound(a.n[0]) }},
	{of75 + `ring 110 mm: sigma at ` + lensMetre, func(a lensArgs) float64 { return law75().Sigma(a.n[0]) }},
	{of75 + `distance at (\d+) deg`, func(a lensArgs) float64 { return law75().Distance(a.n[0]) }},
	{`50 mm, closest 18 in, marks 3'@100 5'@180 10'@240, ring 300: angle of ([^/]*)`, func(a lensArgs) float64 { return law50().Angle(feet(a.text[0])) }},
	{`50 mm, closest 18 in, .* // E of (.*)`, func(a lensArgs) float64 { return law50().Bound(feet(a.text[0])) }},
	{`75 mm, two marks ([^/]*): angle of ` + lensMetre, func(a lensArgs) float64 { return marked(0.075, a.text[0]).Angle(a.n[1]) }},
	{`75 mm, two marks (.*): angle of ` + lensMetre + ` // E`, func(a lensArgs) float64 { return marked(0.075, a.text[0]).Bound(a.n[1]) }},
	{`75 mm, two marks .* // law of unit focusing: angle of ` + lensMetre, func(a lensArgs) float64 { return computed(0.075, 0.75, 310).Angle(a.n[0]) }},
	{`mark at ([\d.]+) in of rim, girth ([\d.]+) in`, func(a lensArgs) float64 {
		return position(ring.Position{Form: ring.Along, Value: a.n[0] * foot / 12}, func(s *ring.Said) { s.Girth = a.n[1] * foot / 12 })
	}},
	{`mark at (\d+) mm of rim, ring diameter (\d+) mm`, func(a lensArgs) float64 {
		return position(ring.Position{Form: ring.Along, Value: a.n[0] / 1000}, func(s *ring.Said) { s.Diameter = a.n[1] / 1000 })
	}},
	{`mark at ([\d.]+) of (\d+), ring (\d+) deg`, func(a lensArgs) float64 {
		return position(ring.Position{Form: ring.Part, Value: a.n[0], Of: a.n[1]}, func(s *ring.Said) { s.Throw = a.n[2] })
	}},
	{`mark at (\d+) %, ring (\d+) deg`, func(a lensArgs) float64 {
		return position(ring.Position{Form: ring.Part, Value: a.n[0], Of: 100}, func(s *ring.Said) { s.Throw = a.n[1] })
	}},
	{`mark at (\d+) of (\d+), ring (\d+) deg, falling with distance: from the closest stop`, func(a lensArgs) float64 {
		return falling(a.n[0], 0, a.n[1], a.n[2])
	}},
	{`falling, inf at (\d+) of (\d+), 2 m at (\d+) of \d+, ring (\d+) deg, closest not marked: degrees of 2 m`, func(a lensArgs) float64 {
		return falling(a.n[2], a.n[0], a.n[1], a.n[3])
	}},
	{`clock (.*) o'clock after (.*) o'clock, turns (left|right)`, func(a lensArgs) float64 {
		near, far := ring.Position{Form: ring.Clock, Value: hours(a.text[1])}, ring.Position{Form: ring.Clock, Value: hours(a.text[0])}
		said := nothingSaid()
		said.Closest, said.Turns = 0.5, a.text[2]
		return completed(said, ring.Written{Closest: true, At: near}, ring.Written{Distance: 2, At: far}).Marks[1].Angle
	}},
	{`lengths 0 mm \(closest\) to (\d+) mm \(inf\), ring (\d+) deg: diameter`, func(a lensArgs) float64 {
		said := nothingSaid()
		said.Closest, said.Throw = 0.5, a.n[1]
		return bothEnds(said, 0, a.n[0]/1000).Diameter * 1000
	}},
	{`lengths (\d+) mm \(closest\) to (\d+) mm \(inf\), girth (\d+) mm: throw`, func(a lensArgs) float64 {
		said := nothingSaid()
		said.Closest, said.Girth = 0.5, a.n[2]/1000
		return bothEnds(said, a.n[0]/1000, a.n[1]/1000).Throw
	}},
	{`printed: window (.*)\.\.(.*) deg, sigma (.*), law sigma (.*): chance on paper`, func(a lensArgs) float64 {
		return hand.Within(a.n[0], a.n[1], math.Hypot(a.n[2], a.n[3]), 0)
	}},
	{`printed: window (.*)\.\.(.*) deg, sigma (.*), law sigma .* // chance, mark set by eye`, func(a lensArgs) float64 {
		return hand.Within(a.n[0], a.n[1], a.n[2], 0)
	}},
	{`mark 1.2 m at ([\d.]+) mm and ([\d.]+) mm: position`, func(a lensArgs) float64 {
		return twice(a.n[0], a.n[1], 346).Marks[1].Angle / 360 * 346
	}},
	{`mark 1.2 m at ([\d.]+) mm and ([\d.]+) mm: position // girth (\d+) mm: play`, func(a lensArgs) float64 {
		return twice(a.n[0], a.n[1], a.n[2]).Play
	}},
}

var chanceRules = []lensRule{
	{`75 mm as above: k of the gap that holds ` + lensMetre, func(a lensArgs) float64 { return law75().K(a.n[0]) }},
	{`75 mm as above: k of the gap that holds ` + lensMetre + ` // window times, (least|most)`, func(a lensArgs) float64 {
		least, most := law75().Factors(a.n[0])
		return map[string]float64{"least": least, "most": most}[a.text[1]]
	}},
	{`travel (\d+) deg, ([\d.]+) s, window (.*)\.\.(.*) times ([\d.]+), rim (\d+) mm: chance`, func(a lensArgs) float64 {
		return landed(a.n[0], a.n[1], a.n[2]*a.n[4], a.n[3]*a.n[4], a.n[5]/1000)
	}},
	{`ring not known, (\d+) mm, closest ([\d.]+) m, f/([\d.]+), ([\d.]+) m to ([\d.]+) m in ([\d.]+) s, throw (\d+): chance`, func(a lensArgs) float64 {
		return throwOf(computed(a.n[0]/1000, a.n[1], a.n[6]), a.n[0]/1000, a.n[2], a.n[3], a.n[4], a.n[5])
	}},
	{`clock marks: reading, one standard deviation`, func(lensArgs) float64 {
		said := nothingSaid()
		said.Closest, said.Turns, said.Diameter = 0.5, "left", 0.11
		at := func(h float64) ring.Position { return ring.Position{Form: ring.Clock, Value: h} }
		return completed(said, ring.Written{Closest: true, At: at(4)}, ring.Written{Distance: 2, At: at(2)}).Reading
	}},
	{`marks as ([\d.]+) of (\d+), ring (\d+): reading`, func(a lensArgs) float64 {
		said := nothingSaid()
		said.Closest, said.Throw, said.Diameter = 0.5, a.n[2], 0.11
		return completed(said, ring.Written{Distance: 1, At: ring.Position{Form: ring.Part, Value: a.n[0], Of: a.n[1], Step: 0.1}}).Reading
	}},
	{`.* // printed range from`, func(lensArgs) float64 { return landed(90, 0.9, -2.35*0.62, 2.35*0.62, 0.11) }},
	{`.* // printed range to`, func(lensArgs) float64 { return landed(90, 0.9, -2.35*1.44, 2.35*1.44, 0.11) }},
}

// marked returns the law of a lens through marks as in 0.75@0 1@118 inf@310, on a ring
// 110 mm wide.
func marked(f float64, text string) *ring.Law {
	var marks []ring.Mark
	for pair := range strings.FieldsSeq(text) {
		d, a, _ := strings.Cut(pair, "@")
		marks = append(marks, ring.Mark{Distance: mustNumber(d), Angle: mustNumber(a)})
	}
	said := nothingSaid()
	said.Diameter = 0.11
	reading := completed(said, ring.Written{Distance: 1}, ring.Written{Distance: 2, At: ring.Position{Value: 10}}).Reading
	return mustLaw(ring.FromMarks(marks, ring.Shape{Focal: f, Throw: math.NaN(), Reading: reading}))
}

func law75() *ring.Law { return marked(0.075, "0.75@0 1@118 2@240 5@290 inf@310") }

// law50 has closest and infinity by default.
func law50() *ring.Law {
	said := nothingSaid()
	said.Closest, said.Throw, said.Diameter = 18*foot/12, 300, 0.11
	at := func(d, deg float64) ring.Written {
		return ring.Written{Distance: d * foot, At: ring.Position{Value: deg}}
	}
	read := completed(said, at(3, 100), at(5, 180), at(10, 240))
	return mustLaw(ring.FromMarks(read.Marks, read.Shape(0.05)))
}

func computed(f, closest, throw float64) *ring.Law { return mustLaw(ring.Unit(f, closest, throw)) }

func mustLaw(law *ring.Law, err error) *ring.Law {
	if err != nil {
		panic(err)
	}
	return law
}

func mustNumber(text string) float64 {
	v, err := strconv.ParseFloat(text, 64)
	if err != nil {
		panic(err)
	}
	return v
}

var feetAndInches = regexp.MustCompile(`^(?:(\d+)')?(?:(\d+)(?:"| in))?$`)

// feet reads a length as in 2', 1'10" or 18 in.
func feet(text string) float64 {
	m := feetAndInches.FindStringSubmatch(text)
	whole := 0.0
	if m[1] != "" {
		whole = mustNumber(m[1])
	}
	if m[2] != "" {
		whole += mustNumber(m[2]) / 12
	}
	return whole * foot
}

// hours reads a clock position as in 4 or 10:30.
func hours(text string) float64 {
	h, minutes, half := strings.Cut(text, ":")
	if half {
		return mustNumber(h) + mustNumber(minutes)/60
	}
	return mustNumber(h)
}

func nothingSaid() ring.Said {
	nan := math.NaN()
	return ring.Said{Focal: 0.05, Closest: nan, Throw: nan, Girth: nan, Diameter: nan, Within: nan}
}

func completed(said ring.Said, written ...ring.Written) *ring.Read {
	read, err := ring.Complete(written, said)
	if err != nil {
		panic(err)
	}
	return read
}

// position returns the degrees of one mark of a lens that focuses to 50 cm.
func position(at ring.Position, say func(*ring.Said)) float64 {
	said := nothingSaid()
	said.Closest = 0.5
	say(&said)
	return completed(said, ring.Written{Distance: 1, At: at}).Marks[1].Angle
}

// falling returns the degrees of 2 m on a scale that counts from infinity.
func falling(n, atInf, of, throw float64) float64 {
	said := nothingSaid()
	said.Closest, said.Throw = 0.5, throw
	part := func(n float64) ring.Position { return ring.Position{Form: ring.Part, Value: n, Of: of} }
	return completed(said, ring.Written{Distance: 2, At: part(n)}, ring.Written{Distance: math.Inf(1), At: part(atInf)}).Marks[1].Angle
}

// bothEnds reads the two ends of a ring off a tape.
func bothEnds(said ring.Said, closest, inf float64) *ring.Read {
	at := func(v float64) ring.Position { return ring.Position{Form: ring.Along, Value: v} }
	return completed(said, ring.Written{Closest: true, At: at(closest)}, ring.Written{Distance: math.Inf(1), At: at(inf)})
}

// twice reads a mark that was come to from both sides, in millimetres of rim.
func twice(first, second, girth float64) *ring.Read {
	said := nothingSaid()
	said.Closest, said.Girth = 0.5, girth/1000
	at := func(v float64) ring.Position { return ring.Position{Form: ring.Along, Value: v / 1000} }
	to := at(second)
	return completed(said, ring.Written{Distance: 1.2, At: at(first), Second: &to})
}

// landed is the chance of the default hand.
func landed(travel, seconds, lo, hi, rim float64) float64 {
	return hand.Default().Land(hand.Pull{Travel: travel, Time: seconds, Lo: lo, Hi: hi, Rim: rim}).Chance
}

// throwOf is the chance of a rack on a ring, without diffraction, on a picture 24.89 mm
// wide that is shown 12 m wide and seen from 18 m.
func throwOf(law *ring.Law, f, number, from, to, seconds float64) float64 {
	set := optics.Setting{Focal: f, Number: number, Criterion: optics.Criterion(0.02489, 12, 18, 2)}
	x, _ := optics.FromSensor(to, f)
	near, far := set.Window(x)
	at := law.Angle(to)
	lo, hi := law.Held(optics.ToSensor(near, f))-at, law.Held(optics.ToSensor(far, f))-at
	if at < law.Angle(from) {
		lo, hi = -hi, -lo
	}
	return landed(math.Abs(at-law.Angle(from)), seconds, lo, hi, hand.Wheel)
}
