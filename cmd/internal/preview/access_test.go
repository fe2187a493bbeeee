package preview

import (
	"encoding/json"
	"os"
	"path/filepath"
	"testing"

	"github.com/chromedp/chromedp"
)

// axeSource returns axe-core 4.14.1, whose rules are those of the Web Content
// Accessibility Guidelines 2.2; PULLSCORE_AXE names the folder it is in.
func axeSource(t *testing.T) string {
	t.Helper()
	dir := os.Getenv("PULLSCORE_AXE")
	if dir == "" {
		t.Skip("skipped: PULLSCORE_AXE does not name a folder with axe-core")
	}
	src, err := os.ReadFile(filepath.Join(dir, "node_modules/axe-core/axe.min.js"))
	if err != nil {
		t.Fatal(err)
	}
	return string(src)
}

// A broken rule, as axe-core tells it.
type broken struct {
	ID, Help string
	Nodes    []struct {
		HTML           string
		FailureSummary string
	}
}

func (b *tab) checkAccess(what string) {
	b.Helper()
	text := value[string](b, `axe.run(document, { runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"] }).then((r) => JSON.stringify({ passes: r.passes.length, violations: r.violations }))`)
	var result struct {
		Passes     int
		Violations []broken
	}
	if err := json.Unmarshal([]byte(text), &result); err != nil {
		b.Fatal(err)
	}
	if result.Passes < 10 {
		b.Errorf("%s: only %d rules found anything to look at", what, result.Passes)
	}
	for _, v := range result.Violations {
		for _, n := range v.Nodes {
			b.Errorf("%s: %s (%s): %.200s\n%s", what, v.ID, v.Help, n.HTML, n.FailureSummary)
		}
	}
}

func TestEverybodyCanUseThePage(t *testing.T) {
	axe := axeSource(t)
	d := newDesk(t, "lantern.pull", "gangway.pull")
	d.edit("lantern.pull", "over 1.5 s", "over 1 s")
	for what, width := range map[string]int64{"wide": 1440, "narrow": 390} {
		b := newTab(t, width, 900)
		b.open(d.server)
		b.until(`document.querySelectorAll("#list .shot").length === 2`)
		b.press("]")
		b.until(`document.querySelectorAll(".finding-item").length === 1 && ` + sheetCount + ` === 1`)
		b.do(chromedp.Evaluate[chromedp.Void](axe))
		b.checkAccess(what)
		if what == "wide" {
			b.dark()
			b.checkAccess(what + ", dark")
		}
		b.press("?")
		b.until(`document.querySelector("dialog").open`)
		b.checkAccess(what + ", help")
	}
	slow := slowDesk(t) // a try is on for as long as all rules need
	for what, width := range map[string]int64{"wide": 1440, "narrow": 390} {
		b := newTab(t, width, 900)
		b.open(slow.server)
		b.until(complete)
		b.do(chromedp.Evaluate[chromedp.Void](axe))
		b.press("b")
		b.until(`document.querySelector('[data-view="B"] .blur')`)
		b.rehearses()
		lights := []string{"light", "dark"}
		if what == "narrow" {
			lights = lights[:1] // colours are the same at any width
		}
		for _, light := range lights {
			b.checkAccess(what + ", rehearsal, " + light)
			b.press("r")
			b.until(trying)
			b.checkAccess(what + ", trying, " + light)
			b.until(`import("./shared.js").then(({ player }) => player.moving)`)
			b.lands()
			b.until(`!` + trying)
			b.checkAccess(what + ", tried, " + light)
			b.picture(what + "-tried-" + light)
			if what == "wide" && light == "dark" {
				b.click("#rehearse", "Practice")
				b.until(trying + ` && import("./shared.js").then(({ player }) => player.moving)`)
				b.lands()
				b.until(`document.querySelector(".practice-next")`)
				b.click("#rehearse", "Practice")
				b.checkAccess(what + ", practice, " + light)
			}
			b.dark()
		}
	}
	d.edit("lantern.pull", "rack to LANTERN", "rack to LANTREN")
	b := newTab(t, 1440, 900)
	b.open(d.server)
	b.press("]")
	b.until(`!document.getElementById("notice").hidden`)
	b.do(chromedp.Evaluate[chromedp.Void](axe))
	b.checkAccess("with errors")
}
