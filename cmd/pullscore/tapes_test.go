package main

import (
	"bytes"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"pullscore/cmd/internal/console"
	"pullscore/cmd/internal/lists"
	"pullscore/interp"
	"pullscore/interp/plan"
	"pullscore/lang/lines"
	"pullscore/render/brief"
	"pullscore/render/sheet"
)

var (
	saidUnits = lines.Pattern(`(?m)^units .*\n`)
	planLine  = lines.Pattern(`(?m)^plan .*\n`)
	tapeCell  = lines.Pattern(`^−?([0-9.]+ (mm|cm|m)|[0-9]+′([0-9]*[¼½¾]?″)?|[0-9]*[¼½¾]?″|∞)$`)
	cellGap   = lines.Pattern(` {2,}`)
)

// The list and the papers never print two tape marks for one place: of every
// shot of the examples, in both systems, both have the same ones.
func TestListAndPapersHaveTheSameTapes(t *testing.T) {
	paths, err := filepath.Glob(filepath.Join("..", "..", "examples", "*.pull"))
	if err != nil {
		t.Fatal(err)
	}
	told := map[string]int{}
	for _, path := range paths {
		src, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		for _, system := range []string{"metric", "imperial"} {
			text := planLine().ReplaceAllString(saidUnits().ReplaceAllString(string(src), ""), "${0}units "+system+"\n")
			p := interp.Interpret(path, []byte(text), interp.Options{}).Plan
			for _, s := range p.Shots {
				if s.Imperial != (system == "imperial") {
					t.Fatalf("%s %s is not %s", path, s.ID, system)
				}
				list, paper := tapesOfList(t, p, s), tapesOfBrief(t, s)
				if !maps.Equal(list, paper) {
					t.Errorf("%s %s, %s: the list has %v, the brief %v", filepath.Base(path), s.ID, system, slices.Sorted(maps.Keys(list)), slices.Sorted(maps.Keys(paper)))
				}
				told[system] += len(list)
			}
		}
	}
	if told["metric"] < 20 || told["imperial"] < 20 {
		t.Errorf("few tapes: %v", told)
	}
}

// tapesOfList returns the distances in the rows of numbers of a shot's list.
func tapesOfList(t *testing.T, p *plan.Plan, s *plan.Shot) map[string]bool {
	t.Helper()
	var out bytes.Buffer
	alone := *p
	alone.Shots, alone.Defaults = []*plan.Shot{s}, nil
	if err := lists.WriteText(console.Screen{W: &out, Width: 200}, &alone); err != nil {
		t.Fatal(err)
	}
	tapes := map[string]bool{}
	for line := range strings.Lines(out.String()) {
		if cells := cellGap().Split(strings.TrimSpace(line), -1); len(cells) > 3 && strings.HasSuffix(cells[0], " s") {
			for _, c := range cells {
				if tapeCell().MatchString(c) {
					tapes[c] = true
				}
			}
		}
	}
	return tapes
}

// tapesOfBrief returns the distances in the plan's own units in the table of
// pulls of a shot's brief.
func tapesOfBrief(t *testing.T, s *plan.Shot) map[string]bool {
	t.Helper()
	tapes := map[string]bool{}
	for _, passage := range brief.NewShot(s, "", sheet.Options{Paper: sheet.A4}).Sheet {
		for i, c := range passage.Columns {
			if c.Title != "from" && c.Title != "to" {
				continue
			}
			for _, row := range passage.Rows {
				if row[i] != "" {
					tapes[row[i]] = true
				}
			}
		}
	}
	return tapes
}
