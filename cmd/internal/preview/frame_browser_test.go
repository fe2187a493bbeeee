// What of a score stays in sight while it scrolls.

package preview

import (
	"math"
	"testing"
)

// edges are where things are on the screen: the left edge of the score and of the heads of
// its rows, the upper edge of its ruler, and how far the middle of the first head and the
// heading of the ruler lie from what they are copies of.
type edges struct {
	Score, Heads, Rule, HeadY, RuleX float64
	Ruler                            float64 // the upper edge of the ruler that is drawn
}

const measureEdges = `new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(() => {
	const box = (e) => e.getBoundingClientRect();
	const sheet = document.querySelector(".sheet"), heads = sheet.querySelector(".heads"), rule = sheet.querySelector(".rule");
	const same = (copy) => [...sheet.querySelectorAll(":scope > svg text")].find((t) => t.textContent === copy.textContent && t.getAttribute("x") === copy.getAttribute("x") && t.getAttribute("y") === copy.getAttribute("y"));
	const head = heads.querySelector("text"), tick = rule.querySelector("text");
	done({
		Score: box(document.querySelector("#sheets")).left, Heads: heads.hidden ? NaN : box(heads).left, Rule: rule.hidden ? NaN : box(rule).top,
		HeadY: heads.hidden ? NaN : box(head).top - box(same(head)).top, RuleX: rule.hidden ? NaN : box(tick).left - box(same(tick)).left,
		Ruler: box(sheet.querySelector(":scope > svg g.ruler")).top,
	});
})))`

// The heads of the rows stay at the left and the ruler at the top while the score scrolls
// below them, each beside what it names.
func TestHeadsAndRulerStayInSight(t *testing.T) {
	s := serve(t, Options{})
	s.Show(exampleState(t, 1, "ticket-window.pull"))
	for name, size := range map[string][2]int64{"wide": {1280, 700}, "phone": {390, 600}} {
		b := newTab(t, size[0], size[1])
		b.open(s)
		b.until(complete)
		b.press("+")
		b.until(drawnToSize)
		for range 2 { // between two rungs there is something to scroll
			value[any](b, `(document.getElementById("sheets").dispatchEvent(new WheelEvent("wheel", { deltaY: -50, ctrlKey: true, bubbles: true, cancelable: true })), 0)`)
		}
		b.until(`document.querySelector("#sheets").scrollWidth > document.querySelector("#sheets").clientWidth + 60`)
		at := func() edges {
			return value[edges](b, `(async () => Object.fromEntries(Object.entries(await `+measureEdges+`).map(([k, v]) => [k, Number.isNaN(v) ? -1e9 : v])))()`)
		}
		value[any](b, `document.querySelector("#sheets").scrollLeft = 0`)
		value[any](b, `scrollTo(0, 0) ?? 0`)
		if e := at(); e.Heads != -1e9 || e.Rule != -1e9 {
			t.Errorf("%s: heads at %v and ruler at %v lie over a score that is all in sight", name, e.Heads, e.Rule)
		}
		value[any](b, `document.querySelector("#sheets").scrollLeft = 60`)
		if e := at(); math.Abs(e.Heads-e.Score) > 2 || math.Abs(e.HeadY) > 1 {
			t.Errorf("%s: the heads are at %v and not at %v, or %v too low", name, e.Heads, e.Score, e.HeadY)
		}
		value[any](b, `scrollBy(0, document.querySelector(".sheet > svg g.ruler").getBoundingClientRect().bottom + 120) ?? 0`)
		e := at()
		if e.Ruler > -30 {
			t.Fatalf("%s: the ruler is at %v, and nothing is scrolled", name, e.Ruler)
		}
		if math.Abs(e.Rule) > 2 || math.Abs(e.RuleX) > 1 {
			t.Errorf("%s: the ruler is at %v and not at the top, or %v beside its time", name, e.Rule, e.RuleX)
		}
		b.picture(name)
		value[any](b, `scrollTo(0, 1e6) ?? 0`)
		b.press("0")
		if e := at(); e.Heads != -1e9 && value[float64](b, `document.querySelector("#sheets").scrollLeft`) == 0 {
			t.Errorf("%s: the heads stay at %v where the whole score is in sight", name, e.Heads)
		}
	}
}
