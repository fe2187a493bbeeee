// The grammar of all papers: signs, pens, inks, units, the order of subjects, links.

package drawtest

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"sort"
	"strings"

	"pullscore/render/draw"
	"pullscore/render/signs"
)

// Signs returns what breaks the grammar of signs on a page, a sentence each: a legend
// that is not the signs of the page, dashes without a meaning, weights and inks that no
// paper uses.
func Signs(p *draw.Page) []string {
	var faults []string
	say := func(format string, args ...any) { faults = append(faults, fmt.Sprintf(format, args...)) }
	on, told := signNames(signs.On(&p.Root)), signNames(signs.InLegend(&p.Root))
	for _, name := range on {
		if !slices.Contains(told, name) {
			say("the legend does not tell of the sign %q", name)
		}
	}
	for _, name := range told {
		if !slices.Contains(on, name) {
			say("the legend tells of the sign %q, which is not on the page", name)
		}
	}
	seen := map[string]bool{}
	for it := range p.Root.All() {
		s, ok := strokeOf(it)
		if !ok || s.Ink == draw.None {
			continue
		}
		if !s.MeansSomething() {
			seen[fmt.Sprintf("the dash %v has no meaning", s.Dash)] = true
		}
		if !slices.ContainsFunc(draw.Widths(), func(w float64) bool { return math.Abs(w-s.Width) < 1e-9 }) {
			seen[fmt.Sprintf("no pen is %v mm wide", s.Width)] = true
		}
	}
	for fault := range seen {
		faults = append(faults, fault)
	}
	sort.Strings(faults)
	return faults
}

func signNames(list []signs.Sign) []string {
	names := make([]string, len(list))
	for i, s := range list {
		names[i] = s.Name
	}
	return names
}

// strokeOf returns the stroke of an item; ok is false for one that has none.
func strokeOf(it draw.Item) (s draw.Stroke, ok bool) {
	switch it := it.(type) {
	case draw.Line:
		return it.Stroke, true
	case draw.Rect:
		return it.Stroke, true
	case draw.Disc:
		return it.Stroke, true
	case draw.Path:
		return it.Stroke, true
	}
	return draw.Stroke{}, false
}

// blurInFeet finds a number of minutes of arc that reads as feet: a prime after a number,
// beside a word of blur.
var blurInFeet = regexp.MustCompile(`[0-9]\s*[′']\s*(of blur|soft|blur|on the screen)|(blur|soft by)[^0-9]*[0-9.]+\s*[′'](?:[^0-9]|$)`)

// Units returns what breaks the rule of one unit of blur on a page, a sentence each.
func Units(p *draw.Page) []string {
	var faults []string
	for it := range p.Root.All() {
		t, ok := it.(draw.Text)
		if !ok {
			continue
		}
		if strings.Contains(t.String, "CoC") {
			faults = append(faults, fmt.Sprintf("%q tells blur in circles of confusion", t.String))
		}
		if blurInFeet.MatchString(t.String) {
			faults = append(faults, fmt.Sprintf("%q tells blur in feet", t.String))
		}
	}
	return faults
}

// Order returns where the rows of subjects break their one order, a sentence each. names
// are the subjects in order. Rows are groups of the name signs.Row, whose title is the
// name of the subject; those in one group have to go down the page in order.
func Order(pages []*draw.Page, names []string) []string {
	var faults []string
	check := func(g *draw.Group) {
		last, lastY := -1, math.Inf(-1)
		for _, it := range g.Items {
			row, ok := it.(*draw.Group)
			if !ok || row.Name != signs.Row {
				continue
			}
			at, y := slices.Index(names, row.Title), topOf(row)
			if at < 0 || math.IsInf(y, 0) {
				continue
			}
			if at < last || y < lastY {
				faults = append(faults, fmt.Sprintf("the row of %s in %q stands out of order", row.Title, g.Name))
			}
			last, lastY = at, y
		}
	}
	for _, p := range pages {
		check(&p.Root)
		for it := range p.Root.All() {
			if g, ok := it.(*draw.Group); ok {
				check(g)
			}
		}
	}
	return faults
}

// topOf returns the y of the first text of a group; infinite if it has none.
func topOf(g *draw.Group) float64 {
	for it := range g.All() {
		if t, ok := it.(draw.Text); ok {
			return t.At.Y
		}
	}
	return math.Inf(1)
}

// Links returns what is wrong with the links of a document, a sentence each: an ID that
// two groups have, and a link that leads nowhere.
func Links(pages []*draw.Page) []string {
	var faults []string
	ids := map[string]bool{}
	each := func(do func(*draw.Group)) {
		for _, p := range pages {
			do(&p.Root)
			for it := range p.Root.All() {
				if g, ok := it.(*draw.Group); ok {
					do(g)
				}
			}
		}
	}
	each(func(g *draw.Group) {
		if g.ID != "" && ids[g.ID] {
			faults = append(faults, fmt.Sprintf("two groups have the ID %q", g.ID))
		}
		ids[g.ID] = g.ID != ""
	})
	each(func(g *draw.Group) {
		if g.Link != "" && !ids[g.Link] {
			faults = append(faults, fmt.Sprintf("the link to %q leads nowhere", g.Link))
		}
	})
	return faults
}
