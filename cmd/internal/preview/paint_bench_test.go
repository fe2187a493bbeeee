// How long the stage takes to paint.

package preview

import (
	"fmt"
	"path/filepath"
	"testing"

	"pullscore/cmd/internal/rebuild"
)

// paintTimes paints pictures of the first pull of the shot on show, each several
// times, and returns how long they took in milliseconds: the median and the
// longest, of the shortest for each, so that what else the machine does counts
// little. What was spread for the picture before is not taken again.
const paintTimes = `import("./shared.js").then(({ player }) => import("./view.js").then(({ View }) => new Promise((done) => {
	const draw = View.prototype.draw;
	let sum = 0;
	View.prototype.draw = function (t, options) {
		for (const made of this.painter.spread.values()) made.key = "";
		const from = performance.now();
		draw.call(this, t, { ...options, resting: false });
		this.painter.context.getImageData(0, 0, 1, 1); // what was put off is painted
		sum += performance.now() - from;
	};
	const pull = player.pulls[0] ?? { start_s: 0, land_s: player.duration };
	const best = [];
	const paint = (n, again, least) => {
		if (n === 12) {
			View.prototype.draw = draw;
			best.sort((a, b) => a - b);
			done([best[Math.floor(best.length / 2)], best.at(-1)]);
			return;
		}
		sum = 0;
		const t = pull.start_s + ((pull.land_s - pull.start_s) * (n + (again % 2) / 50)) / 11;
		player.seek(t);
		requestAnimationFrame(() => setTimeout(() => {
			least = Math.min(least, sum || Infinity);
			if (again < 6) paint(n, again + 1, least);
			else {
				best.push(least);
				paint(n + 1, 0, Infinity);
			}
		}));
	};
	paint(0, 0, Infinity);
})))`

// BenchmarkStage paints the first pull of examples at one stop and at two. Its
// figures depend on how a browser paints: without a GPU by the processor.
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
					b.ReportMetric(times[1], "ms/slowest-picture")
				}
				b.ReportMetric(0, "ns/op")
			})
		}
	}
}

// scrubTimes takes 60 steps along the shot on show, each time five times over,
// and returns how long the script of a picture takes, in milliseconds: the median
// and the 95th of 100, of the shortest for each step, so that what else the
// machine does counts little; and the same of an empty canvas of that size, in
// turn.
const scrubTimes = `import("./shared.js").then(({ player }) => import("./view.js").then(({ View }) => new Promise((done) => {
	const draw = View.prototype.draw;
	const best = { full: Array(60).fill(Infinity), empty: Array(60).fill(Infinity) };
	let kind = "full", at = 0;
	View.prototype.draw = function (t, options) {
		const from = performance.now();
		if (kind === "full") draw.call(this, t, { ...options, resting: false }); // as a step within 120 ms of the last
		else this.painter.context.clearRect(0, 0, this.canvas.width, this.canvas.height);
		best[kind][at] = Math.min(best[kind][at], performance.now() - from);
	};
	const step = (n) => {
		if (n === 600) {
			View.prototype.draw = draw;
			const of = (list, share) => list.toSorted((a, b) => a - b)[Math.floor(list.length * share)];
			done([of(best.full, 0.5), of(best.full, 0.95), of(best.empty, 0.5), of(best.empty, 0.95)]);
			return;
		}
		kind = n % 2 ? "empty" : "full";
		at = (n >> 1) % 60;
		player.seek((player.duration * (at + 0.5 + (n % 2) / 10)) / 60);
		requestAnimationFrame(() => step(n + 1));
	};
	player.seek(0);
	requestAnimationFrame(() => step(0));
})))`

// nine is a table of nine people and a rack across it.
const nine = `plan "Nine at a table"
use "kit.pull"
with camera A, lens "35", stop f/2.8, meter f/2.8
subject HALDIS at 1.4 m, 30 cm left
subject OSKEL at 1.6 m, 40 cm right
subject MARRIT at 1.9 m, 60 cm left
subject PEVIN at 2.1 m, 70 cm right
subject YSOLT at 2.4 m, 20 cm left
subject INES at 2.7 m, 90 cm left
subject TORVAL at 3 m, 1 m right
subject BRAN at 3.4 m, 30 cm right
subject EDDA at 3.8 m, 50 cm left
shot 1
  start on HALDIS
  HALDIS: "Who has the key?", lasting 1.2 s
  OSKEL: "Not I.", lasting 0.6 s
  MARRIT: "Nor I.", lasting 0.6 s
  PEVIN: "Nor I.", lasting 0.6 s
  YSOLT: "Nor I.", lasting 0.6 s
  INES: "Nor I.", lasting 0.6 s
  TORVAL: "Nor I.", lasting 0.6 s
  BRAN: "Nor I.", lasting 0.6 s
  rack to EDDA, landing on "key", over 1.5 s
  EDDA: "I have the key, and had it all along.", lasting 2 s
`

// benchState returns the state of an example, or of a plan beside them.
func benchState(b *testing.B, file string) *rebuild.State {
	if file != "nine" {
		return exampleState(b, 1, file)
	}
	kit, _ := example(b, "kit.pull")
	path := filepath.Join(filepath.Dir(kit), "nine.pull")
	return &rebuild.State{Version: 1, Plans: []*rebuild.Plan{reading(b, path, nine, nil)}}
}

// BenchmarkScrub scrubs through shots, beside an empty canvas in the same run.
func BenchmarkScrub(b *testing.B) {
	for _, p := range []struct{ file, shot string }{
		{"ticket-window.pull", "12A"}, {"lantern.pull", "31C"}, {"small-sensor.pull", "22B"}, {"two-85s.pull", "40A"}, {"roll-call.pull", ""}, {"nine", "1"},
	} {
		b.Run(p.file, func(b *testing.B) {
			s := serve(b, Options{})
			state := benchState(b, p.file)
			s.Show(state)
			shot := p.shot
			if shot == "" {
				shot = state.Plans[0].Good.Shots[0].ID
			}
			tab := staged(b, s, 1440, 900, shot)
			for b.Loop() {
				times := value[[]float64](tab, scrubTimes)
				for i, unit := range []string{"ms/median", "ms/p95", "ms/median-empty", "ms/p95-empty"} {
					b.ReportMetric(times[i], unit)
				}
			}
			b.ReportMetric(0, "ns/op")
		})
	}
}
