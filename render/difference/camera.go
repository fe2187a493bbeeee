// The band of the camera of a difference: how it turned and went, and how it does now.

package difference

import (
	"slices"

	"pullscore/render/draw"
	"pullscore/render/score/bands"
	"pullscore/render/score/lanes"
	"pullscore/render/sheet"
	"pullscore/render/signs"
)

// A lanePair is a lane in the two states, on one scale; nil: the camera does nothing of
// it then.
type lanePair [2]*lanes.Lane

// lanePairs returns the lanes of both states: those of the later one first.
func (df *differ) lanePairs() []lanePair {
	var pairs []lanePair
	for _, side := range []int{after, before} {
		if df.sides[side] == nil {
			continue
		}
		all := lanes.Of(df.sides[side].Shot)
		for k := range all {
			l := &all[k]
			i := slices.IndexFunc(pairs, func(p lanePair) bool { return p[after] != nil && p[after].Name == l.Name })
			if i < 0 {
				pairs, i = append(pairs, lanePair{}), len(pairs)
			}
			pairs[i][side] = l
		}
	}
	for _, p := range pairs {
		if was, now := p[before], p[after]; was != nil && now != nil {
			low, high := min(was.Low, now.Low), max(was.High, now.High)
			was.Low, was.High, now.Low, now.High = low, high, low, high
		}
	}
	return pairs
}

// cameraBand returns the band, if the camera does anything that it shows in either state.
func (df *differ) cameraBand(i int) []bands.Section {
	pairs := df.lanePairs()
	if len(pairs) == 0 {
		return nil
	}
	n, room := float64(len(pairs)), bands.LaneHeight+bands.BandGap
	return []bands.Section{{Name: "camera", Least: n*lanes.Least + room, Most: n*lanes.Most + room, OverTime: true,
		Draw: func(sh *bands.Leaf, g *draw.Group, top, height float64) {
			sh.Heading(g, top, "Camera")
			c := sheet.Clearing{Bounds: draw.Box{X: sh.Left, Y: top + bands.LaneHeight - 1, W: sh.Window.Right - sh.Left, H: height - room + 2}}
			sh.BlockPlumbs(&c)
			df.blockEnd(&c, df.main.Windows[i])
			each := (height - room) / n
			var places [][2]*lanes.Place
			for k, pair := range pairs {
				var both [2]*lanes.Place
				for side, l := range pair {
					if l != nil {
						both[side] = &lanes.Place{Leaf: asOf(sh, df.sides[side], i), Lane: l, Top: top + bands.LaneHeight + each*float64(k), Height: each}
					}
				}
				df.drawLane(g, &c, both)
				places = append(places, both)
			}
			for _, both := range places {
				df.writeLane(g, &c, both)
			}
		}}}
}

// drawLane draws a lane: what it was only where it is not so any more.
func (df *differ) drawLane(g *draw.Group, c *sheet.Clearing, both [2]*lanes.Place) {
	head := both[after]
	if head == nil {
		head = both[before]
	}
	lg := g.Group("lane")
	lg.Title = head.Lane.Name + " of the camera"
	head.DrawHead(lg)
	var runs [2][][]draw.Point
	for side, p := range both {
		if p == nil {
			if df.both() { // it stays where it starts
				runs[side] = [][]draw.Point{head.Rest()}
				c.Block(head.Rest(), sheet.Medium+0.6)
			}
			continue
		}
		if run := p.Run(); len(run) > 1 {
			runs[side] = [][]draw.Point{run}
			c.Block(run, sheet.Medium+0.6)
		}
	}
	strokeApart(lg.Group(signs.Before), runs[before], runs[after], was)
	if both[after] != nil && len(runs[after]) > 0 {
		lg.Add(draw.Path{Runs: runs[after], Stroke: sheet.Solid(draw.Black, sheet.Medium)})
	}
}

// writeLane writes the moves of a lane, and of those before the ones that are not so any
// more.
func (df *differ) writeLane(g *draw.Group, c *sheet.Clearing, both [2]*lanes.Place) {
	now, was := both[after], both[before]
	if now != nil {
		now.WriteMoves(g, c, now.Lane.Moves, "")
	}
	if was == nil {
		return
	}
	if now == nil {
		label := ""
		if df.both() {
			label = "before: "
		}
		was.WriteMoves(g, c, was.Lane.Moves, label)
		return
	}
	gone := slices.DeleteFunc(slices.Clone(was.Lane.Moves), func(m lanes.Move) bool { return slices.ContainsFunc(now.Lane.Moves, m.Alike) })
	was.WriteMoves(g, c, gone, "before: ")
}
