// Pages filled from top to bottom: a strip that no longer fits begins the next page.

package sheet

import "pullscore/render/draw"

// A Stack is pages under construction, filled from top to bottom.
type Stack struct {
	Paper Paper
	Roots []*draw.Group // of the pages
	Y     float64       // the lower end of the filled part of the last page, millimetres
	top   float64       // of the contents
	foot  float64       // below them
}

// NewStack returns one empty page. Its contents begin at top, and end foot millimetres
// above the lower edge.
func NewStack(paper Paper, top, foot float64) Stack {
	s := Stack{Paper: paper, top: top, foot: foot}
	s.Turn()
	return s
}

// Turn begins a new page.
func (s *Stack) Turn() {
	s.Roots = append(s.Roots, &draw.Group{})
	s.Y = s.top
}

// Root returns the last page.
func (s *Stack) Root() *draw.Group { return s.Roots[len(s.Roots)-1] }

// Left returns the height that is left on the page, in millimetres.
func (s *Stack) Left() float64 { return s.Paper.H - s.foot - s.Y }

// Width returns the width between the margins, in millimetres.
func (s *Stack) Width() float64 { return s.Paper.W - 2*Margin }

// Reserve begins a new page if that height, in millimetres, does not fit on this one.
func (s *Stack) Reserve(height float64) {
	if s.Left() < height && s.Y > s.top {
		s.Turn()
	}
}

// Take reserves a strip of that height in millimetres across the page, on a new one if it
// does not fit. It returns the group to draw in, and the top of the strip in millimetres.
func (s *Stack) Take(height float64, name string) (g *draw.Group, top float64) {
	s.Reserve(height)
	top = s.Y
	s.Y += height
	return s.Root().Group(name), top
}
