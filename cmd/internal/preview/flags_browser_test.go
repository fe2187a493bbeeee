// Flags on the drawing and the findings that they stand for.

package preview

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"

	"pullscore/cmd/internal/rebuild"
)

// flagged are the examples that have findings on their drawings.
var flagged = []string{"crossing.pull", "small-sensor.pull", "two-85s.pull", "zoom.pull"}

// A flag leads to its finding, which is brought into sight, focused and lit:
// with the mouse, a finger and the keyboard.
func TestAFlagLeadsToItsFinding(t *testing.T) {
	for name, ways := range map[string][]string{"wide": {"click", "Enter"}, "phone": {"tap"}} {
		t.Run(name, func(t *testing.T) {
			s := serve(t, Options{})
			s.Show(exampleState(t, 1, flagged...))
			b := newTab(t, 1100, 560)
			if name == "phone" {
				b.do(chromedp.EmulateViewport(390, 844, chromedp.EmulateMobile, chromedp.EmulateTouch))
			}
			b.open(s)
			b.until(`document.querySelector("#list .shot")`)
			tried := 0
			for range value[int](b, `document.querySelectorAll("#list .shot").length`) {
				b.until(sheetCount + ` > 0 && document.querySelector("#stage").dataset.shot === decodeURIComponent(location.hash.split("/")[1])`)
				numbers := value[[]int](b, `[...document.querySelectorAll("g.finding[data-number]:not(g.finding g.finding)")].map((e) => Number(e.dataset.number))`)
				for _, n := range numbers {
					for _, by := range ways {
						b.triesFlag(by, n)
						tried++
					}
				}
				b.press("]")
			}
			if tried < 6 {
				t.Errorf("only %d flags were tried", tried)
			}
			b.picture("lit")
		})
	}
}

// triesFlag uses a flag and looks what becomes of its finding.
func (b *tab) triesFlag(by string, number int) {
	b.Helper()
	flag := fmt.Sprintf(`g.finding[data-number="%d"]`, number)
	value[any](b, `(document.activeElement.blur(), document.querySelectorAll(".finding-item.lit").forEach((e) => e.classList.remove("lit"))) ?? 0`)
	x, y := b.middle(flag + " text") // a path of it may be its pole, beside another mark
	switch by {
	case "click":
		b.clickAt(x, y)
	case "tap":
		b.do(chromedp.TapXY(x, y))
	default:
		value[any](b, fmt.Sprintf(`document.querySelector(%s).focus() ?? 0`, quote(flag)))
		b.press(kb.Enter)
	}
	b.until(fmt.Sprintf(`(() => {
		const at = document.activeElement, box = at.getBoundingClientRect();
		return at.matches(".finding-item.lit") && at.dataset.number === "%d" &&
			document.querySelectorAll(".finding-item.lit").length === 1 && document.querySelectorAll("g.finding.lit").length >= 1 &&
			document.querySelector(%s).matches(".lit") && box.bottom > 0 && box.top < innerHeight;
	})()`, number, quote(flag)))
}

// Findings stand in the order of their flags.
func TestFindingsStandInTheOrderOfTheirFlags(t *testing.T) {
	path, src := example(t, "ticket-window.pull")
	src = strings.ReplaceAll(src, "over 1.2 s", "over 0.4 s")
	p := reading(t, path, src, nil)
	p.Findings = slices.Clone(p.Findings)
	slices.Reverse(p.Findings) // as they come from somewhere else
	s := serve(t, Options{})
	s.Show(&rebuild.State{Plans: []*rebuild.Plan{p}, Version: 1})
	b := newTab(t, 1280, 720)
	b.open(s)
	b.until(`document.querySelector(".finding-item")`)
	numbers := value[[]int](b, `[...document.querySelectorAll(".finding-item")].map((e) => Number(e.dataset.number))`)
	if len(numbers) < 2 || !slices.IsSorted(numbers) {
		t.Errorf("the findings stand as %v", numbers)
	}
}
