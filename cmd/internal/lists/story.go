package lists

import (
	"fmt"
	"strings"

	"pullscore/cmd/internal/console"
	"pullscore/interp/plan"
	"pullscore/interp/story"
	"pullscore/interp/units"
)

// WriteStory writes who holds the focus in a film, scene by scene and in all.
func WriteStory(screen console.Screen, f *story.Film) error {
	w := &storyWriter{console.Lines{Screen: screen}}
	title := f.Title
	if title == "" {
		title = "The story of the focus"
	}
	w.Line(w.Screen.Paint(console.Bold, console.Clean(title)))
	w.Line(w.Screen.Paint(console.Dim, fmt.Sprintf("%s, %s, %s", units.Count(len(f.Scenes), "scene"), story.Length(f.Length, figures), units.Count(f.Film.Racks, "rack"))))
	if len(f.Scenes) > 0 {
		w.table(f)
	}
	if len(f.Scenes) > 1 {
		w.film(f)
	}
	w.left(f)
	w.Line("")
	w.Hanging(console.Dim, "", "Own lines: how much of the time of the lines has its speaker sharp, weighted by the chance. A stay is from a landing to the next start. Times are those of the shots.")
	return w.Flush()
}

type storyWriter struct{ console.Lines }

// A storyColumn is a column of figures, with its width.
type storyColumn struct {
	head string
	wide int
	cell func(*story.Scene) string
}

var storyColumns = []storyColumn{
	{"length", 12, func(sc *story.Scene) string { return story.Length(sc.Duration, figures) }},
	{"own lines", 9, func(sc *story.Scene) string { return shareOf(sc.Own) }},
	{"near", 4, func(sc *story.Scene) string { return fmt.Sprint(sc.Near) }},
	{"far", 4, func(sc *story.Scene) string { return fmt.Sprint(sc.Far) }},
	{"stays", 5, func(sc *story.Scene) string { return fmt.Sprint(sc.Count) }},
	{"half under", 10, func(sc *story.Scene) string { return seconds(sc.Median) }},
}

func shareOf(n plan.Number) string {
	if !n.Known() {
		return "-"
	}
	return figures.Share(float64(n), 0)
}

func seconds(n plan.Number) string {
	if !n.Known() {
		return "-"
	}
	return figures.Fixed(float64(n), 1) + " s"
}

// table writes a row for every scene, and below it who holds the focus.
func (w *storyWriter) table(f *story.Film) {
	wide := w.Screen.Width
	for _, c := range storyColumns {
		wide -= between + c.wide
	}
	w.Line("")
	w.Line(w.Screen.Paint(console.Dim, console.Left("scene", wide)+storyRow(func(c storyColumn) string { return c.head })))
	for _, sc := range f.Scenes {
		name := console.Wrap(console.Clean(titleOf(f.Rest(sc))), wide)
		w.Line(w.Screen.Paint(console.Bold, console.Left(name[0], wide)) + storyRow(func(c storyColumn) string { return c.cell(sc) }))
		for _, more := range name[1:] {
			w.Line(w.Screen.Paint(console.Bold, more))
		}
		if held := heldBy(sc.Holders); held != "" {
			w.Hanging(console.Plain, margin, held)
		}
	}
}

func storyRow(text func(storyColumn) string) string {
	row := ""
	for _, c := range storyColumns {
		row += strings.Repeat(" ", between) + console.Right(text(c), c.wide)
	}
	return row
}

// heldBy says who holds the focus.
func heldBy(list []story.Holder) string {
	var parts []string
	for _, h := range list {
		parts = append(parts, h.Name+" "+figures.Share(float64(h.Share), 0))
	}
	if len(parts) == 0 {
		return ""
	}
	return "held by " + strings.Join(parts, ", ")
}

// film writes the figures of all scenes together.
func (w *storyWriter) film(f *story.Film) {
	w.Line("")
	w.Line(w.Screen.Paint(console.Bold, "Whole film"))
	all := &f.Film
	w.Hanging(console.Plain, margin, heldBy(all.People()))
	w.Hanging(console.Plain, margin, "own lines "+shareOf(all.Own))
	w.Hanging(console.Plain, margin, units.Count(all.Count, "stay")+", "+story.HalfUnder(all.Median, figures)+", longest "+seconds(all.Longest)+"; by length in seconds: "+binsText(f))
	if all.Racks > 0 {
		w.Hanging(console.Plain, margin, units.Count(all.Racks, "rack")+", "+story.HalfUnder(all.RackMid, figures)+", longest "+seconds(all.RackMax)+"; "+all.Ways()+"; "+all.Causes(figures))
	}
}

// binsText says how many stays there are of which length.
func binsText(f *story.Film) string {
	var parts []string
	for i, n := range f.Film.Bins {
		if n == 0 {
			continue
		}
		parts = append(parts, fmt.Sprintf("%s: %d", story.Bin(i, figures), n))
	}
	return strings.Join(parts, ", ")
}

// left names the plans that are left out.
func (w *storyWriter) left(f *story.Film) {
	if len(f.LeftOut) == 0 {
		return
	}
	var names []string
	for _, l := range f.LeftOut {
		names = append(names, fmt.Sprintf("%s (%s)", titleOf(l.Title), l.File))
	}
	w.Line("")
	w.Hanging(console.Yellow, "", "Left out, because of errors: "+strings.Join(names, ", ")+".")
}
