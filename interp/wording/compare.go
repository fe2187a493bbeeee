// How like a line a stretch of a text is, and which words they share.

package wording

import "math"

// A cell is the least cost of laying the words of a line so far over a stretch
// that ends at a word, and where the stretch starts.
type cell struct{ cost, start int }

// compare aligns a line with a part of the stream: the fewest words to change, put
// in or leave out (the edit distance), where the stretch may begin and end
// anywhere in the part. In a line of which it is known where its sentences begin, a
// sentence that begins elsewhere costs as a changed word, too.
func (s *Stream) compare(w wanted, from, to int) Hit {
	line := w.words
	if len(line) == 0 || from >= to {
		return Hit{}
	}
	stretch := s.words[from:to]
	above := make([]cell, len(stretch)+1)
	row := make([]cell, len(stretch)+1)
	for j := range above {
		above[j] = cell{0, j}
	}
	for i, word := range line {
		row[0] = cell{i + 1, 0}
		for j, v := range stretch {
			row[j+1] = cheapest(s.enter(above[j], w, i, from+j, from), s.enter(row[j], w, i+1, from+j, from), above[j+1], word != v)
		}
		above, row = row, above
	}
	best, end := cell{math.MaxInt, 0}, 0
	for j, c := range above {
		// Of two that begin alike the longer has the line's last word in it.
		if c.cost < best.cost || c.cost == best.cost && c.start == best.start {
			best, end = c, j
		}
	}
	return Hit{from + best.start, from + end, 1 - float64(best.cost)/float64(len(line))}
}

// cheapest returns the cheapest way to a cell: a word for a word, a word of the
// line left out, or one of the stretch put in.
func cheapest(change, left, up cell, differ bool) cell {
	if differ {
		change.cost++
	}
	left.cost++
	up.cost++
	best := change
	if up.cost < best.cost {
		best = up
	}
	if left.cost < best.cost {
		best = left
	}
	return best
}

// enter adds to a cell what it costs to go on with a word of the stream, where the
// line has come to its i-th.
func (s *Stream) enter(c cell, w wanted, i, at, from int) cell {
	if w.begins != nil && from+c.start < at && s.turns.has(at) && !w.begins.has(i) {
		c.cost++
	}
	return c
}

// A pairing is what a line shares with a hit: the first and the last word of the
// hit that are words of the line, and how many of the line lie outside them.
type pairing struct{ first, last, before, after int }

// pair returns what a line and a hit share, along the cheapest way from one to the
// other; ok is false where that is nothing.
func (s *Stream) pair(line []int32, h Hit) (p pairing, ok bool) {
	stretch := s.words[h.Start:h.End]
	cost := make([][]int, len(line)+1) // of the rest from i and j on
	for i := range cost {
		cost[i] = make([]int, len(stretch)+1)
	}
	for i := len(line); i >= 0; i-- {
		for j := len(stretch); j >= 0; j-- {
			switch {
			case i == len(line) || j == len(stretch):
				cost[i][j] = len(line) - i + len(stretch) - j
			case line[i] == stretch[j]:
				cost[i][j] = cost[i+1][j+1]
			default:
				cost[i][j] = 1 + min(cost[i+1][j+1], cost[i+1][j], cost[i][j+1])
			}
		}
	}
	for i, j := 0, 0; i < len(line) && j < len(stretch); {
		switch {
		case line[i] == stretch[j]:
			if !ok {
				p.first, p.before, ok = h.Start+j, i, true
			}
			p.last, p.after = h.Start+j, len(line)-1-i
			i, j = i+1, j+1
		case cost[i][j] == 1+cost[i+1][j+1]:
			i, j = i+1, j+1
		case cost[i][j] == 1+cost[i+1][j]:
			i++
		default:
			j++
		}
	}
	return p, ok
}
