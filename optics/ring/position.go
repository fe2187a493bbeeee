// Positions of marks as people have them, and degrees from the closest stop.
//
// A mark can be read in four ways: in degrees, as a length on a tape round the ring, as a
// part of the whole turn (a hand wheel's numbers, an encoder, a photograph of the ring),
// or as the hour at which the mark stands, seen from behind the camera. None of these
// scales has to begin at the closest stop, and each may run either way, as long as one of
// its ends is known. So positions become degrees in this order:
//
//  1. Each position becomes degrees on its own scale. A length needs the way round the
//     ring: the girth, or the diameter, or the throw and where both ends lie on the tape.
//     An hour counts from the mark before it, the way the ring turns, so that two marks
//     may lie up to a turn apart.
//  2. Rising positions count from the closest stop; falling ones count from infinity.
//  3. The closest distance is a mark at 0 and infinity one at the throw, where no mark of
//     them is written.

package ring

import (
	"cmp"
	"math"
	"slices"
)

// A Form is a way to say where a mark lies.
type Form int

// The forms of a position.
const (
	Degrees Form = iota // Value in degrees
	Along               // Value in metres along the rim
	Part                // Value of Of
	Clock               // Value in hours, 0 up to 12, seen from behind the camera
)

// A Position is where a mark lies, as it was read.
type Position struct {
	Form  Form
	Value float64
	Of    float64 // of Part: what the whole throw counts, 100 for percent
	Step  float64 // of Part: what the last written digit counts; 0 where that is not known
}

// A Written mark is one as somebody wrote it.
type Written struct {
	Distance float64 // metres from the sensor; +Inf for infinity
	Closest  bool    // written as the closest focus; Distance then does not count
	At       Position
	Second   *Position // come to from the far side; At is then come to from the near side
}

// Said is what is said of a ring beside its marks. Every value may be NaN: not said.
type Said struct {
	Focal    float64 // the shortest focal length, metres; it must be known
	Closest  float64 // metres from the sensor
	Throw    float64 // degrees
	Girth    float64 // metres
	Diameter float64 // metres
	Within   float64 // degrees: how well marks were read, nineteen times in twenty
	Turns    string  // "left" or "right" towards infinity, seen from behind; "" where not said
}

// A Read is what marks say of a ring.
type Read struct {
	Marks    []Mark // from near to far, with those that follow by default
	Order    []int  // of each mark, its place among those written; -1 of one by default
	Throw    float64
	Girth    float64 // metres; NaN where nothing says it, as for Throw and Play
	Diameter float64 // metres
	Play     float64 // degrees, the mean gap of marks that were come to from both sides
	Reading  float64 // degrees, one standard deviation
}

// Shape returns what FromMarks needs of a lens whose shortest focal length is focal
// metres.
func (r *Read) Shape(focal float64) Shape {
	return Shape{Focal: focal, Throw: r.Throw, Reading: r.Reading}
}

const (
	agrees     = 0.03   // the part by which two ways to say one thing may differ
	same       = 1e-6   // the part within which two distances are one
	hour       = 30.0   // degrees
	round      = 360.0  // degrees
	byEye      = 0.0005 // metres at the rim: how well a mark is read. Common practice, no source.
	byClock    = 3.0    // degrees: how well an hour is read. Common practice, no source.
	usualWheel = 0.080  // metres: the diameter taken where nothing says it. Common practice.
)

// Complete turns written marks into marks in degrees from the closest stop, and adds those
// that follow by default. There must be one written mark or more, in any order. It returns
// a *FormError for the first reason why they cannot be read; see Reason.
func Complete(written []Written, said Said) (*Read, error) {
	c := &completion{said: said, Read: Read{Throw: said.Throw, Play: math.NaN()}}
	steps := []func(*completion) error{
		(*completion).rim, func(c *completion) error { return c.sorted(written) },
		(*completion).scaled, (*completion).directed, (*completion).fromClosest, (*completion).ended, (*completion).ordered,
	}
	for _, step := range steps {
		if err := step(c); err != nil {
			return nil, err
		}
	}
	c.readings()
	return &c.Read, nil
}

// A completion is a Read on its way.
type completion struct {
	Read
	said    Said
	list    []placed // the written marks, from near to far
	falling bool
}

// A placed mark is a written mark on its way to degrees.
type placed struct {
	Written
	index   int     // among those written
	degrees float64 // on its own scale, then from the closest stop
	gap     float64 // degrees by which it stood farther along the scale when come to from near
}

// rim finds girth and diameter from each other.
func (c *completion) rim() error {
	girth, diameter := c.said.Girth, c.said.Diameter
	if err := RimAgrees(girth, diameter); err != nil {
		return err
	}
	switch {
	case !math.IsNaN(girth):
		diameter = girth / math.Pi
	case !math.IsNaN(diameter):
		girth = math.Pi * diameter
	}
	c.Girth, c.Diameter = girth, diameter
	return nil
}

// RimAgrees returns a *FormError with GirthDisagrees where a girth and a diameter, both
// in metres, are not those of one ring. NaN is one that nobody says.
func RimAgrees(girth, diameter float64) error {
	if !math.IsNaN(girth) && !math.IsNaN(diameter) && differ(girth/math.Pi, diameter) {
		return &FormError{Reason: GirthDisagrees, Index: -1, Girth: girth, Measured: girth / math.Pi, Said: diameter}
	}
	return nil
}

// sorted puts the marks in the order of their distances. Marks of more than one form, and
// two of one distance, are refused.
func (c *completion) sorted(written []Written) error {
	for i, w := range written {
		if w.Closest {
			w.Distance = c.said.Closest
		}
		for _, p := range w.positions() {
			if p.Form != written[0].At.Form {
				return &FormError{Reason: MixedForms, Index: i, Form: p.Form, Others: written[0].At.Form}
			}
		}
		if !(w.Distance >= nearest) {
			return &FormError{Reason: NoDistance, Index: i, Distance: w.Distance}
		}
		c.list = append(c.list, placed{Written: w, index: i})
	}
	slices.SortStableFunc(c.list, func(a, b placed) int { return cmp.Compare(a.Distance, b.Distance) })
	for i := 1; i < len(c.list); i++ {
		if a, b := c.list[i-1], c.list[i]; 1/a.Distance-1/b.Distance <= spacing {
			return &FormError{Reason: SameDistance, Index: b.index, Distance: b.Distance, Other: a.Distance}
		}
	}
	first := c.list[0]
	if !math.IsNaN(c.said.Closest) && first.Distance < c.said.Closest*(1-same) {
		return &FormError{Reason: BeyondClosest, Index: first.index, Distance: first.Distance, Other: c.said.Closest}
	}
	return nil
}

// positions returns the one or two positions of a mark.
func (w Written) positions() []Position {
	if w.Second == nil {
		return []Position{w.At}
	}
	return []Position{w.At, *w.Second}
}

// scaled turns each position into degrees on its own scale.
func (c *completion) scaled() error {
	switch c.list[0].At.Form {
	case Along:
		if math.IsNaN(c.Girth) {
			c.Girth = c.girthFromEnds()
			c.Diameter = c.Girth / math.Pi
		}
		if math.IsNaN(c.Girth) {
			return &FormError{Reason: NoRim, Index: c.first()}
		}
		c.each(func(p Position) float64 { return FromRim(p.Value, c.Girth) })
	case Part:
		if math.IsNaN(c.said.Throw) {
			return &FormError{Reason: NoThrow, Index: c.first()}
		}
		c.each(func(p Position) float64 { return FromPart(p.Value, p.Of, c.said.Throw) })
	case Clock:
		return c.clocked()
	default:
		c.each(func(p Position) float64 { return p.Value })
	}
	return nil
}

// first returns the place of the first written mark.
func (c *completion) first() int {
	first := c.list[0].index
	for _, m := range c.list {
		first = min(first, m.index)
	}
	return first
}

// each converts the positions of all marks.
func (c *completion) each(degrees func(Position) float64) {
	for i := range c.list {
		m := &c.list[i]
		m.degrees = degrees(m.At)
		if m.Second != nil {
			second := degrees(*m.Second)
			m.degrees, m.gap = (m.degrees+second)/2, m.degrees-second
		}
	}
}

// girthFromEnds returns the way round a ring in metres from its throw and the length
// between its ends, or NaN. A scale that begins at the closest stop has that end at 0.
func (c *completion) girthFromEnds() float64 {
	near, far := c.ends()
	if far < 0 || math.IsNaN(c.said.Throw) || near < 0 && math.IsNaN(c.said.Closest) {
		return math.NaN()
	}
	from := 0.0
	if near >= 0 {
		from = c.list[near].middle()
	}
	if length := math.Abs(c.list[far].middle() - from); length > 0 {
		return round * length / c.said.Throw
	}
	return math.NaN()
}

// middle returns the value of a position, the mean of two.
func (w Written) middle() float64 {
	if w.Second == nil {
		return w.At.Value
	}
	return (w.At.Value + w.Second.Value) / 2
}

// ends returns where among the marks the closest focus and infinity are written, -1 for
// not at all.
func (c *completion) ends() (near, far int) {
	near, far = -1, -1
	last := len(c.list) - 1
	if m := c.list[0]; m.Closest || !math.IsNaN(c.said.Closest) && m.Distance <= c.said.Closest*(1+same) {
		near = 0
	}
	if math.IsInf(c.list[last].Distance, 1) {
		far = last
	}
	return near, far
}

// clocked turns hours into degrees: each mark counts from the mark before it, the way that
// the tape goes. The first lies at 0 of this scale, or where infinity alone is known, so
// that infinity lies at the throw.
func (c *completion) clocked() error {
	if c.said.Turns == "" {
		return &FormError{Reason: WhichWay, Index: c.first()}
	}
	left := c.said.Turns == "left"
	mean := make([]float64, len(c.list)) // hours
	for i := range c.list {
		m := &c.list[i]
		mean[i] = m.At.Value
		if m.Second == nil {
			continue
		}
		// From the second to the first is a short way, in either direction.
		m.gap = FromClock(m.At.Value, m.Second.Value, left)
		if m.gap > round/2 {
			m.gap -= round
		}
		back := m.gap / 2 / hour
		if left {
			back = -back
		}
		mean[i] -= back
	}
	for i := 1; i < len(c.list); i++ {
		step := FromClock(mean[i], mean[i-1], left)
		if step < turn || step > round-turn {
			return &FormError{Reason: WholeTurn, Index: c.list[i].index, Distance: c.list[i].Distance, Other: c.list[i-1].Distance}
		}
		c.list[i].degrees = c.list[i-1].degrees + step
	}
	near, far := c.ends()
	if near < 0 && (far < 0 || math.IsNaN(c.said.Throw)) {
		return &FormError{Reason: NoEnd, Index: c.first()}
	}
	if near < 0 {
		shift := c.said.Throw - c.list[far].degrees
		for i := range c.list {
			c.list[i].degrees += shift
		}
	}
	return nil
}

// directed finds whether the positions rise or fall with distance.
func (c *completion) directed() error {
	for i := 1; i < len(c.list); i++ {
		a, b := c.list[i-1], c.list[i]
		if i == 1 {
			c.falling = b.degrees < a.degrees
		}
		if wrong := (b.degrees < a.degrees) != c.falling; wrong && math.Abs(b.degrees-a.degrees) >= turn {
			return &FormError{Reason: OutOfOrder, Index: b.index, Distance: b.Distance, Degrees: b.degrees, Other: a.Distance, OtherDegrees: a.degrees}
		}
	}
	return nil
}

// fromClosest counts all degrees from the closest stop.
func (c *completion) fromClosest() error {
	near, far := c.ends()
	count := func(d float64) float64 { return d }
	switch {
	case near >= 0 && c.falling:
		zero := c.list[near].degrees
		count = func(d float64) float64 { return zero - d }
	case near >= 0:
		zero := c.list[near].degrees
		count = func(d float64) float64 { return d - zero }
	case c.falling && math.IsNaN(c.said.Throw):
		a, b := c.list[0], c.list[1]
		return &FormError{Reason: OutOfOrder, Index: b.index, Distance: b.Distance, Degrees: b.degrees, Other: a.Distance, OtherDegrees: a.degrees}
	case c.falling:
		zero := 0.0
		if far >= 0 {
			zero = c.list[far].degrees
		}
		count = func(d float64) float64 { return c.said.Throw - (d - zero) }
	}
	for i := range c.list {
		m := &c.list[i]
		if m.degrees = count(m.degrees); c.falling {
			m.gap = -m.gap
		}
		c.Marks = append(c.Marks, Mark{Distance: m.Distance, Angle: m.degrees, Twice: m.Second != nil, Gap: m.gap})
		c.Order = append(c.Order, m.index)
	}
	return nil
}

// ended finds the throw, and adds the ends as marks.
func (c *completion) ended() error {
	near, far := c.ends()
	if far >= 0 {
		at := c.Marks[far].Angle
		if c.list[0].At.Form == Along && !math.IsNaN(c.said.Throw) && (near >= 0 || !c.falling) {
			if differ(at, c.said.Throw) {
				return &FormError{
					Reason: ThrowDisagrees, Index: -1, Girth: c.Girth, Length: at * c.Girth / round, Measured: at, Said: c.said.Throw,
				}
			}
			c.Throw = at
		}
		if math.IsNaN(c.Throw) {
			c.Throw = at
		}
	}
	if last := c.Marks[len(c.Marks)-1]; last.Angle > c.Throw+turn {
		return &FormError{Reason: PastThrow, Index: c.list[len(c.list)-1].index, Distance: last.Distance, Measured: last.Angle, Said: c.Throw}
	}
	if near < 0 && !math.IsNaN(c.said.Closest) {
		c.Marks = slices.Insert(c.Marks, 0, Mark{Distance: c.said.Closest, Default: true})
		c.Order = slices.Insert(c.Order, 0, -1)
	}
	if far < 0 && !math.IsNaN(c.Throw) {
		c.Marks = append(c.Marks, Mark{Distance: math.Inf(1), Angle: c.Throw, Default: true})
		c.Order = append(c.Order, -1)
	}
	if len(c.Marks) < 2 {
		return &FormError{Reason: Lone, Index: c.list[0].index, Distance: c.list[0].Distance}
	}
	return nil
}

// ordered refuses two distances at one angle, and marks on the wrong side of an end.
func (c *completion) ordered() error {
	for i, m := range c.Marks {
		if m.Angle < -turn {
			return &FormError{
				Reason: OutOfOrder, Index: c.Order[i], Distance: m.Distance, Degrees: m.Angle, Other: c.Marks[0].Distance, OtherDegrees: c.Marks[0].Angle,
			}
		}
		c.Marks[i].Angle = max(m.Angle, 0)
	}
	for i := 1; i < len(c.Marks); i++ {
		if a, b := c.Marks[i-1], c.Marks[i]; b.Angle-a.Angle < turn {
			e := &FormError{Reason: OneAngle, Index: c.Order[i], Distance: b.Distance, Degrees: b.Angle, Other: a.Distance, OtherDegrees: a.Angle, OtherDefault: a.Default}
			if b.Default {
				e.Index, e.Distance, e.Other, e.OtherDefault = c.Order[i-1], a.Distance, b.Distance, true
			}
			return e
		}
	}
	return nil
}

// readings finds how well the marks were read, and the play.
func (c *completion) readings() {
	diameter := c.Diameter
	if math.IsNaN(diameter) {
		diameter = usualWheel
	}
	sigma, step, all, gaps, twice := FromRim(byEye, math.Pi*diameter), 0.0, true, 0.0, 0
	for _, m := range c.list {
		for _, p := range m.positions() {
			if p.Form == Part && p.Of > 0 {
				step = max(step, p.Step/p.Of*c.said.Throw)
			}
		}
		if all = all && m.Second != nil; m.Second != nil {
			gaps, twice = gaps+m.gap, twice+1
		}
	}
	sigma = max(sigma, step/math.Sqrt(12))
	if c.list[0].At.Form == Clock {
		sigma = max(sigma, byClock)
	}
	if !math.IsNaN(c.said.Within) {
		sigma = c.said.Within / 2
	}
	if all {
		sigma /= math.Sqrt2
	}
	c.Reading = sigma
	if twice > 0 {
		c.Play = max(0, gaps/float64(twice))
	}
}

// differ reports whether two ways to say one thing differ by more than three percent.
func differ(a, b float64) bool { return math.Abs(a-b) > agrees*max(a, b) }

// FromRim returns the degrees of a length along the rim of a ring, both in metres.
func FromRim(length, girth float64) float64 { return round * length / girth }

// FromPart returns the degrees of n of so many parts of a throw in degrees.
func FromPart(n, of, throw float64) float64 { return throw * n / of }

// FromClock returns by how many degrees, 0 up to 360, the ring has turned from one hour to
// another, seen from behind the camera. A ring that turns left goes against the clock.
func FromClock(hours, previous float64, left bool) float64 {
	step := (hours - previous) * hour
	if left {
		step = -step
	}
	if step = math.Mod(step, round); step < 0 {
		step += round
	}
	return step
}
