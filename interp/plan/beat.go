// The beat that counts a hand in at rehearsal.

package plan

// Beats, in seconds: the shortest and the longest that can count a hand in (600 and
// 15 a minute), and the default.
const (
	ShortestBeat = 0.1
	LongestBeat  = 4
	UsualBeat    = 0.5
)

// Tick returns the time from tick to tick of a click track or count-in, in seconds.
// It is the plan's own beat, if that lies between ShortestBeat and LongestBeat, else
// UsualBeat.
func (s *Shot) Tick() float64 {
	if s.Beat >= ShortestBeat && s.Beat <= LongestBeat {
		return s.Beat
	}
	return UsualBeat
}
