// The first band of a score: who speaks, what happens, and the words that the
// moves hang on.

package score

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"pullscore/interp/plan"
	"pullscore/render/draw"
	"pullscore/render/sheet"
)

// An utterance is something on a row that starts and ends: a spoken line, a
// cue, a piece of business.
type utterance struct {
	words      []plan.Word
	start, end float64
	dash       []float64 // of the line under it
	cue        bool
	title      string
}

// A row is one strip of the band, with its words in their places.
type row struct {
	name  string
	said  []utterance
	size  float64 // of its type, points
	runs  []wordRun
	lanes int
}

const (
	rowHeight = 5.0
	textBase  = 3.3 // of a row's first lane
	lanePitch = 3.4
	underline = 1.5 // below the last baseline
	cueLead   = 1.9 // a cue's name stands after its dot
	estimated = 0.9 // dashes under a line whose time is estimated
	pauseDash = 0.3
)

var plumbStroke = sheet.Dashed(draw.Vermilion, 0.3, 1.6, 0.9)

// linesBand returns a section for every row.
func (w *window) linesBand() []section {
	head := w.lane("lines", "Lines")
	var all []section
	for _, r := range w.rows() {
		height := r.height()
		all = append(all, section{name: "lines", least: height, most: height, head: &head, overTime: true,
			draw: func(sh *leaf, g *draw.Group, top, _ float64) { r.draw(sh, g, top) }})
	}
	if len(all) == 0 && len(w.flags("lines")) > 0 {
		all = append(all, section{name: "lines", head: &head, overTime: true, draw: drawNothing})
	}
	return all
}

func drawNothing(*leaf, *draw.Group, float64, float64) {}

// rows gathers what is heard and seen in the window: the speakers in the order
// in which they first speak, then cues, business and moves, on one row where
// they have room on it.
func (w *window) rows() []*row {
	speech, action := w.speech(), w.joined(w.action())
	var rows []*row
	for _, r := range append(speech, action...) {
		if len(r.said) > 0 {
			r.set(w)
			rows = append(rows, r)
		}
	}
	return rows
}

// joined returns rows of action with those in one that have room on it together.
func (w *window) joined(rows []*row) []*row {
	var list []*row
	for _, r := range rows {
		if len(r.said) == 0 {
			continue
		}
		rest, group := list, []*row{r}
		if last := len(list) - 1; last >= 0 {
			rest, group = list[:last], []*row{list[last], r}
		}
		all := gather(group)
		if all.set(w); all.apart() && all.lanes == 1 {
			list = append(rest, all)
		} else {
			list = append(list, r)
		}
	}
	return list
}

// speech returns a row for every speaker.
func (w *window) speech() []*row {
	var rows []*row
	for _, l := range w.shot.Lines {
		if l.End <= 0 && l.Start < 0 {
			continue // by the cut it is over before the shot is seen
		}
		i := slices.IndexFunc(rows, func(r *row) bool { return r.name == l.Who })
		if i < 0 {
			i = len(rows)
			rows = append(rows, &row{name: l.Who})
		}
		if w.overlaps(float64(l.Start), float64(l.End)) {
			rows[i].add(spoken(l))
		}
	}
	return rows
}

// action returns the rows of all that is not spoken.
func (w *window) action() []*row {
	s := w.shot
	cues, business, moves := &row{name: "cues"}, &row{name: "action"}, &row{name: "moves"}
	for _, c := range s.Cues {
		if t := float64(c.T); w.overlaps(t, t) {
			cues.add(utterance{start: t, end: t, cue: true, title: fmt.Sprintf("cue %s at %s", c.Name, sheet.When(s, t)),
				words: []plan.Word{{Text: c.Name, Start: t, End: t, Hangs: hangsOn(s, c.Name)}}})
		}
	}
	for _, a := range s.Actions {
		if w.overlaps(float64(a.Start), float64(a.End)) {
			business.add(whole(a.Text, float64(a.Start), float64(a.End), nil))
		}
	}
	for _, p := range s.Pauses {
		if w.overlaps(float64(p.Start), float64(p.End)) {
			business.add(w.pause(p))
		}
	}
	for _, b := range s.Blocking {
		if w.overlaps(float64(b.Start), float64(b.End)) {
			moves.add(whole(blocking(s, b), float64(b.Start), float64(b.End), nil))
		}
	}
	return []*row{cues, business, moves}
}

// add puts an utterance on the row, in order of time.
func (r *row) add(u utterance) {
	i := len(r.said)
	for i > 0 && r.said[i-1].start > u.start {
		i--
	}
	r.said = slices.Insert(r.said, i, u)
}

// gather returns one row of action with all that is on the rows.
func gather(rows []*row) *row {
	all := &row{name: "action"}
	for _, r := range rows {
		all.said = append(all.said, r.said...)
	}
	slices.SortStableFunc(all.said, func(a, b utterance) int { return cmp.Compare(a.start, b.start) })
	return all
}

// apart reports whether nothing on the row goes on while something else starts.
func (r *row) apart() bool {
	for i := 1; i < len(r.said); i++ {
		if r.said[i-1].end > r.said[i].start+1e-9 {
			return false
		}
	}
	return true
}

func spoken(l plan.Line) utterance {
	u := utterance{words: l.Words, start: float64(l.Start), end: float64(l.End),
		title: fmt.Sprintf("%s, %s to %s: %s", l.Who, sheet.Figures.Time(float64(l.Start)), sheet.Figures.Time(float64(l.End)), l.Text)}
	if len(u.words) == 0 {
		u.words = []plan.Word{{Text: l.Text, Start: u.start, End: u.end}}
	}
	if l.Estimated {
		u.dash = []float64{estimated, estimated * 0.7}
		u.title += " (time estimated)"
	}
	return u
}

// whole returns an utterance of one text that starts together.
func whole(text string, start, end float64, dash []float64) utterance {
	return utterance{words: []plan.Word{{Text: text, Start: start, End: end}}, start: start, end: end, dash: dash,
		title: fmt.Sprintf("%s, %s to %s", text, sheet.Figures.Time(start), sheet.Figures.Time(end))}
}

// pause returns a silence: dots, with its name where it is long enough for it.
func (w *window) pause(p plan.Pause) utterance {
	start, end := float64(p.Start), float64(p.End)
	u := whole("pause", start, end, []float64{pauseDash, 2 * pauseDash})
	if w.x(end)-w.x(start) < sheet.FontBody.Width("pause")+2 {
		u.words = nil
	}
	return u
}

// hangsOn reports whether a move of the focus is anchored to a cue.
func hangsOn(s *plan.Shot, cue string) bool {
	return slices.ContainsFunc(s.Pulls, func(p *plan.Pull) bool {
		return slices.Contains(strings.FieldsFunc(p.Anchor, func(r rune) bool { return r == ' ' || r == '"' }), cue)
	})
}

// blocking says what a person, the camera or the zoom does.
func blocking(s *plan.Shot, b plan.Blocking) string {
	switch {
	case b.Kind == "zoom":
		return "zoom to " + sheet.Figures.Millimetres(float64(b.ToMM)/1000)
	case b.Kind == "dolly" && b.To < b.From:
		return "dolly out " + sheet.Style(s).Tape(float64(b.From-b.To))
	case b.Kind == "dolly":
		return "dolly in " + sheet.Style(s).Tape(float64(b.To-b.From))
	}
	text := b.Who + " moves"
	if b.To.Known() {
		text += " to " + sheet.Style(s).Tape(float64(b.To))
	}
	return text
}

// draw writes the row's head and its words, and lets the plumb lines fall.
func (r *row) draw(sh *leaf, g *draw.Group, top float64) {
	w := sh.window
	base := top + textBase
	sh.rowHead(g, base, r.name)
	_, bottom := sh.span()
	for i, u := range r.said {
		ug := g.Group("said")
		ug.Title = u.title
		lane := r.laneBase(base, i)
		if u.cue {
			ug.Add(draw.Disc{Centre: draw.Point{X: w.x(u.start), Y: lane - sheet.FontBody.Middle()}, Radius: 0.75, Fill: draw.Black})
		} else {
			under := lane + underline
			ug.Line(w.x(u.start), under, w.x(u.end), under, sheet.Dashed(draw.Black, sheet.Thin, u.dash...))
		}
		for _, word := range u.words {
			if word.Hangs && w.holds(word.Start) {
				x := w.x(word.Start)
				sh.dropPlumb(x, base+float64(r.laneAt(i, x))*r.pitch()+0.9, bottom)
			}
		}
		for _, run := range r.runs {
			if run.said != i {
				continue
			}
			t := r.text(run, base)
			sh.clearOfPlumbs(ug, t.Box())
			ug.Add(t)
		}
	}
}

// whole tells whether nothing on the row is said word by word.
func (r *row) whole() bool {
	return !slices.ContainsFunc(r.said, func(u utterance) bool { return len(u.words) > 1 })
}

// pitch returns how far the row's lanes are apart: things of one piece have a
// bar each, right under it, since they may go on at the same time.
func (r *row) pitch() float64 {
	if r.whole() {
		return rowHeight
	}
	return lanePitch
}

// height returns the height of the row.
func (r *row) height() float64 { return rowHeight + float64(r.lanes-1)*r.pitch() }

// laneBase returns the baseline over an utterance's line, that of the row's
// first lane being base.
func (r *row) laneBase(base float64, said int) float64 {
	return base + float64(r.lane(said))*r.pitch()
}

// text returns a run of the row as a text.
func (r *row) text(run wordRun, base float64) draw.Text {
	return run.text(base + float64(run.lane)*(r.pitch()-lanePitch))
}

// lane returns the lane whose line an utterance stands on: the last, if the
// words of the row share one bar.
func (r *row) lane(said int) int {
	if !r.whole() {
		return r.lanes - 1
	}
	for _, run := range r.runs {
		if run.said == said {
			return run.lane
		}
	}
	return 0
}

// laneAt returns the lane of the word that a move hangs on at x.
func (r *row) laneAt(said int, x float64) int {
	for _, run := range r.runs {
		if run.hangs && run.said == said && math.Abs(run.x-x) < cueLead+0.1 {
			return run.lane
		}
	}
	return 0
}

// dropPlumb draws a plumb line, once where two hang on the same moment.
func (sh *leaf) dropPlumb(x, from, to float64) {
	if !slices.Contains(sh.plumbX, x) {
		sh.plumbs.Line(x, from, x, to, plumbStroke)
		sh.plumbX = append(sh.plumbX, x)
	}
}

// clearOfPlumbs lets a plumb line that falls through a text end and go on
// behind it.
func (sh *leaf) clearOfPlumbs(g *draw.Group, b draw.Box) {
	for _, x := range sh.plumbX {
		if x > b.X-0.3 && x < b.Right()+0.3 {
			g.Add(draw.Rect{Box: draw.Box{X: x - 0.3, Y: b.Y, W: 0.6, H: b.H}, Fill: draw.Paper})
		}
	}
}

// rowHead writes a name at the end of the gutter.
func (sh *leaf) rowHead(g *draw.Group, base float64, name string) {
	t := draw.NewText(sh.left-headGap, base, name, sheet.FontBody, draw.Grey).Aligned(draw.End)
	g.Add(t.Shortened(sh.left - headGap - sheet.Margin))
}
