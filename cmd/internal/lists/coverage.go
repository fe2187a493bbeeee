package lists

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"pullscore/cmd/internal/console"
	"pullscore/interp/coverage"
	"pullscore/interp/units"
)

// WriteCoverage writes what the set-ups of scenes have of each word, as tables.
func WriteCoverage(screen console.Screen, scenes ...*coverage.Scene) error {
	w := &coverageWriter{Lines: console.Lines{Screen: screen}}
	for i, sc := range scenes {
		if i > 0 {
			w.Line("")
		}
		w.scene(sc)
	}
	return w.Flush()
}

type coverageWriter struct {
	console.Lines
	mark int // columns of what stands first in a row
	who  int // columns of the speakers
}

// The widths of the table of coverage, in columns.
const (
	leastMark   = 3
	widestWho   = 14
	leastText   = 24
	leastSetup  = 7 // the longest word of a cell
	widestSetup = 16
	between     = 2
	mostSetups  = 8 // beside one another, of a scene that is staged
)

func (w *coverageWriter) scene(sc *coverage.Scene) {
	w.Line(w.Screen.Paint(console.Bold, console.Clean(titleOf(sc.Title))))
	if len(sc.Lines) == 0 {
		w.Line("")
		if sc.Staged != nil {
			w.Line("Nobody speaks in this scene.")
			return
		}
		w.Line("No shot in this file has lines.")
		return
	}
	w.mark, w.who = leastMark, 0
	for i := range sc.Coverage {
		r := &sc.Coverage[i]
		w.who = min(max(w.who, console.Columns(speaker(r))), widestWho)
		w.mark = max(w.mark, console.Columns(markOf(r)))
	}
	for _, b := range blocks(sc, w.most(sc)) {
		w.Line("")
		w.block(sc, b)
	}
	w.Line("")
	w.below(sc)
}

// most returns how many set-ups stand beside one another, at least one.
func (w *coverageWriter) most(sc *coverage.Scene) int {
	wide := leastSetup
	for i := range sc.Setups {
		id, lens := setupHead(&sc.Setups[i])
		wide = max(wide, console.Columns(id), console.Columns(lens))
	}
	return max(1, (w.Screen.Width-w.left()-leastText)/(min(wide, widestSetup)+between))
}

// left returns how many columns stand before the text of a line.
func (w *coverageWriter) left() int { return w.mark + between + w.who + between }

// markOf returns what stands first in the row of a run: the number of its line, or in a
// scene that is staged when it begins.
func markOf(r *coverage.Run) string {
	if r.Start.Known() {
		return figures.Time(float64(r.Start))
	}
	return strconv.Itoa(r.Line)
}

// speaker returns who says a run.
func speaker(r *coverage.Run) string {
	if r.Off {
		return console.Clean(r.Who) + " (off)"
	}
	return console.Clean(r.Who)
}

// A block is a part of the table that has the same set-ups.
type block struct {
	runs   []coverage.Run
	setups []int // rising
}

// blocks parts the runs of a scene, line by line, so that none has more than so many
// set-ups. A line that more of them have stands in several blocks, one after the other. Of
// a scene that is staged every block has all lines: what none has is told too.
func blocks(sc *coverage.Scene, most int) (list []block) {
	if sc.Staged != nil {
		return stagedBlocks(sc, min(most, mostSetups))
	}
	for i := 0; i < len(sc.Coverage); {
		end := i
		for end < len(sc.Coverage) && sc.Coverage[end].Line == sc.Coverage[i].Line {
			end++
		}
		line := joined(sc.Coverage[i:end])
		for part := range slices.Chunk(setupsOf(line), most) {
			if len(list) > 0 && part[0] == setupsOf(line)[0] {
				last := &list[len(list)-1]
				if both := united(last.setups, part); len(both) <= most {
					last.setups, last.runs = both, append(last.runs, line...)
					continue
				}
			}
			list = append(list, block{slices.Clone(line), slices.Clone(part)})
		}
		i = end
	}
	return list
}

// stagedBlocks returns the blocks of a scene that is staged.
func stagedBlocks(sc *coverage.Scene, most int) (list []block) {
	all := make([]int, len(sc.Setups))
	for i := range all {
		all[i] = i
	}
	runs := joined(sc.Coverage)
	for part := range slices.Chunk(all, most) {
		list = append(list, block{runs, part})
	}
	if len(list) == 0 {
		list = []block{{runs, nil}}
	}
	return list
}

// joined makes one of following runs of a line whose cells say the same word.
func joined(runs []coverage.Run) (list []coverage.Run) {
	for _, r := range runs {
		if n := len(list) - 1; n >= 0 && list[n].Line == r.Line && slices.EqualFunc(list[n].Cells, r.Cells, sayTheSame) {
			list[n].Text += " " + r.Text
			continue
		}
		list = append(list, r)
	}
	return list
}

// sayTheSame reports whether two cells are of one set-up and say the same word.
func sayTheSame(a, b coverage.Cell) bool { return a.Setup == b.Setup && cellWord(&a) == cellWord(&b) }

// setupsOf returns the set-ups that have any of some runs; nil stands for none.
func setupsOf(runs []coverage.Run) []int {
	set := []int{}
	for _, r := range runs {
		for i := range r.Cells {
			set = append(set, r.Cells[i].Setup)
		}
	}
	return united(set, nil)
}

// united returns the members of two sets, rising.
func united(a, b []int) []int {
	all := slices.Concat(a, b)
	slices.Sort(all)
	return slices.Compact(all)
}

// setupHead returns the two parts of the head of a set-up.
func setupHead(s *coverage.Setup) (id, lens string) {
	return console.Fit(console.Clean(s.Shot), widestSetup), figures.Millimetres(float64(s.FocalMM) / 1000)
}

// block writes one part of the table.
func (w *coverageWriter) block(sc *coverage.Scene, b block) {
	width, text, joined := w.widths(sc, b)
	blank := strings.Repeat(" ", w.left())
	heads := make([]string, len(b.setups))
	lenses := make([]string, len(b.setups))
	for i, k := range b.setups {
		heads[i], lenses[i] = setupHead(&sc.Setups[k])
		if joined {
			heads[i] += " " + lenses[i]
		}
	}
	w.Line(w.Screen.Paint(console.Bold, strings.TrimRight(blank+console.Left("", text)+beside(heads, width), " ")))
	if !joined {
		w.Line(w.Screen.Paint(console.Dim, strings.TrimRight(blank+console.Left("", text)+beside(lenses, width), " ")))
	}
	last := 0
	for i := range b.runs {
		w.run(&b.runs[i], b.setups, width, text, b.runs[i].Line != last)
		last = b.runs[i].Line
	}
}

// widths returns how wide the columns of a block are, how wide its text is, and whether
// the two parts of a head stand beside one another.
func (w *coverageWriter) widths(sc *coverage.Scene, b block) (setup, text int, joined bool) {
	under, joint := leastSetup, leastSetup
	for _, k := range b.setups {
		id, lens := setupHead(&sc.Setups[k])
		under = max(under, console.Columns(id), console.Columns(lens))
		joint = max(joint, console.Columns(id)+1+console.Columns(lens))
	}
	left := w.Screen.Width - w.left()
	if rest := left - len(b.setups)*(joint+between); rest >= leastText {
		return joint, min(rest, w.longest(b)), true
	}
	return under, max(leastText, min(left-len(b.setups)*(under+between), w.longest(b))), false
}

// longest returns how wide the longest text of a block is.
func (w *coverageWriter) longest(b block) int {
	wide := leastText
	for i := range b.runs {
		wide = max(wide, console.Columns(console.Clean(b.runs[i].Text)))
	}
	return wide
}

// beside returns cells beside one another.
func beside(cells []string, width int) string {
	text := ""
	for _, c := range cells {
		text += strings.Repeat(" ", between) + console.Left(c, width)
	}
	return text
}

// run writes a run of words; named says that its line begins here.
func (w *coverageWriter) run(r *coverage.Run, setups []int, width, text int, named bool) {
	mark, who := "", ""
	if named || r.Start.Known() {
		mark = markOf(r)
	}
	if named {
		who = console.Fit(speaker(r), w.who)
	}
	head := console.Right(mark, w.mark) + strings.Repeat(" ", between) + console.Left(who, w.who) + strings.Repeat(" ", between)
	cells := make([]string, len(setups))
	for i, k := range setups {
		if c := cellOf(r, k); c != nil {
			cells[i] = cellWord(c)
		}
	}
	for i, line := range console.Wrap(console.Clean(r.Text), text) {
		if i > 0 {
			head, cells = strings.Repeat(" ", w.left()), nil
		}
		w.Line(head + console.Left(line, text) + beside(cells, width))
	}
}

// cellOf returns the cell of a set-up, nil where it does not have the run.
func cellOf(r *coverage.Run, setup int) *coverage.Cell {
	for i := range r.Cells {
		if r.Cells[i].Setup == setup {
			return &r.Cells[i]
		}
	}
	return nil
}

// cellWord returns what a cell says in one word, with a star where the cut shows it.
func cellWord(c *coverage.Cell) string {
	star := ""
	if c.Shown() {
		star = "*"
	}
	switch {
	case c.Focus == coverage.Voice:
		return "voice" + star
	case c.Frame == coverage.Out, c.Frame == coverage.Blocked, c.Held && c.Frame == coverage.Edge:
		return c.Frame + star
	}
	return c.Focus + star
}

// below writes what no set-up holds, what one holds alone, and the counts.
func (w *coverageWriter) below(sc *coverage.Scene) {
	missing := "nothing"
	if len(sc.Missing) > 0 {
		missing = gapsText(sc.Missing)
	}
	w.Hanging(console.Plain, "", "Held by no set-up: "+missing+".")
	if len(sc.Single) > 0 {
		w.Hanging(console.Plain, "", "Held by one set-up alone, of several that have the words: "+gapsText(sc.Single)+".")
	}
	if sc.Cut != nil {
		w.Hanging(console.Plain, "", cutText(sc))
	}
	var counts []string
	for _, o := range sc.Speakers {
		counts = append(counts, fmt.Sprintf("%s %d of %d", o.Who, o.Held, o.Words))
	}
	if len(counts) > 0 {
		w.Hanging(console.Plain, "", "Own words held: "+strings.Join(counts, ", ")+".")
	}
	w.Hanging(console.Dim, "", "Sharp, faint and soft are the worst of the words, for the one who speaks them; rack: not sharp yet, or not any more; out and edge: of the picture, and blocked: behind somebody, where the plan says to which side people stand. "+units.Count(sc.Words, "word")+" in "+units.Count(len(sc.Setups), "set-up")+".")
}

// cutText says what the cut shows.
func cutText(sc *coverage.Scene) string {
	c := sc.Cut
	switch {
	case sc.Staged != nil && len(sc.Staged.Cuts) == 0:
		return "The scene has no cuts. Write cut to, or name a cut with edit whose list has its set-ups."
	case sc.Staged != nil && c.Words == 0:
		return "The cut (*) shows none of these words with their speaker."
	case c.Words == 0:
		return "The cut (*) shows none of these words with their speaker. The plan names a cut with edit, and the list of the cut names the shots."
	case len(c.NotHeld) == 0:
		return fmt.Sprintf("The cut (*) holds all of the %s that it shows with their speaker.", units.Count(c.Words, "word"))
	}
	return fmt.Sprintf("The cut (*) holds %d of %s that it shows with their speaker. Not held: %s.", c.Held, units.Count(c.Words, "word"), gapsText(c.NotHeld))
}

// gapsText returns runs of words in one phrase.
func gapsText(list []coverage.Gap) string {
	var texts []string
	for _, g := range list {
		at := fmt.Sprintf("line %d", g.Line)
		if g.Start.Known() {
			at = figures.Time(float64(g.Start))
		}
		text := fmt.Sprintf("%s “%s” (%s", g.Who, g.Text, at)
		if g.Shot != "" {
			text += ", by " + g.Shot
		}
		texts = append(texts, text+")")
	}
	return strings.Join(texts, ", ")
}
