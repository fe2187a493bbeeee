package preview

import (
	"fmt"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"

	"pullscore/render/draw"
)

// sheetCount is how many pages of a score are drawn.
const sheetCount = `document.querySelectorAll(".sheet > svg").length`

// drawnToSize is whether every page says the scale that the page tells of.
const drawnToSize = `[...document.querySelectorAll(".sheet > svg")].every((e) => e.textContent.includes(document.getElementById("zoom").value))`

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
	if paper := value[string](b, `getComputedStyle(document.querySelector(".sheet rect")).fill`); paper != rgb(draw.Paper.Dark()) {
		t.Errorf("the dark paper is %s", paper)
	}
	b.picture("dark")
}

// rgb is a colour as a browser tells it.
func rgb(c draw.Colour) string { return fmt.Sprintf("rgb(%d, %d, %d)", c.R, c.G, c.B) }

// The page has the colours of the drawings on it, on a light screen, on a dark one, and
// those of paper when it is printed.
func TestThePageHasTheInksOfTheDrawings(t *testing.T) {
	s := serve(t, Options{})
	s.Show(exampleState(t, 1, "lantern.pull"))
	b := newTab(t, 1280, 800)
	b.open(s)
	b.until(sheetCount + ` > 0`)
	vars := map[string]draw.Ink{"--paper": draw.Paper, "--ink": draw.Black, "--grey": draw.Grey, "--blue": draw.Blue, "--blue-pale": draw.Zone, "--rust": draw.Warning, "--leaf": draw.Cure, "--slab": draw.Slab}
	check := func(what string, of func(draw.Ink) draw.Colour) {
		for name, ink := range vars {
			if got := value[string](b, `getComputedStyle(document.documentElement).getPropertyValue(`+quote(name)+`).trim()`); got != of(ink).String() {
				t.Errorf("%s: %s is %s, the ink %s", what, name, got, of(ink))
			}
		}
		if got := value[string](b, `getComputedStyle(document.querySelector(".sheet rect")).fill`); got != rgb(of(draw.Paper)) {
			t.Errorf("%s: the sheet is %s", what, got)
		}
		if got := value[string](b, `getComputedStyle(document.querySelector(".sheet .s-black")).stroke`); got != rgb(of(draw.Black)) {
			t.Errorf("%s: black is %s", what, got)
		}
	}
	check("light", draw.Ink.Light)
	b.dark()
	check("dark", draw.Ink.Dark)
	b.sees("print", map[string]string{"prefers-color-scheme": "dark"})
	check("printed", draw.Ink.Light)
}

// On a screen that was told to use its own colours, every ink is one of them.
func TestForcedColours(t *testing.T) {
	s := serve(t, Options{})
	s.Show(exampleState(t, 1, "ticket-window.pull"))
	b := newTab(t, 1280, 800)
	b.sees("screen", map[string]string{"forced-colors": "active", "prefers-color-scheme": "dark"})
	b.open(s)
	b.until(sheetCount + ` > 0`)
	const all = `(() => {
		const probe = document.body.appendChild(document.createElement("i"));
		const system = new Set(["none", ...["Canvas", "CanvasText", "LinkText", "Mark", "MarkText"].map((c) => { probe.style.cssText = "forced-color-adjust: none"; probe.style.color = c; return getComputedStyle(probe).color; })]);
		probe.remove();
		const svg = document.querySelector(".sheet > svg");
		const ns = "http://www.w3.org/2000/svg", strange = [];
		for (const ink of %s) {
			for (const [cls, property] of [["f-", "fill"], ["s-", "stroke"]]) {
				const e = svg.appendChild(document.createElementNS(ns, "path"));
				e.setAttribute("class", cls + ink);
				const colour = getComputedStyle(e)[property];
				if (!system.has(colour)) strange.push(cls + ink + " " + colour);
				e.remove();
			}
		}
		return strange.join(", ");
	})()`
	var inks []string
	for _, ink := range draw.Inks() {
		inks = append(inks, quote(ink.String()))
	}
	if strange := value[string](b, fmt.Sprintf(all, "["+strings.Join(inks, ",")+"]")); strange != "" {
		t.Errorf("not of the system's colours: %s", strange)
	}
	if head, canvas := value[string](b, `getComputedStyle(document.querySelector(".playhead")).backgroundColor`), value[string](b, `getComputedStyle(document.querySelector(".sheet > svg")).backgroundColor`); head == canvas {
		t.Errorf("the playhead is as the canvas, %s", head)
	}
	b.picture("forced")
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
	const size = `document.getElementById("zoom").value`
	fit := value[string](b, size)
	b.press("+")
	b.until(size + ` !== ` + quote(fit) + ` && ` + drawnToSize)
	b.press("0")
	b.until(size + ` === ` + quote(fit) + ` && ` + drawnToSize)
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
