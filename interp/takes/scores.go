// Error scores: what takes say without any model.

package takes

import "math"

// Scores sum up the errors of takes. The zero Scores has none.
type Scores struct {
	N             int // all takes
	Measured      int // those of which it is known where they landed
	sum, abs      float64
	mean, squares float64 // running, for the variance
	Short, Past   int     // landed before the mark, past it
	Hits, Judged  int     // sharp ones, among those of which that is known
	Within        int     // landed within HitWithin of the mark
	Early, Late   int     // moved for a frame less than planned, or more
	Timed         int     // those whose planned time is known
	lateness      float64 // sum, seconds
}

// HitWithin is how far from the mark a take may land and still count as a hit
// where neither the log nor a plan tells, degrees either way. Our own choice:
// about twice the spread of a practised hand.
const HitWithin = 3.0

// onTime is how far a time may be from the planned one and count as neither
// early nor late, seconds: a frame at 24.
const onTime = 1.0 / 24

// Add takes a take in.
func (s *Scores) Add(t *Take) {
	s.N++
	if t.Hit != Unsaid {
		s.Judged++
	}
	if t.Hit == Sharp {
		s.Hits++
	}
	if t.Unmeasured {
		return
	}
	s.Measured++
	s.sum += t.Error
	s.abs += math.Abs(t.Error)
	delta := t.Error - s.mean // Welford 1962, Technometrics 4(3): no digits lost
	s.mean += delta / float64(s.Measured)
	s.squares += delta * (t.Error - s.mean)
	switch {
	case t.Error < 0:
		s.Short++
	case t.Error > 0:
		s.Past++
	}
	if math.Abs(t.Error) <= HitWithin {
		s.Within++
	}
	if t.Planned > 0 {
		s.time(t.Time - t.Planned)
	}
}

func (s *Scores) time(late float64) {
	s.Timed++
	s.lateness += late
	switch {
	case late > onTime:
		s.Late++
	case late < -onTime:
		s.Early++
	}
}

// Constant returns the constant error, the mean of the errors: degrees,
// positive past the mark (Schmidt & Lee, Motor Learning and Performance).
func (s *Scores) Constant() float64 { return s.sum / float64(s.Measured) }

// Variable returns the variable error, the standard deviation of the errors
// about their own mean with divisor n, degrees (Schmidt & Lee).
func (s *Scores) Variable() float64 { return math.Sqrt(s.squares / float64(s.Measured)) }

// Absolute returns the absolute error, the mean of the errors without their
// signs, degrees (Schmidt & Lee).
func (s *Scores) Absolute() float64 { return s.abs / float64(s.Measured) }

// Lateness returns by how many seconds the takes whose planned time is known
// moved longer than planned, on the mean.
func (s *Scores) Lateness() float64 { return s.lateness / float64(s.Timed) }

// Counted returns how many takes were hits, of how many, and whether that was
// told by the log or a plan; else hits are those within HitWithin.
func (s *Scores) Counted() (hits, of int, told bool) {
	if s.Judged > 0 {
		return s.Hits, s.Judged, true
	}
	return s.Within, s.Measured, false
}

// Z95 is the number of standard deviations that hold 95 % of a normal
// distribution to both sides, as the published Wilson intervals have it.
const Z95 = 1.96

// Wilson returns the score interval of a rate of k in n at z standard
// deviations (Wilson 1927, J Am Stat Assoc 22, 209-212). Without any takes it
// is 0 to 1.
func Wilson(k, n int, z float64) (lo, hi float64) {
	if n <= 0 {
		return 0, 1
	}
	p, m, zz := float64(k)/float64(n), float64(n), z*z
	centre := p + zz/(2*m)
	half := z * math.Sqrt(p*(1-p)/m+zz/(4*m*m))
	lo, hi = (centre-half)/(1+zz/m), (centre+half)/(1+zz/m)
	if k <= 0 { // what rounding leaves of nothing
		lo = 0
	}
	if k >= n {
		hi = 1
	}
	return max(lo, 0), min(hi, 1)
}
