// How the page stands in its window.

package preview

import (
	"fmt"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"

	"pullscore/cmd/internal/rebuild"
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

// The list and the findings use the height that there is.
func TestTheListUsesTheHeight(t *testing.T) {
	s := serve(t, Options{})
	s.Show(exampleState(t, 1, "crossing.pull", "gangway.pull", "lantern.pull", "roll-call.pull", "small-sensor.pull", "ticket-window.pull", "two-85s.pull", "zoom.pull"))
	b := newTab(t, 1280, 720)
	b.open(s)
	b.until(sheetCount + ` > 0`)
	const height = `document.querySelector("#%s").getBoundingClientRect().height`
	list, found := value[float64](b, fmt.Sprintf(height, "list")), value[float64](b, fmt.Sprintf(height, "findings"))
	head := value[float64](b, `document.querySelector("header").getBoundingClientRect().height`)
	if rest := 720 - head - list - found; rest > 2 || rest < -1 {
		t.Errorf("of 720 pixels the list has %.0f, the findings %.0f, and %.0f are left", list, found, rest)
	}
	const hollow = `(() => { const e = document.querySelector("#%s"); return e.getBoundingClientRect().bottom - e.lastElementChild.getBoundingClientRect().bottom; })()`
	if empty := value[float64](b, fmt.Sprintf(hollow, "findings")); empty > 60 {
		t.Errorf("the list scrolls, and %.0f pixels below the findings are empty", empty)
	}
	b.picture("many")

	// Long findings beside a short list have what that leaves.
	path, src := example(t, "ticket-window.pull")
	p := reading(t, path, strings.ReplaceAll(src, "over 1.2 s", "over 0.3 s"), nil)
	s.Show(&rebuild.State{Plans: []*rebuild.Plan{p}, Version: 2})
	b.until(`document.querySelectorAll("#list .plan").length === 1 && document.querySelectorAll(".finding-item").length > 2`)
	if value[bool](b, `document.querySelector("#list").scrollHeight > document.querySelector("#list").clientHeight + 1`) {
		t.Error("a short list scrolls")
	}
	b.picture("few")
}

// The score is as wide as any window, with type that can be read: nobody scrolls sideways. At
// another scale it is laid out anew, and stays so wide.
func TestTheScoreIsAsWideAsTheWindow(t *testing.T) {
	s := serve(t, Options{})
	s.Show(exampleState(t, 1, "lantern.pull"))
	for _, size := range [][2]int64{{1024, 768}, {390, 844}} {
		b := newTab(t, size[0], size[1])
		b.open(s)
		b.until(complete)
		for _, at := range []string{"fit", "larger"} {
			if at == "larger" {
				b.press("+")
			}
			b.until(drawnToSize + ` && document.querySelectorAll(".sheet > svg").length === document.querySelectorAll(".sheet").length`)
			if over := value[int](b, `(() => { const e = document.querySelector("#sheets"); return e.scrollWidth - e.clientWidth; })()`); over > 0 {
				t.Errorf("in a window of %d the score is %d pixels too wide", size[0], over)
			}
			if high := value[float64](b, `Math.min(...[...document.querySelectorAll(".sheet > svg text")].map((e) => Number(e.getAttribute("font-size")) * document.querySelector(".sheet > svg").getScreenCTM().a))`); high < 10.9 {
				t.Errorf("in a window of %d type is %.1f pixels high", size[0], high)
			}
			value[any](b, `document.querySelector("#score").scrollIntoView() ?? 0`)
			b.picture(fmt.Sprint(size[0], at))
			b.dark()
			b.picture(fmt.Sprint(size[0], at, "-dark"))
			b.sees("screen", map[string]string{"forced-colors": "active"})
			b.picture(fmt.Sprint(size[0], at, "-forced"))
			b.sees("screen", nil)
		}
	}
}

// Three plans of one title, in two folders, are told apart.
func TestPlansOfOneTitleAreToldApart(t *testing.T) {
	_, src := example(t, "lantern.pull")
	state := &rebuild.State{Version: 1}
	for i, name := range []string{"dock/one.pull", "dock/two.pull", "pier/one.pull"} {
		p := reading(t, filepath.Join(examples, "lantern.pull"), src, nil)
		p.Key, p.Name = fmt.Sprint("k", i), name
		state.Plans = append(state.Plans, p)
	}
	s := serve(t, Options{})
	s.Show(state)
	b := newTab(t, 1280, 720)
	b.open(s)
	got := value[[]string](b, `[...document.querySelectorAll(".plan-name")].map((e) => e.textContent)`)
	title := state.Plans[0].Latest.Title
	if want := []string{title + " dock/one.pull", title + " two.pull", title + " pier/one.pull"}; !slices.Equal(got, want) {
		t.Errorf("the plans are called %q, want %q", got, want)
	}
	b.picture("titles")
}

// A name of 300 letters is shortened, and nothing is refused for it.
func TestLongNames(t *testing.T) {
	d := newDesk(t, "ticket-window.pull")
	shot, subject := strings.Repeat("ა", 300), strings.Repeat("М", 300)
	d.edit("ticket-window.pull", "shot 12A", "shot "+shot)
	d.edit("ticket-window.pull", "MARRIT", `"`+subject+`"`)
	for _, width := range []int64{1280, 390} {
		b := newTab(t, width, 720)
		b.open(d.server)
		b.until(complete)
		b.until(`document.querySelector("#stage").dataset.shot === ` + quote(shot))
		if over := value[int](b, `document.documentElement.scrollWidth - innerWidth`); over > 0 {
			t.Errorf("the page is %d pixels wider than %d: %s", over, width, value[string](b, `[...document.querySelectorAll("body *")].filter((e) => e.getBoundingClientRect().right > innerWidth + 1 && !e.closest(".sheets")).map((e) => e.tagName + "." + (e.id || e.getAttribute("class"))).slice(0, 12).join(" ")`))
		}
		b.picture(fmt.Sprint(width))
	}
}
