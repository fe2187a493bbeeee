package preview

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math"
	"os"
	"testing"

	"github.com/chromedp/chromedp/kb"

	"pullscore/cmd/internal/lists"
	"pullscore/cmd/internal/rebuild"
)

// staged opens a page that shows a shot on its stage.
func staged(t testing.TB, s *Server, width, height int64, shot string) *tab {
	t.Helper()
	b := newTab(t, width, height)
	b.open(s)
	b.until(`!document.querySelector("#stage").hidden`)
	b.choose(shot)
	return b
}

// choose shows another shot.
func (b *tab) choose(shot string) {
	b.Helper()
	value[any](b, fmt.Sprintf(`[...document.querySelectorAll("#list .shot")].find((e) => e.textContent.includes(%s)).click() ?? 0`, quote(shot)))
	b.until(fmt.Sprintf(`document.querySelector("#stage").dataset.shot === %s && document.querySelector(".blurs li")`, quote(shot)))
}

// seek takes the playhead to a time.
func (b *tab) seek(at float64) {
	b.Helper()
	value[any](b, fmt.Sprintf(`import("./shared.js").then(({ player }) => new Promise((done) => {
		player.seek(%g);
		requestAnimationFrame(() => requestAnimationFrame(() => done(0)));
	}))`, at))
}

// shownBlur reads from the page how a subject is blurred.
func (b *tab) shownBlur(view, subject string) float64 {
	b.Helper()
	return value[float64](b, fmt.Sprintf(`Number([...document.querySelectorAll('[data-view="%s"] .blur')].find((e) => e.dataset.subject === %s).dataset.blur)`, view, quote(subject)))
}

// A listedPull is what a test reads of a pull as list --as json writes it.
type listedPull struct {
	From        string  `json:"from"`
	To          string  `json:"to"`
	Land        float64 `json:"land_s"`
	LeftBlur    float64 `json:"left_blur_arcmin"`
	ReachedBlur float64 `json:"reached_blur_arcmin"`
}

// listed returns the pulls that list --as json writes, by shot.
func listed(t *testing.T, p *rebuild.Plan) map[string][]listedPull {
	t.Helper()
	var b bytes.Buffer
	if err := lists.WriteJSON(&b, p.Good, p.GoodFindings); err != nil {
		t.Fatal(err)
	}
	var list struct {
		Shots []struct {
			ID    string       `json:"id"`
			Pulls []listedPull `json:"pulls"`
		} `json:"shots"`
	}
	if err := json.Unmarshal(b.Bytes(), &list); err != nil {
		t.Fatal(err)
	}
	all := map[string][]listedPull{}
	for _, s := range list.Shots {
		all[s.ID] = s.Pulls
	}
	return all
}

// What the page says of the blur once a pull has landed is what list prints.
func TestStageBlursAsListSays(t *testing.T) {
	s := serve(t, Options{})
	state := exampleState(t, 1, "ticket-window.pull")
	s.Show(state)
	p := state.Plans[0]
	b := staged(t, s, 1440, 900, p.Good.Shots[0].ID)
	told := listed(t, p)
	compared := 0
	for _, shot := range p.Good.Shots {
		b.choose(shot.ID)
		for _, pull := range told[shot.ID] {
			b.seek(shot.Rate.Seconds(int64(math.Ceil(pull.Land*24 - 1e-6)))) // the first frame that has landed
			for name, want := range map[string]float64{pull.From: pull.LeftBlur, pull.To: pull.ReachedBlur} {
				if got := b.shownBlur("A", name); math.Abs(got-want) > 1e-5*max(want, 1) {
					t.Errorf("%s at %.2f s: the page has %s blurred by %g, list by %g", shot.ID, pull.Land, name, got, want)
				}
				compared++
			}
		}
	}
	if compared < 8 {
		t.Errorf("%d figures were compared", compared)
	}
}

// A word for how blurred somebody is can be seen, "faint" too.
func TestFaintIsRead(t *testing.T) {
	s := serve(t, Options{})
	s.Show(exampleState(t, 1, "small-sensor.pull"))
	b := staged(t, s, 1440, 900, "22B")
	b.seek(5)
	b.until(`document.querySelector('.blur[data-word="faint"]')`)
	if c := value[string](b, `getComputedStyle(document.querySelector('.blur[data-word="faint"] .word')).color`); c == "rgba(0, 0, 0, 0)" {
		t.Errorf("faint is written in %s", c)
	}
}

// Two stops beside each other, stepping, looping and the speed, by keys.
func TestStageKeys(t *testing.T) {
	s := serve(t, Options{})
	s.Show(exampleState(t, 1, "ticket-window.pull"))
	b := staged(t, s, 1440, 900, "12A")
	b.picture("one")
	b.press("b")
	b.until(`document.querySelector('[data-view="B"] .blur')`)
	b.seek(3.5)
	at4 := b.shownBlur("A", "MARRIT")
	value[any](b, `(() => { const s = document.querySelector('[data-view="B"] select'); s.value = "8"; s.dispatchEvent(new Event("change")); })() ?? 0`)
	b.until(fmt.Sprintf(`Math.abs(document.querySelector('[data-view="B"] .blur').dataset.blur * 2 - %g) < 1e-3`, at4))
	b.picture("two")
	b.press(kb.Home)
	b.press(kb.ArrowRight + kb.ArrowRight + kb.ArrowRight + kb.ArrowLeft)
	b.until(`document.querySelector(".frame-number").value.startsWith("frame 2 ")`)
	b.press("l")
	b.until(`document.querySelector('[aria-label="Loop"]').value === "1"`)
	b.press("l")
	b.until(`document.querySelector('[aria-label="Loop"]').value === "0"`)
	b.press("h")
	b.until(`[...document.querySelectorAll("#stage button")].some((e) => e.textContent === "Half speed" && e.ariaPressed === "true")`)
}

func TestNarrowStage(t *testing.T) {
	s := serve(t, Options{})
	s.Show(exampleState(t, 1, "lantern.pull"))
	b := staged(t, s, 390, 844, "31C")
	b.dark()
	b.seek(3.5)
	b.press("b")
	b.until(`document.querySelector('[data-view="B"] .blur')`)
	if over := value[int](b, `document.documentElement.scrollWidth - innerWidth`); over > 0 {
		t.Errorf("the page is %d pixels wider than the screen", over)
	}
	value[any](b, `document.querySelector("#stage").scrollIntoView() ?? 0`)
	b.picture("stage")
	b.rehearses()
	b.picture("rehearse")
}

// Pictures to look at; see picturesTo.
func TestStagePictures(t *testing.T) {
	if os.Getenv(picturesTo) == "" {
		t.Skip("skipped: pictures are made where " + picturesTo + " names a folder")
	}
	for _, p := range []struct {
		file, shot string
		times      []float64
	}{
		{"ticket-window.pull", "12A", []float64{0, 3.4}},
		{"small-sensor.pull", "22B", []float64{5}},
		{"lantern.pull", "31C", []float64{3.5, 8}},
		{"zoom.pull", "7A", []float64{0, 8}},
		{"gangway.pull", "18A", []float64{4, 11}},
		{"two-85s.pull", "40A", []float64{0, 5}},
		{"loft.pull", "62A", []float64{0, 4.5, 7, 9}},
	} {
		t.Run(p.shot, func(t *testing.T) {
			s := serve(t, Options{})
			s.Show(exampleState(t, 1, p.file))
			b := staged(t, s, 1440, 900, p.shot)
			for _, at := range p.times {
				b.seek(at)
				b.picture(fmt.Sprintf("%g", at))
			}
		})
	}
	t.Run("scene", func(t *testing.T) {
		s := serve(t, Options{})
		s.Show(scene(t))
		b := staged(t, s, 1440, 900, "18A")
		b.press("w")
		b.until(`!document.querySelector('[data-view="B"]').hidden && document.querySelector('[data-view="B"] .blur')`)
		for _, at := range []float64{0, 3, 6.4, 10} {
			b.seek(at)
			b.picture(fmt.Sprintf("%g", at))
		}
	})
}
