// The first band of a score: who speaks, what happens, and the words that the
// moves hang on.

package lines

import (
	"fmt"
	"slices"
	"strings"

	"pullscore/interp/plan"
	"pullscore/render/draw"
	"pullscore/render/score/bands"
	"pullscore/render/sheet"
	"pullscore/render/signs"
)

// An Utterance is something on a row that starts and ends: a spoken line, a
// cue, a piece of business.
type Utterance struct {
	Words      []plan.Word
	Start, End float64
	Cue        bool
	Title      string
	estimated  bool // its time
	silent     bool // a pause
}

// A Row is what one speaker says, or all that is not spoken, with its texts in their
// places: on several lanes where they would run into one another.
type Row struct {
	Name  string
	Said  []Utterance
	Runs  []Run
	Lanes int
	lane  []int // of each utterance
}

const (
	rowHeight = 5.6
	TextBase  = 3.6 // of a row's first lane
	Underline = 1.5 // below the baseline
	plumbTop  = Underline
)

// Band returns a section for every lane of every row.
func Band(w *bands.Window) []bands.Section {
	height := bands.LaneAir + w.HeadRoom()
	head := bands.Section{Name: "lines", Least: height, Most: height, OverTime: true,
		Draw: func(_ *bands.Leaf, g *draw.Group, top, _ float64) {
			g.Add(draw.NewText(sheet.Margin, top+bands.LaneAir+TextBase, "Lines", sheet.FontHeading, draw.Black))
		}}
	var all []bands.Section
	for _, r := range Rows(w) {
		for lane := range r.Lanes {
			all = append(all, bands.Section{Name: "lines", Least: rowHeight, Most: rowHeight, Head: &head, OverTime: true,
				Draw: func(sh *bands.Leaf, g *draw.Group, top, _ float64) { r.drawLane(sh, g, lane, top) }})
		}
	}
	return all
}

// Rows gathers what is heard and seen in the window: the subjects who speak, the farthest
// first, then other voices in the order in which they first speak, then business, cues and
// moves. Texts keep off the plumb lines that fall from rows above.
func Rows(w *bands.Window) []*Row {
	var rows []*Row
	var plumbs []float64
	for _, r := range append(Speech(w), Action(w)...) {
		if len(r.Said) == 0 {
			continue
		}
		r.Set(w, plumbs...)
		rows, plumbs = append(rows, r), append(plumbs, r.plumbs(w)...)
	}
	return rows
}

// plumbs returns where plumb lines fall from the row.
func (r *Row) plumbs(w *bands.Window) (list []float64) {
	for _, u := range r.Said {
		for _, word := range u.Words {
			if word.Hangs && w.Holds(word.Start) {
				list = append(list, w.X(word.Start))
			}
		}
	}
	return list
}

// Speech returns a row for every speaker.
func Speech(w *bands.Window) []*Row {
	var rows []*Row
	for _, k := range w.Order {
		rows = append(rows, &Row{Name: w.Shot.Subjects[k].Name})
	}
	for _, l := range w.Shot.Lines {
		if l.End <= 0 && l.Start < 0 {
			continue // by the cut it is over before the shot is seen
		}
		i := slices.IndexFunc(rows, func(r *Row) bool { return r.Name == l.Who })
		if i < 0 {
			i = len(rows)
			rows = append(rows, &Row{Name: l.Who})
		}
		if shows(w, float64(l.Start), float64(l.End)) {
			rows[i].add(w, spoken(l))
		}
	}
	return rows
}

// shows reports whether something from one time to another has its words on the window.
func shows(w *bands.Window, from, to float64) bool {
	return to > w.From() && from < w.To() || w.Holds(from)
}

// Action returns the row of all that is not spoken.
func Action(w *bands.Window) []*Row {
	s := w.Shot
	all := &Row{Name: "action"}
	for _, a := range s.Actions {
		if shows(w, float64(a.Start), float64(a.End)) {
			all.add(w, whole(a.Text, float64(a.Start), float64(a.End)))
		}
	}
	for _, p := range s.Pauses {
		if shows(w, float64(p.Start), float64(p.End)) {
			all.add(w, pause(w, p))
		}
	}
	for _, b := range s.Blocking {
		if shows(w, float64(b.Start), float64(b.End)) && !inCameraRow(s, b) {
			all.add(w, whole(blocking(s, b), float64(b.Start), float64(b.End)))
		}
	}
	for _, c := range s.Cues {
		if t := float64(c.T); shows(w, t, t) {
			all.add(w, Utterance{Start: t, End: t, Cue: true, Title: fmt.Sprintf("cue %s at %s", c.Name, sheet.When(s, t)),
				Words: []plan.Word{{Text: c.Name, Start: t, End: t, Hangs: hangsOn(s, c.Name)}}})
		}
	}
	return []*Row{all}
}

// add puts an utterance on the row of a window, in order of time.
func (r *Row) add(w *bands.Window, u Utterance) {
	if w.Narrowed(u.Start, u.End) {
		u.Words = nil // it has no room there, and nobody hears it
	}
	i := len(r.Said)
	for i > 0 && r.Said[i-1].Start > u.Start {
		i--
	}
	r.Said = slices.Insert(r.Said, i, u)
}

func spoken(l plan.Line) Utterance {
	u := Utterance{Words: l.Words, Start: float64(l.Start), End: float64(l.End),
		Title: fmt.Sprintf("%s, %s to %s: %s", l.Who, sheet.Figures.Time(float64(l.Start)), sheet.Figures.Time(float64(l.End)), l.Text)}
	if len(u.Words) == 0 {
		u.Words = []plan.Word{{Text: l.Text, Start: u.Start, End: u.End}}
	}
	if l.Estimated {
		u.estimated = true
		u.Title += " (time estimated)"
	}
	return u
}

// whole returns an utterance of one text that starts together.
func whole(text string, start, end float64) Utterance {
	return Utterance{Words: []plan.Word{{Text: text, Start: start, End: end}}, Start: start, End: end,
		Title: fmt.Sprintf("%s, %s to %s", text, sheet.Figures.Time(start), sheet.Figures.Time(end))}
}

// pause returns a silence: dots, with its name where it is long enough for it.
func pause(w *bands.Window, p plan.Pause) Utterance {
	start, end := float64(p.Start), float64(p.End)
	u := whole("pause", start, end)
	u.silent = true
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
	return s.Optics.Rig != nil && slices.Contains([]string{"pan", "tilt", "boom", "track", "dolly", "camera"}, b.Kind)
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
	switch {
	case b.To <= 0:
		text += " behind the camera"
	case b.To.Known():
		text += " to " + sheet.Style(s).Tape(float64(b.To))
	}
	return text
}

// Draw writes the row's head and its words, and lets the plumb lines fall.
func (r *Row) Draw(sh *bands.Leaf, g *draw.Group, top float64) {
	for lane := range r.Lanes {
		r.drawLane(sh, g, lane, top+rowHeight*float64(lane))
	}
}

// drawLane draws one of the row's lanes.
func (r *Row) drawLane(sh *bands.Leaf, g *draw.Group, lane int, top float64) {
	w, base := sh.Window, top+TextBase
	if lane == 0 {
		sh.RowHead(g, base, r.Name)
	}
	_, bottom := sh.Span()
	for i, u := range r.Said {
		if r.lane[i] != lane {
			continue
		}
		ug := g.Group("said")
		ug.Title = u.Title
		switch {
		case !u.Cue:
			Underscore(ug, w, u, base+Underline)
		case w.Holds(u.Start):
			signs.DrawCue(ug, w.X(u.Start), base-sheet.FontStrong.Middle(), "")
		}
		for _, word := range u.Words {
			if word.Hangs && w.Holds(word.Start) {
				sh.DropPlumb(w.X(word.Start), base+plumbTop, bottom)
			}
		}
		for _, run := range r.Runs {
			if run.Said == i {
				into := ug
				if run.Hangs && !u.Cue {
					into = ug.Group(signs.Word)
				}
				into.Add(run.At(base))
			}
		}
	}
}

// Underscore draws the line under an utterance, with an end where it starts and where it
// ends, if the window shows it.
func Underscore(g *draw.Group, w *bands.Window, u Utterance, y float64) {
	const end = 0.8
	from, to := w.X(u.Start), w.X(u.End)
	if to <= from {
		return
	}
	stroke, into := draw.Solid(draw.Black, draw.DashWidth), g
	switch {
	case u.silent:
		g.Group(signs.Pause).Line(from, y, from+draw.ClearOfDots(to-from), y, draw.Unsaid(draw.Black))
		return
	case u.estimated:
		into = g.Group(signs.Estimated)
		into.Line(from, y, to, y, draw.Assumed(draw.Black))
	default:
		into.Line(from, y, to, y, stroke)
	}
	if u.Start >= w.From() {
		into.Line(from, y, from, y-end, stroke)
	}
	if u.End <= w.Ends() {
		into.Line(to, y, to, y-end, stroke)
	}
}

// Height returns the height of the row.
func (r *Row) Height() float64 { return rowHeight * float64(r.Lanes) }

// LaneBase returns the baseline of an utterance, that of the row's first lane being base.
func (r *Row) LaneBase(base float64, said int) float64 {
	return base + rowHeight*float64(r.lane[said])
}

// Text returns a run of the row as a text, that of the row's first lane being base.
func (r *Row) Text(run Run, base float64) draw.Text { return run.At(r.LaneBase(base, run.Said)) }
