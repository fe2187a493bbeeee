// The pace of a shot: how quick and how slow a rack may be, and how many racks are
// too many. Numbers of seconds are common practice, no source.

package viewer

import "math"

const (
	// WholeChange is the blur at which a rack needs the whole of the film's shortest
	// time, in arc minutes. What the rack leaves is then clearly soft.
	WholeChange = 30

	// LongestSoft is the longest time in a rack without anything sharp, in seconds.
	LongestSoft = 1.0

	// ShortRest is the rest below which a rack back counts as back and forth, in
	// seconds.
	ShortRest = 1.5
)

// Wants returns the share of the film's shortest time that a rack needs if it changes
// blur by the given arc minutes: 1 at WholeChange, and 0 if nobody sees the change.
// Time alone is no measure. In 0.15 s a faint change passes unnoticed, while one that
// throws everybody out of focus looks like a cut. The eye distinguishes blurs above
// its own by about their ratio (Weber's law; from memory, no figure was looked up).
// So the share grows with the logarithm of the blur, in units of the widest disc that
// looks sharp.
func Wants(arcmin float64) float64 {
	if arcmin <= Seen {
		return 0
	}
	return math.Log2(1+arcmin/Sharp) / math.Log2(1+WholeChange/Sharp)
}

// Softest returns the longest stretch between start and end in which nothing is sharp,
// in seconds. It returns 0, 0 if that stretch is not over LongestSoft. It samples 24
// times a second, and at most a thousand times. Most racks have no such stretch, so it
// first samples four times a second.
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

// A Pace counts the returns and the rests of the focus in a shot.
type Pace struct {
	Returns int // racks back to where the focus was, after one or two short rests
	First   int // index of the first of them, from 0
	Rests   int // rests that are not short
}

// Restless reports whether the focus goes back and forth more often than it rests. A
// single return does not count.
func (p Pace) Restless() bool { return p.Returns > 1 && p.Returns > p.Rests }

// PaceOf returns the pace of a series of racks. rests holds the rest before each rack
// and the one after the last, in seconds. back reports whether rack i returns to where
// the focus was before rack left.
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
