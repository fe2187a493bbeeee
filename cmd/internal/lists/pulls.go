// The pull list as text: a table a shot, and the defaults that stand in it.

package lists

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"pullscore/cmd/internal/console"
	"pullscore/cmd/internal/lists/scenes"
	"pullscore/interp/moments"
	"pullscore/interp/plan"
	"pullscore/interp/units"
)

// modelNote goes with every chance of landing that is printed.
const modelNote = "Pullscore computes the chance of landing with a model of its own, built from " +
	"published measurements of hands and eyes. Nobody has measured it on a set."

// WriteText writes the tables of plans.
func WriteText(screen console.Screen, plans ...*plan.Plan) error {
	w := &writer{console.Lines{Screen: screen}}
	for i, p := range plans {
		if i > 0 {
			w.Line("")
		}
		w.head(p)
		scenes.Write(&w.Lines, p)
		for _, s := range p.Shots {
			w.shot(s)
		}
		w.defaults(p.Defaults)
	}
	if slices.ContainsFunc(plans, hasChance) {
		w.Line("")
		w.Wrapped(console.Dim, "", modelNote)
	}
	return w.Flush()
}

// WriteNote writes what goes with every chance of landing that is printed.
func WriteNote(screen console.Screen) error {
	w := &writer{console.Lines{Screen: screen}}
	w.Wrapped(console.Dim, "", modelNote)
	return w.Flush()
}

func hasChance(p *plan.Plan) bool {
	for _, s := range p.Shots {
		for _, u := range s.Pulls {
			if u.Chance.Known() || u.ChanceBand[0].Known() {
				return true
			}
		}
	}
	return false
}

type writer struct{ console.Lines }

func (w *writer) head(p *plan.Plan) {
	title := p.Title
	if title == "" {
		title = "A plan without a title"
	}
	w.Wrapped(console.Bold, "", title)
	w.Line(w.Screen.Paint(console.Dim, fmt.Sprintf("%s frames a second, tape from the %s", p.Rate, p.Tape)))
	if len(p.Shots) == 0 {
		w.Line("")
		w.Line("No shot in this file can be listed.")
	}
}

// margin stands before all that belongs to a shot.
const margin = "  "

func (w *writer) shot(s *plan.Shot) {
	w.Line("")
	w.shotTitle(s)
	w.Wrapped(console.Dim, margin, setUp(s))
	scenes.Shot(&w.Lines, s, style(s))
	w.pieces(s)
	if text := moments.Provenance(s); text != "" {
		w.Wrapped(console.Dim, margin, console.Clean(text))
	}
	for _, note := range s.Notes {
		w.Hanging(console.Plain, margin, console.Clean("note: "+note))
	}
	w.start(s)
	if len(s.Pulls) == 0 {
		w.Line(margin + "The focus stays where it is.")
		w.cameraMovesUntil(s, cameraMoves(s), math.Inf(1), margin)
	} else {
		w.table(s)
	}
	w.inFrame(s)
	w.rests(s)
}

// start writes how far somebody may miss the mark that the shot starts on.
func (w *writer) start(s *plan.Shot) {
	if text := moments.Miss(s, s.Start.Miss, style(s)); text != "" {
		w.Hanging(console.Dim, margin, console.Clean("starts on "+s.Start.Target+": "+text))
	}
}

// rests writes how often somebody is sharp while the focus rests on them.
func (w *writer) rests(s *plan.Shot) {
	if len(s.Rests) == 0 {
		return
	}
	w.Line("")
	w.Line(margin + w.Screen.Paint(console.Dim, "rests"))
	for i := range s.Rests {
		colour := console.Plain
		if s.Rests[i].Share < s.Wanted {
			colour = console.Yellow
		}
		w.Hanging(colour, margin+margin, console.Clean(moments.Rest(s, &s.Rests[i], style(s))))
	}
}

// shotTitle writes the shot's ID, and its title beside it where it fits, else
// below it.
func (w *writer) shotTitle(s *plan.Shot) {
	id, title := console.Clean(s.ID), console.Clean(s.Title)
	if console.Columns(id)+columnGap+console.Columns(title) <= w.Screen.Width {
		w.Line(w.Screen.Paint(console.Bold, id) + strings.Repeat(" ", columnGap) + title)
		return
	}
	w.Wrapped(console.Bold, "", id)
	w.Wrapped(console.Plain, margin, title)
}

// setUp says in a line what the shot is taken with.
func setUp(s *plan.Shot) string {
	parts := []string{"camera " + s.Camera}
	if s.Sensor.Format != "" || s.Sensor.Cropped {
		parts = append(parts, sensor(s.Sensor))
	}
	parts = append(parts, "lens "+s.Lens, s.BothStops(), "CoC "+figures.Disc(float64(s.CriterionMM)/1000), "on "+article(s.Support))
	if s.Gear.Known() && s.Gear != 1 {
		parts = append(parts, "gear "+figures.Gear(float64(s.Gear)))
	}
	if s.Puller != "" {
		parts = append(parts, "puller "+s.Puller)
	}
	if s.Operator != "" {
		parts = append(parts, "operator "+s.Operator)
	}
	if at := s.Speed(); at.Off() {
		parts = append(parts, units.Shoots(at.Shoots, at.Factor()))
	}
	parts = append(parts, "lasts "+figures.Time(float64(s.Duration)))
	if s.BeginsAt != "" {
		parts = append(parts, "begins at "+s.BeginsAt)
	}
	return strings.Join(parts, ", ")
}

// sensor names the format, if the plan does, and the part that the picture uses.
func sensor(s plan.Sensor) string {
	size := fmt.Sprintf("%s x %s mm", figures.Number(float64(s.WidthMM), 2), figures.Number(float64(s.HeightMM), 2))
	if s.Format == "" {
		return "sensor " + size
	}
	return "sensor " + s.Format + ", " + size
}

func article(support string) string {
	switch support {
	case "tripod", "dolly":
		return "a " + support
	case "shoulder", "hand":
		return "the " + support
	}
	return support
}

// heads are the heads of the columns of numbers.
var heads = []string{"starts", "over", "from", "to", "ring from", "to", "travel", "window", "lands"}

const (
	numberWidth = 2 // of a pull's number
	columnGap   = 2
)

// table writes two lines a pull: whom it goes to and why, and the numbers.
func (w *writer) table(s *plan.Shot) {
	rows := [][]string{heads}
	for _, u := range s.Pulls {
		rows = append(rows, row(s, u))
	}
	widths := widthsOf(rows)
	indent := margin + strings.Repeat(" ", numberWidth+columnGap)
	gap := columnGap
	if len(indent)+console.Columns(cells(heads, widths, gap)) > w.Screen.Width {
		gap = 1
	}
	w.Line("")
	w.Line(indent + w.Screen.Paint(console.Dim, cells(heads, widths, gap)))
	moves := cameraMoves(s)
	for i, u := range s.Pulls {
		moves = w.cameraMovesUntil(s, moves, float64(u.Start), indent)
		w.pull(s, u, indent)
		text := cells(rows[i+1], widths, gap)
		if u.Chance.Known() && u.Chance < s.Wanted {
			at := strings.LastIndex(text, chance(s, u))
			text = text[:at] + w.Screen.Paint(console.Yellow, text[at:])
		}
		w.Line(indent + text)
		for _, more := range []string{restsOn(s, u), hold(u), moments.Follow(s, u, style(s)), moments.Miss(s, u.Miss, style(s))} {
			if more != "" {
				w.Wrapped(console.Dim, indent, more)
			}
		}
	}
	w.cameraMovesUntil(s, moves, math.Inf(1), indent)
}

// restsOn says what the chance of a pull rests on where the ring has no marks; "" else.
func restsOn(s *plan.Shot, u *plan.Pull) string {
	if on := moments.RestsOn(s); on != "" && chance(s, u) != "" {
		return "chance " + on
	}
	return ""
}

// pull writes the line that says what a pull is: its number, whom it goes to,
// and then when it is by the clock of the edit, its cue and why.
func (w *writer) pull(s *plan.Shot, u *plan.Pull, indent string) {
	what, why := focus(u), ""
	for _, part := range append(inRecord(s, u), u.Anchor, u.Because) {
		if part != "" {
			why += " · " + console.Clean(part)
		}
	}
	head := margin + console.Right(fmt.Sprint(u.Number), numberWidth) + strings.Repeat(" ", columnGap)
	for i, line := range console.Wrap(what+why, w.Screen.Width-len(indent)) {
		switch {
		case i > 0:
			line = indent + w.Screen.Paint(console.Dim, line)
		case strings.HasPrefix(line, what):
			line = head + w.Screen.Paint(console.Bold, what) + w.Screen.Paint(console.Dim, line[len(what):])
		default:
			line = head + w.Screen.Paint(console.Bold, line)
		}
		w.Line(line)
	}
}

// row returns the numbers of a pull.
func row(s *plan.Shot, u *plan.Pull) []string {
	in := style(s)
	return []string{
		in.Time(float64(u.Start)), in.Time(float64(u.Land - u.Start)), in.Tape(float64(u.FromM)), in.Tape(float64(u.ToM)),
		angle(u.FromDeg), angle(u.ToDeg), angle(u.HandDeg), angle(u.WindowHand[1] - u.WindowHand[0]), chance(s, u),
	}
}

// angle writes an angle; nothing for what no ring is turned by.
func angle(n plan.Number) string {
	if n.IsInf() {
		return ""
	}
	return figures.Angle(float64(n))
}

func chance(s *plan.Shot, u *plan.Pull) string {
	return moments.Chance(s, u, figures)
}

// hold says where the hand takes hold; nothing where that is not known.
func hold(u *plan.Pull) string {
	if u.Hold == nil {
		return ""
	}
	return u.HoldSays
}

// focus says from whom to whom a pull goes.
func focus(u *plan.Pull) string {
	text := u.From + " to " + u.Target
	switch {
	case u.Kind == "follow":
		text = "follow " + u.Target
	case u.From == "":
		text = "to " + u.Target
	}
	return strings.Join(strings.Fields(console.Clean(text)), " ")
}

// widthsOf returns how many columns of the terminal each cell of a row needs. All
// rows have as many cells as the first.
func widthsOf(rows [][]string) []int {
	widths := make([]int, len(rows[0]))
	for _, row := range rows {
		for i, c := range row {
			widths[i] = max(widths[i], console.Columns(c))
		}
	}
	return widths
}

// cells lays a row out in columns, so many blanks apart.
func cells(row []string, widths []int, gap int) string {
	list := make([]string, len(row))
	for i, c := range row {
		list[i] = console.Right(c, widths[i])
	}
	return strings.Join(list, strings.Repeat(" ", gap))
}

func (w *writer) defaults(list []plan.Default) {
	if len(list) == 0 {
		return
	}
	w.Line("")
	w.Line(w.Screen.Paint(console.Bold, "Not in the plan; the default used"))
	for i, d := range list {
		same := func(o plan.Default) bool { return o.Name == d.Name && o.Value == d.Value && o.Why == d.Why }
		if slices.IndexFunc(list, same) < i {
			continue // told with the first shot that it stands in
		}
		name := d.Name
		var shots []string
		for _, o := range list {
			if same(o) && o.Shot != "" {
				shots = append(shots, o.Shot)
			}
		}
		if len(shots) > 0 {
			name = strings.Join(shots, ", ") + " " + name
		}
		w.Wrapped(console.Plain, margin, fmt.Sprintf("%s: %s (%s)", name, d.Value, d.Why))
	}
}
