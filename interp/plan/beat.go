// The beat that a shot is rehearsed by.

package plan

// Beats, in seconds: the shortest and the longest that a hand can be counted in
// by, 600 to 15 a minute, and the one where a plan says none.
const (
	ShortestBeat = 0.1
	LongestBeat  = 4
	UsualBeat    = 0.5
)

// Tick returns the seconds from tick to tick of whatever counts a hand in: the
// plan's own beat, where it has one that can be counted by, or the usual one.
func (s *Shot) Tick() float64 {
	if s.Beat >= ShortestBeat && s.Beat <= LongestBeat {
		return s.Beat
	}
	return UsualBeat
}
