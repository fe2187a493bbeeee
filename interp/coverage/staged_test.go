package coverage_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"pullscore/interp/coverage"
	"pullscore/interp/plan"
	"pullscore/interp/testing/staged"
)

// table returns what a scene says of each run of words, one a line: who, the words, and
// what each set-up has of them.
func table(sc *coverage.Scene) string {
	var b strings.Builder
	for i := range sc.Coverage {
		r := &sc.Coverage[i]
		fmt.Fprintf(&b, "%.2f %s %s", float64(r.Start), r.Who, r.Text)
		for k := range sc.Setups {
			says := "-"
			for c := range r.Cells {
				if r.Cells[c].Setup == k {
					if says = r.Cells[c].Focus; r.Cells[c].Frame != coverage.In {
						says = r.Cells[c].Frame
					}
				}
			}
			fmt.Fprintf(&b, " | %s", says)
		}
		b.WriteString("\n")
	}
	return b.String()
}

// The two-hander at the ticket window: what the master racks through, and what the singles
// have of the other.
func TestStagedTwoHander(t *testing.T) {
	st := staged.TwoHander()
	list := coverage.Of(st.Plan, false)
	if len(list) != 1 || list[0].Staged != st.Scene {
		t.Fatalf("%d scenes", len(list))
	}
	const want = "0.00 MARRIT Last boat. There and back? | sharp | sharp | out\n" +
		"3.00 OSKEL One way. | sharp | out | sharp\n" +
		"5.40 MARRIT You live on this side. | sharp | sharp | out\n" +
		"7.20 OSKEL I | faint | out | sharp\n" +
		"7.30 OSKEL did. | rack | out | sharp\n" + // MARRIT is sharp still
		"7.70 OSKEL Until | rack | out | sharp\n" +
		"8.20 OSKEL the letter came. | sharp | out | sharp\n"
	if got := table(list[0]); got != want {
		t.Errorf("got\n%swant\n%s", got, want)
	}
	if len(list[0].Missing) > 0 {
		t.Errorf("missing: %+v", list[0].Missing)
	}
}

// A scene made at random: people who walk, cameras that rack and pan, parts of the action.
func random(rng *rand.Rand) *staged.Stage {
	between := func(a, b float64) float64 { return a + (b-a)*rng.Float64() }
	st := staged.New("Random", 12)
	names := []string{"MARRIT", "OSKEL", "YSOLT"}
	for _, n := range names {
		st.Person(n, between(-1.5, 1.5), between(-1, 2), between(1.2, 1.8))
		if rng.IntN(2) == 0 {
			at := between(0, 6)
			st.Walk(n, between(-1.5, 1.5), between(-1, 2), between(1.2, 1.8), at, at+between(1, 5))
		}
	}
	for at := between(0, 1); at < 10; {
		end := at + between(0.5, 2)
		st.Line(names[rng.IntN(3)], "No light has been on that wreck", at, end)
		at = end + between(0, 1.5)
	}
	for i := range 3 {
		x, y, z := between(-2, 2), between(-4, -2.5), between(1, 2)
		from := 0.0
		if rng.IntN(2) == 0 {
			from = between(0, 3)
		}
		s := st.SetUp(fmt.Sprint(i), []float64{25, 35, 75}[i], staged.Towards(x, y, z, 0, 0.5, 1.5), from, between(7, 12))
		if rng.IntN(2) == 0 {
			p := s.Optics.Pose(0)
			s.Optics.Rig.Pans = []plan.Sweep{{Start: 2, End: 4, From: p.Pan, To: p.Pan + between(-20, 20), Smooth: true}}
		}
		for at := between(0, 2); at < float64(s.Duration)-1.5; at += between(1.5, 3) {
			staged.Rack(s, names[rng.IntN(3)], at, at+between(0.4, 1.2))
		}
	}
	return st
}

// A word is never better than any moment of it, and it is as bad as one of them: compared
// with the plan itself at many moments of every word.
func TestCellsAgainstDenseSampling(t *testing.T) {
	rng := rand.New(rand.NewPCG(7, 31))
	compared, held, rests := 0, 0, 0
	for range 12 {
		st := random(rng)
		sc := coverage.Staged(st.Plan, 0, false)
		for _, l := range sc.Lines {
			for i := range l.Words {
				w := &l.Words[i]
				for k, s := range sc.Shots {
					c, ok := w.Cell(k)
					from, to := max(0, float64(w.Start-s.Covers[0])), min(float64(s.Covers[1]-s.Covers[0]), float64(w.End-s.Covers[0]))
					if ok != (to > from+1e-9) {
						t.Fatalf("a word from %v to %v, covered %v: %v", w.Start, w.End, s.Covers, ok)
					}
					if !ok {
						continue
					}
					compared++
					if c.Held {
						held++
					}
					u := s.Subject(l.Who)
					blur, frame := 0.0, plan.InFrame
					for n := range 201 {
						at := from + (to-from)*float64(n)/200
						blur, frame = max(blur, s.BlurAt(u, at)), min(frame, s.FrameAt(u, at))
					}
					// Where nothing moves but in one direction, the ends and the middle say all.
					if float64(c.Blur) > blur+1e-6 {
						t.Errorf("%s, %s: a blur of %v that no moment has: at most %v", s.ID, w.Text, c.Blur, blur)
					}
					worse := frameOf(c)
					if c.Frame == coverage.Blocked { // in the picture, or at its edge
						worse = max(frame, plan.EdgeOfFrame)
					}
					if worse < frame {
						t.Errorf("%s, %s: %s, and no moment is worse than %v", s.ID, w.Text, c.Frame, frame)
					}
					if !stirs(s, u, from, to) {
						rests++
						if math.Abs(float64(c.Blur)-blur) > 1e-6 || worse != frame {
							t.Errorf("%s, %s: blur %v, %s, want %v, %v", s.ID, w.Text, c.Blur, c.Frame, blur, frame)
						}
					}
				}
			}
		}
	}
	if compared < 500 || held < 50 || rests < 100 {
		t.Errorf("compared %d cells, %d held, %d at rest", compared, held, rests)
	}
}

// frameOf returns where a cell has its speaker to the picture.
func frameOf(c *coverage.Cell) plan.Frame {
	switch c.Frame {
	case coverage.In:
		return plan.InFrame
	case coverage.Edge:
		return plan.EdgeOfFrame
	}
	return plan.OutOfFrame
}

// stirs reports whether the focus, the camera or a subject moves between two times.
func stirs(s *plan.Shot, u *plan.Subject, from, to float64) bool {
	for _, p := range s.Pulls {
		if float64(p.Start) < to && float64(p.Land) > from {
			return true
		}
	}
	for _, st := range u.Along.Steps {
		if st.Start < to && st.End > from {
			return true
		}
	}
	return s.Optics.Stirs(from, to)
}

// Two set-ups that cover the two parts of a scene have together what one has that covers
// all of it: the word on the border is in both.
func TestPartsJoinToTheWhole(t *testing.T) {
	rng := rand.New(rand.NewPCG(5, 8))
	for range 10 {
		border := 2 + 6*rng.Float64()
		home := staged.Towards(0.3, -3, 1.5, 0, 0.5, 1.5)
		st := staged.New("Parts", 12)
		st.Person("MARRIT", -0.4, 0, 1.5).Person("OSKEL", 0.4, 1.3, 1.6).Walk("MARRIT", 0.2, 0.8, 1.5, 3, 6)
		for at := 0.3; at < 10; at += 1.7 {
			st.Line([]string{"MARRIT", "OSKEL"}[rng.IntN(2)], "There has been no light", at, at+1.4)
		}
		st.SetUp("all", 50, home, 0, 12)
		st.SetUp("first", 50, home, 0, border)
		st.SetUp("second", 50, home, border, 12)
		for _, s := range st.Shots { // a focus that stays where it is, wherever the shot begins
			s.Optics.Start.Distance = 3
		}
		sc := coverage.Staged(st.Plan, 0, false)
		both := 0
		for _, l := range sc.Lines {
			for i := range l.Words {
				whole, _ := l.Words[i].Cell(0)
				var parts []*coverage.Cell
				for k := 1; k <= 2; k++ {
					if c, ok := l.Words[i].Cell(k); ok {
						parts = append(parts, c)
					}
				}
				if len(parts) == 2 {
					both++
					continue
				}
				if len(parts) != 1 {
					t.Fatalf("%q is in %d parts", l.Words[i].Text, len(parts))
				}
				a, b := *whole, *parts[0]
				if math.Abs(float64(a.Blur-b.Blur)) > 1e-9 || a.Focus != b.Focus || a.Frame != b.Frame || a.Held != b.Held || !slices.Equal(a.Others, b.Others) {
					t.Errorf("border %.3f: %q has %+v in the whole and %+v in its part", border, l.Words[i].Text, a, b)
				}
			}
		}
		if both > 1 {
			t.Errorf("%d words lie on one border", both)
		}
	}
}

// A line that is only heard asks for nobody; a speaker who is no subject is a voice.
func TestOffAndVoices(t *testing.T) {
	st := staged.New("Heard", 6)
	st.Person("MARRIT", 0, 0, 1.5)
	st.Line("PURSER", "All aboard.", 0, 1)
	st.Line("MARRIT", "Coming.", 1, 2).Off = true
	st.Line("MARRIT", "Wait for me.", 5, 6)
	st.SetUp("1", 50, staged.Towards(0, 3, 1.5, 0, 9, 1.5), 0, 4)
	sc := coverage.Staged(st.Plan, 0, false)
	if !sc.Lines[0].Voice || sc.Lines[1].Voice || sc.Lines[0].Asks() || sc.Lines[1].Asks() || !sc.Lines[2].Asks() {
		t.Errorf("lines %+v", sc.Lines)
	}
	if len(sc.Missing) != 1 || sc.Missing[0].Text != "Wait for me." || sc.Missing[0].Start != 5 {
		t.Errorf("missing %+v", sc.Missing)
	}
	if len(sc.Lines[2].Words[0].Cells) > 0 {
		t.Error("a word that nobody covers has a cell")
	}
}

// Who stands in the line of sight at the height of the eyes is in the way, and from high
// up the camera sees over the head.
func TestStagedHeightsCount(t *testing.T) {
	for _, c := range []struct {
		high float64
		want string
	}{{1.5, coverage.Blocked}, {2.4, coverage.In}} {
		st := staged.New("Heads", 4)
		st.Person("MARRIT", 0, 0, 1.5).Person("OSKEL", 0, 1.5, 1.6)
		st.Line("OSKEL", "One way.", 1, 2)
		st.SetUp("1", 35, staged.Towards(0, -2, c.high, 0, 1.5, 1.6), 0, 4)
		sc := coverage.Staged(st.Plan, 0, false)
		if cell := sc.Coverage[0].Cells[0]; cell.Frame != c.want {
			t.Errorf("from %g m: %+v", c.high, cell)
		}
	}
}

// What the cut shows of each word in each set-up.
func TestStagedCuts(t *testing.T) {
	st := staged.TwoHander()
	st.Cut("12B", 0)
	st.Cut("12C", 2.5)
	st.Cut("12A", 8.7)
	sc := coverage.Staged(st.Plan, 0, true)
	for _, c := range []struct {
		line, word, setup int
		want              string
	}{
		{0, 0, 1, plan.Whole}, {0, 0, 2, plan.Removed}, {1, 0, 2, plan.Whole}, {3, 3, 2, plan.Whole}, {3, 4, 0, plan.Part}, {3, 4, 2, plan.Part}, {3, 5, 0, plan.Whole},
	} {
		if cell, _ := sc.Lines[c.line].Words[c.word].Cell(c.setup); cell.InCut != c.want {
			t.Errorf("line %d, word %d, set-up %d: %q, want %q", c.line, c.word, c.setup, cell.InCut, c.want)
		}
	}
	if sc.Cut.Words != 18 {
		t.Errorf("the cut shows %d words: %+v", sc.Cut.Words, sc.Cut)
	}
	if st.Scene.Cuts = nil; coverage.Staged(st.Plan, 0, true).Lines[0].Words[0].Cells[0].InCut != "" {
		t.Error("a scene without cuts shows something")
	}
}

// Shots that have nothing of a scene stay set-ups of their own, joined by their words.
func TestScenesAndOtherShots(t *testing.T) {
	st := staged.TwoHander()
	st.Shots[2].Staging.Action = false
	list := coverage.Of(st.Plan, false)
	if len(list) != 2 || len(list[0].Setups) != 2 || len(list[1].Setups) != 1 || list[1].Staged != nil || list[1].Setups[0].Shot != "12C" {
		t.Fatalf("%d scenes: %+v", len(list), list)
	}
	if list[0].Title != "The ticket window" || list[1].Title != "Made by hand" {
		t.Errorf("titles %q and %q", list[0].Title, list[1].Title)
	}
}
