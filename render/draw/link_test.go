package draw

import (
	"testing"

	"pgregory.net/rapid"
)

// Different words have different IDs, in letters that every format can write.
func TestIDs(t *testing.T) {
	words := rapid.SliceOfN(rapid.StringOf(rapid.RuneFrom([]rune("aA1-_ é花"))), 1, 3)
	rapid.Check(t, func(t *rapid.T) {
		a, b := words.Draw(t, "a"), words.Draw(t, "b")
		for i := range a {
			a[i] = Clean(a[i])
		}
		for i := range b {
			b[i] = Clean(b[i])
		}
		same := len(a) == len(b)
		for i := 0; same && i < len(a); i++ {
			same = a[i] == b[i]
		}
		x, y := ID(a...), ID(b...)
		if (x == y) != same {
			t.Fatalf("%q is %q, %q is %q", a, x, b, y)
		}
		for _, r := range x {
			if !(r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' || r >= '0' && r <= '9' || r == '-' || r == '_') {
				t.Fatalf("%q is %q", a, x)
			}
		}
	})
}

func linked(id, link string) *Page {
	p := &Page{W: 10, H: 10}
	p.Root.ID = id + "-page"
	g := p.Root.Group("outer").Group("inner")
	g.ID, g.Link = id, link
	g.Line(1, 1, 2, 2, Solid(Black, GuideWidth))
	return p
}

func TestUnderKeepsLinksTogether(t *testing.T) {
	a, b := linked("a", "b-page"), linked("b", "cover")
	Under("x.", a, b)
	ids := IDs(a, b)
	for id, page := range map[string]int{"x.a": 0, "x.a-page": 0, "x.b": 1, "x.b-page": 1} {
		if at, ok := ids[id]; !ok || at != page {
			t.Errorf("%s is on page %d: %v", id, at, ids)
		}
	}
	link := func(p *Page) string { return p.Root.Items[0].(*Group).Items[0].(*Group).Link }
	if link(a) != "x.b-page" || link(b) != "cover" {
		t.Errorf("links %q and %q", link(a), link(b))
	}
	Unlink(a, b)
	if link(a) != "x.b-page" || link(b) != "" {
		t.Errorf("after unlinking: links %q and %q", link(a), link(b))
	}
}

func TestBounds(t *testing.T) {
	var g Group
	if _, ok := g.Bounds(); ok {
		t.Error("nothing has bounds")
	}
	g.Group("in").Add(Disc{Centre: Point{5, 5}, Radius: 2}, Path{Runs: [][]Point{{{1, 9}, {8, 4}}}})
	if b, _ := g.Bounds(); b != (Box{1, 3, 7, 6}) {
		t.Errorf("bounds %v", b)
	}
}
