// A puller's log of takes: what it changes in a plan.

package interp_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"pullscore/interp"
	"pullscore/interp/hand"
	"pullscore/interp/plan"
	"pullscore/lang"
)

// logOf is a log of a hand of that throughput, made by the landing model.
func logOf(throughput float64, n int) string {
	rng := rand.New(rand.NewPCG(4, 2))
	b := strings.Builder{}
	b.WriteString("travel_deg,error_deg,time_s\n")
	for range n {
		travel, time := 20+90*rng.Float64(), 0.4+rng.Float64()
		spread := math.Hypot(hand.MotorSpread(travel, time, throughput), 0.5)
		fmt.Fprintf(&b, "%.2f,%.3f,%.3f\n", travel, spread*rng.NormFloat64(), time)
	}
	return b.String()
}

// withPuller is a plan of one rack, pulled by a hand that the lines describe.
func withPuller(lines string) string {
	return "plan \"P\"\nrate 24\nwatched on 12 m screen from 18 m\nuse \"kit.pull\"\nsubject NORA at 1.7 m\nsubject LAMP at 2.6 m\n" +
		"puller INES\n" + lines + "shot 1\n  with stop f/4, lens \"75\", camera A\n  start on NORA\n" +
		"  rack to LAMP, on 2 s, over 0.6 s, because \"she looks\"\n"
}

func TestLogChangesTheHand(t *testing.T) {
	read := func(lines string) *interp.Result {
		return interpret("scenes/plan.pull", withPuller(lines), "scenes/kit.pull", kitText,
			"scenes/logs/slow.csv", logOf(2.5, 80), "scenes/logs/fast.csv", logOf(7, 80))
	}
	chance := func(r *interp.Result) float64 { return float64(r.Plan.Shots[0].Pulls[0].Chance) }
	published := read("  limit 900 deg/s\n")
	slow, fast := read("  takes \"logs/slow.csv\"\n"), read("  takes \"logs/fast.csv\"\n")
	if !(chance(slow) < chance(published) && chance(published) < chance(fast)) {
		t.Errorf("chances: slow hand %v, published %v, fast %v", chance(slow), chance(published), chance(fast))
	}
	if s, f := slow.Plan.Shots[0].Pulls[0].Needed, fast.Plan.Shots[0].Pulls[0].Needed; !(s > f) {
		t.Errorf("needed: slow hand %v s, fast %v s", s, f)
	}
	if !slices.Contains(slow.Files, "scenes/logs/slow.csv") {
		t.Errorf("the log is not among %v", slow.Files)
	}
	source := func(r *interp.Result) (text string) {
		for _, d := range r.Plan.Defaults {
			if d.Name == "puller INES" {
				text += d.Value + " (" + d.Why + ")"
			}
		}
		return text
	}
	if text := source(fast); !strings.Contains(text, "bit/s") || !strings.Contains(text, "fitted to 80 takes of fast.csv; 90 % lie within") {
		t.Errorf("the list says of the hand: %q", text)
	}

	// What the section says wins over the log, wherever it stands.
	for _, lines := range []string{"  hand 4.1 bit/s\n  spread 0.5 mm\n  bias 0 deg\n  takes \"logs/fast.csv\"\n", "  takes \"logs/slow.csv\"\n  bias 0 deg\n  spread 0.5 mm\n  hand 4.1 bit/s\n"} {
		said := read(lines)
		if chance(said) != chance(published) || source(said) != "" {
			t.Errorf("a hand that is all said: chance %v, published %v, and the list says %q", chance(said), chance(published), source(said))
		}
	}
	half := read("  hand 4.1 bit/s\n  takes \"logs/fast.csv\"\n")
	if text := source(half); strings.Contains(text, "bit/s") || !strings.Contains(text, "mm at the rim") {
		t.Errorf("of a hand that is half said the list says %q", text)
	}
	missing := read("  takes \"logs/none.csv\"\n")
	if chance(missing) != chance(published) || !slices.Contains(missing.Files, "scenes/logs/none.csv") {
		t.Errorf("without its log: chance %v, published %v, files %v", chance(missing), chance(published), missing.Files)
	}
}

// A log whose rows say where the focus landed in this very plan fits the hand
// that landed there.
func TestLogOfLandings(t *testing.T) {
	first := interpret("plan.pull", withPuller("  limit 900 deg/s\n")).Plan.Shots[0]
	p := first.Pulls[0]
	rng := rand.New(rand.NewPCG(8, 8))
	var b strings.Builder
	b.WriteString("plan,shot,pull,landed,time_s\n")
	for range 60 {
		time := 0.4 + 0.8*rng.Float64()
		past := math.Hypot(hand.MotorSpread(float64(p.HandDeg), time, 6.5), 0.5) * rng.NormFloat64()
		fmt.Fprintf(&b, "P,1,1,%.4f deg,%.3f\n", float64(p.ToDeg)+past, time)
	}
	res := interpret("plan.pull", withPuller("  takes \"landings.csv\"\n"), "landings.csv", b.String())
	if got := res.Plan.Shots[0].Hand.Throughput; math.Abs(got-6.5) > 1 {
		t.Errorf("throughput %v, made with 6.5", got)
	}
	if !slices.ContainsFunc(res.Plan.Defaults, func(d plan.Default) bool { return strings.Contains(d.Why, "60 takes") }) {
		t.Errorf("%+v", res.Plan.Defaults)
	}
}

// A log without rows leaves the hand as it is without one, tries on the page
// change nothing, and neither does the order of rows.
func TestLogThatSaysNothingNew(t *testing.T) {
	head := "travel_deg,error_deg,time_s,note\n"
	rows := strings.Split(strings.TrimSpace(strings.ReplaceAll(logOf(6, 40), "\n", ",\n")), "\n")[1:]
	forth := strings.Join(rows, "\n") + "\n"
	slices.Reverse(rows)
	back := strings.Join(rows, "\n") + "\n"
	tries := strings.Repeat("60,25,0.9,\"page, mouse wheel\"\n", 30)
	handOf := func(log string) hand.Hand {
		return interpret("plan.pull", withPuller("  takes \"log.csv\"\n"), "log.csv", log).Plan.Shots[0].Hand
	}
	if got := handOf(head); got != hand.Default() {
		t.Errorf("a log without rows gives %+v", got)
	}
	if got := handOf(head + tries); got != hand.Default() {
		t.Errorf("a log of tries on the page gives %+v", got)
	}
	fitted := handOf(head + forth)
	if fitted == hand.Default() {
		t.Fatal("the log changes nothing, so that the test tests nothing")
	}
	for name, log := range map[string]string{"with tries": forth + tries, "from its end": back} {
		if got := handOf(head + log); got != fitted {
			t.Errorf("%s: %+v, want %+v", name, got, fitted)
		}
	}
}

// Slips lower a chance and its ceiling by their share, and leave the spread.
func TestSlipsLowerAChance(t *testing.T) {
	log := logOf(6, 40)
	read := func(log string) *interp.Result {
		return interpret("plan.pull", withPuller("  takes \"log.csv\"\n"), "log.csv", log)
	}
	without, with := read(log), read(log+strings.Repeat("60,30,1\n", 3))
	a, b := without.Plan.Shots[0], with.Plan.Shots[0]
	if b.Hand.Slips != 3.0/63 || a.Hand.Slips != 0 || b.Hand.Throughput != a.Hand.Throughput || b.Hand.RimSpread != a.Hand.RimSpread {
		t.Fatalf("%+v with slips, %+v without", b.Hand, a.Hand)
	}
	for _, pair := range [][2]plan.Number{{b.Pulls[0].Chance, a.Pulls[0].Chance}, {b.Pulls[0].Ceiling, a.Pulls[0].Ceiling}} {
		if math.Abs(float64(pair[0]-pair[1]*60/63)) > 1e-9 {
			t.Errorf("%v with slips, %v without", pair[0], pair[1])
		}
	}
	if !slices.ContainsFunc(with.Findings, func(d lang.Diagnostic) bool { return d.Code == "log-slips" && len(d.Related) == 3 }) {
		t.Errorf("%+v", with.Findings)
	}
}
