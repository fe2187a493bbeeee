// The pace of a shot: how quick a rack may be, how slow, and when there are too
// many of them. Numbers of seconds are common practice, no source.

package viewer

import "math"

const (
	// WholeChange is the blur at which a rack wants all of the shortest time that a
	// film wants, arc minutes: what is left is then soft beyond doubt.
	WholeChange = 30

	// LongestSoft is how long nothing may look sharp in a rack, seconds.
	LongestSoft = 1.0

	// ShortRest is the rest below which a way back counts as to and fro, seconds.
	ShortRest = 1.5
)

// Wants returns how much of the shortest time a rack wants that changes blur by
// so many arc minutes: 1 at WholeChange, 0 where nobody sees it. Time alone is no
// measure: in 0.15 s a faint change passes unnoticed, and one that throws
// everybody out of focus reads as a cut. The eye tells blurs above its own apart
// by about their ratio (Weber's law; from memory, no figure was looked up), so the
// change is felt as its logarithm, with the widest disc that looks sharp as the
// unit.
func Wants(arcmin float64) float64 {
	if arcmin <= Seen {
		return 0
	}
	return math.Log2(1+arcmin/Sharp) / math.Log2(1+WholeChange/Sharp)
}

// Softest returns the longest time between two others in which nothing is sharp,
// if it is over LongestSoft; else both are zero. It looks 24 times a second, and a
// thousand times at most. Most racks have no such time: four looks a second tell.
func Softest(start, end float64, sharp func(t float64) bool) (from, to float64) {
	const perSecond = 4
	run, most := 0, 0
	for i := range int(math.Floor((end-start)*perSecond)) + 1 {
		if run++; sharp(start + float64(i)/perSecond) {
			run = 0
		}
		if most = max(most, run); most == perSecond {
			break // a time of over a second has four of them
		}
	}
	if most < perSecond*LongestSoft {
		return 0, 0
	}
	steps := int(min(math.Ceil((end-start)*24), 1000))
	began, soft := start, false
	for i := range steps + 1 {
		t := start + (end-start)*float64(i)/float64(steps)
		now := !sharp(t)
		if now && !soft {
			began = t
		}
		if soft && (!now || i == steps) && t-began > max(LongestSoft, to-from) {
			from, to = began, t
		}
		soft = now
	}
	return from, to
}

// A Pace is how the focus of a shot goes and rests.
type Pace struct {
	Returns int // racks back to where the focus was, after one or two short rests
	First   int // the first of them, from 0
	Rests   int // that are no short ones
}

// Restless tells whether the focus goes to and fro more often than it rests. Once
// is no to and fro.
func (p Pace) Restless() bool { return p.Returns > 1 && p.Returns > p.Rests }

// PaceOf returns the pace of racks that have those rests before them, in seconds,
// and one after the last; back tells whether rack i goes to where the focus was
// before the rack left.
func PaceOf(rests []float64, back func(i, left int) bool) Pace {
	var p Pace
	for i := range len(rests) - 1 {
		for left := i - 1; left >= max(0, i-2) && rests[left+1] < ShortRest; left-- {
			if back(i, left) {
				if p.Returns++; p.Returns == 1 {
					p.First = i
				}
				break
			}
		}
	}
	for _, rest := range rests {
		if rest >= ShortRest {
			p.Rests++
		}
	}
	return p
}
