// The thumb's places on a disc: where to take hold of the wheel for each pull.
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
func (d *disc) thumbs() (list []thumb) {
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

// drawThumbs draws a dot at the rim for each place of the thumb, with the pulls for which
// it takes hold there. A place without room for its words has no dot either.
func (d *disc) drawThumbs(g *draw.Group) {
	if len(d.thumbs()) == 0 {
		return
	}
	g.Title = "where to take hold with the thumb"
	for _, t := range d.thumbLabels {
		at := d.point(t.deg, d.outer-thumbRadius)
		g.Add(draw.Disc{Centre: at, Radius: thumbRadius, Fill: draw.Black}, d.shifted(t.text))
	}
}

// A thumbLabel is the words at a place of the thumb, placed about the origin.
type thumbLabel struct {
	deg  float64
	text draw.Text
}

// placeThumbs finds places for the words of the thumb, near the dots.
func (d *disc) placeThumbs(p *plate) {
	for _, t := range d.thumbs() {
		words := draw.NewText(0, 0, "thumb "+strings.Join(t.pulls, ", "), sheet.FontSmall, draw.Black).Shortened(sheet.NumberMost)
		if text, ok := p.thumbPlace(t.deg, words); ok {
			d.thumbLabels, p.texts = append(d.thumbLabels, thumbLabel{t.deg, text}), append(p.texts, text.Wide())
		}
	}
}

// thumbPlace looks for a place for words beside a dot, farther and farther in.
func (p *plate) thumbPlace(deg float64, words draw.Text) (text draw.Text, ok bool) {
	d := p.d
	for in := 1.2; in <= thumbLead; in += 0.8 {
		radius := d.outer - 2*thumbRadius - in
		if radius < hub {
			break
		}
		beside := (words.Room().W/2 + thumbRadius + 0.6) / radius * 180 / math.Pi
		for _, aside := range []float64{0, beside, -beside} {
			if in > 3 && aside != 0 { // too far to be seen as its own
				continue
			}
			text = d.along(deg+aside, radius, words.String, words.Font, words.Ink)
			text.Full = words.Full
			if p.free(text) {
				return text, true
			}
		}
	}
	return text, false
}
