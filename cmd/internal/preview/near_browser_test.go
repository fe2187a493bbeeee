// What belongs to a pull, a subject or a flag that somebody points at.

package preview

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"

	"pullscore/cmd/internal/rebuild"
)

// hurried is a state of the ticket window with racks that are too quick, so that there are
// flags of racks.
func hurried(t *testing.T) *rebuild.State {
	path, src := example(t, "ticket-window.pull")
	p := reading(t, path, strings.ReplaceAll(src, "over 1.2 s", "over 0.3 s"), nil)
	return &rebuild.State{Plans: []*rebuild.Plan{p}, Version: 1}
}

// widths returns how many times wider than drawn the strokes within a group are: one
// number if all are alike.
func (b *tab) widths(selector string) []float64 {
	b.Helper()
	all := value[[]float64](b, fmt.Sprintf(`[...document.querySelectorAll(%s)].flatMap((g) => [...g.querySelectorAll("[stroke-width]")]).map((e) => Math.round(100 * parseFloat(getComputedStyle(e).strokeWidth) / Number(e.getAttribute("stroke-width"))) / 100)`, quote(selector)))
	slices.Sort(all)
	return slices.Compact(all)
}

// show scrolls something to the middle of the window, and waits until it is there.
func (b *tab) show(selector string) {
	b.Helper()
	value[any](b, fmt.Sprintf(`new Promise((done) => {
		document.querySelector(%s).scrollIntoView({ block: "center", inline: "center" });
		requestAnimationFrame(() => requestAnimationFrame(() => setTimeout(() => done(0), 30)));
	})`, quote(selector)))
}

func (b *tab) moveTo(x, y float64) {
	b.Helper()
	b.do(chromedp.MouseEvent(input.DispatchMouseEventTypeMouseMoved, x, y))
}

// marked are the parts of a drawing that somebody can point at.
var marked = map[string]string{
	"pull":    `.sheet > svg g.pull[data-number="1"]`,
	"flag":    `.sheet > svg g.finding[data-number]`,
	"subject": `.sheet > svg g[data-subject="MARRIT"][tabindex]`,
}

// Whoever points at a pull, a subject or a flag, or comes to it by the keyboard, sees its
// strokes heavier and a card beside it; Escape takes them away again.
func TestWhatIsPointedAtStandsOut(t *testing.T) {
	s := serve(t, Options{})
	s.Show(hurried(t))
	b := newTab(t, 1280, 900)
	b.open(s)
	b.until(complete)
	for name, selector := range marked {
		if name == "flag" {
			selector += fmt.Sprintf(`[data-number="%d"]`, value[int](b, `Number(document.querySelector(".sheet > svg g.finding").dataset.number)`))
		}
		for _, by := range []string{"pointer", "keyboard"} {
			b.show(selector)
			b.until(`document.querySelector("#card").hidden`)
			if by == "pointer" {
				b.moveTo(b.middle(selector + " :is(path, circle, line)"))
			} else {
				value[any](b, fmt.Sprintf(`document.querySelector(%s).focus({ preventScroll: true }) ?? 0`, quote(selector)))
			}
			b.until(`!document.querySelector("#card").hidden`)
			if got := b.widths(selector); !slices.Equal(got, []float64{1.5}) && len(got) > 0 {
				t.Errorf("%s by %s: its strokes are %v times as wide", name, by, got)
			}
			if got := value[string](b, fmt.Sprintf(`document.querySelector(%s).getAttribute("aria-describedby") ?? ""`, quote(selector))); got != "card" {
				t.Errorf("%s by %s: it is described by %q", name, by, got)
			}
			if over := value[bool](b, fmt.Sprintf(`(() => { const a = document.querySelector("#card").getBoundingClientRect(), m = document.querySelector(%s).getBoundingClientRect();
				return a.left < 0 || a.top < 0 || a.right > innerWidth || a.bottom > innerHeight || (m.width < 200 && a.left < m.right && m.left < a.right && a.top < m.bottom && m.top < a.bottom); })()`, quote(selector))); over {
				t.Errorf("%s by %s: the card is not beside it", name, by)
			}
			b.picture(name + "-" + by)
			b.press(kb.Escape)
			b.until(`document.querySelector("#card").hidden`)
			if got := b.widths(selector); !slices.Equal(got, []float64{1}) && len(got) > 0 {
				t.Errorf("%s by %s: afterwards its strokes are %v times as wide", name, by, got)
			}
			if left := value[int](b, `document.querySelectorAll(".slab, .near, [aria-describedby=card]").length`); left > 0 {
				t.Errorf("%s by %s: %d marks are left", name, by, left)
			}
			value[any](b, `document.activeElement.blur() ?? 0`)
			b.moveTo(2, 2)
		}
	}
}

// A card says what the table of pulls says, and with it the rows of the subject and the
// sentences of the pull are marked.
func TestTheCardOfAPull(t *testing.T) {
	s := serve(t, Options{})
	s.Show(hurried(t))
	b := newTab(t, 1280, 900)
	b.open(s)
	b.until(complete)
	value[any](b, `document.querySelector('.sheet > svg g.pull[data-number="1"]').focus() ?? 0`)
	b.until(`!document.querySelector("#card").hidden`)
	card := value[string](b, `document.querySelector("#card").innerText`)
	shot := s.shown.Load().state.Plans[0].Good.Shots[0]
	name, figures := tellFigures(shot, shot.Pulls[0])
	if !strings.Contains(card, name) || len(figures) < 6 {
		t.Errorf("the card of %q says %q", name, card)
	}
	drawn := value[string](b, `[...document.querySelectorAll(".sheet > svg text")].map((e) => e.textContent).join("\n")`)
	for _, f := range figures {
		if !strings.Contains(card, f.Title) || !strings.Contains(card, f.Text) {
			t.Errorf("the card does not say %s %s: %q", f.Title, f.Text, card)
		}
		if f.Title == "lands" && !strings.Contains(drawn, f.Text) {
			t.Errorf("the card says %s %s, which is not drawn", f.Title, f.Text)
		}
	}
	rows := value[[]string](b, `[...document.querySelectorAll(".slab")].map((e) => e.dataset.row)`)
	if !slices.Contains(rows, shot.Pulls[0].To) {
		t.Errorf("a slab lies below the rows of %q, not of %s", rows, shot.Pulls[0].To)
	}
	if !slices.Contains(rows, "1") {
		t.Errorf("a slab lies below the rows of %q, not below that of the pull", rows)
	}
	for _, part := range []string{"window", "pull-row"} { // whoever points at one sees the pull
		selector := fmt.Sprintf(`.sheet > svg g:is(.%s, .narrow)[data-number="1"]`, part)
		value[any](b, `document.activeElement.blur() ?? 0`)
		b.until(`document.querySelector("#card").hidden`)
		b.show(selector)
		b.moveTo(b.middle(selector + " :is(text, line, path)"))
		b.until(`document.querySelector("#card").innerText === ` + strconv.Quote(card))
		if got := b.widths(`.sheet > svg g:is(.window, .narrow)[data-number="1"]`); !slices.Equal(got, []float64{1.5}) {
			t.Errorf("from %s: the window is %v times as wide", part, got)
		}
		b.moveTo(2, 2)
	}
	if over := value[bool](b, `[...document.querySelectorAll(".slab")].some((e) => e.previousElementSibling.localName !== "rect")`); over {
		t.Error("a slab lies over what is drawn")
	}
	numbers := value[[]int](b, `[...document.querySelectorAll(".finding-item.near")].map((e) => Number(e.dataset.number))`)
	var want []int
	for _, f := range tellFindings(s.shown.Load().state.Plans[0], s.shown.Load().state.Plans[0].Findings, s.shown.Load().state.Plans[0].Good) {
		if f.Shot == shot.ID && f.Pull == 1 {
			want = append(want, f.Number)
		}
	}
	slices.Sort(want)
	if slices.Sort(numbers); len(want) == 0 || !slices.Equal(numbers, want) {
		t.Errorf("the sentences %v are marked, want %v", numbers, want)
	}
}

// A finding of the list, its sentence on the sheet and its flag are marked together.
func TestASentenceAndItsFlag(t *testing.T) {
	s := serve(t, Options{})
	s.Show(hurried(t))
	b := newTab(t, 1280, 900)
	b.open(s)
	b.until(complete)
	number := value[int](b, `Number(document.querySelector(".sheet > svg g.sentence").dataset.number)`)
	sentence, flag := fmt.Sprintf(`.sheet > svg g.sentence[data-number="%d"]`, number), fmt.Sprintf(`.sheet > svg g.finding[data-number="%d"]`, number)
	marked := func() {
		t.Helper()
		b.until(fmt.Sprintf(`document.querySelector(%s).matches(".near, .near *") && document.querySelectorAll(".slab").length > 0`, quote(flag)))
		b.moveTo(2, 2)
		b.until(fmt.Sprintf(`!document.querySelector(%s).matches(".near, .near *") && document.querySelectorAll(".slab").length === 0`, quote(flag)))
	}
	b.show(sentence)
	b.moveTo(b.middle(sentence + " text"))
	b.until(fmt.Sprintf(`document.querySelector('.finding-item[data-number="%d"]').matches(".near")`, number))
	marked()
	b.moveTo(b.middle(fmt.Sprintf(`.finding-item[data-number="%d"] .message`, number)))
	marked()
}

// Everything that can be pressed on the drawing has a target of at least 24 pixels, at any
// size, and a target that lies over another takes nothing from what is drawn there.
func TestTargetsAreLargeEnough(t *testing.T) {
	s := serve(t, Options{})
	s.Show(hurried(t))
	for name, size := range map[string][2]int64{"wide": {1280, 900}, "phone": {390, 844}} {
		b := newTab(t, size[0], size[1])
		b.open(s)
		b.until(complete)
		for range 3 {
			small := value[[]string](b, `[...document.querySelectorAll(".sheet > svg :is(g.pull[data-number], g.finding[data-number]:not(g.finding g.finding), g[data-subject])")].filter((g) => {
				const box = g.querySelector(".target").getBoundingClientRect();
				return box.width < 23.9 || box.height < 23.9;
			}).map((g) => g.getAttribute("class") + " " + (g.dataset.number ?? g.dataset.subject))`)
			if len(small) > 0 {
				t.Errorf("%s: small targets: %q", name, small)
			}
			b.press("-")
		}
		b.press("0")
		pulls := value[int](b, `document.querySelectorAll(".sheet > svg g.pull[data-number]").length`)
		for n := 1; n <= pulls; n++ {
			selector := fmt.Sprintf(`.sheet > svg g.pull[data-number="%d"]`, n)
			b.show(selector)
			x, y := b.middle(selector + " circle")
			b.clickAt(x, y)
			start := float64(s.shown.Load().state.Plans[0].Good.Shots[0].Pulls[n-1].Start)
			b.until(fmt.Sprintf(`Math.abs(document.querySelector(".playhead").getAttribute("aria-valuenow") - %.2f) < 0.02`, start))
		}
	}
}

// Whoever wants less motion sees none.
func TestNothingMovesByItself(t *testing.T) {
	s := serve(t, Options{})
	s.Show(hurried(t))
	b := newTab(t, 1280, 900)
	b.sees("screen", map[string]string{"prefers-reduced-motion": "reduce"})
	b.open(s)
	b.until(complete)
	value[any](b, fmt.Sprintf(`(document.querySelector(%s).classList.add("lit"), 0)`, quote(marked["flag"])))
	if moving := value[[]string](b, `[...document.querySelectorAll("*")].filter((e) => { const s = getComputedStyle(e); return s.transitionDuration.split(", ").some((d) => d !== "0s") || s.animationName !== "none" || s.scrollBehavior !== "auto"; }).map((e) => e.outerHTML.slice(0, 80))`); len(moving) > 0 {
		t.Errorf("what moves: %q", moving)
	}
}

// Everybody can use the drawing and its cards, on a light screen and a dark one.
func TestEverybodyCanUseTheCards(t *testing.T) {
	axe := axeSource(t)
	s := serve(t, Options{})
	s.Show(hurried(t))
	b := newTab(t, 1280, 900)
	b.open(s)
	b.until(complete)
	b.do(chromedp.Evaluate[chromedp.Void](axe))
	value[any](b, fmt.Sprintf(`document.querySelector(%s).focus() ?? 0`, quote(marked["pull"])))
	b.until(`!document.querySelector("#card").hidden`)
	b.checkAccess("light")
	b.dark()
	b.checkAccess("dark")
}
