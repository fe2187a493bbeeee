// The window of stops, against re-reading the plan, against brute force, and
// against what practitioners say.

package interp_test

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"pullscore/interp"
	"pullscore/interp/plan"
	"pullscore/interp/stops"
	"pullscore/interp/units"
	"pullscore/lang"
	"pullscore/lang/testing/cases"
)

// findStops answers for the first shot of a plan; ok is false where it has
// none.
func findStops(src string, opt stops.Options) (res *interp.Result, a *stops.Answer, ok bool) {
	res = interpret("plan.pull", src)
	if len(res.Plan.Shots) == 0 {
		return res, nil, false
	}
	a, ok = stops.Find(res.Retake(res.Plan.Shots[0]), res.Kit(), opt)
	return res, a, ok
}

// generated returns the n-th generated plan, the same in every run.
var generated = rapid.Custom(genPlan)

// atStop writes a stop into a generated plan.
func atStop(src, stop string) string {
	lines := strings.Split(src, "\n")
	with := index(lines, "  with ")
	lines[with] = clause(lines[with], "stop", "stop "+stop)
	return strings.Join(lines, "\n")
}

// timed writes the time of every rack that does not say it, as the plan comes to
// it: what is tried at other stops keeps it.
func timed(src string, res *interp.Result) string {
	lines := strings.Split(src, "\n")
	for _, p := range res.Plan.Shots[0].Pulls {
		if p.Untimed {
			lines[p.Line-1] = clause(lines[p.Line-1], "over", fmt.Sprintf("over %.6f s", float64(p.Land-p.Start)))
		}
	}
	return strings.Join(lines, "\n")
}

// A verdict is what the pull list prints once the stop is written into the
// plan.
func TestVerdictsAreThoseOfTheList(t *testing.T) {
	compared := 0
	cases.Check(t, manyPlans, func(t *rapid.T) {
		src := genPlan(t)
		before, a, ok := findStops(src, stops.Options{})
		if !ok {
			return
		}
		src = timed(src, before)
		v := a.Tried[rapid.IntRange(0, len(a.Tried)-1).Draw(t, "stop")]
		res := interpret("plan.pull", atStop(src, v.Stop))
		if len(res.Plan.Shots) == 0 {
			t.Fatalf("%s cannot be written into\n%s", v.Stop, src)
		}
		sh := res.Plan.Shots[0]
		for _, r := range v.Racks {
			i := slices.IndexFunc(sh.Pulls, func(p *plan.Pull) bool { return p.Number == r.Pull && p.Kind == "rack" })
			if i < 0 {
				t.Fatalf("rack %d of %s is not in the list of\n%s", r.Pull, v.Stop, src)
			}
			p := sh.Pulls[i]
			compared++
			if !same(p.Chance, r.Probability) || !same(p.LeftBlur, r.LeftBlur) || !same(p.Ceiling, r.Ceiling) || !same(p.ReachedBlur, r.ReachedBlur) {
				t.Fatalf("%s: rack %d has %v, %v, the list %v, %v in\n%s", v.Stop, r.Pull, r.Probability, r.LeftBlur, p.Chance, p.LeftBlur, src)
			}
		}
		told := slices.ContainsFunc(res.Findings, func(d lang.Diagnostic) bool { return d.Code == "too-deep" })
		if told == v.Fits {
			t.Fatalf("%s: fits is %t, told as too deep is %t in\n%s", v.Stop, v.Fits, told, src)
		}
	})
	if compared < 300 {
		t.Errorf("only %d racks were compared", compared)
	}
}

// A rack that does not say its time takes as long at every stop as at the one
// that the plan has, and the answer says how long; `over` written to that length
// changes nothing.
func TestUntimedRacksKeepTheirTime(t *testing.T) {
	text := fmt.Sprintf(tradeKit, 90) + "shot 1\n  with camera large, lens \"modern 85\", stop f/5.6, gear 2\n  start on NEAR\n  rack to FAR, landing on 3 s\n"
	res, a, ok := findStops(text, stops.Options{})
	if !ok {
		t.Fatal("no answer")
	}
	long := res.Plan.Shots[0].Pulls[0].Land - res.Plan.Shots[0].Pulls[0].Start
	retake := res.Retake(res.Plan.Shots[0])
	for _, n := range []float64{1.4, 2.8, 11} {
		take, ok := retake(stops.Change{Stop: n})
		if !ok {
			t.Fatalf("it cannot be taken at f/%v", n)
		}
		if p := take.Shot.Pulls[0]; math.Abs(float64(p.Land-p.Start-long)) > 1e-6 || !p.Untimed {
			t.Errorf("at f/%v it takes %v s, untimed %t; the plan has %v s", n, p.Land-p.Start, p.Untimed, long)
		}
	}
	if take, _ := retake(stops.Change{Over: map[int]float64{1: 2}}); take.Shot.Pulls[0].Start != 1 {
		t.Errorf("told to take 2 s, it starts at %v s", take.Shot.Pulls[0].Start)
	}
	said := strings.Join(a.Says(), "\n")
	if want := fmt.Sprintf("rack 1 over %s s.", units.Decimal(float64(long), 2)); !strings.Contains(said, want) {
		t.Errorf("%q does not say %q", said, want)
	}
	_, b, _ := findStops(timed(text, res), stops.Options{})
	for i, v := range a.Tried {
		if !same(v.Racks[0].Probability, b.Tried[i].Racks[0].Probability) {
			t.Errorf("%s: %v, with its time written %v", v.Stop, v.Racks[0].Probability, b.Tried[i].Racks[0].Probability)
		}
	}
	if said := strings.Join(b.Says(), "\n"); strings.Contains(said, "without `over`") {
		t.Errorf("all racks say their time, and yet: %q", said)
	}
}

func same(a, b plan.Number) bool { return a == b || a.IsZero() && b.IsZero() }

// holdsAt is the definition of a stop that holds, written out on its own.
func holdsAt(t stops.Take, common map[string]bool) bool {
	s := t.Shot
	for _, f := range t.Faults {
		if !common[f] {
			return false
		}
	}
	for _, p := range s.Pulls {
		if p.Kind == "follow" {
			if p.WorstShare.Known() && (p.WorstShare < s.Wanted-1e-9 || p.Chance < s.Wanted-1e-9 || p.Ceiling < s.Wanted-1e-9 || float64(p.Peak) > s.Hand.Limit*(1+1e-9)) {
				return false
			}
			continue
		}
		lands := p.Chance >= s.Wanted-1e-9 && float64(p.Peak) <= s.Hand.Limit*(1+1e-9)
		seen := p.Stays || p.LeftBlur > p.SeenFrom
		sharp := p.ReachedBlur.IsZero() || float64(p.ReachedBlur) <= s.Optics.Criterion*s.Optics.ArcminPerBlur*(1+1e-9)
		if !lands || !seen || !sharp {
			return false
		}
	}
	for _, r := range s.Rests {
		if r.Share < s.Wanted-1e-9 {
			return false
		}
	}
	disc := s.Setting(0).Diffraction(s.Optics.Start.Distance)
	if math.IsInf(disc, 0) {
		disc = s.Setting(0).Diffraction(math.Inf(1))
	}
	for _, p := range s.Pulls {
		if p.DiffractionMM.Known() && !math.IsInf(float64(p.DiffractionMM), 0) {
			disc = max(disc, float64(p.DiffractionMM)/1000)
		}
	}
	if len(s.Pulls)+len(s.Rests) > 0 && disc > s.Optics.Criterion*(1+1e-9) {
		return false
	}
	for _, u := range onFocus(s) {
		if !s.Fits(u.subject, u.at) {
			return false
		}
	}
	for _, t := range s.Optics.Focal.Keys() {
		if s.Optics.Widest(s.Focal(t)) > float64(s.FNumber)*1.03 {
			return false
		}
	}
	e := stops.Expose(s.Optics.Light, float64(s.FNumber))
	return e == nil || e.Enough
}

type focused struct {
	subject *plan.Subject
	at      float64
}

func onFocus(s *plan.Shot) (list []focused) {
	add := func(g plan.Target, t float64) {
		if u := s.Subject(g.Name); u != nil && !g.Soft && g.Names == nil {
			list = append(list, focused{u, t})
		}
	}
	add(s.Optics.Start, 0)
	for _, p := range s.Pulls {
		add(p.Goal, float64(p.Land))
	}
	return list
}

// The windows against brute force: every twelfth of a stop tried by the
// definition, on 500 generated shots. Within a twelfth of an end of a window
// both answers are right.
func TestWindowsAgainstBruteForce(t *testing.T) {
	const twelfth = 1.0 / 12
	windows, shots, blips := 0, 0, 0
	for seed := 0; shots < 500; seed++ {
		src := generated.Example(seed)
		res, a, ok := findStops(src, stops.Options{})
		if !ok {
			continue
		}
		shots++
		list := a.Others
		if a.Window != nil {
			list = append(list, *a.Window)
		}
		windows += len(list)
		retake := res.Retake(res.Plan.Shots[0])
		common := commonFaults(retake, a)
		from, to := float64(a.Tried[0].Number), float64(a.Tried[len(a.Tried)-1].Number)
		for n := from; n <= to; n *= math.Exp2(twelfth / 2) {
			take, ok := retake(stops.Change{Stop: n})
			want := ok && holdsAt(take, common)
			got, near := false, false
			for _, w := range list {
				got = got || n >= float64(w.From)*(1-1e-9) && n <= float64(w.To)*(1+1e-9)
				for _, end := range []plan.Number{w.From, w.To} {
					near = near || math.Abs(2*math.Log2(n/float64(end))) < twelfth
				}
			}
			if got != want && !near && between(a, n) == got {
				blips++ // narrower than a third of a stop: no mark shows it
				continue
			}
			if got != want && !near {
				t.Fatalf("seed %d: f/%.4g holds is %t by brute force, %t by the windows %v of\n%s", seed, n, want, got, list, src)
			}
		}
	}
	if windows < 100 {
		t.Errorf("only %d windows in %d shots", windows, shots)
	}
	if blips > 5 {
		t.Errorf("%d times a stop between two marks fails where both hold", blips)
	}
	t.Logf("%d windows in %d shots, %d blips", windows, shots, blips)
}

// between reports whether both marks next to an f-number hold; false where they
// differ.
func between(a *stops.Answer, n float64) bool {
	holds, found := true, false
	for i := 1; i < len(a.Tried); i++ {
		if v, w := a.Tried[i-1], a.Tried[i]; float64(v.Number) <= n && n <= float64(w.Number) {
			holds, found = v.Holds && w.Holds, true
		}
	}
	return holds && found
}

// commonFaults are the errors that the shot has at every stop tried.
func commonFaults(retake stops.Retake, a *stops.Answer) map[string]bool {
	count := map[string]int{}
	for _, v := range a.Tried {
		take, _ := retake(stops.Change{Stop: float64(v.Number)})
		for _, f := range take.Faults {
			count[f]++
		}
	}
	common := map[string]bool{}
	for f, n := range count {
		common[f] = n == len(a.Tried)
	}
	return common
}

// Every lever that can be written into a generated plan opens, once written,
// the window that it promises.
func TestLeversOpenWhatTheySay(t *testing.T) {
	kinds := []string{"time", "gear", "wheel", "distance", "lens"}
	tried := map[string]int{}
	untried := func(kind string) bool { return tried[kind] == 0 }
	for seed := 0; seed < 200 || seed < 3000 && slices.ContainsFunc(kinds, untried); seed++ {
		src := generated.Example(seed)
		before, a, ok := findStops(src, stops.Options{Levers: true})
		if !ok {
			continue
		}
		src = timed(src, before)
		if a.Window != nil && len(a.Levers) > 0 {
			t.Fatalf("seed %d: a window and levers", seed)
		}
		for _, l := range a.Levers {
			changed, ok := applyLever(src, l)
			if !ok {
				continue
			}
			tried[l.Kind]++
			_, b, ok := findStops(changed, stops.Options{})
			if !ok || b.Window == nil {
				t.Fatalf("seed %d: %q opens nothing in\n%s", seed, l.Text, changed)
			}
			if off := float64(b.Window.From/l.Window.From) - 1; math.Abs(off) > 1e-3 {
				t.Fatalf("seed %d: %q opens a window from f/%.4g, and promises f/%.4g in\n%s", seed, l.Text, b.Window.From, l.Window.From, changed)
			}
		}
	}
	for _, kind := range kinds {
		if untried(kind) {
			t.Errorf("no lever of %s was tried", kind)
		}
	}
	t.Logf("levers tried: %v", tried)
}

// applyLever writes a lever into a generated plan; ok is false for one that
// such a plan has no place for.
func applyLever(src string, l stops.Lever) (string, bool) {
	lines := strings.Split(src, "\n")
	with := index(lines, "  with ")
	switch {
	case l.Kind == "gear" || l.Kind == "wheel":
		lines[with] = clause(lines[with], l.Kind, l.Text)
	case l.Kind == "time":
		res := interpret("plan.pull", src)
		for _, r := range l.Over {
			at := res.Plan.Shots[0].Pulls[r.Pull-1].Line - 1
			lines[at] = clause(lines[at], "over", fmt.Sprintf("over %.1f s", float64(r.Over)))
		}
	case strings.Contains(src, " deg right") || strings.Contains(src, "zoom"+`", stop`):
		return "", false // a slant tape, a zoom
	case l.Kind == "sensor":
		scaleLine(lines, "  sensor", l.Change.SensorBy)
		scaleLine(lines, "  focal", l.Change.FocalBy)
	default:
		if l.Lens != "" {
			lines[with] = clause(lines[with], "lens", fmt.Sprintf("lens %q", l.Lens))
		} else if l.Change.FocalBy > 0 {
			scaleLine(lines, "  focal", l.Change.FocalBy)
		}
		for i := range lines {
			if strings.HasPrefix(lines[i], "subject") || strings.Contains(lines[i], " moves to ") {
				lines[i] = farther(lines[i], float64(l.Back))
			}
		}
	}
	return strings.Join(lines, "\n"), true
}

var firstNumber = regexp.MustCompile(`\d+(\.\d+)?`)

// scaleLine multiplies the first number of the lines that begin with a word.
func scaleLine(lines []string, prefix string, k float64) {
	for i := range lines {
		if strings.HasPrefix(lines[i], prefix) {
			replaceFirst(&lines[i], func(v float64) float64 { return v * k })
		}
	}
}

// farther adds metres to a distance in centimetres.
func farther(line string, by float64) string {
	replaceFirst(&line, func(v float64) float64 { return v + 100*by })
	return line
}

func replaceFirst(line *string, f func(float64) float64) {
	done := false
	*line = firstNumber.ReplaceAllStringFunc(*line, func(s string) string {
		if done {
			return s
		}
		done = true
		v, err := strconv.ParseFloat(s, 64)
		if err != nil {
			panic(err)
		}
		return strconv.FormatFloat(f(v), 'f', 9, 64)
	})
}

// tradeWindow is the window of one rack of the kit of the trade facts.
func tradeWindow(t *testing.T, throw int, with, from, to string) *stops.Window {
	t.Helper()
	text := fmt.Sprintf(tradeKit, throw) + fmt.Sprintf("shot 1\n  with %s\n  start on %s\n  rack to %s, landing on 3 s, over 1.5 s\n", with, from, to)
	_, a, ok := findStops(text, stops.Options{})
	if !ok {
		t.Fatal("no answer")
	}
	return a.Window
}

// Common practice, no source: what practitioners say of whole windows. A
// current stills prime of 85 mm with 70 to 90 degrees of ring has none at f/1.4
// and is not sure at f/2.8; an older one with a long throw holds f/2.8.
func TestWindowsOfTheTrade(t *testing.T) {
	for _, throw := range []int{70, 80, 90} {
		for _, way := range [][2]string{{"NEAR", "FAR"}, {"FAR", "NEAR"}} {
			w := tradeWindow(t, throw, `camera large, lens "modern 85", stop f/2.8`, way[0], way[1])
			if w != nil && w.From < 2 {
				t.Errorf("%d deg, %s to %s: holds from f/%.3g", throw, way[0], way[1], w.From)
			}
			if w != nil {
				t.Logf("%d deg, %s to %s: f/%.3g to f/%.3g", throw, way[0], way[1], w.From, w.To)
			}
			w = tradeWindow(t, throw, `camera large, lens "old 85", stop f/2.8`, way[0], way[1])
			if w == nil || w.From > 2.8 || w.To < 2.8 {
				t.Errorf("an old prime does not hold f/2.8: %+v", w)
			}
		}
	}
}

// Common practice, no source: with a normal lens, from 1.7 to 3 m, the rack
// stops showing between f/5.6 and f/11, and sooner on a smaller sensor framed
// alike.
func TestWhereWindowsEnd(t *testing.T) {
	text := fmt.Sprintf(tradeKit, 270) + "shot 1\n  with camera large, lens \"normal\", stop f/4\n  start on CLOSE\n  rack to BACK, landing on 3 s, over 1.5 s\n"
	res := interpret("trade.pull", text)
	p, ok := stops.Compare(res.Retake(res.Plan.Shots[0]), res.Kit(), "small")
	if !ok || p.There == nil || p.Here.Window == nil || p.There.Window == nil {
		t.Fatalf("no windows: %+v", p)
	}
	here, there := p.Here.Window, p.There.Window
	t.Logf("large: f/%.3g to f/%.3g, small: f/%.3g to f/%.3g with %s", here.From, here.To, there.From, there.To, p.There.With)
	if here.To < 5.6 || here.To > 11 || here.Small.Kind != stops.Seen {
		t.Errorf("on the large sensor it ends at f/%.3g by %s", here.To, here.Small.Kind)
	}
	if there.To >= here.To || there.Small.Kind != stops.Seen {
		t.Errorf("on the small sensor it ends at f/%.3g by %s", there.To, there.Small.Kind)
	}
	if p.There.Computed || p.There.Lens != "normal small" {
		t.Errorf("framed with %s, computed %t; the kit has an 18", p.There.With, p.There.Computed)
	}
}

// Where a rack is not seen on a small sensor at any stop, a larger one of the
// kit shows it, framed alike.
func TestSensorLever(t *testing.T) {
	text := fmt.Sprintf(tradeKit, 90) + "subject MID at 2 m\nland 60 %\nshot 1\n  with camera small, lens \"normal small\", stop f/4\n  start on CLOSE\n  rack to MID, landing on 3 s, over 1.5 s\n"
	_, a, ok := findStops(text, stops.Options{Levers: true})
	if !ok || a.Window != nil {
		t.Fatalf("it is seen at %+v", a.Window)
	}
	i := slices.IndexFunc(a.Levers, func(l stops.Lever) bool { return l.Kind == "sensor" })
	if i < 0 || a.Levers[i].Camera != "large" || a.Levers[i].Lens != "normal" {
		t.Fatalf("levers %+v", a.Levers)
	}
	on := strings.Replace(text, `camera small, lens "normal small"`, `camera large, lens "normal"`, 1)
	if _, b, _ := findStops(on, stops.Options{}); b.Window == nil || !same(b.Window.From, a.Levers[i].Window.From) {
		t.Errorf("written into the plan it has %+v, promised %+v", b.Window, a.Levers[i].Window)
	}
}

// Light at a stop: the figures of the exposure table, on exact stops.
func TestExposures(t *testing.T) {
	light := func(meter, nd, iso, shutter float64) plan.Light {
		return plan.Light{Meter: meter, ND: nd, ISO: iso, Shutter: shutter}
	}
	upTo := func(l plan.Light, iso, shutter float64) plan.Light {
		l.ISOTo, l.ShutterTo = iso, shutter
		return l
	}
	tests := []struct {
		name   string
		light  plan.Light
		number float64
		nd     float64
		iso    float64 // 0: stays
		enough bool
	}{
		{"the meter's own", light(8, 0, 800, 180), 8, 0, 0, true},
		{"three stops open: nd 0.9", light(8, 0, 800, 180), 2.8, 0.9, 0, true},
		{"a filter that is on and will do stays", light(8, 0.9, 800, 180), 2.8, 0.9, 0, true},
		{"a third more: a filter less, and less iso", light(8, 0, 800, 180), 3.2, 0.6, 500, true},
		{"a stop closed: twice the iso", light(4, 0, 800, 180), 5.6, 0, 1600, true},
		{"a stop open: a filter rather than less iso", light(4, 0, 800, 180), 2.8, 0.3, 0, true},
		{"a third open: a little less iso rather than a filter", light(4, 0, 800, 180), 3.5, 0, 640, true},
		{"a stop closed without iso: the shutter is not touched", light(4, 0, 0, 180), 5.6, 0, 0, false},
		{"a shutter that may go to twice as much", upTo(light(4, 0, 0, 180), 0, 360), 5.6, 0, 0, true},
		{"a shutter that may, before an iso that may", upTo(light(4, 0, 800, 90), 1600, 180), 5.6, 0, 0, true},
		{"an iso that goes no farther", upTo(light(4, 0, 800, 180), 1000, 0), 5.6, 0, 1000, false},
		{"an iso that goes as far as asked", upTo(light(4, 0, 800, 180), 1600, 0), 5.6, 0, 1600, true},
		{"an iso that may not be lowered", upTo(light(4, 0, 800, 180), 1600, 0), 3.5, 0.3, 1250, true},
		{"four stops closed: too dark", light(2.8, 0, 800, 180), 11, 0, 3200, false},
		{"no iso, no shutter, one stop closed", light(4, 0, 0, 0), 5.6, 0, 0, false},
		{"seventeen stops open", light(512, 0, 0, 0), 1.4, 3.9, 0, false},
	}
	for _, tt := range tests {
		e := stops.Expose(tt.light, tt.number)
		iso := 0.0
		if e.ISO.Known() {
			iso = float64(e.ISO)
		}
		if math.Abs(float64(e.ND)-tt.nd) > 1e-9 || iso != tt.iso || e.Enough != tt.enough {
			t.Errorf("%s: nd %v, iso %v, enough %t: %+v", tt.name, e.ND, iso, e.Enough, e)
		}
	}
	if stops.Expose(light(math.NaN(), 0, 800, 180), 4) != nil {
		t.Error("there is light without a meter")
	}
}

// A shot that is set to f/4, lands 98 % and needs nothing is left alone: no price is
// asked that nobody must pay.
func TestTheSetStopIsBestWhereItCostsNothing(t *testing.T) {
	const text = plainKit + "  with camera A, lens \"75\", stop %s, meter %s\n  start on NEAR\n  rack to FAR, landing on 3 s, over %s\n"
	_, a, ok := findStops(fmt.Sprintf(text, "f/4", "f/4", "0.56 s"), stops.Options{})
	if !ok || a.Window == nil {
		t.Fatal("no window")
	}
	if p := at(a, 4).Racks[0].Probability; p < 0.97 || p > 0.99 {
		t.Errorf("it lands %.3f of the time; the case is one of 98 %%", p)
	}
	said := a.Says()
	if !slices.Contains(said, "set f/4: holds, costs nothing") || a.Window.Best != "f/4" || a.Window.BestF != 4 {
		t.Errorf("best %s, %q", a.Window.Best, said)
	}
	var roles []stops.Role
	for _, r := range a.Recommended {
		roles = append(roles, r.Role)
	}
	if !slices.Equal(roles, []stops.Role{stops.AsSet, stops.Widest, stops.ForLight}) {
		t.Errorf("told in the order %v", roles)
	}
}

// Where the set stop has its price, the best one is that with the least: stops of iso
// raised, 0.15 for a stop of iso lowered, a tenth for a filter, a twentieth for a stop away from the one set.
func TestTheBestStopCostsTheLeast(t *testing.T) {
	with := func(stop, meter, more string) *stops.Answer {
		text := plainKit + fmt.Sprintf("  with camera A, lens \"75\", stop %s, meter %s%s\n  start on NEAR\n  rack to FAR, landing on 3 s, over 1.5 s\n", stop, meter, more)
		_, a, ok := findStops(text, stops.Options{})
		if !ok || a.Window == nil {
			t.Fatal("no window")
		}
		return a
	}
	for _, c := range []struct{ stop, meter, more, best, set, light string }{
		{"f/4", "f/4", "", "f/4", "set f/4: holds, costs nothing", "light f/4: holds, costs nothing"},
		{"f/8", "f/4", "", "f/4", "set f/8: holds, costs iso 3200 for 800", "light f/4: holds, costs nothing"},
		{"f/4", "f/8", "", "f/4", "set f/4: holds, costs nd 0.6", "light f/8: holds, costs nothing"},
		{"f/4", "f/8", ", nd 1.2", "f/2", "set f/4: holds, costs nd 0.6 for 1.2", "light f/2: holds, costs nothing"},
	} {
		a := with(c.stop, c.meter, c.more)
		said := strings.Join(a.Says(), "\n")
		if a.Window.Best != c.best || !strings.Contains(said, c.set) || !strings.Contains(said, c.light) {
			t.Errorf("%+v: best %s\n%s", c, a.Window.Best, said)
		}
		least := math.Inf(1)
		for _, v := range a.Tried {
			if v.Holds {
				least = min(least, costOf(v, a, 0, 800))
			}
		}
		if c.more == "" && math.Abs(costOf(*a.Window.AtBest, a, 0, 800)-least) > 1e-9 {
			t.Errorf("%+v: %s costs %v, another %v", c, a.Window.Best, costOf(*a.Window.AtBest, a, 0, 800), least)
		}
	}
}

// costOf is what a stop costs, written out on its own.
func costOf(v stops.Verdict, a *stops.Answer, nd, iso float64) float64 {
	c := 0.05 * math.Abs(2*math.Log2(float64(v.Number/a.SetF)))
	if float64(v.Exposure.ND) != nd {
		c += 0.1
	}
	if v.Exposure.ISO.Known() {
		raised := math.Log2(float64(v.Exposure.ISO) / iso)
		c += max(raised, -0.15*raised)
	}
	return c
}

// at returns what was tried at a stop.
func at(a *stops.Answer, number float64) stops.Verdict {
	i := slices.IndexFunc(a.Tried, func(v stops.Verdict) bool { return float64(v.Number) == number })
	return a.Tried[i]
}

// plainKit is a kit with its subjects, and the head of a shot.
const plainKit = `
watched on 12 m screen from 18 m
camera A
  sensor 24.89 x 18.66 mm
  iso 800
  shutter 180 deg
lens "75"
  focal 75 mm
  stops f/1.8 to f/22
  closest 70 cm
  ring 270 deg, diameter 110 mm
subject NEAR at 3 m
subject FAR at 4 m
shot 1
`

// Follows, rests and diffraction end a window and stand in its way like all else.
func TestMomentsEndWindows(t *testing.T) {
	const large = "watched on 12 m screen from 18 m\ncamera A\n  sensor 36 x 24 mm\n  on hand\ncamera small\n  sensor 13.2 x 8.8 mm\n" +
		"lens \"85\"\n  focal 85 mm\n  stops f/1.4 to f/22\n  closest 70 cm\n  ring 180 deg, diameter 110 mm\n" +
		"lens \"18\"\n  focal 18 mm\n  stops f/2 to f/22\n  closest 30 cm\n  ring 180 deg, diameter 80 mm\nsubject ANN at 90 cm\nsubject FAR at 3 m\n"
	for _, c := range []struct {
		name, shot string
		kind       stops.Kind
		wide       bool // it ends the open end, else the one stopped down
		says       string
	}{
		{"a close-up from the hand", "shot 1\n  with camera A, lens \"85\", stop f/8\n  start on ANN\n  ANN: \"Here.\", lasting 6 s\n", stops.Rests, true, "ANN is sharp "},
		{"a walk into a close-up", "shot 1\n  with camera A, lens \"85\", stop f/8\n  start on FAR\n  follow FAR\n  FAR moves to 1.4 m over 2.2 s\n", stops.Follows, true, "follow 1 of FAR "},
		{"a day outside", "shot 1\n  with camera small, lens \"18\", stop f/8\n  start on FAR\n  FAR: \"There.\", lasting 3 s\n", stops.Diffracts, false, "diffraction alone blurs by more than is sharp"},
	} {
		_, a, ok := findStops(large+c.shot, stops.Options{})
		if !ok || a.Window == nil {
			t.Errorf("%s: no window: %q", c.name, a.Says())
			continue
		}
		end := a.Window.Small
		if c.wide {
			end = a.Window.Wide
		}
		if said := strings.Join(a.Says(), "\n"); end.Kind != c.kind || !strings.Contains(said, "end: at "+end.Stop+" "+c.says) {
			t.Errorf("%s: it ends by %s\n%s", c.name, end.Kind, said)
		}
		short := strings.NewReplacer("stops f/1.4 to f/22", "stops f/1.4 to f/2", "stops f/2 to f/22", "stops f/16 to f/22", "stop f/8", "stop f/2")
		if !c.wide {
			short = strings.NewReplacer("stops f/2 to f/22", "stops f/16 to f/22", "stop f/8", "stop f/16")
		}
		_, b, _ := findStops(short.Replace(large+c.shot), stops.Options{})
		if b == nil || b.Window != nil || !slices.ContainsFunc(b.Obstacles, func(o stops.Obstacle) bool { return o.Kind == c.kind }) {
			t.Errorf("%s: with a lens that has no such stop, it has %+v and %+v", c.name, b.Window, b.Obstacles)
		}
	}
}

// Light lost near the lens: the exposure is set half-way between the place that
// loses the most and the one that loses the least, and neither is then off by more
// than a quarter of a stop.
func TestLightLostNear(t *testing.T) {
	light := plan.Light{Meter: 4, Loss: plan.Loss{Least: 0, Most: 0.36, At: "LEDGER"}}
	if e := stops.Expose(light, 4); math.Abs(float64(e.Left)+0.18) > 1e-6 || !e.Enough || e.ND != 0 {
		t.Errorf("as the meter says: %+v", e)
	}
	light.ISO = 800
	if e := stops.Expose(light, 4); e.ISO != 1000 || !e.Enough {
		t.Errorf("with an iso: %+v", e)
	}
	text := func(place string) string {
		return fmt.Sprintf(tradeKit, 90) + "subject LEDGER at " + place + "\nshot 1\n  with camera small, lens \"normal small\", stop f/4, meter f/4\n  start on BACK\n  rack to LEDGER, landing on 3 s, over 1.5 s\n"
	}
	for place, told := range map[string]bool{"21 cm": true, "2 m": false} {
		res := interpret("plan.pull", text(place))
		said, listed := "", false
		for _, d := range res.Findings {
			if d.Code == "light" {
				said = d.Message + "; " + d.Detail
			}
		}
		for _, d := range res.Plan.Defaults {
			listed = listed || d.Name == "light lost near"
		}
		loss := res.Plan.Shots[0].Optics.Light.Loss
		if (said != "") != told || listed != told || told && !strings.Contains(said, "stops are lost at LEDGER, near the lens.") {
			t.Errorf("at %s, of which %+v is lost: %q, listed %t", place, loss, said, listed)
		}
		if p := res.Plan.Shots[0].Pulls[0]; float64(p.NearLoss) != loss.Most {
			t.Errorf("the pull loses %v, the shot %v at most", p.NearLoss, loss.Most)
		}
	}
}

// Where a shot allows no figures at all, the answer says so and nothing
// panics.
func TestStopsOfHostilePlans(t *testing.T) {
	for name, shot := range map[string]string{
		"inside closest":   "start on NEAR\n  rack to 30 cm, landing on 2 s, over 1 s",
		"no time":          "start on NEAR\n  rack to FAR, landing on 2 s, over 1 ms",
		"to itself":        "start on NEAR\n  rack to NEAR, landing on 2 s, over 1 s",
		"from infinity":    "start on inf\n  rack to NEAR, landing on 2 s, over 1 s",
		"between infinity": "start on inf\n  rack to inf, landing on 2 s, over 1 s",
		"nobody":           "start on NOBODY\n  rack to FAR, landing on 2 s",
		"overlapping":      "start on NEAR\n  rack to FAR, on 1 s, over 2 s\n  rack to NEAR, on 2 s, over 2 s",
		"a split":          "start on NEAR\n  rack to CLOSE and BACK, landing on 2 s, over 1 s",
		"a follow":         "start on NEAR\n  follow NEAR\n  NEAR moves to 3 m over 2 s",
		"empty":            "start on NEAR",
	} {
		for _, with := range []string{
			`camera large, lens "modern 85", stop f/2.8`, `camera small, lens "normal small", stop f/8, meter f/0.1`,
			`camera large, lens "old 85", stop f/2, gear 20, wheel 1 cm, meter f/500`,
		} {
			text := fmt.Sprintf(tradeKit, 90) + fmt.Sprintf("shot 1\n  with %s\n  %s\n", with, shot)
			_, a, ok := findStops(text, stops.Options{Curve: true, Levers: true})
			if !ok {
				continue
			}
			if len(a.Says()) == 0 || (a.Window == nil) == (a.Obstacles == nil) {
				t.Errorf("%s with %s: %q, window %v, obstacles %v", name, with, a.Says(), a.Window, a.Obstacles)
			}
		}
	}
}

// What is said of a shot through another lens is what the plan says once that lens, and
// where the camera goes, is written into it.
func TestLensesAreWhatThePlanSays(t *testing.T) {
	text := func(lens string, back float64, zoom string) string {
		var places strings.Builder
		for who, d := range map[string]float64{"NEAR": 1.5, "FAR": 4} {
			fmt.Fprintf(&places, "subject %s2 at %.9f m\n", who, d+back)
		}
		return fmt.Sprintf(tradeKit, 90) + "lens \"zoom\"\n  focal 24 mm to 70 mm\n  stops f/4 to f/22\n  closest 40 cm\n  ring 120 deg, diameter 80 mm\n" + places.String() +
			fmt.Sprintf("shot 1\n  with camera large, lens %q, stop f/5.6%s\n  start on NEAR2\n  rack to FAR2, landing on 3 s, over 1.5 s\n", lens, zoom)
	}
	res := interpret("plan.pull", text("old 85", 0, ""))
	l, ok := stops.Through(res.Retake(res.Plan.Shots[0]), res.Kit())
	if !ok || len(l.Views) == 0 || !l.Views[0].Own || l.Views[0].Lens != "old 85" {
		t.Fatalf("it cannot be compared: %+v", l)
	}
	moved := 0
	for _, v := range l.Views {
		zoom := ""
		if v.Lens == "zoom" {
			zoom = ", focal 70 mm"
		}
		back := 0.0
		if v.Moved {
			back = float64(v.Back)
			moved++
		}
		written := interpret("plan.pull", text(v.Lens, back, zoom))
		a, ok := stops.Find(written.Retake(written.Plan.Shots[0]), written.Kit(), stops.Options{})
		if !ok || !v.Taken {
			t.Errorf("%s, %v m back: taken is %t, written %t", v.Lens, back, v.Taken, ok)
			continue
		}
		if (v.Window == nil) != (a.Window == nil) || v.Window != nil && (math.Abs(float64(v.Window.From/a.Window.From)-1) > 1e-3 || v.Window.Best != a.Window.Best) {
			t.Errorf("%s, %v m back: %+v, written %+v", v.Lens, back, v.Window, a.Window)
		}
		p := written.Plan.Shots[0].Pulls[0]
		if turn := math.Abs(float64(p.ToDeg - p.FromDeg)); math.Abs(float64(v.RingDeg)-turn) > 1e-6 || !(v.RingShare > 0 && v.RingShare <= 1) {
			t.Errorf("%s: the ring turns %v deg, the plan says %v", v.Lens, v.RingDeg, turn)
		}
		if v.Moved && math.Abs(float64(v.Frame/l.Views[0].Frame)-1) > 0.1 {
			t.Errorf("%s, moved: the frame is %v m wide, it was %v", v.Lens, v.Frame, l.Views[0].Frame)
		}
	}
	if moved != 3 {
		t.Errorf("%d lenses were moved, want the normal one, the small one and the zoom", moved)
	}
}

func BenchmarkStops(b *testing.B) {
	for _, levers := range []bool{false, true} {
		b.Run(fmt.Sprintf("levers=%t", levers), func(b *testing.B) {
			text := fmt.Sprintf(tradeKit, 90) + "shot 1\n  with camera large, lens \"modern 85\", stop f/2.8\n  start on NEAR\n  rack to FAR, landing on 3 s, over 0.2 s\n"
			res := interpret("trade.pull", text)
			for b.Loop() {
				stops.Find(res.Retake(res.Plan.Shots[0]), res.Kit(), stops.Options{Levers: levers})
			}
		})
	}
}

// Why landing is not judged is told as it is: a ring of which nothing is known is one that
// may yet be measured.
func TestWhyLandingIsNotJudged(t *testing.T) {
	for line, want := range map[string]string{
		"":               "Nothing says how far the ring of the lens turns: ",
		"  ring by wire": "The lens has no ring that is pulled by angle: ",
		"  ring 300 deg": "",
	} {
		res := interpret("plan.pull", "plan \"Ring\"\nsubject ANNA at 2 m\nsubject KEY at 1 m\ncamera A\n  sensor 24.89 x 14 mm\n  on tripod\n"+
			"lens \"50\"\n  focal 50 mm\n  stops f/2 to f/22\n  closest 45 cm\n"+line+"\n"+
			"shot 1\n  with camera A, lens \"50\", stop f/4\n  start on ANNA\n  pause 2 s\n  rack to KEY, over 1 s\n")
		a, ok := stops.Find(res.Retake(res.Plan.Shots[0]), res.Kit(), stops.Options{})
		if !ok {
			t.Fatalf("%q: no answer", line)
		}
		told := strings.Join(a.Says(), "\n")
		if want == "" && strings.Contains(told, "the ring") || !strings.Contains(told, want) {
			t.Errorf("%q: told %q, want %q", line, told, want)
		}
	}
}

// On a ring of which nothing is known a stop fails only where the best ring lands too
// seldom, holds only where every ring lands, and is left open between.
func TestStopsOnAnUnknownRing(t *testing.T) {
	const text = `rate 24
camera A
  sensor 24 x 18 mm
lens "75"
  focal 75 mm
  stops f/2 to f/22
  closest 75 cm
subject NEAR at 1.1 m
subject FAR at 1.7 m
shot 1
  with camera A, lens "75", stop f/2.8
  start on FAR
  rack to NEAR, over 0.9 s, on 1 s
  lasts 4 s
`
	_, a, ok := findStops(text, stops.Options{})
	if !ok || !a.RingUnknown || a.Landing {
		t.Fatalf("an answer %t, ring unknown %t, landing judged %t", ok, a.RingUnknown, a.Landing)
	}
	fails, open, holds := 0, 0, 0
	for _, v := range a.Tried {
		band := v.Racks[0].Band
		sure, may := band[0] >= a.Wanted, band[1] >= a.Wanted
		if v.Holds != sure || v.Unsure != (may && !sure) || v.Racks[0].Lands != sure || v.Racks[0].Probability.Known() {
			t.Errorf("%s: %v, holds %t, not known %t, lands %t", v.Stop, band, v.Holds, v.Unsure, v.Racks[0].Lands)
		}
		switch {
		case sure:
			holds++
		case may:
			open++
		default:
			fails++
		}
		list := interpret("plan.pull", atStop(text, v.Stop))
		if told := slices.ContainsFunc(list.Findings, func(d lang.Diagnostic) bool { return d.Code == "hard-to-land" || d.Code == "never-sure" }); told == may {
			t.Errorf("%s: may land %t, and the list warns %t", v.Stop, may, told)
		}
	}
	if fails == 0 || open == 0 || holds == 0 {
		t.Errorf("%d fail, %d are open, %d hold: the test needs all three", fails, open, holds)
	}
	said := strings.Join(a.Says(), "\n")
	for _, want := range []string{"Does not fail from f/2.8 to f/22", "set f/2.8: ring not known", "at best, however far the ring turns"} {
		if !strings.Contains(said, want) {
			t.Errorf("%q does not say %q", said, want)
		}
	}
}
