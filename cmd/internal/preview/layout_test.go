// How the page stands in its window.

package preview

import (
	"fmt"
	"testing"

	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
)

// watchShifts has the page add up how far what is seen moves without anybody
// having done a thing: parts of the window times parts of its height (Layout
// Instability, a draft of the Web Incubator Community Group).
const watchShifts = `globalThis.shifts = [];
new PerformanceObserver((list) => {
	for (const e of list.getEntries()) shifts.push({ value: e.value, of: e.sources.map((s) => s.node?.id || s.node?.className || s.node?.nodeName).join(" ") });
}).observe({ type: "layout-shift", buffered: true });`

// The stage comes after the score, and nothing moves for it.
func TestNothingMovesForTheStage(t *testing.T) {
	for _, size := range [][2]int64{{1920, 1080}, {1440, 900}, {1024, 768}, {390, 844}} {
		t.Run(fmt.Sprint(size[0]), func(t *testing.T) {
			s := serve(t, Options{})
			s.Show(exampleState(t, 1, "ticket-window.pull", "zoom.pull"))
			b := newTab(t, size[0], size[1])
			if _, err := chromedp.Call(b.ctx, page.AddScriptToEvaluateOnNewDocument, page.AddScriptToEvaluateOnNewDocumentParams{Source: watchShifts}); err != nil {
				t.Fatal(err)
			}
			b.open(s)
			b.until(complete)
			b.until(`document.querySelector("#stage").dataset.shot`)
			value[any](b, `new Promise((done) => setTimeout(() => done(0), 200))`)
			if total := value[float64](b, `shifts.reduce((sum, e) => sum + e.value, 0)`); total > 0.005 {
				t.Errorf("the page moves by %.3f: %s", total, value[string](b, `JSON.stringify(shifts)`))
			}
			moved := value[[]float64](b, `new Promise((done) => {
				const top = () => document.querySelector("#score").getBoundingClientRect().top + scrollY;
				[...document.querySelectorAll("#list .shot")].at(-1).click();
				const before = top();
				const there = () => location.hash.endsWith("/" + document.querySelector("#stage").dataset.shot);
				const look = (tries) => (there() ? done([before, top()]) : tries > 0 ? setTimeout(look, 5, tries - 1) : done([before, NaN]));
				look(1000);
			})`)
			if moved[0] != moved[1] {
				t.Errorf("the score of another shot moves from %v to %v", moved[0], moved[1])
			}
			if over := value[int](b, `document.documentElement.scrollWidth - innerWidth`); over > 0 {
				t.Errorf("the page is %d pixels wider than the window", over)
			}
		})
	}
}
