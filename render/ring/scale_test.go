package ring

import (
	"encoding/xml"
	"fmt"
	"io"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"pullscore/interp/plan"
	"pullscore/render/draw"
	"pullscore/render/marks"
	"pullscore/render/sheet"
	"pullscore/render/testing/plans"
)

// The length of an arc is diameter x pi x angle / 360 (Euclid's circle, in any table of
// formulas); the figures are worked out by hand.
func TestRingLength(t *testing.T) {
	for _, tc := range []struct{ diameter, deg, want float64 }{
		{0.1, 360, 314.1593}, {0.1, 90, 78.5398}, {0.08, 1, 0.6981}, {0.11, 310, 297.5786},
	} {
		if got := ringLength(tc.diameter, tc.deg); math.Abs(got-tc.want) > 5e-5 {
			t.Errorf("%v deg of %v m: %v mm, want %v", tc.deg, tc.diameter, got, tc.want)
		}
	}
}

// A shape is an element of an SVG file, with the classes of the groups that hold it, from
// outside in, and the points that it names, in millimetres.
type shape struct {
	element string
	groups  []string
	points  []draw.Point
	turn    float64
	radius  float64
	text    string
}

func (s shape) in(names ...string) bool {
	for _, name := range names {
		if !slices.Contains(s.groups, name) {
			return false
		}
	}
	return true
}

var number = regexp.MustCompile(`-?[0-9.]+`)

// shapesOf reads a file. Each group is counted, so that shapes of different groups of one
// name can be told apart: the third disc is disc and disc#3.
func shapesOf(t *testing.T, doc string) []shape {
	var list []shape
	var groups [][]string
	seen := map[string]int{}
	dec := xml.NewDecoder(strings.NewReader(doc))
	for {
		tok, err := dec.Token()
		if err == io.EOF {
			return list
		}
		if err != nil {
			t.Fatal(err)
		}
		switch el := tok.(type) {
		case xml.EndElement:
			if el.Name.Local == "g" {
				groups = groups[:len(groups)-1]
			}
		case xml.CharData:
			if n := len(list); n > 0 && list[n-1].element == "text" {
				list[n-1].text = strings.TrimSpace(list[n-1].text + string(el))
			}
		case xml.StartElement:
			at := map[string]string{}
			for _, a := range el.Attr {
				at[a.Name.Local] = a.Value
			}
			if el.Name.Local == "g" {
				class := at["class"]
				seen[class]++
				groups = append(groups, []string{class, fmt.Sprintf("%s#%d", class, seen[class])})
				continue
			}
			s := shape{element: el.Name.Local, groups: slices.Concat(groups...)}
			mm := func(name string) float64 {
				v, _ := strconv.ParseFloat(at[name], 64)
				return v
			}
			switch s.element {
			case "line":
				s.points = []draw.Point{{X: mm("x1"), Y: mm("y1")}, {X: mm("x2"), Y: mm("y2")}}
			case "circle":
				s.points, s.radius = []draw.Point{{X: mm("cx"), Y: mm("cy")}}, mm("r")
			case "rect":
				s.points = []draw.Point{{X: mm("x"), Y: mm("y")}, {X: mm("x") + mm("width"), Y: mm("y") + mm("height")}}
			case "path":
				v := number.FindAllString(at["d"], -1)
				for i := 0; i+1 < len(v); i += 2 {
					x, _ := strconv.ParseFloat(v[i], 64)
					y, _ := strconv.ParseFloat(v[i+1], 64)
					s.points = append(s.points, draw.Point{X: x, Y: y})
				}
			case "text":
				s.points = []draw.Point{{X: mm("x"), Y: mm("y")}}
				if v := number.FindAllString(at["transform"], -1); len(v) > 0 {
					s.turn, _ = strconv.ParseFloat(v[0], 64)
				}
			}
			list = append(list, s)
		}
	}
}

// shapesOn reads pages as they are printed.
func shapesOn(t *testing.T, pages []*draw.Page) []shape {
	var list []shape
	for i, p := range pages {
		for _, s := range shapesOf(t, plans.SVGOf(t, p)) {
			for k, name := range s.groups { // groups of different pages differ
				if strings.Contains(name, "#") {
					s.groups[k] = fmt.Sprintf("%s on %d", name, i)
				}
			}
			list = append(list, s)
		}
	}
	return list
}

// A printed is the tape that a file has: millimetres from the left end of its first piece.
type printed struct{ marks, lens, windows []float64 }

// tapeOf joins the pieces of a tape as they are printed.
func tapeOf(t *testing.T, pages []*draw.Page) (tape printed) {
	type piece struct {
		edges []float64
		printed
	}
	pieces := map[string]*piece{}
	var order []string
	for _, s := range shapesOn(t, pages) {
		i := slices.IndexFunc(s.groups, func(name string) bool { return strings.HasPrefix(name, "piece#") })
		if i < 0 {
			continue
		}
		p := pieces[s.groups[i]]
		if p == nil {
			p = &piece{}
			pieces[s.groups[i]], order = p, append(order, s.groups[i])
		}
		switch {
		case s.element == "line" && s.in("cut-here") && s.points[0].X == s.points[1].X:
			p.edges = append(p.edges, s.points[0].X)
		case s.element == "line" && s.in("mark") && s.points[0].X == s.points[1].X:
			p.marks = append(p.marks, s.points[0].X)
		case s.element == "path" && (s.in("measured") || s.in("computed")):
			p.lens = append(p.lens, s.points[0].X)
		case s.element == "rect" && s.in("settings"):
			p.windows = append(p.windows, s.points[0].X, s.points[1].X)
		}
	}
	joined := 0.0
	for _, name := range order {
		p := pieces[name]
		if len(p.edges) != 2 {
			t.Fatalf("%s has %d cut ends, want 2", name, len(p.edges))
		}
		left := slices.Min(p.edges)
		move := func(to *[]float64, from []float64) {
			for _, x := range from {
				*to = append(*to, joined+x-left)
			}
		}
		move(&tape.marks, p.marks)
		move(&tape.lens, p.lens)
		move(&tape.windows, p.windows)
		joined += slices.Max(p.edges) - left
	}
	slices.Sort(tape.marks)
	slices.Sort(tape.lens)
	return tape
}

// laid returns where angle 0 of the ring lies on a tape of that many millimetres a degree,
// if it is laid with its triangles on the lens's own marks; ok is false where they do not
// meet.
func laid(lens []float64, degs []float64, perDeg float64) (zero float64, ok bool) {
	for first := 0; first+len(lens) <= len(degs); first++ {
		zero = lens[0] - degs[first]*perDeg
		ok = len(lens) > 0
		for i, x := range lens {
			ok = ok && math.Abs(x-zero-degs[first+i]*perDeg) <= 0.05
		}
		if ok {
			return zero, true
		}
	}
	return 0, false
}

// On a tape that lies with its triangles on the lens's own marks, every mark and both ends
// of every window are where diameter x pi x angle / 360 says, within 0.05 mm, over all
// pieces, as printed.
func TestMarksLieWhereTheRingHasThem(t *testing.T) {
	const tolerance = 0.05
	for _, made := range []func() *plan.Shot{plans.Crowd, plans.ThreeRacks, plans.LongShot, plans.BothWays} {
		for _, turns := range []string{"left", "right"} {
			for _, diameter := range []float64{0.05, 0.08, 0.11, 0.2} {
				s := made()
				s.Optics.Diameter, s.Optics.TurnsTo = diameter, turns
				perDeg := diameter * 1000 * math.Pi / 360
				var degs, want []float64
				for _, m := range marks.OfLens(s) {
					degs = append(degs, m.Deg)
				}
				windows := map[float64]bool{}
				for _, m := range marks.Of(s) {
					if apart := (m.Sides[1] - m.Sides[0]) * perDeg; apart >= linesApart {
						want = append(want, m.Sides[0], m.Sides[1])
					} else {
						want = append(want, m.Deg)
					}
					if m.Sharp() {
						windows[m.Window[0]], windows[m.Window[1]] = true, true
					}
				}
				slices.Sort(degs)
				slices.Sort(want)
				tape := tapeOf(t, Strip(s, sheet.Options{}))
				if turns == "right" {
					perDeg = -perDeg
					slices.Reverse(degs)
					slices.Reverse(want)
				}
				name := fmt.Sprintf("%s on a ring of %v m, turning %s", s.ID, diameter, turns)
				zero, ok := laid(tape.lens, degs, perDeg)
				if !ok {
					t.Fatalf("%s: the triangles at %v do not lie as the lens's marks at %v", name, tape.lens, degs)
				}
				if len(tape.marks) != len(want) {
					t.Fatalf("%s: %d lines, want %d", name, len(tape.marks), len(want))
				}
				for i, deg := range want {
					if got := tape.marks[i] - zero; math.Abs(got-deg*perDeg) > tolerance {
						t.Errorf("%s: a mark at %.3f mm, want %.3f", name, got, deg*perDeg)
					}
				}
				for deg := range windows {
					x := zero + deg*perDeg
					if !slices.ContainsFunc(tape.windows, func(w float64) bool { return math.Abs(w-x) <= 0.02 }) {
						t.Errorf("%s: no window ends at %.3f mm: %.3f", name, x, tape.windows)
					}
				}
			}
		}
	}
}

// A printedDisc is a disc as a file has it.
type printedDisc struct {
	centre draw.Point
	title  string
	lines  []float64          // of marks: degrees clockwise from the top
	labels map[string]float64 // of names: by how much they are turned
}

// discsOf reads the discs of a file.
func discsOf(t *testing.T, pages []*draw.Page) []*printedDisc {
	var list []*printedDisc
	byName := map[string]*printedDisc{}
	shapes := shapesOn(t, pages)
	nameOf := func(s shape) string {
		if i := slices.IndexFunc(s.groups, func(name string) bool { return strings.HasPrefix(name, "disc#") }); i >= 0 {
			return s.groups[i]
		}
		return ""
	}
	for _, s := range shapes {
		if name := nameOf(s); name != "" && s.element == "circle" && s.in("cut-here") {
			byName[name] = &printedDisc{centre: s.points[0], labels: map[string]float64{}}
			list = append(list, byName[name])
		}
	}
	for _, s := range shapes {
		d := byName[nameOf(s)]
		switch {
		case d == nil:
		case s.element == "line" && s.in("mark"):
			d.lines = append(d.lines, angle(d.centre, s.points[0]))
		case s.element == "text" && strings.HasPrefix(s.text, "turns "):
			d.title = s.text
		case s.element == "text" && s.in("label"):
			d.labels[s.text] = s.turn
		}
	}
	return list
}

// angle returns where a point lies as seen from another: degrees clockwise from the top.
func angle(centre, p draw.Point) float64 {
	return math.Atan2(p.X-centre.X, centre.Y-p.Y) * 180 / math.Pi
}

// On a disc as it is printed every mark lies at the angle of the hand from the top, within
// 0.05 degrees, and its name is turned by that angle, within 0.5 degrees: it is upright
// under the pointer.
func TestDiscMarksLieAtTheAngleOfTheHand(t *testing.T) {
	names := 0
	for _, gear := range []float64{0.5, 0.75, 1, 1.1, 2, 4} {
		s := plans.ThreeRacks()
		geared(s, 110, plan.Number(gear))
		list := marks.Of(s)
		discs := discsOf(t, Dial(s, sheet.Options{}))
		if len(discs) != 2 {
			t.Fatalf("%d discs", len(discs))
		}
		for _, d := range discs {
			way := 1.0
			if d.title == "turns clockwise to infinity" {
				way = -1
			}
			if len(d.lines) != len(list) {
				t.Fatalf("gear %v: %d lines, want %d", gear, len(d.lines), len(list))
			}
			for i, m := range list {
				want := way * m.Deg * gear
				if off := math.Remainder(d.lines[i]-want, 360); math.Abs(off) > 0.05 {
					t.Errorf("gear %v, %s: %s lies %.3f degrees off", gear, d.title, m.Name, off)
				}
				turn, named := d.labels[m.Who]
				if !named || len(slices.Collect(whoseName(list, m.Who))) > 1 {
					continue
				}
				names++
				if off := math.Remainder(turn-want, 360); math.Abs(off) > 0.5 {
					t.Errorf("gear %v, %s: the name of %s is turned %.2f degrees off", gear, d.title, m.Name, off)
				}
			}
		}
	}
	if names < 12 {
		t.Errorf("only %d names on all discs", names)
	}
}

func whoseName(list []marks.Mark, who string) func(func(marks.Mark) bool) {
	return func(yield func(marks.Mark) bool) {
		for _, m := range list {
			if m.Who == who && !yield(m) {
				return
			}
		}
	}
}

// While a wheel turns as the title of its disc says, marks come to the pointer at the top
// one after the other from near to far.
func TestInfinityComesToThePointer(t *testing.T) {
	s := plans.ThreeRacks()
	geared(s, 80, 0.75)
	list := marks.Of(s) // from near to far
	for _, d := range discsOf(t, Dial(s, sheet.Options{})) {
		turns := map[string]float64{"turns clockwise to infinity": 1, "turns anticlockwise to infinity": -1}[d.title]
		if turns == 0 {
			t.Fatalf("a disc is titled %q", d.title)
		}
		var at []float64 // by how much the wheel has turned when a mark is under the pointer
		for i := range list {
			turned := math.Mod(-d.lines[i]*turns+720, 360)
			at = append(at, turned)
		}
		if !slices.IsSorted(at) || at[len(at)-1] > 310*0.75 {
			t.Errorf("on the disc that %s, marks from near to far come to the pointer after %.1f degrees", d.title, at)
		}
	}
}

// The bar that tells whether the printer kept to the size is 50.00 mm long, on every page
// that is cut out, and its file is measured in millimetres.
func TestCheckBarIsFiftyMillimetres(t *testing.T) {
	size := regexp.MustCompile(`width="([0-9.]+)mm" height="([0-9.]+)mm" viewBox="0 0 ([0-9.]+) ([0-9.]+)"`)
	s := plans.Crowd()
	s.WheelMM = 80
	for _, p := range slices.Concat(Ring(s, sheet.Options{}), Strip(s, sheet.Options{}), Dial(s, sheet.Options{Paper: sheet.Letter}), Strip(plans.NoRing(), sheet.Options{})) {
		doc := plans.SVGOf(t, p)
		if d := size.FindStringSubmatch(doc); d == nil || d[1] != d[3] || d[2] != d[4] {
			t.Fatalf("%s is not in millimetres", p.Title)
		}
		long := 0.0
		for _, s := range shapesOf(t, doc) {
			if s.in("check-bar") && s.element == "line" && s.points[0].Y == s.points[1].Y {
				long = s.points[1].X - s.points[0].X
			}
		}
		if math.Abs(long-50) > 0.005 {
			t.Errorf("%s: the bar is %v mm", p.Title, long)
		}
		if !strings.Contains(doc, "measure it before you cut") || !strings.Contains(doc, "print at 100 %") {
			t.Errorf("%s does not say how to print", p.Title)
		}
	}
}

// Turns of the spiral never touch: a mark's turn can be told.
func TestTurnsOfTheSpiralKeepApart(t *testing.T) {
	for _, wheel := range []plan.Number{wheelLeast, 40, 80, 150, 300} {
		for _, gear := range []plan.Number{0.05, 0.5, 1, 2.5, 7, 20} {
			s := plans.ThreeRacks()
			geared(s, wheel, gear)
			d := newDisc(s, &lettered{}, 70, true)
			for deg := 0.0; deg <= 360*d.turns; deg += 30 {
				if r := d.track(deg); r > d.outer || r < hubLeast-3 {
					t.Fatalf("wheel %v, gear %v: at %v deg the line lies %v mm from the centre", wheel, gear, deg, r)
				}
				if deg >= 360 && !(d.track(deg) < d.track(deg-360)) {
					t.Fatalf("wheel %v, gear %v: at %v deg the line meets the turn before", wheel, gear, deg)
				}
			}
		}
	}
}

// A place of the thumb is where the clock face says once the wheel has turned as far as the
// pull's start: on the disc for a wheel that turns clockwise, and mirrored on the other.
func TestThumbsLieByTheClock(t *testing.T) {
	for _, gear := range []float64{0.5, 1.5, 4} {
		s := plans.ThreeRacks()
		geared(s, 80, plan.Number(gear))
		s.Pulls = s.Pulls[:1]
		p := plans.Held(s, "wheel").Pulls[0]
		p.HoldFrom = 2.5
		for _, clockwise := range []bool{true, false} { // of the disc's marks: the wheel turns the other way
			way := 1.0
			if clockwise {
				way = -1
			}
			d := newDisc(s, &lettered{}, 60, clockwise)
			list := d.thumbs()
			if len(list) != 1 {
				t.Fatalf("%d places", len(list))
			}
			at := angle(d.centre, d.point(list[0].deg, 30))
			if off := math.Remainder(at+way*float64(p.FromDeg)*gear-way*75, 360); math.Abs(off) > 1e-6 {
				t.Errorf("gear %v, disc clockwise %v: the thumb is %v deg off 2:30", gear, clockwise, off)
			}
		}
	}
	s := plans.Held(plans.ThreeRacks(), "ring")
	if d := newDisc(s, &lettered{}, 60, true); len(d.thumbs()) > 0 {
		t.Error("a thumb on the ring has a place on the disc")
	}
}

// The triangle of the line for those who come from near points towards infinity, on a disc
// that runs either way.
func TestTrianglesPointTheWayThatTheFocusGoes(t *testing.T) {
	s := plans.BothWays()
	geared(s, 80, 1.1)
	for _, clockwise := range []bool{true, false} {
		d := newDisc(s, &lettered{list: marks.Of(s), used: map[int]bool{}}, 60, clockwise)
		for _, m := range d.named.list {
			if !d.two(m) {
				continue
			}
			near, far := d.triangle(m.Sides[1], 1), d.triangle(m.Sides[0], -1)
			outer := math.Hypot(near[1].X-far[1].X, near[1].Y-far[1].Y)
			lines := math.Hypot(near[0].X-far[0].X, near[0].Y-far[0].Y)
			on := d.point(d.hand(m.Sides[1])+5, d.track(d.hand(m.Sides[1]))-d.stemLong) // towards infinity
			if !(outer > lines) || math.Hypot(near[1].X-on.X, near[1].Y-on.Y) >= math.Hypot(near[0].X-on.X, near[0].Y-on.Y) {
				t.Errorf("clockwise %v: the triangles of %s point the wrong way", clockwise, m.Name)
			}
		}
	}
}

// Lines that would be nearer than 0.6 mm are one, and the page says the play; a ring that
// was marked one way has one line, and nothing is said.
func TestOneLineWhereTwoWouldBeTooNear(t *testing.T) {
	lines := len(marks.Of(plans.ThreeRacks()))
	for _, tc := range []struct {
		name  string
		ring  *plan.Ring
		two   bool
		words string
	}{
		{"no play known", nil, false, ""},
		{"0.58 mm", plans.Play(0.6), false, "The ring has 0.6° of play"},
		{"0.62 mm", plans.Play(0.65), true, "of play. Come from near"},
		{"one way", &plan.Ring{Kind: plan.Measured, Play: 2, Marked: "inf"}, false, ""},
	} {
		s := plans.ThreeRacks()
		s.Ring = tc.ring
		pages := Strip(s, sheet.Options{})
		if got := len(tapeOf(t, pages).marks); (got > lines) != tc.two {
			t.Errorf("%s: %d lines for %d marks", tc.name, got, lines)
		}
		text := plans.TextOf(pages)
		if said := strings.Contains(text, "of play"); said != (tc.words != "") || !strings.Contains(text, tc.words) {
			t.Errorf("%s: %q is not said in %q", tc.name, tc.words, text)
		}
	}
}

// A tape is laid by the stops of a ring only where the ring has stops that hold.
func TestTapeIsLaidByWhatHolds(t *testing.T) {
	for _, ends := range []string{"", "hard", "slip", "linear"} {
		for _, marked := range []bool{false, true} {
			s := &plan.Shot{Ring: &plan.Ring{Ends: ends}}
			s.Optics.Marked = marked
			holds := ends == "" || ends == "hard"
			text := layOn(s, true)
			if strings.Contains(text, "hatched") != holds || strings.Contains(text, "nothing holds") == holds {
				t.Errorf("ends %q: %s", ends, text)
			}
			if strings.Contains(text, "triangles") == (holds && !marked) {
				t.Errorf("ends %q, marked %v: %s", ends, marked, text)
			}
		}
	}
}

// The tape shows the marks of the lens as they are engraved.
func TestStripsHaveTheEngravedMarks(t *testing.T) {
	s := plans.FeetLens(t)
	pages := Strip(s, sheet.Options{})
	check(t, "strip", pages)
	text := plans.TextOf(pages)
	for _, want := range []string{"2′ (61 cm)", "20′ (6.1 m)"} {
		if !strings.Contains(text, want) {
			t.Errorf("the strip has no %q: %q", want, text)
		}
	}
}
