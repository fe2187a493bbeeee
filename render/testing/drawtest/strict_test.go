package drawtest

import (
	"strings"
	"testing"

	"pullscore/render/draw"
	"pullscore/render/signs"
)

// has fails unless exactly one fault holds want, or none where want is empty.
func has(t *testing.T, name string, faults []string, want string) {
	t.Helper()
	switch {
	case want == "" && len(faults) > 0:
		t.Errorf("%s: %v", name, faults)
	case want != "" && (len(faults) != 1 || !strings.Contains(faults[0], want)):
		t.Errorf("%s: %v, want one that says %q", name, faults, want)
	}
}

func TestStrict(t *testing.T) {
	body, thin := draw.Font{Size: 8}, draw.Solid(draw.Black, draw.FineWidth)
	text := draw.NewText(5, 10, "words", body, draw.Black)
	end := text.Box().Right()
	for _, tc := range []struct {
		name string
		draw func(root *draw.Group)
		want string
	}{
		{"texts apart in any viewer", func(g *draw.Group) { g.Add(text, draw.NewText(end+0.16*text.Width, 10, "x", body, draw.Black)) }, ""},
		{"texts apart in one viewer", func(g *draw.Group) { g.Add(text, draw.NewText(end+0.1*text.Width, 10, "x", body, draw.Black)) }, "overlap"},
		{"a text at the edge", func(g *draw.Group) { g.Add(draw.NewText(49.9, 10, "edge", body, draw.Black).Aligned(draw.End)) }, ""},
		{"a text that may cross the edge", func(g *draw.Group) { g.Add(draw.NewText(49.9-text.Width, 10, "words", body, draw.Black)) }, "leaves"},
		{"a text beside a limit", func(g *draw.Group) { g.Add(text); g.Group(signs.Limit).Line(end+0.6, 5, end+0.6, 15, thin) }, ""},
		{"a text too near a limit", func(g *draw.Group) { g.Add(text); g.Group(signs.Limit).Line(end+0.4, 5, end+0.4, 15, thin) }, "lies on"},
		{"a number in its disc on a plumb", func(g *draw.Group) { signs.DrawPlumb(g, 20, 5, 25); signs.DrawRack(g, 20, 12, 1) }, ""},
		{"a text on a plumb", func(g *draw.Group) {
			signs.DrawPlumb(g, 20, 5, 25)
			g.Add(draw.NewText(19, 12, "on it", body, draw.Black))
		}, "lies on"},
		{"a leader", func(g *draw.Group) { g.Group(signs.Leader).Line(5, 5, 12, 5, thin) }, ""},
		{"a long leader", func(g *draw.Group) { g.Group(signs.Leader).Line(5, 5, 18, 5, thin) }, "13.0 mm long"},
		{"a leader of two slants", func(g *draw.Group) {
			g.Group(signs.Leader).Add(draw.Path{Runs: [][]draw.Point{{{X: 5, Y: 5}, {X: 7, Y: 6}, {X: 9, Y: 5}}}, Stroke: thin})
		}, "2 oblique"},
		{"a leader through a text", func(g *draw.Group) { g.Add(text); g.Group(signs.Leader).Line(7, 5, 7, 12, thin) }, "crosses"},
		{"leaders that cross", func(g *draw.Group) {
			g.Group(signs.Leader).Line(5, 5, 9, 9, thin)
			g.Group(signs.Leader).Line(5, 9, 9, 5, thin)
		}, "leaders cross"},
	} {
		p := &draw.Page{W: 50, H: 30}
		tc.draw(&p.Root)
		has(t, tc.name, Strict(p), tc.want)
	}
}

func TestGrammar(t *testing.T) {
	page := func(fill func(root *draw.Group)) *draw.Page {
		p := &draw.Page{W: 50, H: 30}
		fill(&p.Root)
		return p
	}
	legend := func(root *draw.Group) *draw.Group { return root.Group(signs.Legend) }
	for _, tc := range []struct {
		name string
		fill func(root *draw.Group)
		want string
	}{
		{"a sign with its legend", func(g *draw.Group) { signs.DrawCue(g, 9, 9, ""); signs.DrawCue(legend(g), 9, 25, "") }, ""},
		{"a sign without a legend", func(g *draw.Group) { signs.DrawCue(g, 9, 9, "") }, "does not tell"},
		{"a legend without a sign", func(g *draw.Group) { signs.DrawCue(legend(g), 9, 25, "") }, "not on the page"},
		{"a dash without a meaning", func(g *draw.Group) {
			g.Line(1, 1, 9, 1, draw.Stroke{Ink: draw.Black, Width: draw.DashWidth, Dash: []float64{2, 2}})
		}, "dash"},
		{"dots without round ends", func(g *draw.Group) {
			s := draw.Unsaid(draw.Black)
			s.Round = false
			g.Line(1, 1, 9, 1, s)
		}, "dash"},
		{"a weight of no pen", func(g *draw.Group) { g.Line(1, 1, 9, 1, draw.Solid(draw.Black, 0.2)) }, "0.2 mm"},
	} {
		has(t, tc.name, Signs(page(tc.fill)), tc.want)
	}
	words := func(s string) *draw.Page {
		return page(func(g *draw.Group) { g.Add(draw.NewText(1, 9, s, draw.Font{Size: 7}, draw.Black)) })
	}
	for s, want := range map[string]string{"12 × CoC": "circles", "soft by 3′": "feet", "sharp to 3′": "", "blur 3 arcmin": "", "5′7″": ""} {
		has(t, s, Units(words(s)), want)
	}
}

func TestOrder(t *testing.T) {
	rows := func(names ...string) []*draw.Page {
		p := &draw.Page{W: 50, H: 30}
		band := p.Root.Group("band")
		for i, name := range names {
			row := band.Group(signs.Row)
			row.Title = name
			row.Add(draw.NewText(1, 5+4*float64(i), name, draw.Font{Size: 8}, draw.Black))
		}
		return []*draw.Page{p}
	}
	far := []string{"DOOR", "NADIA", "LEDGER"}
	has(t, "in order", Order(rows("DOOR", "LEDGER"), far), "")
	has(t, "out of order", Order(rows("NADIA", "DOOR", "LEDGER"), far), "row of DOOR")
	has(t, "a row of nobody", Order(rows("DOOR", "action", "NADIA"), far), "")
}

func TestLinks(t *testing.T) {
	group := func(id, link string) *draw.Page {
		p := &draw.Page{W: 9, H: 9}
		g := p.Root.Group("g")
		g.ID, g.Link = id, link
		return p
	}
	has(t, "links", Links([]*draw.Page{group("a", "b"), group("b", "a")}), "")
	has(t, "a link to nowhere", Links([]*draw.Page{group("a", "c")}), "leads nowhere")
	has(t, "an ID twice", Links([]*draw.Page{group("a", ""), group("a", "")}), "two groups")
}
