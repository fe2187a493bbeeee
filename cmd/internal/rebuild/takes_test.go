package rebuild

import (
	"fmt"
	"math"
	"math/rand/v2"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"pullscore/interp/hand"
	"pullscore/interp/takes"
)

// logOf is a log of takes of a hand of that throughput in bit/s, made by the
// landing model.
func logOf(throughput float64) string {
	rng := rand.New(rand.NewPCG(4, 2))
	b := strings.Builder{}
	b.WriteString("travel_deg,error_deg,time_s\n")
	for range 80 {
		travel, time := 20+90*rng.Float64(), 0.4+rng.Float64()
		spread := math.Hypot(hand.MotorSpread(travel, time, throughput), 0.5)
		fmt.Fprintf(&b, "%.2f,%.3f,%.3f\n", travel, spread*rng.NormFloat64(), time)
	}
	return b.String()
}

// chances is what a save tells of a chance that it changed.
var chances = regexp.MustCompile(`chance ([<>\d. ]+) % -> ([<>\d. ]+) %`)

// A log of takes that comes, changes or gains a row has its plan built again,
// and the chances that it changed are told.
func TestALogOfTakesIsFollowed(t *testing.T) {
	dir := t.TempDir()
	log := filepath.Join(dir, "logs", "ines.csv")
	write(t, filepath.Join(dir, "kit.pull"), kit+"puller INES\n  takes \"logs/ines.csv\"\n")
	write(t, log, logOf(2.5))
	text := strings.Replace(scene("A"), "stop f/4", "stop f/4, puller INES", 1)
	write(t, filepath.Join(dir, "a.pull"), strings.Replace(text, "over 1.2 s", "over 0.6 s", 1))
	g, first := start(t, dir, "a.pull")
	chance := func(p *Plan) float64 { return float64(p.Good.Shots[0].Pulls[0].Chance) }
	slow := chance(first.state.Plans[0])
	if !slices.Contains(first.state.Plans[0].Files, log) {
		t.Fatalf("the log is not among %v", first.state.Plans[0].Files)
	}

	// told takes the next change, which only the log may be the cause of.
	told := func() (before, after string, now float64) {
		t.Helper()
		e := g.until(func(e event) bool { return len(e.changes) > 0 })
		c := e.changes[0]
		if len(c.Causes) != 1 || c.Causes[0] != log || len(c.Drawn) != 1 {
			t.Errorf("causes %v, drawn %v", c.Causes, c.Drawn)
		}
		m := chances.FindStringSubmatch(strings.Join(c.Says, "\n"))
		if m == nil {
			t.Fatalf("no chance is told: %q", c.Says)
		}
		return m[1], m[2], chance(c.Plan)
	}
	g.write("logs/ines.csv", logOf(7))
	before, after, fast := told()
	if !(slow < fast) {
		t.Errorf("a quicker hand lands with %v, a slower one with %v", fast, slow)
	}
	if want := fmt.Sprintf("%.0f", 100*slow); before != want {
		t.Errorf("before: %s %%, want %s %%", before, want)
	}

	// A row as a rehearsal appends it, far beside the mark.
	if err := takes.AppendFile(log, takes.Take{Travel: 60, Error: 25, Time: 0.9}); err != nil {
		t.Fatal(err)
	}
	again, _, worse := told()
	if again != after || !(worse < fast) {
		t.Errorf("from %s %% (%s %% was told) to %v", again, after, worse)
	}
}
