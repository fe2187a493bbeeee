// How long the stage takes to paint.

package preview

import (
	"fmt"
	"testing"
)

// paintTimes plays the shot on show for some seconds and returns how long each
// picture took to work out and paint, and how long it was from one repaint of
// the screen to the next, milliseconds: median and 95th percentile of both.
const paintTimes = `Promise.all([import("./view.js"), import("./shared.js")]).then(([{ View }, { player }]) => new Promise((done) => {
	const draw = View.prototype.draw;
	const took = [], apart = [];
	let now = 0, last = 0, sum = 0;
	View.prototype.draw = function (...args) {
		const from = performance.now();
		draw.apply(this, args);
		this.painter.context.getImageData(0, 0, 1, 1); // what was put off is painted
		sum += performance.now() - from;
	};
	const tick = (t) => {
		if (last) apart.push(t - last);
		last = t;
		if (sum) took.push(sum);
		sum = 0;
		if (++now < 150 && player.playing) requestAnimationFrame(tick);
		else {
			player.pause();
			View.prototype.draw = draw;
			const at = (list, part) => [...list].sort((a, b) => a - b)[Math.floor((list.length - 1) * part)] ?? 0;
			done([at(took, 0.5), at(took, 0.95), at(apart, 0.5), at(apart, 0.95), took.length]);
		}
	};
	player.pause();
	player.seek(Math.max(0, (player.pulls[0]?.start_s ?? 0) - 1));
	player.play();
	requestAnimationFrame(tick);
}))`

// BenchmarkStage plays the first pull of examples at one stop and at two. Its
// figures depend on how pictures are painted: without a GPU by the processor.
func BenchmarkStage(b *testing.B) {
	for _, p := range []struct{ file, shot string }{
		{"ticket-window.pull", "12A"}, {"lantern.pull", "31C"}, {"gangway.pull", "18A"}, {"zoom.pull", "7A"},
		{"small-sensor.pull", "22B"}, {"two-85s.pull", "40A"}, {"crossing.pull", ""}, {"roll-call.pull", ""},
	} {
		for _, stops := range []int{1, 2} {
			b.Run(fmt.Sprintf("%s/%d", p.file, stops), func(b *testing.B) {
				s := serve(b, Options{})
				state := exampleState(b, 1, p.file)
				s.Show(state)
				shot := p.shot
				if shot == "" {
					shot = state.Plans[0].Good.Shots[0].ID
				}
				tab := staged(b, s, 1440, 900, shot)
				if stops == 2 {
					tab.press("b")
					tab.until(`document.querySelector('[data-view="B"] .blur')`)
				}
				for b.Loop() {
					times := value[[]float64](tab, paintTimes)
					b.ReportMetric(times[0], "ms/picture")
					b.ReportMetric(times[1], "ms/picture-p95")
					b.ReportMetric(times[2], "ms/repaint")
					b.ReportMetric(times[3], "ms/repaint-p95")
				}
				b.ReportMetric(0, "ns/op")
			})
		}
	}
}
