package staged

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"pullscore/interp/plan"
	"pullscore/render/draw"
	"pullscore/render/sheet"
	"pullscore/render/signs"
	"pullscore/render/testing/drawtest"
	"pullscore/render/testing/plans"
)

// tester is what *testing.T and *rapid.T share.
type tester interface {
	Helper()
	Errorf(string, ...any)
	Fatalf(string, ...any)
}

// check fails for what is wrong with the floor of a scene.
func check(t tester, name string, p *plan.Plan, paper sheet.Paper) {
	t.Helper()
	pages := Draw(p, 0, sheet.Options{Paper: paper})
	plans.CheckPaper(t, name, nil, pages)
	for _, fault := range drawtest.Links(pages) {
		t.Errorf("%s: %s", name, fault)
	}
	f := Of(p, 0)
	isToScale(t, f, pages)
	isAllThere(t, f, pages)
}

func groupsOf(root *draw.Group, name string) (list []*draw.Group) {
	for it := range root.All() {
		if g, ok := it.(*draw.Group); ok && g.Name == name {
			list = append(list, g)
		}
	}
	return list
}

// scaleOf returns to how much a page is one, as its head says; 0 if it says nothing.
func scaleOf(p *draw.Page) (scale float64) {
	for it := range groupsOf(&p.Root, "head")[0].All() {
		if text, ok := it.(draw.Text); ok && strings.HasPrefix(text.String, "1:") {
			fmt.Sscanf(text.String, "1:%g", &scale)
		}
	}
	return scale
}

// marksOf returns where the places of a page lie, by their letters: the dot of a disc that
// is beside its place, or else the disc.
func marksOf(p *draw.Page) map[string]draw.Point {
	at := map[string]draw.Point{}
	for _, g := range groupsOf(&p.Root, "spot") {
		letter, _, _ := strings.Cut(g.Title, ":")
		for it := range g.All() {
			if d, ok := it.(draw.Disc); ok {
				at[letter] = d.Centre
				break
			}
		}
	}
	return at
}

// wedgesOf returns where the tips of the cameras of a page lie, by their IDs.
func wedgesOf(p *draw.Page) map[string]draw.Point {
	at := map[string]draw.Point{}
	for _, g := range groupsOf(&p.Root, signs.Wedge) {
		if id, ok := strings.CutPrefix(g.Title, "set-up "); ok {
			at[id] = g.Items[0].(draw.Path).Runs[0][0]
		}
	}
	return at
}

// isToScale fails where places, cameras or bars are not as far apart on the page as on the
// floor, upstage up and right to the right, or too near to the frame.
func isToScale(t tester, f *Floor, pages []*draw.Page) {
	t.Helper()
	for _, p := range pages {
		scale := scaleOf(p)
		if scale == 0 {
			continue
		}
		on := map[draw.Point]Spot{}
		marks, wedges := marksOf(p), wedgesOf(p)
		for _, place := range f.Places {
			if at, ok := marks[place.Letter]; ok {
				on[at] = place.At
			}
		}
		_, far := f.parted(setupsOn(f, wedges))
		for i := range f.Setups {
			if c := &f.Setups[i]; !far[c.ID] {
				if at, ok := wedges[c.ID]; ok {
					on[at] = spotOfPose(c.Pose)
				}
			}
		}
		frame := groupsOf(&p.Root, "grid")[0]
		box := frame.Items[slices.IndexFunc(frame.Items, func(it draw.Item) bool { _, ok := it.(draw.Rect); return ok })].(draw.Rect).Box
		for a, at := range on {
			if !box.Grow(-12 + 1e-6).Holds(draw.Box{X: a.X, Y: a.Y}) {
				t.Errorf("%v lies at %v, less than 12 mm inside the floor", at, a)
			}
			for b, to := range on {
				right, up := (b.X-a.X)*scale/1000, (a.Y-b.Y)*scale/1000
				if math.Abs(right-(to.X-at.X)) > 1e-6*scale || math.Abs(up-(to.Y-at.Y)) > 1e-6*scale {
					t.Errorf("from %v to %v are %g m right and %g m up at 1:%g", at, to, right, up, scale)
				}
			}
		}
		for name, metres := range map[string]float64{"bar-metre": 1, "bar-feet": 0.9144} {
			bar := groupsOf(&p.Root, name)[0]
			line := bar.Items[0].(draw.Line)
			times := 1.0
			if strings.Contains(bar.Title, "0") {
				fmt.Sscanf(bar.Title, "%g", &times)
				if name == "bar-feet" {
					times /= 3
				}
			}
			if got := math.Abs(line.To.Y-line.From.Y) * scale / 1000; math.Abs(got-times*metres) > 1e-9*scale {
				t.Errorf("the bar of %s is %g m long at 1:%g", bar.Title, got, scale)
			}
		}
	}
}

// setupsOn returns the set-ups whose cameras are on a page.
func setupsOn(f *Floor, wedges map[string]draw.Point) (list []Setup) {
	for _, c := range f.Setups {
		if _, ok := wedges[c.ID]; ok {
			list = append(list, c)
		}
	}
	return list
}

// isAllThere fails where a place is on no sheet, a camera is not on one alone, more than
// four are on one, or a tape is told not once.
func isAllThere(t tester, f *Floor, pages []*draw.Page) {
	t.Helper()
	places, cameras, rows := map[string]bool{}, map[string]int{}, 0
	for _, p := range pages {
		for letter := range marksOf(p) {
			places[letter] = true
		}
		wedges := wedgesOf(p)
		for id := range wedges {
			cameras[id]++
		}
		if len(wedges) > mostCameras {
			t.Errorf("%d cameras are on a sheet", len(wedges))
		}
		rows += len(groupsOf(&p.Root, "tape-row"))
	}
	if len(places) != len(f.Places) {
		t.Errorf("%d of %d places are on the sheets", len(places), len(f.Places))
	}
	want := 0
	for _, c := range f.Setups {
		if want += len(c.Tapes); cameras[c.ID] != 1 {
			t.Errorf("%s is on %d sheets", c.ID, cameras[c.ID])
		}
	}
	if rows != want {
		t.Errorf("%d tapes are told, and there are %d", rows, want)
	}
}

func TestFloorsAreClean(t *testing.T) {
	for name, p := range plans.MadeScenes() {
		check(t, name, p, sheet.A4)
		check(t, name+" on letter", p, sheet.Letter)
	}
}

func TestGeneratedFloorsAreClean(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		check(t, "generated", plans.DrawScene(t), rapid.SampledFrom([]sheet.Paper{sheet.A4, sheet.Letter}).Draw(t, "paper"))
	})
}

func TestGoldenFloors(t *testing.T) {
	plans.CheckGolden(t, "floor-ticket-window", Draw(plans.TicketWindow(), 0, sheet.Options{}))
	plans.CheckGolden(t, "floor-mess-table", Draw(plans.MessTable(), 0, sheet.Options{}))
}

// The figures of the table are those of a second model, made without these vectors: the law
// of cosines on the floor, and the heights by Pythagoras.
func TestTapes(t *testing.T) {
	f := Of(plans.TicketWindow(), 0)
	tape := func(setup, who string) Tape {
		for _, c := range f.Setups {
			for _, t := range c.Tapes {
				if c.ID == setup && t.Name == who {
					return t
				}
			}
		}
		t.Fatalf("no tape from %s to %s", setup, who)
		return Tape{}
	}
	for _, tc := range []struct {
		setup, who string
		byFloor    float64
		focus      float64
		out        bool
	}{
		{"12A", "MARRIT", math.Sqrt(0.8*0.8 + 2.2*2.2), 2.32456761, false},
		{"12A", "OSKEL", math.Sqrt(0.4*0.4 + 3.5*3.5 + 0.1*0.1), 3.49956379, false},
		{"12B", "MARRIT", 1.64012195, 1.64012195, false},
		{"12B", "OSKEL", math.Sqrt(0.6*0.6 + 0.1*0.1), 0.36582646, true},
	} {
		got := tape(tc.setup, tc.who)
		if math.Abs(got.ByFloor-tc.byFloor) > 1e-8 || math.Abs(got.Focus-tc.focus) > 1e-6 || got.Out != tc.out {
			t.Errorf("%s to %s: %+v, want %v and %v", tc.setup, tc.who, got, tc.byFloor, tc.focus)
		}
	}
	if got := tape("12A", "MARRIT"); !got.Measured || got.Tape != 2.36 {
		t.Errorf("the tape that was read is %+v", got)
	}
	if got := f.Setups[0].Pose.Pan; math.Abs(got - -13.2514541) > 1e-6 {
		t.Errorf("12A looks at %v degrees", got)
	}
}

// A camera far off stands at the edge, and its distance beside it; the rest keeps its scale.
func TestFarCamera(t *testing.T) {
	g := plans.Stage("The quay", "", 5).Person("ADA", 0, 0, 1.6).Person("BO", 1, 0.5, 1.6)
	g.Setup("3A", 35, 0.5, -2, 1.5, "ADA")
	near := scaleOf(Draw(g.Plan, 0, sheet.Options{})[0])
	g.Setup("3B", 200, 4, -60, 2, "ADA")
	page := Draw(g.Plan, 0, sheet.Options{})[0]
	if got := scaleOf(page); got != near {
		t.Errorf("it is drawn at 1:%g, want 1:%g", got, near)
	}
	if text := plans.TextOf([]*draw.Page{page}); !strings.Contains(text, "60.1 m to ADA") {
		t.Errorf("its distance is not in %q", text)
	}
	check(t, "far", g.Plan, sheet.A4)
}

// The words of a sheet: what stands where, what starts a way, what is out of the picture.
func TestWordsOfASheet(t *testing.T) {
	for name, want := range map[string][]string{
		"ticket-window": {"GATE · eyes 1.6 m", "1.1 m high", "line", "2.36 m* · 7′9″", "53°, out", "* 12A to MARRIT was read; the floor gives 2.34 m.", "zero point: the near corner of the counter", "80 cm right, 2.2 m downstage"},
		"mess-table":    {"10.8°", "7.8°", "pan to PEVIN, 10.8° left", "pan 4.5° left, tilt 3.4° down"},
		"office":        {`on "late"`, "from 5 s · CHAIR · eyes 1.7 m", "People move here"},
		"bridge":        {"dolly 80 cm in", "Moving camera"},
		"knot":          {"boom 35 cm down", "tilt, 5.6° down", "Moving camera"},
	} {
		text := plans.TextOf(Draw(plans.MadeScenes()[name], 0, sheet.Options{}))
		for _, w := range want {
			if !strings.Contains(text, w) {
				t.Errorf("%s: %q is not in %q", name, w, text)
			}
		}
	}
}

// Without colour, no two inks are the only difference between two things: who is out of the
// picture is told by a word, and set-ups by their hatch and their ID.
func TestGreyIsEnough(t *testing.T) {
	for _, p := range Draw(plans.MessTable(), 0, sheet.Options{}) {
		for it := range p.Root.All() {
			if line, ok := it.(draw.Line); ok && line.Stroke.Ink != draw.Black && line.Stroke.Ink != draw.Grey && line.Stroke.Ink != draw.Guide {
				t.Errorf("a line in %v", line.Stroke.Ink)
			}
		}
	}
}

// The card has a tape and a box from every camera to every place and every lone mark; a
// camera that goes elsewhere has them at both ends. What was read stands in its box.
func TestCards(t *testing.T) {
	for name, want := range map[string]int{"ticket-window": 9, "mess-table": 10, "office": 3, "bridge": 4, "knot": 4} {
		p := plans.MadeScenes()[name]
		for _, paper := range []sheet.Paper{sheet.A4, sheet.Letter} {
			pages := Card(p, 0, sheet.Options{Paper: paper})
			plans.CheckPaper(t, name, nil, pages)
			boxes := 0
			for _, page := range pages {
				boxes += len(groupsOf(&page.Root, "reading"))
			}
			if boxes != want {
				t.Errorf("%s has %d boxes, want %d", name, boxes, want)
			}
		}
	}
	text := plans.TextOf(Card(plans.Bridge(), 0, sheet.Options{}))
	for _, want := range []string{"at the end", "2.78 m", "20 cm right, 2.8 m downstage", "14.3 cm right, 2 m downstage"} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is not in %q", want, text)
		}
	}
}
