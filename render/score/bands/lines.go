// The first band of a score: who speaks, what happens, and the words that the
// moves hang on.

package bands

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

// An Utterance is something on a row that starts and ends: a spoken line, a
// cue, a piece of business.
type Utterance struct {
	Words      []plan.Word
	Start, End float64
	dash       []float64 // of the line under it
	Cue        bool
	Title      string
}

// A Row is one strip of the band, with its words in their places.
type Row struct {
	Name  string
	Said  []Utterance
	size  float64 // of its type, points
	Runs  []wordRun
	Lanes int
}

const (
	rowHeight = 5.0
	TextBase  = 3.3 // of a row's first lane
	lanePitch = 3.4
	Underline = 1.5 // below the last baseline
	cueLead   = 1.9 // a cue's name stands after its dot
	estimated = 0.9 // dashes under a line whose time is estimated
	pauseDash = 0.3
)

var PlumbStroke = sheet.Dashed(draw.Vermilion, 0.3, 1.6, 0.9)

// LinesBand returns a section for every row.
func (w *Window) LinesBand() []Section {
	head := w.Lane("lines", "Lines")
	var all []Section
	for _, r := range w.Rows() {
		height := r.Height()
		all = append(all, Section{Name: "lines", Least: height, Most: height, Head: &head, OverTime: true,
			Draw: func(sh *Leaf, g *draw.Group, top, _ float64) { r.Draw(sh, g, top) }})
	}
	if len(all) == 0 && len(w.flags("lines")) > 0 {
		all = append(all, Section{Name: "lines", Head: &head, OverTime: true, Draw: drawNothing})
	}
	return all
}

func drawNothing(*Leaf, *draw.Group, float64, float64) {}

// Rows gathers what is heard and seen in the window: the speakers in the order
// in which they first speak, then cues, business and moves, on one row where
// they have room on it.
func (w *Window) Rows() []*Row {
	speech, action := w.Speech(), w.joined(w.Action())
	var rows []*Row
	for _, r := range append(speech, action...) {
		if len(r.Said) > 0 {
			r.Set(w)
			rows = append(rows, r)
		}
	}
	return rows
}

// joined returns rows of action with those in one that have room on it together.
func (w *Window) joined(rows []*Row) []*Row {
	var list []*Row
	for _, r := range rows {
		if len(r.Said) == 0 {
			continue
		}
		rest, group := list, []*Row{r}
		if last := len(list) - 1; last >= 0 {
			rest, group = list[:last], []*Row{list[last], r}
		}
		all := Gather(group)
		if all.Set(w); all.Apart() && all.Lanes == 1 {
			list = append(rest, all)
		} else {
			list = append(list, r)
		}
	}
	return list
}

// Speech returns a row for every speaker.
func (w *Window) Speech() []*Row {
	var rows []*Row
	for _, l := range w.Shot.Lines {
		if l.End <= 0 && l.Start < 0 {
			continue // by the cut it is over before the shot is seen
		}
		i := slices.IndexFunc(rows, func(r *Row) bool { return r.Name == l.Who })
		if i < 0 {
			i = len(rows)
			rows = append(rows, &Row{Name: l.Who})
		}
		if w.overlaps(float64(l.Start), float64(l.End)) {
			rows[i].add(spoken(l))
		}
	}
	return rows
}

// Action returns the rows of all that is not spoken.
func (w *Window) Action() []*Row {
	s := w.Shot
	cues, business, moves := &Row{Name: "cues"}, &Row{Name: "action"}, &Row{Name: "moves"}
	for _, c := range s.Cues {
		if t := float64(c.T); w.overlaps(t, t) {
			cues.add(Utterance{Start: t, End: t, Cue: true, Title: fmt.Sprintf("cue %s at %s", c.Name, sheet.When(s, t)),
				Words: []plan.Word{{Text: c.Name, Start: t, End: t, Hangs: hangsOn(s, c.Name)}}})
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
		if w.overlaps(float64(b.Start), float64(b.End)) && !inCameraRow(s, b) {
			moves.add(whole(blocking(s, b), float64(b.Start), float64(b.End), nil))
		}
	}
	return []*Row{cues, business, moves}
}

// add puts an utterance on the row, in order of time.
func (r *Row) add(u Utterance) {
	i := len(r.Said)
	for i > 0 && r.Said[i-1].Start > u.Start {
		i--
	}
	r.Said = slices.Insert(r.Said, i, u)
}

// Gather returns one row of action with all that is on the rows.
func Gather(rows []*Row) *Row {
	all := &Row{Name: "action"}
	for _, r := range rows {
		all.Said = append(all.Said, r.Said...)
	}
	slices.SortStableFunc(all.Said, func(a, b Utterance) int { return cmp.Compare(a.Start, b.Start) })
	return all
}

// Apart reports whether nothing on the row goes on while something else starts.
func (r *Row) Apart() bool {
	for i := 1; i < len(r.Said); i++ {
		if r.Said[i-1].End > r.Said[i].Start+1e-9 {
			return false
		}
	}
	return true
}

func spoken(l plan.Line) Utterance {
	u := Utterance{Words: l.Words, Start: float64(l.Start), End: float64(l.End),
		Title: fmt.Sprintf("%s, %s to %s: %s", l.Who, sheet.Figures.Time(float64(l.Start)), sheet.Figures.Time(float64(l.End)), l.Text)}
	if len(u.Words) == 0 {
		u.Words = []plan.Word{{Text: l.Text, Start: u.Start, End: u.End}}
	}
	if l.Estimated {
		u.dash = []float64{estimated, estimated * 0.7}
		u.Title += " (time estimated)"
	}
	return u
}

// whole returns an utterance of one text that starts together.
func whole(text string, start, end float64, dash []float64) Utterance {
	return Utterance{Words: []plan.Word{{Text: text, Start: start, End: end}}, Start: start, End: end, dash: dash,
		Title: fmt.Sprintf("%s, %s to %s", text, sheet.Figures.Time(start), sheet.Figures.Time(end))}
}

// pause returns a silence: dots, with its name where it is long enough for it.
func (w *Window) pause(p plan.Pause) Utterance {
	start, end := float64(p.Start), float64(p.End)
	u := whole("pause", start, end, []float64{pauseDash, 2 * pauseDash})
	if w.X(end)-w.X(start) < sheet.FontBody.Room("pause")+2 {
		u.Words = nil
	}
	return u
}

// hangsOn reports whether a move of the focus is anchored to a cue.
func hangsOn(s *plan.Shot, cue string) bool {
	return slices.ContainsFunc(s.Pulls, func(p *plan.Pull) bool {
		return slices.Contains(strings.FieldsFunc(p.Anchor, func(r rune) bool { return r == ' ' || r == '"' }), cue)
	})
}

// inCameraRow reports whether the row of the camera shows a move.
func inCameraRow(s *plan.Shot, b plan.Blocking) bool {
	return s.Optics.Rig != nil && slices.Contains([]string{"pan", "tilt", "boom", "track", "dolly"}, b.Kind)
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

// Draw writes the row's head and its words, and lets the plumb lines fall.
func (r *Row) Draw(sh *Leaf, g *draw.Group, top float64) {
	w := sh.Window
	base := top + TextBase
	sh.RowHead(g, base, r.Name)
	_, bottom := sh.span()
	for i, u := range r.Said {
		ug := g.Group("said")
		ug.Title = u.Title
		lane := r.LaneBase(base, i)
		if u.Cue {
			ug.Add(draw.Disc{Centre: draw.Point{X: w.X(u.Start), Y: lane - sheet.FontBody.Middle()}, Radius: 0.75, Fill: draw.Black})
		} else {
			under := lane + Underline
			ug.Line(w.X(u.Start), under, w.X(u.End), under, sheet.Dashed(draw.Black, sheet.Thin, u.dash...))
		}
		for _, word := range u.Words {
			if word.Hangs && w.Holds(word.Start) {
				x := w.X(word.Start)
				sh.dropPlumb(x, base+float64(r.laneAt(i, x))*r.pitch()+0.9, bottom)
			}
		}
		for _, run := range r.Runs {
			if run.Said != i {
				continue
			}
			t := r.Text(run, base)
			sh.ClearOfPlumbs(ug, t.Box())
			ug.Add(t)
		}
	}
}

// whole tells whether nothing on the row is said word by word.
func (r *Row) whole() bool {
	return !slices.ContainsFunc(r.Said, func(u Utterance) bool { return len(u.Words) > 1 })
}

// pitch returns how far the row's lanes are apart: things of one piece have a
// bar each, right under it, since they may go on at the same time.
func (r *Row) pitch() float64 {
	if r.whole() {
		return rowHeight
	}
	return lanePitch
}

// Height returns the height of the row.
func (r *Row) Height() float64 { return rowHeight + float64(r.Lanes-1)*r.pitch() }

// LaneBase returns the baseline over an utterance's line, that of the row's
// first lane being base.
func (r *Row) LaneBase(base float64, said int) float64 {
	return base + float64(r.lane(said))*r.pitch()
}

// Text returns a run of the row as a text.
func (r *Row) Text(run wordRun, base float64) draw.Text {
	return run.text(base + float64(run.lane)*(r.pitch()-lanePitch))
}

// lane returns the lane whose line an utterance stands on: the last, if the
// words of the row share one bar.
func (r *Row) lane(said int) int {
	if !r.whole() {
		return r.Lanes - 1
	}
	for _, run := range r.Runs {
		if run.Said == said {
			return run.lane
		}
	}
	return 0
}

// laneAt returns the lane of the word that a move hangs on at x.
func (r *Row) laneAt(said int, x float64) int {
	for _, run := range r.Runs {
		if run.Hangs && run.Said == said && math.Abs(run.X-x) < cueLead+0.1 {
			return run.lane
		}
	}
	return 0
}

// dropPlumb draws a plumb line, once where two hang on the same moment.
func (sh *Leaf) dropPlumb(x, from, to float64) {
	if !slices.Contains(sh.PlumbX, x) {
		sh.Plumbs.Line(x, from, x, to, PlumbStroke)
		sh.PlumbX = append(sh.PlumbX, x)
	}
}

// ClearOfPlumbs lets a plumb line that falls through a text end and go on
// behind it.
func (sh *Leaf) ClearOfPlumbs(g *draw.Group, b draw.Box) {
	for _, x := range sh.PlumbX {
		if x > b.X-0.3 && x < b.Right()+0.3 {
			g.Add(draw.Rect{Box: draw.Box{X: x - 0.3, Y: b.Y, W: 0.6, H: b.H}, Fill: draw.Paper})
		}
	}
}

// RowHead writes a name at the end of the gutter.
func (sh *Leaf) RowHead(g *draw.Group, base float64, name string) {
	t := draw.NewText(sh.Left-HeadGap, base, name, sheet.FontBody, draw.Grey).Aligned(draw.End)
	g.Add(t.Shortened(sh.Left - HeadGap - sheet.Margin))
}
