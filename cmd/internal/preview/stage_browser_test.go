package preview

import (
	"fmt"
	"testing"
)

// staged opens a page that shows a shot of an example on its stage.
func staged(t *testing.T, width, height int64, file, shot string) *tab {
	t.Helper()
	s := serve(t, Options{})
	s.Show(exampleState(t, 1, file))
	b := newTab(t, width, height)
	b.open(s)
	b.until(`!document.querySelector("#stage").hidden`)
	if shot != "" {
		value[any](b, fmt.Sprintf(`[...document.querySelectorAll("#list .shot")].find((e) => e.textContent.startsWith(%s)).click() ?? 0`, quote(shot)))
		b.until(fmt.Sprintf(`document.querySelector("#shot-name .shot-id").textContent === %s`, quote(shot)))
	}
	b.until(`document.querySelector(".blurs li")`)
	return b
}

// seek takes the playhead to a time.
func (b *tab) seek(at float64) {
	b.Helper()
	value[any](b, fmt.Sprintf(`import("./shared.js").then(({ player }) => new Promise((done) => {
		player.seek(%g);
		requestAnimationFrame(() => requestAnimationFrame(() => done(0)));
	}))`, at))
}

// Pictures to look at; see picturesTo.
func TestStagePictures(t *testing.T) {
	for _, p := range []struct {
		file, shot string
		times      []float64
	}{
		{"ticket-window.pull", "12A", []float64{0, 3.4, 5}},
		{"small-sensor.pull", "22A", []float64{0, 5}},
		{"small-sensor.pull", "22B", []float64{5}},
		{"lantern.pull", "31C", []float64{0, 3.5, 8}},
		{"zoom.pull", "7A", []float64{0, 4, 8}},
		{"gangway.pull", "18A", []float64{0, 4, 8, 11}},
		{"crossing.pull", "55-A", []float64{0, 6}},
		{"two-85s.pull", "40A", []float64{0, 5}},
		{"roll-call.pull", "3A", []float64{0, 5}},
	} {
		t.Run(p.file+p.shot, func(t *testing.T) {
			b := staged(t, 1440, 900, p.file, p.shot)
			for _, at := range p.times {
				b.seek(at)
				b.picture(fmt.Sprintf("%g", at))
			}
		})
	}
}
