// What a cut has removed of a shot is narrowed on the page, and pointer and playhead go by it.

package preview

import (
	"strings"
	"testing"
)

func TestThePointerGoesByWhatIsNarrowed(t *testing.T) {
	d := newDesk(t, "lantern.pull")
	d.save("cut.edl", "TITLE: CUT\nFCM: NON-DROP FRAME\n"+
		"001  A1 V C 10:00:00:00 10:00:02:00 01:00:00:00 01:00:02:00\n* FROM CLIP NAME: 31C\n"+
		"002  A1 V C 10:00:05:00 10:00:09:00 01:00:02:00 01:00:06:00\n* FROM CLIP NAME: 31C\n")
	_, src := example(t, "lantern.pull")
	d.save("lantern.pull", strings.Replace(src, "rate 24\n", "rate 24\nedit \"cut.edl\"\n", 1))
	b := newTab(t, 1440, 900)
	b.open(d.server)
	b.until(`[...document.querySelectorAll("g.ruler text")].some((e) => e.textContent === "removed")`)
	value[any](b, `document.querySelector(".sheet").scrollIntoView() ?? 0`)
	// label returns the middle of a text of the ruler, and its foot.
	label := func(text string) []float64 {
		return value[[]float64](b, `(() => { const l = [...document.querySelectorAll(".sheet > svg g.ruler text")].find((e) => e.textContent === "`+text+`").getBoundingClientRect(); return [l.left + l.width / 2, l.bottom]; })()`)
	}
	one, six, removed := label("1 s"), label("6 s"), label("removed")
	if second := label("7 s")[0] - six[0]; six[0]-one[0] > 4*second {
		t.Fatalf("the five seconds from 1 s take %v pixels, one second %v", six[0]-one[0], second)
	}
	stands := func(x, from, to float64) {
		t.Helper()
		got := value[float64](b, `Number(document.querySelector(".playhead").getAttribute("aria-valuenow"))`)
		head := value[float64](b, `(() => { const r = document.querySelector(".playhead").getBoundingClientRect(); return r.left + r.width / 2; })()`)
		if got < from || got > to || head-x < -1.5 || head-x > 1.5 {
			t.Errorf("the playhead is at %v s, want %v to %v, and %v pixels beside its place", got, from, to, head-x)
		}
	}
	b.do(dragged(one[0], six[0], one[1]+100)...)
	stands(six[0], 5.97, 6.03)
	b.do(dragged(six[0], removed[0], one[1]+100)...)
	stands(removed[0], 3, 4) // the browser may set the word in another type
	b.picture("narrowed")
}
