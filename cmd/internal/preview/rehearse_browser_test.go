// Rehearsals beside a plan that is being written, and with real input.

package preview

import (
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

const (
	trying   = `document.body.classList.contains("hiding")`
	outcome  = `document.querySelector(".outcome").textContent`
	keepable = `[...document.querySelectorAll("#rehearse button")].some((e) => e.textContent.startsWith("Keep"))`
)

// click clicks the button of that text.
func (b *tab) click(within, text string) {
	b.Helper()
	value[any](b, fmt.Sprintf(`[...document.querySelectorAll(%s)].find((e) => e.textContent.startsWith(%s)).click() ?? 0`, quote(within+" button"), quote(text)))
}

// slowDesk is a desk with a scene whose first pull takes so long that much can
// happen while it is tried.
func slowDesk(t testing.TB) *desk {
	t.Helper()
	d := newDesk(t, "ticket-window.pull")
	d.edit("ticket-window.pull", "pause 1.2 s", "pause 40 s")
	d.edit("ticket-window.pull", `landing on "one", over 1.2 s`, `landing on "one", over 40 s`)
	return d
}

// rehearses opens the rehearsal, without a count-in.
func (b *tab) rehearses() {
	b.Helper()
	if !value[bool](b, `document.body.classList.contains("rehearsing")`) {
		b.click("#stage", "Rehearse")
	}
	if value[bool](b, `[...document.querySelectorAll("#rehearse button")].some((e) => e.textContent === "Count in" && e.ariaPressed === "true")`) {
		b.click("#rehearse", "Count in")
	}
}

// tries begins a try without a count-in, and waits until its time runs.
func (b *tab) tries() {
	b.Helper()
	b.rehearses()
	b.press("r")
	b.until(trying)
	b.until(`import("./shared.js").then(({ player }) => player.moving && player.time > 0.4)`)
}

// lands turns the wheel some way by keys, says that the hand has landed, and
// waits for the verdict.
func (b *tab) lands() {
	b.Helper()
	b.press(kb.PageUp + kb.PageUp + kb.PageUp + kb.PageUp + kb.Enter)
	b.until(`document.querySelector(".verdict")`)
}

// logged reads the log of the desk's plan.
func (d *desk) logged(plan string) int {
	d.Helper()
	file := logOf(filepath.Join(d.folder, plan))
	if _, err := os.Stat(file); os.IsNotExist(err) {
		return 0
	}
	return len(written(d, file))
}

// A pull is rehearsed with the keys after a count-in, and the try is kept.
func TestTryIsLogged(t *testing.T) {
	d := slowDesk(t)
	b := staged(t, d.server, 1440, 900, "12A")
	b.picture("before")
	b.press("r")
	b.until(trying + ` && getComputedStyle(document.querySelector("#score")).display === "none"`)
	b.until(`!document.querySelector(".count").hidden`)
	b.picture("count-in")
	b.until(`import("./shared.js").then(({ player }) => player.moving && player.time > 0.4)`)
	b.picture("trying")
	b.lands()
	b.until(`!` + trying)
	b.picture("tried")
	b.click("#rehearse", "Keep")
	b.until(`document.querySelector(".kept")`)
	list := written(t, logOf(filepath.Join(d.folder, "ticket-window.pull")))
	if got := value[string](b, `document.querySelector(".where").textContent`); !strings.Contains(got, "OSKEL (") || !strings.Contains(got, "sharp ") {
		t.Errorf("of where it landed the page says %q", got)
	}
	b.click("#rehearse", "Replay") // the picture follows the hand again, and rests at its end
	b.until(`getComputedStyle(document.querySelector(".graph .now")).visibility === "visible"`)
	travel := float64(d.server.shown.Load().state.Plans[0].Good.Shots[0].Pulls[0].HandDeg)
	if len(list) != 1 || list[0].Note != "page, keys" || list[0].Shot != "12A" || math.Abs(list[0].Travel-travel) > 1e-3 {
		t.Fatalf("the log has %+v", list)
	}
	if shown := value[float64](b, `Number(document.querySelector(".outcome").dataset.error)`); math.Abs(shown-list[0].Error) > 1e-3 {
		t.Errorf("the page shows an error of %g°, the log has %g°", shown, list[0].Error)
	}
	b.click("#rehearse", "Practice") // one try after the other
	for n := 1; n <= 2; n++ {
		b.until(trying + ` && import("./shared.js").then(({ player }) => player.moving)`)
		b.lands()
		b.until(fmt.Sprintf(`document.querySelectorAll(".dots circle").length >= %d && document.querySelector(".practice-says").textContent.includes(" in the window")`, n))
	}
	b.click("#rehearse", "Practice")
	if got := value[string](b, `document.querySelector(".practice-next").textContent`); !strings.HasPrefix(got, "Next: pull ") || !strings.Contains(got, " to OSKEL: by the plan it lands ") {
		t.Errorf("of what comes next the page says %q", got)
	}
	b.picture("practised")
}

// A save that leaves the pull as it is does not disturb a try.
func TestATryOutlivesASave(t *testing.T) {
	d := slowDesk(t)
	b := staged(t, d.server, 1440, 900, "12A")
	b.tries()
	before := value[float64](b, `import("./shared.js").then(({ player }) => player.now)`)
	d.edit("ticket-window.pull", "the ticket window", "the window for tickets")
	b.until(`document.querySelector("#live").textContent.includes("the window for tickets")`)
	d.edit("ticket-window.pull", "Until the letter came.", "Until the letter came home.") // words after the pull
	b.until(says(".sheet", "Until the letter came home"))
	if !value[bool](b, trying) || !value[bool](b, fmt.Sprintf(`import("./shared.js").then(({ player }) => player.moving && player.now > %g)`, before)) {
		t.Fatalf("the try does not go on: %s", value[string](b, outcome))
	}
	b.lands()
	b.click("#rehearse", "Keep")
	b.until(`document.querySelector(".kept")`)
	if n := d.logged("ticket-window.pull"); n != 1 {
		t.Errorf("the log has %d rows", n)
	}
}

// A save that changes or removes the pull ends its try with a word why, and
// nothing is kept of it.
func TestATryEndsWithItsPull(t *testing.T) {
	for _, c := range []struct{ name, old, new, word string }{
		{"later", `landing on "one", over 40 s`, `landing on "way", over 40 s`, "pull 1 now starts at"},
		{"another stop", "stop f/4, meter f/4.5", "stop f/5.6, meter f/6.3", "the window of pull 1 is another now"},
		{"gone", `rack to OSKEL, landing on "one"`, `rack to TICKET, landing on "one"`, "pull 1 to OSKEL is gone"},
		{"shot gone", "shot 12A", "shot 12Z", "the shot is gone"},
	} {
		t.Run(c.name, func(t *testing.T) {
			d := slowDesk(t)
			b := staged(t, d.server, 1440, 900, "12A")
			b.tries()
			b.press(kb.PageUp)
			d.edit("ticket-window.pull", c.old, c.new)
			b.until(outcome + `.includes(` + quote("The try has ended: "+c.word) + `)`)
			b.until(`!` + trying)
			if value[bool](b, `import("./shared.js").then(({ player }) => player.playing)`) {
				t.Error("it still plays")
			}
			if value[bool](b, keepable+` || Boolean(document.querySelector(".verdict"))`) {
				t.Errorf("a result is told: %s", value[string](b, outcome))
			}
			value[any](b, `document.querySelector("#rehearse").scrollIntoView() ?? 0`)
			b.picture("ended")
			if n := d.logged("ticket-window.pull"); n != 0 {
				t.Errorf("the log has %d rows", n)
			}
		})
	}
}

// While the text has errors the drawing stays, and so does the try.
func TestATryOutlivesErrors(t *testing.T) {
	d := slowDesk(t)
	b := staged(t, d.server, 1440, 900, "12A")
	b.tries()
	d.edit("ticket-window.pull", "start on MARRIT", "start on MARIT")
	b.until(`!document.getElementById("notice").hidden`)
	if !value[bool](b, trying) {
		t.Fatalf("the try has ended: %s", value[string](b, outcome))
	}
	b.lands()
}

// A try that is over can be kept only as long as its pull is still the same.
func TestAChangedPullIsNotKept(t *testing.T) {
	d := slowDesk(t)
	b := staged(t, d.server, 1440, 900, "12A")
	b.tries()
	b.lands()
	d.edit("ticket-window.pull", "the ticket window", "the window for tickets")
	b.until(`document.querySelector("#live").textContent.includes("the window for tickets")`)
	b.until(keepable)
	d.edit("ticket-window.pull", `landing on "one"`, `landing on "way"`)
	b.until(outcome + `.includes("cannot be kept any more: pull 1 now starts at")`)
	if value[bool](b, keepable) || d.logged("ticket-window.pull") != 0 {
		t.Error("the try can still be kept")
	}
}

// middle returns the middle of an element that is brought into sight.
func (b *tab) middle(selector string) (x, y float64) {
	b.Helper()
	at := value[[]float64](b, fmt.Sprintf(`(() => { const e = document.querySelector(%s); e.scrollIntoView({ block: "center" }); const r = e.getBoundingClientRect(); return [r.left + r.width / 2, r.top + r.height / 2]; })()`, quote(selector)))
	return at[0], at[1]
}

const wheelDeg = `Number(document.querySelector("svg.wheel").getAttribute("aria-valuenow"))`

// The wheel of a mouse and a pointer turn the hand as the browser tells of them.
func TestRealInputTurnsATry(t *testing.T) {
	d := slowDesk(t)
	b := staged(t, d.server, 1440, 900, "12A")
	shot := d.server.shown.Load().state.Plans[0].Good.Shots[0]
	gear := float64(shot.Gear)
	from, to := float64(shot.Pulls[0].FromDeg)*gear, float64(shot.Pulls[0].ToDeg)*gear
	sign := math.Copysign(1, to-from)
	b.tries()
	x, y := b.middle("svg.wheel")
	top := value[float64](b, `scrollY`)
	const notches, perNotch = 3, 4 // degrees a notch, as the page begins with
	for range notches {
		b.do(chromedp.MouseEvent(input.DispatchMouseEventTypeMouseWheel, x, y, func(p *input.DispatchMouseEventParams) {
			p.DeltaX, p.DeltaY = 1e-6, -100*sign // both are wanted, and a zero is left out
		}))
	}
	b.until(fmt.Sprintf(`Math.abs(%s - %g) < 0.06`, wheelDeg, from+sign*notches*perNotch))

	// A pointer goes 40 degrees round the middle of the wheel.
	const radius, angle = 60, 40.0
	y += value[float64](b, `document.querySelector("svg.wheel").getBoundingClientRect().height * (140 / 268 - 1 / 2)`)
	a := angle * math.Pi / 180 * sign
	if shot.Optics.TurnsTo == "left" {
		a = -a
	}
	for _, e := range []struct {
		kind input.DispatchMouseEventType
		a    float64
	}{{input.DispatchMouseEventTypeMousePressed, 0}, {input.DispatchMouseEventTypeMouseMoved, a}, {input.DispatchMouseEventTypeMouseReleased, a}} {
		b.do(chromedp.MouseEvent(e.kind, x+radius*math.Cos(e.a), y+radius*math.Sin(e.a), func(p *input.DispatchMouseEventParams) {
			p.Button, p.ClickCount, p.Buttons = input.MouseButtonLeft, 1, 1
		}))
	}
	want := from + sign*(notches*perNotch+angle)
	b.until(fmt.Sprintf(`Math.abs(%s - %g) < 1`, wheelDeg, want)) // a pointer stands on whole pixels
	if now := value[float64](b, `scrollY`); now != top {
		t.Errorf("the page was scrolled by %v", now-top)
	}
	b.press(kb.Enter)
	b.until(`document.querySelector(".verdict")`)
	b.picture("turned")
	landed := value[float64](b, `Number(document.querySelector(".outcome").dataset.error)`)
	if past := (want - to) * sign; math.Abs(landed-past) > 1 {
		t.Errorf("it landed %g° past the mark, want %g°", landed, past)
	}
	b.click("#rehearse", "Keep")
	b.until(`document.querySelector(".kept")`)
	list := written(t, logOf(filepath.Join(d.folder, "ticket-window.pull")))
	if len(list) != 1 || list[0].Note != "page, several means" || math.Abs(list[0].Error-landed) > 1e-3 {
		t.Errorf("the log has %+v", list)
	}
}

// The hand sets off when the event says, also where the page hears of it late.
func TestTheHandIsTimedByItsEvents(t *testing.T) {
	d := slowDesk(t)
	b := staged(t, d.server, 1440, 900, "12A")
	value[any](b, `(() => {
		const hold = (e) => {
			if (!globalThis.stamps) return;
			stamps.push(e.timeStamp);
			for (const end = performance.now() + 40; performance.now() < end;);
		};
		for (const kind of ["keydown", "wheel", "pointermove"]) addEventListener(kind, hold, { capture: true, passive: false });
	})() ?? 0`)
	for _, by := range []string{"key", "wheel", "pointer"} {
		b.tries()
		x, y := b.middle("svg.wheel")
		left := func(p *input.DispatchMouseEventParams) {
			p.Button, p.ClickCount, p.Buttons = input.MouseButtonLeft, 1, 1
		}
		if by == "pointer" {
			b.do(chromedp.MouseEvent(input.DispatchMouseEventTypeMousePressed, x+50, y, left))
		}
		// While it plays, the time of the shot lies this far from the clock.
		offset := value[float64](b, `import("./shared.js").then(({ player }) => { globalThis.stamps = []; return player.now - performance.now() / 1000; })`)
		switch by {
		case "key":
			b.press(kb.ArrowUp)
		case "wheel":
			b.do(chromedp.MouseEvent(input.DispatchMouseEventTypeMouseWheel, x, y, func(p *input.DispatchMouseEventParams) { p.DeltaX, p.DeltaY = 1e-6, -100 }))
		case "pointer":
			b.do(chromedp.MouseEvent(input.DispatchMouseEventTypeMouseMoved, x+40, y+40, left))
		}
		b.until(`globalThis.stamps.length > 0`)
		stamp := value[float64](b, `stamps[0] / 1000`)
		value[any](b, `(globalThis.stamps = null) ?? 0`)
		if by == "pointer" {
			b.do(chromedp.MouseEvent(input.DispatchMouseEventTypeMouseReleased, x+40, y+40, left))
		}
		b.press(kb.Enter)
		b.until(`document.querySelector(".verdict")`)
		onset := value[float64](b, `Number(document.querySelector(".outcome").dataset.onset)`)
		if late := onset - (stamp + offset); math.Abs(late) > 1e-3 {
			t.Errorf("%s: the hand set off %.1f ms after its event", by, late*1000)
		}
	}
}

// The wheel comes where the score was: nobody scrolls between Play and the wheel,
// nor between the picture and the wheel during a try.
func TestTheWheelIsInReach(t *testing.T) {
	d := slowDesk(t)
	for _, size := range [][2]int64{{1280, 720}, {1440, 900}, {1024, 768}, {390, 844}, {390, 664}, {360, 640}, {844, 390}} {
		t.Run(fmt.Sprint(size[0], "x", size[1]), func(t *testing.T) {
			b := staged(t, d.server, size[0], size[1], "12A")
			const seen = `(() => { const r = document.querySelector(%s).getBoundingClientRect(); return r.width > 80 && r.height > 20 && r.top >= -1 && r.bottom <= innerHeight + 1; })()`
			in := func(selector string) {
				t.Helper()
				if !value[bool](b, strings.Replace(strings.Replace(seen, "%s", quote(selector), 1), "80", "30", 1)) {
					t.Errorf("%s is not within the window: %s", selector, value[string](b, `JSON.stringify([document.querySelector(`+quote(selector)+`).getBoundingClientRect(), innerHeight])`))
				}
			}
			value[any](b, `document.querySelector(".transport .play").scrollIntoView({ block: "center" }) ?? 0`)
			b.clickOn(`#stage .transport button[aria-pressed]`)
			b.until(`document.body.classList.contains("rehearsing") && getComputedStyle(document.querySelector("#score")).display === "none"`)
			in(".transport .play")
			in("svg.wheel")
			in("#rehearse .start")
			b.picture("open")
			top := value[float64](b, `scrollY`)
			b.tries()
			in(".frame canvas")
			in("svg.wheel")
			in("#rehearse .start")
			b.picture("trying")
			if now := value[float64](b, `scrollY`); now != top {
				t.Errorf("the page scrolls by %v as a try begins", now-top)
			}
			b.lands()
			b.picture("landed")
			if over := value[int](b, `document.documentElement.scrollWidth - innerWidth`); over > 0 {
				t.Errorf("the page is %d pixels wider than the window: %s", over, value[string](b, `[...document.querySelectorAll("body *")].filter((e) => e.getBoundingClientRect().right > innerWidth + 1).map((e) => e.tagName + "." + (e.id || e.getAttribute("class"))).slice(0, 12).join(" ")`))
			}
			b.press(kb.Escape)
			b.until(`!document.body.classList.contains("rehearsing") && document.querySelector("#score").offsetHeight > 0 && document.querySelector("#rehearse").hidden`)
		})
	}
}

// There is one switch for the count-in. A rehearsal turns it on, unless someone
// has set it, and gives it back as it was.
func TestOneCountIn(t *testing.T) {
	d := newDesk(t, "ticket-window.pull")
	b := staged(t, d.server, 1280, 720, "12A")
	const counts = `[...document.querySelectorAll("button")].filter((e) => e.textContent === "Count in").map((e) => e.ariaPressed + (e.closest("#rehearse") ? " there" : "")).join()`
	is := func(want string) {
		t.Helper()
		b.until(counts + ` === ` + quote(want))
	}
	is("false")
	b.click("#stage", "Rehearse")
	is("true there")
	b.click("#stage", "Rehearse")
	is("false")
	b.press("m")
	b.press("m")
	b.click("#stage", "Rehearse")
	is("false there")
	if value[bool](b, `/spoken|heard/.test(document.querySelector("#rehearse").textContent)`) {
		t.Errorf("something is said to speak: %s", value[string](b, `document.querySelector("#rehearse").textContent`))
	}
}

// watchRests notes the longest time between two events that turn the hand, in
// milliseconds: a busy machine may pause where the test does not.
const watchRests = `(() => {
	for (const kind of ["wheel", "keydown", "pointermove"]) document.addEventListener(kind, (e) => {
		if (window.lastTurn) window.longestRest = Math.max(window.longestRest, e.timeStamp - window.lastTurn);
		window.lastTurn = e.timeStamp;
	}, true);
	return 0;
})()`

// longRuns has tests run as long as somebody waits for them by hand.
const longRuns = "PULLSCORE_LONG"

// Tries in a row land where they were let go, by wheel, by touch and by keys: sixty by
// hand.
func TestTriesInARow(t *testing.T) {
	each := 6
	if os.Getenv(longRuns) != "" {
		each = 20
	}
	for _, by := range []string{"wheel", "touch", "keys"} {
		t.Run(by, func(t *testing.T) {
			d := newDesk(t, "ticket-window.pull")
			d.edit("ticket-window.pull", "pause 1.2 s", "pause 0.6 s")
			b := newTab(t, 1280, 720)
			if by == "touch" {
				b.do(chromedp.EmulateViewport(390, 844, chromedp.EmulateMobile, chromedp.EmulateTouch))
			}
			b.open(d.server)
			b.until(complete)
			b.rehearses()
			shot := d.server.shown.Load().state.Plans[0].Good.Shots[0]
			from, to := float64(shot.Pulls[0].FromDeg*shot.Gear), float64(shot.Pulls[0].ToDeg*shot.Gear)
			way := math.Copysign(1, to-from)
			value[int](b, watchRests)
			for n, pauses := 0, 0; n < each; n++ {
				b.press("r")
				b.until(trying + ` && import("./shared.js").then(({ player }) => player.moving)`)
				value[int](b, `window.lastTurn = window.longestRest = 0`)
				b.letsGo(by, n, way)
				landed := value[float64](b, wheelDeg)
				if by != "touch" { // which lands by resting
					b.press(kb.Enter)
				}
				b.until(`!` + trying + ` && document.querySelector(".verdict")`)
				if got, want := value[float64](b, `Number(document.querySelector(".outcome").dataset.error)`), (landed-to)*way; math.Abs(got-want) > 0.06 { // the wheel tells tenths
					if rest := value[float64](b, `window.longestRest`); rest > 250 && pauses < each {
						n, pauses = n-1, pauses+1 // the machine paused, so the hand rested: once more
						continue
					}
					t.Fatalf("try %d was let go %.1f° past the mark, and landed %.2f° past it", n+1, want, got)
				}
				if now := value[float64](b, wheelDeg); now != landed {
					t.Fatalf("after try %d the wheel stands at %v° and was let go at %v°", n+1, now, landed)
				}
				if math.Abs(landed-from) < 1 {
					t.Fatalf("try %d has not turned the wheel", n+1)
				}
			}
		})
	}
}

// letsGo turns the wheel some way that differs from try to try, and lets it go.
func (b *tab) letsGo(by string, n int, way float64) {
	b.Helper()
	switch by {
	case "wheel":
		x, y := b.middle("svg.wheel")
		for range 5 + n%7 {
			b.do(chromedp.MouseEvent(input.DispatchMouseEventTypeMouseWheel, x, y, func(p *input.DispatchMouseEventParams) {
				p.DeltaX, p.DeltaY = 1e-6, -100*way
			}))
		}
	case "keys":
		key := kb.PageUp
		if way < 0 {
			key = kb.PageDown
		}
		for range 2 + n%4 {
			b.press(key)
		}
	case "touch":
		b.turnsByTouch(n)
	}
}

// turnsByTouch puts a finger on the wheel, goes round with it and lifts it.
func (b *tab) turnsByTouch(n int) {
	b.Helper()
	box := value[[]float64](b, `(() => { const r = document.querySelector("svg.wheel").getBoundingClientRect(); return [r.left, r.top, r.width, r.height]; })()`)
	x, y, radius := box[0]+box[2]/2, box[1]+box[3]*140/268, box[2]*0.3
	// Farther is clockwise or not; the mark is on the side of the larger turn.
	side := value[float64](b, `import("./shared.js").then(() => { const marks = document.querySelectorAll(".wheel .mark"); const a = Number(marks[1].getAttribute("transform").slice(7, -1)) - Number(marks[0].getAttribute("transform").slice(7, -1)); return -Math.sign(a); })`)
	send := func(kind input.DispatchTouchEventType, points ...*input.TouchPoint) {
		b.Helper()
		if _, err := chromedp.Call(b.ctx, input.DispatchTouchEvent, input.DispatchTouchEventParams{Type: kind, TouchPoints: points}); err != nil {
			b.Fatal(err)
		}
	}
	at := func(deg float64) *input.TouchPoint {
		a := deg * math.Pi / 180
		return &input.TouchPoint{X: x + radius*math.Sin(a), Y: y - radius*math.Cos(a)}
	}
	send(input.DispatchTouchEventTypeTouchStart, at(0))
	for step := 1; step <= 4; step++ {
		send(input.DispatchTouchEventTypeTouchMove, at(side*float64(step*(24+n))/4))
	}
	send(input.DispatchTouchEventTypeTouchEnd)
}
