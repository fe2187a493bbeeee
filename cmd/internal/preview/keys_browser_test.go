// Keys on a page where something has the focus.

package preview

import (
	"fmt"
	"testing"

	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// clickOn clicks with the mouse on the middle of an element.
func (b *tab) clickOn(selector string) {
	b.Helper()
	x, y := b.middle(selector)
	b.clickAt(x, y)
}

func (b *tab) clickAt(x, y float64) {
	b.Helper()
	for _, kind := range []input.DispatchMouseEventType{input.DispatchMouseEventTypeMousePressed, input.DispatchMouseEventTypeMouseReleased} {
		b.do(chromedp.MouseEvent(kind, x, y, func(p *input.DispatchMouseEventParams) {
			p.Button, p.ClickCount = input.MouseButtonLeft, 1
		}))
	}
}

// playing is whether the playhead runs.
const playing = `import("./shared.js").then(({ player }) => player.playing)`

// Whoever has clicked on a control goes on with the keys of the page; whoever
// has come to it by the keyboard presses it.
func TestKeysAfterAClick(t *testing.T) {
	d := newDesk(t, "lantern.pull", "gangway.pull")
	d.edit("lantern.pull", "over 1.5 s", "over 1 s")
	b := staged(t, d.server, 1440, 900, "31C")
	b.until(complete)
	b.until(`document.querySelector(".finding-item")`)
	const toZero = `import("./shared.js").then(({ player }) => { player.pause(); player.seek(0); return 0; })`
	for _, control := range []struct{ name, selector string }{
		{"scrubber", ".scrub"}, {"play", ".transport .play"}, {"a toggle", "#stage .ways button"},
		{"a summary", ".truth summary"}, {"zoom", "#zoom-in"}, {"a finding", ".finding-item"}, {"the playhead", ".playhead"},
		{"list", "#list .shot"}, // last: it goes to another shot
	} {
		t.Run(control.name, func(t *testing.T) {
			b := &tab{TB: t, ctx: b.ctx}
			b.clickOn(control.selector)
			value[int](b, toZero)
			before := value[string](b, pressedState)
			for range 3 { // on, off, on
				was := value[bool](b, playing)
				b.press(" ")
				b.until(fmt.Sprintf(`%s.then((now) => now === %t)`, playing, !was))
			}
			value[int](b, toZero)
			b.press(kb.ArrowRight)
			b.press(kb.ArrowRight)
			b.until(`document.querySelector(".frame-number").value.startsWith("frame 2 ")`)
			b.press(kb.ArrowLeft)
			b.until(`document.querySelector(".frame-number").value.startsWith("frame 1 ")`)
			if after := value[string](b, pressedState); after != before {
				t.Errorf("keys have pressed what was clicked on: %s, then %s", before, after)
			}
		})
	}
}

// pressedState is what buttons, folds and the size of the score stand at.
const pressedState = `JSON.stringify([[...document.querySelectorAll("[aria-pressed]")].map((e) => e.ariaPressed), [...document.querySelectorAll("details")].map((e) => e.open), document.getElementById("zoom").value, location.hash])`

// Someone who comes by Tab presses buttons with Space, and slides sliders with
// arrows.
func TestKeysAfterTab(t *testing.T) {
	d := newDesk(t, "lantern.pull", "gangway.pull")
	b := staged(t, d.server, 1440, 900, "31C")
	b.until(complete)
	reach := func(selector string) {
		t.Helper()
		for range 120 {
			if value[bool](b, `document.activeElement.matches(`+quote(selector)+`)`) {
				return
			}
			b.press(kb.Tab)
		}
		t.Fatalf("Tab does not come to %s", selector)
	}
	value[any](b, `document.querySelector(".skip").focus() ?? 0`)
	other := value[string](b, `[...document.querySelectorAll("#list .shot")].findIndex((e) => !e.ariaCurrent) + 1 + ""`)
	reach("#list li:nth-child(1) .shot:not([aria-current])")
	b.press(" ")
	b.until(`!document.activeElement.matches("body") && location.hash.includes("18A")`)
	if value[bool](b, playing) {
		t.Errorf("Space on shot %s of the list plays", other)
	}
	reach(".truth summary")
	open := value[bool](b, `document.querySelector(".truth").open`)
	b.press(" ")
	b.until(fmt.Sprintf(`document.querySelector(".truth").open === %t`, !open))
	value[any](b, `document.querySelector("#list .shot").focus() ?? 0`)
	reach(".transport .play")
	b.press(" ")
	b.until(playing)
	b.press(" ")
	b.until(playing + `.then((p) => !p)`)
	reach(".scrub")
	b.press(kb.Home)
	b.press(kb.ArrowRight)
	b.until(`document.querySelector(".frame-number").value.startsWith("frame 1 ")`)
}

func TestCapsLockKillsNoKey(t *testing.T) {
	d := newDesk(t, "lantern.pull")
	b := staged(t, d.server, 1440, 900, "31C")
	b.until(complete)
	clock := value[string](b, `document.getElementById("clock").value`)
	caps := func(key, code string) { // as a keyboard with Caps Lock on sends it: no Shift
		for _, kind := range []input.DispatchKeyEventType{input.DispatchKeyEventTypeKeyDown, input.DispatchKeyEventTypeKeyUp} {
			params := input.DispatchKeyEventParams{Type: kind, Key: key, Code: code, Text: key}
			if kind == input.DispatchKeyEventTypeKeyUp {
				params.Text = ""
			}
			if _, err := chromedp.Call(b.ctx, input.DispatchKeyEvent, params); err != nil {
				t.Fatal(err)
			}
		}
	}
	caps("P", "KeyP")
	b.until(`document.getElementById("clock").value !== ` + quote(clock))
	caps("H", "KeyH")
	b.until(`[...document.querySelectorAll("#stage button")].some((e) => e.textContent === "Half speed" && e.ariaPressed === "true")`)
}

// The arrows turn the hand during a try wherever the focus is, and end none.
func TestArrowsTurnATryFromAnywhere(t *testing.T) {
	d := slowDesk(t)
	b := staged(t, d.server, 1440, 900, "12A")
	b.tries()
	for n, focus := range []string{"document.body", `document.querySelector("#list .shot")`, `document.querySelector("#rehearse .start")`, `document.querySelector("#help-open")`, `document.querySelector("svg.wheel")`} {
		value[any](b, `(document.activeElement.blur(), `+focus+`.focus()) ?? 0`)
		before := value[float64](b, wheelDeg)
		key, by := kb.ArrowUp, 1.0
		if n%2 == 1 {
			key = kb.ArrowRight
		}
		b.press(key)
		b.until(fmt.Sprintf(`Math.abs(%s - %g) < 0.01`, wheelDeg, before+by))
		if !value[bool](b, trying) {
			t.Fatalf("with the focus on %s an arrow ends the try: %s", focus, value[string](b, outcome))
		}
	}
	value[any](b, `document.querySelector("#rehearse .start").focus({ focusVisible: false }) ?? 0`)
	b.press(kb.Enter)
	b.until(`document.querySelector(".verdict")`)
}
