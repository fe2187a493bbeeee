// How far a figure is spread as it is painted.

package preview

import (
	"fmt"
	"math"
	"testing"
)

// paintedSpread paints a block whose left edge is seen alone, at four places
// between two pixels, and returns the variance of the edge along x: that of the
// differences from pixel to pixel.
const paintedSpread = `import("./paint.js").then(({ Painter }) => {
	const canvas = document.createElement("canvas");
	Object.assign(canvas, { width: 1000, height: 700 });
	const painter = new Painter(canvas);
	painter.back = () => { // white, for as many steps of grey as there are
		painter.context.fillStyle = "#fff";
		painter.context.fillRect(0, 0, 1000, 700);
	};
	const metre = 3, h = 0.2 * metre * 1000; // the block is 600 pixels wide
	let sum = 0;
	for (let n = 0; n < 4; n++) {
		const x = n / 4 / 1000;
		painter.paint({
			aspect: 1000 / 700,
			subjects: [{ name: "Block", person: false, deep: 0, index: 3, metre, x, y: 0, disc: %[1]g / 1000 * 2 }],
		}, { resting: %[2]t, views: %[3]d });
		const left = Math.round(500 - h / 2) - 18, width = 36; // the rim of the block is 36 pixels wide
		const row = painter.context.getImageData(left, 350 + 120 - 150, width, 1).data;
		let all = 0, first = 0, second = 0;
		for (let i = 1; i < width; i++) {
			const step = [0, 1, 2].reduce((sum, k) => sum + row[i * 4 + k] - row[i * 4 - 4 + k], 0);
			all += step;
			first += step * i;
			second += step * i * i;
		}
		sum += second / all - (first / all) ** 2;
	}
	return sum / 4;
})`

// What is painted is as soft as it should be, also where that is less than a
// pixel, both while it plays and at rest: else a landing would show as a pop.
func TestSmallBlursArePaintedAsTheyAre(t *testing.T) {
	s := serve(t, Options{})
	s.Show(exampleState(t, 1, "ticket-window.pull"))
	b := newTab(t, 800, 600)
	b.open(s)
	for _, how := range []struct {
		resting bool
		views   int
	}{{true, 1}, {false, 1}, {false, 2}} {
		spread := func(r float64) float64 {
			return value[float64](b, fmt.Sprintf(paintedSpread, r, how.resting, how.views))
		}
		sharp := spread(0)
		for _, r := range []float64{0, 0.2, 0.39, 0.41, 0.6, 0.9, 1.2, 1.49, 1.51, 1.8, 2.4, 3} { // 0.4 and 1.5 are where the way to paint changes
			got := 2 * math.Sqrt(max(0, spread(r)-sharp))
			if math.Abs(got-r) > 0.15 {
				t.Errorf("resting %t, %d views: a disc of %.1f pixels is painted as one of %.2f", how.resting, how.views, r, got)
			}
		}
	}
}

// Whoever scrubs gets quick pictures, and a good one once the playhead rests.
func TestScrubbingPaintsQuickly(t *testing.T) {
	d := newDesk(t, "ticket-window.pull")
	b := staged(t, d.server, 1440, 900, "12A")
	b.until(complete)
	value[any](b, `import("./view.js").then(({ View }) => {
		const draw = View.prototype.draw;
		globalThis.drawn = [];
		View.prototype.draw = function (t, options) { drawn.push(options.resting); draw.call(this, t, options); };
	})`)
	b.until(`drawn.length === 0`)
	steps := value[[]bool](b, `import("./shared.js").then(({ player }) => new Promise((done) => {
		const step = (n) => {
			if (n === 60) return done(drawn.slice());
			player.seek(n / 20 + 0.01);
			requestAnimationFrame(() => step(n + 1));
		};
		step(0);
	}))`)
	if len(steps) < 30 {
		t.Fatalf("%d pictures of 60 steps", len(steps))
	}
	rested := 0
	for _, resting := range steps {
		if resting {
			rested++
		}
	}
	if rested > len(steps)/10 { // a busy machine may take a rest between two steps
		t.Errorf("%d of %d pictures are painted as at rest", rested, len(steps))
	}
	b.until(`drawn.at(-1) === true`)
}
