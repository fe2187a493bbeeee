// The words and numbers of a row of the tolerance card, and how wide its columns are.

package cards

import (
	"math"

	"pullscore/interp/moments"
	"pullscore/interp/plan"
	"pullscore/interp/units"
	"pullscore/render/draw"
	"pullscore/render/sheet"
	"pullscore/render/signs"
)

// The type that is read at arm's length.
var (
	fontName   = draw.Font{Size: 13, Bold: true}
	fontFigure = draw.Font{Size: 9.5}
	fontStrong = draw.Font{Size: 9.5, Bold: true}
)

// A row is what the card says of a mark, in words.
type row struct {
	mark
	places      [2]string // the distance in both systems
	sharp, seen [2]string // towards the camera and away from it
	sides       [2]string // left and right
	turns       []turn
}

// A turn is how far something turns for ten centimetres nearer, and for ten farther.
type turn struct {
	what string
	ways [2]string
}

// rowOf returns the words of a mark.
func rowOf(s *plan.Shot, m mark) row {
	in := sheet.Style(s)
	r := row{mark: m}
	r.places[0], r.places[1] = in.Both(m.tape)
	for i, side := range [2]struct{ soft, seen plan.Number }{{m.miss.SoftForward, m.miss.SeenForward}, {m.miss.SoftBack, m.miss.SeenBack}} {
		r.sharp[i], r.seen[i] = "sharp to "+in.Gap(float64(side.soft)), "seen from "+in.Gap(float64(side.seen))
		if side.soft <= 0 {
			r.sharp[i] = "soft on the mark"
		}
		if side.seen <= 0 {
			r.seen[i] = "seen on the mark"
		}
	}
	r.sides = sidesOf(&m, in)
	r.turns = turnsOf(s, &m)
	return r
}

// sidesOf says how far it is to both edges of the picture.
func sidesOf(m *mark, in units.Style) [2]string {
	switch {
	case !m.miss.Left.Known():
		return [2]string{"aside not said", ""}
	case m.flaw() == outOfFrame || min(m.miss.Left, m.miss.Right) <= 0:
		return [2]string{"out of the frame", ""}
	}
	return [2]string{"left " + in.Gap(float64(m.miss.Left)), "right " + in.Gap(float64(m.miss.Right))}
}

// past stands where the ring ends before it has turned that far.
const past = "stop"

// turnsOf returns how far the ring turns, how far its rim goes if its diameter is known,
// and how far the hand turns on another gear; nothing without a ring.
func turnsOf(s *plan.Shot, m *mark) []turn {
	if s.Optics.Ring == nil {
		return nil
	}
	with := func(what string, write func(deg float64) string) turn {
		t := turn{what: what}
		for i, n := range [2]plan.Number{m.miss.RingNear, m.miss.RingFar} {
			if t.ways[i] = past; n.Known() {
				t.ways[i] = write(math.Abs(float64(n)))
			}
		}
		return t
	}
	list := []turn{with("ring", sheet.Figures.Angle)}
	if d := s.Optics.Diameter; d > 0 {
		list = append(list, with("rim", func(deg float64) string { return sheet.Figures.Millimetres(deg * math.Pi * d / 360) }))
	}
	if s.Gear.Known() && s.Gear != 1 {
		list = append(list, with("hand", func(deg float64) string { return sheet.Figures.Angle(deg * float64(s.Gear)) }))
	}
	return list
}

// A layout is where the columns of a card are, in millimetres.
type layout struct {
	names  float64 // the width of the names
	mark   float64 // the line of the mark, in the middle of the bars
	aside  float64 // the left end of the frames
	frame  float64 // the width of the frames
	turn   float64 // the left end of the turns
	whats  float64 // the width of the words before the turns
	column float64 // the width of a column of turns
	words  float64 // the width of what stands beside the bars
}

const (
	columnGap  = 4.0
	barRoom    = barMost + 3.2 // with the arrow
	mostNames  = 52.0
	leastFrame = 22.0
	mostFrame  = 42.0
)

// layOut places the columns for all rows of a shot.
func layOut(rows []row, width float64) layout {
	var l layout
	for i := range rows {
		r := &rows[i]
		for k := range 2 {
			l.words = max(l.words, fontStrong.Room(r.sharp[k]), fontFigure.Room(r.seen[k]))
			l.frame = max(l.frame, fontStrong.Room(r.sides[k]), leastFrame)
			for _, t := range r.turns {
				l.column = max(l.column, fontStrong.Room(t.ways[k]))
			}
		}
		for _, t := range r.turns {
			l.whats = max(l.whats, sheet.FontBody.Room(t.what)+1.6)
		}
	}
	l.column = max(l.column, sheet.FontBody.Room("farther"), 12)
	turns := l.whats + 2*l.column + 2
	spare := width - 2*(l.words+barRoom) - turns - 4*columnGap
	l.names = min(max(spare-l.frame, 0), mostNames)
	l.frame = max(l.frame, min(spare-l.names, mostFrame))
	l.turn = sheet.Margin + width - turns
	l.aside = l.turn - columnGap - l.frame
	l.mark = (sheet.Margin + l.names + l.aside) / 2
	return l
}

// drawAside draws the picture as wide as it is at the distance of a mark, where somebody
// stands in it, and how far it is to its edges.
func drawAside(g *draw.Group, r *row, x, y, width float64) {
	const high, dot = 7.0, 1.2
	g.Add(draw.Rect{Box: draw.Box{X: x, Y: y, W: width, H: high}, Stroke: draw.Solid(draw.Black, draw.StopWidth)})
	g.Line(x+width/2, y+0.3, x+width/2, y+high-0.3, draw.Solid(draw.Guide, draw.GuideWidth))
	share, text := 0.5, x
	if left, right := float64(r.miss.Left), float64(r.miss.Right); !r.miss.Left.Known() {
		sign := draw.NewText(x, y+high+4.4, "≈", fontStrong, draw.Black)
		g.Group(signs.Assumed).Add(sign)
		text = sign.Room().Right() + 1
	} else if left+right > 0 {
		share = left / (left + right)
	}
	g.Group("stands").Add(draw.Disc{Centre: draw.Point{X: min(max(x+share*width, x+dot), x+width-dot), Y: y + high/2}, Radius: dot, Fill: draw.Black})
	font := fontStrong
	if r.sides[1] == "" {
		font = sheet.FontBody
	}
	for i, side := range r.sides {
		if side != "" {
			g.Add(draw.NewText(text, y+high+4.4+4.4*float64(i), side, font, draw.Black))
		}
	}
}

// drawTurns writes how far the ring turns.
func (l *layout) drawTurns(g *draw.Group, r *row, y float64) {
	for i, t := range r.turns {
		base := y + 5*float64(i)
		font := fontFigure
		if i == 0 {
			font = fontStrong
		}
		g.Add(draw.NewText(l.turn, base, t.what, sheet.FontBody, draw.Grey))
		for k, way := range t.ways {
			g.Add(draw.NewText(l.turn+l.whats+l.column+float64(k)*(l.column+2), base, way, font, draw.Black).Aligned(draw.End))
		}
	}
	if len(r.turns) == 0 {
		g.Add(draw.NewText(l.turn, y, "no ring to turn", sheet.FontBody, draw.Grey))
	}
}

// stepWords returns by how much the ring is told: "10 cm".
func stepWords(s *plan.Shot) string { return sheet.Style(s).Gap(moments.RingStep) }
