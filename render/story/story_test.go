package story_test

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"pullscore/interp"
	"pullscore/interp/plan"
	"pullscore/interp/story"
	"pullscore/render/draw"
	"pullscore/render/sheet"
	"pullscore/render/signs"
	"pullscore/render/testing/drawtest"
	"pullscore/render/testing/plans"

	paper "pullscore/render/story"
)

var sizes = []sheet.Paper{sheet.A4, sheet.Letter}

// The film of all real plans is drawn without faults, each scene with all its stays.
func TestRealFilm(t *testing.T) {
	var scenes []*story.Scene
	real := plans.Real(t)
	var names []string
	for name := range real {
		names = append(names, name)
	}
	slices.Sort(names)
	for _, name := range names {
		if p := interp.Interpret(name, real[name], interp.Options{}).Plan; len(p.Shots) > 0 {
			scenes = append(scenes, story.Of(p))
		}
	}
	f := story.Join(scenes, []story.Left{{Title: "The last boat, scene 3", File: "a.pull"}})
	for _, size := range sizes {
		check(t, f, size)
	}
}

// Films of any scenes are drawn without faults.
func TestGeneratedFilms(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var scenes []*story.Scene
		for i := range rapid.IntRange(1, 5).Draw(t, "scenes") {
			p := &plan.Plan{Title: fmt.Sprintf("%s%d%s", rapid.SampledFrom([]string{"", "Film, scene ", "A film with a very long name of its own: "}).Draw(t, "film"), i,
				rapid.SampledFrom([]string{"", ": the pier", ": the wheelhouse of the night ferry as it leaves the pier in the fog"}).Draw(t, "title"))}
			for range rapid.IntRange(1, 4).Draw(t, "shots") {
				p.Shots = append(p.Shots, plans.Draw(t))
			}
			scenes = append(scenes, story.Of(p))
		}
		check(t, story.Join(scenes, nil), rapid.SampledFrom(sizes).Draw(t, "paper"))
	})
}

// A film without scenes has no paper.
func TestNothing(t *testing.T) {
	if pages := paper.Story(story.Join(nil, nil), sheet.Options{}); pages != nil {
		t.Error("a film without scenes is drawn")
	}
}

type tester interface {
	Helper()
	Errorf(string, ...any)
	Fatalf(string, ...any)
}

// check fails for every fault of a film's paper, and where the drawn stays or racks do not
// last as long as those of the film.
func check(t tester, f *story.Film, size sheet.Paper) {
	t.Helper()
	pages := paper.Story(f, sheet.Options{Paper: size})
	plans.CheckPaper(t, "story", nil, pages)
	for _, fault := range drawtest.Links(pages) {
		t.Errorf("%s", fault)
	}
	stays, silent, racks, longest, figures := 0.0, 0.0, 0.0, 0.0, 0
	for _, p := range pages {
		for _, it := range p.Root.Items {
			if g, ok := it.(*draw.Group); ok && g.Name == "scene" {
				stays += lengths(g, signs.Stay)
				silent += lengths(g, signs.Thing)
				racks += lengths(g, "slant")
				for it := range g.All() {
					if sub, ok := it.(*draw.Group); ok && sub.Name == "own-lines" {
						figures++
					}
				}
			}
		}
	}
	scale := 1.0
	want, wantSilent, racked := 0.0, 0.0, 0.0
	speaks := map[string]bool{}
	for _, h := range f.Film.Holders {
		speaks[h.Name] = h.Speaks
	}
	for _, sc := range f.Scenes {
		longest = max(longest, float64(sc.Duration))
		for _, s := range sc.Shots {
			on := map[string]bool{}
			for _, st := range sc.Stations {
				on[st.Name] = true
			}
			for _, stay := range s.Stays {
				if speaks[stay.On] {
					want += stay.Length()
				} else {
					wantSilent += stay.Length()
				}
			}
			for _, r := range s.Racks {
				if on[r.From] && on[r.To] {
					racked += float64(r.Land - r.Start)
				}
			}
		}
	}
	if longest > size.W-145 {
		scale = 0.5
	}
	if math.Abs(silent-wantSilent*scale) > 0.01 {
		t.Errorf("stays on who does not speak are drawn for %.2f mm of %.2f", silent, wantSilent*scale)
	}
	if math.Abs(stays-want*scale) > 0.01 || math.Abs(racks-racked*scale) > 0.01 {
		t.Errorf("stays are drawn for %.2f mm of %.2f, racks for %.2f mm of %.2f", stays, want*scale, racks, racked*scale)
	}
	if figures != len(f.Scenes) {
		t.Errorf("%d scenes have figures, of %d", figures, len(f.Scenes))
	}
}

// lengths returns how far the lines of groups of a name go to the right, in millimetres.
func lengths(g *draw.Group, name string) (sum float64) {
	for it := range g.All() {
		if sub, ok := it.(*draw.Group); ok && sub.Name == name {
			for _, it := range sub.Items {
				switch it := it.(type) {
				case draw.Line:
					sum += it.To.X - it.From.X
				case draw.Rect:
					sum += it.Box.W + it.Stroke.Width
				}
			}
		}
	}
	return sum
}
