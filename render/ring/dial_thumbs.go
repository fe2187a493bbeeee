// The thumb's places on a dial: where to take hold of the wheel for each pull.
//
// The disc turns with the wheel, and so does the thumb while it keeps its hold. So each
// hold has one place on the disc, from its start to its landing.

package ring

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"pullscore/render/draw"
	"pullscore/render/sheet"
)

// A thumb is a place of the thumb on the disc.
type thumb struct {
	deg   float64  // as for point
	pulls []string // for which it takes hold there
}

const (
	thumbRadius = 0.9 // of the dot, millimetres
	thumbLead   = 9.0 // the longest line from a dot to its words
	sameThumb   = 4.0 // degrees that a thumb does not tell apart
)

// thumbs returns the places at which the thumb takes hold: as a pull starts, and after
// its last re-grip.
func (d *dial) thumbs() (list []thumb) {
	add := func(deg float64, pull string) {
		same := func(o thumb) bool { return math.Abs(math.Remainder(o.deg-deg, 360)) < sameThumb }
		if i := slices.IndexFunc(list, same); i < 0 {
			list = append(list, thumb{deg, []string{pull}})
		} else if !slices.Contains(list[i].pulls, pull) {
			list[i].pulls = append(list[i].pulls, pull)
		}
	}
	for _, p := range d.shot.Pulls {
		if p.Hold == nil || p.HoldOn != "wheel" {
			continue
		}
		// The places are for a wheel that turns clockwise, on which the marks go
		// anticlockwise; on the other disc all of it is mirrored, as point does.
		if !p.Kept {
			add(d.hand(float64(p.FromDeg))-30*float64(p.HoldFrom), strconv.Itoa(p.Number))
		}
		if p.Regrip.Known() {
			add(d.hand(float64(p.ToDeg))-30*float64(p.HoldTo), strconv.Itoa(p.Number)+" again")
		}
	}
	return list
}

// drawThumbs draws a dot at the rim for each place of the thumb, with the pulls for
// which it takes hold there. A place without room for its words has no dot either.
func (d *dial) drawThumbs(g *draw.Group) {
	list := d.thumbs()
	if len(list) == 0 {
		return
	}
	g.Title = "where to take hold with the thumb"
	c := d.clearing()
	for _, l := range d.labels {
		if l.box.W > 0 {
			c.Texts = append(c.Texts, l.ground().Grow(0.3))
		}
	}
	for i := range c.Texts {
		c.Texts[i].X, c.Texts[i].Y = c.Texts[i].X+d.centre.X, c.Texts[i].Y+d.centre.Y
	}
	c.Taken = append(c.Taken, c.Texts...)
	for _, t := range list {
		at := d.point(t.deg, d.outer-thumbRadius)
		text := draw.NewText(0, 0, "thumb "+strings.Join(t.pulls, ", "), sheet.FontSmall, draw.Black).Shortened(sheet.NumberMost)
		box, ok := c.Anywhere(at, text.Room().W, text.Font.Height(), d.within)
		if _, lead := sheet.Nearest(at, box); !ok || lead > thumbLead {
			continue
		}
		text.At = draw.Point{X: box.X, Y: box.Y + text.Box().H - (text.Box().Bottom() - text.At.Y)}
		sheet.LeadTo(g, at, box)
		g.Add(draw.Disc{Centre: at, Radius: thumbRadius, Fill: draw.Black}, sheet.Halo(box), text)
	}
}
