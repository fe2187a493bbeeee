package main

import (
	"bytes"
	"context"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"

	"pullscore/interp"
	"pullscore/interp/plan"
	"pullscore/render/draw"
	"pullscore/render/ring"
	"pullscore/render/sheet"
)

// briefOf runs the command and returns the file.
func briefOf(t *testing.T, form string, args ...string) []byte {
	t.Helper()
	file := filepath.Join(t.TempDir(), "brief."+form)
	var out, errs bytes.Buffer
	if code := run(append([]string{"brief", "--as", form, "-o", file}, args...), strings.NewReader(""), &out, &errs); code != exitFine {
		t.Fatalf("exit code %d: %s", code, &errs)
	}
	data, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	return data
}

// lantern is the example with a hand wheel: it has a strip and a dial.
const lantern = "../../examples/lantern.pull"

func lanternShot(t *testing.T) *plan.Shot {
	t.Helper()
	src, err := os.ReadFile(lantern)
	if err != nil {
		t.Fatal(err)
	}
	return interp.Interpret(lantern, src, interp.Options{}).Plan.Shots[0]
}

// The marks of the strip lie in the PDF where the drawing has them, and so does
// the bar of 50 mm; printed from HTML by Chromium they still do.
func TestBriefIsTrueToScale(t *testing.T) {
	t.Run("PDF", func(t *testing.T) {
		for size, paper := range map[string]sheet.Paper{"a4": sheet.A4, "letter": sheet.Letter} {
			file := briefOf(t, "pdf", "--paper", size, lantern)
			trueToScale(t, pdfLines(t, file), paper)
		}
	})
	t.Run("HTML", func(t *testing.T) {
		for size, paper := range map[string]sheet.Paper{"a4": sheet.A4, "letter": sheet.Letter} {
			tab := openBrief(t, briefOf(t, "html", "--paper", size, lantern))
			file, err := chromedp.Run(tab, chromedp.PrintToPDF(chromedp.PDFPreferCSSPageSize(), chromedp.PDFPrintBackground()))
			if err != nil {
				t.Fatal(err)
			}
			keepPicture(t, "printed-"+size+".pdf", file)
			trueToScale(t, pdfLines(t, file), paper)
		}
	})
}

// trueToScale checks that every line of the strip and the dial, marks and
// check bar among them, is on a page within 0.05 mm, and that the bar is drawn as
// long as it says.
func trueToScale(t *testing.T, pages [][]pdfLine, paper sheet.Paper) {
	t.Helper()
	const within = 0.05 // mm, as accurately as tape is laid
	shot := lanternShot(t)
	for _, drawing := range []func(*plan.Shot, sheet.Options) []*draw.Page{ring.Ring} {
		for _, p := range drawing(shot, sheet.Options{Paper: paper}) {
			want, bar := linesOf(p)
			if len(want) < 8 {
				t.Fatalf("%s has %d lines", p.Title, len(want))
			}
			best := len(want)
			for _, lines := range pages {
				lost := 0
				for _, line := range want {
					if !slices.ContainsFunc(lines, func(l pdfLine) bool { return l.near(line, within) }) {
						lost++
					}
				}
				best = min(best, lost)
			}
			if best > 0 {
				t.Errorf("%s: %d of %d lines are not where they belong", p.Title, best, len(want))
			}
			if length := bar.x2 - bar.x1; length < 49.995 || length > 50.005 {
				t.Errorf("%s: the bar of 50 mm is %.3f mm", p.Title, length)
			}
		}
	}
}

// linesOf returns the unbroken straight lines of a page, and the longest of its
// check bar. Browsers print the dashes of a broken line one by one.
func linesOf(p *draw.Page) (lines []pdfLine, bar pdfLine) {
	var gather func(g *draw.Group, inBar bool)
	gather = func(g *draw.Group, inBar bool) {
		for _, it := range g.Items {
			switch it := it.(type) {
			case *draw.Group:
				gather(it, inBar || it.Name == "check-bar")
			case draw.Line:
				if len(it.Stroke.Dash) > 0 {
					continue
				}
				line := pdfLine{it.From.X, it.From.Y, it.To.X, it.To.Y}
				lines = append(lines, line)
				if inBar && line.x2-line.x1 > bar.x2-bar.x1 {
					bar = line
				}
			}
		}
	}
	gather(&p.Root, false)
	return lines, bar
}

// byColour are the rules of axe-core that look at colours: all others say the same in the
// dark as in the light.
const byColour = `{runOnly: {type: "rule", values: ["color-contrast", "link-in-text-block"]}}`

// keepKinds takes away each drawing in which every element, by its tag, class and role and
// those of its parent, is like one of an earlier drawing. It returns how many it keeps.
// axe-core judges an element by these, and takes minutes for the tens of thousands of all
// drawings.
const keepKinds = `(() => {
	const name = e => e.tagName + "." + e.getAttribute("class") + "." + e.getAttribute("role")
	const seen = new Set()
	let kept = 0
	for (const drawing of document.querySelectorAll("svg")) {
		const kinds = [...drawing.querySelectorAll("*")].map(e => name(e.parentElement) + ">" + name(e))
		if (kinds.every(k => seen.has(k))) drawing.remove()
		else kept++
		kinds.forEach(k => seen.add(k))
	}
	return kept
})()`

// A phone opens the file without a network; nothing in it is wider than the
// screen, and axe-core finds nothing to object to, in the light or the dark.
func TestBriefOnAPhone(t *testing.T) {
	file := briefOf(t, "html", "../../examples")
	for _, outside := range []string{"http:", "https:", "//", "url(", "@import", "<script ", "src=", "<link"} {
		if bytes.Contains(bytes.ReplaceAll(file, []byte(`xmlns="http://www.w3.org/2000/svg"`), nil), []byte(outside)) {
			t.Errorf("the file holds %s", outside)
		}
	}
	tab := openBrief(t, file)
	if err := chromedp.Do(tab, chromedp.EmulateViewport(390, 844)); err != nil {
		t.Fatal(err)
	}
	over, err := chromedp.Run(tab, chromedp.Evaluate[int](`document.documentElement.scrollWidth - innerWidth`))
	if err != nil || over > 0 {
		t.Errorf("the page is %d pixels wider than the screen (%v)", over, err)
	}
	hidden, err := chromedp.Run(tab, chromedp.Evaluate[[]string](
		`[...document.querySelectorAll("table.rows td")].filter(c => c.getBoundingClientRect().right > innerWidth).map(c => c.textContent)`))
	if err != nil || len(hidden) > 0 {
		t.Errorf("cells of tables are off the screen: %q (%v)", hidden, err)
	}
	axe := axeSource(t)
	kept, err := chromedp.Run(tab, chromedp.Evaluate[int](keepKinds))
	if err != nil || kept < 10 {
		t.Fatalf("%d drawings are of a kind of their own (%v)", kept, err)
	}
	for _, look := range []struct{ scheme, rules string }{{"light", "{}"}, {"dark", byColour}} {
		scheme := look.scheme
		media := emulation.SetEmulatedMediaParams{Features: []*emulation.MediaFeature{{Name: "prefers-color-scheme", Value: scheme}}}
		if _, err := chromedp.Call(tab, emulation.SetEmulatedMedia, media); err != nil {
			t.Fatal(err)
		}
		picture, err := chromedp.Run(tab, chromedp.CaptureScreenshot())
		if err != nil {
			t.Fatal(err)
		}
		keepPicture(t, "phone-"+scheme+".png", picture)
		faults, err := chromedp.Run(tab, chromedp.Evaluate[[]string](axe+`;
			axe.run(`+look.rules+`).then(r => r.violations.map(v => v.id + ": " + v.help + " at " + v.nodes.slice(0, 3).map(n => n.html.slice(0, 120)).join(" and ")))`,
			chromedp.EvalAwaitPromise))
		if err != nil {
			t.Fatal(err)
		}
		for _, fault := range faults {
			t.Errorf("%s: %s", scheme, fault)
		}
	}
}

// axeSource returns axe-core, which the environment variable PULLSCORE_AXE
// names a folder of npm with.
func axeSource(t *testing.T) string {
	t.Helper()
	dir := os.Getenv("PULLSCORE_AXE")
	if dir == "" {
		t.Skip("skipped: PULLSCORE_AXE does not name a folder with axe-core")
	}
	src, err := os.ReadFile(filepath.Join(dir, "node_modules", "axe-core", "axe.min.js"))
	if err != nil {
		t.Fatal(err)
	}
	return string(src)
}

// openBrief opens a file from the disk in a browser that has no network.
func openBrief(t *testing.T, file []byte) context.Context {
	t.Helper()
	if testing.Short() {
		t.Skip("skipped: tests in a browser take long")
	}
	path, err := exec.LookPath("chromium")
	if err != nil {
		t.Skip("skipped: chromium is not installed")
	}
	name := filepath.Join(t.TempDir(), "brief.html")
	if err := os.WriteFile(name, file, 0o644); err != nil {
		t.Fatal(err)
	}
	options := append(chromedp.DefaultExecAllocatorOptions[:],
		chromedp.ExecPath(path), chromedp.NoSandbox, chromedp.DisableGPU,
		chromedp.Flag("disable-quic", true), chromedp.Flag("disable-component-update", true),
		chromedp.ProxyServer("127.0.0.1:9")) // the port of discard: whatever asks the network gets nothing
	all, endAll := chromedp.NewExecAllocator(context.Background(), options...)
	timed, endTime := context.WithTimeout(all, 10*time.Minute) // what a busy machine may need
	tab, end := chromedp.NewContext(timed, chromedp.WithLogf(func(string, ...any) {}), chromedp.WithErrorf(func(string, ...any) {}))
	t.Cleanup(func() { end(); endTime(); endAll() })
	if err := chromedp.Do(tab, chromedp.Navigate("file://"+name)); err != nil {
		t.Fatal(err)
	}
	return tab
}

// keepPicture keeps what was made where someone wants to look at it: in the
// folder that PULLSCORE_PICTURES names.
func keepPicture(t *testing.T, name string, data []byte) {
	t.Helper()
	if dir := os.Getenv("PULLSCORE_PICTURES"); dir != "" {
		if err := os.WriteFile(filepath.Join(dir, "brief-"+name), data, 0o644); err != nil {
			t.Fatal(err)
		}
	}
}

// The outline leads to scenes, shots and drawings, nested.
func TestBriefOutline(t *testing.T) {
	file := string(briefOf(t, "pdf", lantern))
	for _, title := range []string{"Cover", "The Last Boat, scene 31: the signal", "31C Bridge, lantern, boy", "Score", "Ring", "Floor", "Tolerance", "Log"} {
		if !strings.Contains(file, "/Title "+pdfText(title)) {
			t.Errorf("the outline has no %q", title)
		}
	}
}

// pdfText writes a text of the Basic Multilingual Plane as PDF does.
func pdfText(text string) string {
	b := []byte("(\xfe\xff")
	for _, r := range text {
		b = append(b, byte(r>>8), byte(r))
	}
	return string(b) + ")"
}

func TestBriefSameBytes(t *testing.T) {
	for _, form := range []string{"pdf", "html"} {
		first := briefOf(t, form, "../../examples")
		if !bytes.Equal(first, briefOf(t, form, "../../examples")) {
			t.Errorf("%s: another run gives other bytes", form)
		}
		if bytes.Contains(first, []byte("examples")) {
			t.Errorf("%s: the file names a folder", form)
		}
		checkLinks(t, form, string(first))
	}
}

var (
	htmlLink = regexp.MustCompile(`href="#([^"]*)"`)
	htmlID   = regexp.MustCompile(`\bid="([^"]*)"`)
	pdfLink  = regexp.MustCompile(`/Subtype /Link [^\n]*/Dest \[(\d+) 0 R`)
	pdfPage  = regexp.MustCompile(`(?m)^(\d+) 0 obj\n<</Type /Page\n`)
)

// checkLinks fails for links of a brief that lead nowhere, and where there are hardly any.
func checkLinks(t *testing.T, form, file string) {
	t.Helper()
	link, place := pdfLink, pdfPage
	if form == "html" {
		link, place = htmlLink, htmlID
	}
	places := map[string]bool{}
	for _, m := range place.FindAllStringSubmatch(file, -1) {
		if places[m[1]] {
			t.Errorf("%s: two places are called %s", form, m[1])
		}
		places[m[1]] = true
	}
	links := link.FindAllStringSubmatch(file, -1)
	for _, m := range links {
		if !places[m[1]] {
			t.Errorf("%s: a link leads to %s, which is nowhere", form, m[1])
		}
	}
	if len(links) < 40 {
		t.Errorf("%s: only %d links", form, len(links))
	}
}

// Every figure of a pull that the list has is in the brief, in both units.
func TestBriefTellsThePulls(t *testing.T) {
	file := string(briefOf(t, "html", lantern))
	for _, p := range lanternShot(t).Pulls {
		for _, want := range []string{p.Anchor, p.Because, fmt.Sprintf("%.0f°", float64(p.ToDeg)), "model of our own", "1.1 m", "3′7¼″"} {
			if want != "" && !strings.Contains(file, strings.ReplaceAll(want, `"`, "&#34;")) {
				t.Errorf("no %q", want)
			}
		}
	}
}
