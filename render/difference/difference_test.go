package difference

import (
	"bytes"
	"fmt"
	"math"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"pullscore/interp"
	"pullscore/interp/plan"
	"pullscore/render/draw"
	"pullscore/render/pdf"
	"pullscore/render/png"
	"pullscore/render/sheet"
	"pullscore/render/signs"
	"pullscore/render/testing/drawtest"
	"pullscore/render/testing/plans"
)

// difference pairs pulls that go to the same subject, in their order, and says
// when they land: what a drawing is given, without a word on what it means.
func difference(was, now *plan.Shot) Difference {
	d := Difference{Names: [2]string{"monday/plan.pull", "friday/plan.pull"}, Before: was, After: now}
	var old, fresh []*plan.Pull
	if was != nil {
		old = was.Pulls
	}
	if now != nil {
		fresh = now.Pulls
	}
	for _, p := range fresh {
		i := slices.IndexFunc(old, func(o *plan.Pull) bool { return o.Target == p.Target && o.Kind == p.Kind })
		if i < 0 {
			d.Pulls = append(d.Pulls, PullChange{After: p})
			continue
		}
		for _, o := range old[:i] {
			d.Pulls = append(d.Pulls, PullChange{Before: o})
		}
		d.Pulls = append(d.Pulls, PullChange{old[i], p, pullSays(old[i], p)})
		old = old[i+1:]
	}
	for _, o := range old {
		d.Pulls = append(d.Pulls, PullChange{Before: o})
	}
	if was != nil && now != nil && was.Stop != now.Stop {
		d.Notes = append(d.Notes, "stop "+was.Stop+" -> "+now.Stop)
	}
	return d
}

func pullSays(was, now *plan.Pull) string {
	var parts []string
	if n := now.LandFrame - was.LandFrame; n != 0 {
		parts = append(parts, fmt.Sprintf("lands %d frames later", n))
	}
	if by := float64(now.ToDeg - was.ToDeg); math.Abs(by) >= 0.05 {
		parts = append(parts, fmt.Sprintf("mark %.1f° farther, at %.1f°", by, float64(now.ToDeg)))
	}
	if a, b := was.Chance, now.Chance; a.Known() && b.Known() && a != b {
		parts = append(parts, "chance "+sheet.Figures.Chance(float64(a), 0)+" -> "+sheet.Figures.Chance(float64(b), 0))
	}
	return strings.Join(parts, ", ")
}

// editedRacks is threeRacks after an afternoon: other lines, another stop,
// people elsewhere, a subject more, a shot shorter.
func editedRacks() *plan.Shot {
	m := plans.New("14B", "Nadia hears the door", 10.4).
		Put("NADIA", 2.1, 0.04).Put("LEDGER", 0.95, 0.02).Put("DOOR", 4.2, 0.3).Put("LAMP", 1.3, 0.1).Start("NADIA").
		Line("NADIA", "You kept the second ledger.", 0, 2.1).
		Line("OTTO", "I kept *every ledger.", 2.6, 4.2).Cue("knock", 5.2)
	m.Optics.Number, m.Stop = 4, "f/4"
	every := m.Lines[1].Words[2].Start
	m.Rack("LEDGER", `landing on "every"`, "he means this one", every-1.4, every).
		Rack("DOOR", "on knock", "", 5.2, 7).Rack("LAMP", "", "", 7, 7.6).
		Walk("NADIA", 3.4, 8, 10).
		Rack("NADIA", "", "she goes", 7.7, 8.9).Follow("NADIA", 8.9, 10.4)
	m.Pulls[0].Chance = 0.94
	return m.Shot
}

// turnedLater is a shot whose second pan comes later, and whose camera booms besides.
func turnedLater() *plan.Shot {
	m := plans.Maker{Shot: plans.PanAndRack()}
	pan := &m.Optics.Rig.Pans[1]
	pan.Start, pan.End = pan.Start+0.8, pan.End+0.8
	m.Turns[1].Start, m.Turns[1].End = m.Turns[1].Start+0.8, m.Turns[1].End+0.8
	return m.Slide("boom", 0.3, 7, 9).Shot
}

// manyRacks is a shot of sixty racks, every third of them off by so much.
func manyRacks(off float64) *plan.Shot {
	m := plans.New("60", "Nothing but racks", 120).Put("ADA", 1.2, 0.1).Put("BELL", 2.4, 0.1).Start("ADA")
	for i := range 60 {
		t := 1 + 1.9*float64(i)
		if i%3 == 1 {
			t += off
		}
		m.Rack([]string{"BELL", "ADA"}[i%2], "", "", t, t+0.8)
	}
	return m.Shot
}

// differences are those that most tests draw, by name.
func differences() map[string]Difference {
	hostileNames := difference(plans.Hostile(), plans.LongNames())
	hostileNames.Names = [2]string{`</text><script>` + strings.Repeat("\u202eW", 200) + "old", strings.Repeat("deep/", 80) + "new"}
	hostileNames.Notes = []string{strings.Repeat("unbreakable", 200), "\u2066iso\u2069 -> <b>", ""}
	hostileNames.Pulls[0].Text = strings.Repeat("</text>", 90)
	likelier := difference(manyRacks(0), manyRacks(0.1))
	for i := range likelier.Pulls {
		likelier.Pulls[i].Text += strings.Repeat(", chance 86 % -> 94 %", 16) // more than its sheet has room for
	}
	return map[string]Difference{
		"edited": difference(plans.ThreeRacks(), editedRacks()), "undone": difference(editedRacks(), plans.ThreeRacks()),
		"same": difference(plans.ThreeRacks(), plans.ThreeRacks()), "came": difference(nil, plans.WalkAndDolly()), "gone": difference(plans.WalkAndDolly(), nil),
		"sixty": difference(manyRacks(0), manyRacks(0.3)), "likelier": likelier, "ring lost": difference(plans.ThreeRacks(), plans.NoRing()), "ring gained": difference(plans.NoRing(), plans.ThreeRacks()),
		"turned": difference(plans.PanAndRack(), turnedLater()), "turns no more": difference(plans.AllWays(), plans.ThreeRacks()), "turns now": difference(plans.ThreeRacks(), plans.AllWays()),
		"no ring": difference(plans.NoRing(), plans.NoRing()), "feet": difference(plans.OneRack(), plans.InFeet()), "crowds": difference(plans.Crowd(), plans.FastTalk()), "far": difference(plans.ToInfinity(), plans.NearAndFar()),
		"scripts": difference(plans.OtherScripts(), plans.Hostile()), "hostile": hostileNames, "emptied": difference(plans.LongShot(), plans.New("1", "", 4).Shot),
	}
}

func TestDiffsAreClean(t *testing.T) {
	for name, d := range differences() {
		for size, paper := range map[string]sheet.Paper{"A4": sheet.A4, "Letter": sheet.Letter} {
			for i, p := range Draw(d, sheet.Options{Paper: paper}) {
				for _, check := range []func(*draw.Page) []string{strict, drawtest.Signs, drawtest.Units, drawnBefore} {
					for _, fault := range check(p) {
						t.Errorf("%s, %s, page %d: %s", name, size, i+1, fault)
					}
				}
				doc := plans.SVGOf(t, p)
				for _, bad := range []string{"NaN", "Inf", "<script"} {
					if strings.Contains(doc, bad) {
						t.Errorf("%s, page %d holds %s", name, i+1, bad)
					}
				}
			}
		}
	}
}

// strict returns the faults of a page as in a viewer with wide fonts. The bands of the
// score let a plumb line end at a text and go on behind it, and lead to crowded names from
// farther off, here as in a score.
func strict(p *draw.Page) []string {
	return slices.DeleteFunc(drawtest.Strict(p), func(fault string) bool {
		return strings.HasSuffix(fault, `lies on a line of "plumb"`) || strings.HasPrefix(fault, "a leader is ")
	})
}

// drawnBefore returns what of the state before is not drawn as such, a sentence each: its
// lines are thin, solid and grey, and behind those of the state after.
func drawnBefore(p *draw.Page) []string {
	var faults []string
	for _, g := range groupsOf(p, signs.Before) {
		for it := range g.All() {
			var s draw.Stroke
			switch it := it.(type) {
			case draw.Path:
				s = it.Stroke
			case draw.Line:
				s = it.Stroke
			}
			if s.Ink != draw.None && (s.Ink != draw.Grey || s.Width != draw.DashWidth || len(s.Dash) > 0) {
				faults = append(faults, fmt.Sprintf("%v is a line of the state before", s))
			}
		}
	}
	for _, band := range groupsOf(p, "distance") {
		focus := false
		for _, it := range band.Items {
			g, ok := it.(*draw.Group)
			focus = focus || ok && g.Name == signs.Focus
			if ok && g.Name == signs.Before && focus {
				faults = append(faults, "the state before lies over the focus")
			}
		}
	}
	return faults
}

func TestGeneratedDiffsAreClean(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		was, now := plans.Draw(t), plans.Draw(t)
		if rapid.Bool().Draw(t, "related") {
			again := *was
			now = &again
			now.Duration *= plan.Number(rapid.Float64Range(0.2, 2).Draw(t, "longer"))
			now.Pulls = now.Pulls[rapid.IntRange(0, len(now.Pulls)).Draw(t, "cut"):]
		}
		d := Difference{Names: [2]string{rapid.String().Draw(t, "before"), rapid.String().Draw(t, "after")}, Before: was, After: now}
		for i := range max(len(was.Pulls), len(now.Pulls)) {
			var c PullChange
			if i < len(was.Pulls) {
				c.Before = was.Pulls[i]
			}
			if i < len(now.Pulls) {
				c.After = now.Pulls[i]
			}
			if rapid.Bool().Draw(t, "changed") {
				c.Text = strings.Repeat(rapid.StringN(0, 12, -1).Draw(t, "text")+" ", rapid.IntRange(0, 20).Draw(t, "times"))
			}
			d.Pulls = append(d.Pulls, c)
		}
		d.Notes = rapid.SliceOfN(rapid.String(), 0, 30).Draw(t, "notes")
		paper := rapid.SampledFrom([]sheet.Paper{sheet.A4, sheet.Letter}).Draw(t, "paper")
		for i, p := range Draw(d, sheet.Options{Paper: paper}) {
			plans.CheckPage(t, fmt.Sprintf("page %d", i+1), p)
			plans.SVGOf(t, p)
		}
	})
}

// The plan of the ferry stays; its cut moves the lines, and the pulls with them.
func TestGoldenDiffs(t *testing.T) {
	shots := func(cut string) []*plan.Shot {
		res, err := interp.Read(filepath.Join("..", "..", "examples", "ferry", cut, "ferry.pull"), interp.Options{})
		if err != nil {
			t.Fatal(err)
		}
		return res.Plan.Shots
	}
	was, now := shots("cut-1"), shots("cut-2")
	for i, name := range []string{"ferry-light", "ferry-bell"} {
		d := difference(was[i], now[i])
		d.Names = [2]string{"cut-1/ferry.pull", "cut-2/ferry.pull"}
		plans.CheckGolden(t, "diff-"+name, Draw(d, sheet.Options{}))
	}
	turned := difference(plans.PanAndRack(), turnedLater())
	turned.Notes = []string{"pan to DOOR lands 0.8 s later", "boom 30 cm up, new"}
	plans.CheckGolden(t, "diff-turned", Draw(turned, sheet.Options{}))
	plans.CheckGolden(t, "diff-edited", Draw(difference(plans.ThreeRacks(), editedRacks()), sheet.Options{}))
}

// textsOf returns the texts on pages.
func textsOf(pages []*draw.Page) []string {
	var all []string
	for _, p := range pages {
		for it := range p.Root.All() {
			if text, ok := it.(draw.Text); ok {
				all = append(all, text.String)
			}
		}
	}
	return all
}

// groupsOf returns the groups of a name on a page.
func groupsOf(p *draw.Page, name string) []*draw.Group {
	var found []*draw.Group
	for it := range p.Root.All() {
		if g, ok := it.(*draw.Group); ok && g.Name == name {
			found = append(found, g)
		}
	}
	return found
}

// body returns a page without its head and its legend.
func body(p *draw.Page) *draw.Page {
	only := *p
	only.Root.Items = slices.DeleteFunc(slices.Clone(p.Root.Items), func(it draw.Item) bool {
		g, ok := it.(*draw.Group)
		return ok && (g.Name == "head" || g.Name == signs.Legend)
	})
	return &only
}

// paths returns the runs that a group draws.
func paths(g *draw.Group) [][]draw.Point {
	var runs [][]draw.Point
	for it := range g.All() {
		if p, ok := it.(draw.Path); ok {
			runs = append(runs, p.Runs...)
		}
	}
	return runs
}

func TestNothingChangedIsSaid(t *testing.T) {
	for name, s := range plans.Made() {
		pages := Draw(difference(s, s), sheet.Options{})
		if !slices.Contains(textsOf(pages), "Nothing changed for the crew.") || !strings.HasSuffix(pages[0].Desc, ": nothing changed for the crew.") {
			t.Errorf("%s: it is not said that nothing changed", name)
		}
		for _, p := range pages {
			if len(groupsOf(p, "change")) > 0 {
				t.Errorf("%s: a change is drawn", name)
			}
			for _, g := range groupsOf(body(p), signs.Before) {
				if len(g.Items) > 0 {
					t.Errorf("%s: something is drawn as it was", name)
				}
			}
		}
	}
}

// No sheet with a chance on it is without a word on where it comes from.
func TestDiffSaysWhoseChances(t *testing.T) {
	tables := 0
	for name, d := range differences() {
		for i, p := range Draw(d, sheet.Options{}) {
			texts := strings.Join(textsOf([]*draw.Page{p}), "\n")
			if !strings.Contains(texts, "chance ") {
				continue
			}
			if !strings.Contains(texts, "our own") {
				t.Errorf("%s, page %d: chances of nobody", name, i+1)
			}
			if len(p.Spans) == 0 {
				tables++
			}
		}
	}
	if tables == 0 {
		t.Error("no sheet of tables alone was looked at")
	}
}

func TestShotsOfOneStateAreSaid(t *testing.T) {
	for word, d := range map[string]Difference{
		"This shot is new.": difference(nil, plans.ThreeRacks()), "This shot is gone.": difference(plans.ThreeRacks(), nil),
	} {
		pages := Draw(d, sheet.Options{})
		if !slices.Contains(textsOf(pages), word) {
			t.Errorf("%q is not on the page", word)
		}
		if !strings.Contains(pages[0].Desc, strings.ToLower(word[:1])+word[1:]) {
			t.Errorf("the description is %q", pages[0].Desc)
		}
	}
}

// A curve is drawn as another where it is one: a shot that is shorter ends where it does,
// and its landings stand at their times in both states, on whatever page.
func TestDiffStandsInTime(t *testing.T) {
	d := difference(plans.ThreeRacks(), editedRacks())
	landed := map[plan.Number]bool{}
	end := 0.0
	for _, p := range Draw(d, sheet.Options{}) {
		if len(p.Spans) == 0 {
			continue
		}
		span := p.Spans[0]
		x := func(t float64) float64 {
			return span.Left + (t-span.From)/(span.To-span.From)*(span.Right-span.Left)
		}
		if end = span.To; end == 11.9 {
			checkEnds(t, p, x(10.4), x(11.9))
		}
		for it := range groupsOf(p, "landings")[0].All() {
			disc, ok := it.(draw.Disc)
			for _, c := range d.Pulls {
				for _, pull := range c.states() {
					if ok && pull != nil && math.Abs(disc.Centre.X-x(float64(pull.Land))) < 1e-6 {
						landed[pull.Land] = true
					}
				}
			}
		}
	}
	if end != 11.9 {
		t.Errorf("the axis ends at %v s, want 11.9", end)
	}
	for _, c := range d.Pulls {
		for _, pull := range c.states() {
			if pull != nil && (c.Text != "" || c.Before == nil || c.After == nil) && !landed[pull.Land] {
				t.Errorf("no landing at %v s", pull.Land)
			}
		}
	}
}

// checkEnds looks whether the focus ends at now, and what was at was, in millimetres.
func checkEnds(t *testing.T, p *draw.Page, now, was float64) {
	t.Helper()
	for _, run := range paths(groupsOf(p, "focus")[0]) {
		if last := run[len(run)-1].X; last > now+1e-6 {
			t.Errorf("the focus goes on to %v mm, the shot ends at %v", last, now)
		}
	}
	last := 0.0
	for _, g := range groupsOf(p, "before") {
		for _, run := range paths(g) {
			last = max(last, run[len(run)-1].X)
		}
	}
	if math.Abs(last-was) > 1e-6 {
		t.Errorf("what was ends at %v mm, want %v", last, was)
	}
}

// Every change is told in full, on whatever page; so is what each state had.
func TestDiffTellsEverything(t *testing.T) {
	for _, name := range []string{"edited", "undone", "sixty"} {
		d := differences()[name]
		texts := strings.Join(textsOf(Draw(d, sheet.Options{})), "\n")
		for _, c := range d.Pulls {
			if !strings.Contains(texts, strings.ReplaceAll(c.Text, "->", "→")) {
				t.Errorf("%s: %q is not told", name, c.Text)
			}
		}
	}
	texts := textsOf(Draw(difference(plans.ThreeRacks(), editedRacks()), sheet.Options{}))
	for _, want := range []string{"stop f/2.8 → f/4", "1.7 m → 2.1 m", "5.2 m → 4.2 m", "1.3 m, new", "before: NADIA 3.2 m", "NADIA 3.4 m", "ends"} {
		if !slices.Contains(texts, want) {
			t.Errorf("%q is not on the page", want)
		}
	}
}

// Two long paths that differ in their ends are told apart, however little of
// them there is room for.
func TestStatesAreToldApart(t *testing.T) {
	d := difference(plans.ThreeRacks(), editedRacks())
	long := strings.Repeat("somewhere/deep/", 40)
	d.Names = [2]string{long + "one.pull", long + "two.pull"}
	texts := textsOf(Draw(d, sheet.Options{}))
	for _, end := range []string{"/one.pull", "/two.pull"} {
		if !slices.ContainsFunc(texts, func(s string) bool { return strings.HasPrefix(s, "…") && strings.HasSuffix(s, end) }) {
			t.Errorf("no name ends in %s", end)
		}
	}
}

func TestDiffSameBytesOnEveryBackEnd(t *testing.T) {
	draws := func() string {
		var all bytes.Buffer
		for _, name := range []string{"edited", "came", "gone", "hostile"} {
			pages := Draw(differences()[name], sheet.Options{})
			file := pdf.New(pdf.Info{Title: name})
			for _, p := range pages {
				all.WriteString(plans.SVGOf(t, p))
				file.Add(p)
			}
			if err := file.Write(&all); err != nil {
				t.Fatal(err)
			}
			if err := png.Write(&all, pages[0], 40); err != nil {
				t.Fatal(err)
			}
		}
		return all.String()
	}
	if first, second := draws(), draws(); first != second {
		t.Error("the same difference gave other bytes")
	}
}

func TestPhrasesAreBrokenWhole(t *testing.T) {
	text := draw.NewText(0, 0, "lands 6 frames later, mark 3.2° farther, chance 71 % → 94 %", sheet.FontSmall, draw.Black)
	var lines []string
	for _, l := range wrapPhrases(text.String, 58) {
		lines = append(lines, l.String)
	}
	if want := []string{"lands 6 frames later, mark 3.2° farther,", "chance 71 % → 94 %"}; !slices.Equal(lines, want) {
		t.Errorf("broken into %q, want %q", lines, want)
	}
}

// Wrapped after commas or within phrases, no line is too long and nothing is
// lost, as far as the lines go.
func TestWrapPhrases(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := strings.Join(rapid.SliceOfN(rapid.StringOfN(rapid.RuneFrom([]rune("ab Wé,")), 0, 30, -1), 1, 6).Draw(t, "phrases"), ", ")
		width := rapid.Float64Range(8, 90).Draw(t, "width")
		lines := wrapPhrases(text, width)
		whole := ""
		for _, l := range lines {
			if l.Width > width+1e-9 {
				t.Fatalf("%q is %v mm wide, has %v", l.String, l.Width, width)
			}
			whole += l.String
		}
		bare := strings.NewReplacer(" ", "", "\u00a0", "")
		if len(lines) < tellLines && bare.Replace(whole) != bare.Replace(text) {
			t.Fatalf("%q became %q", text, whole)
		}
	})
}
