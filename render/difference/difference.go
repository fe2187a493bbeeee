// The difference of a shot: its scores in two states of a plan, laid over one
// another. What was before is thin, grey and behind, what is now is drawn as in a score,
// and an arrow leads from each old landing to the new one.

package difference

import (
	"fmt"
	"slices"
	"strings"

	"pullscore/interp/plan"
	"pullscore/interp/units"
	"pullscore/render/draw"
	"pullscore/render/score/bands"
	"pullscore/render/sheet"
)

// A Difference is a shot in two states of a plan, and what changed for the
// crew.
type Difference struct {
	Names         [2]string    // what to call the states: two paths, or a revision and a path
	Before, After *plan.Shot   // nil: the shot came, or it is gone; never both
	Pulls         []PullChange // the pulls of both in their order, those unchanged too
	Notes         []string     // what changed besides pulls, as phrases: "stop f/4 -> f/2.8"
}

// A PullChange is a pull in the two states.
type PullChange struct {
	Before, After *plan.Pull // nil: the pull came, or it is gone; never both
	Text          string     // what changed, as a phrase; empty: nothing
}

// Draw draws the difference. One that is longer, or fuller, than a sheet can
// show goes on over more pages, as a score does.
func Draw(d Difference, opt sheet.Options) []*draw.Page {
	df := newDiffer(d, opt.Size())
	notes, later := df.notes(), []*PullChange(nil)
	for i, w := range df.main.Windows {
		df.main.Lay(w, df.bands(i))
		if i == 0 && df.main.AddHere(notes) {
			notes = nil
		}
		if here := df.changesOn(w); !df.main.AddHere(df.table(here)) {
			later = append(later, here...)
		}
	}
	df.main.Lay(nil, notes)
	df.main.Lay(nil, append(df.table(later), df.rest()...))
	return df.main.Draw("changes", df.describe(), df.drawAround, df.drawLegend)
}

// The two states, as indices.
const (
	before = iota
	after
)

// A differ is a difference in the making.
type differ struct {
	Difference
	sides [2]*bands.Chart // of the two states, on the same times and scales; nil: the shot is not in it
	main  *bands.Chart    // the later of them, whose sheets are drawn on
}

// diffGutter is by how much the gutter is wider than that of a score: its
// labels hold two figures each.
const diffGutter = 6.0

func newDiffer(d Difference, paper sheet.Paper) *differ {
	df := &differ{Difference: d}
	seconds := d.lasting()
	for side, shot := range []*plan.Shot{d.Before, d.After} {
		if shot != nil {
			df.main = bands.NewChartOver(seconds, shot, paper)
			df.main.Systems = 1
			df.main.Shift(diffGutter)
			df.sides[side] = df.main
		}
	}
	if a, b := df.sides[before], df.sides[after]; a != nil && b != nil {
		a.Depth = bands.DepthScale{Far: min(a.Depth.Far, b.Depth.Far), Near: max(a.Depth.Near, b.Depth.Near)}
		b.Depth = a.Depth
		a.Turn = turnOver(a, b)
		b.Turn = a.Turn
	}
	return df
}

// turnOver returns the range of degrees that holds those of both scores.
func turnOver(sc, o *bands.Chart) bands.TurnScale {
	switch {
	case sc.Shot.Optics.Ring == nil:
		return o.Turn
	case o.Shot.Optics.Ring == nil:
		return sc.Turn
	}
	return bands.TurnScale{Low: min(sc.Turn.Low, o.Turn.Low), High: max(sc.Turn.High, o.Turn.High)}
}

// lasting returns how long the shot is in the longer of its states, in seconds.
func (d *Difference) lasting() (seconds float64) {
	for _, s := range d.shots() {
		if s != nil {
			seconds = max(seconds, bands.Lasting(s))
		}
	}
	return seconds
}

// pull returns the pull as it is now, or as it was.
func (c *PullChange) pull() *plan.Pull {
	if c.After != nil {
		return c.After
	}
	return c.Before
}

// states returns the pull in the two states.
func (c *PullChange) states() [2]*plan.Pull { return [2]*plan.Pull{c.Before, c.After} }

// changed reports whether the pull is not as it was.
func (c *PullChange) changed() bool {
	return c.Before == nil || c.After == nil || c.Text != ""
}

// both reports whether the shot is in both states.
func (d *Difference) both() bool { return d.Before != nil && d.After != nil }

// shots returns the shot in the two states.
func (d *Difference) shots() [2]*plan.Shot { return [2]*plan.Shot{d.Before, d.After} }

// changes returns the pulls that are not as they were.
func (d *Difference) changes() []*PullChange {
	var list []*PullChange
	for i := range d.Pulls {
		if c := &d.Pulls[i]; c.changed() {
			list = append(list, c)
		}
	}
	return list
}

// changesOn returns those that land on a window.
func (d *Difference) changesOn(w *bands.Window) []*PullChange {
	return slices.DeleteFunc(d.changes(), func(c *PullChange) bool { return !w.Holds(float64(c.pull().Land)) })
}

// verdict says what there is to say of the shot as a whole; "" where its
// changes say it.
func (d *Difference) verdict() string {
	switch {
	case d.Before == nil:
		return "This shot is new."
	case d.After == nil:
		return "This shot is gone."
	case len(d.changes()) == 0 && len(d.Notes) == 0:
		return "Nothing changed for the crew."
	}
	return ""
}

// describe says in a sentence what the drawing shows.
func (df *differ) describe() string {
	name, v := sheet.ShotName(df.main.Shot), df.verdict()
	text := fmt.Sprintf("Shot %s before (%s) and after (%s)", name, df.Names[before], df.Names[after])
	if v != "" {
		return text + ": " + strings.ToLower(v[:1]) + v[1:]
	}
	return fmt.Sprintf("%s, laid over one another against time: %s of %d changed, and %s besides.",
		text, units.Count(len(df.changes()), "move"), len(df.Pulls), units.Count(len(df.Notes), "thing"))
}

// arrows sets the arrow of a phrase as one character.
func arrows(phrase string) string { return strings.ReplaceAll(phrase, "->", "→") }

// window returns a state's view of a sheet; nil where the shot is not in it.
func (df *differ) window(side, i int) *bands.Window {
	if df.sides[side] == nil {
		return nil
	}
	return df.sides[side].Windows[i]
}

// bands returns the rows of a sheet from top to bottom.
func (df *differ) bands(i int) []bands.Section {
	all := df.word(i)
	all = append(all, df.linesBand(i)...)
	all = append(all, df.changesBand(i)...)
	all = append(all, df.distanceBand(i))
	all = append(all, df.cameraBand(i)...)
	return append(all, df.handBand(i))
}

// word returns the verdict on the shot, above all else.
func (df *differ) word(i int) []bands.Section {
	const height = 6
	if df.verdict() == "" || i > 0 {
		return nil
	}
	return []bands.Section{{Name: "word", Least: height, Most: height, Draw: func(sh *bands.Leaf, g *draw.Group, top, _ float64) {
		g.Add(draw.NewText(sh.Left, top+5, df.verdict(), sheet.FontHeading, draw.Black))
	}}}
}
