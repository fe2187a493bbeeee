package coverage_test

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"pullscore/interp"
	"pullscore/interp/coverage"
	"pullscore/interp/plan"
)

// examples returns the plans of the examples that have shots.
func examples(t *testing.T) (list []*plan.Plan) {
	t.Helper()
	paths, err := filepath.Glob("../../examples/*.pull")
	if err != nil {
		t.Fatal(err)
	}
	for _, path := range paths {
		src, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		if p := interp.Interpret(path, src, interp.Options{}).Plan; len(p.Shots) > 0 {
			list = append(list, p)
		}
	}
	if len(list) < 8 {
		t.Fatalf("only %d examples", len(list))
	}
	return list
}

const wheelhouse = `plan "The wheelhouse"
rate 24
camera A
  sensor 24.89 x 18.66 mm
  on tripod
lens "75"
  focal 75 mm
  stops f/1.8 to f/21
  closest 75 cm
  ring 310 deg, diameter 110 mm
with camera A, lens "75", stop f/4
subject PEVIN at 1.6 m, deep 4 cm
subject CHART at 1.2 m, 15 cm left
subject HALDIS at 2.9 m, 2 m right
voice PURSER

shot 27A
  start on PEVIN
  PEVIN: "The tide was slack. I saw a light.", lasting 3 s
  HALDIS: "There has been no light on that wreck for nine years.", lasting 4 s
  rack to CHART, landing on "that", over 1.2 s

shot 27B
  start on HALDIS
  HALDIS: "that wreck for nine years.", lasting 2 s
  PURSER: "All aboard.", lasting 1 s
  PEVIN: "Then who rings?", lasting 1 s
  PEVIN: "Twice.", lasting 1 s

shot 27C
  start on PEVIN
  PEVIN: "Then who rings?", lasting 1 s
  PEVIN: "Twice. It rang twice, Captain.", lasting 3 s

shot 27D "Insert"
  start on CHART
  hold 2 s
`

func read(t *testing.T, text string) *coverage.Scene {
	t.Helper()
	res := interp.Interpret("test.pull", []byte(text), interp.Options{})
	return coverage.Of(res.Plan, false)[0]
}

// What the set-ups of a scene have, word by word: who is sharp, who is out of the
// picture, where a rack is on its way, and what nobody holds.
func TestScene(t *testing.T) {
	sc := read(t, wheelhouse)
	if len(sc.Setups) != 3 || sc.Words != 8+11+2+3+5 {
		t.Fatalf("%d set-ups, %d words", len(sc.Setups), sc.Words)
	}
	has := func(line, word int, shot string) string {
		for i := range sc.Lines[line-1].Words[word-1].Cells {
			if c := &sc.Lines[line-1].Words[word-1].Cells[i]; c.Shot == shot {
				text := strings.TrimSpace(c.Focus + " " + c.Frame)
				if c.Held {
					text += " held"
				}
				return text
			}
		}
		return "-"
	}
	for _, c := range []struct {
		line, word int
		shot, want string
	}{
		{1, 1, "27A", "sharp held"}, {1, 8, "27A", "sharp held"}, {1, 1, "27B", "-"}, {1, 1, "27C", "-"},
		{2, 1, "27A", "soft out"}, {2, 6, "27A", "rack out"}, {2, 7, "27A", "soft out"}, {2, 7, "27B", "sharp out"},
		{2, 6, "27B", "-"}, {3, 1, "27B", ""}, {4, 1, "27B", "soft"}, {4, 1, "27C", "sharp held"},
		{5, 1, "27B", "soft"}, {5, 1, "27C", "sharp held"}, {5, 2, "27B", "-"}, {5, 5, "27C", "sharp held"},
	} {
		if got := has(c.line, c.word, c.shot); got != c.want {
			t.Errorf("line %d word %d in %s: %q, want %q", c.line, c.word, c.shot, got, c.want)
		}
	}
	if lands := sc.Lines[1].Words[6].Cells[0].Lands; !slices.Equal(lands, []int{1}) {
		t.Errorf("on \"that\" lands %v", lands)
	}
	if len(sc.Missing) != 1 || sc.Missing[0].Who != "HALDIS" || sc.Missing[0].First != 1 || sc.Missing[0].Last != 11 {
		t.Errorf("missing %+v", sc.Missing)
	}
	if len(sc.Single) != 2 || sc.Single[1].Text != "Twice." || sc.Single[1].Shot != "27C" {
		t.Errorf("single %+v", sc.Single)
	}
	if want := []coverage.Own{{Who: "PEVIN", Words: 16, Held: 16}, {Who: "HALDIS", Words: 11}}; !slices.Equal(sc.Speakers, want) {
		t.Errorf("speakers %+v", sc.Speakers)
	}
}

// A cell says what a close look at the shot says: who is sharp in it is sharp at every
// moment of the word, and who is not is soft at one of them.
func TestCellsAreTrue(t *testing.T) {
	cells := 0
	for _, p := range examples(t) {
		sc := coverage.Of(p, false)[0]
		for _, l := range sc.Lines {
			for _, w := range l.Words {
				for _, c := range w.Cells {
					cells++
					checkCell(t, sc.Shots[c.Setup], l.Who, &c)
				}
			}
		}
	}
	if cells < 100 {
		t.Errorf("only %d cells", cells)
	}
}

func checkCell(t *testing.T, s *plan.Shot, who string, c *coverage.Cell) {
	from, to := max(0, float64(c.Start)), min(float64(c.End), float64(s.Duration))
	u := s.Subject(who)
	if u == nil {
		if c.Focus != coverage.Voice || c.Held {
			t.Errorf("%s has a voice that is %s", s.ID, c.Focus)
		}
		return
	}
	const steps = 200
	soft, longest := 0, 0
	racking := false
	for i := range steps + 1 {
		at := from + (to-from)*float64(i)/steps
		if soft++; s.SharpAt(u, at) {
			soft = 0
		}
		longest = max(longest, soft)
		for _, p := range s.Pulls {
			racking = racking || p.Kind == "rack" && at > float64(p.Start) && at < float64(p.Land)
		}
	}
	// Between the moments of a look a subject may be soft for a blink.
	if c.Focus == coverage.Sharp && longest > steps/4 {
		t.Errorf("%s: %s is sharp from %v to %v, and soft in %d of %d looks", s.ID, who, c.Start, c.End, longest, steps)
	}
	if c.Focus != coverage.Sharp && longest == 0 {
		t.Errorf("%s: %s is %s from %v to %v, and always sharp", s.ID, who, c.Focus, c.Start, c.End)
	}
	if (c.Focus == coverage.Rack) != (c.Focus != coverage.Sharp && racking) {
		t.Errorf("%s: %s is %s from %v to %v; a rack is on its way: %v", s.ID, who, c.Focus, c.Start, c.End, racking)
	}
	if c.Chance.Known() && (c.Focus != coverage.Sharp || c.Chance < 0 || c.Chance > 1) {
		t.Errorf("%s: %s, a chance of %v", s.ID, c.Focus, c.Chance)
	}
}

// The words of a scene are those of the plan: of each shot as many as it has.
func TestSumOfWords(t *testing.T) {
	for _, p := range examples(t) {
		sc := coverage.Of(p, false)[0]
		words := 0
		for i := range sc.Coverage {
			words += sc.Coverage[i].Count
		}
		if words != sc.Words {
			t.Errorf("%s: the runs have %d words, the scene %d", p.Title, words, sc.Words)
		}
		for i, s := range sc.Shots {
			said := 0
			for _, l := range s.Lines {
				for _, w := range l.Words {
					if w.Start < float64(s.Duration) && w.End > 0 {
						said++
					}
				}
			}
			if sc.Setups[i].Words != said {
				t.Errorf("%s has %d words, of %d", s.ID, sc.Setups[i].Words, said)
			}
		}
	}
}

// What is missing, what one set-up holds and what several hold are all words together.
func TestMissingAndHeld(t *testing.T) {
	for _, p := range examples(t) {
		sc := coverage.Of(p, false)[0]
		missing, own, held := 0, 0, 0
		for _, g := range sc.Missing {
			missing += g.Last - g.First + 1
		}
		for _, o := range sc.Speakers {
			own, held = own+o.Words, held+o.Held
		}
		if own-held != missing {
			t.Errorf("%s: %d of %d words are held, and %d are missing", p.Title, held, own, missing)
		}
	}
}

// A plan without lines, one without shots, and one of many shots have an answer.
func TestOddPlans(t *testing.T) {
	if sc := read(t, ""); len(sc.Lines) != 0 || sc.Coverage == nil || sc.Missing == nil {
		t.Errorf("an empty plan: %+v", sc)
	}
	head, _, _ := strings.Cut(wheelhouse, "shot 27A")
	if sc := read(t, head+"shot 1\n  start on PEVIN\n  hold 2 s\n"); len(sc.Setups) != 0 || len(sc.Lines) != 0 {
		t.Errorf("a plan without lines: %+v", sc)
	}
	many := head
	for i := range 400 {
		many += "shot " + string(rune('A'+i%26)) + strings.Repeat("x", i/26) + "\n  start on PEVIN\n  PEVIN: \"Twice. It rang twice, Captain.\"\n"
	}
	sc := read(t, many)
	if len(sc.Lines) != 1 || len(sc.Lines[0].Words[0].Cells) != 400 {
		t.Errorf("400 set-ups of one line: %d lines", len(sc.Lines))
	}
	broken := strings.Replace(wheelhouse, `shot 27B
  start on HALDIS`, `shot 27B
  start on HALDISS`, 1)
	if sc := read(t, broken); len(sc.Setups) < 2 || len(sc.Lines) < 3 {
		t.Errorf("a shot in error leaves %d set-ups and %d lines", len(sc.Setups), len(sc.Lines))
	}
}

// A speaker behind somebody else is blocked, and nobody holds the words, though the focus is
// on the speaker.
func TestBlocked(t *testing.T) {
	head, _, _ := strings.Cut(wheelhouse, "subject PEVIN")
	sc := read(t, head+`subject PEVIN at 1.5 m, 10 cm right
subject HALDIS at 3 m, 0.2 m right
shot 1
  start on HALDIS
  HALDIS: "Nine years.", lasting 2 s
  PEVIN: "Who rings?", lasting 2 s
  PEVIN moves to 1.5 m, 60 cm left over 1 s, at 4 s
  HALDIS: "Nobody.", at 6 s
`)
	var got []string
	for _, l := range sc.Lines {
		for _, w := range l.Words {
			got = append(got, w.Cells[0].Frame+" "+w.Cells[0].By)
			if w.Cells[0].Held == (w.Cells[0].By != "") && l.Who == "HALDIS" {
				t.Errorf("%s: held %v, blocked by %q", w.Text, w.Cells[0].Held, w.Cells[0].By)
			}
		}
	}
	if want := []string{"blocked PEVIN", "blocked PEVIN", "in ", "in ", "in "}; !slices.Equal(got, want) {
		t.Errorf("%q, want %q", got, want)
	}
	if len(sc.Missing) != 2 || sc.Missing[0].Text != "Nine years." {
		t.Errorf("missing %+v", sc.Missing)
	}
}

// The cut shows a word where a piece of the shot does, unless the cut does not have the line;
// without being asked, nothing is said of it.
func TestCut(t *testing.T) {
	p := interp.Interpret("test.pull", []byte(wheelhouse), interp.Options{}).Plan
	p.Shots[0].Pieces = []plan.Piece{{From: 0, To: 1.5, Speed: 1}, {From: 5, To: 6, Speed: 1}}
	p.Shots[1].Pieces = []plan.Piece{{From: 0, To: 10, Speed: 1}}
	p.Shots[1].Lines[0].InCut = &plan.InCut{State: plan.Removed}
	sc := coverage.Of(p, true)[0]
	for _, l := range sc.Lines {
		for _, w := range l.Words {
			for _, c := range w.Cells {
				start, end := float64(c.Start), float64(c.End)
				seen := max(0, min(end, 1.5)-start) + max(0, min(end, 6)-max(start, 5))
				want := plan.Part
				switch {
				case c.Setup == 1 && l.Number == 2:
					want = plan.Removed
				case c.Setup == 1, c.Setup == 0 && seen > end-start-1e-6:
					want = plan.Whole
				case c.Setup == 0 && seen < 0.5/24:
					want = plan.Removed
				case c.Setup == 2: // in no cut
					want = ""
				}
				if c.InCut != want {
					t.Errorf("%s in %s from %g to %g: %q, want %q", w.Text, c.Shot, start, end, c.InCut, want)
				}
			}
		}
	}
	words := 0
	for _, g := range sc.Cut.NotHeld {
		words += g.Last - g.First + 1
	}
	if sc.Cut.Words != sc.Cut.Held+words || sc.Cut.Held == 0 || words == 0 {
		t.Errorf("the cut: %+v", sc.Cut)
	}
	if sc := coverage.Of(p, false)[0]; sc.Cut != nil || sc.Lines[0].Words[0].Cells[0].InCut != "" {
		t.Error("what the cut shows is told without being asked")
	}
}
