// The page beside a real folder of plans that are saved.

package preview

import (
	"context"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp"

	"pullscore/cmd/internal/rebuild"
)

// A desk is a folder of plans that are watched and shown.
type desk struct {
	testing.TB
	folder string
	server *Server
}

// newDesk copies examples to a folder, and watches and serves them.
func newDesk(t testing.TB, names ...string) *desk {
	t.Helper()
	d := &desk{TB: t, folder: t.TempDir()}
	for _, name := range append(names, "kit.pull") {
		_, src := example(t, name)
		d.save(name, src)
	}
	d.server = d.serve(Options{})
	return d
}

// serve watches the folder and serves it, until the test ends.
func (d *desk) serve(opt Options) *Server {
	d.Helper()
	s := serve(d, opt)
	d.watch(s)
	return s
}

func (d *desk) watch(s *Server) {
	d.Helper()
	r, err := rebuild.New([]string{d.folder}, rebuild.Options{Folder: d.TempDir()})
	if err != nil {
		d.Fatal(err)
	}
	ctx, cancel := context.WithCancel(context.Background())
	ended := make(chan error, 1)
	go func() { ended <- r.Run(ctx, func(state *rebuild.State, _ []rebuild.Change) { s.Show(state) }) }()
	d.Cleanup(func() {
		cancel()
		if err := <-ended; err != nil {
			d.Error(err)
		}
	})
}

func (d *desk) save(name, src string) {
	d.Helper()
	if err := os.WriteFile(filepath.Join(d.folder, name), []byte(src), 0o644); err != nil {
		d.Fatal(err)
	}
}

// edit saves a plan with words replaced.
func (d *desk) edit(name, old, new string) {
	d.Helper()
	b, err := os.ReadFile(filepath.Join(d.folder, name))
	if err != nil {
		d.Fatal(err)
	}
	if !strings.Contains(string(b), old) {
		d.Fatalf("%s has no %q", name, old)
	}
	d.save(name, strings.ReplaceAll(string(b), old, new))
}

// says is an expression for whether the text of elements holds a text.
func says(selector, text string) string {
	return `[...document.querySelectorAll(` + quote(selector) + `)].some((e) => e.textContent.includes(` + quote(text) + `))`
}

func TestASaveUpdatesThePage(t *testing.T) {
	d := newDesk(t, "lantern.pull")
	b := newTab(t, 1000, 600)
	b.open(d.server)
	b.until(complete)
	b.press("+")
	b.until(drawnToSize)
	value[any](b, `import("./shared.js").then((m) => m.player.seek(2.5)).then(() => 0)`)
	value[any](b, `(document.getElementById("sheets").dispatchEvent(new WheelEvent("wheel", { deltaY: -60, ctrlKey: true, bubbles: true, cancelable: true })), 0)`) // between two rungs
	value[any](b, `document.querySelector("#sheets").scrollLeft = 90`)
	value[any](b, `scrollTo(0, 210) ?? 0`)
	value[any](b, `import("./shared.js").then((m) => m.player.seek(2.5)).then(() => 0)`)
	const where = `JSON.stringify([scrollY, document.querySelector("#sheets").scrollLeft, document.getElementById("zoom").value, document.getElementById("clock").value])`
	before := value[string](b, where)

	d.edit("lantern.pull", "Bridge, lantern, boy", "Bridge, lamp, boy")
	b.until(says(".sheet text", "Bridge, lamp, boy"))
	b.until(says("#list .shot-title", "Bridge, lamp, boy"))
	b.until(says("#live", "is drawn anew"))
	if after := value[string](b, where); after != before {
		t.Errorf("place, size and time were %s, and are %s", before, after)
	}

	// Even while it plays, a save does not stop it.
	value[any](b, `import("./shared.js").then((m) => m.player.play()).then(() => 0)`)
	d.edit("lantern.pull", "Bridge, lamp, boy", "Bridge and boy")
	b.until(says(".sheet text", "Bridge and boy"))
	if !value[bool](b, `import("./shared.js").then((m) => m.player.playing && m.player.time > 2.5)`) {
		t.Error("a save stopped the playhead")
	}
}

func TestErrorsShowAndClear(t *testing.T) {
	d := newDesk(t, "lantern.pull")
	b := newTab(t, 1440, 900)
	b.open(d.server)
	b.until(sheetCount + ` === 1`)
	drawing := value[string](b, `document.querySelector(".sheet > svg").innerHTML`)

	d.edit("lantern.pull", "rack to LANTERN", "rack to LANTREN")
	b.until(`!document.getElementById("notice").hidden`)
	b.until(says("#findings .text-now .message", "LANTREN"))
	b.until(says("#findings .text-now .place", "lantern.pull:"))
	b.until(says("#findings .text-now .severity", "error"))
	b.until(says("#list .badge", "1 error"))
	if after := value[string](b, `document.querySelector(".sheet > svg").innerHTML`); after != drawing {
		t.Error("the last good drawing has not stayed")
	}
	b.picture("errors")
	b.dark()
	b.picture("errors-dark")

	// A page that is opened now shows the same.
	other := newTab(t, 390, 844)
	other.open(d.server)
	other.until(`!document.getElementById("notice").hidden && ` + sheetCount + ` === 1`)
	other.picture("errors-narrow")

	d.edit("lantern.pull", "LANTREN", "LANTERN")
	for _, tab := range []*tab{b, other} {
		tab.until(`document.getElementById("notice").hidden && !document.querySelector(".text-now")`)
	}
}

func TestPlansComeAndGo(t *testing.T) {
	d := newDesk(t, "lantern.pull", "gangway.pull")
	b := newTab(t, 1000, 700)
	b.open(d.server)
	b.until(`document.querySelectorAll("#list .shot").length === 2`)
	b.press("]")
	b.until(says(".sheet text", "Bridge, lantern, boy"))
	if err := os.Remove(filepath.Join(d.folder, "lantern.pull")); err != nil {
		t.Fatal(err)
	}
	b.until(`document.querySelectorAll("#list .shot").length === 1`)
	b.until(says(".sheet text", "Down to the key"))
	_, src := example(t, "lantern.pull")
	d.save("lantern.pull", src)
	b.until(`document.querySelectorAll("#list .shot").length === 2`)
	b.until(says(".sheet text", "Bridge, lantern, boy")) // what was wanted is back
}

// A plan whose text is not there for a moment, or for longer, is shown again as
// soon as it is back, where it was.
func TestAnEmptyFileLosesNothing(t *testing.T) {
	d := newDesk(t, "lantern.pull", "gangway.pull")
	_, src := example(t, "lantern.pull")
	b := newTab(t, 1000, 700)
	b.open(d.server)
	b.until(`document.querySelectorAll("#list .shot").length === 2`)
	value[any](b, `document.querySelectorAll("#list .shot")[1].click() ?? 0`)
	b.until(says(".sheet text", "Bridge, lantern, boy"))
	b.until(complete)
	b.seek(2.5)
	back := func(src, title string) {
		t.Helper()
		d.save("lantern.pull", src)
		b.until(`document.getElementById("notice").hidden && document.querySelectorAll("#list .shot").length === 2`)
		b.until(says(".sheet text", title))
		b.until(says("#shot-name .shot-title", title))
		if hash := value[string](b, `location.hash`); !strings.HasSuffix(hash, "/31C") {
			t.Errorf("the page is at %s", hash)
		}
	}
	d.save("lantern.pull", "")
	b.until(`!document.getElementById("notice").hidden && document.querySelectorAll("#list .shot").length === 1`)
	b.picture("missing")
	back(src, "Bridge, lantern, boy")
	if at := value[float64](b, `import("./shared.js").then(({ player }) => player.time)`); at != 2.5 {
		t.Errorf("the playhead stands at %v s and was at 2.5 s", at)
	}
	d.save("lantern.pull", "") // for so long that another shot is shown
	b.until(says(".sheet text", "Down to the key"))
	back(src, "Bridge, lantern, boy")

	// Another branch: both plans are others, and the shot is one of them.
	d.save("gangway.pull", "")
	d.edit("lantern.pull", "Bridge, lantern, boy", "Bridge, lamp, boy")
	b.until(says(".sheet text", "Bridge, lamp, boy"))
	d.save("gangway.pull", second(example(t, "gangway.pull")))
	back(src, "Bridge, lantern, boy")

	// A shot that was renamed is shown by its new name.
	d.edit("lantern.pull", "shot 31C", "shot 31X")
	b.until(says("#shot-name .shot-id", "31X"))
	b.until(`document.getElementById("notice").hidden`)
}

func TestFindingsLeadToTheirPlace(t *testing.T) {
	d := newDesk(t, "lantern.pull")
	d.edit("lantern.pull", "over 1.5 s", "over 1 s")
	b := newTab(t, 1000, 500)
	b.open(d.server)
	b.until(`document.querySelectorAll(".finding-item").length > 0`)
	b.until(sheetCount + ` > 0`)
	value[any](b, `document.querySelector(".finding-item").click() ?? 0`)
	b.until(`document.querySelector("g.finding.lit")`)
	b.until(`(() => { const r = document.querySelector("g.finding.lit").getBoundingClientRect(); return r.top > 0 && r.bottom < innerHeight && r.left > 0 && r.right < innerWidth; })()`)
	b.until(`Number(document.querySelector(".playhead").getAttribute("aria-valuenow")) > 0`)
	b.picture("jumped")
}

func TestThePlayheadFollowsThePointer(t *testing.T) {
	d := newDesk(t, "lantern.pull")
	b := newTab(t, 1440, 900)
	b.open(d.server)
	b.until(complete)
	value[any](b, `document.querySelector(".sheet").scrollIntoView() ?? 0`)
	// Where times lie, by the ruler as the page draws it.
	const ruler = `(() => { const l = document.querySelector("g.ruler line").getBoundingClientRect(); return [l.left, l.width, l.top]; })()`
	box := value[[]float64](b, ruler)
	duration := value[float64](b, `Number(document.querySelector(".playhead").getAttribute("aria-valuemax"))`)
	at := func(t float64) float64 { return box[0] + t/duration*box[1] }
	b.do(dragged(at(4.5), at(6), box[2]+100)...)
	got := value[float64](b, `Number(document.querySelector(".playhead").getAttribute("aria-valuenow"))`)
	if got < 5.97 || got > 6.03 {
		t.Errorf("the playhead was dragged to 6 s and stands at %v s", got)
	}
	head := value[float64](b, `(() => { const r = document.querySelector(".playhead").getBoundingClientRect(); return r.left + r.width / 2; })()`)
	if d := head - at(6); d < -1.5 || d > 1.5 {
		t.Errorf("the playhead stands %v pixels beside its time", d)
	}
}

func TestAFingerTapsATime(t *testing.T) {
	d := newDesk(t, "lantern.pull")
	b := newTab(t, 390, 844)
	b.do(chromedp.EmulateViewport(390, 844, chromedp.EmulateMobile, chromedp.EmulateTouch))
	b.open(d.server)
	b.until(complete)
	value[any](b, `document.querySelector(".sheet").scrollIntoView() ?? 0`)
	const playhead = `Number(document.querySelector(".playhead").getAttribute("aria-valuenow"))`
	// A narrow screen shows a shot in several systems, each with its own ruler.
	box := value[[]float64](b, `(() => { const l = [...document.querySelectorAll("g.ruler text")].find((e) => e.textContent === "2 s").getBoundingClientRect(); return [l.left + l.width / 2, l.bottom]; })()`)
	b.do(chromedp.TapXY(box[0], box[1]+60))
	b.until(playhead + ` > 1.9 && ` + playhead + ` < 2.1`)
}

func TestThePageComesBack(t *testing.T) {
	d := newDesk(t, "lantern.pull")
	first, err := New(Options{})
	if err != nil {
		t.Fatal(err)
	}
	stop := start(t, first)
	d.watch(first)
	b := newTab(t, 1000, 700)
	b.except = []string{"net::ERR", "Failed to load resource"}
	b.open(first)
	b.until(sheetCount + ` > 0`)
	b.press("+")
	b.until(drawnToSize)
	size := value[string](b, `document.getElementById("zoom").value`)
	stop()
	b.until(`document.getElementById("link").dataset.state === "waiting"`)
	b.picture("waiting")
	d.edit("lantern.pull", "Bridge, lantern, boy", "Bridge, lamp, boy")

	var second *Server
	for end := time.Now().Add(tooLong); ; time.Sleep(50 * time.Millisecond) {
		if second, err = New(Options{Addr: "127.0.0.1:" + first.hosts.port}); err == nil || time.Now().After(end) {
			break
		}
	}
	if err != nil {
		t.Fatal(err)
	}
	start(t, second)
	d.watch(second)
	b.until(`document.getElementById("link").dataset.state === "live"`)
	b.until(says(".sheet text", "Bridge, lamp, boy"))
	if zoom := value[string](b, `document.getElementById("zoom").value`); zoom != size {
		t.Errorf("the size is %s after coming back", zoom)
	}
	if got := value[string](b, `import("./shared.js").then((m) => m.post("api/none", {})).catch((e) => e.message)`); strings.Contains(got, "earlier run") {
		t.Error("the page still has the token of the run before")
	}
}

// A page on another device is live again after a restart, and says what to do
// where the address is another.
func TestAnotherDeviceComesBack(t *testing.T) {
	d := newDesk(t, "lantern.pull")
	opt := Options{Addr: "0.0.0.0:" + freePort(t), Folder: d.folder, Tokens: t.TempDir()}
	run := func() (*Server, func()) {
		t.Helper()
		for end := time.Now().Add(tooLong); ; time.Sleep(50 * time.Millisecond) {
			s, err := New(opt)
			if err == nil {
				stop := start(t, s)
				d.watch(s)
				return s, stop
			}
			if time.Now().After(end) {
				t.Fatal(err)
			}
		}
	}
	first, stop := run()
	b := newTab(t, 390, 844)
	b.except = []string{"net::ERR", "Failed to load resource"}
	b.do(chromedp.Navigate("http://127.0.0.1:" + first.hosts.port + "/?" + accessParam + "=" + first.access))
	b.until(`document.querySelector("#link")?.dataset.state === "live" && ` + sheetCount + ` > 0`)
	stop()
	b.until(`document.getElementById("link").dataset.state === "waiting"`)
	d.edit("lantern.pull", "Bridge, lantern, boy", "Bridge, lamp, boy")
	_, stop = run()
	b.until(`document.getElementById("link").dataset.state === "live"`)
	b.until(says(".sheet > svg > title", "Bridge, lamp, boy"))

	stop()
	b.until(`document.getElementById("link").dataset.state === "waiting"`)
	opt.NewToken = true
	run()
	b.until(`document.getElementById("link").textContent === "Open the address that the program printed."`)
	b.picture("refused")
	value[any](b, `(() => {
		globalThis.asked = 0;
		const Source = EventSource;
		globalThis.EventSource = class extends Source { constructor(...all) { super(...all); asked++; } };
	})() ?? 0`)
	value[any](b, `new Promise((done) => setTimeout(() => done(0), 1500))`)
	if asked := value[int](b, `asked`); asked != 0 {
		t.Errorf("the page has asked %d times more", asked)
	}
}
