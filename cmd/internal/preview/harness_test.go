// A real browser for tests: one for all of them, a tab for each. Whatever a
// page writes to its console as an error fails its test.

package preview

import (
	"context"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"
)

// picturesTo names a folder for pictures of the pages, to look at.
const picturesTo = "PULLSCORE_PICTURES"

// A browser is started when the first test asks for it.
var browser struct {
	start sync.Once
	ctx   context.Context
	end   context.CancelFunc
	dir   string
	lack  string // why there is none
}

func TestMain(m *testing.M) {
	code := m.Run()
	if browser.end != nil {
		browser.end()
		for range 50 { // its last files come late
			if os.RemoveAll(browser.dir) == nil {
				break
			}
			time.Sleep(100 * time.Millisecond)
		}
	}
	os.Exit(code)
}

func startBrowser() {
	path := ""
	for _, name := range []string{"chromium", "chromium-browser"} {
		if found, err := exec.LookPath(name); err == nil {
			path = found
			break
		}
	}
	if path == "" {
		browser.lack = "chromium is not installed"
		return
	}
	dir, err := os.MkdirTemp("", "pullscore-browser")
	if err != nil {
		browser.lack = err.Error()
		return
	}
	browser.dir = dir
	options := append(chromedp.DefaultExecAllocatorOptions[:],
		chromedp.ExecPath(path), chromedp.UserDataDir(dir), chromedp.NoSandbox, chromedp.DisableGPU,
		chromedp.Flag("disable-quic", true), chromedp.Flag("disable-component-update", true),
		chromedp.Flag("hide-scrollbars", false), chromedp.WindowSize(1440, 900))
	all, endAll := chromedp.NewExecAllocator(context.Background(), options...)
	ctx, end := chromedp.NewContext(all, chromedp.WithLogf(func(string, ...any) {}), chromedp.WithErrorf(func(string, ...any) {}))
	browser.end = func() { end(); endAll() }
	if err := chromedp.Do(ctx); err != nil {
		browser.lack = "chromium does not start: " + err.Error()
		return
	}
	browser.ctx = ctx
}

// A tab is a page of the browser.
type tab struct {
	testing.TB
	ctx context.Context

	mu     sync.Mutex
	errors []string
	except []string // errors that the test expects hold one of these
}

// newTab opens a tab of that size; without a browser the test is skipped.
func newTab(t testing.TB, width, height int64) *tab {
	t.Helper()
	if testing.Short() {
		t.Skip("skipped: tests in a browser take long")
	}
	browser.start.Do(startBrowser)
	if browser.ctx == nil {
		t.Skip("skipped: no browser: " + browser.lack)
	}
	timed, cancelTime := context.WithTimeout(browser.ctx, 5*time.Minute)
	ctx, cancel := chromedp.NewContext(timed)
	tab := &tab{TB: t, ctx: ctx}
	tab.do(chromedp.EmulateViewport(width, height))
	messages := chromedp.Console(ctx)
	go func() {
		for m, err := range messages {
			if err != nil {
				return
			}
			if m.IsException() || m.Type == "error" {
				tab.mu.Lock()
				tab.errors = append(tab.errors, m.String())
				tab.mu.Unlock()
			}
		}
	}()
	t.Cleanup(func() {
		tab.mu.Lock()
		defer tab.mu.Unlock()
		for _, e := range tab.errors {
			if !tab.expected(e) {
				t.Errorf("the page's console says: %s", e)
			}
		}
		cancel()
		cancelTime()
	})
	return tab
}

func (b *tab) expected(text string) bool {
	for _, part := range b.except {
		if strings.Contains(text, part) {
			return true
		}
	}
	return false
}

func (b *tab) do(steps ...chromedp.Action[chromedp.Void]) {
	b.Helper()
	if err := chromedp.Do(b.ctx, steps...); err != nil {
		b.Fatal(err)
	}
}

// open loads the page and waits until it shows a state.
func (b *tab) open(s *Server) {
	b.Helper()
	b.do(chromedp.Navigate(s.URL()))
	b.until(`document.querySelector("#link")?.dataset.state === "live"`)
}

// value evaluates an expression in the page.
func value[T any](b *tab, js string) T {
	b.Helper()
	v, err := chromedp.Run(b.ctx, chromedp.Evaluate[T](js, chromedp.EvalAwaitPromise))
	if err != nil {
		b.Fatalf("%s: %v", js, err)
	}
	return v
}

// lookInside looks for a second whether an expression is true, within the page: to ask from
// here each time would keep both busy.
const lookInside = `new Promise((done) => {
	const end = performance.now() + 1000;
	const look = async () => {
		let ok = false;
		try { ok = Boolean(await (%s)); } catch {}
		if (ok || performance.now() > end) done(ok);
		else setTimeout(look, 15);
	};
	look();
})`

// until waits for an expression, or what it promises, to be true.
func (b *tab) until(js string) {
	b.Helper()
	look := fmt.Sprintf(lookInside, js)
	for end := time.Now().Add(tooLong); time.Now().Before(end); time.Sleep(10 * time.Millisecond) {
		if ok, err := chromedp.Run(b.ctx, chromedp.Evaluate[bool](look, chromedp.EvalAwaitPromise)); ok && err == nil {
			return // an error is that of a page that goes, or of a part that is not there yet
		}
	}
	b.picture("failed")
	b.Fatalf("never true: %s\nthe page says: %.2000s", js, value[string](b, "document.body.innerText"))
}

// press presses keys, one after the other.
func (b *tab) press(keys string, modifiers ...chromedp.Modifier) {
	b.Helper()
	b.do(chromedp.KeyEvent(keys, chromedp.KeyModifiers(modifiers...)))
}

// dark has the page seen by someone who likes dark screens.
func (b *tab) dark() {
	b.Helper()
	b.sees("screen", map[string]string{"prefers-color-scheme": "dark"})
}

// sees has the page seen on another medium, with features of it set.
func (b *tab) sees(medium string, features map[string]string) {
	b.Helper()
	media := emulation.SetEmulatedMediaParams{Media: medium}
	for name, value := range features {
		media.Features = append(media.Features, &emulation.MediaFeature{Name: name, Value: value})
	}
	if _, err := chromedp.Call(b.ctx, emulation.SetEmulatedMedia, media); err != nil {
		b.Fatal(err)
	}
}

// picture keeps a picture of what is seen, where someone wants to look at it.
func (b *tab) picture(name string) {
	b.Helper()
	dir := os.Getenv(picturesTo)
	if dir == "" {
		return
	}
	png, err := chromedp.Run(b.ctx, chromedp.CaptureScreenshot())
	if err != nil {
		b.Fatal(err)
	}
	file := filepath.Join(dir, fmt.Sprintf("%s-%s.png", strings.ReplaceAll(b.Name(), "/", "-"), name))
	if err := os.WriteFile(file, png, 0o644); err != nil {
		b.Fatal(err)
	}
}
