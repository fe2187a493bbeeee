// The lanes above the bands of a score: numbered discs where moves start, and
// flags where findings lie; and the sentences of the findings below.

package score

import (
	"slices"
	"strconv"

	"pullscore/interp/plan"
	"pullscore/render/draw"
	"pullscore/render/sheet"
)

// lane returns the strip that opens a band of several rows.
func (w *window) lane(row, title string) section {
	return section{name: row, least: laneHeight, most: laneHeight, overTime: true,
		draw: func(sh *leaf, g *draw.Group, top, _ float64) {
			sh.open(g, top, row, title)
		}}
}

// flags returns the findings of a row in the window. One without a row is about
// the shot as a whole and stands in the sentences alone.
func (w *window) flags(row string) []plan.Flag {
	var flags []plan.Flag
	for _, f := range w.shot.Flags {
		if f.Row == row && w.holds(f.Time) {
			flags = append(flags, f)
		}
	}
	return flags
}

// A sign is something that stands in a lane.
type sign struct {
	width float64
	rank  int
	at    float64                        // where its middle wants to be
	draw  func(g *draw.Group, x float64) // x is its middle
}

const (
	flagHeight = 3.3
	badgeSize  = 1.75 // radius
)

// drawLane draws a row's flags, and over the distances the numbers of moves.
func (sh *leaf) drawLane(g *draw.Group, top float64, row string) {
	var signs []sign
	for _, f := range sh.window.flags(row) {
		signs = append(signs, sh.flagSign(f, top))
	}
	if row == "distance" {
		signs = append(signs, sh.badges(top)...)
	}
	sh.drawSigns(g, signs)
}

// drawSigns puts signs where they belong in time, apart from each other. Where
// there are more than the lane holds, the least weighty are left out; they are
// in the sentences and the table.
func (sh *leaf) drawSigns(g *draw.Group, signs []sign) {
	lo, hi := sh.left-1, sh.right+apron
	slices.SortStableFunc(signs, func(a, b sign) int { return b.rank - a.rank })
	sizes := make([]float64, len(signs))
	for i, s := range signs {
		sizes[i] = s.width
	}
	signs = signs[:sheet.Capacity(sizes, hi-lo)]
	want := make([]float64, len(signs))
	for i, s := range signs {
		want[i] = s.at
	}
	for i, x := range sheet.Spread(want, sizes[:len(signs)], lo, hi) {
		signs[i].draw(g, x)
	}
}

// badges returns the numbered discs of the moves that start in the window.
func (sh *leaf) badges(top float64) []sign {
	var signs []sign
	for _, p := range sh.shot.Pulls {
		if t := float64(p.Start); sh.window.holds(t) {
			signs = append(signs, sign{at: sh.window.x(t), width: 2*badgeRadius(p.Number) + 0.8, rank: 3,
				draw: func(g *draw.Group, x float64) {
					bg := g.Group("pull")
					bg.Title, bg.Number = pullTitle(sh.shot, p), p.Number
					y := top + laneAir + flagLane/2
					sh.pole(bg, x, y, sh.window.x(t), top)
					badge(bg, x, y, p.Number)
				}})
		}
	}
	return signs
}

// flagSign returns the flag of a finding, with its pole down to the row.
func (sh *leaf) flagSign(f plan.Flag, top float64) sign {
	width := flagWidth(f.Number)
	return sign{at: sh.window.x(f.Time) + width/2, width: width + 0.8, rank: rank(f.Severity),
		draw: func(g *draw.Group, x float64) {
			fg := g.Group("finding")
			fg.Title, fg.Number = f.Severity+" "+f.Code+": "+f.Text, f.Number
			y := top + laneAir + (flagLane-flagHeight)/2
			sh.pole(fg, x-width/2, y, sh.window.x(f.Time), top)
			pennant(fg, x-width/2, y, f.Severity, strconv.Itoa(f.Number))
		}}
}

// pole joins a sign to the place on the row's upper edge that it means.
func (sh *leaf) pole(g *draw.Group, x, y, to, top float64) {
	g.Add(draw.Path{Runs: [][]draw.Point{{{X: x, Y: y}, {X: x, Y: top + laneHeight - 1}, {X: to, Y: top + laneHeight + 0.6}}}, Stroke: sheet.Solid(draw.Grey, sheet.Thin)})
}

func badgeRadius(number int) float64 {
	return max(badgeSize, sheet.FontNumber.Width(strconv.Itoa(number))/2+0.5)
}

// badge draws the number of a move.
func badge(g *draw.Group, x, y float64, number int) {
	g.Add(draw.Disc{Centre: draw.Point{X: x, Y: y}, Radius: badgeRadius(number), Fill: draw.Black})
	g.Add(draw.NewText(x, y+sheet.FontNumber.Middle(), strconv.Itoa(number), sheet.FontNumber, draw.Paper).Aligned(draw.Middle))
}

func flagWidth(number int) float64 { return sheet.FontNumber.Width(strconv.Itoa(number)) + 3 }

// pennant draws the flag of a finding with its top left corner at (x, y): an
// error full, a warning outlined, a note outlined thinly.
func pennant(g *draw.Group, x, y float64, severity, number string) {
	w := sheet.FontNumber.Width(number) + 3
	run := []draw.Point{{X: x, Y: y}, {X: x + w, Y: y}, {X: x + w - 1, Y: y + flagHeight/2}, {X: x + w, Y: y + flagHeight}, {X: x, Y: y + flagHeight}}
	fill, stroke, ink := draw.Paper, sheet.Solid(draw.Grey, sheet.Hair), draw.Grey
	switch severity {
	case "error":
		fill, stroke, ink = draw.Rust, sheet.Solid(draw.Rust, sheet.Medium), draw.Paper
	case "warning":
		stroke, ink = sheet.Solid(draw.Rust, sheet.Medium), draw.Rust
	}
	g.Add(draw.Path{Runs: [][]draw.Point{run}, Closed: true, Fill: fill, Stroke: stroke})
	g.Add(draw.NewText(x+0.9, y+flagHeight/2+sheet.FontNumber.Middle(), number, sheet.FontNumber, ink))
}

const (
	sentencePitch = 3.4
	columnGap     = 8.0
	footAir       = 3.2 // above what stands below the bands
)

// A sentenceLine is one printed line of a finding.
type sentenceLine struct {
	time   string // on its first line
	timeAt float64
	text   string
	at     float64 // of the text, from the column's left
	ink    draw.Ink
	flag   *plan.Flag // on its first line
}

// tellHere puts the sentences of a window's findings on its own sheet, as far
// as it has room, the worst first; it returns the others.
func (sc *score) tellHere(w *window) (later []plan.Flag) {
	var flags []plan.Flag
	for _, f := range sc.shot.Flags {
		if w.holds(f.Time) {
			flags = append(flags, f)
		}
	}
	slices.SortStableFunc(flags, func(a, b plan.Flag) int { return rank(b.Severity) - rank(a.Severity) })
	for n := len(flags); n > 0; n-- {
		here := slices.SortedFunc(slices.Values(flags[:n]), byNumber)
		if sc.addHere(sc.findings(here)) {
			return slices.SortedFunc(slices.Values(flags[n:]), byNumber)
		}
	}
	return slices.SortedFunc(slices.Values(flags), byNumber)
}

func byNumber(a, b plan.Flag) int { return a.Number - b.Number }

// findings returns the sentences of findings, two side by side, a section for
// every printed line so that none is ever cut.
func (sc *score) findings(flags []plan.Flag) []section {
	width := (sc.paper.W - sheet.Margin - sc.left - columnGap) / 2
	head := section{name: "findings", least: footAir, draw: func(sh *leaf, g *draw.Group, top, _ float64) {
		g.Add(draw.NewText(sheet.Margin, top+footAir+2.7, "Findings", sheet.FontHeading, draw.Black))
	}}
	var all []section
	for i := 0; i < len(flags); i += 2 {
		left := sc.sentence(&flags[i], width)
		var right []sentenceLine
		if i+1 < len(flags) {
			right = sc.sentence(&flags[i+1], width)
		}
		count := max(len(left), len(right))
		for k := range count {
			height, together, told := sentencePitch, 0, []int(nil)
			if k == count-1 {
				height += 1
			}
			if k == 0 && count <= mostTogether {
				together = count - 1
			}
			for _, column := range [][]sentenceLine{left, right} {
				if k < len(column) && column[k].flag != nil {
					told = append(told, column[k].flag.Number)
				}
			}
			all = append(all, section{name: "findings", least: height, most: height, head: &head, together: together, flags: told,
				draw: func(_ *leaf, g *draw.Group, top, _ float64) {
					if k < len(left) {
						left[k].draw(g, sc.left, top)
					}
					if k < len(right) {
						right[k].draw(g, sc.left+width+columnGap, top)
					}
				}})
		}
	}
	return all
}

// mostTogether is how many lines are kept on one sheet.
const mostTogether = 12

// timeIndent is where the times of findings stand, right of their flags.
func (sc *score) timeIndent() float64 {
	widest := 0
	for i := range sc.shot.Flags {
		widest = max(widest, sc.shot.Flags[i].Number)
	}
	return max(7.5, flagWidth(widest)+2)
}

// sentence wraps a finding: when it is and what is wrong, then what cures it.
func (sc *score) sentence(f *plan.Flag, width float64) []sentenceLine {
	indent := sc.timeIndent()
	at := indent
	for i := range sc.shot.Flags {
		at = max(at, indent+sheet.FontNote.Width(sheet.When(sc.shot, sc.shot.Flags[i].Time))+2)
	}
	var lines []sentenceLine
	add := func(text string, ink draw.Ink) {
		for _, line := range sheet.FontNote.Wrap(text, width-at) {
			lines = append(lines, sentenceLine{text: line, at: at, ink: ink})
		}
	}
	add(f.Text, draw.Black)
	if f.Cures != "" {
		add("Cure: "+f.Cures, draw.Leaf)
	}
	lines[0].flag, lines[0].time, lines[0].timeAt = f, sheet.When(sc.shot, f.Time), indent
	return lines
}

func (l sentenceLine) draw(g *draw.Group, x, top float64) {
	base := top + 2.7
	if l.flag != nil {
		pennant(g, x, base-sheet.FontNote.Middle()-flagHeight/2, l.flag.Severity, strconv.Itoa(l.flag.Number))
		g.Add(draw.NewText(x+l.timeAt, base, l.time, sheet.FontNote, draw.Grey))
	}
	g.Add(draw.NewText(x+l.at, base, l.text, sheet.FontNote, l.ink))
}
