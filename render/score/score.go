// The score: one shot against time, read like music for the hand. Its bands
// share one ruler: lines, distance, sharpness, hand; findings and the table of
// pulls stand below.

package score

import (
	"fmt"
	"math"
	"slices"

	"pullscore/interp/plan"
	"pullscore/interp/units"
	"pullscore/render/draw"
	"pullscore/render/sheet"
)

// Score draws the shot. A shot that is longer, or fuller, than a sheet can
// show goes on over more pages, each with the row heads repeated.
func Score(shot *plan.Shot, opt sheet.Options) []*draw.Page {
	sc := newScore(shot, opt.Size())
	sc.compose()
	return sc.draw("score", sc.describe(), (*leaf).drawAround)
}

// compose lays everything on sheets.
func (sc *score) compose() {
	var later []plan.Flag
	for _, w := range sc.windows {
		sc.lay(w, sc.bands(w))
		later = append(later, sc.tellHere(w)...)
	}
	sc.lay(nil, sc.foot(later))
}

// A score is a shot's score in the making.
type score struct {
	shot        *plan.Shot
	paper       sheet.Paper
	left, right float64 // where the time axis starts and ends
	windows     []*window
	depth       depthScale
	turn        turnScale
	sheets      []*leaf
}

// A window is the stretch of time that a sheet shows.
type window struct {
	*score
	from, to float64 // seconds
	end      float64 // of the curves: where the shot ends, if it does before to
	last     bool
	curves   curves
}

// gutter is the room left of the time axis for the row heads, apron the room
// right of it for the distances.
const (
	gutter = 33.0
	apron  = 10.0
)

func newScore(shot *plan.Shot, paper sheet.Paper) *score {
	return newScoreOver(cutTime(shot), shot, paper)
}

// newScoreOver returns the score of a shot over times that may be more than
// its own.
func newScoreOver(cuts []float64, shot *plan.Shot, paper sheet.Paper) *score {
	sc := &score{shot: shot, paper: paper, left: sheet.Margin + gutter, right: paper.W - sheet.Margin - apron}
	for i := 1; i < len(cuts); i++ {
		w := &window{score: sc, from: cuts[i-1], to: cuts[i], end: min(cuts[i], lasting(shot)), last: i == len(cuts)-1}
		if w.end > w.from {
			w.curves = w.sample()
		}
		sc.windows = append(sc.windows, w)
	}
	sc.depth = newDepthScale(sc.windows)
	sc.turn = newTurnScale(sc)
	return sc
}

// x returns where a time stands, held to the window.
func (w *window) x(t float64) float64 {
	t = min(max(t, w.from), w.to)
	return w.left + (t-w.from)/(w.to-w.from)*(w.right-w.left)
}

// holds reports whether a moment belongs on the window. The first and the last
// window take what lies outside the shot.
func (w *window) holds(t float64) bool {
	return (t >= w.from || w.from == 0) && (t < w.to || w.last)
}

// overlaps reports whether a stretch of time shows on the window.
func (w *window) overlaps(from, to float64) bool {
	return to > w.from && from < w.to || w.holds(from)
}

// What one sheet shows at most: more seconds would not leave room for words,
// more pulls or flags none for their labels.
const (
	sheetSeconds = 16.0
	sheetPulls   = 10
	sheetFlags   = 24
	leastSeconds = 2.0
)

// cutTime returns the times at which sheets start, and the end. Sheets are of
// like length, cut at a whole second where that cuts through the fewest moves
// and lines.
func cutTime(s *plan.Shot) []float64 {
	end := lasting(s)
	n := max(
		int(math.Ceil(end/sheetSeconds-1e-9)),
		(len(s.Pulls)+sheetPulls-1)/sheetPulls,
		(len(s.Flags)+sheetFlags-1)/sheetFlags,
	)
	n = max(1, min(n, int(end/leastSeconds)))
	cuts := []float64{0}
	for i := 1; i < n; i++ {
		even := end * float64(i) / float64(n)
		cuts = append(cuts, quietest(s, even, cuts[i-1], end/float64(n)/5))
	}
	return append(cuts, end)
}

// lasting returns how long a shot is drawn: an empty one still has a score.
func lasting(s *plan.Shot) float64 {
	if end := float64(s.Duration); end > 0 && !math.IsInf(end, 0) {
		return end
	}
	return 1
}

// quietest returns the whole second within reach of t that cuts the fewest
// moves and lines, the nearest of them, or t itself where no whole second after
// the last cut is in reach.
func quietest(s *plan.Shot, t, after, reach float64) float64 {
	best, least := t, math.Inf(1)
	for c := math.Ceil(t - reach); c <= t+reach; c++ {
		if c <= after {
			continue
		}
		if cost := 10*float64(crossings(s, c)) + math.Abs(c-t); cost < least {
			best, least = c, cost
		}
	}
	return best
}

func crossings(s *plan.Shot, t float64) int {
	n := 0
	for _, p := range s.Pulls {
		if p.Kind != "follow" && float64(p.Start) < t && t < float64(p.Land) {
			n += 2
		}
	}
	for _, l := range s.Lines {
		if float64(l.Start) < t && t < float64(l.End) {
			n++
		}
	}
	return n
}

// bands returns the rows of a window from top to bottom.
func (sc *score) bands(w *window) []section {
	all := append(w.linesBand(), w.distanceBand())
	all = append(all, w.sharpBand()...)
	return append(all, w.handBand())
}

// foot returns what stands below the bands: the findings that have not been
// told, and the pulls.
func (sc *score) foot(flags []plan.Flag) []section {
	return append(sc.findings(flags), sc.pullTable()...)
}

// describe says in a sentence what the score shows.
func (sc *score) describe() string {
	s := sc.shot
	text := fmt.Sprintf("Shot %s, %s long, against time: %s, %s, %s and %s of the focus",
		sheet.ShotName(s), sheet.Figures.Time(float64(s.Duration)), units.Count(len(s.Lines), "spoken line"),
		units.Count(len(s.Cues), "cue"), units.Count(len(s.Subjects), "subject"), units.Count(len(s.Pulls), "move"))
	if len(s.Flags) == 0 {
		text += ", with no findings"
		if silent := plan.NotJudged(s); silent != "" {
			text += "; " + silent
		}
		return text + "."
	}
	worst := slices.MaxFunc(s.Flags, func(a, b plan.Flag) int {
		return rank(a.Severity) - rank(b.Severity)
	})
	return fmt.Sprintf("%s, with %s, the worst (%s): %s", text,
		units.Count(len(s.Flags), "finding"), worst.Severity, worst.Text)
}

// rank orders severities.
func rank(severity string) int {
	return slices.Index([]string{"note", "warning", "error"}, severity)
}
