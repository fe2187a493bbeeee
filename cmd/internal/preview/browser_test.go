package preview

import (
	"strings"
	"testing"

	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// sheetCount is how many pages of a score are drawn.
const sheetCount = `document.querySelectorAll(".sheet > svg").length`

// complete is whether the page has all of a shot: the stage, and what one
// rehearses on, come last.
const complete = sheetCount + ` > 0 && document.querySelector("#stage canvas")?.offsetHeight > 0 && Boolean(document.querySelector("#stage").dataset.shot)`

func TestPageOpens(t *testing.T) {
	s := serve(t, Options{})
	s.Show(exampleState(t, 1, "gangway.pull", "lantern.pull", "roll-call.pull"))
	b := newTab(t, 1440, 900)
	b.open(s)
	b.until(sheetCount + ` > 0`)
	shots := value[int](b, `document.querySelectorAll("#list .shot").length`)
	want := 0
	for _, p := range s.shown.Load().state.Plans {
		want += len(p.Latest.Shots)
	}
	if shots != want {
		t.Errorf("%d shots are listed of %d", shots, want)
	}
	if v := value[bool](b, `document.fonts.check("10px Go")`); !v {
		t.Error("the font of the drawings is not there")
	}
	b.picture("light")
	b.dark()
	if paper := value[string](b, `getComputedStyle(document.querySelector(".sheet rect")).fill`); paper != "rgb(20, 20, 20)" {
		t.Errorf("the dark paper is %s", paper)
	}
	b.picture("dark")
}

func TestNarrowPage(t *testing.T) {
	s := serve(t, Options{})
	s.Show(exampleState(t, 1, "gangway.pull", "lantern.pull"))
	b := newTab(t, 390, 844)
	b.open(s)
	b.until(sheetCount + ` > 0`)
	if over := value[int](b, `document.documentElement.scrollWidth - innerWidth`); over > 0 {
		t.Errorf("the page is %d pixels wider than the screen", over)
	}
	b.picture("top")
	value[any](b, `document.querySelector("#findings").scrollIntoView() ?? 0`)
	b.picture("findings")
	value[any](b, `document.querySelector("#list summary").click() ?? 0`)
	value[any](b, `scrollTo(0, 0) ?? 0`)
	b.picture("list")
}

func TestKeys(t *testing.T) {
	s := serve(t, Options{})
	s.Show(exampleState(t, 1, "gangway.pull", "lantern.pull"))
	b := newTab(t, 1440, 900)
	b.open(s)
	b.until(sheetCount + ` > 0`)
	first := value[string](b, `location.hash`)
	b.press("]")
	b.until(`location.hash !== ` + quote(first))
	b.press("[")
	b.until(`location.hash === ` + quote(first))
	b.press("+")
	b.until(`document.getElementById("zoom").value === "125 %"`)
	b.press("--")
	b.until(`document.getElementById("zoom").value === "85 %"`)
	b.press("0")
	b.until(`document.getElementById("zoom").value === "100 %"`)
	b.press(kb.ArrowRight + kb.ArrowRight + kb.ArrowRight + kb.ArrowLeft)
	b.until(`document.getElementById("clock").value.endsWith("frame 2")`)
	b.press("p")
	b.until(`!document.getElementById("clock").value.endsWith("frame 2")`)
	b.press(kb.End)
	b.until(`Math.abs(document.querySelector(".playhead").getAttribute("aria-valuenow") - document.querySelector(".playhead").getAttribute("aria-valuemax")) < 0.05`)
	b.press(kb.Home)
	b.press(" ")
	b.until(`document.querySelector(".playhead").getAttribute("aria-valuenow") > 0.2`)
	b.press(" ")
	b.press("?")
	b.until(`document.querySelector("dialog").open`)
	if first := value[string](b, `document.querySelector("dialog dl > div").textContent`); !strings.HasPrefix(first, "Space") {
		t.Errorf("the keys begin with %q", first)
	}
	b.until(`["PageUp", "Wheel", "Shift ↑"].every((k) => [...document.querySelectorAll("dialog kbd")].some((e) => e.textContent === k))`)
	b.picture("help")
	b.press(kb.Escape)
	b.until(`!document.querySelector("dialog").open`)
}

// quote writes a string for JavaScript.
func quote(s string) string { return `"` + strings.ReplaceAll(s, `"`, `\"`) + `"` }

// dragged presses the pointer at one place and lets it go at another.
func dragged(from, to, y float64) []chromedp.Action[chromedp.Void] {
	left := func(p *input.DispatchMouseEventParams) {
		p.Button = input.MouseButtonLeft
		p.ClickCount = 1
		p.Buttons = 1
	}
	return []chromedp.Action[chromedp.Void]{
		chromedp.MouseEvent(input.DispatchMouseEventTypeMousePressed, from, y, left),
		chromedp.MouseEvent(input.DispatchMouseEventTypeMouseMoved, (from+to)/2, y, left),
		chromedp.MouseEvent(input.DispatchMouseEventTypeMouseMoved, to, y, left),
		chromedp.MouseEvent(input.DispatchMouseEventTypeMouseReleased, to, y, left),
	}
}
