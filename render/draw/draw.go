package draw

import "iter"

// MM is the size of a typographic point in millimetres.
const MM = 25.4 / 72

// Chord is the greatest distance of a chord from its curve, in millimetres: a tenth of
// a fine line, which no printer shows.
const Chord = 0.01

// A Point is a place on the page, in millimetres.
type Point struct{ X, Y float64 }

// A Page is one sheet of a drawing.
type Page struct {
	Title, Desc string  // for people who cannot see the drawing
	W, H        float64 // millimetres
	Root        Group
	Spans       []Span // where time lies on it
	// Trim is what a screen leaves out at either side, in millimetres: a margin for the
	// hands that hold paper.
	Trim float64
}

// A Span says where a stretch of time lies on a page, so that a screen can show things
// over it. The seconds From to To run evenly from Left to Right, and their part of the
// drawing lies between Top and Bottom, all in millimetres. Where time does not run evenly
// over a part of the drawing, it has several, from left to right.
type Span struct {
	From, To                 float64
	Left, Right, Top, Bottom float64
	Narrow                   bool // the cut does not have it, and it is not to scale
}

// An Item is a Line, Rect, Disc, Path, Text or *Group.
type Item interface{ item() }

// A Stroke is the style of a line. Width and dashes are in millimetres; without
// dashes the line is unbroken. Round caps turn the shortest dashes into dots.
type Stroke struct {
	Ink   Ink
	Width float64
	Dash  []float64 // on, off, on ...
	Round bool
}

// A Line is a straight line.
type Line struct {
	From, To Point
	Stroke   Stroke
}

// A Rect is a box with upright sides, filled, outlined or both.
type Rect struct {
	Box    Box
	Fill   Ink
	Stroke Stroke
}

// A Disc is a circle, filled, outlined or both.
type Disc struct {
	Centre Point
	Radius float64
	Fill   Ink
	Stroke Stroke
}

// A Path is one or more runs of chords. A closed path joins the last point of
// each run to its first.
type Path struct {
	Runs   [][]Point
	Closed bool
	Fill   Ink
	Stroke Stroke
}

// A Group holds items that belong together. Its name says which part of the drawing it
// is. Its number counts the groups of that name, if they are numbered. Its title, if it
// has one, appears under the pointer.
//
// ID is a name that no other group of the document has, so that others can lead to this
// group. Link is the ID of the group to which this one leads. Both hold only ASCII
// letters, digits, hyphens and underlines; see ID.
type Group struct {
	Name, Title string
	Number      int // from 1; 0: none
	ID, Link    string
	Items       []Item
}

func (Line) item()   {}
func (Rect) item()   {}
func (Disc) item()   {}
func (Path) item()   {}
func (Text) item()   {}
func (*Group) item() {}

// Add appends items to the group.
func (g *Group) Add(items ...Item) { g.Items = append(g.Items, items...) }

// Group appends a new group of that name and returns it.
func (g *Group) Group(name string) *Group {
	sub := &Group{Name: name}
	g.Add(sub)
	return sub
}

// Line appends a straight line from (x1, y1) to (x2, y2), in millimetres.
func (g *Group) Line(x1, y1, x2, y2 float64, s Stroke) {
	g.Add(Line{From: Point{x1, y1}, To: Point{x2, y2}, Stroke: s})
}

// All yields every item of the group and of the groups in it. It yields a group before
// the items of that group.
func (g *Group) All() iter.Seq[Item] {
	return func(yield func(Item) bool) { g.each(yield) }
}

func (g *Group) each(yield func(Item) bool) bool {
	for _, it := range g.Items {
		if !yield(it) {
			return false
		}
		if sub, ok := it.(*Group); ok && !sub.each(yield) {
			return false
		}
	}
	return true
}
